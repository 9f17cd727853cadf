//! What `coldcase assess --json` prints. Its schema is `public/assessment.schema.json`, made
//! from these structs by a test.

use diagnosis::{Assessment, Choice, Finding, Step, WindingsFinding, WindingsKnown};
use diagnosis::{explanation_name, item_of_pair};
use job::{Job, Origin};
use measure::windings::{Forecast, Label, Pin, Resistances, Role, Scored};
use quantity::{Ohms, Uncertain};
use serde::Serialize;
use wording::Locale;

/// One file: what it shows, or why it could not be read.
#[derive(Serialize)]
#[serde(untagged)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub(crate) enum FileReport {
    Assessed(Box<Assessed>),
    Refused(Refused),
}

/// A file that could not be read as a job.
#[derive(Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
pub(crate) struct Refused {
    /// The file as named on the command line, or "standard input".
    pub(crate) file: String,
    /// What is wrong, and where, in words.
    pub(crate) error: String,
    /// The way out, in words.
    pub(crate) mend: String,
}

/// What a job shows.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
pub(crate) struct Assessed {
    /// The file as named on the command line, or "standard input".
    file: String,
    /// The job's identifier.
    job: String,
    /// Whether the job is an invented example.
    invented: bool,
    /// What the machine is called, in words.
    title: String,
    /// What in the file this program could not read, in words.
    notices: Vec<String>,
    /// Whether nothing may be powered until a caution of the level "stop" is cleared.
    must_stop: bool,
    /// What is known about each link of the Path, in its order.
    path: Vec<Link>,
    /// The compressor's windings; null until anything about them was entered.
    windings: Option<Windings>,
    /// What was found, in the order of the checks.
    findings: Vec<Found>,
    /// What to be careful of; the level "stop" first.
    cautions: Vec<Caution>,
    /// What to do, in a safe order; the first is the next step.
    next: Vec<NextStep>,
}

/// What is known about a link of the Path.
#[derive(Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct Link {
    /// The link's name.
    link: &'static str,
    /// unknown, sound-so-far, holds, doubtful or broken.
    state: &'static str,
    /// What stands behind it: told, seen or measured; null while the state is unknown.
    basis: Option<&'static str>,
}

/// What the pairs of pins say.
#[derive(Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct Windings {
    /// The three pins in order.
    pins: Vec<PinRole>,
    /// The run winding, leads taken out; null until three pairs read two windings.
    run: Option<Resistance>,
    /// The start winding, likewise.
    start: Option<Resistance>,
    /// Leads and contacts in each reading, likewise.
    leads: Option<Resistance>,
    /// What the third pair should read; null unless exactly two pairs read a number.
    forecast: Option<Foretold>,
    /// Everything that could be behind the readings, the likeliest first.
    explanations: Vec<Explained>,
}

/// The part that a pin plays.
#[derive(Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct PinRole {
    /// 1, 2 or 3.
    pin: usize,
    /// What is written beside it: common, start, run or start-or-run; null while too little is
    /// known.
    label: Option<&'static str>,
    /// Whether the label is sure: 99 of 100.
    surely: bool,
    /// Probability of each part. They add up to the probability that the motor has a run and a
    /// start winding at all.
    probability: RoleProbabilities,
}

/// Probability of each part that a pin can play.
#[derive(Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct RoleProbabilities {
    #[cfg_attr(test, schemars(range(min = 0.0, max = 1.0)))]
    common: f64,
    #[cfg_attr(test, schemars(range(min = 0.0, max = 1.0)))]
    start: f64,
    #[cfg_attr(test, schemars(range(min = 0.0, max = 1.0)))]
    run: f64,
}

/// A resistance with its standard uncertainty (JCGM 100:2008), both in ohms.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct Resistance {
    /// The best estimate.
    ohms: f64,
    /// Its standard uncertainty; twice this holds about 95 of 100.
    standard_uncertainty: f64,
}

/// What the third pair should read.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct Foretold {
    /// The pair not read yet.
    pair: &'static str,
    /// If the pin that both readings share is the common one.
    sum: Resistance,
    /// The pin that is common then.
    sum_common: usize,
    /// If it is not; null where the two readings are too alike for it.
    difference: Option<Resistance>,
    /// The pin that is common then.
    difference_common: usize,
}

/// Something that could be behind the readings.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct Explained {
    /// Its name.
    name: &'static str,
    /// Natural logarithm of the density of the readings under it; null for a density of zero.
    log_likelihood: Option<f64>,
    /// Its probability under the stated priors.
    #[cfg_attr(test, schemars(range(min = 0.0, max = 1.0)))]
    probability: f64,
    /// In words.
    words: String,
}

/// One statement about the machine.
#[derive(Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct Found {
    /// Its name.
    name: &'static str,
    /// How probable it is; null for what was simply observed.
    #[cfg_attr(test, schemars(range(min = 0.0, max = 1.0)))]
    probability: Option<f64>,
    /// In words.
    words: String,
}

/// Something that can hurt someone, or the machine.
#[derive(Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct Caution {
    /// Its name.
    name: &'static str,
    /// stop or care.
    level: &'static str,
    /// In words.
    words: String,
}

/// One thing to do.
#[derive(Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct NextStep {
    /// Its name.
    name: &'static str,
    /// The check that it belongs to.
    check: &'static str,
    /// The pair of pins to measure, as pair-1-2; null for other steps.
    pair: Option<&'static str>,
    /// The state that the machine must be in.
    power: &'static str,
    /// What one needs in hand.
    tools: Vec<&'static str>,
    /// Minutes of work.
    minutes: u16,
    /// In words.
    words: String,
}

impl Assessed {
    pub(crate) fn new(
        file: String,
        job: &Job,
        assessment: &Assessment,
        notices: Vec<String>,
        locale: &Locale,
    ) -> Self {
        Self {
            file,
            job: job.id().as_str().to_owned(),
            invented: job.origin() == Origin::Invented,
            title: wording::title(&assessment.machine),
            notices,
            must_stop: assessment.must_stop(),
            path: links(assessment),
            windings: assessment.windings.as_ref().map(Windings::of),
            findings: assessment
                .findings
                .iter()
                .map(|finding| Found {
                    name: finding.name(),
                    probability: probability(finding),
                    words: wording::finding(finding, locale),
                })
                .collect(),
            cautions: assessment
                .cautions
                .iter()
                .map(|caution| Caution {
                    name: caution.name(),
                    level: caution.level().name(),
                    words: wording::caution(*caution).line(),
                })
                .collect(),
            next: assessment
                .next
                .iter()
                .map(|step| NextStep::of(*step, locale))
                .collect(),
        }
    }
}

fn links(assessment: &Assessment) -> Vec<Link> {
    let links = assessment.path.iter().map(|(link, state)| Link {
        link: link.name(),
        state: state.name(),
        basis: state.basis().map(Choice::name),
    });
    links.collect()
}

impl Windings {
    fn of(known: &WindingsKnown) -> Self {
        let windings = &known.windings;
        let ohms = |of: fn(&Resistances) -> &Uncertain<Ohms>| {
            windings.resistances.as_ref().map(of).map(Resistance::of)
        };
        Self {
            pins: Pin::ALL.map(|pin| PinRole::of(pin, known)).into(),
            run: ohms(|found| &found.run),
            start: ohms(|found| &found.start),
            leads: ohms(|found| &found.leads),
            forecast: windings.forecast.as_ref().map(Foretold::of),
            explanations: windings.explanations.iter().map(Explained::of).collect(),
        }
    }
}

impl PinRole {
    fn of(pin: Pin, known: &WindingsKnown) -> Self {
        let (label, surely) = match known.label(pin) {
            Label::Nothing => (None, false),
            Label::StartOrRun => (Some("start-or-run"), false),
            Label::Is { role, surely } => (Some(role_name(role)), surely),
        };
        let belief = known.windings.pins[pin.index()];
        Self {
            pin: pin.number(),
            label,
            surely,
            probability: RoleProbabilities {
                common: at_most_one(belief.common),
                start: at_most_one(belief.start),
                run: at_most_one(belief.run),
            },
        }
    }
}

impl Resistance {
    fn of(value: &Uncertain<Ohms>) -> Self {
        Self {
            ohms: value.value().get(),
            standard_uncertainty: value.standard().get(),
        }
    }
}

impl Foretold {
    fn of(forecast: &Forecast) -> Self {
        Self {
            pair: item_of_pair(forecast.pair),
            sum: Resistance::of(&forecast.sum),
            sum_common: forecast.sum_common.number(),
            difference: forecast.difference.as_ref().map(Resistance::of),
            difference_common: forecast.difference_common.number(),
        }
    }
}

impl Explained {
    fn of(scored: &Scored) -> Self {
        let likelihood = scored.log_likelihood;
        Self {
            name: explanation_name(scored.explanation),
            log_likelihood: likelihood.is_finite().then_some(likelihood),
            probability: at_most_one(scored.probability),
            words: wording::explanation(scored.explanation).to_owned(),
        }
    }
}

impl NextStep {
    fn of(step: Step, locale: &Locale) -> Self {
        Self {
            name: step.name(),
            check: step.check().name(),
            pair: match step {
                Step::Measure(pair) | Step::Repeat(pair) => Some(item_of_pair(pair)),
                _ => None,
            },
            power: step.power().name(),
            tools: step.tools().iter().map(|tool| tool.name()).collect(),
            minutes: step.minutes(),
            words: wording::step(step, locale).line(),
        }
    }
}

fn probability(finding: &Finding) -> Option<f64> {
    match finding {
        Finding::Windings(
            WindingsFinding::Whole { probability, .. }
            | WindingsFinding::WholeButAlike { probability, .. }
            | WindingsFinding::Fault { probability, .. },
        ) => Some(at_most_one(*probability)),
        _ => None,
    }
}

const fn role_name(role: Role) -> &'static str {
    match role {
        Role::Common => "common",
        Role::Start => "start",
        Role::Run => "run",
    }
}

/// A sum of probabilities can be above 1 by its rounding.
fn at_most_one(probability: f64) -> f64 {
    probability.clamp(0.0, 1.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::fs;
    use std::path::Path;

    #[test]
    fn the_published_schema_is_the_one_made_from_what_is_printed() {
        let mut schema = schemars::schema_for!(Vec<FileReport>);
        schema.insert(
            "title".to_owned(),
            "Output of coldcase assess --json".into(),
        );
        let made = serde_json::to_string_pretty(&schema).unwrap() + "\n";
        let path =
            Path::new(env!("CARGO_MANIFEST_DIR")).join("../../public/assessment.schema.json");
        if std::env::var_os("BLESS").is_some() {
            fs::write(&path, &made).unwrap();
        }
        let published = fs::read_to_string(&path).unwrap_or_default();
        assert!(
            published == made,
            "BLESS=1 cargo test -p cli writes the schema anew"
        );
    }
}

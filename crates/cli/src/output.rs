//! What `coldcase assess --json` prints. Its schema is `public/assessment.schema.json`, made
//! from these structs by a test.

mod cold;
mod energy;
mod fill;
mod start_kit;
mod starts;
mod whole;

use serde::Serialize;

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
    /// What the job is about: "person", a machine that somebody has; "invented", an example;
    /// "practice", a simulated machine.
    origin: &'static str,
    /// Whether no such machine was measured: an invented example or a simulated machine.
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
    /// What tries to start it say, a set-up each; empty where it wasn't tried.
    starts: Vec<starts::Starts>,
    /// Whether a start kit would help; null where the machine was not weighed.
    start_kit: Option<start_kit::Kit>,
    /// What it uses; null where nothing was metered, asked or told of its running.
    energy: Option<energy::Energy>,
    /// How it gets cold since it was switched on; null where it wasn't, or was changed since.
    cool_down: Option<cold::CoolDown>,
    /// What is proved of it; null before there is anything to prove.
    proof: Option<cold::Proof>,
    /// What was found, in the order of the checks.
    findings: Vec<Found>,
    /// What to be careful of; the level "stop" first.
    cautions: Vec<Caution>,
    /// What may be powered.
    power: Power,
    /// The unplugged steps that are left, in a safe order.
    steps: Vec<NextStep>,
    /// Faults that may be there, the likeliest first; empty where the machine was not weighed:
    /// nothing is known yet, or only the checks were asked for.
    suspects: Vec<whole::Suspect>,
    /// That nothing is wrong; null where the machine was not weighed.
    nothing_wrong: Option<whole::Suspect>,
    /// Each link of the Path with how likely it is interrupted there.
    links: Vec<whole::LinkOdds>,
    /// What to do; null where the machine was not weighed.
    verdict: Option<whole::Verdict>,
    /// What can be checked now, the most worth per minute first.
    next: Vec<whole::NextCheck>,
    /// What can't be checked now, and why.
    withheld: Vec<whole::Withheld>,
    /// Readings that don't fit together, if there are any.
    conflict: Option<whole::Conflict>,
    /// What was done to the machine, in order: all that was weighed speaks of it as it is now.
    changes: Vec<whole::Change>,
}

/// What may be powered, each with what stands in front of it. An empty list lets it.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct Power {
    /// Plug it in on a protected outlet, look and listen.
    look_and_listen: Vec<&'static str>,
    /// Trials with changed start gear, a clamp or a meter in the circuit.
    trials: Vec<&'static str>,
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

//! From an assessment to what is printed of it.

use diagnosis::{
    Assessment, Choice, Finding, Gate, StartKit, Step, Whole, WindingsFinding, WindingsKnown,
};
use diagnosis::{explanation_name, item_of_pair};
use job::{Job, Origin};
use measure::windings::{Forecast, Label, Pin, Resistances, Role, Scored};
use quantity::{Ohms, Uncertain};
use wording::Locale;

use super::{
    Assessed, Caution, Explained, Foretold, Found, Link, NextStep, PinRole, Power, Resistance,
    RoleProbabilities, Windings, cold, energy, start_kit, starts, whole,
};

/// By the names that a job's file has.
const fn origin(origin: Origin) -> &'static str {
    match origin {
        Origin::Person => "person",
        Origin::Invented => "invented",
        Origin::Practice => "practice",
    }
}

impl Assessed {
    pub(crate) fn new(
        file: String,
        job: &Job,
        assessment: &Assessment,
        notices: Vec<String>,
        locale: &Locale,
    ) -> Self {
        let weighed = assessment.whole.as_ref();
        Self {
            file,
            job: job.id().as_str().to_owned(),
            origin: origin(job.origin()),
            invented: job.origin() != Origin::Person,
            title: wording::title(&assessment.machine),
            notices,
            must_stop: assessment.must_stop(),
            path: links(assessment),
            windings: assessment.windings.as_ref().map(Windings::of),
            starts: assessment
                .start_trials
                .iter()
                .flat_map(|trials| &trials.series)
                .map(starts::Starts::of)
                .collect(),
            start_kit: weighed.map(|_| start_kit::Kit::of(&StartKit::of(job, assessment))),
            cool_down: assessment
                .cool_down
                .as_ref()
                .map(|known| cold::CoolDown::of(known, locale)),
            proof: assessment.proof.as_ref().map(cold::Proof::of),
            energy: diagnosis::Energy::of(job).map(|known| energy::Energy::of(&known, locale)),
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
            power: Power {
                look_and_listen: in_front_of(&assessment.gates.look_and_listen),
                trials: in_front_of(&assessment.gates.trials),
            },
            steps: assessment
                .next
                .iter()
                .map(|step| NextStep::of(*step, locale))
                .collect(),
            suspects: each(weighed, |whole| &whole.suspects, whole::Suspect::of),
            nothing_wrong: weighed.map(|found| whole::Suspect::of(&found.nothing_wrong)),
            links: each(weighed, |whole| &whole.links, whole::LinkOdds::of),
            verdict: weighed.map(whole::Verdict::of),
            next: each(weighed, |whole| &whole.next, whole::NextCheck::of),
            withheld: each(weighed, |whole| &whole.withheld, whole::Withheld::of),
            conflict: weighed
                .and_then(|found| found.conflict)
                .map(whole::Conflict::of),
            changes: weighed.map_or_else(Vec::new, |found| whole::Change::all(&found.changed)),
        }
    }
}

/// What is printed of each of a list; none where the machine was not weighed.
fn each<T, P>(weighed: Option<&Whole>, of: fn(&Whole) -> &Vec<T>, print: fn(&T) -> P) -> Vec<P> {
    weighed.map_or_else(Vec::new, |whole| of(whole).iter().map(print).collect())
}

fn in_front_of(gate: &Gate) -> Vec<&'static str> {
    match gate {
        Gate::Open => Vec::new(),
        Gate::Closed(reasons) => reasons.iter().map(|reason| reason.name()).collect(),
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
    pub(super) fn of(value: &Uncertain<Ohms>) -> Self {
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
pub(super) fn at_most_one(probability: f64) -> f64 {
    probability.clamp(0.0, 1.0)
}

//! The whole assessment as text: what the page shows and what the command line prints.

use diagnosis::{
    Assessment, Circuit, Energy, Figures, Level, Machine, StartKit, Whole, WindingsKnown,
};
use job::{Content, Job, Origin};
use measure::windings::{Pin, Scored};

use crate::page::assumptions::rests_on;
use crate::whole::{at_fault, broken_links, since, to_do, unfitting, worth_checking};
use crate::windings_finding::capital;
use crate::{
    Locale, Words, caution, circuit, cool_down, energy, explanation, finding, gates, label, link,
    odds, pin, proof, start_kit, start_trials, step, uncertain_ohms,
};

/// The parts of a report, in their order.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Part {
    /// What to be careful of: a line a caution, in the order of the assessment.
    Safety,
    /// What machine it is.
    Machine,
    /// What may be powered.
    Power,
    /// What to do, where the whole machine was weighed.
    ToDo,
    /// Which parts may be at fault, where it was weighed.
    AtFault,
    /// Which checks are worth their time, where it was weighed.
    Worth,
    /// Readings that don't fit together, where it was weighed.
    Unfitting,
    /// What came of tries to start it.
    Starts,
    /// How it gets cold since it was switched on.
    CoolDown,
    /// What probes on the sealed circuit say of it.
    Circuit,
    /// What is proved of it, and what is owed.
    Proof,
    /// What a start kit would do, where that can be told.
    StartKit,
    /// What it uses, once anything was metered or asked of that.
    Energy,
    /// What was found.
    Found,
    /// Which pin is which.
    Pins,
    /// The explanations of [`told_explanations`], a line each.
    Fits,
    /// The links of the Path, a line each.
    Path,
    /// What to do next.
    Next,
    /// What all of this doesn't show.
    Limits,
}

/// A heading with what stands under it, a line each.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Section {
    /// Which part of the report it is.
    pub part: Part,
    /// The heading.
    pub heading: &'static str,
    /// What stands under it.
    pub lines: Vec<String>,
}

/// An assessment in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Report {
    /// What the machine is called.
    pub title: String,
    /// The sections, none of them empty.
    pub sections: Vec<Section>,
}

impl Report {
    /// The report as plain text.
    #[must_use]
    pub fn text(&self) -> String {
        let mut text = format!("{}\n", self.title);
        for section in &self.sections {
            text.push('\n');
            text.push_str(section.heading);
            text.push('\n');
            for line in &section.lines {
                text.push_str("- ");
                text.push_str(line);
                text.push('\n');
            }
        }
        text
    }
}

/// What a machine is called: its name, else its kind and mains.
#[must_use]
pub fn title(machine: &Machine) -> String {
    let kind = machine.kind.map_or("Machine", Words::words);
    match (&machine.name, machine.mains) {
        (Some(name), _) => name.clone(),
        (None, Some(mains)) => format!("{kind}, {}", mains.words()),
        (None, None) => kind.to_owned(),
    }
}

/// Says everything that is known, in the order in which it matters.
#[must_use]
pub fn report(assessment: &Assessment, job: &Job, locale: &Locale) -> Report {
    let stops = |level| {
        let cautions = assessment.cautions.iter();
        cautions
            .filter(move |caution| caution.level() == level)
            .map(|which| caution(*which).line())
    };
    let whole = assessment.whole.as_ref();
    let weighed = |lines: fn(&Whole) -> Vec<String>| whole.map_or_else(Vec::new, lines);
    let sections = [
        (
            Part::Safety,
            "Safety first",
            stops(Level::Stop).chain(stops(Level::Care)).collect(),
        ),
        (
            Part::Machine,
            "The machine",
            machine_lines(&assessment.machine, job),
        ),
        (
            Part::ToDo,
            "What to do",
            whole.map_or_else(Vec::new, |whole| {
                let mut lines = since(whole);
                lines.extend(to_do(assessment, whole));
                lines
            }),
        ),
        (Part::AtFault, "What may be at fault", weighed(at_fault)),
        (
            Part::Worth,
            "Worth checking next",
            whole.map_or_else(Vec::new, |whole| worth_checking(whole, locale)),
        ),
        (
            Part::Unfitting,
            "Readings that don't fit together",
            weighed(|whole| unfitting(whole).into_iter().collect()),
        ),
        (Part::Power, "May it be powered?", gates(&assessment.gates)),
        (
            Part::Found,
            "Found so far",
            finding_lines(assessment, locale),
        ),
        (
            Part::Starts,
            "Starting after a rest",
            assessment
                .start_trials
                .as_ref()
                .map_or_else(Vec::new, |trials| start_trials::report(trials, locale)),
        ),
        (
            Part::CoolDown,
            cool_down::TITLE,
            assessment
                .cool_down
                .as_ref()
                .map_or_else(Vec::new, |found| cool_down::report(found, locale)),
        ),
        (Part::Circuit, circuit::TITLE, circuit_lines(job, locale)),
        (
            Part::Proof,
            proof::TITLE,
            assessment
                .proof
                .as_ref()
                .map_or_else(Vec::new, proof::report),
        ),
        (
            Part::StartKit,
            start_kit::TITLE,
            kit_lines(assessment, job, locale),
        ),
        (Part::Energy, energy::TITLE, energy_lines(job, locale)),
        (
            Part::Pins,
            "The pins",
            windings_lines(assessment.windings.as_ref(), locale),
        ),
        (
            Part::Fits,
            "What fits these readings",
            explanation_lines(assessment),
        ),
        (Part::Path, "The Path", links(assessment)),
        (
            Part::Next,
            "Next",
            // Where everything was weighed, the checks are told by their worth instead.
            assessment
                .next
                .iter()
                .filter(|_| whole.is_none())
                .map(|next| step(*next, locale).line())
                .collect(),
        ),
        (Part::Limits, "What this doesn't show", limits(whole, job)),
    ];
    Report {
        title: title(&assessment.machine),
        sections: sections
            .into_iter()
            .map(|(part, heading, lines): (_, _, Vec<String>)| Section {
                part,
                heading,
                lines,
            })
            .filter(|section| !section.lines.is_empty())
            .collect(),
    }
}

/// Only where everything was weighed: what speaks against a kit comes from there.
fn kit_lines(assessment: &Assessment, job: &Job, locale: &Locale) -> Vec<String> {
    if assessment.whole.is_none() {
        return Vec::new();
    }
    start_kit::report(&StartKit::of(job, assessment), locale)
}

fn circuit_lines(job: &Job, locale: &Locale) -> Vec<String> {
    Circuit::of(job).map_or_else(Vec::new, |found| circuit::report(&found, locale))
}

fn energy_lines(job: &Job, locale: &Locale) -> Vec<String> {
    Energy::of(job).map_or_else(Vec::new, |found| energy::report(&found, locale))
}

/// What an assessment doesn't show, and whose figures its odds rest on.
#[must_use]
pub fn limits(whole: Option<&Whole>, job: &Job) -> Vec<String> {
    let Some(whole) = whole else {
        let standing = job.standing();
        let was_powered = standing.iter().any(|entry| {
            matches!(
                entry.content,
                Content::Trial(_) | Content::Spot(_) | Content::Log(_) | Content::Metered(_)
            )
        });
        let words = if was_powered { WEIGHED_LIMITS } else { LIMITS };
        return vec![words.to_owned()];
    };
    let came_with_job = Figures::of_job(job).is_some();
    let own = rests_on(whole.own_figures, came_with_job);
    own.into_iter().chain([WEIGHED_LIMITS.to_owned()]).collect()
}

const LIMITS: &str = "Ohms can condemn a compressor; they can't clear one. Nothing here has been \
                      tested under power, and the sealed system hasn't been judged. Odds rest on \
                      stated judgement, not on statistics. Local codes and licensed practice come \
                      first.";

/// The same once tests under power and the sealed system are weighed too.
const WEIGHED_LIMITS: &str = "Ohms can condemn a compressor; they can't clear one. The sealed \
                              system is judged from outside only. Odds rest on stated judgement, \
                              not on statistics, and see nothing that nobody looked for. Local \
                              codes and licensed practice come first.";

fn machine_lines(machine: &Machine, job: &Job) -> Vec<String> {
    let unreal = match job.origin() {
        Origin::Person => None,
        Origin::Invented => Some("Invented example: no such machine was measured."),
        Origin::Practice => Some("Practice: a simulated machine, no such machine was measured."),
    };
    let unreal = unreal.map(str::to_owned);
    let kind = machine.kind.map(|kind| kind.words().to_owned());
    let mains = machine
        .mains
        .map(|mains| format!("Mains {}", mains.words()));
    let gas = machine
        .refrigerant
        .map(|refrigerant| format!("Refrigerant: {}", refrigerant.words()));
    let plate = machine
        .plate
        .as_ref()
        .map(|plate| format!("Plate: {}", plate.replace('\n', "; ")));
    [unreal, kind, mains, gas, plate]
        .into_iter()
        .flatten()
        .collect()
}

fn finding_lines(assessment: &Assessment, locale: &Locale) -> Vec<String> {
    assessment
        .findings
        .iter()
        .map(|found| finding(found, locale))
        .collect()
}

fn windings_lines(known: Option<&WindingsKnown>, locale: &Locale) -> Vec<String> {
    let Some(known) = known else {
        return Vec::new();
    };
    let pins = Pin::ALL.into_iter().filter_map(|which| {
        let words = label(known.label(which));
        (!words.is_empty()).then(|| format!("{}: {words}", capital(pin(which))))
    });
    let leads = known.windings.resistances.as_ref().map(|found| {
        format!(
            "Leads and contacts: {}",
            uncertain_ohms(&found.leads, locale)
        )
    });
    pins.chain(leads).collect()
}

/// What is likely enough to be told once three pairs were read, the likeliest first.
pub fn told_explanations(assessment: &Assessment) -> impl Iterator<Item = &Scored> {
    let known = assessment.windings.as_ref();
    known
        .filter(|known| known.inspection.readings().count() == 3)
        .into_iter()
        .flat_map(|known| &known.windings.explanations)
        .filter(|scored| scored.probability >= 0.02)
}

fn explanation_lines(assessment: &Assessment) -> Vec<String> {
    told_explanations(assessment)
        .map(|scored| {
            let said = odds(scored.probability);
            let what = explanation(scored.explanation);
            format!("{}: {}, {}", capital(what), said.word, said.phrase)
        })
        .collect()
}

fn links(assessment: &Assessment) -> Vec<String> {
    let weighed = assessment.whole.as_ref().and_then(broken_links);
    assessment
        .path
        .iter()
        .map(|(which, state)| {
            let said = link(*which, *state);
            match said.basis {
                Some(basis) => format!("{}: {} ({basis})", said.link, said.state),
                None => format!("{}: {}", said.link, said.state),
            }
        })
        .chain(weighed)
        .collect()
}

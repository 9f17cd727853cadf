//! A record put together.

use diagnosis::{Assessment, Circuit, Finding};
use job::{Job, Moment};
use wording::{Locale, circuit, record as words, title};

use crate::page::{Block, Part, Record, Section};
use crate::{
    cool_down, energy, handover, history, machine, measured, path, pins, proof, readings, seen,
    starts,
};

/// For whom a record is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Audience {
    /// Who takes the machine over: no money, no private notes.
    #[default]
    Buyer,
    /// Who has it: with notes and costs.
    Owner,
}

/// When a record is made, and by which version of the program.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Made<'a> {
    /// As of when.
    pub now: Moment,
    /// The program's version, as "0.1.0".
    pub version: &'a str,
}

/// What every section is made from.
#[derive(Clone, Copy)]
pub(crate) struct Source<'a> {
    pub(crate) job: &'a Job,
    pub(crate) assessment: &'a Assessment,
    /// What the checks find of the machine as it is now.
    pub(crate) findings: &'a [Finding],
    pub(crate) locale: &'a Locale,
    pub(crate) audience: Audience,
    pub(crate) made: Made<'a>,
}

impl Record {
    /// Of a job and what it was found to show, as of the same moment.
    ///
    /// ```
    /// use diagnosis::{Model, assess};
    /// use job::{Id, Job, Moment, Origin};
    /// use record::{Audience, Made, Record};
    ///
    /// let now = Moment::new(0, 0).unwrap();
    /// let job = Job::new(Id::new("j").unwrap(), now, Origin::Invented);
    /// let assessment = assess(&Model::default(), &job, now);
    /// let made = Made { now, version: "0.1.0" };
    /// let locale = wording::Locale::default();
    /// let record = Record::of(&job, &assessment, &locale, Audience::Buyer, made);
    /// assert!(record.html().starts_with("<!DOCTYPE html>"));
    /// assert!(record.text().contains("INVENTED EXAMPLE"));
    /// ```
    #[must_use]
    pub fn of(
        job: &Job,
        assessment: &Assessment,
        locale: &Locale,
        audience: Audience,
        made: Made<'_>,
    ) -> Self {
        let found_now = history::found_now(job, made.now);
        let from = Source {
            job,
            assessment,
            findings: found_now.as_deref().unwrap_or(&assessment.findings),
            locale,
            audience,
            made,
        };
        Self {
            title: title(&assessment.machine),
            unreal: words::unreal(job.origin()),
            audience: words::audience(audience == Audience::Owner),
            made: words::made(made.now, made.version, locale),
            sheet: sections([
                (Part::Machine, words::MACHINE, machine::blocks(from)),
                (Part::Proof, words::PROOF, proof::blocks(from)),
                (Part::Wrong, words::WRONG, history::wrong(from)),
                (Part::Done, words::DONE, history::done(from)),
                (Part::CoolDown, words::COOL_DOWN, cool_down::blocks(from)),
                (Part::Starts, words::STARTS, starts::blocks(from)),
                (Part::Pins, words::PINS, pins::blocks(from)),
                (Part::Path, words::PATH, path::blocks(from)),
                (Part::Measured, words::MEASURED, measured::blocks(from)),
                (Part::Energy, words::ENERGY, energy::blocks(from)),
                (Part::NextOwner, words::NEXT_OWNER, handover::cautions(from)),
                (Part::Limits, words::LIMITS, handover::limits(from)),
            ]),
            details: sections([
                (Part::Notes, words::NOTES, handover::notes(from)),
                (Part::Figures, words::FIGURES, handover::figures(from)),
                (Part::Checks, words::CHECKS, history::checks(from)),
                (Part::Readings, words::READINGS, readings::blocks(from)),
                (Part::Seen, words::SEEN, seen::blocks(from)),
                (Part::Tries, words::TRIES, starts::tries(from)),
                (Part::Files, words::FILES, cool_down::files(from)),
                (Part::Circuit, circuit::TITLE, circuit_of(from)),
                (Part::Metering, words::METERING, energy::metering(from)),
                (Part::Odds, words::ODDS, path::odds_of(from)),
            ]),
        }
    }
}

/// What probes on the sealed circuit say of it.
fn circuit_of(from: Source<'_>) -> Vec<Block> {
    let found = Circuit::of(from.job);
    let lines = found.map(|found| Block::Lines(circuit::report(&found, from.locale)));
    lines.into_iter().collect()
}

/// Those under which something stands.
fn sections<const N: usize>(all: [(Part, &'static str, Vec<Block>); N]) -> Vec<Section> {
    all.into_iter()
        .filter(|(_, _, blocks)| !blocks.is_empty())
        .map(|(part, heading, blocks)| Section {
            part,
            heading,
            blocks,
        })
        .collect()
}

//! Advice alone: what to do and what comes next, without the reasons.

use job::{Job, Moment};

use super::{Known, Model};
use crate::checks::machine::Machine;
use crate::checks::windings::WindingsKnown;
use crate::whole::{self, Advice};

/// What to do and what comes next: the same, to the bit, as [`assess`](crate::assess) has it, in less time,
/// because nothing is said of the reasons. `None` where nothing is known yet that could be weighed.
///
/// ```
/// use diagnosis::{Model, advise, assess};
/// use job::{Answer, Content, Entry, Id, Job, Moment, Name, Origin, Question};
///
/// let now = Moment::new(0, 0).unwrap();
/// let mut job = Job::new(Id::new("j").unwrap(), now, Origin::Invented);
/// job.add(Entry {
///     id: Id::new("e").unwrap(),
///     at: now,
///     content: Content::Answer {
///         question: Question::new("machine", "kind").unwrap(),
///         answer: Answer::Choice(Name::new("chest-freezer").unwrap()),
///     },
/// })
/// .unwrap();
/// let model = Model::default();
/// let whole = assess(&model, &job, now).whole.unwrap();
/// assert_eq!(advise(&model, &job, now).unwrap().next, whole.next);
/// ```
#[must_use]
pub fn advise(model: &Model, job: &Job, now: Moment) -> Option<Advice> {
    Adviser::new(model).advise(job, now)
}

/// Advice on a job that grows: the same, to the bit, as [`advise`] gives, in less time, because
/// what the job had before is not weighed from the beginning each time.
#[derive(Debug)]
pub struct Adviser<'a> {
    model: &'a Model,
    memory: Option<whole::Memory>,
    /// As they were known the last time.
    windings: Option<WindingsKnown>,
}

impl<'a> Adviser<'a> {
    /// With these assumptions.
    #[must_use]
    pub fn new(model: &'a Model) -> Self {
        Self {
            model,
            memory: None,
            windings: None,
        }
    }

    /// What to do and what comes next; `None` where nothing is known yet that could be weighed.
    /// The job need not be the one of the last time.
    pub fn advise(&mut self, job: &Job, now: Moment) -> Option<Advice> {
        let model = self.model;
        let present = whole::present(job);
        let as_it_is = present.as_ref().unwrap_or(job);
        let machine = Machine::of(as_it_is);
        let before = self.windings.as_ref();
        let windings = WindingsKnown::since(model, as_it_is, &machine, now, before);
        let known = Known::with(machine, windings, as_it_is);
        let assessment = known.assessment(as_it_is, present.is_some());
        let to_weigh = known.to_weigh(&assessment, model, now);
        let advice = whole::advise(&model.machines, job, to_weigh, &mut self.memory);
        self.windings = Some(known.windings);
        advice
    }
}

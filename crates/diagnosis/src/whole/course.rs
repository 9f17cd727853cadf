//! A job as a course of periods, with the changes between them.

use job::{Content, Entry, Job};

use super::change::{CHANGE, Change};
use super::clue::{Clue, Task};
use super::compiled::Compiled;
use super::entered::{Entered, clue_of_place, entered};
use super::{Changed, Known};
use crate::Check;
use crate::checks::windings::WindingsKnown;
use crate::choice::Choice;
use crate::start_trials::clue_of;

/// What was done to the machine and which answers came in between. Changes with nothing read
/// between them are one.
#[derive(Default)]
pub(super) struct Course<'a> {
    /// The changes that begin each period but the first.
    pub(super) steps: Vec<Vec<Change>>,
    /// The standing answers, each with its period.
    answers: Vec<(usize, &'a Entry)>,
    /// Whether anything was read since the last change.
    pub(super) read_since: bool,
}

/// Whether a step makes what a check reads another thing.
type IsNew<'a> = &'a dyn Fn(&str, usize) -> bool;

impl<'a> Course<'a> {
    pub(super) fn of(job: &'a Job) -> Self {
        let mut course = Self::default();
        let mut read = true;
        for entry in job.standing() {
            if let Some(change) = Change::told_by(entry) {
                if read {
                    course.steps.push(Vec::new());
                }
                read = false;
                course
                    .steps
                    .last_mut()
                    .into_iter()
                    .for_each(|step| step.push(change));
            } else if let Some(check) = about(entry) {
                read |= check != CHANGE && !is_about_its_past(check);
                course.answers.push((course.steps.len(), entry));
            }
        }
        course.read_since = read;
        course
    }

    /// What was done, for whoever reads the result.
    pub(super) fn changed(&self, folded: usize) -> Changed {
        Changed {
            changes: self.steps.concat(),
            last: self.steps.last().map_or(0, Vec::len),
            read_since: self.read_since && self.now() > 0,
            folded,
        }
    }

    fn now(&self) -> usize {
        self.steps.len()
    }

    /// The job as far as it speaks of the machine in a period: what was answered then, or at
    /// another time with no step in between that makes the check new.
    fn view(&self, job: &Job, period: usize, is_new: IsNew<'_>) -> Job {
        let mut view = Job::new(job.id().clone(), job.created(), job.origin());
        for (then, entry) in &self.answers {
            if self.holds(entry, *then, period, is_new) {
                // Identifiers were different in the job, and what is struck isn't standing.
                let _ = view.add((*entry).clone());
            }
        }
        view
    }

    fn holds(&self, entry: &Entry, then: usize, period: usize, is_new: IsNew<'_>) -> bool {
        let Some(check) = about(entry) else {
            return false;
        };
        let mut steps = then.min(period)..then.max(period);
        is_about_its_past(check) || !steps.any(|step| is_new(check, step))
    }

    /// The job as the machine is now, for what each check says by itself.
    pub(super) fn present(&self, job: &Job) -> Job {
        self.view(job, self.now(), &|check, step| self.outdates(check, step))
    }

    fn outdates(&self, check: &str, step: usize) -> bool {
        let mut outdated = self.steps[step].iter().flat_map(|change| change.outdates());
        outdated.any(|one| one.name() == check)
    }

    /// The job as far as nothing in it has to be done again.
    pub(super) fn up_to_date(&self, job: &Job, networks: &[&Compiled]) -> Job {
        self.view(job, self.now(), &|check, step| {
            self.has_to_be_repeated(check, step, networks)
        })
    }

    /// Whether a step makes all that a check brings another thing, or what was seen of it may be
    /// mended: until someone has looked again, what was seen stands.
    fn has_to_be_repeated(&self, check: &str, step: usize, networks: &[&Compiled]) -> bool {
        let mut clues = clues(check).peekable();
        let all = clues.peek().is_some() && clues.all(|clue| self.renews(clue, step, networks));
        let mended = |change: &Change| matches!(change, Change::Cord | Change::Wiring);
        let look = check == Check::LookOver.name() && self.steps[step].iter().any(mended);
        all || look || self.outdates(check, step)
    }

    /// Whether a step makes a clue another thing to see.
    fn renews(&self, clue: Clue, step: usize, networks: &[&Compiled]) -> bool {
        let parts = self.steps[step].iter().flat_map(|change| change.effects());
        let mut pairs = parts.flat_map(|(part, _)| networks.iter().map(move |one| (one, *part)));
        pairs.any(|(network, part)| network.hangs_on(clue, part))
    }

    /// Everything that the job holds, each with the period that it speaks of. Readings of the
    /// same thing are pooled, whatever was done in between to something else.
    pub(super) fn told(
        &self,
        job: &Job,
        known: &Known<'_>,
        networks: &[&Compiled],
    ) -> Vec<Entered> {
        let is_new: IsNew<'_> =
            &|check: &str, step: usize| clues(check).any(|clue| self.renews(clue, step, networks));
        let windings = Check::Windings.name();
        let pins_change = (0..self.now()).any(|step| is_new(windings, step));
        let mut all = Vec::new();
        for period in 0..=self.now() {
            let view = self.view(job, period, is_new);
            let then = pins_change
                .then(|| WindingsKnown::of(known.model, &view, known.machine, known.now));
            let windings = then.as_ref().unwrap_or(known.windings);
            for mut one in entered(&view, known.machine, windings) {
                one.period = self.last(one.task, period, is_new);
                if one.period == period {
                    all.push(one);
                }
            }
        }
        all
    }

    /// The period of the last answer to a task among those that hold in a period.
    fn last(&self, task: Task, period: usize, is_new: IsNew<'_>) -> usize {
        let name = task.name();
        if is_about_its_past(name) {
            return 0;
        }
        let of_task = self.answers.iter().filter(|(then, entry)| {
            about(entry).is_some_and(|check| speaks_to(check, task))
                && self.holds(entry, *then, period, is_new)
        });
        of_task.map(|(then, _)| *then).max().unwrap_or(0)
    }

    /// What need not be done again. A new start device with which it was tried is as good as a
    /// known-good one put in its place.
    pub(super) fn done(&self, all: &[Entered], networks: &[&Compiled]) -> Vec<Entered> {
        let stands = |one: &&Entered| {
            let mut steps = one.period..self.now();
            let check = one.task.name();
            is_about_its_past(check)
                || !steps.any(|step| self.has_to_be_repeated(check, step, networks))
        };
        let mut done: Vec<Entered> = all.iter().filter(stands).cloned().collect();
        let replaced = self.steps.iter().position(|step| {
            step.iter()
                .any(|one| matches!(one, Change::StartDevice | Change::StartGear))
        });
        let tried = |one: &Entered| {
            let of = [
                Clue::PowerUp,
                Clue::PowerMeter,
                Clue::Restart,
                Clue::ClickInterval,
            ];
            of.iter().any(|clue| one.task == Task::Clue(*clue))
        };
        if replaced.is_some_and(|step| all.iter().any(|one| one.period > step && tried(one))) {
            done.push(Entered::new(Task::Clue(Clue::GoodDevice), Vec::new()));
        }
        done
    }
}

/// The check that an entry speaks to.
fn about(entry: &Entry) -> Option<&str> {
    match &entry.content {
        Content::Answer { question, .. } => Some(question.check.as_str()),
        Content::Trial(trial) => Some(clue_of(trial.set_up).name()),
        Content::Stop(_) => Some(Clue::Restart.name()),
        Content::Spot(spot) => clue_of_place(spot.place).map(Clue::name),
        Content::Log(log) => clue_of_place(log.place()).map(Clue::name),
        Content::Event(_) => Some(Clue::Temperatures.name()),
        Content::Metered(_) | Content::Note(_) | Content::Strike(_) => None,
    }
}

/// What machine it is and what it did before anyone touched it, whenever that was told.
fn is_about_its_past(check: &str) -> bool {
    [Check::Machine, Check::Refrigerant, Check::StoredCharge]
        .iter()
        .any(|one| one.name() == check)
        || check == Task::History.name()
        // Class, volumes and price are the same machine's whatever was done to it.
        || check == crate::checks::energy::ENERGY
}

/// The clues that a check brings, or that its numbers stand for.
fn clues(check: &str) -> impl Iterator<Item = Clue> + '_ {
    let numbers = Check::from_name(check).map_or(&[][..], Check::stands_for);
    Clue::ALL
        .iter()
        .copied()
        .filter(move |clue| clue.task().name() == check || numbers.contains(clue))
}

/// Whether an answer of a check is one to a task, itself or by a number that stands for it.
pub(super) fn speaks_to(check: &str, task: Task) -> bool {
    let numbers = Check::from_name(check).map_or(&[][..], Check::stands_for);
    check == task.name() || matches!(task, Task::Clue(clue) if numbers.contains(&clue))
}

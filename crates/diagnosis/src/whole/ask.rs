//! The questions of each task, for a page that can ask any of them.

use job::{Answer, Job, Unit};

use super::clue::{ANSWER, Clue, KNOWN, MARKING, Task};
use crate::choice::Choice;
use crate::{Check, Item};

/// One question of a task.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ask {
    /// An item of one of the unplugged checks.
    Item(Item),
    /// The one answer to a check that asks for one clue.
    Answer(Clue),
    /// A number that a clue is judged by, by the item's name.
    Number(Clue, &'static str, Unit),
    /// What is known of the machine's past, any number of choices.
    Past,
}

impl Ask {
    /// The question of these names, if a task has it. Where a number and a choice answer the same,
    /// it is the choice.
    #[must_use]
    pub fn from_names(check: &str, item: &str) -> Option<Self> {
        let all = match Task::from_name(check)? {
            Task::Check(check) => {
                let items = Item::ALL.iter().filter(|one| one.check() == check);
                items.map(|one| Self::Item(*one)).collect()
            }
            Task::Clue(clue) => {
                let mut all = vec![Self::Answer(clue)];
                all.extend(numbers(clue));
                all
            }
            Task::History => vec![Self::Past],
        };
        all.into_iter().find(|ask| ask.names().1 == item)
    }

    /// The check and the item under which a job keeps the answer.
    #[must_use]
    pub fn names(self) -> (&'static str, &'static str) {
        match self {
            Self::Item(item) => (item.check().name(), item.name()),
            Self::Answer(clue) => (clue.name(), ANSWER),
            Self::Number(clue, item, _) => (clue.name(), item),
            Self::Past => (Task::History.name(), KNOWN),
        }
    }

    /// The unit, where a number is asked for.
    #[must_use]
    pub const fn unit(self) -> Option<Unit> {
        match self {
            Self::Item(item) => item.unit(),
            Self::Number(_, _, unit) => Some(unit),
            Self::Answer(_) | Self::Past => None,
        }
    }

    /// Whether anything was answered, "can't do this" included.
    #[must_use]
    pub fn is_answered(self, job: &Job) -> bool {
        let (check, item) = self.names();
        job.answer(check, item).is_some()
    }

    /// Whether the number is read off a part's marking, and so carries no error of a meter.
    #[must_use]
    pub fn is_printed(self) -> bool {
        match self {
            Self::Item(item) => matches!(item, Item::PtcMarking | Item::CapacitorMarking),
            other => other.names().1 == MARKING,
        }
    }

    /// Whether a reading stands for it.
    #[must_use]
    pub fn has_reading(self, job: &Job) -> bool {
        let (check, item) = self.names();
        matches!(job.answer(check, item), Some(Answer::Reading(_)))
    }
}

impl Task {
    /// Every task, in the order of the checks and clues; the past is the last.
    pub fn all() -> impl Iterator<Item = Self> {
        let checks = Check::ALL.iter().map(|check| Self::Check(*check));
        let clues = Clue::ALL.iter().filter(|clue| clue.check().is_none());
        let clues = clues.map(|clue| Self::Clue(*clue));
        checks.chain(clues).chain([Self::History])
    }

    /// The task of this published name.
    ///
    /// ```
    /// use diagnosis::Task;
    /// assert!(Task::all().all(|task| Task::from_name(task.name()) == Some(task)));
    /// assert_eq!(Task::from_name("tea-leaves"), None);
    /// ```
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        Self::all().find(|task| task.name() == name)
    }

    /// What it asks, given what was answered. The checks with pages of their own list nothing.
    #[must_use]
    pub fn asks(self, job: &Job) -> Vec<Ask> {
        match self {
            Self::Check(check) => check.items(job).into_iter().map(Ask::Item).collect(),
            Self::Clue(clue) => clue_asks(clue, job),
            Self::History => vec![Ask::Past],
        }
    }
}

fn numbers(clue: Clue) -> impl Iterator<Item = Ask> {
    let all = clue.numbers().iter();
    all.map(move |&(item, unit)| Ask::Number(clue, item, unit))
}

/// Its numbers, where it takes any; a capacitor whose marking can't be read is judged by a choice.
fn clue_asks(clue: Clue, job: &Job) -> Vec<Ask> {
    let marking = job.answer(clue.name(), MARKING);
    let is_unreadable = matches!(marking, Some(Answer::NotDone(_)));
    let mut asks: Vec<Ask> = numbers(clue).collect();
    if asks.is_empty() || is_unreadable {
        asks.retain(|ask| ask.names().1 != ANSWER);
        asks.push(Ask::Answer(clue));
    }
    asks
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_question_is_found_by_its_names() {
        let now = job::Moment::new(0, 0).unwrap();
        let job = Job::new(job::Id::new("j").unwrap(), now, job::Origin::Invented);
        let own = Task::all().flat_map(|task| task.asks(&job));
        for ask in own.chain(Item::ALL.iter().map(|item| Ask::Item(*item))) {
            let (check, item) = ask.names();
            let found = Ask::from_names(check, item).unwrap();
            assert_eq!(found.names(), ask.names());
        }
        assert_eq!(Ask::from_names("power-up", "smell"), None);
    }
}

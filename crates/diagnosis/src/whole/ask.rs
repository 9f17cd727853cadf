//! The questions of each task, for a page that can ask any of them.

use job::{Answer, Job, Unit};

use super::clue::{ANSWER, Clue, Task};
use super::entered::{circuit_stands_for, cold_stands_for, numbers};
use crate::choice::Choice;
use crate::{Check, Item, Machine};

/// One question of a task.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ask {
    /// An item of one of the checks.
    Item(Item),
    /// The one answer to a check that asks for one clue.
    Answer(Clue),
    /// A number that a clue is judged by, by the item's name.
    Number(Clue, &'static str),
    /// What is known of the machine's past, any number of choices.
    Past,
}

/// The answer that a part isn't there, where [`Ask::can_be_absent`].
pub const THERE_IS_NONE: &str = "there-is-none";

/// The item under which a job keeps what is known of the past.
pub(super) const KNOWN: &str = "known";
/// The item for what is printed on a capacitor.
pub(crate) const MARKING: &str = "marking";
/// The item for what a meter shows of it.
pub(super) const MEASURED: &str = "measured";
/// The items for the temperatures of both compartments.
pub(super) const FREEZER: &str = "freezer";
pub(super) const FRESH_FOOD: &str = "fresh-food";

impl Ask {
    /// The question of these names, if a task has it.
    #[must_use]
    pub fn from_names(check: &str, item: &str) -> Option<Self> {
        let all = |task: Task| match task {
            Task::Check(check) => {
                let items = Item::ALL.iter().filter(|one| one.check() == check);
                items.map(|one| Self::Item(*one)).collect()
            }
            own => own.own_asks(),
        };
        let mut asks = all(Task::from_name(check)?).into_iter();
        asks.find(|ask| ask.names().1 == item)
    }

    /// The check and the item under which a job keeps the answer.
    #[must_use]
    pub fn names(self) -> (&'static str, &'static str) {
        match self {
            Self::Item(item) => (item.check().name(), item.name()),
            Self::Answer(clue) => (clue.name(), ANSWER),
            Self::Number(clue, item) => (clue.name(), item),
            Self::Past => (Task::History.name(), KNOWN),
        }
    }

    /// The unit, where a number is asked for.
    #[must_use]
    pub const fn unit(self) -> Option<Unit> {
        match self {
            Self::Item(item) => item.unit(),
            Self::Number(Clue::Capacitor, _) => Some(Unit::Farad),
            Self::Number(..) => Some(Unit::Celsius),
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
            Self::Item(item) => matches!(
                item,
                Item::PtcMarking
                    | Item::CapacitorMarking
                    | Item::CapacitorLeast
                    | Item::LabelAmps
                    | Item::LabelWatts
            ),
            other => other.names().1 == MARKING,
        }
    }

    /// Whether a machine may lack what it asks about: then [`THERE_IS_NONE`] is an answer too.
    #[must_use]
    pub const fn can_be_absent(self) -> bool {
        matches!(
            self,
            Self::Answer(
                Clue::EvaporatorFan
                    | Clue::EvaporatorFanMotor
                    | Clue::CondenserFanMotor
                    | Clue::ThermostatCold
                    | Clue::DoorSwitch
                    | Clue::Lamp
                    | Clue::DefrostParts
                    | Clue::TimerByHand
                    | Clue::CondenserFan
                    | Clue::AirOutlet
                    | Clue::Thermostat
                    | Clue::Thermistor
                    | Clue::Capacitor
                    | Clue::DoorLamp
            )
        )
    }

    /// Whether another answer stands for it: a marking that was told when stored charge was looked
    /// for; a number in place of an impression.
    fn is_known_otherwise(self, job: &Job) -> bool {
        match self {
            Self::Number(Clue::Capacitor, MARKING) => {
                Item::CapacitorMarking.reading(job).is_some() && !self.is_answered(job)
            }
            Self::Number(clue @ Clue::Capacitor, MEASURED) => {
                Self::Number(clue, MARKING).was_given_up(job) && !self.is_answered(job)
            }
            Self::Answer(clue @ Clue::Capacitor) => {
                let numbers = [MARKING, MEASURED].map(|item| Self::Number(clue, item));
                let gave_up = numbers.iter().any(|number| number.was_given_up(job));
                (!gave_up || is_measured(job, clue)) && !self.is_answered(job)
            }
            Self::Number(clue @ (Clue::Temperatures | Clue::RoomTemperature), _) => {
                !self.is_answered(job) && cold_stands_for(clue, job)
            }
            Self::Answer(clue) => {
                !self.is_answered(job) && (is_measured(job, clue) || circuit_stands_for(clue, job))
            }
            _ => false,
        }
    }

    fn was_given_up(self, job: &Job) -> bool {
        self.is_answered(job) && !self.has_reading(job)
    }

    /// Whether a reading stands for it.
    #[must_use]
    pub fn has_reading(self, job: &Job) -> bool {
        let (check, item) = self.names();
        matches!(job.answer(check, item), Some(Answer::Reading(_)))
    }
}

/// Whether numbers of another check stand for a clue.
fn is_measured(job: &Job, clue: Clue) -> bool {
    let stand = Check::ALL
        .iter()
        .any(|check| check.stands_for().contains(&clue));
    let numbers = || numbers(job, &Machine::of(job));
    stand && numbers().iter().any(|one| one.task == Task::Clue(clue))
}

impl Task {
    /// Every task: unplugged checks, clues, the past, and last the checks of a live machine. Each
    /// keeps its place where checks are added, so that what is drawn by it stays as it was.
    pub fn all() -> impl Iterator<Item = Self> {
        let checks = |is_powered| {
            let all = Check::ALL.iter().copied();
            all.filter(move |check| check.is_powered() == is_powered)
                .map(Self::Check)
        };
        let clues = Clue::ALL.iter().filter(|clue| clue.check().is_none());
        let clues = clues.map(|clue| Self::Clue(*clue));
        checks(false)
            .chain(clues)
            .chain([Self::History])
            .chain(checks(true))
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
            own => {
                let asks = own.own_asks().into_iter();
                asks.filter(|ask| !ask.is_known_otherwise(job)).collect()
            }
        }
    }

    fn own_asks(self) -> Vec<Ask> {
        match self {
            Self::Check(_) => Vec::new(),
            Self::Clue(clue @ Clue::Temperatures) => {
                vec![Ask::Number(clue, FREEZER), Ask::Number(clue, FRESH_FOOD)]
            }
            Self::Clue(clue @ Clue::Capacitor) => vec![
                Ask::Number(clue, MARKING),
                Ask::Number(clue, MEASURED),
                Ask::Answer(clue),
            ],
            Self::Clue(clue @ Clue::RoomTemperature) => vec![Ask::Number(clue, ANSWER)],
            Self::Clue(clue) => vec![Ask::Answer(clue)],
            Self::History => vec![Ask::Past],
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// What practice draws for a task is drawn by its place.
    #[test]
    fn checks_of_a_live_machine_come_behind_all_tasks_that_were_there_before() {
        let is_powered = |task: Task| matches!(task, Task::Check(check) if check.is_powered());
        let places: Vec<bool> = Task::all().map(is_powered).collect();
        let first = places.iter().position(|powered| *powered).unwrap();
        assert_eq!(Task::all().nth(first - 1), Some(Task::History));
        assert!(places[first..].iter().all(|powered| *powered));
    }

    #[test]
    fn every_question_is_found_by_its_names() {
        let own = Task::all().flat_map(Task::own_asks);
        for ask in own.chain(Item::ALL.iter().map(|item| Ask::Item(*item))) {
            let (check, item) = ask.names();
            assert_eq!(Ask::from_names(check, item), Some(ask));
        }
        assert_eq!(Ask::from_names("power-up", "smell"), None);
    }
}

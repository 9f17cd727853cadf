//! What is answered to one question of a page, which may ask for a number where a sheet would say
//! what it means.

use diagnosis::{Check, Choice, Clue, Item, PlateMains, Task, WindingsKnown};
use job::{Answer, Content, Name, Reading, Unit};
use quantity::{Ohms, Volts};
use simulator::Display;
use simulator::appliance::{Kind, Mains};

use super::Sheet;
use super::entry::typed;
use crate::walk::Examined;

impl Sheet {
    /// What one question of a task shows, by the item's name; nothing where it shows nothing.
    /// `wants_number` where a meter or a thermometer is asked.
    pub fn asked(&mut self, task: Task, item: &str, wants_number: bool) -> Option<Answer> {
        if wants_number {
            let shown = match task {
                Task::Check(Check::Windings) if item == WindingsKnown::LEADS_READING.1 => {
                    self.leads()
                }
                Task::Check(Check::StoredCharge) => self.stored(item),
                Task::Clue(clue) => self.number(clue, item),
                _ => None,
            };
            if let Some(reading) = shown {
                return Some(Answer::Reading(reading));
            }
        }
        if task == Task::Check(Check::LookOver) && item == Item::PlateMains.name() {
            return Some(Answer::Choice(Name::new(self.plate().name()).ok()?));
        }
        let found = self
            .answer(task)
            .into_iter()
            .find_map(|content| match content {
                Content::Answer { question, answer } if question.item.as_str() == item => {
                    Some(answer)
                }
                _ => None,
            });
        let is_answer = |answer: &Answer| match answer {
            Answer::Reading(_) => wants_number,
            Answer::Choice(_) | Answer::Choices(_) => !wants_number,
            Answer::Text(_) | Answer::NotDone(_) => false,
        };
        found.filter(is_answer)
    }

    /// Every plate can be read.
    const fn plate(&self) -> PlateMains {
        match self.machine.blueprint().mains {
            Mains::V115F60 => PlateMains::V120F60,
            Mains::V230F50 => PlateMains::V230F50,
        }
    }

    /// The probes touched together.
    fn leads(&mut self) -> Option<Reading> {
        self.take_up_tools(Task::Check(Check::Windings));
        let display = self.kit.ohms(Ohms::new(0.0));
        typed(&display, Unit::Ohm, self.meter)
    }

    /// It has stood unplugged for days: no capacitor of it holds anything.
    fn stored(&mut self, item: &str) -> Option<Reading> {
        self.take_up_tools(Task::Check(Check::StoredCharge));
        if item == Item::CapacitorMarking.name() {
            return self.capacitor("marking");
        }
        let display = self.kit.volts(Volts::new(0.0));
        typed(&display, Unit::Volt, self.meter)
    }

    /// The number that a clue is judged by, by the item's name; nothing where there is none.
    fn number(&mut self, clue: Clue, item: &str) -> Option<Reading> {
        self.take_up_tools(Task::Clue(clue));
        let freezes = self.machine.blueprint().kind != Kind::PlateRefrigerator;
        let celsius = match (clue, item) {
            (Clue::RoomTemperature, _) => self.machine.room(),
            (Clue::Temperatures, "freezer") => freezes.then_some(self.night()?.settled().0)?,
            (Clue::Temperatures, "fresh-food") => {
                let (first, second) = self.night()?.settled();
                second.or((!freezes).then_some(first))?
            }
            (Clue::Capacitor, _) => return self.capacitor(item),
            _ => return None,
        };
        let display = self.kit.celsius(celsius);
        typed(&display, Unit::Celsius, self.meter)
    }

    pub(super) fn capacitor(&mut self, item: &str) -> Option<Reading> {
        let (printed, left) = self.machine.bench().capacitor()?;
        let display = match item {
            "marking" => Display {
                text: [&quantity::write_decimal(printed.get() * 1e6), "u"].concat(),
            },
            // Shorted or open, it shows nothing that it could be judged by.
            _ => self.kit.farads(left?),
        };
        typed(&display, Unit::Farad, self.meter)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Lesson;
    use job::Measured;
    use measure::MeterKind;
    use quantity::Observed;

    #[test]
    fn a_thermometer_shows_the_room_within_its_error() {
        let mut sheet = Lesson::BroughtBack.sheet(MeterKind::Basic).unwrap();
        let room = sheet.machine().room().get();
        let reading = sheet.number(Clue::RoomTemperature, "answer").unwrap();
        let Measured::Celsius(typed) = reading.measured else {
            panic!("{reading:?}");
        };
        let Observed::Value(read) = typed.observed else {
            panic!("{reading:?}");
        };
        // A degree of its own, a count of a tenth, and half of one of rounding.
        assert!((read.get() - room).abs() < 1.16, "{} in {room}", read.get());
        assert_eq!(sheet.number(Clue::RoomTemperature, "answer"), Some(reading));
    }

    #[test]
    fn a_question_is_answered_in_the_shape_that_it_asks_for() {
        let mut sheet = Lesson::HumsAndClicks.sheet(MeterKind::Basic).unwrap();
        let windings = Task::Check(Check::Windings);
        let mut ohms = |item: &str| match sheet.asked(windings, item, true) {
            Some(Answer::Reading(reading)) => reading.typed.as_str().parse::<f64>().unwrap(),
            other => panic!("{item}: {other:?}"),
        };
        let leads = ohms("leads-reading");
        assert!((0.0..1.1).contains(&leads), "{leads}");
        assert!(ohms("pair-1-2") > leads);
        assert_eq!(sheet.asked(windings, "pair-1-2", false), None);
        let heard = sheet.asked(Task::Clue(Clue::PowerUp), "answer", false);
        assert!(matches!(heard, Some(Answer::Choice(_))), "{heard:?}");
        let past = sheet.asked(Task::History, "known", false);
        assert!(matches!(past, Some(Answer::Choices(_))), "{past:?}");
        let plate = sheet.asked(Task::Check(Check::LookOver), "plate-mains", false);
        assert!(matches!(plate, Some(Answer::Choice(_))), "{plate:?}");
        // Nothing on the plate was left open.
        assert_eq!(
            sheet.asked(Task::Check(Check::Machine), "plate", false),
            None
        );
    }

    #[test]
    fn a_chest_has_no_fresh_food_and_without_a_capacitor_nothing_is_printed() {
        let mut sheet = Lesson::HumsAndClicks.sheet(MeterKind::Basic).unwrap();
        assert_eq!(sheet.number(Clue::Temperatures, "fresh-food"), None);
        assert!(sheet.number(Clue::Temperatures, "freezer").is_some());
        assert_eq!(sheet.number(Clue::Capacitor, "marking"), None);
    }
}

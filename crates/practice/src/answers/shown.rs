//! What a meter or a thermometer shows where a page asks for the number and not for what it means.

use diagnosis::Clue;
use job::{Reading, Unit};
use simulator::Display;
use simulator::appliance::Kind;

use super::Sheet;
use super::entry::typed;

impl Sheet {
    /// The number that a clue is judged by, by the item's name; nothing where there is none.
    pub fn number(&mut self, clue: Clue, item: &str) -> Option<Reading> {
        self.take_up_tools(diagnosis::Task::Clue(clue));
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

    fn capacitor(&mut self, item: &str) -> Option<Reading> {
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
    fn a_chest_has_no_fresh_food_and_without_a_capacitor_nothing_is_printed() {
        let mut sheet = Lesson::HumsAndClicks.sheet(MeterKind::Basic).unwrap();
        assert_eq!(sheet.number(Clue::Temperatures, "fresh-food"), None);
        assert!(sheet.number(Clue::Temperatures, "freezer").is_some());
        assert_eq!(sheet.number(Clue::Capacitor, "marking"), None);
    }
}

//! What a key of the keypad does to the text in the field.

use job::Unit;

use super::pair_reading::{Target, is_leakage};

/// A key that writes. Entering is no key of this kind: it leaves the text alone.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Key {
    /// 0 to 9.
    Digit(u8),
    /// The decimal mark of the reader's language.
    DecimalMark(char),
    /// Over range.
    OverRange,
    /// Below zero, or above it again.
    Sign,
    /// From ohms to kilo-ohms, to mega-ohms and back; from amperes to milliamperes and back.
    NextUnit,
    /// Takes away what is selected, or the character before the caret.
    Backspace,
}

/// A text with the caret, or the ends of what is selected, counted in UTF-16 units as browsers do.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Edited {
    /// The text.
    pub text: String,
    /// Where the selection begins.
    pub start: usize,
    /// Where it ends; the same as `start` for a bare caret.
    pub end: usize,
}

/// What [`Key::NextUnit`] goes through: what is written behind the number, and the unit that the
/// number then has. A bare number comes first.
pub type Units = &'static [(&'static str, &'static str)];

/// The units that a meter may show for what is asked.
#[must_use]
pub fn units_of(target: Target) -> Units {
    match target.unit() {
        Unit::Ohm => &[("", "Ω"), ("k", "kΩ"), ("M", "MΩ")],
        // A bare number of a leak means milliamperes.
        Unit::Ampere if is_leakage(target) => &[("", "mA"), ("A", "A")],
        Unit::Ampere => &[("", "A"), ("m", "mA")],
        Unit::Volt => &[("", "V"), ("m", "mV")],
        Unit::Watt => &[("", "W"), ("k", "kW")],
        Unit::Farad => &[("", "µF"), ("n", "nF")],
        Unit::Metre => &[("", "m"), ("ft", "ft")],
        Unit::WattHour => &[("k", "kWh"), ("", "Wh")],
        // Asked without this keypad, which has no sign.
        Unit::Celsius => &[("", "°C")],
    }
}

/// The unit that [`Key::NextUnit`] would change a text to.
#[must_use]
pub fn unit_after(text: &str, units: Units) -> &'static str {
    let (_, place) = split(text, units);
    units
        .get((place + 1) % units.len().max(1))
        .map_or("", |(_, unit)| unit)
}

/// The number, and the place of the unit that is written behind it.
fn split(text: &str, units: Units) -> (&str, usize) {
    let written = units.iter().enumerate().skip(1);
    let mut found =
        written.filter_map(|(place, (written, _))| Some((text.strip_suffix(written)?, place)));
    found.next().unwrap_or((text, 0))
}

/// How a meter says that a value is beyond its range.
const OVER_RANGE: &str = "OL";

impl Edited {
    /// A text with the caret behind it.
    #[must_use]
    pub fn at_end(text: &str) -> Self {
        let end = text.encode_utf16().count();
        Self {
            text: text.to_owned(),
            start: end,
            end,
        }
    }

    /// The text after one key.
    #[must_use]
    pub fn pressed(&self, key: Key, units: Units) -> Self {
        match key {
            Key::Digit(digit) => self.written(char::from(b'0' + digit.min(9)), units),
            Key::DecimalMark(mark) => self.written(mark, units),
            Key::OverRange => Self::at_end(OVER_RANGE),
            Key::Sign => self.signed(),
            Key::NextUnit => self.next_unit(units),
            Key::Backspace => self.backspace(),
        }
    }

    /// A number typed over "OL" replaces it: no meter shows both.
    fn written(&self, character: char, units: Units) -> Self {
        if self.text == OVER_RANGE {
            return Self::at_end(&character.to_string());
        }
        // Behind a unit a digit would be lost: it belongs to the number in front of it.
        let (number, _) = split(&self.text, units);
        let number_end = number.encode_utf16().count();
        let start = self.start.min(number_end);
        self.replaced(
            start,
            self.end.max(start).min(number_end.max(start)),
            Some(character),
        )
    }

    /// The sign stands in front, wherever the caret is.
    fn signed(&self) -> Self {
        match self.text.strip_prefix('-') {
            Some(above) => Self {
                text: above.to_owned(),
                start: self.start.saturating_sub(1),
                end: self.end.saturating_sub(1),
            },
            None => Self {
                text: ["-", &self.text].concat(),
                start: self.start + 1,
                end: self.end + 1,
            },
        }
    }

    fn backspace(&self) -> Self {
        if self.text == OVER_RANGE {
            return Self::at_end("");
        }
        if self.start < self.end {
            return self.replaced(self.start, self.end, None);
        }
        let mut place = 0;
        let mut before = 0;
        for character in self.text.chars() {
            if place >= self.start {
                break;
            }
            before = place;
            place += character.len_utf16();
        }
        self.replaced(before, self.start, None)
    }

    fn next_unit(&self, units: Units) -> Self {
        let (number, place) = split(&self.text, units);
        let next = units.get((place + 1) % units.len().max(1));
        let unit = next.map_or("", |(written, _)| written);
        // Only a bare number takes a unit; "OL", "4k7" and words stay as they are.
        let is_number = number.chars().any(|c| c.is_ascii_digit())
            && number
                .chars()
                .all(|c| c.is_ascii_digit() || matches!(c, '.' | ',' | '-'));
        if is_number {
            Self::at_end(&format!("{number}{unit}"))
        } else {
            self.clone()
        }
    }

    fn replaced(&self, start: usize, end: usize, with: Option<char>) -> Self {
        let mut text = String::with_capacity(self.text.len() + 1);
        let mut place = 0;
        let mut written = false;
        for character in self.text.chars() {
            if place >= start && !written {
                text.extend(with);
                written = true;
            }
            if place < start || place >= end {
                text.push(character);
            }
            place += character.len_utf16();
        }
        if !written {
            text.extend(with);
        }
        let caret = start + with.map_or(0, char::len_utf16);
        Self {
            text,
            start: caret,
            end: caret,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use diagnosis::{Ask, Choice, Item};
    use measure::windings::Pair;

    fn ohms() -> Units {
        units_of(Target::Pair(Pair::OneTwo))
    }

    fn of(item: Item) -> Units {
        units_of(Target::Ask(Ask::Item(item)))
    }

    fn typed(text: &str, keys: &[Key], units: Units) -> String {
        keys.iter()
            .fold(Edited::at_end(text), |edited, key| {
                edited.pressed(*key, units)
            })
            .text
    }

    fn after(text: &str, keys: &[Key]) -> String {
        typed(text, keys, ohms())
    }

    #[test]
    fn digits_and_the_mark_are_written_one_after_another() {
        let keys = [
            Key::Digit(1),
            Key::Digit(2),
            Key::DecimalMark(','),
            Key::Digit(0),
        ];
        assert_eq!(after("", &keys), "12,0");
    }

    #[test]
    fn a_key_writes_at_the_caret_and_over_what_is_selected() {
        let middle = Edited {
            text: "47".to_owned(),
            start: 1,
            end: 1,
        };
        let dotted = middle.pressed(Key::DecimalMark('.'), ohms());
        assert_eq!((dotted.text.as_str(), dotted.start), ("4.7", 2));
        let selected = Edited {
            text: "12.0".to_owned(),
            start: 0,
            end: 4,
        };
        assert_eq!(selected.pressed(Key::Digit(7), ohms()).text, "7");
    }

    #[test]
    fn over_range_takes_the_place_of_a_number_and_a_number_that_of_over_range() {
        assert_eq!(after("4.7", &[Key::OverRange]), "OL");
        assert_eq!(after("OL", &[Key::Digit(4)]), "4");
        assert_eq!(after("OL", &[Key::Backspace]), "");
    }

    #[test]
    fn the_sign_stands_in_front_and_goes_again() {
        assert_eq!(after("18.5", &[Key::Sign]), "-18.5");
        assert_eq!(after("18.5", &[Key::Sign; 2]), "18.5");
        let typed = [Key::Sign, Key::Digit(1), Key::Digit(8), Key::Backspace];
        assert_eq!(after("", &typed), "-1");
    }

    #[test]
    fn one_key_goes_through_the_units_and_comes_back() {
        assert_eq!(after("4.7", &[Key::NextUnit]), "4.7k");
        assert_eq!(after("4.7", &[Key::NextUnit; 2]), "4.7M");
        assert_eq!(after("4.7", &[Key::NextUnit; 3]), "4.7");
    }

    #[test]
    fn a_clamp_that_shows_milliamperes_has_a_key_for_them_and_one_on_a_leak_for_amperes() {
        let amps = of(Item::RunningAmps);
        assert_eq!(unit_after("850", amps), "mA");
        assert_eq!(typed("850", &[Key::NextUnit], amps), "850m");
        assert_eq!(typed("850m", &[Key::Digit(1)], amps), "8501m");
        assert_eq!(unit_after("850m", amps), "A");
        assert_eq!(typed("850", &[Key::NextUnit; 2], amps), "850");
        // There a bare number means milliamperes.
        let leak = of(Item::LeakageCurrent);
        assert_eq!(unit_after("0.004", leak), "A");
        assert_eq!(typed("0.004", &[Key::NextUnit], leak), "0.004A");
        assert_eq!(unit_after("0.004A", leak), "mA");
    }

    #[test]
    fn each_unit_that_a_key_writes_is_read_as_what_it_shows() {
        use crate::forms::pair_reading::understood;
        use measure::MeterKind;
        let items = Item::ALL.iter().filter(|item| item.unit().is_some());
        for &item in items {
            let target = Target::Ask(Ask::Item(item));
            for (written, unit) in units_of(target) {
                let text = format!("2{written}");
                let meter = MeterKind::Good.automatic();
                let read = |text: &str| understood(text, target, meter, wording::Degrees::Celsius);
                assert!(read(&text).is_some(), "{item:?} {text}");
                assert_eq!(read(&text), read(&format!("2 {unit}")), "{item:?} {text}");
            }
        }
    }

    #[test]
    fn what_is_no_bare_number_takes_no_unit() {
        for text in ["", "OL", "4k7", "abc", ","] {
            assert_eq!(after(text, &[Key::NextUnit]), text);
        }
    }

    #[test]
    fn a_digit_after_the_unit_goes_to_the_number_before_it() {
        assert_eq!(after("4.7k", &[Key::Digit(5)]), "4.75k");
    }

    #[test]
    fn backspace_takes_one_character_of_any_width_and_stops_at_the_front() {
        assert_eq!(after("4.7", &[Key::Backspace; 5]), "");
        assert_eq!(after("4Ω", &[Key::Backspace]), "4");
        assert_eq!(after("4🔌", &[Key::Backspace]), "4");
        let selected = Edited {
            text: "12.0".to_owned(),
            start: 1,
            end: 3,
        };
        assert_eq!(selected.pressed(Key::Backspace, ohms()).text, "10");
    }
}

//! What a key of the keypad does to the text in the field.

/// A key that writes. Entering is no key of this kind: it leaves the text alone.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Key {
    /// 0 to 9.
    Digit(u8),
    /// The decimal mark of the reader's language.
    DecimalMark(char),
    /// Over range.
    OverRange,
    /// From ohms to kilo-ohms, to mega-ohms and back.
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

/// The unit that [`Key::NextUnit`] would change a text to.
#[must_use]
pub fn unit_after(text: &str) -> &'static str {
    match text.chars().last() {
        Some('k') => "MΩ",
        Some('M') => "Ω",
        _ => "kΩ",
    }
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
    pub fn pressed(&self, key: Key) -> Self {
        match key {
            Key::Digit(digit) => self.written(char::from(b'0' + digit.min(9))),
            Key::DecimalMark(mark) => self.written(mark),
            Key::OverRange => Self::at_end(OVER_RANGE),
            Key::NextUnit => self.next_unit(),
            Key::Backspace => self.backspace(),
        }
    }

    /// A number typed over "OL" replaces it: no meter shows both.
    fn written(&self, character: char) -> Self {
        if self.text == OVER_RANGE {
            return Self::at_end(&character.to_string());
        }
        // Behind a unit a digit would be lost: it belongs to the number in front of it.
        let number = self.text.trim_end_matches(['k', 'M']);
        let number_end = number.encode_utf16().count();
        let start = self.start.min(number_end);
        self.replaced(
            start,
            self.end.max(start).min(number_end.max(start)),
            Some(character),
        )
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

    fn next_unit(&self) -> Self {
        let (number, unit) = match self.text.strip_suffix(['k', 'M']) {
            Some(number) if self.text.ends_with('k') => (number, "M"),
            Some(number) => (number, ""),
            None => (self.text.as_str(), "k"),
        };
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

    fn after(text: &str, keys: &[Key]) -> String {
        keys.iter()
            .fold(Edited::at_end(text), |edited, key| edited.pressed(*key))
            .text
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
        let dotted = middle.pressed(Key::DecimalMark('.'));
        assert_eq!((dotted.text.as_str(), dotted.start), ("4.7", 2));
        let selected = Edited {
            text: "12.0".to_owned(),
            start: 0,
            end: 4,
        };
        assert_eq!(selected.pressed(Key::Digit(7)).text, "7");
    }

    #[test]
    fn over_range_takes_the_place_of_a_number_and_a_number_that_of_over_range() {
        assert_eq!(after("4.7", &[Key::OverRange]), "OL");
        assert_eq!(after("OL", &[Key::Digit(4)]), "4");
        assert_eq!(after("OL", &[Key::Backspace]), "");
    }

    #[test]
    fn one_key_goes_through_the_units_and_comes_back() {
        assert_eq!(after("4.7", &[Key::NextUnit]), "4.7k");
        assert_eq!(after("4.7", &[Key::NextUnit; 2]), "4.7M");
        assert_eq!(after("4.7", &[Key::NextUnit; 3]), "4.7");
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
        assert_eq!(selected.pressed(Key::Backspace).text, "10");
    }
}

//! A number in a cell, with either decimal mark, groups of thousands and a unit behind.

use quantity::parse_decimal;

use crate::DegreeUnit;

/// What stands in front of the decimals.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DecimalMark {
    /// `.`
    Point,
    /// `,`
    Comma,
}

impl DecimalMark {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Point, Self::Comma];

    const fn letter(self) -> char {
        match self {
            Self::Point => '.',
            Self::Comma => ',',
        }
    }
}

/// What stands behind a number.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Behind {
    Nothing,
    Degrees(DegreeUnit),
    Other,
}

#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Number {
    pub(crate) value: f64,
    pub(crate) behind: Behind,
    /// How many digits stand behind the mark.
    pub(crate) decimals: u8,
}

/// No logger writes more digits.
const MOST_DIGITS: usize = 18;
/// No unit is longer.
const LONGEST_UNIT: usize = 10;

/// What a cell says under a decimal mark; `None` where it is no number under it.
pub(crate) fn number(text: &str, mark: DecimalMark) -> Option<Number> {
    plain(text, mark).or_else(|| any_number(text.trim(), mark))
}

/// Digits, with a minus sign in front or without, with decimals or without: as nearly all cells are. Says
/// what [`any_number`] says, in a fraction of the time; `None` of anything else.
fn plain(text: &str, mark: DecimalMark) -> Option<Number> {
    /// So many digits are a whole number that a double holds.
    const MOST: usize = 15;
    let unsigned = text.strip_prefix('-').unwrap_or(text);
    if unsigned.len() > MOST {
        return None;
    }
    let (mut digits, mut scale, mut decimals) = (0_u64, 1.0, None);
    for letter in unsigned.bytes() {
        match letter {
            b'0'..=b'9' => {
                digits = digits * 10 + u64::from(letter - b'0');
                if let Some(count) = &mut decimals {
                    *count += 1;
                    scale *= 10.0;
                }
            }
            _ if char::from(letter) == mark.letter() && decimals.is_none() => decimals = Some(0),
            _ => return None,
        }
    }
    let ends_in_digits = |letter: Option<&u8>| letter.is_some_and(u8::is_ascii_digit);
    let bytes = unsigned.as_bytes();
    if !(ends_in_digits(bytes.first()) && ends_in_digits(bytes.last())) {
        return None;
    }
    let amount = digits as f64 / scale;
    let is_negative = unsigned.len() < text.len();
    Some(Number {
        value: if is_negative { -amount } else { amount },
        behind: Behind::Nothing,
        decimals: decimals.unwrap_or(0),
    })
}

fn any_number(text: &str, mark: DecimalMark) -> Option<Number> {
    let unsigned = text.trim_start_matches(['-', '+', '−', '–']);
    let sign = text.len() - unsigned.len();
    let is_negative = !text.starts_with('+') && sign > 0;
    // One sign at most: its letters take one byte or three.
    if sign > 1 && text.chars().nth(1) != unsigned.chars().next() {
        return None;
    }
    let unsigned = unsigned.trim_start();
    let mut digits = Digits::default();
    let mut rest = unsigned;
    while let Some(letter) = rest.chars().next() {
        let after = &rest[letter.len_utf8()..];
        if !digits.take(letter, mark, after)? {
            break;
        }
        rest = after;
    }
    let (value, decimals) = digits.value(is_negative)?;
    Some(Number {
        value,
        behind: behind(rest.trim())?,
        decimals,
    })
}

#[derive(Default)]
struct Digits {
    /// Digits with a point.
    text: [u8; MOST_DIGITS + 2],
    len: usize,
    decimals: Option<u8>,
    /// Digits since the last separator of thousands, once there was one.
    group: Option<u8>,
}

impl Digits {
    /// Whether the letter belongs to the number; `None` where nothing that holds it is one.
    fn take(&mut self, letter: char, mark: DecimalMark, after: &str) -> Option<bool> {
        let next_is_digit = after.as_bytes().first().is_some_and(u8::is_ascii_digit);
        match letter {
            '0'..='9' => {
                self.push(letter as u8)?;
                self.decimals = self.decimals.map(|count| count + 1);
                if self.decimals.is_none() {
                    self.group = self.group.map(|count| count + 1);
                }
                Some(true)
            }
            _ if letter == mark.letter() => {
                if self.decimals.is_some() {
                    return None;
                }
                self.decimals = Some(0);
                self.push(b'.')?;
                Some(true)
            }
            '.' | ',' | '\'' | '’' | ' ' | '\u{A0}' | '\u{202F}' if next_is_digit => {
                let fits = self
                    .group
                    .map_or((1..=3).contains(&self.len), |count| count == 3);
                // "0,250" is no number of thousands.
                let leads_with_nothing = self.text[0] == b'0';
                if self.decimals.is_some() || !fits || leads_with_nothing {
                    return None;
                }
                self.group = Some(0);
                Some(true)
            }
            _ => Some(false),
        }
    }

    fn push(&mut self, letter: u8) -> Option<()> {
        *self.text.get_mut(self.len)? = letter;
        self.len += 1;
        Some(())
    }

    fn value(&self, is_negative: bool) -> Option<(f64, u8)> {
        if self.group.is_some_and(|count| count != 3) {
            return None;
        }
        let text = core::str::from_utf8(&self.text[..self.len]).ok()?;
        let amount = parse_decimal(text)?;
        Some((
            if is_negative { -amount } else { amount },
            self.decimals.unwrap_or(0),
        ))
    }
}

/// What a unit may look like: no digit in it, so that two numbers are never one.
fn behind(text: &str) -> Option<Behind> {
    if text.is_empty() {
        return Some(Behind::Nothing);
    }
    if let Some(unit) = DegreeUnit::behind_number(text) {
        return Some(Behind::Degrees(unit));
    }
    let is_unit = |letter: char| {
        letter.is_alphabetic() || matches!(letter, '%' | '°' | 'µ' | '/' | ' ' | '.')
    };
    (text.chars().count() <= LONGEST_UNIT && text.chars().all(is_unit)).then_some(Behind::Other)
}

/// Whether a cell is one of the ways in which loggers say that there is no reading.
pub(crate) fn says_missing(text: &str) -> bool {
    const WORDS: &[&str] = &[
        "nan", "n/a", "na", "#n/a", "null", "none", "err", "error", "fehler", "erreur", "ol", "0l",
        "ofl", "open", "over", "under", "fault", "invalid", "off",
    ];
    let text = text.trim();
    let is_dashes = text
        .chars()
        .all(|letter| matches!(letter, '-' | '–' | '—' | '*' | '?' | '.' | '_'));
    is_dashes || WORDS.iter().any(|word| text.eq_ignore_ascii_case(word))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn point(text: &str) -> Option<f64> {
        number(text, DecimalMark::Point).map(|one| one.value)
    }

    fn comma(text: &str) -> Option<f64> {
        number(text, DecimalMark::Comma).map(|one| one.value)
    }

    #[test]
    fn both_marks_and_groups_of_thousands_are_read() {
        assert_eq!(point("-18.25"), Some(-18.25));
        assert_eq!(comma("-18,25"), Some(-18.25));
        assert_eq!(point("1,234,567.5"), Some(1_234_567.5));
        assert_eq!(comma("1.234,5"), Some(1234.5));
        assert_eq!(comma("1\u{202F}234,5"), Some(1234.5));
        assert_eq!(point("1'234.5"), Some(1234.5));
        assert_eq!(point("−4"), Some(-4.0));
        assert_eq!(point("- 4.5"), Some(-4.5));
        assert_eq!(point("+4.5"), Some(4.5));
        assert_eq!(point(".5"), Some(0.5));
    }

    #[test]
    fn what_is_no_number_under_a_mark_is_none() {
        for text in [
            "-18,25", "1,23,456", "0,250", "12,3456", "1.2.3", "--", "", "-", "4 5", "--4", "abc",
            "12:30", "1,2345.6",
        ] {
            assert_eq!(point(text), None, "{text}");
        }
        assert_eq!(comma("-18.25"), None);
        assert_eq!(point("1234567890123456789012"), None);
    }

    #[test]
    fn plain_numbers_are_what_they_are_the_long_way() {
        let mut seen = 0;
        for whole in ["", "0", "4", "18", "007", "1234", "123456789012"] {
            for behind in ["", ".", ",", ".0", ".5", ",25", ".125", ",1.2", ".33 ", "°"] {
                for sign in ["", "-", "+", "--", " -"] {
                    let text = [sign, whole, behind].concat();
                    for mark in DecimalMark::ALL {
                        if let Some(found) = plain(&text, mark) {
                            let long = any_number(&text, mark).unwrap();
                            assert_eq!(found.value.to_bits(), long.value.to_bits(), "{text}");
                            assert_eq!(found, long, "{text}");
                            seen += 1;
                        }
                    }
                }
            }
        }
        // 6 numbers, 6 endings, 2 signs; but one has too many digits to be plain.
        assert_eq!(seen, 70);
    }

    #[test]
    fn units_stand_behind() {
        let behind = |text| number(text, DecimalMark::Point).map(|one| one.behind);
        assert_eq!(
            behind("-18.2 °C"),
            Some(Behind::Degrees(DegreeUnit::Celsius))
        );
        assert_eq!(behind("0 F"), Some(Behind::Degrees(DegreeUnit::Fahrenheit)));
        assert_eq!(behind("55 %"), Some(Behind::Other));
        assert_eq!(behind("7"), Some(Behind::Nothing));
        assert_eq!(behind("5 5%"), None);
    }

    #[test]
    fn missing_readings_have_many_names() {
        for text in ["", "--", "---", "NaN", "err", "OL", "#N/A", "*"] {
            assert!(says_missing(text), "{text}");
        }
        assert!(!says_missing("-18"));
    }
}

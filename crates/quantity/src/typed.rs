//! What a person types, or reads off a meter's display.

use crate::{Prefix, Quantity, parse_decimal};

/// What a meter said: a value, or more than it can show.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Observed<Q> {
    /// A number on the display.
    Value(Q),
    /// More than the meter can show in the range it was in: only that the truth lies above.
    OverRange {
        /// The end of that range.
        above: Q,
    },
}

/// A reading as understood.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Typed<Q> {
    /// What it says.
    pub observed: Observed<Q>,
    /// One step of the last digit typed: 0.1 for "4.7", 100 for "4.7k". Zero for over range.
    pub count: Q,
}

/// Why a text is not a reading.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ParseError {
    /// Nothing but spaces.
    Empty,
    /// More than one decimal mark: neither can be trusted.
    TwoDecimalMarks,
    /// A unit or prefix, but no digit.
    NoDigits,
    /// Something that has no place in a reading.
    Unexpected {
        /// The first character that doesn't fit.
        found: char,
    },
    /// More than [`ParseError::LONGEST`] characters, or more digits than any meter shows.
    TooLong,
}

impl ParseError {
    /// The longest text that is looked at, in characters. No meter shows more.
    pub const LONGEST: usize = 24;
}

/// Reads a number with an optional sign, either decimal mark, an optional prefix (m, k, M) and
/// an optional unit, or the ways in which meters say "over range" (OL, 0L, ∞, or ">" and a value).
///
/// `top` is the end of the range that the meter was in: what "over range" means. Prefix letters
/// may stand in the place of the decimal mark, as in 4k7 (the letter code of IEC 60062). A
/// temperature may be given in °F, a length in feet.
///
/// # Errors
/// [`ParseError`] says what doesn't fit; nothing is guessed.
///
/// ```
/// # use quantity::{parse_reading, Observed, Ohms};
/// let top = Ohms::new(40e6);
/// assert_eq!(parse_reading("4,7", top).unwrap().observed, Observed::Value(Ohms::new(4.7)));
/// assert_eq!(parse_reading("4.7k", top).unwrap().count, Ohms::new(100.0));
/// assert_eq!(parse_reading("OL", top).unwrap().observed, Observed::OverRange { above: top });
/// ```
pub fn parse_reading<Q: Quantity>(text: &str, top: Q) -> Result<Typed<Q>, ParseError> {
    let Typed { observed, count } = read(text, Q::SYMBOL, top.get())?;
    Ok(Typed {
        observed: match observed {
            Observed::Value(value) => Observed::Value(Q::new(value)),
            Observed::OverRange { above } => Observed::OverRange {
                above: Q::new(above),
            },
        },
        count: Q::new(count),
    })
}

/// The same in bare numbers: else the program would hold all of it once for each quantity.
fn read(text: &str, symbol: &str, top: f64) -> Result<Typed<f64>, ParseError> {
    let text = text.trim();
    if text.is_empty() {
        return Err(ParseError::Empty);
    }
    if text.chars().count() > ParseError::LONGEST {
        return Err(ParseError::TooLong);
    }
    if says_over_range(text) {
        return Ok(over_range(top));
    }
    if let Some(bound) = text.strip_prefix('>') {
        let (above, _) = parse_number(bound.trim_start(), symbol)?;
        return Ok(over_range(above));
    }
    let (value, count) = parse_number(text, symbol)?;
    Ok(Typed {
        observed: Observed::Value(value),
        count,
    })
}

const fn over_range(above: f64) -> Typed<f64> {
    Typed {
        observed: Observed::OverRange { above },
        count: 0.0,
    }
}

/// Displays place a decimal point anywhere in OL, and seven segments can't tell O from 0.
fn says_over_range(text: &str) -> bool {
    let letters: String = text
        .chars()
        .filter(|character| !matches!(character, '.' | ',' | ' '))
        .map(|character| character.to_ascii_lowercase())
        .collect();
    let bare = letters.trim_end_matches(['k', 'm', 'Ω', 'Ω']);
    matches!(bare, "ol" | "0l" | "over" | "open" | "∞" | "inf")
}

/// The digits of a number being read, and where its decimal mark stood.
#[derive(Default)]
struct Digits {
    text: String,
    has_digit: bool,
    decimals: Option<i32>,
}

impl Digits {
    fn mark(&mut self) -> Result<(), ParseError> {
        if self.decimals.is_some() {
            return Err(ParseError::TwoDecimalMarks);
        }
        self.decimals = Some(0);
        self.text.push('.');
        Ok(())
    }

    fn digit(&mut self, digit: char) {
        self.has_digit = true;
        self.decimals = self.decimals.map(|decimals| decimals + 1);
        self.text.push(digit);
    }
}

fn parse_number(text: &str, symbol: &str) -> Result<(f64, f64), ParseError> {
    let mut digits = Digits::default();
    let mut prefix = None;
    let mut rest = text.chars().peekable();
    if let Some(sign) = rest.next_if(|c| matches!(c, '-' | '+' | '\u{2212}' | '–')) {
        digits.text.push(if sign == '+' { '+' } else { '-' });
        while rest.next_if_eq(&' ').is_some() {}
    }
    while let Some(&character) = rest.peek() {
        match character {
            '0'..='9' => digits.digit(character),
            '.' | ',' => digits.mark()?,
            _ => match letter_as_mark(character) {
                // Only directly after a digit and before another is a letter a decimal mark.
                Some(letter) if digits.has_digit && prefix.is_none() => {
                    let mut ahead = rest.clone();
                    ahead.next();
                    if !ahead.peek().is_some_and(char::is_ascii_digit) {
                        break;
                    }
                    digits.mark()?;
                    prefix = Some(letter);
                }
                _ => break,
            },
        }
        rest.next();
    }
    let tail: String = rest.collect();
    let tail = tail.trim();
    let is_fahrenheit = says_fahrenheit(tail, symbol);
    let is_feet = says_feet(tail, symbol);
    let trailing = if is_fahrenheit || is_feet {
        Prefix::One
    } else {
        parse_unit(tail, symbol, prefix.is_some())?
    };
    if !digits.has_digit {
        return Err(ParseError::NoDigits);
    }
    let prefix = prefix.unwrap_or(trailing);
    let number = parse_decimal(&digits.text).ok_or(ParseError::TooLong)?;
    let step = libm::pow(10.0, -f64::from(digits.decimals.unwrap_or(0)));
    if is_fahrenheit {
        return Ok(((number - 32.0) / 1.8, step / 1.8));
    }
    if is_feet {
        return Ok((number * FOOT, step * FOOT));
    }
    Ok((scaled(number, prefix), scaled(step, prefix)))
}

/// A temperature may be typed on the other scale, if it says so.
fn says_fahrenheit(unit: &str, symbol: &str) -> bool {
    symbol == "°C" && matches!(unit, "°F" | "°f" | "F" | "f")
}

/// A foot in metres, exact by its definition of 1959.
const FOOT: f64 = 0.3048;

/// A length may be typed in feet, if it says so.
fn says_feet(unit: &str, symbol: &str) -> bool {
    symbol == "m"
        && matches!(
            unit,
            "ft" | "Ft" | "FT" | "feet" | "foot" | "'" | "\u{2032}"
        )
}

/// Dividing by a thousand is right to the last bit where multiplying by 0.001 is not.
fn scaled(number: f64, prefix: Prefix) -> f64 {
    match prefix {
        Prefix::Nano => number / 1e9,
        Prefix::Micro => number / 1e6,
        Prefix::Milli => number / 1e3,
        other => number * other.factor(),
    }
}

fn letter_as_mark(letter: char) -> Option<Prefix> {
    match letter {
        'k' | 'K' => Some(Prefix::Kilo),
        'M' => Some(Prefix::Mega),
        'R' | 'r' => Some(Prefix::One),
        _ => None,
    }
}

fn parse_unit(tail: &str, symbol: &str, prefix_known: bool) -> Result<Prefix, ParseError> {
    if is_unit(tail, symbol) {
        return Ok(Prefix::One);
    }
    let mut letters = tail.chars();
    let found = match letters.next() {
        Some('n') => Some(Prefix::Nano),
        Some('u' | 'µ' | 'μ') => Some(Prefix::Micro),
        Some('m') => Some(Prefix::Milli),
        Some('k' | 'K') => Some(Prefix::Kilo),
        Some('M') => Some(Prefix::Mega),
        _ => None,
    };
    let (prefix, rest) = match found {
        Some(prefix) if !prefix_known => (prefix, letters.as_str().trim_start()),
        _ => (Prefix::One, tail),
    };
    if rest.is_empty() || is_unit(rest, symbol) {
        return Ok(prefix);
    }
    // `rest` is not empty here, so there is a first character.
    Err(rest
        .chars()
        .next()
        .map_or(ParseError::NoDigits, |found| ParseError::Unexpected {
            found,
        }))
}

// Written out letter by letter: the general change of case brings tables of 24 kB into the page.
fn is_unit(text: &str, symbol: &str) -> bool {
    let spellings: &[&str] = match symbol {
        "Ω" => &["\u{2126}", "ω", "ohm", "ohms", "r"],
        "°C" => &["c", "°"],
        _ => &[],
    };
    text.eq_ignore_ascii_case(symbol)
        || spellings
            .iter()
            .any(|spelt| text.eq_ignore_ascii_case(spelt))
}

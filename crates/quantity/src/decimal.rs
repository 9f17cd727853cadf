//! Decimal numbers as text, both ways.
//!
//! Figures read off meters and plates have few digits. Taking only those, and writing at most six
//! decimals, needs none of the tables with which the standard library reads and writes any number
//! there is: fifteen kilobytes of a page.

/// The largest power of ten that a double holds exactly is the 22nd.
const POWERS: [f64; 23] = [
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16,
    1e17, 1e18, 1e19, 1e20, 1e21, 1e22,
];

/// Reads digits with at most one point or comma, perhaps with a sign in front. `None` for anything
/// else, for more than 22 decimals, and for more digits than can be counted.
///
/// Up to 15 digits the nearest double is found; beyond, one beside it may be.
///
/// ```
/// assert_eq!(quantity::parse_decimal("-4,70"), Some(-4.7));
/// assert_eq!(quantity::parse_decimal("4.7e3"), None);
/// assert_eq!(quantity::parse_decimal("."), None);
/// ```
#[must_use]
pub fn parse_decimal(text: &str) -> Option<f64> {
    let unsigned = text.strip_prefix(['-', '+']).unwrap_or(text);
    let (mut digits, mut decimals, mut any) = (0_u64, None, false);
    for character in unsigned.chars() {
        match character {
            '.' | ',' if decimals.is_none() => decimals = Some(0_usize),
            _ => {
                let digit = character.to_digit(10)?;
                digits = digits.checked_mul(10)?.checked_add(u64::from(digit))?;
                decimals = decimals.map(|count| count + 1);
                any = true;
            }
        }
    }
    let scale = POWERS.get(decimals.unwrap_or(0))?;
    // Both are exact up to 15 digits, so that the quotient is the nearest double.
    let number = digits as f64 / scale;
    any.then_some(if text.starts_with('-') {
        -number
    } else {
        number
    })
}

/// Writes a number with at most six decimals and no zeros behind.
///
/// ```
/// assert_eq!(quantity::write_decimal(0.8), "0.8");
/// assert_eq!(quantity::write_decimal(2000.0), "2000");
/// ```
#[must_use]
pub fn write_decimal(number: f64) -> String {
    let text = format!("{number:.6}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

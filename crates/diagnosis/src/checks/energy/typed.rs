//! Volumes, a year and a price as they are typed off a plate or a bill.

use measure::energy::CUBIC_FOOT;
use quantity::{CubicMetres, parse_decimal};

/// Why a figure isn't understood.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FigureError {
    /// No number in front, or more than one.
    NotANumber,
    /// A volume without its unit: litres and cubic feet can't be told apart.
    WhichUnit,
    /// A unit that volumes don't have.
    OtherUnit,
    /// A volume that no household machine has: above 2,000 litres.
    TooLarge,
    /// A year before 1930 or after 2100.
    NoSuchYear,
    /// A price for a kilowatt hour below zero or above 10,000 of any currency.
    NoSuchPrice,
}

/// Above this it's a cold store.
const LARGEST: CubicMetres = CubicMetres::new(2.0);

/// A volume in litres, cubic feet or cubic metres.
///
/// # Errors
/// [`FigureError`]; nothing is guessed.
///
/// ```
/// use diagnosis::typed_volume;
/// let volume = typed_volume("18.2 cu ft").unwrap();
/// assert!((volume.get() - 0.5154).abs() < 1e-4);
/// assert_eq!(typed_volume("515,4 l").unwrap().get(), 0.5154);
/// assert!(typed_volume("18.2").is_err());
/// ```
pub fn typed_volume(text: &str) -> Result<CubicMetres, FigureError> {
    let (number, unit) = number_and_rest(text)?;
    let is = |spellings: &[&str]| spellings.iter().any(|one| unit.eq_ignore_ascii_case(one));
    let volume = if is(&["l", "litre", "litres", "liter", "liters", "dm3", "dm³"]) {
        CubicMetres::new(number / 1000.0)
    } else if is(&[
        "ft3",
        "ft³",
        "cu ft",
        "cu. ft.",
        "cu.ft.",
        "cuft",
        "cf",
        "cubic feet",
        "cubic foot",
    ]) {
        CubicMetres::new(number * CUBIC_FOOT.get())
    } else if is(&["m3", "m³"]) {
        CubicMetres::new(number)
    } else if unit.is_empty() {
        // Nothing is nothing in any unit.
        return if number > 0.0 {
            Err(FigureError::WhichUnit)
        } else {
            Ok(CubicMetres::new(0.0))
        };
    } else {
        return Err(FigureError::OtherUnit);
    };
    if volume > LARGEST {
        Err(FigureError::TooLarge)
    } else {
        Ok(volume)
    }
}

/// A year of four digits.
///
/// # Errors
/// [`FigureError`].
pub fn typed_year(text: &str) -> Result<u16, FigureError> {
    let year: u16 = text.trim().parse().map_err(|_| FigureError::NotANumber)?;
    if (1930..=2100).contains(&year) {
        Ok(year)
    } else {
        Err(FigureError::NoSuchYear)
    }
}

/// A price for a kilowatt hour, in whatever currency; what stands behind the number is passed over.
///
/// # Errors
/// [`FigureError`].
pub fn typed_price(text: &str) -> Result<f64, FigureError> {
    let (price, _) = number_and_rest(text)?;
    if (0.0..=10_000.0).contains(&price) {
        Ok(price)
    } else {
        Err(FigureError::NoSuchPrice)
    }
}

fn number_and_rest(text: &str) -> Result<(f64, &str), FigureError> {
    let text = text.trim();
    let is_number = |letter: char| letter.is_ascii_digit() || matches!(letter, '.' | ',');
    let end = text.find(|letter| !is_number(letter)).unwrap_or(text.len());
    let number = parse_decimal(&text[..end]).ok_or(FigureError::NotANumber)?;
    Ok((number, text[end..].trim()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn volumes_come_in_three_units_and_never_without() {
        let litres = |text| typed_volume(text).map(|volume| libm::round(volume.get() * 1e4) / 10.0);
        assert_eq!(litres("396 L"), Ok(396.0));
        assert_eq!(litres("14 ft³"), Ok(396.4));
        assert_eq!(litres("14,0cu ft"), Ok(396.4));
        assert_eq!(litres("0.396 m3"), Ok(396.0));
        assert_eq!(litres("0"), Ok(0.0));
        assert_eq!(litres("14"), Err(FigureError::WhichUnit));
        assert_eq!(litres("14 kg"), Err(FigureError::OtherUnit));
        assert_eq!(litres("large"), Err(FigureError::NotANumber));
        assert_eq!(litres("-3 l"), Err(FigureError::NotANumber));
        assert_eq!(litres("5 m3"), Err(FigureError::TooLarge));
    }

    #[test]
    fn years_and_prices_are_bounded() {
        assert_eq!(typed_year(" 2009 "), Ok(2009));
        assert_eq!(typed_year("209"), Err(FigureError::NoSuchYear));
        assert_eq!(typed_year("May 2009"), Err(FigureError::NotANumber));
        assert_eq!(typed_price("0,32 a kWh"), Ok(0.32));
        assert_eq!(typed_price("99999"), Err(FigureError::NoSuchPrice));
    }
}

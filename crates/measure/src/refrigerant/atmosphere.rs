//! The pressure of the air around, which a gauge leaves out.

use quantity::{Metres, Pascals};

/// The standard atmosphere at sea level (ISO 2533:1975, from memory).
pub const STANDARD_ATMOSPHERE: Pascals = Pascals::new(101_325.0);

/// The pressure of the standard atmosphere at a height above the sea, in the lowest layer:
/// p = p₀·(1 − 0.0065 K/m · h/288.15 K)^5.25588 (ISO 2533:1975, from memory). Weather moves it by
/// two to three percent.
///
/// `None` below −430 m and above 5,000 m: nobody keeps a freezer there.
///
/// ```
/// use measure::refrigerant::standard_atmosphere_at;
/// use quantity::Metres;
/// let air = standard_atmosphere_at(Metres::new(1000.0)).unwrap();
/// assert!((air.get() - 89_874.6).abs() < 1.0);
/// ```
#[must_use]
pub fn standard_atmosphere_at(height: Metres) -> Option<Pascals> {
    if !(-430.0..=5000.0).contains(&height.get()) {
        return None;
    }
    let share = libm::pow(1.0 - 0.0065 / 288.15 * height.get(), 5.255_88);
    Some(STANDARD_ATMOSPHERE * share)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_table_of_the_standard_atmosphere_comes_out() {
        // Heights in metres above the sea, pressures in Pa: ISO 2533:1975, from memory.
        for (height, pressure) in [(0.0, 101_325.0), (2000.0, 79_495.0), (3000.0, 70_108.5)] {
            let found = standard_atmosphere_at(Metres::new(height)).unwrap();
            assert!((found.get() - pressure).abs() < 3.0, "{height}: {found:?}");
        }
    }

    #[test]
    fn where_nobody_lives_there_is_no_pressure() {
        for height in [-500.0, 9000.0, f64::NAN] {
            assert_eq!(standard_atmosphere_at(Metres::new(height)), None);
        }
    }
}

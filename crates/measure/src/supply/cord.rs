//! Resistance and length of extension cords.

use quantity::{Amps, Celsius, Metres, Ohms, Volts};

use crate::Conductor;

/// A cord's copper conductors by their marking.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Conductors {
    /// 18 AWG.
    Awg18,
    /// 16 AWG.
    Awg16,
    /// 14 AWG.
    Awg14,
    /// 12 AWG.
    Awg12,
    /// 10 AWG.
    Awg10,
    /// 0.5 mm².
    Square0_5,
    /// 0.75 mm².
    Square0_75,
    /// 1.0 mm².
    Square1_0,
    /// 1.5 mm².
    Square1_5,
    /// 2.5 mm².
    Square2_5,
}

/// A thousand feet in metres.
const THOUSAND_FEET: f64 = 304.8;

impl Conductors {
    /// All, the thinnest of each system first.
    pub const ALL: [Self; 10] = [
        Self::Awg18,
        Self::Awg16,
        Self::Awg14,
        Self::Awg12,
        Self::Awg10,
        Self::Square0_5,
        Self::Square0_75,
        Self::Square1_0,
        Self::Square1_5,
        Self::Square2_5,
    ];

    /// The resistance of one metre of one conductor, and the temperature at which the table
    /// gives it.
    ///
    /// AWG: uncoated copper, 7 strands, at 75 °C (NEC, chapter 9, table 8). Square millimetres:
    /// the most that plain flexible copper, class 5, may have at 20 °C (IEC 60228).
    #[must_use]
    // 3.14 is what the table gives for 14 AWG.
    #[allow(clippy::approx_constant)]
    pub fn each_metre(self) -> (Ohms, Celsius) {
        let feet = |ohms: f64| (Ohms::new(ohms / THOUSAND_FEET), Celsius::new(75.0));
        let metric = |ohms: f64| (Ohms::new(ohms / 1000.0), Celsius::new(20.0));
        match self {
            Self::Awg18 => feet(7.95),
            Self::Awg16 => feet(4.99),
            Self::Awg14 => feet(3.14),
            Self::Awg12 => feet(1.98),
            Self::Awg10 => feet(1.24),
            Self::Square0_5 => metric(39.0),
            Self::Square0_75 => metric(26.0),
            Self::Square1_0 => metric(19.5),
            Self::Square1_5 => metric(13.3),
            Self::Square2_5 => metric(7.98),
        }
    }

    /// The resistance there and back of a cord of this length with its copper at this
    /// temperature: 2·L·r·(234.5 + T)/(234.5 + T_table). Contacts come on top. `None` for a
    /// length that is negative or no number, or copper below −200 °C.
    ///
    /// ```
    /// use measure::supply::Conductors;
    /// use quantity::{Celsius, Metres};
    /// let cord = Conductors::Square1_5.loop_resistance(Metres::new(25.0), Celsius::new(20.0));
    /// assert!((cord.unwrap().get() - 0.665).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn loop_resistance(self, length: Metres, copper: Celsius) -> Option<Ohms> {
        let there_and_back = 2.0 * length.get();
        let each = self.each_metre_at(copper)?;
        (there_and_back >= 0.0 && there_and_back.is_finite()).then(|| each * there_and_back)
    }

    fn each_metre_at(self, copper: Celsius) -> Option<Ohms> {
        let (each, table) = self.each_metre();
        let k = Conductor::Copper.constant().get();
        let warmer = (k + copper.get()) / (k + table.get());
        (copper.get() > -200.0 && copper.get().is_finite()).then(|| each * warmer)
    }
}

/// The longest cord on which a start takes no more than `allowed` volts, taken as if all of the
/// drop were in step (cos φ = 1), which errs towards a shorter cord. `None` where current or
/// allowed drop aren't above zero.
///
/// ```
/// use measure::supply::{Conductors, longest_cord};
/// use quantity::{Amps, Celsius, Volts};
/// // 3 % of 115 V at 15 A on 14 AWG: some 13 m.
/// let allowed = Volts::new(0.03 * 115.0);
/// let found = longest_cord(Conductors::Awg14, Celsius::new(20.0), Amps::new(15.0), allowed);
/// assert!((found.unwrap().get() - 13.6).abs() < 0.1);
/// ```
#[must_use]
pub fn longest_cord(
    conductors: Conductors,
    copper: Celsius,
    current: Amps,
    allowed: Volts,
) -> Option<Metres> {
    let each = conductors.each_metre_at(copper)?;
    let length = allowed.get() / (2.0 * each.get() * current.get());
    (current.get() > 0.0 && length > 0.0 && length.is_finite()).then(|| Metres::new(length))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn thicker_conductors_have_less_resistance_in_both_systems() {
        let room = Celsius::new(20.0);
        for pair in Conductors::ALL[..5]
            .windows(2)
            .chain(Conductors::ALL[5..].windows(2))
        {
            let [one, other] = [pair[0], pair[1]].map(|it| it.each_metre_at(room).unwrap());
            assert!(one > other, "{pair:?}");
        }
    }

    #[test]
    fn what_cannot_be_has_no_length_and_no_resistance() {
        let room = Celsius::new(20.0);
        for length in [-1.0, f64::NAN, f64::INFINITY] {
            let cord = Conductors::Awg16.loop_resistance(Metres::new(length), room);
            assert_eq!(cord, None);
        }
        let longest = |amps: f64, volts: f64, at: f64| {
            let at = Celsius::new(at);
            longest_cord(Conductors::Awg16, at, Amps::new(amps), Volts::new(volts))
        };
        assert_eq!(longest(0.0, 5.0, 20.0), None);
        assert_eq!(longest(15.0, -5.0, 20.0), None);
        assert_eq!(longest(15.0, 5.0, -273.0), None);
        assert!(longest(15.0, 5.0, 20.0).is_some());
    }
}

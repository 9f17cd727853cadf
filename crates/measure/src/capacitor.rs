//! A capacitor by its current and volts, or by a meter's capacitance range.
//!
//! Answers: how much capacitance it has and how surely; whether that fits what it is marked
//! with; whether another one may take its place. What it still holds is in
//! [`crate::stored_energy`] and its neighbours.

use quantity::{
    Amps, Farads, Hertz, Limit, Limits, Observed, Ratio, Side, Strictness, Typed, Uncertain, Volts,
};

use crate::{Against, against};

/// Why no capacitance comes of what was measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CapacitorError {
    /// The volts are zero, negative or no number: measure across the capacitor's own terminals
    /// while it is in circuit, not at the plug.
    NoVolts,
    /// The current is zero, negative or no number: clamp one of the capacitor's own leads; if
    /// it stays at zero, the capacitor or its switch is open.
    NoCurrent,
    /// The frequency isn't that of any mains.
    NoMainsFrequency,
}

/// Frequencies that are taken for mains (EN 50160 allows 50 Hz +4/−6 % for 100 % of the time,
/// from memory; the same on both sides of 50 and 60 Hz).
const MAINS: [Hertz; 2] = [Hertz::new(47.0), Hertz::new(63.0)];

/// The capacitance of a capacitor in circuit: C = I/(2πfU), of the current through it and the
/// volts across it, to first order in the errors of both. The frequency is taken as exact.
///
/// # Errors
/// [`CapacitorError`] says what was wrong with which reading, and how to take it.
///
/// ```
/// use measure::capacitance;
/// use quantity::{Amps, Hertz, Uncertain, Volts};
/// let amps = Uncertain::exact(Amps::new(3.32));
/// let volts = Uncertain::exact(Volts::new(213.2));
/// let found = capacitance(&amps, &volts, Hertz::new(60.0)).unwrap();
/// assert!((found.value().get() * 1e6 - 41.3).abs() < 0.05);
/// ```
pub fn capacitance(
    current: &Uncertain<Amps>,
    volts: &Uncertain<Volts>,
    frequency: Hertz,
) -> Result<Uncertain<Farads>, CapacitorError> {
    let (amps, across) = (current.value().get(), volts.value().get());
    if !(across > 0.0 && across.is_finite()) {
        return Err(CapacitorError::NoVolts);
    }
    if !(amps > 0.0 && amps.is_finite()) {
        return Err(CapacitorError::NoCurrent);
    }
    let [least, most] = MAINS;
    if !(frequency >= least && frequency <= most) {
        return Err(CapacitorError::NoMainsFrequency);
    }
    let each_amp = 1.0 / (2.0 * core::f64::consts::PI * frequency.get() * across);
    let farads = amps * each_amp;
    Ok(Uncertain::following(
        Farads::new(farads),
        (current, each_amp),
        (volts, -farads / across),
    ))
}

/// Why a reading of a meter's capacitance range is refused or asked about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CapacitorDoubt {
    /// Capacitance is never below zero: zero the meter with its leads open.
    Negative,
    /// Nothing: the capacitor is in circuit, the meter is in another range, or it is open.
    /// Discharge it, take one lead off, choose the capacitance range, and measure again; zero
    /// once more is an open capacitor, which is entered as such and not as a number.
    Nothing,
    /// More than any motor capacitor has, or more than the meter shows: charge left in it, a
    /// short, or a unit mistaken. Discharge it, take one lead off, look whether the display says
    /// nF, µF or mF, and measure again.
    BeyondAny,
    /// Larger than household start capacitors are: look at unit and decimal mark.
    LargeForAStart,
    /// Smaller than household run capacitors are: look at unit and decimal mark.
    SmallForARun,
}

/// Limits for a motor's capacitor. Run capacitors have 2 to 80 µF, start capacitors up to about
/// 330 µF in household machines (common practice, no source); the hard limits are judgement.
pub const CAPACITANCE_LIMITS: Limits<Farads, CapacitorDoubt> = Limits(&[
    limit(
        Strictness::Hard,
        Side::Below(Farads::new(0.0)),
        CapacitorDoubt::Negative,
    ),
    limit(
        Strictness::Hard,
        Side::Below(Farads::new(0.02e-6)),
        CapacitorDoubt::Nothing,
    ),
    limit(
        Strictness::Hard,
        Side::Above(Farads::new(3000e-6)),
        CapacitorDoubt::BeyondAny,
    ),
    limit(
        Strictness::Soft,
        Side::Above(Farads::new(600e-6)),
        CapacitorDoubt::LargeForAStart,
    ),
    limit(
        Strictness::Soft,
        Side::Below(Farads::new(1e-6)),
        CapacitorDoubt::SmallForARun,
    ),
]);

const fn limit(
    strictness: Strictness,
    side: Side<Farads>,
    reason: CapacitorDoubt,
) -> Limit<Farads, CapacitorDoubt> {
    Limit {
        strictness,
        side,
        reason,
    }
}

/// What to refuse or ask about a reading of capacitance.
///
/// ```
/// use measure::{CapacitorDoubt, doubt_about_capacitance};
/// use quantity::{Farads, Strictness, parse_reading};
/// let typed = parse_reading("9999u", Farads::new(0.02)).unwrap();
/// let refused = (Strictness::Hard, CapacitorDoubt::BeyondAny);
/// assert_eq!(doubt_about_capacitance(typed), Some(refused));
/// ```
#[must_use]
pub fn doubt_about_capacitance(typed: Typed<Farads>) -> Option<(Strictness, CapacitorDoubt)> {
    match typed.observed {
        Observed::OverRange { .. } => Some((Strictness::Hard, CapacitorDoubt::BeyondAny)),
        Observed::Value(value) => CAPACITANCE_LIMITS
            .beyond(value)
            .map(|limit| (limit.strictness, limit.reason)),
    }
}

/// From where to where a sound capacitor's capacitance lies.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CapacitorMarking {
    /// The least.
    pub least: Farads,
    /// The most.
    pub most: Farads,
}

impl CapacitorMarking {
    /// A run capacitor in North America: ±6 % (common practice, no source).
    #[must_use]
    pub fn run(nominal: Farads) -> Self {
        Self::tolerance(nominal, Ratio::new(0.06), Ratio::new(0.06))
    }

    /// A capacitor named on a nameplate only: ±10 % (common practice, no source; IEC 60252-1
    /// prefers ±5 and ±10 %, from memory).
    #[must_use]
    pub fn nameplate(nominal: Farads) -> Self {
        Self::tolerance(nominal, Ratio::new(0.1), Ratio::new(0.1))
    }

    /// A start capacitor marked with one value: −0/+20 % (EIA-463, from memory).
    #[must_use]
    pub fn start(nominal: Farads) -> Self {
        Self::tolerance(nominal, Ratio::new(0.0), Ratio::new(0.2))
    }

    /// A marking with its own tolerance, or one marked as a range ("88–108 µF") by both ends,
    /// in any order.
    #[must_use]
    pub fn range(one: Farads, other: Farads) -> Self {
        let (least, most) = if one <= other {
            (one, other)
        } else {
            (other, one)
        };
        Self { least, most }
    }

    /// A nominal value with what it may fall short and exceed.
    #[must_use]
    pub fn tolerance(nominal: Farads, below: Ratio, above: Ratio) -> Self {
        Self::range(nominal * (1.0 - below.get()), nominal * (1.0 + above.get()))
    }

    /// Whether a measured value fits, as far as the meter lets one tell.
    ///
    /// ```
    /// use measure::{Against, CapacitorMarking};
    /// use quantity::{Accuracy, Farads, Sources};
    /// let meter = Accuracy::new(2.0, 5.0).unwrap();
    /// let mut sources = Sources::default();
    /// let shown = meter.measured(Farads::new(36.1e-6), Farads::new(0.1e-6), &mut sources);
    /// let forty_five = CapacitorMarking::run(Farads::new(45e-6));
    /// assert_eq!(forty_five.judge(&shown), Against::Below);
    /// ```
    #[must_use]
    pub fn judge(self, measured: &Uncertain<Farads>) -> Against {
        against(measured, self.least, self.most)
    }
}

/// What a capacitor is there for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CapacitorUse {
    /// In circuit all the time.
    Run,
    /// For the start only.
    Start,
}

/// Whether a capacitor may take another one's place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Replacement {
    /// It may.
    Fits,
    /// It has too little capacitance.
    TooSmall,
    /// It has too much.
    TooLarge,
    /// It stands fewer volts.
    VoltsTooLow,
}

/// Whether a capacitor marked `other` may take the place of `original`. Start: equal or up to a
/// fifth more, by the lower end of the marking. Run: the same within 1 %, the printing's
/// rounding. Never fewer volts. (Common practice, no source.)
#[must_use]
pub fn replacement(
    purpose: CapacitorUse,
    original: (CapacitorMarking, Volts),
    other: (CapacitorMarking, Volts),
) -> Replacement {
    const ROUNDING: f64 = 0.01;
    let more = match purpose {
        CapacitorUse::Run => 0.0,
        CapacitorUse::Start => 0.2,
    };
    let share = other.0.least.get() / original.0.least.get();
    if other.1 < original.1 {
        Replacement::VoltsTooLow
    } else if share > 1.0 + more + ROUNDING {
        Replacement::TooLarge
    } else if share >= 1.0 - ROUNDING {
        Replacement::Fits
    } else {
        Replacement::TooSmall
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::parse_reading;

    fn doubt(text: &str) -> Option<(Strictness, CapacitorDoubt)> {
        doubt_about_capacitance(parse_reading(text, Farads::new(0.02)).unwrap())
    }

    #[test]
    fn nothing_and_far_too_much_are_refused() {
        use CapacitorDoubt::{BeyondAny, LargeForAStart, Negative, Nothing, SmallForARun};
        assert_eq!(doubt("0"), Some((Strictness::Hard, Nothing)));
        assert_eq!(doubt("-1u"), Some((Strictness::Hard, Negative)));
        assert_eq!(doubt("OL"), Some((Strictness::Hard, BeyondAny)));
        assert_eq!(doubt("720u"), Some((Strictness::Soft, LargeForAStart)));
        assert_eq!(doubt("15n"), Some((Strictness::Hard, Nothing)));
        assert_eq!(doubt("400n"), Some((Strictness::Soft, SmallForARun)));
        assert_eq!(doubt("12u"), None);
        assert_eq!(doubt("330u"), None);
    }

    #[test]
    fn each_reading_that_says_nothing_has_its_error() {
        let amps = |value| Uncertain::exact(Amps::new(value));
        let volts = |value| Uncertain::exact(Volts::new(value));
        let error = |a, v, f| capacitance(&amps(a), &volts(v), Hertz::new(f)).err();
        assert_eq!(error(3.0, 0.0, 60.0), Some(CapacitorError::NoVolts));
        assert_eq!(error(3.0, f64::NAN, 60.0), Some(CapacitorError::NoVolts));
        assert_eq!(error(0.0, 200.0, 60.0), Some(CapacitorError::NoCurrent));
        assert_eq!(
            error(3.0, 200.0, 400.0),
            Some(CapacitorError::NoMainsFrequency)
        );
        assert_eq!(error(3.0, 200.0, 50.0), None);
    }

    #[test]
    fn a_replacement_keeps_capacitance_and_volts() {
        let micro = |least: f64, most: f64| {
            CapacitorMarking::range(Farads::new(least * 1e-6), Farads::new(most * 1e-6))
        };
        let original = (micro(88.0, 108.0), Volts::new(220.0));
        let fits = |least: f64, most: f64, volts: f64| {
            let other = (micro(least, most), Volts::new(volts));
            replacement(CapacitorUse::Start, original, other)
        };
        assert_eq!(fits(88.0, 108.0, 220.0), Replacement::Fits);
        assert_eq!(fits(105.0, 126.0, 330.0), Replacement::Fits);
        assert_eq!(fits(108.0, 130.0, 330.0), Replacement::TooLarge);
        assert_eq!(fits(72.0, 88.0, 220.0), Replacement::TooSmall);
        assert_eq!(fits(88.0, 108.0, 165.0), Replacement::VoltsTooLow);
        let run = |nominal: f64| {
            (
                CapacitorMarking::run(Farads::new(nominal)),
                Volts::new(440.0),
            )
        };
        let other = replacement(CapacitorUse::Run, run(12e-6), run(14e-6));
        assert_eq!(other, Replacement::TooLarge);
    }
}

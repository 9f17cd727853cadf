//! Volts lost on the way, and what they cost in torque.

use quantity::{Amps, Ohms, Ratio, Uncertain, Volts};

/// Why no resistance comes of what was measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SupplyError {
    /// The idle volts are zero, negative or no number: measure them first, with the machine off.
    NoIdleVolts,
    /// The volts during the start are negative or no number.
    NoStartingVolts,
    /// The current is zero, negative or no number: clamp one conductor alone, not the cord.
    NoCurrent,
    /// The power factor is no number, zero or below, or above one.
    NoPowerFactor,
    /// The volts rose by more than the meter explains: another load went off in between, or the
    /// two readings were swapped. Measure both again.
    VoltsRose,
}

/// The power factor of a split-phase motor with its rotor at rest: cos of the line current's
/// angle, derived from a textbook's motor without capacitor (4.5 + j3.7 and 9.5 + j3.5 Ω:
/// Fitzgerald, Kingsley & Umans, *Electric Machinery*, 6e, example 9.1), which gives 0.844.
pub const LOCKED_ROTOR_POWER_FACTOR: Ratio = Ratio::new(0.844);

/// The share of the idle volts that is lost during the start, with its uncertainty.
///
/// # Errors
/// [`SupplyError`] where either reading can't be.
pub fn sag(
    idle: &Uncertain<Volts>,
    starting: &Uncertain<Volts>,
) -> Result<Uncertain<Ratio>, SupplyError> {
    Ok(dropped(idle, starting)?.ratio(idle))
}

/// The resistance of mains, wiring, contacts and cord together: ΔU/(I·cos φ), from the volts at
/// the machine's plug idle and during a start, and the current then.
///
/// On a resistive way the volts fall by about I·R·cos φ: the drop that is in step with the
/// current counts. Reactance of the mains comes on top and is taken for resistance, so that this
/// is an upper bound. A drop smaller than its own uncertainty gives a value that doesn't differ
/// from zero, which the uncertainty shows.
///
/// # Errors
/// [`SupplyError`] says which reading can't be, and how to take it.
///
/// ```
/// use measure::supply::{LOCKED_ROTOR_POWER_FACTOR, source_resistance};
/// use quantity::{Accuracy, Amps, Sources, Volts};
/// let mut sources = Sources::default();
/// let (volts, clamp) = (Accuracy::new(0.8, 5.0).unwrap(), Accuracy::new(2.0, 5.0).unwrap());
/// let idle = volts.measured(Volts::new(121.0), Volts::new(0.1), &mut sources);
/// let starting = volts.measured(Volts::new(104.0), Volts::new(0.1), &mut sources);
/// let amps = clamp.measured(Amps::new(15.0), Amps::new(0.1), &mut sources);
/// let found = source_resistance(&idle, &starting, &amps, LOCKED_ROTOR_POWER_FACTOR).unwrap();
/// assert!((found.value().get() - 1.34).abs() < 0.01);
/// assert!(found.standard().get() < 0.1);
/// ```
pub fn source_resistance(
    idle: &Uncertain<Volts>,
    starting: &Uncertain<Volts>,
    current: &Uncertain<Amps>,
    power_factor: Ratio,
) -> Result<Uncertain<Ohms>, SupplyError> {
    let dropped = dropped(idle, starting)?;
    let amps = current.value().get();
    if !(amps > 0.0 && amps.is_finite()) {
        return Err(SupplyError::NoCurrent);
    }
    if !(power_factor.get() > 0.0 && power_factor.get() <= 1.0) {
        return Err(SupplyError::NoPowerFactor);
    }
    let each_volt = 1.0 / (amps * power_factor.get());
    let ohms = dropped.value().get() * each_volt;
    Ok(Uncertain::following(
        Ohms::new(ohms),
        (&dropped, each_volt),
        (current, -ohms / amps),
    ))
}

/// Sources of error that both readings share drop out of the difference.
fn dropped(
    idle: &Uncertain<Volts>,
    starting: &Uncertain<Volts>,
) -> Result<Uncertain<Volts>, SupplyError> {
    let (before, during) = (idle.value().get(), starting.value().get());
    if !(before > 0.0 && before.is_finite()) {
        return Err(SupplyError::NoIdleVolts);
    }
    if !(during >= 0.0 && during.is_finite()) {
        return Err(SupplyError::NoStartingVolts);
    }
    let dropped = idle - starting;
    if dropped.value() + dropped.expanded() < Volts::new(0.0) {
        return Err(SupplyError::VoltsRose);
    }
    Ok(dropped)
}

/// The volts that are left behind a resistance: U − I·R·cos φ, never below zero.
#[must_use]
pub fn volts_left(supply: Volts, way: Ohms, current: Amps, power_factor: Ratio) -> Volts {
    let lost = way.get() * current.get() * power_factor.get();
    Volts::new((supply.get() - lost).max(0.0))
}

/// The share of the rated starting torque that is left: (U/U_rated)², since the torque goes with
/// the product of both windings' currents. `None` where the rated volts aren't above zero.
///
/// ```
/// use measure::supply::torque_left;
/// use quantity::Volts;
/// let left = torque_left(Volts::new(104.0), Volts::new(115.0)).unwrap();
/// assert!((left.get() - 0.82).abs() < 0.005);
/// ```
#[must_use]
pub fn torque_left(volts: Volts, rated: Volts) -> Option<Ratio> {
    let share = volts.get() / rated.get();
    (rated.get() > 0.0).then(|| Ratio::new(share * share))
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Sources;

    fn volts(value: f64) -> Uncertain<Volts> {
        Uncertain::exact(Volts::new(value))
    }

    fn error(idle: f64, starting: f64, amps: f64, factor: f64) -> Option<SupplyError> {
        let amps = Uncertain::exact(Amps::new(amps));
        source_resistance(&volts(idle), &volts(starting), &amps, Ratio::new(factor)).err()
    }

    #[test]
    fn each_reading_that_cannot_be_has_its_error() {
        assert_eq!(error(0.0, 100.0, 9.0, 1.0), Some(SupplyError::NoIdleVolts));
        assert_eq!(
            error(120.0, f64::NAN, 9.0, 1.0),
            Some(SupplyError::NoStartingVolts)
        );
        assert_eq!(error(120.0, 110.0, 0.0, 1.0), Some(SupplyError::NoCurrent));
        assert_eq!(
            error(120.0, 110.0, 9.0, 1.1),
            Some(SupplyError::NoPowerFactor)
        );
        assert_eq!(error(110.0, 120.0, 9.0, 1.0), Some(SupplyError::VoltsRose));
        assert_eq!(error(120.0, 110.0, 9.0, 1.0), None);
    }

    #[test]
    fn a_rise_within_the_meters_error_is_no_contradiction() {
        let mut sources = Sources::default();
        let idle = volts(120.0).with(sources.fresh(), Volts::new(0.6));
        let starting = volts(120.5).with(sources.fresh(), Volts::new(0.6));
        let amps = Uncertain::exact(Amps::new(9.0));
        let found = source_resistance(&idle, &starting, &amps, Ratio::new(1.0)).unwrap();
        assert!(found.value().get() < 0.0 && found.value() + found.expanded() > Ohms::new(0.0));
    }

    #[test]
    fn what_one_meter_gets_wrong_alike_is_not_in_the_drop() {
        let mut sources = Sources::default();
        let gain = sources.fresh();
        let idle = volts(120.0).with(gain, Volts::new(1.2));
        let starting = volts(108.0).with(gain, Volts::new(1.08));
        let share = sag(&idle, &starting).unwrap();
        assert!((share.value().get() - 0.1).abs() < 1e-12);
        assert!(share.standard().get() < 1e-12);
    }

    #[test]
    fn the_volts_behind_the_resistance_that_was_found_are_those_measured() {
        let amps = Uncertain::exact(Amps::new(14.0));
        let factor = LOCKED_ROTOR_POWER_FACTOR;
        let way = source_resistance(&volts(230.0), &volts(214.0), &amps, factor).unwrap();
        let left = volts_left(Volts::new(230.0), way.value(), Amps::new(14.0), factor);
        assert!((left.get() - 214.0).abs() < 1e-9);
    }
}

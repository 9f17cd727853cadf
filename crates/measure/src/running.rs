//! A running machine's watts, volts and amperes.
//!
//! Answers: its power factor and how surely; whether an ammeter was read in milliamperes; how
//! its current stands against a plate; what its motor can take with the rotor locked; where its
//! watts are going. How long a ground-fault device may take is in
//! [`crate::class_a_longest_time`].

use quantity::{
    Amps, Limit, Limits, Observed, Ohms, Ratio, Side, Strictness, Typed, Uncertain, Volts, Watts,
};

use crate::{Against, against};

/// Why no power factor comes of what was measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RunningError {
    /// Watts, volts or amperes are negative or no number.
    NotAReading,
    /// The volts are zero: measure them at the machine's plug.
    NoVolts,
    /// The current is zero: it doesn't run, or the clamp is round both conductors.
    NoCurrent,
    /// More watts than volts times amperes, beyond all uncertainty: a reading is of another
    /// moment, or the clamp is round part of the circuit. Read all three at once.
    MoreWattsThanVoltAmperes,
    /// Volts times amperes are fifty times the watts or more: the amperes are milliamperes.
    Milliamperes,
}

/// No machine that draws watts has a power factor below this: an unloaded small motor's is about
/// 0.2 (judgement), and milliamperes taken for amperes make it a thousandth of what it is.
const LEAST_POWER_FACTOR: f64 = 0.02;

/// Watts over volt-amperes, to first order in the errors of all three.
///
/// # Errors
/// [`RunningError`] says which reading can't be, and how to take it.
///
/// ```
/// use measure::running::power_factor;
/// use quantity::{Amps, Uncertain, Volts, Watts};
/// let (watts, volts) = (Uncertain::exact(Watts::new(659.0)), Uncertain::exact(Volts::new(120.0)));
/// let amps = Uncertain::exact(Amps::new(5.910));
/// let found = power_factor(&watts, &volts, &amps).unwrap();
/// assert!((found.value().get() - 0.93).abs() < 0.001);
/// ```
pub fn power_factor(
    watts: &Uncertain<Watts>,
    volts: &Uncertain<Volts>,
    amps: &Uncertain<Amps>,
) -> Result<Uncertain<Ratio>, RunningError> {
    let (power, across, current) = (watts.value().get(), volts.value().get(), amps.value().get());
    let readings = [power, across, current];
    if readings.iter().any(|one| !(*one >= 0.0 && one.is_finite())) {
        return Err(RunningError::NotAReading);
    }
    if across <= 0.0 {
        return Err(RunningError::NoVolts);
    }
    if current <= 0.0 {
        return Err(RunningError::NoCurrent);
    }
    let apparent: Uncertain<Watts> = Uncertain::following(
        Watts::new(across * current),
        (volts, current),
        (amps, across),
    );
    let factor = watts.ratio(&apparent);
    if factor.value() - factor.expanded() > Ratio::new(1.0) {
        Err(RunningError::MoreWattsThanVoltAmperes)
    } else if power > 0.0 && factor.value().get() <= LEAST_POWER_FACTOR {
        Err(RunningError::Milliamperes)
    } else {
        Ok(factor)
    }
}

/// Why amperes are refused or asked about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AmpsDoubt {
    /// An alternating current's amount is never below zero.
    Negative,
    /// No household circuit carries this.
    BeyondAnyCircuit,
    /// More than a household machine takes even with its rotor locked: milliamperes, or the
    /// decimal mark.
    MaybeMilliamperes,
}

/// Limits for a household machine's current. A third of a horsepower at 115 V takes some 25 A
/// with its rotor locked (from memory); the limits are judgement.
pub const AMPS_LIMITS: Limits<Amps, AmpsDoubt> = Limits(&[
    Limit {
        strictness: Strictness::Hard,
        side: Side::Below(Amps::new(0.0)),
        reason: AmpsDoubt::Negative,
    },
    Limit {
        strictness: Strictness::Hard,
        side: Side::Above(Amps::new(20_000.0)),
        reason: AmpsDoubt::BeyondAnyCircuit,
    },
    Limit {
        strictness: Strictness::Soft,
        side: Side::Above(Amps::new(60.0)),
        reason: AmpsDoubt::MaybeMilliamperes,
    },
]);

/// What to refuse or ask about a reading of current. Over range says nothing and isn't in doubt.
///
/// ```
/// use measure::running::{AmpsDoubt, doubt_about_amps};
/// use quantity::{Amps, Strictness, parse_reading};
/// let typed = parse_reading("1100", Amps::new(20_000.0)).unwrap();
/// let asked = (Strictness::Soft, AmpsDoubt::MaybeMilliamperes);
/// assert_eq!(doubt_about_amps(typed), Some(asked));
/// ```
#[must_use]
pub fn doubt_about_amps(typed: Typed<Amps>) -> Option<(Strictness, AmpsDoubt)> {
    match typed.observed {
        Observed::Value(value) => AMPS_LIMITS
            .beyond(value)
            .map(|limit| (limit.strictness, limit.reason)),
        Observed::OverRange { .. } => None,
    }
}

/// Whose plate a current is held against.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Plate {
    /// The compressor's own.
    Compressor,
    /// The whole machine's, which may include a defrost heater.
    Machine,
}

/// How a settled current stands against a plate. A sound machine settles at 55 to 90 % of its
/// compressor's own plate (common practice, no source). Of the machine's plate nothing but
/// "above it" is told. `None` where the plate's current isn't above zero.
///
/// ```
/// use measure::Against;
/// use measure::running::{Plate, current_against_plate};
/// use quantity::{Amps, Uncertain};
/// let settled = Uncertain::exact(Amps::new(1.1));
/// let of = |plate| current_against_plate(&settled, Amps::new(1.5), plate);
/// assert_eq!(of(Plate::Compressor), Some(Against::Within));
/// assert_eq!(of(Plate::Machine), Some(Against::CannotTell));
/// ```
#[must_use]
pub fn current_against_plate(
    settled: &Uncertain<Amps>,
    plate: Amps,
    whose: Plate,
) -> Option<Against> {
    if !(plate.get() > 0.0 && plate.get().is_finite()) {
        return None;
    }
    Some(match whose {
        Plate::Compressor => against(settled, plate * 0.55, plate * 0.9),
        Plate::Machine => match against(settled, Amps::new(0.0), plate) {
            Against::Above => Against::Above,
            _ => Against::CannotTell,
        },
    })
}

/// The most that the run winding alone can draw: U/R, since its reactance and the rotor only
/// lower it. `None` where the resistance isn't above zero.
#[must_use]
pub fn run_winding_bound(volts: Volts, run: &Uncertain<Ohms>) -> Option<Uncertain<Amps>> {
    let ohms = run.value().get();
    let amps = volts.get() / ohms;
    (ohms > 0.0).then(|| {
        let nothing = Uncertain::exact(Ohms::new(0.0));
        Uncertain::following(Amps::new(amps), (run, -amps / ohms), (&nothing, 0.0))
    })
}

/// The most that both windings can draw with a start device in the start winding's way:
/// U/R + U/(S + device). `None` where a resistance isn't above zero or the device's is negative.
#[must_use]
pub fn both_windings_bound(
    volts: Volts,
    run: &Uncertain<Ohms>,
    start: &Uncertain<Ohms>,
    device: Ohms,
) -> Option<Uncertain<Amps>> {
    let (main, auxiliary) = (run.value().get(), start.value().get());
    if !(main > 0.0 && auxiliary > 0.0 && device.get() >= 0.0) {
        return None;
    }
    let way = auxiliary + device.get();
    let (one, other) = (volts.get() / main, volts.get() / way);
    let amps = Amps::new(one + other);
    Some(Uncertain::following(
        amps,
        (run, -one / main),
        (start, -other / way),
    ))
}

/// What a motor should draw with its rotor locked: 4 to 8 times its running current (small
/// hermetic motors, from memory), cut at a bound from its windings. `None` where the running
/// current isn't above zero, or the bound lies below four times it: then one of both readings is
/// not of this motor.
///
/// ```
/// use measure::running::locked_rotor;
/// use quantity::Amps;
/// let (least, most) = locked_rotor(Amps::new(1.2), Some(Amps::new(7.0))).unwrap();
/// assert_eq!((least, most), (Amps::new(4.8), Amps::new(7.0)));
/// ```
#[must_use]
pub fn locked_rotor(running: Amps, bound: Option<Amps>) -> Option<(Amps, Amps)> {
    const TIMES: (f64, f64) = (4.0, 8.0);
    let (least, most) = (running * TIMES.0, running * TIMES.1);
    let most = match bound {
        Some(bound) if bound < most => bound,
        _ => most,
    };
    (running.get() > 0.0 && most >= least).then_some((least, most))
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::parse_reading;

    fn error(watts: f64, volts: f64, amps: f64) -> Option<RunningError> {
        power_factor(
            &Uncertain::exact(Watts::new(watts)),
            &Uncertain::exact(Volts::new(volts)),
            &Uncertain::exact(Amps::new(amps)),
        )
        .err()
    }

    #[test]
    fn readings_that_cannot_be_have_their_error() {
        assert_eq!(error(80.0, 120.0, 1.1), None);
        assert_eq!(error(80.0, 0.0, 1.1), Some(RunningError::NoVolts));
        assert_eq!(error(80.0, 120.0, 0.0), Some(RunningError::NoCurrent));
        assert_eq!(error(-80.0, 120.0, 1.1), Some(RunningError::NotAReading));
        assert_eq!(error(80.0, f64::NAN, 1.1), Some(RunningError::NotAReading));
        assert_eq!(error(80.0, 120.0, 1100.0), Some(RunningError::Milliamperes));
        assert_eq!(
            error(180.0, 120.0, 1.1),
            Some(RunningError::MoreWattsThanVoltAmperes)
        );
    }

    #[test]
    fn amperes_of_a_fuse_box_are_asked_about() {
        let doubt = |text| doubt_about_amps(parse_reading(text, Amps::new(600.0)).unwrap());
        assert_eq!(doubt("1.1"), None);
        assert_eq!(doubt("OL"), None);
        assert_eq!(
            doubt("850"),
            Some((Strictness::Soft, AmpsDoubt::MaybeMilliamperes))
        );
        assert_eq!(doubt("-1"), Some((Strictness::Hard, AmpsDoubt::Negative)));
    }

    #[test]
    fn of_a_whole_machines_plate_only_more_is_told() {
        let settled = |amps, whose| {
            let settled = Uncertain::exact(Amps::new(amps));
            current_against_plate(&settled, Amps::new(2.0), whose)
        };
        assert_eq!(settled(0.5, Plate::Machine), Some(Against::CannotTell));
        assert_eq!(settled(2.2, Plate::Machine), Some(Against::Above));
        assert_eq!(settled(0.9, Plate::Compressor), Some(Against::Below));
        assert_eq!(settled(1.9, Plate::Compressor), Some(Against::Above));
        let none = current_against_plate(
            &Uncertain::exact(Amps::new(1.0)),
            Amps::new(0.0),
            Plate::Machine,
        );
        assert_eq!(none, None);
    }

    #[test]
    fn a_bound_below_four_times_the_running_current_is_a_contradiction() {
        let locked = |running, bound: Option<f64>| {
            locked_rotor(Amps::new(running), bound.map(Amps::new)).map(|(_, most)| most.get())
        };
        assert_eq!(locked(2.0, None), Some(16.0));
        assert_eq!(locked(2.0, Some(30.0)), Some(16.0));
        assert_eq!(locked(2.0, Some(7.9)), None);
        assert_eq!(locked(0.0, None), None);
    }
}

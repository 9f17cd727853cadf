//! What a capacitor still holds, and how long it takes to let go.

use quantity::{Farads, Joules, Ohms, Seconds, Volts, Watts};

/// Below this a charge is no shock hazard in the dry: 50 V (29 CFR 1910.303(g)(2), clause from
/// memory). What is worked on is proved below it with a meter.
pub const SAFE_BELOW: Volts = Volts::new(50.0);

/// The energy in a charged capacitor: ½·C·U².
///
/// ```
/// use measure::stored_energy;
/// use quantity::{Farads, Volts};
/// assert!((stored_energy(Farads::new(200e-6), Volts::new(325.0)).get() - 10.6).abs() < 0.05);
/// ```
#[must_use]
pub fn stored_energy(capacitance: Farads, volts: Volts) -> Joules {
    Joules::new(0.5 * capacitance.get() * volts.get() * volts.get())
}

/// The time that a resistor takes to bring a capacitor from one voltage to a lower one:
/// R·C·ln(U/u). Zero where it is there already; `None` where the lower one isn't above zero,
/// which takes for ever.
#[must_use]
pub fn discharge_time(
    capacitance: Farads,
    resistor: Ohms,
    from: Volts,
    to: Volts,
) -> Option<Seconds> {
    if to.get() <= 0.0 {
        return None;
    }
    let ratio = (from.get().abs() / to.get()).max(1.0);
    Some(Seconds::new(
        resistor.get() * capacitance.get() * libm::log(ratio),
    ))
}

/// The most that a resistor has to take at the start: U²/R. `None` for no resistor at all.
#[must_use]
pub fn peak_power(resistor: Ohms, from: Volts) -> Option<Watts> {
    (resistor.get() > 0.0).then(|| Watts::new(from.get() * from.get() / resistor.get()))
}

/// Whether a charge can hurt: above 100 V and 1 J, or above 400 V and 0.25 J (from memory, after
/// NFPA 70E and the DOE electrical safety rules).
#[must_use]
pub fn can_hurt(capacitance: Farads, volts: Volts) -> bool {
    let energy = stored_energy(capacitance, volts).get();
    let size = volts.get().abs();
    (size > 100.0 && energy > 1.0) || (size > 400.0 && energy > 0.25)
}

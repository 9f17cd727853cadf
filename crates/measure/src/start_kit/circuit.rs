//! A split-phase motor at standstill as two impedances on one supply.

use core::f64::consts::PI;
use core::ops::Add;

use quantity::{Amps, Farads, Hertz, Ohms, Volts};

/// A resistance and a reactance in series; the reactance is positive for a winding, negative for
/// a capacitor.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Impedance {
    /// What turns into heat or torque.
    pub resistance: Ohms,
    /// What doesn't.
    pub reactance: Ohms,
}

impl Impedance {
    /// From both parts in ohms.
    #[must_use]
    pub const fn new(resistance: Ohms, reactance: Ohms) -> Self {
        Self {
            resistance,
            reactance,
        }
    }

    /// A resistance alone, such as a cold PTC.
    #[must_use]
    pub const fn resistor(resistance: Ohms) -> Self {
        Self::new(resistance, Ohms::new(0.0))
    }

    /// Its amount.
    #[must_use]
    pub fn size(self) -> Ohms {
        Ohms::new(libm::hypot(self.resistance.get(), self.reactance.get()))
    }
}

impl Add for Impedance {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::new(
            self.resistance + other.resistance,
            self.reactance + other.reactance,
        )
    }
}

/// A loss-free capacitor's impedance. `None` where it or the frequency isn't above zero.
#[must_use]
pub fn capacitor(capacitance: Farads, frequency: Hertz) -> Option<Impedance> {
    let admittance = 2.0 * PI * frequency.get() * capacitance.get();
    let possible = capacitance.get() > 0.0 && frequency.get() > 0.0 && admittance.is_finite();
    possible.then(|| Impedance::new(Ohms::new(0.0), Ohms::new(-1.0 / admittance)))
}

/// The capacitance with this reactance, which is given as a positive number. `None` where it or
/// the frequency isn't above zero.
#[must_use]
pub fn capacitance_of(reactance: Ohms, frequency: Hertz) -> Option<Farads> {
    let farads = 1.0 / (2.0 * PI * frequency.get() * reactance.get());
    (farads > 0.0 && farads.is_finite()).then(|| Farads::new(farads))
}

/// Main and start winding of a motor whose rotor stands, each with what is in series with it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Standstill {
    main: Impedance,
    start: Impedance,
}

impl Standstill {
    /// Both windings. `None` unless every part is finite, both resistances are above zero and
    /// the main winding's reactance is too: no winding on iron is without.
    ///
    /// ```
    /// use measure::start_kit::{Impedance, Standstill, capacitance_of};
    /// use quantity::{Hertz, Ohms};
    /// let winding = |r, x| Impedance::new(Ohms::new(r), Ohms::new(x));
    /// let motor = Standstill::new(winding(4.5, 3.7), winding(9.5, 3.5)).unwrap();
    /// let found = capacitance_of(motor.quadrature(), Hertz::new(60.0)).unwrap();
    /// assert!((found.get() * 1e6 - 176.2).abs() < 0.05);
    /// ```
    #[must_use]
    pub fn new(main: Impedance, start: Impedance) -> Option<Self> {
        let parts = [main.resistance, main.reactance, start.resistance];
        let positive = parts
            .iter()
            .all(|part| part.get() > 0.0 && part.get().is_finite());
        (positive && start.reactance.get().is_finite()).then_some(Self { main, start })
    }

    /// The same with something in series with the start winding.
    #[must_use]
    pub fn with_start_series(self, series: Impedance) -> Self {
        Self {
            start: self.start + series,
            ..self
        }
    }

    /// The main winding.
    #[must_use]
    pub const fn main(&self) -> Impedance {
        self.main
    }

    /// The start winding with what is in series with it.
    #[must_use]
    pub const fn start(&self) -> Impedance {
        self.start
    }

    /// The capacitive reactance that puts the currents at a right angle, in addition to what is
    /// in series already: Xa + Ra·Rm/Xm.
    #[must_use]
    pub fn quadrature(&self) -> Ohms {
        let [main, start] = [self.main, self.start];
        let ratio = main.resistance.get() / main.reactance.get();
        start.reactance + start.resistance * ratio
    }

    /// The one for the greatest torque: Xa + Ra·Rm/(|Zm| + Xm).
    #[must_use]
    pub fn greatest_torque(&self) -> Ohms {
        let [main, start] = [self.main, self.start];
        let ratio = main.resistance.get() / (main.size().get() + main.reactance.get());
        start.reactance + start.resistance * ratio
    }

    /// The current in the main winding.
    #[must_use]
    pub fn main_current(&self, supply: Volts) -> Amps {
        size(current(supply, self.main))
    }

    /// The current in the start winding.
    #[must_use]
    pub fn start_current(&self, supply: Volts) -> Amps {
        size(current(supply, self.start))
    }

    /// The current of both together.
    #[must_use]
    pub fn line_current(&self, supply: Volts) -> Amps {
        let [one, other] = [current(supply, self.main), current(supply, self.start)];
        size([one[0] + other[0], one[1] + other[1]])
    }

    /// How far the start winding's current is ahead of the main winding's, in degrees from −180
    /// to 180.
    #[must_use]
    pub fn angle_degrees(&self) -> f64 {
        let [one, other] = self.unit_currents();
        libm::atan2(cross(one, other), one[0] * other[0] + one[1] * other[1]) * 180.0 / PI
    }

    /// Im·Ia·sin α in A²: what starting torque is in proportion to, for one motor. Below zero it
    /// turns backwards.
    #[must_use]
    pub fn torque(&self, supply: Volts) -> f64 {
        let [one, other] = self.unit_currents();
        cross(one, other) * supply.get() * supply.get()
    }

    fn unit_currents(&self) -> [[f64; 2]; 2] {
        let volt = Volts::new(1.0);
        [current(volt, self.main), current(volt, self.start)]
    }
}

/// The current through an impedance, in step with the supply and a quarter turn ahead of it.
fn current(supply: Volts, through: Impedance) -> [f64; 2] {
    let (r, x) = (through.resistance.get(), through.reactance.get());
    let scale = supply.get() / (r * r + x * x);
    [r * scale, -x * scale]
}

fn size(current: [f64; 2]) -> Amps {
    Amps::new(libm::hypot(current[0], current[1]))
}

fn cross(one: [f64; 2], other: [f64; 2]) -> f64 {
    one[0] * other[1] - one[1] * other[0]
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn motor(rm: f64, xm: f64, ra: f64, xa: f64) -> Option<Standstill> {
        let winding = |r, x| Impedance::new(Ohms::new(r), Ohms::new(x));
        Standstill::new(winding(rm, xm), winding(ra, xa))
    }

    #[test]
    fn a_winding_without_resistance_or_reactance_is_none() {
        assert_eq!(motor(0.0, 3.7, 9.5, 3.5), None);
        assert_eq!(motor(4.5, 0.0, 9.5, 3.5), None);
        assert_eq!(motor(4.5, 3.7, f64::NAN, 3.5), None);
        assert_eq!(capacitor(Farads::new(0.0), Hertz::new(60.0)), None);
        assert_eq!(capacitance_of(Ohms::new(-1.0), Hertz::new(60.0)), None);
    }

    proptest! {
        #[test]
        fn both_formulas_do_what_they_say(
            rm in 1.0..30.0f64, xm in 1.0..60.0f64, ra in 1.0..50.0f64, xa in 1.0..80.0f64,
            away in 0.5..2.0f64,
        ) {
            let motor = motor(rm, xm, ra, xa).unwrap();
            let with = |ohms: f64| {
                let series = Impedance::new(Ohms::new(0.0), Ohms::new(-ohms));
                motor.with_start_series(series)
            };
            let right_angle = with(motor.quadrature().get());
            prop_assert!((right_angle.angle_degrees() - 90.0).abs() < 1e-9);
            let volts = Volts::new(115.0);
            let greatest = with(motor.greatest_torque().get()).torque(volts);
            let other = with(motor.greatest_torque().get() * away).torque(volts);
            prop_assert!(greatest >= other * (1.0 - 1e-12));
            prop_assert!(greatest >= right_angle.torque(volts) * (1.0 - 1e-12));
        }

        #[test]
        fn a_capacitor_and_its_reactance_are_each_others_inverse(micro in 1.0..1000.0f64) {
            let (farads, mains) = (Farads::new(micro * 1e-6), Hertz::new(50.0));
            let reactance = -capacitor(farads, mains).unwrap().reactance;
            let back = capacitance_of(reactance, mains).unwrap();
            prop_assert!((back.get() / farads.get() - 1.0).abs() < 1e-12);
        }

        #[test]
        fn torque_is_the_product_of_currents_and_the_sine_of_their_angle(
            rm in 1.0..30.0f64, xm in 1.0..60.0f64, ra in 1.0..50.0f64, xa in -80.0..80.0f64,
        ) {
            let (motor, volts) = (motor(rm, xm, ra, xa).unwrap(), Volts::new(230.0));
            let sine = libm::sin(motor.angle_degrees() / 180.0 * PI);
            let product = motor.main_current(volts).get() * motor.start_current(volts).get() * sine;
            prop_assert!((motor.torque(volts) - product).abs() < 1e-6 * product.abs().max(1.0));
        }
    }
}

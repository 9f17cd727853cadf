//! The motors that fit winding ohms and a clamp's readings.

use quantity::{Amps, Hertz, Ohms, Uncertain, Volts};

use super::circuit::{Impedance, Standstill};
use super::prior::KitPrior;

/// Points of the low-discrepancy sequence. With both currents read to 3 %, some hundreds of them
/// count.
const POINTS: u32 = 8192;
/// Fewer motors than this, as their weights count, and the readings contradict each other or the
/// prior.
const FEWEST: f64 = 25.0;

/// The least weight that is kept, as a share of the greatest.
const LEAST_WEIGHT: f64 = 1e-4;

/// What was read of one motor.
#[derive(Debug, Clone, PartialEq)]
pub struct LockedRotor {
    /// The main winding's ohms, at the temperature of the trial.
    pub main: Uncertain<Ohms>,
    /// The start winding's ohms.
    pub start: Uncertain<Ohms>,
    /// The plain start device's ohms when cold: a PTC's, or zero for a current relay's contact.
    pub device: Ohms,
    /// The volts at the plug while it hums.
    pub supply: Volts,
    /// The mains' frequency.
    pub frequency: Hertz,
    /// The current with the start winding disconnected.
    pub main_alone: Option<Uncertain<Amps>>,
    /// The current with the start winding in through that device, read before a PTC has warmed
    /// up.
    pub with_start: Option<Uncertain<Amps>>,
}

/// Why no motor fits.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FitError {
    /// Winding ohms are zero, negative or no number, or the device's are negative: measure them
    /// first.
    NoWindings,
    /// Volts or frequency are zero, negative or no number.
    NoSupply,
    /// A current is zero, negative or no number, or without any uncertainty: no clamp is exact.
    NoCurrent,
    /// A span of the prior ends before it begins, or isn't above zero.
    NoPrior,
    /// No motor of the prior fits both ohms and currents: a winding of another motor, a current
    /// read too late, or the clamp round both conductors.
    Contradiction,
}

/// Motors with their weights.
#[derive(Debug, Clone, PartialEq)]
pub struct Fit {
    pub(super) motors: Vec<(Standstill, f64)>,
    pub(super) device: Ohms,
    pub(super) supply: Volts,
    pub(super) frequency: Hertz,
}

impl Fit {
    /// The motors that fit what was read, under a prior. The same readings give the same bits.
    ///
    /// # Errors
    /// [`FitError`] says which reading can't be, or that they contradict each other.
    pub fn of(read: &LockedRotor, prior: &KitPrior) -> Result<Self, FitError> {
        refuse(read, prior)?;
        let mut motors = Vec::with_capacity(POINTS as usize);
        for point in 1..=POINTS {
            if let Some((motor, weight)) = drawn(read, prior, point)
                && weight > 0.0
            {
                motors.push((motor, weight));
            }
        }
        // What weighs next to nothing moves no percentile and costs as much as what counts.
        let most = motors.iter().map(|one| one.1).fold(0.0, f64::max);
        motors.retain(|one| one.1 > LEAST_WEIGHT * most);
        let fit = Self {
            motors,
            device: read.device,
            supply: read.supply,
            frequency: read.frequency,
        };
        if fit.support() >= FEWEST {
            Ok(fit)
        } else {
            Err(FitError::Contradiction)
        }
    }

    /// How many motors of equal weight would say as much: (Σw)²/Σw². A few dozen is little: the
    /// readings nearly contradict each other.
    #[must_use]
    pub fn support(&self) -> f64 {
        let sum: f64 = self.motors.iter().map(|one| one.1).sum();
        let squares: f64 = self.motors.iter().map(|one| one.1 * one.1).sum();
        if squares > 0.0 {
            sum * sum / squares
        } else {
            0.0
        }
    }
}

fn refuse(read: &LockedRotor, prior: &KitPrior) -> Result<(), FitError> {
    let positive = |value: f64| value > 0.0 && value.is_finite();
    let windings = [&read.main, &read.start].map(|ohms| ohms.value().get());
    let device = read.device.get() >= 0.0 && read.device.get().is_finite();
    let current =
        |amps: &Uncertain<Amps>| positive(amps.value().get()) && positive(amps.standard().get());
    let currents = [&read.main_alone, &read.with_start];
    if !device || !windings.into_iter().all(positive) {
        Err(FitError::NoWindings)
    } else if !positive(read.supply.get()) || !positive(read.frequency.get()) {
        Err(FitError::NoSupply)
    } else if !currents.into_iter().flatten().all(current) {
        Err(FitError::NoCurrent)
    } else if !prior.is_one() {
        Err(FitError::NoPrior)
    } else {
        Ok(())
    }
}

/// One motor of the prior and how well it fits.
///
/// Where the main winding's current was read, |Zm| is drawn from that reading and the rotor's
/// share follows: almost all points would miss a good reading otherwise. The weight is then the
/// prior's density there times the change of variables, 1/(r·√(1 + q²)).
fn drawn(read: &LockedRotor, prior: &KitPrior, point: u32) -> Option<(Standstill, f64)> {
    let [rotor, slope, turns, reactance, main, start] =
        [2, 3, 5, 7, 11, 13].map(|base| radical_inverse(point, base));
    let main = within_error(&read.main, main);
    let start = within_error(&read.start, start);
    let slope = prior.main_reactance_over_resistance.at(slope);
    let (rotor, mut weight) = match &read.main_alone {
        None => (prior.rotor_over_main.at(rotor), 1.0),
        Some(amps) => {
            let size = read.supply.get() / normal_within(amps, rotor)?;
            let steep = libm::sqrt(1.0 + slope * slope);
            let rotor = size / (steep * main) - 1.0;
            if !prior.rotor_over_main.holds(rotor) {
                return None;
            }
            (rotor, size / (main * rotor * steep))
        }
    };
    let main_resistance = main * (1.0 + rotor);
    let main_reactance = main_resistance * slope;
    let turns = prior.turns.at(turns);
    let start_resistance = start + turns * turns * rotor * main;
    let start_reactance = prior.start_reactance.at(reactance) * turns * turns * main_reactance;
    let winding = |r: f64, x: f64| Impedance::new(Ohms::new(r), Ohms::new(x));
    let motor = Standstill::new(
        winding(main_resistance, main_reactance),
        winding(start_resistance, start_reactance),
    )?;
    let plain = motor.with_start_series(Impedance::resistor(read.device));
    if plain.angle_degrees() < prior.least_angle_degrees {
        return None;
    }
    if let Some(amps) = &read.with_start {
        let line = plain.line_current(read.supply);
        let away = (line - amps.value()).get() / amps.standard().get();
        weight *= libm::exp(-0.5 * away * away);
    }
    Some((motor, weight))
}

/// A value within its rectangular limits, ±√3·u, a share of the way; never below a tenth of it.
fn within_error(value: &Uncertain<Ohms>, share: f64) -> f64 {
    let middle = value.value().get();
    let limit = libm::sqrt(3.0) * value.standard().get();
    (middle + limit * (2.0 * share - 1.0)).max(0.1 * middle)
}

/// A normal value by its share of the distribution, to 1 in 10⁻⁷: Newton's method on the
/// distribution function. `None` where that isn't above zero.
fn normal_within(value: &Uncertain<Amps>, share: f64) -> Option<f64> {
    let mut z = 0.0;
    for _ in 0..30 {
        let below = 0.5 * libm::erfc(-z / core::f64::consts::SQRT_2);
        let density = libm::exp(-0.5 * z * z) / libm::sqrt(2.0 * core::f64::consts::PI);
        let step = (below - share) / density;
        z -= step.clamp(-1.0, 1.0);
        if step.abs() < 1e-7 {
            break;
        }
    }
    let amps = value.value().get() + z * value.standard().get();
    (amps > 0.0).then_some(amps)
}

/// The point's place in a van der Corput sequence: its digits mirrored at the point. All of them
/// together, in coprime bases, are Halton's sequence (J. H. Halton, *Numerische Mathematik* 2
/// (1960) 84, from memory).
fn radical_inverse(mut point: u32, base: u32) -> f64 {
    let (mut share, mut place) = (0.0, 1.0);
    while point > 0 {
        place /= f64::from(base);
        share += f64::from(point % base) * place;
        point /= base;
    }
    share
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Sources;

    #[test]
    fn the_sequence_fills_the_gaps_in_turn() {
        let shares: Vec<f64> = (1..=4).map(|point| radical_inverse(point, 2)).collect();
        assert_eq!(shares, [0.5, 0.25, 0.75, 0.125]);
        assert!((radical_inverse(5, 3) - 7.0 / 9.0).abs() < 1e-12);
    }

    #[test]
    fn a_share_of_the_normal_distribution_is_its_percentile() {
        let value =
            Uncertain::exact(Amps::new(10.0)).with(Sources::default().fresh(), Amps::new(1.0));
        // Percentiles of the standard normal distribution, from any table.
        for (share, z) in [
            (0.5, 0.0),
            (0.975, 1.959_964),
            (0.05, -1.644_854),
            (0.001, -3.090_232),
        ] {
            let found = normal_within(&value, share).unwrap() - 10.0;
            assert!((found - z).abs() < 1e-5, "{share}: {found}");
        }
    }
}

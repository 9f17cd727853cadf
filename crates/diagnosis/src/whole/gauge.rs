//! How likely a number is under each answer that it may stand for.
//!
//! One function gives the density of a reading; what is foretold before the reading is its
//! integral, which a test checks by quadrature, so that the two can't differ. Scales are chosen so that a sound
//! part's readings are near to normal: decades of ohms, degrees.

mod surfaces;

use libm::{erfc, exp, log, log10, sqrt};
use measure::windings::Mains;
use quantity::{Accuracy, Observed, Ohms, Typed};

use super::clue::Clue;

/// How often a reading is a slip that can show anything on the scale (judgement).
const SLIP: f64 = 0.015;
/// Decades of ohms that a hand-held meter shows.
const OHMS: (f64, f64) = (-2.0, 10.0);
/// Degrees Celsius that are met in and around a machine.
const DEGREES: (f64, f64) = (-45.0, 160.0);
/// Decades of a capacitor's reading over its marking.
const SHARE: (f64, f64) = (-3.0, 1.0);
/// Bins of what is foretold.
const BINS: usize = 48;

/// A scale with one normal distribution per answer of a clue.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Gauge {
    range: (f64, f64),
    /// Mean and standard deviation, in the order of the clue's answers.
    normals: Vec<(f64, f64)>,
}

impl Gauge {
    /// The gauge of a clue that takes a number; `None` for a clue that doesn't. All figures are
    /// judgement, means and spreads of what trade manuals and meters show.
    pub(super) fn of(clue: Clue, mains: Option<Mains>) -> Option<Self> {
        let high_volts = mains == Some(Mains::V230F50);
        let ohms = |normals: &[(f64, f64)]| {
            Some(Self {
                range: OHMS,
                normals: normals.to_vec(),
            })
        };
        let degrees = |normals: &[(f64, f64)]| {
            Some(Self {
                range: DEGREES,
                normals: normals.to_vec(),
            })
        };
        match clue {
            // Hundreds of megohms; damp and dirt; a fault.
            Clue::PlugInsulation | Clue::ShellInsulation => {
                ohms(&[(8.2, 0.9), (5.8, 0.45), (4.0, 0.8)])
            }
            // Closed with leads, over range, a burnt contact.
            Clue::Protector => ohms(&[(-0.5, 0.35), (7.0, 1.5), (0.9, 0.5)]),
            // A motor, nothing, a short, a heater or fans alone.
            Clue::BladeToBlade if high_volts => {
                ohms(&[(1.25, 0.3), (6.0, 1.5), (-0.3, 0.35), (2.5, 0.35)])
            }
            Clue::BladeToBlade => ohms(&[(0.65, 0.3), (6.0, 1.5), (-0.4, 0.3), (1.9, 0.4)]),
            // Within some per cent of the marking (run capacitors ±5 to ±10 %, IEC 60252-1, from
            // memory); part of it lost; nothing left, or shorted.
            Clue::Capacitor => Some(Self {
                range: SHARE,
                normals: vec![(0.0, 0.045), (-0.25, 0.15), (-2.0, 0.7)],
            }),
            // After some running; after running against something.
            Clue::WindingHeat => degrees(&[(70.0, 18.0), (112.0, 18.0)]),
            Clue::RoomTemperature => degrees(&[(20.0, 4.5), (36.0, 3.0), (4.0, 3.5)]),
            _ => None,
        }
    }

    /// A cold PTC against the band of the part: as it should, open, near zero, drifted.
    pub(super) fn ptc(band: measure::Band) -> Self {
        let (least, most) = (log10(band.least.get()), log10(band.most.get()));
        let middle = (least + most) / 2.0;
        Self {
            range: OHMS,
            normals: vec![
                (middle, ((most - least) / 4.0).max(0.05)),
                (6.0, 1.8),
                (-0.5, 0.35),
                (middle, 0.6),
            ],
        }
    }

    /// The freezer after half a day: the answers of [`Clue::Temperatures`].
    pub(super) fn freezer() -> Self {
        Self {
            range: DEGREES,
            normals: vec![
                (-18.0, 3.0),
                (-18.0, 4.0),
                (-7.0, 5.0),
                (12.0, 8.0),
                (-4.0, 4.0),
                (-27.0, 3.0),
            ],
        }
    }

    /// The fresh food after half a day.
    pub(super) fn fresh_food() -> Self {
        Self {
            range: DEGREES,
            normals: vec![
                (4.0, 2.5),
                (12.0, 4.0),
                (12.0, 5.0),
                (18.0, 6.0),
                (4.5, 2.5),
                (-1.0, 1.5),
            ],
        }
    }

    /// Natural logarithm of the density at a point that is known to within a standard
    /// uncertainty.
    pub(super) fn ln_density(&self, at: f64, uncertainty: f64, answer: usize) -> f64 {
        let (low, high) = self.range;
        let at = at.clamp(low, high);
        let (mean, deviation) = self.normals[answer];
        let deviation = sqrt(deviation * deviation + uncertainty * uncertainty);
        let z = (at - mean) / deviation;
        let held = above(low, mean, deviation) - above(high, mean, deviation);
        let normal = exp(-0.5 * z * z)
            / (deviation * sqrt(2.0 * core::f64::consts::PI) * held.max(f64::MIN_POSITIVE));
        log((1.0 - SLIP) * normal + SLIP / (high - low))
    }

    /// Natural logarithm of the chance of more than a point.
    pub(super) fn ln_above(&self, at: f64, answer: usize) -> f64 {
        let (low, high) = self.range;
        let at = at.clamp(low, high);
        // Beyond the scale's end lies next to nothing.
        log(self.above(at, answer).max(SLIP * 1e-3))
    }

    /// The same for ohms off a meter, for every answer.
    pub(super) fn ohms(&self, typed: Typed<Ohms>, accuracy: Accuracy) -> Vec<f64> {
        let answers = 0..self.normals.len();
        match typed.observed {
            Observed::Value(value) => {
                let shown = value.get().max(0.01);
                // The uncertainty of a logarithm is the relative one, over ln 10.
                let spread = accuracy.standard(value, typed.count).get() / shown;
                let spread = spread.min(1.0) / core::f64::consts::LN_10;
                let at = log10(shown);
                answers
                    .map(|one| self.ln_density(at, spread, one))
                    .collect()
            }
            Observed::OverRange { above } => {
                let at = log10(above.get().max(0.01));
                answers.map(|one| self.ln_above(at, one)).collect()
            }
        }
    }

    /// The same for a part of what is marked, for every answer.
    pub(super) fn share(&self, shown: f64, standard: f64, marked: f64) -> Vec<f64> {
        let least = marked * libm::pow(10.0, SHARE.0);
        let shown = shown.max(least);
        let spread = (standard / shown).min(1.0) / core::f64::consts::LN_10;
        let at = log10(shown / marked);
        let answers = 0..self.normals.len();
        answers
            .map(|one| self.ln_density(at, spread, one))
            .collect()
    }

    /// The same for degrees, for every answer.
    pub(super) fn degrees(&self, at: f64, uncertainty: f64) -> Vec<f64> {
        (0..self.normals.len())
            .map(|answer| self.ln_density(at, uncertainty, answer))
            .collect()
    }

    /// What is foretold: per answer, how likely a reading in each of some bins is.
    pub(super) fn foretold(&self) -> Vec<Vec<f64>> {
        let (low, high) = self.range;
        let edge = |number: usize| low + (high - low) * number as f64 / BINS as f64;
        (0..self.normals.len())
            .map(|answer| {
                let above: Vec<f64> = (0..=BINS)
                    .map(|one| self.above(edge(one), answer))
                    .collect();
                above.windows(2).map(|pair| pair[0] - pair[1]).collect()
            })
            .collect()
    }

    /// The chance of more than a point: the density summed up to the scale's end.
    fn above(&self, at: f64, answer: usize) -> f64 {
        let (low, high) = self.range;
        let (mean, deviation) = self.normals[answer];
        let beyond = above(high, mean, deviation);
        let held = above(low, mean, deviation) - beyond;
        let tail = (above(at, mean, deviation) - beyond) / held.max(f64::MIN_POSITIVE);
        (1.0 - SLIP) * tail + SLIP * (high - at) / (high - low)
    }
}

/// The chance that a normal variable is above a point.
fn above(at: f64, mean: f64, deviation: f64) -> f64 {
    0.5 * erfc((at - mean) / (deviation * core::f64::consts::SQRT_2))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Choice;
    use quantity::parse_reading;

    fn gauges() -> Vec<Gauge> {
        let mut all: Vec<Gauge> = [None, Some(Mains::V230F50)]
            .into_iter()
            .flat_map(|mains| {
                Clue::ALL
                    .iter()
                    .filter_map(move |&one| Gauge::of(one, mains))
            })
            .collect();
        all.push(Gauge::ptc(measure::Band::of_mains(Mains::V120F60)));
        all.push(Gauge::ptc(measure::Band::of_marked(Ohms::new(22.0))));
        all.extend([Gauge::freezer(), Gauge::fresh_food()]);
        for around in [4.0, 22.0, 36.0] {
            all.extend([Gauge::drier(around), Gauge::suction_line(around)]);
            for is_wall in [true, false] {
                all.push(Gauge::condenser(around, is_wall));
                all.push(Gauge::evaporator(around - 25.0, is_wall));
            }
        }
        all
    }

    #[test]
    fn the_bins_of_what_is_foretold_add_up_to_one() {
        for gauge in gauges() {
            for bins in gauge.foretold() {
                let sum: f64 = bins.iter().sum();
                assert!((sum - 1.0).abs() < 1e-12, "{sum}");
            }
        }
    }

    #[test]
    fn what_is_foretold_is_the_density_summed_up() {
        for gauge in gauges() {
            let (low, high) = gauge.range;
            let width = (high - low) / BINS as f64;
            for (answer, bins) in gauge.foretold().iter().enumerate() {
                for (bin, foretold) in bins.iter().enumerate() {
                    let density = |at: f64| exp(gauge.ln_density(at, 0.0, answer));
                    let summed = simpson(density, low + bin as f64 * width, width);
                    assert!((foretold - summed).abs() < 1e-6, "{foretold} {summed}");
                }
            }
        }
    }

    fn simpson(density: impl Fn(f64) -> f64, from: f64, width: f64) -> f64 {
        const STEPS: usize = 64;
        let step = width / STEPS as f64;
        let inner: f64 = (1..STEPS)
            .map(|place| {
                let weight = if place % 2 == 1 { 4.0 } else { 2.0 };
                weight * density(from + place as f64 * step)
            })
            .sum();
        (density(from) + inner + density(from + width)) * step / 3.0
    }

    #[test]
    fn over_range_is_as_likely_as_all_bins_above_it() {
        for gauge in gauges().into_iter().filter(|gauge| gauge.range == OHMS) {
            // 10^6 ohms is the edge of a bin.
            let first = (6.0 - OHMS.0) / (OHMS.1 - OHMS.0) * BINS as f64;
            for (answer, bins) in gauge.foretold().iter().enumerate() {
                let binned: f64 = bins[first as usize..].iter().sum();
                let tail = exp(gauge.ln_above(6.0, answer));
                assert!((binned - tail).abs() < 1e-5, "{binned} {tail}");
            }
        }
    }

    #[test]
    fn every_gauge_has_one_distribution_per_answer() {
        for &clue in Clue::ALL {
            if let Some(gauge) = Gauge::of(clue, None) {
                assert_eq!(gauge.normals.len(), clue.answers().len(), "{clue:?}");
            }
        }
        for (clue, gauge) in [
            (Clue::Temperatures, Gauge::freezer()),
            (Clue::CondenserWarmth, Gauge::condenser(20.0, true)),
            (Clue::Drier, Gauge::drier(20.0)),
            (Clue::SuctionLine, Gauge::suction_line(20.0)),
            (Clue::FrostPattern, Gauge::evaporator(-10.0, false)),
        ] {
            assert_eq!(gauge.normals.len(), clue.answers().len(), "{clue:?}");
        }
    }

    #[test]
    fn no_single_reading_is_worth_more_than_a_few_hundred_to_one() {
        let meter = measure::MeterKind::Good.automatic();
        for gauge in gauges().into_iter().filter(|gauge| gauge.range == OHMS) {
            for typed in ["0.1", "4.7", "300", "35k", "1.5M", "OL"] {
                let typed = parse_reading(typed, meter.top).unwrap();
                let all = gauge.ohms(typed, meter.accuracy);
                let most = all.iter().copied().fold(f64::NEG_INFINITY, f64::max);
                let least = all.iter().copied().fold(f64::INFINITY, f64::min);
                assert!(
                    most - least < log(3000.0),
                    "{typed:?} {}",
                    exp(most - least)
                );
            }
        }
    }
}

//! How far a short metering may be from the truth.

use quantity::{Ratio, Seconds};

/// How many of a hundred tests of that many minutes came within a tenth of the true energy.
///
/// Source: L. Kinney, *Home Energy*, September/October 2000, table 1 (excerpt seen).
pub const WITHIN_A_TENTH: [(f64, f64); 4] =
    [(60.0, 17.5), (90.0, 25.9), (120.0, 34.5), (180.0, 89.4)];

/// However long it was metered, doors, rooms and weather differ from day to day (judgement).
const LEAST: f64 = 0.03;
/// A shorter metering says nothing: it may lie within one run or one rest.
pub const SHORTEST: Seconds = Seconds::new(1800.0);

/// The relative standard error of energy that was metered for so long; `None` below half an hour.
///
/// The table's shares are taken as those of a normal error about the truth, σ = 0.1/Φ⁻¹((1 + p)/2),
/// which gives 45, 30, 22 and 6 percent. Between its lengths ln σ is interpolated along ln of the
/// length; below an hour σ goes on as 1/length, as between the first two; beyond three hours
/// as 1/√length, since whole cycles average out independently (both judgement), to no less than
/// three percent.
///
/// ```
/// use measure::energy::metering_error;
/// use quantity::Seconds;
/// let error = |hours: f64| metering_error(Seconds::new(hours * 3600.0)).unwrap().get();
/// assert!(error(1.0) > 0.4 && error(3.0) < 0.07 && error(24.0) <= 0.03);
/// ```
#[must_use]
pub fn metering_error(length: Seconds) -> Option<Ratio> {
    if !(length >= SHORTEST && length.get().is_finite()) {
        return None;
    }
    let minutes = length.get() / 60.0;
    let known = WITHIN_A_TENTH.map(|(minutes, percent)| (minutes, deviation(percent / 100.0)));
    let (first, last) = (known[0], known[known.len() - 1]);
    let error = if minutes <= first.0 {
        first.1 * first.0 / minutes
    } else if minutes >= last.0 {
        last.1 * libm::sqrt(last.0 / minutes)
    } else {
        between(&known, minutes)
    };
    Some(Ratio::new(error.max(LEAST)))
}

fn between(known: &[(f64, f64)], minutes: f64) -> f64 {
    let pair = known.windows(2).find(|pair| minutes <= pair[1].0);
    let Some([(from, one), (to, other)]) = pair.and_then(|pair| <[_; 2]>::try_from(pair).ok())
    else {
        return LEAST;
    };
    let share = libm::log(minutes / from) / libm::log(to / from);
    libm::exp(libm::log(one) + share * libm::log(other / one))
}

/// The deviation of a normal error that is within a tenth with that chance, by bisection of erf.
fn deviation(chance: f64) -> f64 {
    let (mut low, mut high) = (1e-3, 10.0);
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        let within = libm::erf(0.1 / (middle * core::f64::consts::SQRT_2));
        if within > chance {
            low = middle;
        } else {
            high = middle;
        }
    }
    0.5 * (low + high)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn error(minutes: f64) -> f64 {
        metering_error(Seconds::new(minutes * 60.0)).unwrap().get()
    }

    #[test]
    fn the_tables_own_lengths_give_its_own_shares() {
        for (minutes, percent) in WITHIN_A_TENTH {
            let within = 100.0 * libm::erf(0.1 / (error(minutes) * 2f64.sqrt()));
            assert!((within - percent).abs() < 1e-6, "{minutes}: {within}");
        }
    }

    #[test]
    fn longer_is_never_worse_and_too_short_is_nothing() {
        let errors: Vec<f64> = (30..4000)
            .map(|minutes| error(f64::from(minutes)))
            .collect();
        assert!(errors.windows(2).all(|pair| pair[1] <= pair[0]));
        assert!((errors[errors.len() - 1] - LEAST).abs() < 1e-12);
        assert_eq!(metering_error(Seconds::new(1799.0)), None);
        assert_eq!(metering_error(Seconds::new(f64::NAN)), None);
    }
}

//! How strongly a reading speaks, in words.

/// From here on a reading speaks plainly.
const PLAINLY: f64 = 3.0;
/// From here on it speaks strongly. Both steps are ours; the scale is that of the odds.
const STRONGLY: f64 = 10.0;

/// Says by which factor a reading changed the odds.
///
/// ```
/// assert_eq!(wording::whole::weight(20.0), "points strongly to it");
/// assert_eq!(wording::whole::weight(0.6), "a little against it");
/// ```
#[must_use]
pub fn weight(factor: f64) -> &'static str {
    if factor >= STRONGLY {
        "points strongly to it"
    } else if factor >= PLAINLY {
        "points to it"
    } else if factor > 1.0 {
        "points a little to it"
    } else if factor > 1.0 / PLAINLY {
        "a little against it"
    } else if factor > 1.0 / STRONGLY {
        "against it"
    } else {
        "strongly against it"
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_points_to_a_fault_and_what_points_away_is_said_with_the_same_steps() {
        for (factor, to, against) in [
            (2.0, "points a little to it", "a little against it"),
            (5.0, "points to it", "against it"),
            (50.0, "points strongly to it", "strongly against it"),
        ] {
            assert_eq!(weight(factor), to);
            assert_eq!(weight(1.0 / factor), against);
        }
    }
}

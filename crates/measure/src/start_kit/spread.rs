//! A quantity over all motors that fit: in the middle, and from where to where eight in ten lie.

use quantity::Quantity;

/// Three percentiles.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spread<Q> {
    /// One in ten lies below.
    pub tenth: Q,
    /// Half lie below.
    pub median: Q,
    /// Nine in ten lie below.
    pub ninetieth: Q,
}

impl<Q: Quantity> Spread<Q> {
    /// Of values with their weights. The caller hands in at least one with a weight above zero.
    pub(super) fn of(mut values: Vec<(f64, f64)>) -> Self {
        values.sort_by(|one, other| one.0.total_cmp(&other.0));
        let total: f64 = values.iter().map(|one| one.1).sum();
        let at = |share: f64| {
            let mut below = 0.0;
            let found = values.iter().find(|(_, weight)| {
                below += weight;
                below >= share * total
            });
            // Rounding may leave the sum a hair below the total: then it is the last one.
            let value = found.or(values.last()).map_or(f64::NAN, |one| one.0);
            Q::new(value)
        };
        Self {
            tenth: at(0.1),
            median: at(0.5),
            ninetieth: at(0.9),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Ohms;

    #[test]
    fn weights_count_as_that_many_values() {
        let values = vec![(3.0, 1.0), (1.0, 2.0), (2.0, 7.0)];
        let spread = Spread::<Ohms>::of(values);
        assert_eq!(spread.tenth, Ohms::new(1.0));
        assert_eq!(spread.median, Ohms::new(2.0));
        assert_eq!(spread.ninetieth, Ohms::new(2.0));
    }
}

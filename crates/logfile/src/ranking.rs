//! The order of values. One sort for all: each further one would add its own copy of the library's
//! to the page.

/// The places of values in rising order; equals stay in theirs.
pub(crate) fn order(values: &[f64]) -> Vec<usize> {
    let mut places: Vec<usize> = (0..values.len()).collect();
    places.sort_unstable_by(|&one, &other| {
        let by_value = values[one].total_cmp(&values[other]);
        by_value.then(one.cmp(&other))
    });
    places
}

/// The middle value, the greater one of two; `None` of none.
pub(crate) fn middle(values: &[f64]) -> Option<f64> {
    let order = order(values);
    order.get(order.len() / 2).map(|place| values[*place])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn equals_keep_their_order_and_the_middle_is_in_it() {
        assert_eq!(order(&[3.0, 1.0, 3.0, 2.0]), [1, 3, 0, 2]);
        assert_eq!(middle(&[3.0, 1.0, 2.0]), Some(2.0));
        assert_eq!(middle(&[4.0, 1.0]), Some(4.0));
        assert_eq!(middle(&[]), None);
    }
}

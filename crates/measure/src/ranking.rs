//! The order of worth, for everything that is told from the greatest down.
//!
//! One sort for all: each further one would add its own copy of the library's to the page.

/// The items, the greatest worth first; equals stay in their order.
///
/// ```
/// let ranked = measure::ranked(vec!["a", "bcd", "ef"], |text| text.len() as f64);
/// assert_eq!(ranked, ["bcd", "ef", "a"]);
/// ```
#[must_use]
pub fn ranked<T>(items: Vec<T>, worth: impl Fn(&T) -> f64) -> Vec<T> {
    let order = order(&items.iter().map(worth).collect::<Vec<f64>>());
    let mut items: Vec<Option<T>> = items.into_iter().map(Some).collect();
    let places = order.into_iter();
    places.filter_map(|place| items[place].take()).collect()
}

fn order(worths: &[f64]) -> Vec<usize> {
    let mut places: Vec<usize> = (0..worths.len()).collect();
    places.sort_by(|&one, &other| worths[other].total_cmp(&worths[one]));
    places
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_greatest_stands_first_and_equals_keep_their_order() {
        let items = vec![("a", 1.0), ("b", 3.0), ("c", 1.0), ("d", 2.0)];
        let names: Vec<&str> = ranked(items, |item| item.1)
            .into_iter()
            .map(|item| item.0)
            .collect();
        assert_eq!(names, ["b", "d", "a", "c"]);
    }
}

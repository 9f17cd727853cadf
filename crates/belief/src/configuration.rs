//! Counting through the joint states of several variables, the last one's changing fastest.

/// The product of all, at most [`usize::MAX`].
pub(crate) fn count(cards: impl IntoIterator<Item = usize>) -> usize {
    cards.into_iter().fold(1, usize::saturating_mul)
}

/// Steps to the next joint state; false after the last one, when all are zero again.
pub(crate) fn advance(states: &mut [usize], cards: impl Fn(usize) -> usize) -> bool {
    for place in (0..states.len()).rev() {
        states[place] += 1;
        if states[place] < cards(place) {
            return true;
        }
        states[place] = 0;
    }
    false
}

/// How far apart in a table two neighbouring states of each variable lie.
pub(crate) fn strides(cards: &[usize]) -> Vec<usize> {
    let mut strides = vec![1; cards.len()];
    for place in (1..cards.len()).rev() {
        strides[place - 1] = strides[place] * cards[place];
    }
    strides
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_joint_state_comes_once_and_the_last_changes_fastest() {
        let cards = [2, 3];
        let (mut states, mut seen) = (vec![0, 0], vec![vec![0, 0]]);
        while advance(&mut states, |place| cards[place]) {
            seen.push(states.clone());
        }
        assert_eq!(seen.len(), count(cards));
        assert_eq!(seen[1], [0, 1]);
        assert_eq!(seen[5], [1, 2]);
        assert_eq!(strides(&cards), [3, 1]);
    }

    #[test]
    fn no_variables_have_one_joint_state() {
        assert_eq!(count([]), 1);
        assert!(!advance(&mut [], |_| 2));
    }
}

//! Which names a variable or a state may have: those that every reader of the exchange format
//! takes as one word.

/// Words that have a meaning of their own in the exchange format.
const RESERVED: [&str; 9] = [
    "default",
    "discrete",
    "network",
    "probability",
    "property",
    "table",
    "type",
    "variable",
    "values",
];

pub(super) fn can_be_used(name: &str) -> bool {
    let mut characters = name.chars();
    characters
        .next()
        .is_some_and(|first| first.is_ascii_alphabetic())
        && characters.all(|one| one.is_ascii_alphanumeric() || one == '_')
        && !RESERVED.contains(&name)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_is_one_word_that_means_nothing_else() {
        for good in ["a", "start_device", "x2", "Tables"] {
            assert!(can_be_used(good), "{good}");
        }
        for bad in ["", "2x", "a b", "a-b", "ü", "_a", "table", "a;"] {
            assert!(!can_be_used(bad), "{bad}");
        }
    }
}

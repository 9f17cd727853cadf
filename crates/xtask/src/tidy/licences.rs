//! Under which licences the packages come that the project depends on.

use serde_json::Value;

/// Licences that let anyone use, change and pass on, and ask for no more than being named.
const ALLOWED: &[&str] = &[
    "0BSD",
    "Apache-2.0",
    "Apache-2.0 WITH LLVM-exception",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "BSL-1.0",
    "CC0-1.0",
    "ISC",
    "MIT",
    "MIT-0",
    "Unicode-3.0",
    "Unlicense",
    "Zlib",
];

/// Returns every package whose licence is not on the list.
pub(super) fn check(metadata: &Value) -> Vec<String> {
    let packages = metadata["packages"].as_array().into_iter().flatten();
    packages
        .filter_map(|package| {
            let licence = package["license"].as_str().unwrap_or("none given");
            let name = package["name"].as_str().unwrap_or_default();
            (!is_allowed(licence)).then(|| {
                format!("{name}: its licence is not on the list of allowed ones: {licence}")
            })
        })
        .collect()
}

/// Reads an SPDX expression: any one of its alternatives has to be allowed in all its parts.
fn is_allowed(expression: &str) -> bool {
    // Before SPDX had an OR, cargo used a slash.
    let expression = expression.replace('/', " OR ");
    let alternatives = split_outside_brackets(&expression, " OR ");
    if alternatives.len() > 1 {
        return alternatives.into_iter().any(is_allowed);
    }
    let parts = split_outside_brackets(&expression, " AND ");
    if parts.len() > 1 {
        return parts.into_iter().all(is_allowed);
    }
    let term = expression.trim();
    match term
        .strip_prefix('(')
        .and_then(|rest| rest.strip_suffix(')'))
    {
        Some(inner) => is_allowed(inner),
        None => ALLOWED.contains(&term),
    }
}

fn split_outside_brackets<'a>(expression: &'a str, operator: &str) -> Vec<&'a str> {
    let mut parts = Vec::new();
    let mut start = 0;
    for (at, _) in expression.match_indices(operator) {
        let before = &expression[..at];
        if before.matches('(').count() == before.matches(')').count() {
            parts.push(&expression[start..at]);
            start = at + operator.len();
        }
    }
    parts.push(&expression[start..]);
    parts
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_allowed_alternative_is_enough() {
        assert!(is_allowed("MIT OR Apache-2.0"));
        assert!(is_allowed("MIT/GPL-3.0"));
        assert!(is_allowed("Apache-2.0 WITH LLVM-exception OR MIT"));
    }

    #[test]
    fn all_parts_of_an_alternative_have_to_be_allowed() {
        assert!(is_allowed("(MIT OR Apache-2.0) AND Unicode-3.0"));
        assert!(!is_allowed("(MIT OR Apache-2.0) AND GPL-3.0-only"));
        assert!(is_allowed("(MIT AND Zlib) OR GPL-3.0-only"));
    }

    #[test]
    fn a_package_without_a_licence_is_reported() {
        let metadata = serde_json::json!({"packages": [{"name": "a", "license": null}, {"name": "b", "license": "MIT"}]});
        assert_eq!(check(&metadata).len(), 1);
    }
}

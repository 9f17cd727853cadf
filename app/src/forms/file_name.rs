//! What a job's file is called, and its record's.

use diagnosis::Assessment;
use job::Origin;
use wording::{page, title};

/// What a file calls its machine. One about no real machine says so by its name.
#[must_use]
pub fn titled(origin: Origin, known: &Assessment) -> String {
    let title = title(&known.machine);
    match origin {
        Origin::Practice => [page::PRACTICE, " ", &title].concat(),
        _ => title,
    }
}

/// A file name that every system takes: the machine's name with what doesn't fit left out.
///
/// ```
/// assert_eq!(
///     app::forms::file_name::file_name("Chest freezer, 230 V"),
///     "Chest-freezer-230-V.coldcase.json"
/// );
/// ```
#[must_use]
pub fn file_name(title: &str) -> String {
    stem(title) + jobfile::FILE_SUFFIX
}

/// What a record of it is called.
///
/// ```
/// assert_eq!(
///     app::forms::file_name::record_name("Chest freezer, 230 V"),
///     "Chest-freezer-230-V.record.html"
/// );
/// ```
#[must_use]
pub fn record_name(title: &str) -> String {
    stem(title) + ".record.html"
}

fn stem(title: &str) -> String {
    let mut stem = String::new();
    for word in title.split(|character: char| !character.is_alphanumeric()) {
        if word.is_empty() {
            continue;
        }
        // Some systems count bytes, and letters outside ASCII have up to four.
        if stem.len() + word.len() > LONGEST {
            break;
        }
        if !stem.is_empty() {
            stem.push('-');
        }
        stem.push_str(word);
    }
    if stem.is_empty() {
        stem.push_str("job");
    }
    stem
}

const LONGEST: usize = 60;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_that_a_system_refuses_gets_into_a_file_name() {
        assert_eq!(file_name("../a\\b:c*?"), "a-b-c.coldcase.json");
        assert_eq!(file_name("  "), "job.coldcase.json");
        assert_eq!(
            file_name("Gefriertruhe für Öl"),
            "Gefriertruhe-für-Öl.coldcase.json"
        );
        assert!(file_name(&"word ".repeat(100)).len() < 80);
        assert_eq!(file_name(&"x".repeat(100)), "job.coldcase.json");
    }
}

//! Two copies of one job become one that holds the entries of both.

use jobfile::Document;

/// What a merge did.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Merged {
    /// Entries that were new here.
    pub added: usize,
    /// Entries that could not be taken in: under the same identifier another one is here that
    /// says something else, or there is no room.
    pub left: usize,
}

/// Adds to a job every entry of another copy of it that it lacks, in their order.
///
/// Entries only grow, so nothing of either copy is lost by this; the later answer to a question
/// counts, whichever copy it came from.
pub fn merge(into: &mut Document, from: &Document) -> Merged {
    let mut merged = Merged::default();
    for entry in from.job().entries() {
        if into.job().entry(&entry.id) == Some(entry) {
            continue;
        }
        match into.add(entry.clone()) {
            Ok(()) => merged.added += 1,
            Err(_) => merged.left += 1,
        }
    }
    merged
}

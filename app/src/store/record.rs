//! A job's document with the revision under which it is kept.

/// Counts the times that a kept job was written, by any tab.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct Revision(u64);

impl Revision {
    /// The one after this.
    #[must_use]
    pub fn next(self) -> Self {
        Self(self.0.saturating_add(1))
    }
}

/// The first line is the revision, all that follows is the document as it goes into a file.
pub(super) fn write(revision: Revision, document: &str) -> String {
    let Revision(count) = revision;
    [&count.to_string(), "\n", document].concat()
}

/// The revision and the document. What doesn't begin with a revision is all document, so that
/// nothing is hidden from an export.
pub(super) fn read(kept: &str) -> (Revision, &str) {
    let parsed = kept
        .split_once('\n')
        .and_then(|(line, document)| Some((Revision(line.parse().ok()?), document)));
    parsed.unwrap_or((Revision::default(), kept))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_record_comes_back_as_it_was_written() {
        let revision = Revision::default().next();
        let kept = write(revision, "{\n  \"a\": 1\n}\n");
        assert_eq!(read(&kept), (revision, "{\n  \"a\": 1\n}\n"));
    }

    #[test]
    fn damage_to_the_first_line_hides_nothing() {
        assert_eq!(read("x7\n{}"), (Revision::default(), "x7\n{}"));
        assert_eq!(read("{}"), (Revision::default(), "{}"));
    }
}

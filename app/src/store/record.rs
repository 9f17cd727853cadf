//! A job's document with the line in front of it under which it is kept: its revision, and what a
//! list shows of it, so that a list of hundreds needs not read hundreds of documents.

use diagnosis::{Choice, Kind, Machine, MainsChoice};
use job::{Job, Moment, Origin};

/// Counts the times that a kept job was written, by any tab.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct Revision(u64);

/// What a list shows of a job before it is read: facts, and no conclusion.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Summary {
    /// When it was last added to.
    pub touched: Moment,
    /// Where it comes from.
    pub origin: Origin,
    /// What kind of machine it is.
    pub kind: Option<Kind>,
    /// The person's mains.
    pub mains: Option<MainsChoice>,
    /// What the person calls it.
    pub name: Option<String>,
}

/// Most first lines are no longer.
pub(super) const USUAL_LINE: usize = 200;

/// No first line is longer: the longest name has 2,000 characters.
pub(super) const LONGEST_LINE: usize = 2_200;

impl Revision {
    /// The one after this.
    #[must_use]
    pub fn next(self) -> Self {
        Self(self.0.saturating_add(1))
    }
}

impl Summary {
    /// Takes it from the job.
    #[must_use]
    pub fn of(job: &Job) -> Self {
        let machine = Machine::of(job);
        let last = job.entries().iter().map(|entry| entry.at).max();
        Self {
            touched: last.unwrap_or(job.created()),
            origin: job.origin(),
            kind: machine.kind,
            mains: machine.mains,
            name: machine.name,
        }
    }

    /// The machine, as far as a list needs it.
    #[must_use]
    pub fn machine(&self) -> Machine {
        Machine {
            name: self.name.clone(),
            kind: self.kind,
            mains: self.mains,
            ..Machine::default()
        }
    }

    fn to_line(&self) -> String {
        let name = self.name.as_deref().unwrap_or_default();
        let origin = origin_name(self.origin);
        [
            self.touched.unix_milliseconds().to_string().as_str(),
            self.touched.offset_minutes().to_string().as_str(),
            origin,
            self.kind.map(Choice::name).unwrap_or_default(),
            self.mains.map(Choice::name).unwrap_or_default(),
            // A name of several lines stays on this one.
            name.replace(char::is_control, " ").as_str(),
        ]
        .join("\t")
    }

    fn from_line(line: &str) -> Option<Self> {
        let mut parts = line.splitn(6, '\t');
        let mut next = || parts.next();
        let touched = Moment::new(next()?.parse().ok()?, next()?.parse().ok()?).ok()?;
        let written = next()?;
        let mut origins = Origin::ALL.into_iter();
        let origin = origins.find(|one| origin_name(*one) == written)?;
        let kind = Kind::from_name(next()?);
        let mains = MainsChoice::from_name(next()?);
        let name = next().filter(|name| !name.is_empty()).map(str::to_owned);
        Some(Self {
            touched,
            origin,
            kind,
            mains,
            name,
        })
    }
}

/// An origin in the first line.
const fn origin_name(origin: Origin) -> &'static str {
    match origin {
        Origin::Person => "person",
        Origin::Invented => "invented",
        Origin::Practice => "practice",
    }
}

/// The first line, then the document as it goes into a file.
pub(super) fn write(revision: Revision, summary: Option<&Summary>, document: &str) -> String {
    let Revision(count) = revision;
    let summary = summary.map(|summary| ["\t", &summary.to_line()].concat());
    [
        &count.to_string(),
        summary.as_deref().unwrap_or_default(),
        "\n",
        document,
    ]
    .concat()
}

/// The revision and the document. What doesn't begin with a revision is all document, so that
/// nothing is hidden from an export.
pub(super) fn read(kept: &str) -> (Revision, &str) {
    let parsed = kept
        .split_once('\n')
        .and_then(|(line, document)| Some((revision(line)?, document)));
    parsed.unwrap_or((Revision::default(), kept))
}

/// What a list shows, from the start of what is kept.
pub(super) fn read_summary(start: &str) -> Option<Summary> {
    let (line, _) = start.split_once('\n')?;
    revision(line)?;
    Summary::from_line(line.split_once('\t')?.1)
}

fn revision(line: &str) -> Option<Revision> {
    let count = line.split('\t').next()?;
    count.parse().ok().map(Revision)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn summary(name: Option<&str>) -> Summary {
        Summary {
            touched: Moment::new(1_795_608_300_000, -300).unwrap(),
            origin: Origin::Practice,
            kind: Some(Kind::ChestFreezer),
            mains: Some(MainsChoice::V127F60),
            name: name.map(str::to_owned),
        }
    }

    #[test]
    fn a_record_comes_back_as_it_was_written() {
        let revision = Revision::default().next();
        for name in [None, Some("Garage, left")] {
            let summary = summary(name);
            let kept = write(revision, Some(&summary), "{\n  \"a\": 1\n}\n");
            assert_eq!(read(&kept), (revision, "{\n  \"a\": 1\n}\n"));
            assert_eq!(read_summary(&kept), Some(summary));
        }
        let kept = write(revision, None, "text");
        assert_eq!(read(&kept), (revision, "text"));
        assert_eq!(read_summary(&kept), None);
    }

    #[test]
    fn a_name_of_several_lines_hides_nothing_of_the_document() {
        let kept = write(Revision::default(), Some(&summary(Some("a\nb\tc"))), "{}");
        assert_eq!(read(&kept).1, "{}");
        assert_eq!(read_summary(&kept).unwrap().name.unwrap(), "a b c");
    }

    #[test]
    fn damage_to_the_first_line_hides_nothing() {
        assert_eq!(read("x7\n{}"), (Revision::default(), "x7\n{}"));
        assert_eq!(read("{}"), (Revision::default(), "{}"));
        assert_eq!(read_summary("7\tyesterday\n{}"), None);
    }
}

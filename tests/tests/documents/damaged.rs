//! Ten thousand random and damaged documents through the one door, the same ones every time.
//!
//! Nothing checks a document's sums, so that damage inside a note makes another note and can't be
//! noticed: what opens without a word says exactly what the damaged text says. All else is
//! refused with its place, or told.

use std::collections::BTreeMap;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::Path;

use coldcase_tests::motors::Random;
use diagnosis::{Model, assess};
use job::Moment;
use jobfile::{Document, Notice, OpenError, Opened, open_bytes, save};
use serde_json::Value;
use wording::{Locale, open_error};

use crate::damage::{below, damaged};
use crate::documents;
use crate::fixtures::opened;
use crate::random::{levelled, parsed};

const DOCUMENTS: u64 = 10_000;

/// What became of a document.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Fate {
    /// Refused, and the place is named.
    RefusedAt,
    /// Refused as a whole: it isn't a job at all, or too much for one.
    RefusedWhole,
    /// Opened, with what is wrong told.
    Told,
    /// Opened as what it was before the damage.
    Unharmed,
    /// Opened as what the damaged text says, word for word.
    Another,
    /// Handed on untouched, because it says that it is from a newer program.
    Newer,
}

#[test]
fn ten_thousand_damaged_documents_are_refused_with_their_place_or_told_or_read_as_they_stand() {
    let good: Vec<Good> = ["tests/documents/good", "demo-data"]
        .into_iter()
        .flat_map(documents)
        .map(|(name, bytes)| Good::of(name, bytes))
        .collect();
    let mut fates: BTreeMap<Fate, usize> = BTreeMap::new();
    for seed in 0..DOCUMENTS {
        let mut random = Random::seeded(seed);
        let from = &good[below(&mut random, good.len())];
        let bytes = damaged(seed, &mut random, from);
        let fate = catch_unwind(AssertUnwindSafe(|| fate(&bytes, from)));
        let Ok(fate) = fate else {
            panic!(
                "document {seed}, made of {}, is kept as {}: put it into tests/documents/bad",
                from.name,
                keep(seed, &bytes)
            );
        };
        *fates.entry(fate).or_default() += 1;
    }
    println!("{fates:?}");
    let count = |fate| fates.get(&fate).copied().unwrap_or(0);
    assert_eq!(fates.values().sum::<usize>(), 10_000);
    assert!(count(Fate::RefusedAt) > 4_000, "{fates:?}");
    for fate in [
        Fate::RefusedWhole,
        Fate::Told,
        Fate::Unharmed,
        Fate::Another,
    ] {
        assert!(count(fate) > 300, "{fates:?}");
    }
    assert!(count(Fate::Newer) > 0, "{fates:?}");
}

/// A document that opens, and what it says.
pub(crate) struct Good {
    name: String,
    pub(crate) bytes: Vec<u8>,
    pub(crate) value: Value,
    document: Document,
    notices: Vec<Notice>,
}

impl Good {
    fn of(name: String, bytes: Vec<u8>) -> Self {
        let (document, notices) = opened(&bytes);
        Self {
            value: parsed(&bytes),
            name,
            bytes,
            document,
            notices,
        }
    }
}

/// Opens it and checks what is said of it. Whatever opens is assessed and told too: nothing in
/// it may make anything fall over.
fn fate(bytes: &[u8], from: &Good) -> Fate {
    match open_bytes(bytes) {
        Ok(Opened::Newer(newer)) => {
            assert_eq!(newer.text().as_bytes(), bytes);
            Fate::Newer
        }
        Ok(Opened::Backup(_)) => panic!("a job is no back-up"),
        Ok(Opened::Document { document, notices }) => {
            let saved = save(&document);
            assert_eq!(opened(saved.as_bytes()).0, document, "it is lost by saving");
            assess_and_tell(&document);
            if document == from.document && notices == from.notices {
                return Fate::Unharmed;
            }
            let repeated = |notice: &Notice| matches!(notice, Notice::Repeated { .. });
            if !notices.iter().any(repeated) {
                let says = levelled(parsed(bytes));
                assert_eq!(levelled(parsed(saved.as_bytes())), says, "not what it says");
            }
            if notices.is_empty() {
                Fate::Another
            } else {
                Fate::Told
            }
        }
        Err(error) => {
            let said = open_error(&error);
            assert!(!said.mend.is_empty());
            match place(&error, bytes) {
                Some(named) => {
                    assert!(said.what.contains(&named), "{said:?} without {named}");
                    Fate::RefusedAt
                }
                None => Fate::RefusedWhole,
            }
        }
    }
}

fn assess_and_tell(document: &Document) {
    let now = Moment::new(1_800_000_000_000, 0).unwrap();
    let known = assess(&Model::default(), document.job(), now);
    let told = wording::report(&known, document.job(), &Locale::default());
    assert!(!told.sections.is_empty());
}

/// The place that an error names, once it was found in the text. None for the whole of it.
fn place(error: &OpenError, bytes: &[u8]) -> Option<String> {
    match error {
        OpenError::Empty | OpenError::NotAJob(_) => None,
        OpenError::Beyond { path, .. } if path.is_empty() => None,
        OpenError::NotText { byte } => {
            assert!(*byte < bytes.len());
            Some(format!("byte {byte}"))
        }
        OpenError::NotJson { line, column, .. } => {
            let lines: Vec<&[u8]> = bytes.split(|byte| *byte == b'\n').collect();
            let length = lines[line - 1].len();
            assert!(*column <= length + 1, "{error:?} in a line of {length}");
            Some(format!("Line {line}, column {column}"))
        }
        OpenError::Field { path, .. } | OpenError::Beyond { path, .. } => {
            is_there(path, bytes);
            Some(path.clone())
        }
        OpenError::SameId { first, second, .. } => {
            is_there(first, bytes);
            is_there(second, bytes);
            Some(format!("{first} and {second}"))
        }
    }
}

/// Fails unless what a path leads to is in the document, or would be were it not missing.
fn is_there(path: &str, bytes: &[u8]) {
    let pointer: String = path
        .replace('[', ".")
        .replace(']', "")
        .split('.')
        .map(|step| format!("/{step}"))
        .collect();
    let (parent, _) = pointer.rsplit_once('/').unwrap();
    assert!(parsed(bytes).pointer(parent).is_some(), "{path}");
}

fn keep(seed: u64, bytes: &[u8]) -> String {
    let file = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("document-{seed}.json"));
    std::fs::write(&file, bytes).unwrap();
    file.display().to_string()
}

//! The files under `tests/documents`.

use std::fmt::Write as _;

use job::{AddError as JobError, Content, Entry, Id, Job, Moment, Origin, Question, Text};
use job::{Answer, Measured, Name, Reading};
use jobfile::{
    AddError, Document, Limit, Newer, Notice, OpenError, Opened, open, open_bytes, save,
};
use quantity::{Accuracy, Observed, Ohms, Typed};

use crate::{compare, documents};

pub(crate) fn opened(bytes: &[u8]) -> (Document, Vec<Notice>) {
    match open_bytes(bytes) {
        Ok(Opened::Document { document, notices }) => (document, notices),
        other => panic!("not opened as a document: {other:?}"),
    }
}

fn newer(bytes: &[u8]) -> Newer {
    match open_bytes(bytes) {
        Ok(Opened::Newer(newer)) => newer,
        other => panic!("not opened as a newer version: {other:?}"),
    }
}

#[test]
fn what_is_refused_says_what_where_and_which_way_out() {
    let mut report = String::new();
    for (name, bytes) in documents("tests/documents/bad") {
        let error = open_bytes(&bytes).expect_err(&name);
        writeln!(report, "{name}\n    {error:?}\n    {:?}", error.mend()).unwrap();
    }
    compare("tests/documents/bad/expected.txt", &report);
}

#[test]
fn what_is_opened_tells_what_it_could_not_read() {
    let mut report = String::new();
    for (name, bytes) in documents("tests/documents/good") {
        let (document, notices) = opened(&bytes);
        let entries = document.job().entries().len();
        writeln!(report, "{name}: {entries} entries understood").unwrap();
        for notice in notices {
            writeln!(report, "    {notice:?}").unwrap();
        }
    }
    compare("tests/documents/good/expected.txt", &report);
}

#[test]
fn a_good_document_is_the_same_after_saving_and_opening_again() {
    for (name, bytes) in documents("tests/documents/good") {
        let (document, _) = opened(&bytes);
        let text = save(&document);
        let (again, _) = opened(text.as_bytes());
        assert_eq!(again, document, "{name}");
        assert_eq!(save(&again), text, "{name}");
    }
}

#[test]
fn version_1_is_written_to_the_byte_as_it_always_was() {
    let folder = documents("tests/documents/good");
    for name in [
        "cool-down.json",
        "every-shape.json",
        "empty-job.json",
        "unknown-fields.json",
    ] {
        let (_, bytes) = folder.iter().find(|(file, _)| file == name).unwrap();
        let (document, notices) = opened(bytes);
        assert_eq!(notices, [], "{name}");
        assert_eq!(save(&document).as_bytes(), bytes, "{name}");
    }
}

#[test]
fn a_job_built_anew_from_what_was_understood_is_written_the_same() {
    for (name, bytes) in documents("tests/documents/good") {
        if ["cool-down.json", "every-shape.json"].contains(&name.as_str()) {
            let (document, _) = opened(&bytes);
            let built = Document::new(document.job().clone()).unwrap();
            assert_eq!(built, document, "{name}");
            assert_eq!(save(&built).as_bytes(), bytes, "{name}");
        }
    }
}

#[test]
fn what_a_newer_program_says_of_a_cool_down_is_handed_on_to_the_byte() {
    let folder = documents("tests/documents/good");
    let is_it = |(name, _): &&(String, Vec<u8>)| name == "cool-down-from-a-newer-program.json";
    let (_, bytes) = folder.iter().find(is_it).unwrap();
    let (document, _) = opened(bytes);
    assert_eq!(save(&document).as_bytes(), bytes);
}

#[test]
fn an_entry_that_stood_there_twice_is_written_once() {
    let folder = documents("tests/documents/good");
    let (_, bytes) = folder
        .iter()
        .find(|(file, _)| file == "repeated-entry.json")
        .unwrap();
    let (document, _) = opened(bytes);
    let text = save(&document);
    assert_eq!(text.matches("Once is enough.").count(), 1);
    assert_eq!(opened(text.as_bytes()), (document, vec![]));
}

#[test]
fn a_newer_version_is_handed_on_to_the_byte() {
    for (name, bytes) in documents("tests/documents/newer") {
        assert_eq!(newer(&bytes).text().as_bytes(), bytes, "{name}");
    }
}

#[test]
fn of_a_newer_version_what_still_looks_the_same_can_be_read() {
    let folder = documents("tests/documents/newer");
    let two = newer(&folder[0].1);
    assert_eq!((two.version, two.id), (2, Id::new("version-2").ok()));
    assert_eq!(two.readable.unwrap().entries().len(), 1);
    assert_eq!(two.notices.len(), 1);
    let three = newer(&folder[1].1);
    assert_eq!((three.version, three.id, three.readable), (3, None, None));
    let four = newer(&folder[2].1);
    assert_eq!((four.version, four.notices.len()), (4, 1));
    let job = four.readable.unwrap();
    let contents: Vec<&Content> = job.entries().iter().map(|entry| &entry.content).collect();
    assert!(matches!(
        contents[..],
        [Content::Spot(_), Content::Event(_)]
    ));
}

fn id(text: &str) -> Id {
    Id::new(text).unwrap()
}

fn moment() -> Moment {
    Moment::new(1_790_000_000_000, 60).unwrap()
}

fn note(entry: &str, text: &str) -> Entry {
    Entry {
        id: id(entry),
        at: moment(),
        content: Content::Note(Text::new(text).unwrap()),
    }
}

fn reading(entry: &str, observed: Observed<Ohms>, count: f64) -> Entry {
    Entry {
        id: id(entry),
        at: moment(),
        content: Content::Answer {
            question: Question::new("windings", "pair-1-2").unwrap(),
            answer: Answer::Reading(Reading {
                typed: Text::new("x").unwrap(),
                measured: Measured::Ohms(Typed {
                    observed,
                    count: Ohms::new(count),
                }),
                accuracy: Accuracy::new(0.8, 3.0).unwrap(),
            }),
        },
    }
}

fn empty() -> Document {
    Document::new(Job::new(id("j"), moment(), Origin::Person)).unwrap()
}

#[test]
fn a_number_that_could_not_be_read_back_is_never_taken_in() {
    let mut document = empty();
    let value = |value| Observed::Value(Ohms::new(value));
    let above = |above| Observed::OverRange {
        above: Ohms::new(above),
    };
    for (observed, count) in [
        (value(f64::NAN), 0.1),
        (value(f64::INFINITY), 0.1),
        (value(-1e31), 0.1),
        (value(4.7), f64::NAN),
        (value(4.7), 0.0),
        (value(4.7), -0.1),
        (above(f64::INFINITY), 0.0),
        (above(f64::NAN), 0.0),
    ] {
        let refused = document.add(reading("r", observed, count));
        assert!(
            matches!(refused, Err(AddError::CannotBeKept(_))),
            "{observed:?}"
        );
    }
    assert_eq!(document, empty());
}

#[test]
fn more_choices_than_a_document_takes_are_never_taken_in() {
    let choices = |count: usize| {
        let names = (0..count).map(|number| Name::new(&format!("c{number}")).unwrap());
        Entry {
            id: id("c"),
            at: moment(),
            content: Content::Answer {
                question: Question::new("windings", "gear").unwrap(),
                answer: Answer::Choices(names.collect()),
            },
        }
    };
    let refused = OpenError::Beyond {
        limit: Limit::Choices,
        path: "answer.choices".into(),
    };
    let mut document = empty();
    assert_eq!(
        document.add(choices(101)),
        Err(AddError::CannotBeKept(refused))
    );
    assert_eq!(document.add(choices(100)), Ok(()));
}

#[test]
fn an_entry_that_cannot_be_read_still_holds_its_identifier() {
    let folder = documents("tests/documents/good");
    let (_, bytes) = folder
        .iter()
        .find(|(file, _)| file == "from-a-newer-program.json")
        .unwrap();
    let (mut document, _) = opened(bytes);
    assert_eq!(
        document.add(note("other-unit", "mine")),
        Err(AddError::Job(JobError::SameId(id("other-unit"))))
    );
    document.add(note("mine", "mine")).unwrap();
    let last = save(&document)
        .rfind("\"id\"")
        .map(|at| save(&document)[at..].to_owned());
    assert!(last.unwrap().starts_with("\"id\": \"mine\""));
}

#[test]
fn more_entries_than_the_limit_are_refused_by_both_sides() {
    let most = Limit::Entries.most();
    let entry =
        |number: usize| format!(r#"{{"id":"{number}","at":"2026-11-25T13:04:06Z","note":""}}"#);
    let text = |count: usize| {
        let entries: Vec<_> = (0..count).map(entry).collect();
        format!(
            r#"{{"type":"coldcase-job","version":1,"id":"j","created":"2026-11-25T13:04:05Z",
            "origin":"person","entries":[{}]}}"#,
            entries.join(",")
        )
    };
    let (mut document, _) = opened(text(10_000).as_bytes());
    assert_eq!(document.job().entries().len(), most as usize);
    let refused = OpenError::Beyond {
        limit: Limit::Entries,
        path: String::new(),
    };
    assert_eq!(
        document.add(note("another", "")),
        Err(AddError::CannotBeKept(refused))
    );
    assert_eq!(
        open(&text(10_001)),
        Err(OpenError::Beyond {
            limit: Limit::Entries,
            path: "entries".into()
        })
    );
}

#[test]
fn a_full_document_can_be_opened_again_and_one_entry_more_is_refused() {
    let mut document = empty();
    let long = "ä".repeat(Text::LONGEST);
    let mut count = 0;
    let refused = loop {
        count += 1;
        match document.add(note(&format!("n{count}"), &long)) {
            Ok(()) => {}
            Err(error) => break error,
        }
    };
    let limit = Limit::Bytes;
    let path = String::new();
    assert_eq!(
        refused,
        AddError::CannotBeKept(OpenError::Beyond { limit, path })
    );
    let text = save(&document);
    let left = limit.most() - text.len() as f64;
    assert!((0.0..4200.0).contains(&left), "{left} bytes were left");
    assert_eq!(opened(text.as_bytes()).0, document);
}

#[test]
fn a_text_that_grows_beyond_the_limit_when_it_is_written_readably_is_refused() {
    // Each pair of brackets costs two bytes here and a line of its own when written.
    let unknown = "[],".repeat(1_200_000);
    let text = format!(
        r#"{{"type":"coldcase-job","version":1,"id":"j","created":"2026-11-25T13:04:05Z",
        "origin":"person","entries":[],"unknown":[{unknown}[]]}}"#
    );
    assert!((text.len() as f64) < Limit::Bytes.most());
    let limit = Limit::Bytes;
    let path = String::new();
    assert_eq!(open(&text), Err(OpenError::Beyond { limit, path }));
}

#[test]
fn a_file_cut_off_behind_the_limit_is_told_that_it_is_too_large() {
    let mut bytes = vec![b' '; Limit::BackupBytes.most() as usize];
    bytes.push(0xc3);
    let limit = Limit::BackupBytes;
    let path = String::new();
    assert_eq!(open_bytes(&bytes), Err(OpenError::Beyond { limit, path }));
}

//! What a file would bring is said before anything is added, and adding it loses nothing.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
#![cfg(not(target_arch = "wasm32"))]

use app::forms::import::{Already, Preview, keep_newer};
use app::store::{JobStore, Kept, MemoryShelf, Shelf};
use job::Id;

fn id(text: &str) -> Id {
    Id::new(text).unwrap()
}

fn empty() -> JobStore {
    JobStore::new(Some(Box::new(MemoryShelf::default())))
}

fn never() -> Id {
    panic!("no new identifier is needed")
}

fn file(version: u64, entries: &[(&str, &str)]) -> String {
    let entries: Vec<String> = entries
        .iter()
        .map(|(id, words)| {
            format!(r#"{{"id": "{id}", "at": "2026-11-25T12:00:00+01:00", "note": "{words}"}}"#)
        })
        .collect();
    format!(
        r#"{{"type": "coldcase-job", "version": {version}, "id": "j", "origin": "person",
            "created": "2026-11-25T12:00:00+01:00", "entries": [{}]}}"#,
        entries.join(",")
    )
}

fn incoming(text: &str, store: &JobStore) -> app::forms::import::Incoming {
    match Preview::of_text(text, store) {
        Preview::Job(incoming) => incoming,
        other => panic!("{other:?}"),
    }
}

fn entries(store: &JobStore, job: &str) -> usize {
    store.load(&id(job)).unwrap().job().unwrap().entries().len()
}

#[test]
fn looking_into_a_file_adds_nothing() {
    let store = empty();
    let preview = incoming(&file(1, &[("a", "It hums.")]), &store);
    assert_eq!(preview.already, Already::Nothing);
    assert!(store.listed().is_empty());
    assert_eq!(preview.add(&store, never), id("j"));
    assert_eq!(entries(&store, "j"), 1);
}

#[test]
fn a_file_of_a_job_that_is_here_brings_only_what_is_new() {
    let store = empty();
    incoming(&file(1, &[("a", "It hums."), ("b", "Oil.")]), &store).add(&store, never);
    let again = incoming(&file(1, &[("a", "It hums."), ("c", "Burnt.")]), &store);
    let Already::Job {
        new_entries,
        clashing,
    } = again.already
    else {
        panic!("{:?}", again.already);
    };
    assert_eq!((new_entries, clashing), (1, 0));
    again.add(&store, never);
    assert_eq!(entries(&store, "j"), 3);
    let changed = incoming(&file(1, &[("a", "It is silent.")]), &store);
    assert_eq!(
        changed.already,
        Already::Job {
            new_entries: 0,
            clashing: 1
        }
    );
}

#[test]
fn what_this_program_cannot_read_in_a_file_is_kept_when_it_is_merged() {
    let store = empty();
    incoming(&file(1, &[("a", "It hums.")]), &store).add(&store, never);
    let with_smell = file(1, &[("b", "Oil.")]).replace("\"note\": \"Oil.\"", "\"smell\": \"oil\"");
    incoming(&with_smell, &store).add(&store, never);
    let Some(Kept::Document {
        document, notices, ..
    }) = store.load(&id("j"))
    else {
        panic!("the job isn't there");
    };
    assert!(jobfile::save(&document).contains("smell"));
    assert_eq!(notices.len(), 1);
}

#[test]
fn beside_a_job_that_cannot_be_read_another_is_kept_and_can_be_added_to() {
    let shelf = std::rc::Rc::new(MemoryShelf::default());
    shelf.write("job/j", "1\n{").unwrap();
    let store = JobStore::new(Some(Box::new(shelf.clone())));
    let preview = incoming(&file(1, &[("a", "It hums.")]), &store);
    assert_eq!(preview.already, Already::Closed);
    assert_eq!(preview.add(&store, || id("beside")), id("beside"));
    assert_eq!(shelf.read("job/j").unwrap(), "1\n{");
    let Some(Kept::Document {
        document, revision, ..
    }) = store.load(&id("beside"))
    else {
        panic!("it isn't kept beside");
    };
    assert_eq!(store.save(&id("beside"), &document, revision).trouble, None);
}

#[test]
fn a_job_from_a_newer_program_is_kept_once_and_beside_anything_else_of_its_identifier() {
    let store = empty();
    let text = file(2, &[("a", "It hums.")]);
    let newer = |text: &str| match Preview::of_text(text, &store) {
        Preview::Newer(newer) => newer,
        other => panic!("{other:?}"),
    };
    assert_eq!(keep_newer(&newer(&text), &store, never), id("j"));
    assert_eq!(keep_newer(&newer(&text), &store, never), id("j"));
    let other = text.replace("hums", "clicks");
    assert_eq!(keep_newer(&newer(&other), &store, || id("k")), id("k"));
    assert_eq!(store.listed().len(), 2);
    assert!(matches!(store.load(&id("j")), Some(Kept::Newer(kept)) if kept.text() == text));
}

#[test]
fn what_is_no_job_is_refused_and_what_is_here_stays() {
    let store = empty();
    incoming(&file(1, &[("a", "It hums.")]), &store).add(&store, never);
    for bytes in [&b"\xff\xfe"[..], b"", b"[]", b"{\"type\": \"recipe\"}"] {
        assert!(matches!(
            Preview::of_file(bytes, &store),
            Preview::Refused(_)
        ));
    }
    assert_eq!(entries(&store, "j"), 1);
}

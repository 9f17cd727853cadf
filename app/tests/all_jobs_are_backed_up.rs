//! All jobs go out in one file and come back, with nothing lost on the way or at the other end.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
#![cfg(not(target_arch = "wasm32"))]

use std::cell::Cell;
use std::rc::Rc;

use app::forms::import::Preview;
use app::forms::import_backup::{IncomingBackup, Tally};
use app::store::{JobStore, MemoryShelf, Revision, Shelf, Trouble};
use job::{Content, Entry, Id, Job, Moment, Origin, Text};
use jobfile::{Document, save_backup};

fn id(text: &str) -> Id {
    Id::new(text).unwrap()
}

fn moment(minute: i64) -> Moment {
    Moment::new(1_795_608_300_000 + minute * 60_000, 60).unwrap()
}

fn document(job: &str, notes: &[&str]) -> Document {
    let mut document = Document::new(Job::new(id(job), moment(0), Origin::Person)).unwrap();
    for (minute, note) in (1..).zip(notes) {
        let entry = Entry {
            id: id(note),
            at: moment(minute),
            content: Content::Note(Text::new("It hums.").unwrap()),
        };
        document.add(entry).unwrap();
    }
    document
}

fn on(shelf: &Rc<MemoryShelf>) -> JobStore {
    JobStore::new(Some(Box::new(shelf.clone())))
}

fn empty() -> JobStore {
    on(&Rc::default())
}

/// Two jobs, one put away, and one that nobody can read.
fn full() -> JobStore {
    let shelf = Rc::new(MemoryShelf::default());
    let store = on(&shelf);
    store.save(&id("j"), &document("j", &["a", "b"]), Revision::default());
    store.save(&id("k"), &document("k", &["c"]), Revision::default());
    store.put_away(&id("k"), true);
    shelf.write("job/torn", "7\n{\"type\": \"coldc").unwrap();
    store
}

fn backup(store: &JobStore) -> String {
    save_backup(&store.back_up(moment(9)))
}

fn incoming(text: &str, store: &JobStore) -> IncomingBackup {
    match Preview::of_text(text, store) {
        Preview::Backup(backup) => backup,
        other => panic!("{other:?}"),
    }
}

fn new_ids() -> impl Fn() -> Id {
    let count = Cell::new(0);
    move || {
        count.set(count.get() + 1);
        id(&format!("new-{}", count.get()))
    }
}

fn texts(store: &JobStore) -> Vec<(String, String)> {
    let mut texts: Vec<_> = store
        .listed()
        .iter()
        .map(|job| (job.id.to_string(), store.text(&job.id).unwrap()))
        .collect();
    texts.sort();
    texts
}

#[test]
fn every_job_comes_back_to_the_letter_the_unreadable_one_and_what_was_put_away_too() {
    let (from, to) = (full(), empty());
    let incoming = incoming(&backup(&from), &to);
    let tally = Tally {
        new: 2,
        unread: 1,
        ..Tally::default()
    };
    assert_eq!(incoming.tally(), tally);
    incoming.add(&to, new_ids());
    assert_eq!(texts(&to), texts(&from));
    assert!(to.is_away(&id("k")) && !to.is_away(&id("j")));
    assert_eq!(backup(&to), backup(&from));
}

#[test]
fn taken_in_again_it_changes_nothing() {
    let store = full();
    let before = texts(&store);
    let again = incoming(&backup(&store), &store);
    assert_eq!(again.tally().same, 2);
    again.add(&store, new_ids());
    assert_eq!(texts(&store), before);
}

#[test]
fn a_job_that_grew_on_both_sides_has_the_entries_of_both_afterwards() {
    let old = backup(&full());
    let store = empty();
    store.save(&id("j"), &document("j", &["a", "z"]), Revision::default());
    let backup = incoming(&old, &store);
    assert_eq!(backup.tally().growing, 1);
    backup.add(&store, new_ids());
    let kept = store.load(&id("j")).unwrap();
    let entries = kept.job().unwrap().entries();
    let ids: Vec<&str> = entries.iter().map(|entry| entry.id.as_str()).collect();
    assert_eq!(ids, ["a", "b", "z"]);
}

#[test]
fn a_job_that_is_here_is_not_put_away_by_an_old_back_up() {
    let old = backup(&full());
    let store = full();
    store.put_away(&id("k"), false);
    incoming(&old, &store).add(&store, new_ids());
    assert!(!store.is_away(&id("k")));
}

#[test]
fn the_list_knows_what_it_shows_without_reading_the_jobs() {
    let store = full();
    let listed = store.listed();
    let ids: Vec<&str> = listed.iter().map(|job| job.id.as_str()).collect();
    // The one touched last on top; what can't be read at the end.
    assert_eq!(ids, ["j", "k", "torn"]);
    let touched = listed[0].summary.as_ref().unwrap().touched;
    assert_eq!(touched, moment(2));
    assert!(listed[1].is_away);
    assert_eq!(listed[2].summary, None);
}

#[test]
fn what_is_put_away_is_kept_and_comes_back() {
    let store = full();
    store.put_away(&id("j"), true);
    assert!(store.listed().iter().filter(|job| job.is_away).count() == 2);
    assert!(store.load(&id("j")).is_some());
    store.put_away(&id("j"), false);
    assert!(!store.is_away(&id("j")));
}

#[test]
fn a_job_that_is_gone_while_it_is_open_is_kept_again_and_said_to_have_been_gone() {
    let shelf = Rc::new(MemoryShelf::default());
    let store = on(&shelf);
    let first = store.save(&id("j"), &document("j", &["a"]), Revision::default());
    assert!(!first.was_gone);
    shelf.remove("job/j");
    let saved = store.save(&id("j"), &document("j", &["a", "b"]), first.revision);
    assert!(saved.was_gone);
    assert_eq!(saved.trouble, None);
    let kept = store.load(&id("j")).unwrap();
    assert_eq!(kept.job().unwrap().entries().len(), 2);
}

#[test]
fn little_room_is_told_before_the_last_is_used_up() {
    let store = JobStore::new(Some(Box::new(MemoryShelf::with_room(300_000))));
    assert!(!store.is_nearly_full());
    let mut told_after = None;
    for count in 0.. {
        let job = format!("job-{count}");
        let notes: Vec<String> = (0..50).map(|note| format!("{job}-{note}")).collect();
        let notes: Vec<&str> = notes.iter().map(String::as_str).collect();
        let saved = store.save(&id(&job), &document(&job, &notes), Revision::default());
        if saved.trouble == Some(Trouble::Full) {
            break;
        }
        if store.is_nearly_full() && told_after.is_none() {
            told_after = Some(count);
        }
    }
    assert!(told_after.is_some());
}

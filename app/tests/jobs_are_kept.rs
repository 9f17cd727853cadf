//! Nothing is lost and nothing is overwritten unseen, by whichever way a job comes to be kept.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
#![cfg(not(target_arch = "wasm32"))]

use std::rc::Rc;

use app::store::{JobStore, Kept, MemoryShelf, Revision, Saved, Shelf, Trouble};
use job::{Content, Drafts, Entry, Id, Job, Moment, Origin, Question, Text};
use jobfile::{Document, OpenError};

fn id(text: &str) -> Id {
    Id::new(text).unwrap()
}

fn moment() -> Moment {
    Moment::new(1_795_608_300_000, 60).unwrap()
}

fn note(entry: &str) -> Entry {
    Entry {
        id: id(entry),
        at: moment(),
        content: Content::Note(Text::new("It hums.").unwrap()),
    }
}

fn document(job: &str, entries: &[&str]) -> Document {
    let mut document = Document::new(Job::new(id(job), moment(), Origin::Person)).unwrap();
    for entry in entries {
        document.add(note(entry)).unwrap();
    }
    document
}

fn entries(store: &JobStore, job: &str) -> Vec<String> {
    let kept = store.load(&id(job)).unwrap();
    let job = kept.job().unwrap();
    job.entries()
        .iter()
        .map(|entry| entry.id.to_string())
        .collect()
}

/// A tab: a store on a shelf, with the job as it saw it last.
struct Tab {
    store: JobStore,
    document: Document,
    revision: Revision,
}

impl Tab {
    fn open(shelf: &Rc<MemoryShelf>) -> Self {
        let store = JobStore::new(Some(Box::new(shelf.clone())));
        let Some(Kept::Document {
            document, revision, ..
        }) = store.load(&id("j"))
        else {
            panic!("the job isn't there");
        };
        Self {
            store,
            document,
            revision,
        }
    }

    fn enter(&mut self, entry: &str) -> Saved {
        self.document.add(note(entry)).unwrap();
        let saved = self.store.save(&id("j"), &self.document, self.revision);
        self.revision = saved.revision;
        if let Some(merged) = &saved.merged {
            self.document = merged.clone();
        }
        saved
    }
}

fn shelf_with_a_job() -> Rc<MemoryShelf> {
    let shelf = Rc::new(MemoryShelf::default());
    let store = JobStore::new(Some(Box::new(shelf.clone())));
    store.save(&id("j"), &document("j", &["a"]), Revision::default());
    shelf
}

#[test]
fn a_job_comes_back_as_it_was_saved() {
    let shelf = shelf_with_a_job();
    let tab = Tab::open(&shelf);
    assert_eq!(tab.document, document("j", &["a"]));
    assert_eq!(tab.store.trouble(), None);
}

#[test]
fn two_tabs_lose_no_entry_in_whichever_order_they_save() {
    let shelf = shelf_with_a_job();
    let (mut first, mut second) = (Tab::open(&shelf), Tab::open(&shelf));
    assert!(first.enter("b").merged.is_none());
    assert!(second.enter("c").merged.is_some());
    assert!(second.enter("d").merged.is_none());
    assert!(first.enter("e").merged.is_some());
    assert_eq!(entries(&first.store, "j"), ["a", "b", "c", "d", "e"]);
}

#[test]
fn a_tab_that_has_nothing_to_add_takes_up_the_other_ones_entries_without_writing() {
    let shelf = shelf_with_a_job();
    let (mut one, mut other) = (Tab::open(&shelf), Tab::open(&shelf));
    let written = one.enter("b").revision;
    let taken_up = other.store.save(&id("j"), &other.document, other.revision);
    assert_eq!(taken_up.revision, written, "it was written again");
    other.document = taken_up.merged.unwrap();
    assert_eq!(other.document, one.document);
    assert_eq!(Tab::open(&shelf).revision, written);
}

#[test]
fn a_job_that_another_tab_deleted_is_kept_again_by_the_next_entry() {
    let shelf = shelf_with_a_job();
    let (mut first, second) = (Tab::open(&shelf), Tab::open(&shelf));
    second.store.delete(&id("j"));
    first.enter("b");
    assert_eq!(entries(&second.store, "j"), ["a", "b"]);
}

#[test]
fn what_cannot_be_read_is_listed_and_never_overwritten() {
    let shelf = shelf_with_a_job();
    let mut tab = Tab::open(&shelf);
    shelf.write("job/j", "9\n{\"type\": \"coldc").unwrap();
    let saved = tab.enter("b");
    assert_eq!(saved.trouble, Some(Trouble::Unreadable));
    assert_eq!(shelf.read("job/j").unwrap(), "9\n{\"type\": \"coldc");
    assert_eq!(entries(&tab.store, "j"), ["a", "b"]);

    let later = JobStore::new(Some(Box::new(shelf)));
    assert_eq!(later.listed().len(), 1);
    let Some(Kept::Unreadable { text, why }) = later.load(&id("j")) else {
        panic!("it can be read");
    };
    assert_eq!(text, "{\"type\": \"coldc");
    assert!(matches!(why, OpenError::NotJson { .. }));
}

#[test]
fn a_job_from_a_newer_program_is_kept_to_the_byte_and_not_overwritten() {
    let shelf = shelf_with_a_job();
    let mut tab = Tab::open(&shelf);
    let newer = "\u{feff}{\"type\":\"coldcase-job\",  \"version\": 2, \"id\": \"j\", \"é\": 1}\r\n";
    shelf.write("job/j", &["7\n", newer].concat()).unwrap();
    assert_eq!(tab.enter("b").trouble, Some(Trouble::Unreadable));
    let later = JobStore::new(Some(Box::new(shelf)));
    let Some(Kept::Newer(kept)) = later.load(&id("j")) else {
        panic!("it is no longer from a newer program");
    };
    assert_eq!(kept.text(), newer);
}

#[test]
fn without_room_work_goes_on_and_is_kept_once_there_is_room() {
    let two_entries = jobfile::save(&document("j", &["a", "b"])).len();
    let shelf = Rc::new(MemoryShelf::with_room(two_entries + 400 + 50));
    shelf.write("other", &"x".repeat(400)).unwrap();
    let store = JobStore::new(Some(Box::new(shelf.clone())));
    let saved = store.save(&id("j"), &document("j", &["a"]), Revision::default());
    assert_eq!(saved.trouble, None);
    let mut tab = Tab::open(&shelf);
    tab.enter("b");
    let saved = tab.enter("c");
    assert_eq!(saved.trouble, Some(Trouble::Full));
    assert_eq!(tab.store.trouble(), Some(Trouble::Full));
    assert_eq!(entries(&tab.store, "j"), ["a", "b", "c"]);
    let on_shelf = entries(&JobStore::new(Some(Box::new(shelf.clone()))), "j");
    assert!(on_shelf.len() < 3, "{on_shelf:?}");

    shelf.remove("other");
    tab.store.retry();
    assert_eq!(tab.store.trouble(), None);
    assert_eq!(entries(&Tab::open(&shelf).store, "j"), ["a", "b", "c"]);
}

#[test]
fn without_room_another_tabs_entries_are_still_not_lost() {
    let two_entries = jobfile::save(&document("j", &["a", "b"])).len();
    let shelf = Rc::new(MemoryShelf::with_room(two_entries + 50));
    let store = JobStore::new(Some(Box::new(shelf.clone())));
    store.save(&id("j"), &document("j", &["a"]), Revision::default());
    let (mut first, mut second) = (Tab::open(&shelf), Tab::open(&shelf));
    assert_eq!(first.enter("b").trouble, None);
    assert_eq!(second.enter("c").trouble, Some(Trouble::Full));
    assert_eq!(entries(&second.store, "j"), ["a", "b", "c"]);
}

#[test]
fn where_the_browser_keeps_nothing_jobs_last_as_long_as_the_page() {
    let store = JobStore::new(None);
    let saved = store.save(&id("j"), &document("j", &["a"]), Revision::default());
    assert_eq!(saved.trouble, Some(Trouble::Blocked));
    assert_eq!(store.trouble(), Some(Trouble::Blocked));
    assert_eq!(entries(&store, "j"), ["a"]);
    assert_eq!(store.listed().len(), 1);
}

/// The list is read once, and again whenever a job was written, put away or deleted here, or elsewhere.
#[test]
fn the_list_is_never_older_than_what_is_kept() {
    let shelf = shelf_with_a_job();
    let (first, second) = (Tab::open(&shelf), Tab::open(&shelf));
    let listed = |tab: &Tab| tab.store.listed().len();
    assert_eq!((listed(&first), listed(&second)), (1, 1));
    let new = document("k", &["a"]);
    first.store.save(&id("k"), &new, Revision::default());
    assert_eq!(listed(&first), 2);
    second.store.look_again();
    assert_eq!(listed(&second), 2);
    first.store.delete(&id("k"));
    first.store.put_away(&id("j"), true);
    assert!(first.store.listed()[0].is_away);
    first.store.delete(&id("j"));
    assert_eq!(listed(&first), 0);
    first.store.restore().unwrap();
    assert_eq!(listed(&first), 1);
}

#[test]
fn a_deleted_job_comes_back_whole_even_where_there_is_no_room_to_spare() {
    let two_entries = jobfile::save(&document("j", &["a", "b"])).len();
    let shelf = Rc::new(MemoryShelf::with_room(two_entries + 50));
    let store = JobStore::new(Some(Box::new(shelf)));
    store.save(&id("j"), &document("j", &["a", "b"]), Revision::default());
    store.delete(&id("j"));
    assert!(store.listed().is_empty());
    assert!(store.deleted().unwrap().job().is_some());
    store.restore().unwrap();
    assert_eq!(entries(&store, "j"), ["a", "b"]);
    assert!(store.deleted().is_none());
    assert_eq!(store.trouble(), None);
}

#[test]
fn bringing_a_job_back_to_another_of_its_identifier_loses_neither() {
    let store = JobStore::new(Some(Box::new(MemoryShelf::default())));
    store.save(&id("j"), &document("j", &["a"]), Revision::default());
    store.delete(&id("j"));
    store.save(&id("j"), &document("j", &["b"]), Revision::default());
    store.restore().unwrap();
    assert_eq!(entries(&store, "j"), ["a", "b"]);
}

#[test]
fn drafts_come_back_and_leave_no_trace_once_entered() {
    let shelf = Rc::new(MemoryShelf::default());
    let store = JobStore::new(Some(Box::new(shelf.clone())));
    let question = Question::new("windings", "pair-1-2").unwrap();
    let mut drafts = Drafts::default();
    drafts.keep(question.clone(), Text::new("4,").unwrap());
    store.keep_drafts(&id("j"), &drafts);
    assert_eq!(store.drafts(&id("j")), drafts);
    drafts.forget(&question);
    store.keep_drafts(&id("j"), &drafts);
    assert!(shelf.names().is_empty());
}

#[test]
fn when_a_job_was_sent_and_what_was_begun_are_remembered() {
    let store = JobStore::new(Some(Box::new(MemoryShelf::default())));
    assert_eq!(store.exported(&id("j")), None);
    store.note_export(&id("j"), moment());
    assert_eq!(store.exported(&id("j")), Some(moment()));
    store.keep_begun(Some("chest-freezer   "));
    assert_eq!(store.begun().as_deref(), Some("chest-freezer   "));
    store.keep_begun(None);
    assert_eq!(store.begun(), None);
}

//! A job that was changed on two phones is one job again, the same on both, whatever their clocks
//! said.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

use job::{Answer, Content, Entry, Id, Job, Moment, Name, Origin, Question};
use jobfile::{Document, Merged, Opened, open, save};
use proptest::prelude::*;
use proptest::sample::Index;

fn id(text: &str) -> Id {
    Id::new(text).unwrap()
}

fn moment(minute: i64) -> Moment {
    Moment::new(1_795_600_000_000 + minute * 60_000, 60).unwrap()
}

fn empty() -> Document {
    Document::new(Job::new(id("j"), moment(0), Origin::Person)).unwrap()
}

#[test]
fn what_is_of_no_real_machine_stays_marked_whichever_copy_takes_in_the_other() {
    let of = |origin| Document::new(Job::new(id("j"), moment(0), origin)).unwrap();
    let (real, practice) = (of(Origin::Person), of(Origin::Practice));
    for both in [merged(&real, &practice), merged(&practice, &real)] {
        assert_eq!(both.job().origin(), Origin::Practice);
        let Ok(Opened::Document { document, notices }) = open(&save(&both)) else {
            panic!("both together can't be opened");
        };
        assert_eq!(document.job().origin(), Origin::Practice);
        assert_eq!(notices, []);
    }
}

fn choice(entry: &str, minute: i64, value: &str) -> Entry {
    Entry {
        id: id(entry),
        at: moment(minute),
        content: Content::Answer {
            question: Question::new("machine", "kind").unwrap(),
            answer: Answer::Choice(Name::new(value).unwrap()),
        },
    }
}

fn strike(entry: &str, minute: i64, target: &Id) -> Entry {
    Entry {
        id: id(entry),
        at: moment(minute),
        content: Content::Strike(target.clone()),
    }
}

fn with(mut document: Document, entries: impl IntoIterator<Item = Entry>) -> Document {
    for entry in entries {
        document.add(entry).unwrap();
    }
    document
}

fn merged(here: &Document, there: &Document) -> Document {
    let mut both = here.clone();
    both.merge(there).unwrap();
    both
}

fn ids(document: &Document) -> Vec<&str> {
    let entries = document.job().entries().iter();
    entries.map(|entry| entry.id.as_str()).collect()
}

#[test]
fn the_later_answer_counts_whichever_phone_takes_in_the_others() {
    let common = with(empty(), [choice("common", 1, "chest-freezer")]);
    let one = with(common.clone(), [choice("one", 5, "upright-freezer")]);
    let other = with(common, [choice("other", 3, "refrigerator")]);
    for both in [merged(&one, &other), merged(&other, &one)] {
        assert_eq!(ids(&both), ["common", "other", "one"]);
        let counts = both.job().choice("machine", "kind");
        assert_eq!(counts, Some("upright-freezer"));
    }
}

#[test]
fn the_same_job_taken_in_twice_changes_nothing() {
    let job = with(empty(), [choice("a", 1, "chest-freezer")]);
    let mut twice = job.clone();
    assert_eq!(twice.merge(&job), Ok(Merged::default()));
    assert_eq!(save(&twice), save(&job));
}

#[test]
fn after_a_clock_was_set_back_entries_keep_their_order_and_none_is_lost() {
    let job = with(
        empty(),
        [
            choice("before", 100, "chest-freezer"),
            choice("set-back", 2, "upright-freezer"),
            strike("earlier-still", 1, &id("before")),
        ],
    );
    let text = save(&job);
    let Ok(Opened::Document { document, notices }) = open(&text) else {
        panic!("{text}");
    };
    assert_eq!(notices, []);
    assert_eq!(ids(&document), ["before", "set-back", "earlier-still"]);
    let other = with(empty(), [choice("other", 50, "refrigerator")]);
    for both in [merged(&document, &other), merged(&other, &document)] {
        assert_eq!(ids(&both), ["other", "before", "set-back", "earlier-still"]);
        assert_eq!(both.job().standing().len(), 3);
        let counts = both.job().choice("machine", "kind");
        assert_eq!(counts, Some("upright-freezer"));
    }
}

/// What a phone does next: an answer, or a strike of something that is there.
type Act = (i64, Option<Index>);

fn acts() -> impl Strategy<Value = Vec<Act>> {
    let act = (0..100i64, proptest::option::of(any::<Index>()));
    proptest::collection::vec(act, 0..8)
}

fn act(document: &mut Document, phone: &str, acts: &[Act]) {
    for (number, (minute, strikes)) in acts.iter().enumerate() {
        let name = format!("{phone}-{number}");
        let entries = document.job().entries();
        let entry = match strikes {
            Some(index) if !entries.is_empty() => {
                strike(&name, *minute, &index.get(entries).id.clone())
            }
            _ => choice(&name, *minute, &name),
        };
        document.add(entry).unwrap();
    }
}

proptest! {
    /// Whatever both did, with whatever clocks, before and after each took in the other's.
    #[test]
    fn both_phones_come_to_the_same_job_and_keep_the_order_of_each(
        common in acts(), first in acts(), second in acts(), later in acts(),
    ) {
        let mut one = empty();
        act(&mut one, "common", &common);
        let mut other = one.clone();
        act(&mut one, "one", &first);
        act(&mut other, "other", &second);
        let both = merged(&one, &other);
        prop_assert_eq!(&both, &merged(&other, &one));
        let total = common.len() + first.len() + second.len();
        prop_assert_eq!(both.job().entries().len(), total);
        for copy in [&one, &other] {
            let kept: Vec<&str> = ids(copy);
            let order: Vec<&str> = ids(&both).into_iter().filter(|id| kept.contains(id)).collect();
            prop_assert_eq!(order, kept);
        }
        // One of them goes on with both, the other without.
        let mut ahead = both;
        act(&mut ahead, "later", &later);
        let mut behind = other;
        act(&mut behind, "meanwhile", &first);
        let all = merged(&ahead, &behind);
        prop_assert_eq!(&all, &merged(&behind, &ahead));
        prop_assert_eq!(&merged(&all, &ahead), &all);
        prop_assert_eq!(&merged(&all, &behind), &all);
    }
}

//! Undo, redo and correction by entries that only grow.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic, clippy::float_cmp)]

use job::{AddError, Answer, Content, Entry, Id, Job, Moment, Name, Origin, Question};
use proptest::prelude::*;

fn id(text: &str) -> Id {
    Id::new(text).unwrap()
}

fn moment() -> Moment {
    Moment::new(1_790_000_000_000, 60).unwrap()
}

fn job() -> Job {
    Job::new(id("job"), moment(), Origin::Person)
}

fn choice(entry: &str, value: &str) -> Entry {
    Entry {
        id: id(entry),
        at: moment(),
        content: Content::Answer {
            question: Question::new("machine", "kind").unwrap(),
            answer: Answer::Choice(Name::new(value).unwrap()),
        },
    }
}

fn strike(entry: &str, target: &str) -> Entry {
    Entry {
        id: id(entry),
        at: moment(),
        content: Content::Strike(id(target)),
    }
}

#[test]
fn the_latest_answer_counts_and_the_earlier_one_is_kept() {
    let mut job = job();
    job.add(choice("a", "chest")).unwrap();
    job.add(choice("b", "upright")).unwrap();
    assert_eq!(job.choice("machine", "kind"), Some("upright"));
    assert_eq!(job.answers("machine", "kind").len(), 2);
}

#[test]
fn striking_brings_back_what_counted_before_and_striking_the_strike_undoes_that() {
    let mut job = job();
    job.add(choice("a", "chest")).unwrap();
    job.add(choice("b", "upright")).unwrap();
    job.add(strike("c", "b")).unwrap();
    assert_eq!(job.choice("machine", "kind"), Some("chest"));
    job.add(strike("d", "c")).unwrap();
    assert_eq!(job.choice("machine", "kind"), Some("upright"));
    assert_eq!(job.entries().len(), 4);
}

#[test]
fn an_identifier_is_used_once_and_a_strike_needs_its_target() {
    let mut job = job();
    job.add(choice("a", "chest")).unwrap();
    assert_eq!(
        job.add(choice("a", "upright")),
        Err(AddError::SameId(id("a")))
    );
    assert_eq!(
        job.add(strike("b", "nowhere")),
        Err(AddError::NothingToStrike(id("nowhere")))
    );
}

proptest! {
    #[test]
    fn undoing_everything_leaves_nothing_standing_and_everything_kept(count in 1usize..20) {
        let mut job = job();
        for number in 0..count {
            job.add(choice(&format!("e{number}"), "chest")).unwrap();
        }
        let mut undone = 0;
        while let Some(last) = job.latest_standing().map(|entry| entry.id.clone()) {
            job.add(strike(&format!("u{undone}"), last.as_str())).unwrap();
            undone += 1;
        }
        prop_assert_eq!(undone, count);
        prop_assert_eq!(job.entries().len(), 2 * count);
    }
}

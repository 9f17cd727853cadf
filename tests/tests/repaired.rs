//! The invented freezer that was repaired and proved: what a buyer would read of it.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

use diagnosis::{
    Assessment, Choice, Link, LinkState, Model, ProofPoint, ProofState, Proven, assess,
};
use job::{ColdEventKind, Content, Entry, Job};
use jobfile::{Opened, open, parse_timestamp};

const FREEZER: &str = include_str!("../../demo-data/repaired-freezer.json");

fn entries() -> Job {
    let Ok(Opened::Document { document, notices }) = open(FREEZER) else {
        panic!("it opens");
    };
    assert_eq!(notices, []);
    document.job().clone()
}

/// As of a moment, of the entries that `kept` says yes to.
fn assessed(at: &str, kept: impl Fn(&Entry) -> bool) -> Assessment {
    let whole = entries();
    let mut job = Job::new(whole.id().clone(), whole.created(), whole.origin());
    for entry in whole.entries().iter().filter(|entry| kept(entry)) {
        job.add(entry.clone()).unwrap();
    }
    assess(&Model::default(), &job, parse_timestamp(at).unwrap())
}

const END: &str = "2026-10-20T14:30:00-05:00";

#[test]
fn all_of_it_is_proved_and_the_path_holds() {
    let found = assessed(END, |_| true);
    let proof = found.proof.as_ref().unwrap();
    assert_eq!(proof.proven(), Proven::All, "{:?}", proof.items);
    for (link, state) in &found.path {
        assert!(matches!(state, LinkState::Holds(_)), "{link:?} {state:?}");
    }
}

#[test]
fn before_the_change_it_hums_and_after_it_nothing_is_said_of_what_it_did() {
    let start = |found: &Assessment| {
        found
            .path
            .iter()
            .find(|(link, _)| *link == Link::Start)
            .unwrap()
            .1
    };
    let change = |entry: &Entry| matches!(&entry.content, Content::Answer { question, .. } if question.check.as_str() == "change");
    let changed = entries()
        .entries()
        .iter()
        .find(|one| change(one))
        .unwrap()
        .at;
    let is_before = |entry: &Entry| entry.at.unix_milliseconds() < changed.unix_milliseconds();
    let before = assessed("2026-10-18T09:00:00-05:00", is_before);
    assert!(matches!(start(&before), LinkState::Broken(_)));
    let after = assessed("2026-10-18T10:01:00-05:00", |entry| {
        is_before(entry) || change(entry)
    });
    assert_eq!(start(&after), LinkState::Unknown);
    assert_eq!(after.proof.unwrap().proven(), Proven::NotYet);
}

#[test]
fn a_trip_in_that_time_is_no_proof() {
    let mut job = entries();
    let at = parse_timestamp("2026-10-19T03:00:00-05:00").unwrap();
    let event = job::ColdEvent {
        at,
        kind: ColdEventKind::Tripped,
    };
    job.add(Entry {
        id: job::Id::new("trip").unwrap(),
        at,
        content: Content::Event(event),
    })
    .unwrap();
    let found = assess(&Model::default(), &job, parse_timestamp(END).unwrap());
    let proof = found.proof.unwrap();
    assert!(matches!(
        proof.state(ProofPoint::NoTrips),
        Some(ProofState::Failed(_))
    ));
    assert_eq!(proof.proven(), Proven::Failed);
    assert_eq!(Proven::Failed.name(), "failed");
}

//! Laws of proof: whatever was read, in whichever order, however long ago.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use diagnosis::{Choice, CoolDown, Kind, Model, Proof, ProofPoint, ProofState, assess_checks};
use job::{
    Answer, ColdEvent, ColdEventKind, Content, Entry, Id, Job, Measured, Moment, Name, Origin,
    Place, Question, Reading, Spot, Text, Unit,
};
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::select;
use quantity::{Accuracy, Observed};

const BEGAN: i64 = 1_795_600_000_000;
const DAY: i64 = 86_400_000;

fn moment(after: i64) -> Moment {
    Moment::new(BEGAN + after, 0).unwrap()
}

fn spot(after: i64, shown: f64) -> Content {
    let reading = Reading {
        typed: Text::new("?").unwrap(),
        measured: Measured::new(Unit::Celsius, Observed::Value(shown), 0.1),
        accuracy: Accuracy::new(1.0, 2.0).unwrap(),
    };
    let place = Place::Freezer;
    let at = moment(after);
    Content::Spot(Spot { place, at, reading })
}

fn event(after: i64, kind: ColdEventKind) -> Content {
    let at = moment(after);
    Content::Event(ColdEvent { at, kind })
}

/// Something read or seen within three days; mostly cold, so that something is shown.
fn seen() -> impl Strategy<Value = Content> {
    let kinds: Vec<ColdEventKind> = ColdEventKind::ALL
        .iter()
        .copied()
        .filter(|kind| {
            !matches!(
                kind,
                ColdEventKind::SwitchedOn | ColdEventKind::SwitchedOff | ColdEventKind::Tripped
            )
        })
        .collect();
    let after = || 0..3 * DAY;
    prop_oneof![
        8 => (after(), -24.0..-17.0f64).prop_map(|(after, shown)| spot(after, shown)),
        1 => (after(), -17.0..20.0f64).prop_map(|(after, shown)| spot(after, shown)),
        3 => (after(), select(kinds)).prop_map(|(after, kind)| event(after, kind)),
    ]
}

/// A freezer of this build that was switched on, and what was seen of it.
fn job(build: &str, seen: &[Content]) -> Job {
    let mut job = Job::new(Id::new("law").unwrap(), moment(0), Origin::Invented);
    let told = |check: &str, item: &str, choice: &str| Content::Answer {
        question: Question::new(check, item).unwrap(),
        answer: Answer::Choice(Name::new(choice).unwrap()),
    };
    let first = [
        told("machine", "kind", Kind::UprightFreezer.name()),
        told("machine", "build", build),
        told("refrigerant", "plate", "r134a"),
        event(0, ColdEventKind::SwitchedOn),
    ];
    for content in first.iter().chain(seen).cloned() {
        enter(&mut job, content);
    }
    job
}

fn enter(job: &mut Job, content: Content) {
    let id = Id::new(&format!("e-{}", job.entries().len())).unwrap();
    let at = moment(0);
    job.add(Entry { id, at, content }).unwrap();
}

/// By the checks alone: what is weighed holds a machine back and shows no point.
fn proof(job: &Job, now: Moment) -> Proof {
    let mut known = assess_checks(&Model::default(), job, now);
    known.cool_down = CoolDown::of(job, now);
    Proof::of(job, &known, now).unwrap()
}

fn is_done(proof: &Proof, point: ProofPoint) -> bool {
    proof.state(point) == Some(ProofState::Done)
}

fn build() -> impl Strategy<Value = &'static str> {
    select(vec!["manual-defrost", "frost-free", "inverter"])
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn the_order_of_entries_does_not_matter(
        build in build(),
        seen in vec(seen(), 1..40).prop_shuffle(),
        now in 0..4 * DAY,
    ) {
        let one = proof(&job(build, &seen), moment(now));
        let turned: Vec<Content> = seen.into_iter().rev().collect();
        prop_assert_eq!(one, proof(&job(build, &turned), moment(now)));
    }

    #[test]
    fn struck_entries_prove_nothing(
        build in build(),
        kept in vec(seen(), 1..20),
        struck in vec(seen(), 1..20),
    ) {
        let now = moment(4 * DAY);
        let mut all = job(build, &kept);
        for content in &struck {
            let id = Id::new(&format!("e-{}", all.entries().len())).unwrap();
            enter(&mut all, content.clone());
            enter(&mut all, Content::Strike(id));
        }
        prop_assert_eq!(proof(&all, now), proof(&job(build, &kept), now));
    }

    #[test]
    fn a_day_that_was_held_is_a_day_of_readings_since_the_target(
        steps in vec((1i64..12 * 60, -21.0..-16.0f64), 4..24),
    ) {
        let mut minute = 0;
        let read: Vec<(i64, f64)> = steps
            .into_iter()
            .map(|(step, shown)| {
                minute += step;
                (minute * 60_000, shown)
            })
            .collect();
        let seen: Vec<Content> = read.iter().map(|&(at, shown)| spot(at, shown)).collect();
        let last = read.last().unwrap().0;
        let found = proof(&job("inverter", &seen), moment(last + DAY));
        let is_held = is_done(&found, ProofPoint::HeldForADay);
        let cold = read.iter().find(|(_, shown)| *shown <= -18.0);
        let is_day = cold.is_some_and(|cold| last - cold.0 >= DAY);
        let gaps = read.windows(2).filter(|pair| pair[1].0 > last - DAY);
        let has_gap = gaps.map(|pair| pair[1].0 - pair[0].0).any(|gap| gap > 10 * 3_600_000);
        // So cold on the mean, whichever way it is taken.
        let is_cold = read.iter().all(|(_, shown)| *shown <= -17.5);
        prop_assert!(!is_held || (is_day && !has_gap), "{found:?}");
        prop_assert!(is_held || !(is_day && !has_gap && is_cold), "{found:?}");
    }

    #[test]
    fn time_alone_proves_nothing(
        build in build(),
        seen in vec(seen(), 1..60),
        later in 0..400 * DAY,
    ) {
        let found = job(build, &seen);
        let before = proof(&found, moment(3 * DAY));
        let after = proof(&found, moment(3 * DAY + later));
        for point in ProofPoint::ALL {
            prop_assert_eq!(is_done(&before, *point), is_done(&after, *point), "{:?}", point);
        }
    }
}

#[test]
fn what_the_laws_speak_of_happens() {
    // Without this a law would hold because nothing is ever proved.
    let seen: Vec<Content> = (0..60)
        .map(|hour| spot(hour * 3_600_000, -19.0 + 0.5 * (hour % 2) as f64))
        .collect();
    for build in ["manual-defrost", "frost-free", "inverter"] {
        let found = proof(&job(build, &seen), moment(3 * DAY));
        assert!(is_done(&found, ProofPoint::HeldForADay), "{found:?}");
    }
}

//! What is timed, read and watched on simulated machines is entered at its moments and within the
//! limits of whoever does it.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

use diagnosis::{Adviser, Clue, Model, Pause, StartTrials, Task};
use job::{Answer, ColdEventKind, Content, Entry, Id, Job, Moment, Origin, Place, StartTrial};
use job::{SetUp, Tried};
use measure::MeterKind;
use practice::{Begun, Examined, Examiner, Order, Sheet, Watched, walk};
use quantity::{Ratio, Seconds};
use simulator::Chance;
use simulator::appliance::Kind;
use simulator::machine::{Ailment, Blueprint, Gear, Machine, Trouble};

/// A chest freezer with a PTC, and this wrong with it.
fn chest(wrong: Option<(Ailment, f64)>) -> Sheet {
    let drawn = |seed| Blueprint::drawn(Kind::ChestFreezer, false, &mut Chance::new(seed));
    let blueprint = (0..100).map(drawn).find(|one| one.gear == Gear::Ptc);
    let troubles: Vec<Trouble> = wrong
        .into_iter()
        .map(|(ailment, severity)| Trouble {
            ailment,
            severity: Ratio::new(severity),
        })
        .collect();
    let machine = Machine::build(&blueprint.unwrap(), &troubles, Chance::new(8)).unwrap();
    Sheet::new(machine, MeterKind::Good, &Chance::new(8))
}

fn at(minutes: i64) -> Moment {
    Moment::new(1_795_600_000_000 + minutes * 60_000, 60).unwrap()
}

fn add(job: &mut Job, at: Moment, content: Content) {
    let id = Id::new(&format!("e{}", job.entries().len())).unwrap();
    job.add(Entry { id, at, content }).unwrap();
}

/// A job with what is told at the beginning.
fn told(sheet: &mut Sheet) -> Job {
    let mut job = Job::new(Id::new("j").unwrap(), at(0), Origin::Invented);
    for content in sheet.opening() {
        add(&mut job, at(0), content);
    }
    job
}

fn watched(sheet: &mut Sheet, job: &Job, clue: Clue) -> Option<Watched> {
    let begun = Begun {
        task: Task::Clue(clue),
        job,
        at: at(30),
    };
    Examiner::of(sheet).watch(&begun)
}

fn trials(watched: &Watched) -> Vec<&StartTrial> {
    let entries = watched.entries.iter();
    entries
        .filter_map(|(_, content)| match content {
            Content::Trial(trial) => Some(trial),
            _ => None,
        })
        .collect()
}

#[test]
fn a_sound_compressor_starts_after_the_rest_that_the_app_says() {
    let mut sheet = chest(None);
    let mut job = told(&mut sheet);
    let seen = watched(&mut sheet, &job, Clue::Restart).unwrap();
    let tried = trials(&seen);
    let last = tried.last().unwrap();
    let started = tried.iter().filter(|one| one.outcome.turns()).count();
    assert!(last.outcome.turns() && started == 1, "{tried:?}");
    // It has run for a quarter of an hour before its rest is counted.
    assert!(at(30).until(last.at) >= last.rest.seconds() + Seconds::new(900.0));
    let first = StartTrials::of(&job, at(30));
    let first = first.next_rest(&job, SetUp::Original).unwrap();
    let rested = tried[0].rest.seconds() - first.rest;
    assert!(rested >= Seconds::new(0.0) && rested < Seconds::new(60.0));
    for (at, content) in seen.entries {
        add(&mut job, at, content);
    }
    let trials = StartTrials::of(&job, seen.ends);
    let series = trials.series(SetUp::Original).unwrap();
    assert!(series.zones.abnormal < 0.1, "{:?}", series.zones);
}

/// Locked-rotor current heats a winding: nobody tries four times in a row.
#[test]
fn what_never_turns_is_tried_no_more_than_the_limit_allows() {
    let mut sheet = chest(Some((Ailment::RotorSeized, 1.0)));
    let mut job = told(&mut sheet);
    for (clue, set_up) in [
        (Clue::Restart, SetUp::Original),
        (Clue::GoodDevice, SetUp::Substitute),
    ] {
        let seen = watched(&mut sheet, &job, clue).unwrap();
        let tried = trials(&seen);
        assert!((1..=3).contains(&tried.len()), "{clue:?}: {tried:?}");
        for one in &tried {
            assert_eq!(one.set_up, set_up);
            assert_eq!(one.outcome, Tried::HummedAndTripped, "{clue:?}");
            assert!(!one.is_cold || one.dead.is_none());
        }
        for pair in tried.windows(2) {
            assert!(pair[0].at.until(pair[1].at) >= Seconds::new(1_800.0));
        }
        for (at, content) in seen.entries {
            add(&mut job, at, content);
        }
        let pause = StartTrials::of(&job, seen.ends).pause;
        assert!(!matches!(pause, Some(Pause::SixAnHour { .. })), "{pause:?}");
    }
}

/// A rest is that of the pressures and start device at the time: a device that was just heated by a
/// running motor holds it off, and some minutes later doesn't.
#[test]
fn each_try_is_made_on_the_machine_as_it_is_by_then() {
    let sheet = chest(None);
    let session = sheet.machine().plug_in(Seconds::new(900.0)).unwrap();
    let starts = |rest: f64| {
        let again = session.again(Seconds::new(rest), Seconds::new(20.0));
        again.unwrap().run_up().is_some()
    };
    assert!(!starts(5.0) && starts(900.0));
}

#[test]
fn a_cool_down_is_read_each_half_hour_until_it_is_clear() {
    let mut sheet = chest(None);
    let job = told(&mut sheet);
    let seen = watched(&mut sheet, &job, Clue::Temperatures).unwrap();
    let (first, content) = &seen.entries[0];
    assert_eq!(*first, at(30));
    let is_on = |content: &Content| match content {
        Content::Event(event) => event.kind == ColdEventKind::SwitchedOn,
        _ => false,
    };
    assert!(is_on(content), "{content:?}");
    let mut before = *first;
    for (at, content) in &seen.entries[1..] {
        let Content::Spot(spot) = content else {
            panic!("{content:?}");
        };
        assert_eq!((spot.place, spot.at), (Place::Freezer, *at));
        assert_eq!(before.until(*at), Seconds::new(1_800.0));
        before = *at;
    }
    assert_eq!(before, seen.ends);
    // A sound chest is there in hours; half a day isn't waited for.
    assert!(at(30).until(seen.ends) < Seconds::new(43_000.0));
}

#[test]
fn watts_and_volts_are_numbers_and_a_board_s_watts_are_left_out() {
    let mut sheet = chest(None);
    let read = Examiner::of(&mut sheet).answer(Task::Clue(Clue::WattsTrend));
    assert_eq!(read.len(), 2, "{read:?}");
    for content in &read {
        let Content::Answer { question, answer } = content else {
            panic!("{content:?}");
        };
        assert_eq!(question.check.as_str(), "running");
        assert!(matches!(answer, Answer::Reading(_)), "{answer:?}");
    }
    let mut sheet = chest(Some((Ailment::RotorSeized, 1.0)));
    let read = Examiner::of(&mut sheet).answer(Task::Clue(Clue::SaggingVolts));
    assert_eq!(read.len(), 4, "{read:?}");

    let blueprint = Blueprint::drawn(Kind::FrostFree, true, &mut Chance::new(1));
    let machine = Machine::build(&blueprint, &[], Chance::new(8)).unwrap();
    let mut sheet = Sheet::new(machine, MeterKind::Good, &Chance::new(8));
    let read = Examiner::of(&mut sheet).answer(Task::Clue(Clue::PowerLevel));
    let is_number = |content: &Content| match content {
        Content::Answer { answer, .. } => matches!(answer, Answer::Reading(_)),
        _ => true,
    };
    assert!(!read.iter().any(is_number), "{read:?}");
}

/// Waiting that is counted is waiting that went by, and what was timed counts as done.
#[test]
fn a_walk_waits_as_long_as_its_entries_say() {
    let model = Model::default();
    let mut sheet = chest(Some((Ailment::RotorSeized, 1.0)));
    let walked = walk(&mut Examiner::of(&mut sheet), &model, Order::Ours).unwrap();
    let entries = walked.job.entries();
    let (first, last) = (entries.first().unwrap().at, entries.last().unwrap().at);
    let took = first.until(last).get() / 60.0;
    assert!(took <= walked.minutes + walked.waiting + 1e-6);
    let tried = entries.iter().any(|one| match &one.content {
        Content::Trial(trial) => trial.set_up == SetUp::Substitute,
        _ => false,
    });
    assert!(tried, "{:?}", walked.tasks);
    let again = Adviser::new(&model).advise(&walked.job, last).unwrap();
    let restart = Task::Clue(Clue::GoodDevice);
    let offered = again.next.iter().find(|one| one.task == restart);
    assert!(offered.is_none_or(|one| one.again.is_some()));
}

//! What is answered about simulated machines is what a person could have found, whoever asks.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

use diagnosis::{Ask, Check, Clue, Fault, Model, Priors, Task, assess, item_of_pair};
use job::{Answer, Content, Entry, Id, Job, Moment, Origin};
use measure::MeterKind;
use measure::windings::Pair;
use practice::{Examined, Order, Sheet, drawn, walk};
use quantity::Ratio;
use simulator::Chance;
use simulator::appliance::Kind;
use simulator::machine::{Ailment, Blueprint, Gear, Machine, Trouble};

fn sheet(number: u64) -> Option<Sheet> {
    drawn(&Priors::default(), MeterKind::Basic, 3, number).unwrap()
}

/// A chest freezer with a PTC, and this wrong with it.
fn chest(ailment: Ailment, severity: f64) -> Sheet {
    let drawn = |seed| Blueprint::drawn(Kind::ChestFreezer, false, &mut Chance::new(seed));
    let blueprint = (0..100).map(drawn).find(|one| one.gear == Gear::Ptc);
    let trouble = Trouble {
        ailment,
        severity: Ratio::new(severity),
    };
    let machine = Machine::build(&blueprint.unwrap(), &[trouble], Chance::new(8)).unwrap();
    Sheet::new(machine, MeterKind::Good, &Chance::new(8))
}

fn chosen(contents: &[Content]) -> Option<&str> {
    contents.iter().find_map(|content| match content {
        Content::Answer {
            answer: Answer::Choice(name),
            ..
        } => Some(name.as_str()),
        _ => None,
    })
}

#[test]
fn the_order_of_questions_changes_no_answer() {
    for number in 0..6 {
        let Some(mut forwards) = sheet(number) else {
            continue;
        };
        let mut backwards = sheet(number).unwrap();
        let tasks: Vec<Task> = Task::all().collect();
        let mut later: Vec<_> = tasks
            .iter()
            .rev()
            .map(|task| backwards.answer(*task))
            .collect();
        later.reverse();
        let first: Vec<_> = tasks.iter().map(|task| forwards.answer(*task)).collect();
        assert_eq!(first, later, "machine {number}");
    }
}

/// Whoever could tell a sound machine by who speaks of it would need no check.
#[test]
fn who_tells_of_a_machine_says_nothing_of_what_is_wrong_with_it() {
    let told_by = |troubles: &[Trouble], number: u64| {
        let blueprint = Blueprint::drawn(Kind::ChestFreezer, false, &mut Chance::new(number));
        let machine = Machine::build(&blueprint, troubles, Chance::new(number)).unwrap();
        let sheet = Sheet::new(machine, MeterKind::Basic, &Chance::new(number));
        sheet.clone().opening().iter().any(|content| match content {
            Content::Answer {
                question,
                answer: Answer::Choice(name),
            } => question.is("machine", "told-by") && name.as_str() == "seller",
            _ => false,
        })
    };
    let silent = [Trouble {
        ailment: Ailment::ThermostatOpen,
        severity: Ratio::new(0.5),
    }];
    let tellers: Vec<bool> = (0..12).map(|number| told_by(&[], number)).collect();
    assert!(tellers.contains(&true) && tellers.contains(&false));
    for (number, teller) in (0..).zip(&tellers) {
        assert_eq!(told_by(&silent, number), *teller);
    }
}

#[test]
fn every_answer_is_one_that_the_app_offers() {
    for number in 0..12 {
        let Some(mut sheet) = sheet(number) else {
            continue;
        };
        let at = Moment::new(0, 0).unwrap();
        let mut job = Job::new(Id::new("j").unwrap(), at, Origin::Invented);
        let mut add = |contents: Vec<Content>| {
            for content in contents {
                let id = Id::new(&format!("e{}", job.entries().len())).unwrap();
                job.add(Entry { id, at, content }).unwrap();
            }
        };
        add(sheet.opening());
        for task in Task::all() {
            let answers = sheet.answer(task);
            for content in &answers {
                let Content::Answer { question, answer } = content else {
                    panic!("{task:?}: {content:?}");
                };
                assert_eq!(question.check.as_str(), task.name());
                if let (Task::Clue(clue), Answer::Choice(name)) = (task, answer) {
                    let offered = clue.answer(name.as_str()).is_some();
                    let absent = Ask::Answer(clue).can_be_absent();
                    assert!(offered || absent, "{clue:?}: {name:?}");
                }
            }
            add(answers);
        }
        // Everything at once, powered or not: nothing falls over.
        assert!(assess(&Model::default(), &job, at).whole.is_some());
    }
}

#[test]
fn a_seized_rotor_is_never_heard_to_start() {
    let mut sheet = chest(Ailment::RotorSeized, 1.0);
    for clue in [Clue::PowerUp, Clue::GoodDevice, Clue::StartKit] {
        let answer = sheet.answer(Task::Clue(clue));
        let heard = chosen(&answer).unwrap();
        assert!(
            ["hums", "hums-then-clicks"].contains(&heard),
            "{clue:?}: {heard}"
        );
    }
}

#[test]
fn an_empty_circuit_leaves_condenser_and_evaporator_as_the_room_and_draws_little() {
    let mut sheet = chest(Ailment::ChargeGone, 1.0);
    let mut said = |clue: Clue| chosen(&sheet.answer(Task::Clue(clue))).unwrap().to_owned();
    assert_eq!(said(Clue::CondenserWarmth), "room-temperature");
    assert_eq!(said(Clue::FrostPattern), "none");
    assert_eq!(said(Clue::PowerLevel), "low");
    assert_eq!(said(Clue::Temperatures), "both-warm");
}

#[test]
fn what_a_start_device_lacks_a_good_one_brings() {
    let mut sheet = chest(Ailment::StartDeviceOpen, 1.0);
    let heard = sheet.answer(Task::Clue(Clue::GoodDevice));
    assert_eq!(chosen(&heard), Some("starts"));
}

#[test]
fn a_motor_that_is_cut_off_within_seconds_of_its_start_passes_for_one_that_hums() {
    let mut sheet = chest(Ailment::StartDeviceStaysIn, 1.0);
    let session = sheet.machine().plug_in(quantity::Seconds::new(900.0));
    assert!(session.unwrap().has_run());
    let heard = sheet.answer(Task::Clue(Clue::PowerUp));
    assert_eq!(chosen(&heard), Some("hums-then-clicks"));
}

#[test]
fn a_machine_that_trips_shows_nothing_that_takes_time() {
    let mut sheet = chest(Ailment::WindingLeaks, 1.0);
    let told = sheet.answer(Task::Clue(Clue::PowerUp));
    assert_eq!(chosen(&told), Some("trips"));
    for clue in [
        Clue::CondenserWarmth,
        Clue::Hiss,
        Clue::FrostPattern,
        Clue::RunPattern,
        Clue::Temperatures,
        Clue::Restart,
        Clue::GoodDevice,
    ] {
        let answer = sheet.answer(Task::Clue(clue));
        assert_eq!(chosen(&answer), None, "{clue:?}: {answer:?}");
    }
}

#[test]
fn following_the_next_check_ends_with_the_same_advice_each_time() {
    let model = Model::default();
    for number in 0..4 {
        let walked = |order: Order| sheet(number).and_then(|mut one| walk(&mut one, &model, order));
        let first = walked(Order::Ours);
        assert_eq!(first, walked(Order::Ours));
        if let Some(first) = first {
            for task in &first.tasks {
                let times = first.tasks.iter().filter(|other| *other == task).count();
                assert!(times <= 2, "{task:?} was made {times} times");
            }
        }
    }
}

/// What condemns a compressor is read a second time, an hour later and with an error of its own,
/// and no third time.
#[test]
fn a_protector_found_open_inside_is_measured_again_an_hour_later() {
    let drawn = |seed| Blueprint::drawn(Kind::ChestFreezer, false, &mut Chance::new(seed));
    let trouble = Trouble {
        ailment: Ailment::InnerProtectorOpen,
        severity: Ratio::new(0.5),
    };
    let windings = Task::Check(Check::Windings);
    let mut is_new = false;
    for blueprint in (0..4).map(drawn) {
        let machine = Machine::build(&blueprint, &[trouble], Chance::new(8)).unwrap();
        let mut sheet = Sheet::new(machine, MeterKind::Good, &Chance::new(8));
        let walked = walk(&mut sheet, &Model::default(), Order::Ours).unwrap();
        let done = walked.tasks.iter().filter(|task| **task == windings);
        assert_eq!(done.count(), 2);
        for pair in Pair::ALL {
            let read = walked.job.answers(windings.name(), item_of_pair(pair));
            let [(first, one), (second, other)] = read.as_slice() else {
                panic!("{pair:?} was read {} times", read.len());
            };
            let apart = second.at.unix_milliseconds() - first.at.unix_milliseconds();
            assert!(apart >= 3_600_000, "{apart} ms");
            is_new |= one != other;
        }
        let best = walked.whole.verdict.best;
        assert_eq!(best.fault, Some(Fault::InnerProtectorOpen));
    }
    assert!(is_new, "every second reading was the first one");
}

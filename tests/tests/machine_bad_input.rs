//! What can't be, what nobody is sure of, and what a file from elsewhere may hold: each gives a
//! sensible answer, and the job keeps it all.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic, clippy::expect_used)]

mod told;

use diagnosis::{ANSWER, Choice, Clue, Decided, Fault, Model, Task, Whole, WhyWithheld, assess};
use job::{Answer, Content, Entry, Id, Job, Measured, Name, Question, Reading, Text};
use measure::MeterKind;
use quantity::{Celsius, Farads, Quantity, parse_reading};

const CHEST: [&str; 2] = [
    "machine/kind: chest-freezer",
    "machine/build: manual-defrost",
];

fn whole(lines: &[&str]) -> Whole {
    told::assessed(lines).whole.expect("a machine was told")
}

fn with_chest<'a>(lines: &[&'a str]) -> Vec<&'a str> {
    CHEST.into_iter().chain(lines.iter().copied()).collect()
}

fn probability(whole: &Whole, fault: Fault) -> f64 {
    let found = whole.suspects.iter().find(|one| one.fault == Some(fault));
    found.map_or(0.0, |one| one.probability)
}

fn is_sensible(whole: &Whole) -> bool {
    let each = whole.suspects.iter().map(|one| one.probability);
    let links = whole.links.iter().map(|one| one.broken);
    let mut all = each.chain(links).chain([whole.nothing_wrong.probability]);
    all.all(|p| (0.0..=1.0 + 1e-9).contains(&p)) && whole.verdict.best.cost.is_finite()
}

#[test]
fn every_check_answered_not_sure_leaves_what_is_usual_and_says_that_nothing_is_left() {
    let own = Clue::ALL.iter().filter(|clue| clue.check().is_none());
    let unsure: Vec<String> = own
        .map(|clue| format!("{} - not-sure", clue.name()))
        .chain(["history/known - not-sure".to_owned()])
        .collect();
    let unsure: Vec<&str> = unsure.iter().map(String::as_str).collect();
    let (usual, asked) = (whole(&CHEST), whole(&with_chest(&unsure)));
    assert_eq!(usual.suspects, asked.suspects);
    assert!(
        asked
            .next
            .iter()
            .all(|check| matches!(check.task, Task::Check(_)))
    );
    let given_up = asked
        .withheld
        .iter()
        .filter(|one| one.why == WhyWithheld::CannotBeDone);
    assert!(given_up.count() >= unsure.len());
}

#[test]
fn of_a_part_that_there_is_not_and_its_reading_the_later_word_counts() {
    let machine = ["machine/kind: fridge-freezer", "machine/build: frost-free"];
    let of = |lines: &[&str]| {
        let all: Vec<&str> = machine.iter().chain(lines).copied().collect();
        probability(&whole(&all), Fault::CapacitorFailed)
    };
    let usual = of(&[]);
    assert!(of(&["capacitor: there-is-none"]) < usual);
    assert!(of(&["capacitor: low", "capacitor: there-is-none"]) < usual);
    assert!(of(&["capacitor: there-is-none", "capacitor: low"]) > 5.0 * usual);
}

#[test]
fn a_machine_said_to_have_no_capacitor_keeps_the_reading_of_one_and_is_not_sure_of_it() {
    let said = whole(&with_chest(&[
        "stored-charge/stores: nothing",
        "capacitor: low",
    ]));
    let found = probability(&said, Fault::CapacitorFailed);
    assert!(found < 0.3 && is_sensible(&said), "{found}");
    let told = told::job(&with_chest(&[
        "stored-charge/stores: nothing",
        "capacitor: low",
    ]));
    assert!(told.answer("capacitor", ANSWER).is_some());
}

#[test]
fn all_answers_to_one_check_at_once_are_pooled_to_next_to_nothing() {
    let hiss: Vec<String> = Clue::Hiss
        .answers()
        .iter()
        .map(|answer| format!("hiss: {answer}"))
        .collect();
    let hiss: Vec<&str> = hiss.iter().map(String::as_str).collect();
    let runs = with_chest(&["power-up: runs"]);
    let all: Vec<&str> = runs.iter().chain(&hiss).copied().collect();
    let (without, pooled) = (whole(&runs), whole(&all));
    assert!(is_sensible(&pooled));
    for one in without.suspects.iter().take(5) {
        let now = probability(&pooled, one.fault.unwrap());
        assert!((now - one.probability).abs() < 0.1, "{one:?} {now}");
    }
}

/// Six ways of numbering the same three pins give the same machine.
#[test]
fn pins_numbered_otherwise_leave_every_suspect_as_it_was() {
    let orders = [
        [1, 2, 3],
        [1, 3, 2],
        [2, 1, 3],
        [2, 3, 1],
        [3, 1, 2],
        [3, 2, 1],
    ];
    for readings in [
        ["4.7", "7.6", "12.0"],
        ["4.7", "OL", "OL"],
        ["8.1", "8.2", "8.1"],
    ] {
        let measured = |order: [usize; 3]| {
            let pair = |one: usize, other: usize| {
                let (low, high) = (order[one].min(order[other]), order[one].max(order[other]));
                format!("windings/pair-{low}-{high}")
            };
            let lines: Vec<String> = [(0, 1), (1, 2), (0, 2)]
                .iter()
                .zip(readings)
                .map(|(&(one, other), read)| format!("{} = {read}", pair(one, other)))
                .chain(["windings/start-gear: off".to_owned()])
                .collect();
            let lines: Vec<&str> = lines.iter().map(String::as_str).collect();
            whole(&[&["machine/kind: fridge-freezer"], &lines[..]].concat())
        };
        let first = measured(orders[0]);
        for order in orders {
            let other = measured(order);
            for one in &first.suspects {
                let now = probability(&other, one.fault.unwrap());
                assert!(
                    (now - one.probability).abs() < 1e-9,
                    "{order:?} {one:?} {now}"
                );
            }
            assert_eq!(first.verdict.best.action, other.verdict.best.action);
        }
    }
}

/// A job with answers as a file from elsewhere may hold them.
fn job_with(answers: &[(&str, &str, Answer)]) -> Job {
    let mut job = told::job(&CHEST);
    let count = job.entries().len();
    for (place, (check, item, answer)) in answers.iter().enumerate() {
        job.add(Entry {
            id: Id::new(&format!("raw-{place}")).unwrap(),
            at: told::moment(count + place),
            content: Content::Answer {
                question: Question::new(check, item).unwrap(),
                answer: answer.clone(),
            },
        })
        .unwrap();
    }
    job
}

fn reading<Q: Quantity>(
    typed: &str,
    top: Q,
    measured: fn(quantity::Typed<Q>) -> Measured,
) -> Answer {
    Answer::Reading(Reading {
        typed: Text::new(typed).unwrap(),
        measured: measured(parse_reading(typed, top).unwrap()),
        accuracy: MeterKind::Good.automatic().accuracy,
    })
}

#[test]
fn names_shapes_and_units_that_are_not_ours_are_kept_and_passed_over() {
    let choice = |name: &str| Answer::Choice(Name::new(name).unwrap());
    let celsius = |typed: &str| reading(typed, Celsius::new(500.0), Measured::Celsius);
    let farads = |typed: &str| reading(typed, Farads::new(1.0), Measured::Farads);
    let strange = [
        ("hiss", ANSWER, choice("sings")),
        ("sniffer", ANSWER, choice("beeps")),
        ("seal", "hinge", choice("stands-off")),
        ("seal", ANSWER, farads("4.7u")),
        ("room-temperature", ANSWER, farads("20")),
        ("capacitor", "measured", celsius("20")),
        // A capacitor without a marking says nothing.
        ("capacitor", "measured", farads("4.7u")),
        ("history", "known", choice("outbuilding")),
    ];
    let job = job_with(&strange);
    let now = told::moment(job.entries().len());
    let plain = whole(&CHEST);
    let found = assess(&Model::default(), &job, now).whole.unwrap();
    assert_eq!(plain.suspects, found.suspects);
    assert_eq!(job.entries().len(), CHEST.len() + strange.len());
}

#[test]
fn numbers_beyond_the_scale_are_held_at_its_end() {
    for line in [
        "temperatures/freezer = 199",
        "temperatures/freezer = -199",
        "room-temperature = 150",
    ] {
        assert!(is_sensible(&whole(&with_chest(&[line]))), "{line}");
    }
    let marked = "stored-charge/capacitor-marking = 0";
    for read in [
        "capacitor/measured = 0",
        "capacitor/measured = 1",
        "capacitor/measured = OL",
    ] {
        let told = with_chest(&["stored-charge/stores: capacitor", marked, read]);
        assert!(is_sensible(&whole(&told)), "{read}");
    }
    let told = |read| {
        let marked = "stored-charge/capacitor-marking = 12u";
        let lines = with_chest(&["stored-charge/stores: capacitor", marked, read]);
        probability(&whole(&lines), Fault::CapacitorFailed)
    };
    assert!(told("capacitor/measured = 0") > 3.0 * told("capacitor/measured = 12.3u"));
}

/// A capacitor within its tolerance and the meter's isn't condemned; the further below, the worse.
#[test]
fn a_capacitor_is_weighed_by_its_share_of_the_marking_and_never_by_a_threshold() {
    let told = |read: &str| {
        let read = format!("capacitor/measured = {read}");
        let lines = with_chest(&[
            "machine/complaint: hums-then-clicks",
            "stored-charge/stores: capacitor",
            "stored-charge/capacitor-marking = 10u",
            &read,
        ]);
        probability(&whole(&lines), Fault::CapacitorFailed)
    };
    let shares = ["10.2u", "9.5u", "9.0u", "8.5u", "8.0u", "7.0u"].map(told);
    assert!(shares.is_sorted(), "{shares:?}");
    assert!(shares[0] < 0.02 && shares[5] > 0.3, "{shares:?}");
    let mut steps = shares[2..].windows(2).map(|pair| pair[1] / pair[0]);
    assert!(steps.all(|step| step < 15.0), "{shares:?}");
}

#[test]
fn nothing_at_all_and_a_name_alone_are_told_nothing_of() {
    assert!(told::assessed(&[]).whole.is_none());
    let usual = whole(&CHEST);
    assert_eq!(usual.verdict.decided, Decided::GoOn);
    assert!(usual.conflict.is_none() && is_sensible(&usual));
}

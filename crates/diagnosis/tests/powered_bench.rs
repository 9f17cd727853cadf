//! What the outlet and its volts say, and what a number weighs.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

mod story;

use diagnosis::{
    Assessment, Basis, Caution, Choice, Clue, Fault, Finding, Gate, Item, Link, LinkState,
    OutletWiring, Protection, Step, SupplyFinding, Task,
};
use measure::Against;
use measure::supply::{Conductors, SupplyError, SupplyStandard};
use story::Story;

const US: &str = "120-v-60-hz";
const EUROPE: &str = "230-v-50-hz";

fn supply(now: &Assessment) -> Vec<SupplyFinding> {
    let found = now.findings.iter().filter_map(|finding| match finding {
        Finding::Supply(found) => Some(found.clone()),
        _ => None,
    });
    found.collect()
}

fn hums(mains: &str) -> Story {
    let mut story = Story::grounded(mains);
    story.choose("machine", "complaint", "hums-then-clicks");
    story.choose("machine", "told-by", "myself");
    story
}

/// 121 V at rest, and as low as is told while it starts.
fn sagging(story: Story, lowest: &str, caught: &str) -> Story {
    story
        .with("supply", "outlet-protection", "trips-by-its-button")
        .item(Item::IdleVolts, "121.0")
        .item(Item::LowestVolts, lowest)
        .with("supply", "lowest-caught", caught)
}

fn chance(now: &Assessment, fault: Fault) -> f64 {
    let suspects = &now.whole.as_ref().unwrap().suspects;
    let found = suspects.iter().find(|one| one.fault == Some(fault));
    found.map_or(0.0, |one| one.probability)
}

fn is_offered(now: &Assessment, task: Task) -> bool {
    let whole = now.whole.as_ref().unwrap();
    whole.next.iter().any(|one| one.task == task)
        || whole.withheld.iter().any(|one| one.task == task)
}

#[test]
fn seventeen_volts_lost_at_fifteen_amperes_are_told_as_share_torque_and_ohms() {
    let now = sagging(hums(US), "104.0", "hum-lasted-three-seconds")
        .item(Item::StartingAmps, "15.0")
        .now();
    let found = supply(&now);
    // 17/121, by a meter of 0.8 % and two counts: u = √(0.674²·104²/121⁴ + 0.596²/121²).
    let [share] = found
        .iter()
        .filter_map(|one| match one {
            SupplyFinding::Fall { share, is_caught } if *is_caught => Some(share),
            _ => None,
        })
        .collect::<Vec<_>>()
        .try_into()
        .unwrap();
    assert!((share.value().get() - 0.140_5).abs() < 1e-4);
    assert!(
        (share.standard().get() - 0.006_87).abs() < 2e-5,
        "{share:?}"
    );
    // 104 V on a 115 V motor leave 0.82 of its torque; twice the relative uncertainty.
    let torque = found.iter().find_map(|one| match one {
        SupplyFinding::TorqueLeft { share, .. } => Some(share),
        _ => None,
    });
    let torque = torque.unwrap();
    assert!((torque.value().get() - 0.818).abs() < 1e-3);
    assert!((torque.standard().get() - 2.0 * 0.818 * 0.596 / 104.0).abs() < 1e-4);
    let way = found.iter().find_map(|one| match one {
        SupplyFinding::Resistance {
            way: Some(way),
            cord: None,
        } => Some(way),
        _ => None,
    });
    assert!((way.unwrap().value().get() - 17.0 / (15.0 * 0.844)).abs() < 1e-3);
    let supply = now.path.iter().find(|(link, _)| *link == Link::Supply);
    assert_eq!(supply.unwrap().1, LinkState::Doubtful(Basis::Measured));
}

#[test]
fn volts_are_held_against_a_named_standard_as_far_as_the_meter_tells() {
    let lowest = |typed| {
        let now = sagging(hums(US), typed, "hum-lasted-three-seconds").now();
        let found = supply(&now).into_iter().find_map(|one| match one {
            SupplyFinding::Lowest(stands) => Some((stands.standard.standard, stands.against)),
            _ => None,
        });
        found.unwrap()
    };
    let outlet = SupplyStandard::RefrigeratorOutlet115;
    assert_eq!(lowest("110.0"), (outlet, Against::Within));
    assert_eq!(lowest("104.0"), (outlet, Against::CannotTell));
    assert_eq!(lowest("98.0"), (outlet, Against::Below));
    let idle = |mains, typed| {
        let now = hums(mains).item(Item::IdleVolts, typed).now();
        let found = supply(&now).into_iter().find_map(|one| match one {
            SupplyFinding::Idle(stands) => Some((stands.standard.standard, stands.against)),
            _ => None,
        });
        found.unwrap()
    };
    assert_eq!(
        idle(US, "119.0"),
        (SupplyStandard::AnsiUtilisationA, Against::Within)
    );
    assert_eq!(
        idle(US, "106.0"),
        (SupplyStandard::AnsiUtilisationB, Against::Within)
    );
    assert_eq!(
        idle(EUROPE, "198"),
        (SupplyStandard::Iec230, Against::Below)
    );
}

#[test]
fn a_moment_that_no_meter_follows_says_at_least_and_clears_nothing() {
    let now = sagging(hums(US), "119.5", "neither").now();
    let found = supply(&now);
    assert!(found.iter().any(|one| matches!(
        one,
        SupplyFinding::Fall {
            is_caught: false,
            ..
        }
    )));
    let holds = |now: &Assessment| {
        let mut path = now.path.iter();
        path.find(|(link, _)| *link == Link::Supply).unwrap().1
    };
    assert_ne!(holds(&now), LinkState::SoundSoFar(Basis::Measured));
    let caught = sagging(hums(US), "119.5", "hum-lasted-three-seconds").now();
    assert_eq!(holds(&caught), LinkState::SoundSoFar(Basis::Measured));
    // As evidence it is next to none either; the caught one clears the supply.
    let before = chance(&hums(US).now(), Fault::VoltageFalls);
    assert!((chance(&now, Fault::VoltageFalls) / before - 1.0).abs() < 0.05);
    assert!(chance(&caught, Fault::VoltageFalls) < 0.3 * before);
}

#[test]
fn volts_that_rose_are_no_fall() {
    let now = sagging(hums(US), "127.0", "hum-lasted-three-seconds").now();
    let rose = SupplyFinding::Unusable(SupplyError::VoltsRose);
    assert!(supply(&now).contains(&rose));
    let before = hums(US).now();
    let fault = Fault::VoltageFalls;
    assert!((chance(&now, fault) - chance(&before, fault)).abs() < 1e-12);
}

#[test]
fn an_outlet_without_protection_closes_everything_and_asks_for_no_volts() {
    for (answer, caution) in [
        ("none", Caution::UnprotectedOutlet),
        ("button-does-nothing", Caution::DeadProtection),
    ] {
        let story = Story::grounded(US);
        assert_eq!(story.now().gates.look_and_listen, Gate::Open);
        let story = story.with("supply", "outlet-protection", answer);
        let now = story.now();
        assert!(now.cautions.contains(&caution) && now.must_stop());
        assert!(matches!(now.gates.look_and_listen, Gate::Closed(_)));
        let items = diagnosis::Check::Supply.items(&story.job);
        assert!(!items.contains(&Item::IdleVolts));
        // Another outlet is looked at anew.
        let moved = story.with("change", "outlet", "moved").now();
        assert_eq!(moved.gates.look_and_listen, Gate::Open);
        assert_eq!(supply(&moved), []);
    }
    let wired = Story::grounded(US).with("supply", "outlet-wiring", "earth-missing");
    let now = wired.now();
    assert!(now.cautions.contains(&Caution::OutletWithoutEarth));
    assert!(supply(&now).contains(&SupplyFinding::Wiring(OutletWiring::EarthMissing)));
    let good = Story::grounded(US).with("supply", "outlet-protection", "trips-by-its-button");
    let trips = SupplyFinding::Protection(Protection::TripsByItsButton);
    assert_eq!(supply(&good.now()), [trips]);
}

#[test]
fn a_cord_has_its_ohms_by_size_and_its_longest_by_the_current() {
    let now = hums(EUROPE)
        .with("supply", "power-source", "extension-cord")
        .item(Item::CordLength, "25")
        .with("supply", "cord-conductors", "1-5-mm2")
        .item(Item::StartingAmps, "8.0")
        .now();
    let found = supply(&now);
    let cord = found.iter().find_map(|one| match one {
        SupplyFinding::Resistance {
            way: None,
            cord: Some(cord),
        } => Some(cord.get()),
        _ => None,
    });
    // 25 m there and back at 13.3 Ω a kilometre (IEC 60228).
    assert!((cord.unwrap() - 0.665).abs() < 1e-9);
    let longest = found.iter().find_map(|one| match one {
        SupplyFinding::LongestCord {
            conductors: Conductors::Square1_5,
            length,
            used: Some(used),
        } => Some((length.get(), used.get())),
        _ => None,
    });
    // 3 % of 230 V at 8 A are 0.8625 Ω.
    let (length, used) = longest.unwrap();
    assert!((length - 0.862_5 / (2.0 * 0.0133)).abs() < 1e-6 && used > 24.9);
}

#[test]
fn a_number_is_evidence_replaces_the_word_and_ends_the_question() {
    let word = Task::Clue(Clue::SaggingVolts);
    let silent = hums(US);
    let number = sagging(hums(US), "104.0", "hum-lasted-three-seconds");
    let (before, after) = (silent.now(), number.now());
    assert!(is_offered(&before, word) && !is_offered(&after, word));
    let fault = Fault::VoltageFalls;
    assert!(chance(&after, fault) > 3.0 * chance(&before, fault));
    // 14 % by such a meter is over 10 % for certain: as strong as the word for it.
    let told = hums(US).with("sagging-volts", "answer", "over-10-percent");
    assert!((chance(&after, fault) - chance(&told.now(), fault)).abs() < 1e-6);
    // Said and measured count once, by the number.
    let both = |answer| {
        let story = sagging(hums(US), "104.0", "hum-lasted-three-seconds");
        story.with("sagging-volts", "answer", answer).now()
    };
    for said in ["under-5-percent", "over-10-percent"] {
        assert!((chance(&both(said), fault) - chance(&after, fault)).abs() < 1e-12);
    }
}

#[test]
fn close_to_a_bound_a_number_is_shared_among_the_answers() {
    let fault = Fault::VoltageFalls;
    let of = |lowest| {
        let story = sagging(hums(US), lowest, "hum-lasted-three-seconds");
        chance(&story.now(), fault)
    };
    let said = |answer| {
        let story = hums(US).with("sagging-volts", "answer", answer);
        chance(&story.now(), fault)
    };
    // 108.9 V are 10 % exactly: between what both words say, near to neither.
    let (less, more) = (said("5-to-10-percent"), said("over-10-percent"));
    let between = of("108.9");
    assert!(between > less + 0.1 * (more - less) && between < less + 0.9 * (more - less));
}

#[test]
fn numbers_read_after_a_change_speak_of_the_machine_after_it() {
    let changed = hums(US).with("change", "start-device", "replaced");
    let number = sagging(changed, "104.0", "hum-lasted-three-seconds");
    let changed = hums(US).with("change", "start-device", "replaced");
    let word = changed.with("sagging-volts", "answer", "over-10-percent");
    let fault = Fault::VoltageFalls;
    let (number, word) = (number.now(), word.now());
    assert!((chance(&number, fault) - chance(&word, fault)).abs() < 1e-6);
    assert!(chance(&number, fault) > 0.3);
}

#[test]
fn what_was_not_done_says_nothing_and_no_powered_check_is_a_next_step() {
    use job::{Answer, NotDone};
    let plain = hums(US);
    let mut given_up = hums(US);
    for item in Item::ALL {
        if item.check().is_powered() {
            let answer = Answer::NotDone(NotDone::NoTool);
            given_up.answer(item.check().name(), item.name(), answer);
        }
    }
    let (plain, given_up) = (plain.now(), given_up.now());
    assert_eq!(plain.findings, given_up.findings);
    assert_eq!(
        plain.whole.as_ref().unwrap().suspects,
        given_up.whole.as_ref().unwrap().suspects
    );
    let powered = |step: &Step| matches!(step, Step::Do(check) if check.is_powered());
    assert!(!plain.next.iter().any(powered));
    assert!(!plain.whole.unwrap().safety_first.iter().any(powered));
}

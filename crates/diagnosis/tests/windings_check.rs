//! What the windings check says and asks next, from the first touch to the last pair.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic, clippy::float_cmp)]

mod story;

use diagnosis::{
    Assessment, Caution, Check, Finding, Link, LinkState, Model, Step, WindingsFinding, assess,
    item_of_pair,
};
use job::{Answer, Id, Job, NotDone, Origin};
use measure::windings::{Explanation, Label, Leads, Pair, Pin, Role};
use story::{Story, moment};

/// What is left to do once the windings are known.
const AFTERWARDS: [Step; 3] = [
    Step::Do(Check::Shell),
    Step::Do(Check::Protector),
    Step::Do(Check::StartDevice),
];

fn windings(assessment: &Assessment) -> Vec<&WindingsFinding> {
    assessment
        .findings
        .iter()
        .filter_map(|finding| match finding {
            Finding::Windings(about) => Some(about),
            _ => None,
        })
        .collect()
}

fn findings(assessment: &Assessment) -> Vec<&'static str> {
    windings(assessment)
        .into_iter()
        .map(WindingsFinding::name)
        .collect()
}

fn label(assessment: &Assessment, pin: Pin) -> Label {
    assessment.windings.as_ref().unwrap().label(pin)
}

fn link(assessment: &Assessment, wanted: Link) -> LinkState {
    let found = assessment.path.iter().find(|(link, _)| *link == wanted);
    found.unwrap().1
}

fn surely(role: Role) -> Label {
    Label::Is { role, surely: true }
}

#[test]
fn safety_is_asked_before_anything_is_touched() {
    let empty = Job::new(Id::new("j").unwrap(), moment(0), Origin::Person);
    let assessment = assess(&Model::default(), &empty, moment(0));
    let first: Vec<Check> = assessment.next.iter().map(|step| step.check()).collect();
    let safe = [
        Check::Machine,
        Check::Refrigerant,
        Check::LookOver,
        Check::Ground,
    ];
    assert_eq!(first[..4], safe);
    assert!(assessment.cautions.contains(&Caution::StayUnplugged));
}

#[test]
fn one_number_joins_two_pins_and_labels_none() {
    let now = Story::bare().read(Pair::OneTwo, "4,7").now();
    assert_eq!(findings(&now), ["joined"]);
    assert_eq!(label(&now, Pin::One), Label::Nothing);
    assert_eq!(now.next[0], Step::Measure(Pair::OneThree));
}

#[test]
fn two_numbers_foretell_the_third_as_sum_or_difference() {
    let now = Story::bare()
        .read(Pair::OneTwo, "4,7")
        .read(Pair::TwoThree, "7.6")
        .now();
    let [WindingsFinding::Foretold(forecast)] = windings(&now)[..] else {
        panic!("{:?}", now.findings);
    };
    assert_eq!(forecast.pair, Pair::OneThree);
    assert_eq!(forecast.sum_common, Pin::Two);
    assert_eq!(forecast.difference_common, Pin::One);
    assert!((forecast.sum.value().get() - 12.0).abs() < 0.1);
    let difference = forecast.difference.as_ref().unwrap();
    assert!((difference.value().get() - 3.2).abs() < 0.1);
}

#[test]
fn three_numbers_that_add_up_label_all_pins_and_take_the_leads_out() {
    let now = Story::bare()
        .read(Pair::OneTwo, "4,7")
        .read(Pair::TwoThree, "7.6")
        .read(Pair::OneThree, "12.0")
        .now();
    assert_eq!(label(&now, Pin::Two), surely(Role::Common));
    assert_eq!(label(&now, Pin::One), surely(Role::Run));
    assert_eq!(label(&now, Pin::Three), surely(Role::Start));
    assert!(findings(&now).contains(&"adds-up"));
    assert!(findings(&now).contains(&"windings-whole"));
    assert!(matches!(
        link(&now, Link::Circuit),
        LinkState::SoundSoFar(_)
    ));
    assert_eq!(now.next, AFTERWARDS);
}

#[test]
fn a_third_number_that_fits_neither_forecast_is_repeated_and_condemns_nothing() {
    let now = Story::bare()
        .read(Pair::OneTwo, "4.7")
        .read(Pair::TwoThree, "7.6")
        .read(Pair::OneThree, "15.0")
        .now();
    assert_eq!(now.next[0], Step::Repeat(Pair::OneThree));
    assert!(!matches!(link(&now, Link::Circuit), LinkState::Broken(_)));
}

#[test]
fn two_pairs_that_read_and_one_over_range_is_a_probe_that_missed() {
    let now = Story::bare()
        .read(Pair::OneTwo, "4.7")
        .read(Pair::TwoThree, "7.6")
        .read(Pair::OneThree, "OL")
        .now();
    assert_eq!(findings(&now), ["probe-missed"]);
    assert_eq!(now.next[0], Step::Repeat(Pair::OneThree));
}

#[test]
fn a_common_pin_that_is_open_waits_an_hour_before_it_is_believed() {
    let story = Story::bare()
        .read(Pair::OneTwo, "OL")
        .read(Pair::TwoThree, "OL")
        .read(Pair::OneThree, "12.0");
    let now = story.now();
    let [
        WindingsFinding::Fault {
            explanation, pin, ..
        },
    ] = windings(&now)[..]
    else {
        panic!("{:?}", now.findings);
    };
    assert_eq!(
        (*explanation, *pin),
        (Explanation::ProtectorOpen, Some(Pin::Two))
    );
    assert!(matches!(link(&now, Link::Circuit), LinkState::Doubtful(_)));
    assert_eq!(now.next[0], Step::CoolAndRepeat { minutes_left: 60 });
    assert_eq!(
        story.after(45).next[0],
        Step::CoolAndRepeat { minutes_left: 15 }
    );
    assert_eq!(
        story.after(600).next[0],
        Step::CoolAndRepeat { minutes_left: 0 }
    );
}

#[test]
fn three_alike_are_an_inverter_only_with_bare_pins() {
    let mut covered = Story::grounded("120-v-60-hz");
    covered.choose("windings", "shape", "row");
    let alike = |story: Story| {
        story
            .read(Pair::OneTwo, "9.8")
            .read(Pair::TwoThree, "9.9")
            .read(Pair::OneThree, "9.8")
            .now()
    };
    let bare = alike(Story::bare());
    assert_eq!(findings(&bare), ["equal-windings"]);
    assert!(bare.cautions.contains(&Caution::InverterPins));
    assert!(
        Pin::ALL
            .iter()
            .all(|pin| label(&bare, *pin) == Label::Nothing)
    );

    let unsaid = alike(covered);
    assert_eq!(findings(&unsaid), ["alike-but-not-bare"]);
    assert!(unsaid.next.contains(&Step::BareThePins));
}

#[test]
fn start_and_run_too_close_are_not_guessed_and_the_wiring_settles_them() {
    let mut story = Story::bare()
        .read(Pair::OneTwo, "14.2")
        .read(Pair::TwoThree, "14.4")
        .read(Pair::OneThree, "28.4");
    let now = story.now();
    assert_eq!(label(&now, Pin::Two), surely(Role::Common));
    assert_eq!(label(&now, Pin::One), Label::StartOrRun);
    assert!(findings(&now).contains(&"windings-whole-start-and-run-alike"));
    assert_eq!(now.next[0], Step::NoteWiring);

    story.choose("windings", "line-pin", "pin-3");
    story.choose("windings", "marked-start", "pin-1");
    let settled = story.now();
    assert_eq!(label(&settled, Pin::Three), surely(Role::Run));
    assert_eq!(label(&settled, Pin::One), surely(Role::Start));
}

#[test]
fn wiring_that_contradicts_the_ohms_is_told() {
    let mut story = Story::bare();
    story.choose("windings", "overload-pin", "pin-1");
    let now = story
        .read(Pair::OneTwo, "4.7")
        .read(Pair::TwoThree, "7.6")
        .read(Pair::OneThree, "12.0")
        .now();
    assert!(findings(&now).contains(&"wiring-disagrees"));
}

#[test]
fn near_zero_asks_for_the_leads_first() {
    let now = Story::bare().read(Pair::OneTwo, "0.4").now();
    assert!(findings(&now).contains(&"near-zero"));
    assert_eq!(now.next[0], Step::TouchProbes);
}

#[test]
fn nothing_reads_points_to_the_meter_before_the_machine() {
    let now = Story::bare()
        .read(Pair::OneTwo, "OL")
        .read(Pair::TwoThree, "OL")
        .read(Pair::OneThree, "OL")
        .now();
    assert_eq!(findings(&now), ["nothing-reads"]);
    assert_eq!(now.next[0], Step::TouchProbes);
    assert_eq!(link(&now, Link::Circuit), LinkState::Unknown);
}

#[test]
fn pairs_that_cannot_be_measured_are_no_evidence_and_are_not_asked_again() {
    let mut story = Story::bare();
    for pair in Pair::ALL {
        let given_up = Answer::NotDone(NotDone::CannotReach);
        story.answer("windings", item_of_pair(pair), given_up);
    }
    let now = story.now();
    assert_eq!(findings(&now), Vec::<&str>::new());
    assert_eq!(now.next, AFTERWARDS);
}

#[test]
fn a_trip_stops_everything_and_a_gas_nobody_can_read_counts_as_one_that_burns() {
    let mut story = Story::bare();
    story.choose("machine", "complaint", "trips-the-outlet");
    story.choose("refrigerant", "plate", "other-or-unreadable");
    let now = story.now();
    assert!(now.must_stop());
    assert_eq!(now.cautions[0], Caution::TrippedProtection);
    assert!(now.cautions.contains(&Caution::UnknownRefrigerant));
}

#[test]
fn what_was_seen_weighs_more_than_what_was_told() {
    let mut story = Story::bare();
    story.choose("machine", "complaint", "hums-then-clicks");
    story.choose("machine", "told-by", "seller");
    let told = link(&story.now(), Link::Start).basis();
    story.choose("machine", "told-by", "myself");
    let seen = link(&story.now(), Link::Start).basis();
    assert!(seen > told);
    assert_eq!(
        story.now().first_break().map(|(link, _)| link),
        Some(Link::Start)
    );
}

#[test]
fn a_reason_for_not_measuring_takes_no_reading_back() {
    let mut story = Story::bare().read(Pair::OneTwo, "4.7");
    story.answer(
        "windings",
        item_of_pair(Pair::OneTwo),
        Answer::NotDone(NotDone::CannotReach),
    );
    let known = story.now().windings.unwrap();
    assert!(known.inspection.reading(Pair::OneTwo).is_some());
    assert!(known.given_up.is_empty());
}

#[test]
fn of_what_was_said_and_what_was_read_of_the_leads_the_later_counts() {
    let leads = |story: &Story| story.now().windings.unwrap().inspection.leads;
    let mut story = Story::bare();
    story.choose("windings", "leads", "zeroed");
    assert_eq!(leads(&story), Leads::Zeroed);
    let mut story = story.leads("0.3");
    assert!(matches!(leads(&story), Leads::Measured(..)));
    story.choose("windings", "leads", "zeroed");
    assert_eq!(leads(&story), Leads::Zeroed);
}

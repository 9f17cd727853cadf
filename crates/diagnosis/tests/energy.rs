//! What a machine uses: which metering counts, and when it may be held against a limit.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

mod story;

use diagnosis::{CHANGE, Choice, ENERGY, Energy, EnergyFigure, EnergyNeed, RunBy, Stands};
use job::{
    Answer, ColdEvent, ColdEventKind, Content, Measured, Metered, Place, Reading, Spot,
    TemperatureLog, Text,
};
use measure::energy::{Class, Comparison};
use quantity::{Accuracy, Celsius, Observed, Seconds, Typed, WattHours, parse_reading};
use story::{Story, moment};

const HOUR: i64 = 60;

fn reading(typed: &str, measured: Measured) -> Reading {
    Reading {
        typed: Text::new(typed).unwrap(),
        measured,
        accuracy: Accuracy::new(1.0, 1.0).unwrap(),
    }
}

/// An upright freezer of 14 cubic feet, made in 2009: 441 kWh a year were allowed.
fn freezer() -> Story {
    let mut story = Story::begin("120-v-60-hz").with(ENERGY, "class", "class-8");
    figure(&mut story, EnergyFigure::FrozenVolume, "14 cu ft");
    figure(&mut story, EnergyFigure::YearMade, "2009");
    story
}

fn figure(story: &mut Story, figure: EnergyFigure, text: &str) {
    story.answer(
        ENERGY,
        figure.name(),
        Answer::Text(Text::new(text).unwrap()),
    );
}

fn metered(story: &mut Story, from: i64, hours: i64, kilowatt_hours: f64, ran: Option<f64>) {
    let observed = Observed::Value(WattHours::new(kilowatt_hours * 1000.0));
    let typed = Typed {
        observed,
        count: WattHours::new(1.0),
    };
    let energy = reading(&format!("{kilowatt_hours} kWh"), Measured::WattHours(typed));
    let ran = ran.map(|hours| Seconds::new(hours * 3600.0));
    let metered = Metered::new(moment(from), moment(from + hours * HOUR), energy, ran).unwrap();
    story.enter(Content::Metered(metered));
}

fn room(story: &mut Story, at: i64, typed: &str) {
    let measured = Measured::Celsius(parse_reading(typed, Celsius::new(200.0)).unwrap());
    let spot = Spot {
        place: Place::Room,
        at: moment(at),
        reading: reading(typed, measured),
    };
    story.enter(Content::Spot(spot));
}

fn event(story: &mut Story, at: i64, kind: ColdEventKind) {
    story.enter(Content::Event(ColdEvent {
        at: moment(at),
        kind,
    }));
}

fn comparison(story: &Story) -> Option<Comparison> {
    match Energy::of(&story.job)?.stands {
        Stands::Against(all) => {
            assert_eq!(all.len(), 1);
            assert_eq!(all[0].limit.kilowatt_hours, 441);
            Some(all[0].comparison)
        }
        _ => None,
    }
}

#[test]
fn nothing_metered_and_nothing_asked_is_nothing() {
    assert_eq!(Energy::of(&Story::bare().job), None);
}

#[test]
fn what_is_missing_is_named() {
    let story = Story::begin("120-v-60-hz").with(ENERGY, "class", "class-1");
    let energy = Energy::of(&story.job).unwrap();
    assert_eq!(energy.stands, Stands::Open);
    for need in [
        EnergyNeed::Metering,
        EnergyNeed::ColdCompartment,
        EnergyNeed::Figure(EnergyFigure::FreshVolume),
        EnergyNeed::Figure(EnergyFigure::YearMade),
    ] {
        assert!(energy.missing.contains(&need), "{need:?}");
    }
}

/// The limits of a machine with 10 cubic feet for fresh and 8 for frozen food.
fn limits(class: &str, year: &str, icemaker: Option<&str>) -> (Vec<u32>, bool) {
    let mut story = Story::begin("120-v-60-hz").with(ENERGY, "class", class);
    figure(&mut story, EnergyFigure::FreshVolume, "10 cu ft");
    figure(&mut story, EnergyFigure::FrozenVolume, "8 cu ft");
    figure(&mut story, EnergyFigure::YearMade, year);
    if let Some(icemaker) = icemaker {
        story.choose(ENERGY, "icemaker", icemaker);
    }
    metered(&mut story, 100 * HOUR, 24, 1.0, None);
    let energy = Energy::of(&story.job).unwrap();
    let asked = energy.missing.contains(&EnergyNeed::Icemaker);
    match energy.stands {
        Stands::Against(all) => (
            all.iter().map(|one| one.limit.kilowatt_hours).collect(),
            asked,
        ),
        _ => (Vec::new(), asked),
    }
}

#[test]
fn an_icemaker_is_asked_about_where_the_rule_has_a_class_with_one() {
    // Class 3 of 2014: 8.07·(10 + 1.76·8) + 233.7 = 428 kWh, and 84 more with an icemaker.
    assert_eq!(limits("class-3", "2016", None), (vec![], true));
    assert_eq!(
        limits("class-3", "2016", Some("has-not")),
        (vec![428], false)
    );
    assert_eq!(limits("class-3", "2016", Some("has")), (vec![512], false));
    // Before 2014 none counted: 9.80·(10 + 1.63·8) + 276.0 = 502 kWh.
    assert_eq!(limits("class-3", "2009", None), (vec![502], false));
    // No chest freezer has such a class.
    let chest = limits("class-10", "2016", None);
    assert!(!chest.1 && chest.0.len() == 1);
    let may = |class: &Class| class.may_have_icemaker();
    let chests = [
        Class::ChestFreezer,
        Class::ChestFreezerAutomatic,
        Class::CompactChestFreezer,
    ];
    assert!(!chests.iter().any(may));
}

#[test]
fn a_year_is_held_against_the_limit_of_its_make_where_the_room_allows() {
    let mut story = freezer();
    metered(&mut story, 100 * HOUR, 24, 1.0, None);
    assert_eq!(comparison(&story), Some(Comparison::RoomUnknown));
    let mut cool = freezer();
    metered(&mut cool, 100 * HOUR, 24, 1.0, None);
    room(&mut cool, 101 * HOUR, "18");
    assert_eq!(comparison(&cool), Some(Comparison::CoolRoom));
    let mut warm = freezer();
    metered(&mut warm, 100 * HOUR, 24, 1.0, None);
    room(&mut warm, 101 * HOUR, "90 F");
    assert_eq!(comparison(&warm), Some(Comparison::Within));
    let mut thirsty = freezer();
    metered(&mut thirsty, 100 * HOUR, 24, 1.6, None);
    room(&mut thirsty, 101 * HOUR, "18");
    assert_eq!(comparison(&thirsty), Some(Comparison::Above));
}

#[test]
fn what_was_metered_while_it_cooled_down_says_nothing_of_a_year() {
    let mut story = freezer();
    event(&mut story, 90 * HOUR, ColdEventKind::SwitchedOn);
    metered(&mut story, 100 * HOUR, 24, 2.0, None);
    let energy = Energy::of(&story.job).unwrap();
    assert_eq!(energy.stands, Stands::CoolingDown);
    assert_eq!(energy.cost, None);
    // A shorter one a day later counts instead.
    metered(&mut story, 130 * HOUR, 12, 0.5, None);
    let energy = Energy::of(&story.job).unwrap();
    let metering = energy.metering.unwrap();
    assert!(!metering.cooled_down);
    let day = metering.settled().unwrap().day.value().get();
    assert!((day - 1000.0).abs() < 1e-6);
}

#[test]
fn what_was_metered_before_a_repair_says_nothing_of_the_machine_as_it_is() {
    let mut story = freezer();
    metered(&mut story, 0, 24, 3.0, Some(23.0));
    story.later(200 * HOUR);
    story.choose(CHANGE, "start-device", "replaced");
    let changed = Energy::of(&story.job).unwrap();
    assert_eq!((changed.metering, changed.run), (None, None));
    metered(&mut story, 300 * HOUR, 24, 1.0, Some(8.0));
    let energy = Energy::of(&story.job).unwrap();
    let (by, share) = energy.run.unwrap();
    assert_eq!(by, RunBy::Meter);
    assert!((share.share.get() - 8.0 / 24.0).abs() < 1e-9);
}

#[test]
fn starts_and_stops_tell_more_than_a_meters_hours_and_logs_less() {
    let mut story = freezer();
    // A shell that goes from 40 to 60 °C and back, a third of the time up.
    let warmth = |minute: i64| {
        if minute % 30 < 10 {
            40.0 + 2.0 * (minute % 30) as f64
        } else {
            60.0 - (minute % 30 - 10) as f64
        }
    };
    let points = (0..600)
        .map(|minute| (moment(minute), Celsius::new(warmth(minute))))
        .collect();
    let log =
        TemperatureLog::new(Place::Shell, Text::new("shell.csv").unwrap(), 600, points).unwrap();
    story.enter(Content::Log(log));
    let (by, share) = Energy::of(&story.job).unwrap().run.unwrap();
    assert_eq!(by, RunBy::Log(Place::Shell));
    assert!((share.share.get() - 1.0 / 3.0).abs() < 0.01, "{share:?}");
    metered(&mut story, 100 * HOUR, 24, 1.0, Some(12.0));
    assert_eq!(Energy::of(&story.job).unwrap().run.unwrap().0, RunBy::Meter);
    for (minute, kind) in [
        (0, ColdEventKind::CompressorOn),
        (15, ColdEventKind::CompressorOff),
        (60, ColdEventKind::CompressorOn),
    ] {
        event(&mut story, 200 * HOUR + minute, kind);
    }
    let (by, share) = Energy::of(&story.job).unwrap().run.unwrap();
    assert_eq!(by, RunBy::Events);
    assert!((share.share.get() - 0.25).abs() < 1e-9);
}

#[test]
fn machines_of_other_rules_are_compared_with_nothing_and_cost_the_same() {
    let mut story = Story::begin("230-v-50-hz").with(ENERGY, "class", "other-rules");
    figure(&mut story, EnergyFigure::Price, "0,30");
    metered(&mut story, 0, 24, 1.0, None);
    let energy = Energy::of(&story.job).unwrap();
    assert_eq!(energy.stands, Stands::OtherRules);
    assert!(energy.missing.is_empty(), "{:?}", energy.missing);
    let (middle, spread) = energy.cost.unwrap();
    assert!((middle - 109.5).abs() < 1e-6 && spread > 0.0);
}

#[test]
fn a_machine_of_a_year_of_change_stands_against_both_limits() {
    let mut story = Story::begin("120-v-60-hz").with(ENERGY, "class", "class-8");
    figure(&mut story, EnergyFigure::FrozenVolume, "14 cu ft");
    figure(&mut story, EnergyFigure::YearMade, "2014");
    metered(&mut story, 0, 24, 1.0, None);
    let Stands::Against(all) = Energy::of(&story.job).unwrap().stands else {
        panic!("both limits are known");
    };
    let limits: Vec<u32> = all.iter().map(|one| one.limit.kilowatt_hours).collect();
    assert_eq!(limits, [441, 331]);
    assert_eq!(
        all.iter().map(|one| one.since()).collect::<Vec<u16>>(),
        [2001, 2014]
    );
}

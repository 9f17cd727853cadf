//! Worked cases, each with its source beside it in `tests/cases/windings.json`.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

use measure::MeterKind;
use measure::windings::{
    Explanation, Foreseen, Inspection, Label, Leads, Mains, Pair, PairReading, Pin, Role,
    StartGear, WindingPriors, Windings,
};
use quantity::{Ohms, parse_reading};
use serde_json::Value;

const CASES: &str = include_str!("../cases/windings.json");

/// Every key that a case may have: a misspelt expectation would otherwise hold by itself.
const KEYS: [&str; 14] = [
    "name",
    "source",
    "mains",
    "leads",
    "start gear",
    "meter",
    "typed",
    "wiring",
    "labels",
    "likeliest",
    "sum rule",
    "ohms",
    "forecast",
    "probabilities",
];

#[test]
fn every_worked_case_comes_out_as_its_source_has_it() {
    let cases: Value = serde_json::from_str(CASES).unwrap();
    let cases = cases.as_array().unwrap();
    assert!(cases.len() >= 30, "{} cases", cases.len());
    let wrong: Vec<String> = cases.iter().flat_map(check).collect();
    assert!(wrong.is_empty(), "{wrong:#?}");
}

/// What does not come out as the case has it.
fn check(case: &Value) -> Vec<String> {
    let name = text(&case["name"]);
    assert!(!text(&case["source"]).is_empty(), "{name} has no source");
    for key in case.as_object().unwrap().keys() {
        assert!(KEYS.contains(&key.as_str()), "{name}: {key}");
    }
    let windings = Windings::of(&inspection(case), &WindingPriors::default());
    let mut wrong = Vec::new();
    let mut hold = |holds: bool, found: String| {
        if !holds {
            wrong.push(format!("{name}: {found}"));
        }
    };
    if let Some(labels) = case["labels"].as_array() {
        let found = Pin::ALL.map(|pin| label(windings.pins[pin.index()].label()));
        let expected: Vec<&str> = labels.iter().map(text).collect();
        hold(
            found.iter().eq(&expected),
            format!("{found:?} {:?}", windings.pins),
        );
    }
    if let Some(likeliest) = case["likeliest"].as_array() {
        let found = windings.likeliest().unwrap();
        let expected = likeliest
            .iter()
            .any(|name| explanation(text(name)) == found.explanation);
        hold(expected, format!("{found:?}"));
    }
    if let Some(expected) = case["sum rule"].as_str() {
        let found = match windings.sum_rule {
            Some(Foreseen::Sum) => "sum",
            Some(Foreseen::Alike) => "alike",
            Some(Foreseen::Neither) => "neither",
            None => "can't tell",
        };
        hold(found == expected, found.to_owned());
    }
    for (name, range) in case["probabilities"].as_object().into_iter().flatten() {
        let found = windings.probability(explanation(name));
        hold(
            number(&range[0]) <= found && found <= number(&range[1]),
            format!("{name} {found}"),
        );
    }
    if case["ohms"].is_object() {
        let expected = &case["ohms"];
        let found = windings.resistances.as_ref().unwrap();
        for (name, value) in [
            ("run", &found.run),
            ("start", &found.start),
            ("leads", &found.leads),
        ] {
            hold(
                near(value.value(), &expected[name], expected),
                format!("{name} {value:?}"),
            );
        }
    }
    if case["forecast"].is_object() {
        check_forecast(&case["forecast"], &windings, &mut hold);
    }
    wrong
}

fn check_forecast(expected: &Value, windings: &Windings, hold: &mut impl FnMut(bool, String)) {
    let found = windings.forecast.as_ref().unwrap();
    hold(
        found.pair == pair(text(&expected["pair"])),
        format!("{:?}", found.pair),
    );
    hold(
        near(found.sum.value(), &expected["sum"], expected),
        format!("{:?}", found.sum),
    );
    hold(
        found.sum_common == pin(&expected["sum common"]),
        format!("{:?}", found.sum_common),
    );
    match (&found.difference, expected["difference"].is_number()) {
        (Some(difference), true) => {
            let fits = near(difference.value(), &expected["difference"], expected)
                && found.difference_common == pin(&expected["difference common"]);
            hold(
                fits,
                format!("{difference:?} {:?}", found.difference_common),
            );
        }
        (None, false) => {}
        (difference, _) => hold(false, format!("{difference:?}")),
    }
}

fn inspection(case: &Value) -> Inspection {
    let meter = match text(&case["meter"]) {
        "good" => MeterKind::Good.automatic(),
        "basic" => MeterKind::Basic.automatic(),
        other => panic!("{other} is no meter"),
    };
    let read = |typed: &str| parse_reading(typed, meter.top).unwrap();
    let mut inspection = Inspection::default();
    inspection.mains = match text(&case["mains"]) {
        "120 V" => Some(Mains::V120F60),
        "230 V" => Some(Mains::V230F50),
        other => panic!("{other} is no mains"),
    };
    inspection.leads = match text(&case["leads"]) {
        "unknown" => Leads::Unknown,
        "zeroed" => Leads::Zeroed,
        measured => Leads::Measured(read(measured), meter.accuracy),
    };
    inspection.start_gear = match text(&case["start gear"]) {
        "unknown" => StartGear::Unknown,
        "off" => StartGear::Off,
        "still on" => StartGear::StillOn,
        other => panic!("{other} says nothing of start gear"),
    };
    for (of, typed) in case["typed"].as_object().unwrap() {
        inspection.set(PairReading {
            pair: pair(of),
            typed: read(text(typed)),
            accuracy: meter.accuracy,
        });
    }
    let wiring = &case["wiring"];
    inspection.wiring.overload_on = noted(&wiring["overload"]);
    inspection.wiring.line_on = noted(&wiring["line"]);
    inspection.wiring.start_device_on = wiring["start device"].as_str().map(pair);
    inspection.wiring.marked =
        ["common", "start", "run"].map(|role| noted(&wiring["letters"][role]));
    inspection
}

fn text(value: &Value) -> &str {
    value.as_str().unwrap()
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

fn near(found: Ohms, expected: &Value, within: &Value) -> bool {
    (found.get() - number(expected)).abs() <= number(&within["within"])
}

fn noted(value: &Value) -> Option<Pin> {
    value.is_number().then(|| pin(value))
}

fn pin(value: &Value) -> Pin {
    let number = value.as_u64().unwrap();
    let found = Pin::ALL
        .into_iter()
        .find(|pin| pin.number() as u64 == number);
    found.unwrap()
}

fn pair(name: &str) -> Pair {
    match name {
        "1-2" => Pair::OneTwo,
        "1-3" => Pair::OneThree,
        "2-3" => Pair::TwoThree,
        other => panic!("{other} is no pair"),
    }
}

fn label(label: Label) -> &'static str {
    match label {
        Label::Nothing => "nothing",
        Label::StartOrRun => "start or run",
        Label::Is { role, surely } => match (role, surely) {
            (Role::Common, true) => "common, surely",
            (Role::Common, false) => "common",
            (Role::Start, true) => "start, surely",
            (Role::Start, false) => "start",
            (Role::Run, true) => "run, surely",
            (Role::Run, false) => "run",
        },
    }
}

fn explanation(name: &str) -> Explanation {
    match name {
        "sound" => Explanation::Sound,
        "leads not zeroed" => Explanation::LeadsNotZeroed,
        "protector open" => Explanation::ProtectorOpen,
        "common lead open" => Explanation::CommonLeadOpen,
        "start open" => Explanation::StartOpen,
        "run open" => Explanation::RunOpen,
        "shorted turns" => Explanation::ShortedTurns,
        "start device on" => Explanation::StartDeviceOn,
        "probe missed" => Explanation::ProbeMissed,
        "equal windings" => Explanation::EqualWindings,
        "single coil" => Explanation::SingleCoil,
        other => panic!("{other} is no explanation"),
    }
}

//! Invented logs in `tests/logs`, each with what has to be asked of it beside it, against pandas.
//!
//! Source: `tests/reference/logs.py`, where each file's form is stated by hand.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use std::fs;
use std::path::PathBuf;

use logfile::{
    Answer, Clock, DateOrder, DegreeUnit, ElapsedUnit, Half, LogError, Logged, Looked, Missing,
    Note, Question, SeriesNote, Skipped, look, read,
};
use quantity::Seconds;
use serde_json::Value;

const REFERENCE: &str = include_str!("../../../tests/reference/logs.json");

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../tests/logs")
}

/// Each file's name with what is said beside it.
fn files() -> Vec<(String, Value)> {
    let mut names: Vec<String> = fs::read_dir(folder())
        .unwrap()
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .filter_map(|name| name.strip_suffix(".json").map(str::to_owned))
        .collect();
    names.sort();
    let said = |name: &String| fs::read_to_string(folder().join(format!("{name}.json"))).unwrap();
    names
        .iter()
        .map(|name| (name.clone(), serde_json::from_str(&said(name)).unwrap()))
        .collect()
}

fn bytes(name: &str) -> Vec<u8> {
    fs::read(folder().join(name)).unwrap()
}

fn asked(looked: &Looked) -> Vec<String> {
    let name = |question: &Question| match question {
        Question::DateOrder { .. } => "date-order".to_owned(),
        Question::Clock { .. } => "clock".to_owned(),
        Question::Zone { .. } => "zone".to_owned(),
        Question::Start { .. } => "start".to_owned(),
        Question::ElapsedUnit { .. } => "elapsed".to_owned(),
        Question::Unit { column, .. } => format!("unit {column}"),
        Question::Columns { .. } => "columns".to_owned(),
        Question::DecimalMark { .. } => "decimal-mark".to_owned(),
    };
    looked.questions.iter().map(name).collect()
}

fn answers(said: &Value) -> Vec<Answer> {
    let said = &said["answers"];
    let text = |key: &str| said[key].as_str().unwrap_or_default().to_owned();
    let mut answers = Vec::new();
    match text("date-order").as_str() {
        "day-month-year" => answers.push(Answer::DateOrder(DateOrder::DayMonthYear)),
        "month-day-year" => answers.push(Answer::DateOrder(DateOrder::MonthDayYear)),
        _ => {}
    }
    match text("clock").as_str() {
        "from-morning" => answers.push(Answer::Clock(Clock::Twelve(Half::Morning))),
        "twenty-four" => answers.push(Answer::Clock(Clock::TwentyFour)),
        _ => {}
    }
    match text("elapsed").as_str() {
        "hours" => answers.push(Answer::ElapsedUnit(ElapsedUnit::Hours)),
        "minutes-seconds" => answers.push(Answer::ElapsedUnit(ElapsedUnit::MinutesSeconds)),
        _ => {}
    }
    if let Some(minutes) = said["zone"].as_i64() {
        answers.push(Answer::Zone(i16::try_from(minutes).unwrap()));
    }
    if let Some(start) = said["start"].as_f64() {
        answers.push(Answer::Start(Seconds::new(start)));
    }
    for (column, unit) in said["units"].as_object().into_iter().flatten() {
        let unit = match unit.as_str().unwrap() {
            "fahrenheit" => DegreeUnit::Fahrenheit,
            _ => DegreeUnit::Celsius,
        };
        let column = column.parse().unwrap();
        answers.push(Answer::Unit { column, unit });
    }
    if let Some(columns) = said["columns"].as_array() {
        let columns = columns.iter().map(|one| one.as_u64().unwrap() as usize);
        answers.push(Answer::Columns(columns.collect()));
    }
    answers
}

fn notes(logged: &Logged) -> Vec<String> {
    let of_rows = logged.notes.iter().map(|note| match note {
        Note::Skipped { why, rows, .. } => {
            let why = match why {
                Skipped::RepeatedHeading => "repeated-heading",
                Skipped::NoTime => "no-time",
                Skipped::FarFromOthers => "far-from-others",
            };
            format!("skipped {why} {rows}")
        }
        Note::NewestFirst => "newest-first".to_owned(),
        Note::OutOfOrder { rows } => format!("out-of-order {rows}"),
        Note::SameTime { rows } => format!("same-time {rows}"),
        Note::ClockBack { .. } => "clock-back".to_owned(),
        Note::ClockForward { .. } => "clock-forward".to_owned(),
        Note::Gap { .. } => "gap".to_owned(),
        Note::MoreGaps { gaps } => format!("more-gaps {gaps}"),
    });
    let of_series = logged.series.iter().flat_map(|series| {
        let column = series.column;
        series.notes.iter().map(move |note| match note {
            SeriesNote::NoReading { why, cells, .. } => {
                let why = match why {
                    Missing::SaysSo => "says-so",
                    Missing::NotANumber => "not-a-number",
                    Missing::BeyondAnyPlace => "beyond-any-place",
                };
                format!("missing {column} {why} {cells}")
            }
            SeriesNote::Spike { .. } => format!("spike {column}"),
            SeriesNote::FellOut { .. } => format!("fell-out {column}"),
            SeriesNote::PutBack { .. } => format!("put-back {column}"),
            SeriesNote::MoreJumps { .. } => format!("more-jumps {column}"),
        })
    });
    of_rows.chain(of_series).collect()
}

fn strings(value: &Value) -> Vec<String> {
    let list = value.as_array().into_iter().flatten();
    let mut strings: Vec<String> = list
        .filter_map(|one| Some(one.as_str()?.to_owned()))
        .collect();
    strings.sort();
    strings
}

fn sorted(mut strings: Vec<String>) -> Vec<String> {
    strings.sort();
    strings
}

#[test]
fn what_a_file_leaves_open_is_asked_and_nothing_else() {
    let readable = files()
        .into_iter()
        .filter(|(_, said)| said["refused"].is_null());
    for (name, said) in readable {
        let looked = look(&bytes(&name)).unwrap_or_else(|error| panic!("{name}: {error:?}"));
        assert_eq!(sorted(asked(&looked)), strings(&said["asked"]), "{name}");
    }
}

#[test]
fn every_file_says_what_pandas_reads_in_it() {
    let reference: Value = serde_json::from_str(REFERENCE).unwrap();
    let files = files();
    let cases = reference["cases"].as_array().unwrap();
    let readable = files
        .iter()
        .filter(|(_, said)| said["refused"].is_null())
        .count();
    assert_eq!(cases.len(), readable, "each file has its figures");
    for case in cases {
        let name = case["file"].as_str().unwrap();
        let said = &files.iter().find(|(file, _)| file == name).unwrap().1;
        let bytes = bytes(name);
        let looked = look(&bytes).unwrap();
        let layout = looked
            .settle(&answers(said))
            .unwrap_or_else(|open| panic!("{name}: {open:?}"));
        let logged = read(&bytes, &layout).unwrap();
        assert_eq!(sorted(notes(&logged)), strings(&said["notes"]), "{name}");
        let expected = case["series"].as_array().unwrap();
        assert_eq!(logged.series.len(), expected.len(), "{name}");
        for (series, expected) in logged.series.iter().zip(expected) {
            assert_eq!(
                series.column as u64,
                expected["column"].as_u64().unwrap(),
                "{name}"
            );
            let points = expected["points"].as_array().unwrap();
            assert_eq!(series.points.len(), points.len(), "{name}");
            for (point, expected) in series.points.iter().zip(points) {
                let [at, celsius] = [0, 1].map(|place| expected[place].as_f64().unwrap());
                let off = (point.at.get() - at).abs();
                // The reference keeps four decimals of a second and six of a degree.
                assert!(off < 1e-3, "{name}: {} instead of {at}", point.at.get());
                let off = (point.temperature.get() - celsius).abs();
                assert!(
                    off < 1e-6,
                    "{name}: {:?} instead of {celsius}",
                    point.temperature
                );
            }
        }
    }
}

#[test]
fn files_that_are_no_logs_are_refused_with_their_reason() {
    let refused = files()
        .into_iter()
        .filter(|(_, said)| said["refused"].is_string());
    let mut count = 0;
    for (name, said) in refused {
        let found = look(&bytes(&name)).err().map(|error| match error {
            LogError::Empty => "empty",
            LogError::Picture => "picture",
            LogError::Spreadsheet => "spreadsheet",
            LogError::NoRows => "no-rows",
            LogError::TooFewRows { .. } => "too-few-rows",
            LogError::NoTemperatures => "no-temperatures",
            LogError::NoTimes => "no-times",
            LogError::MoreCellsThanHeadings { .. } => "more-cells-than-headings",
            _ => "another reason",
        });
        assert_eq!(found, said["refused"].as_str(), "{name}");
        count += 1;
    }
    assert!(count >= 7);
}

#[test]
fn a_layout_is_settled_only_once_every_question_is_answered() {
    let looked = look(&bytes("en-us-one-evening.csv")).unwrap();
    assert_eq!(looked.settle(&[]).unwrap_err().len(), 3);
    let beside = [
        Answer::DateOrder(DateOrder::YearMonthDay),
        Answer::Zone(5000),
    ];
    assert_eq!(looked.settle(&beside).unwrap_err().len(), 3);
    let other = look(&bytes("en-us-two-probes.csv")).unwrap();
    let all = [Answer::Zone(0), Answer::Columns(vec![3])];
    let layout = other.settle(&all).unwrap();
    let foreign = read(&bytes("iso-utc.csv"), &layout);
    assert_eq!(foreign.err(), Some(LogError::OtherLayout));
}

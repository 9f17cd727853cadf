//! A job from lines that a person can read: `check/item: choice`, `check/item: choice, choice`
//! for ticked ones, `check/item = number` for readings, `check/item - why` for what was not done.
//! Without an item, a check that asks for one clue is meant.

use diagnosis::{ANSWER, Ask, Assessment, CHANGE, Change, Choice, Clue, Item, Model, assess};
use job::{
    Answer, Content, Entry, Id, Job, Measured, Moment, Name, NotDone, Origin, Question, Reading,
    Text, Unit,
};
use measure::MeterKind;
use quantity::{Amps, Celsius, Farads, Metres, Volts, WattHours, Watts, parse_reading};

/// The assessment of a job that was told in lines.
pub(crate) fn assessed(lines: &[&str]) -> Assessment {
    let job = job(lines);
    let now = moment(job.entries().len());
    assess(&Model::default(), &job, now)
}

/// A job that was told in lines, a minute apart.
pub(crate) fn job(lines: &[&str]) -> Job {
    let mut job = Job::new(Id::new("told").unwrap(), moment(0), Origin::Invented);
    for (place, line) in lines.iter().enumerate() {
        job.add(Entry {
            id: Id::new(&format!("entry-{place}")).unwrap(),
            at: moment(place),
            content: content(line),
        })
        .unwrap();
    }
    job
}

/// What a line tells.
pub(crate) fn content(line: &str) -> Content {
    let (question, answer) = parsed(line);
    Content::Answer { question, answer }
}

pub(crate) fn moment(minute: usize) -> Moment {
    Moment::new(1_795_600_000_000 + minute as i64 * 60_000, 60).unwrap()
}

fn parsed(line: &str) -> (Question, Answer) {
    let (asked, separator, given) = [": ", " = ", " - "]
        .iter()
        .find_map(|separator| {
            let (asked, given) = line.split_once(separator)?;
            Some((asked, *separator, given))
        })
        .unwrap_or_else(|| panic!("{line}: not understood"));
    let (check, item) = match asked.split_once('/') {
        Some(both) => both,
        None if asked == "history" => (asked, "known"),
        None => (asked, ANSWER),
    };
    let answer = match separator {
        " = " => Answer::Reading(reading(check, item, given)),
        " - " => Answer::NotDone(NotDone::NotSure),
        _ if matches!(item, "signs" | "known") => {
            let names = given.split(", ").filter(|name| *name != "none");
            Answer::Choices(names.map(|name| Name::new(name).unwrap()).collect())
        }
        _ => {
            check_answer(check, item, given);
            Answer::Choice(Name::new(given).unwrap())
        }
    };
    (Question::new(check, item).unwrap(), answer)
}

/// A misspelt answer would be no evidence, and a case could hold by itself.
fn check_answer(check: &str, item: &str, given: &str) {
    if check == CHANGE {
        let change = Change::from_name(item).unwrap_or_else(|| panic!("{item} is no change"));
        assert_eq!(change.how(), given, "{item}");
    }
    if item != ANSWER {
        return;
    }
    let clue = Clue::from_name(check).unwrap_or_else(|| panic!("{check} is no check"));
    let known = clue.answer(given).is_some() || given == diagnosis::THERE_IS_NONE;
    assert!(known, "{check}: {given} is no answer");
}

fn reading(check: &str, item: &str, typed: &str) -> Reading {
    let meter = MeterKind::Good.automatic();
    let unit = Item::from_name(item).and_then(Item::unit);
    let unit = unit
        .or_else(|| Ask::from_names(check, item)?.unit())
        .unwrap_or(Unit::Ohm);
    let measured = match unit {
        Unit::Ohm => Measured::Ohms(parse_reading(typed, meter.top).unwrap()),
        Unit::Volt => Measured::Volts(parse_reading(typed, Volts::new(600.0)).unwrap()),
        Unit::Celsius => Measured::Celsius(parse_reading(typed, Celsius::new(200.0)).unwrap()),
        Unit::Farad => Measured::Farads(parse_reading(typed, Farads::new(1.0)).unwrap()),
        Unit::Ampere => Measured::Amps(parse_reading(typed, Amps::new(100.0)).unwrap()),
        Unit::Watt => Measured::Watts(parse_reading(typed, Watts::new(4_000.0)).unwrap()),
        Unit::Metre => Measured::Metres(parse_reading(typed, Metres::new(100.0)).unwrap()),
        Unit::WattHour => Measured::WattHours(parse_reading(typed, WattHours::new(1e6)).unwrap()),
    };
    Reading {
        typed: Text::new(typed).unwrap(),
        measured,
        accuracy: meter.accuracy,
    }
}

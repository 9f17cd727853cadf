//! Sentences of the record that hold a figure or a moment.

use diagnosis::{ColdSign, Compartment, Course, EnergyAgainst, RunBy};
use job::Moment;
use measure::cool_down::{Reach, TemperatureBand, Verdict};
use measure::energy::{Comparison, Consumption, Era, RunShare};
use measure::windings::{Pair, Pin};
use quantity::{Celsius, Seconds, Uncertain, WattHours};

use crate::start_trials::lasting;
use crate::{Locale, odds, value};

const fn compartment(which: Compartment) -> &'static str {
    match which {
        Compartment::Freezer => "Freezer",
        Compartment::FreshFood => "Fresh-food part",
    }
}

/// What a course of temperatures has come to, in sentences: the same that its drawing shows.
#[must_use]
pub fn course(course: &Course, began: Moment, locale: &Locale) -> Vec<String> {
    let degrees = |value: Celsius| locale.temperature(value);
    let (Some(first), Some(last)) = (course.points.first(), course.points.last()) else {
        return Vec::new();
    };
    let mut lines = vec![format!(
        "{}: {} readings, from {} after {} to {} after {}. It is to be at {} or less within a day.",
        compartment(course.compartment),
        course.points.len(),
        degrees(first.1),
        after(began, first.0),
        degrees(last.1),
        after(began, last.0),
        degrees(course.goal().target),
    )];
    if let Some(reached) = course.reached {
        lines.push(format!(
            "It first showed that after {}.",
            after(began, reached)
        ));
    }
    lines.push(match course.foretold() {
        None => "Where it ends can't be told from these readings.".to_owned(),
        Some(forecast) => {
            let ends = format!(
                "It ends between {} (nine times in ten).",
                band(forecast.end, locale)
            );
            match course.reached {
                Some(_) => ends,
                None => format!(
                    "{} {ends}",
                    verdict(forecast.verdict, forecast.reach.median)
                ),
            }
        }
    });
    lines
}

fn band(band: TemperatureBand, locale: &Locale) -> String {
    format!(
        "{} and {}",
        locale.temperature(band.from),
        locale.temperature(band.to)
    )
}

fn verdict(verdict: Verdict, reach: Reach) -> String {
    match verdict {
        Verdict::WillReach { probability } => {
            let when = match reach {
                Reach::After(time) => format!(", after about {}", lasting(time)),
                Reach::Beyond => String::new(),
            };
            format!("It will get there{when}: {}.", odds(probability).phrase)
        }
        Verdict::WillNot { probability } => {
            format!(
                "It won't get there within a day: {}.",
                odds(probability).phrase
            )
        }
        Verdict::TooEarly { probability } => format!(
            "Too early to tell whether it gets there: {} that it does.",
            odds(probability).phrase
        ),
    }
}

/// How long after it was switched on.
#[must_use]
pub fn after(began: Moment, at: Moment) -> String {
    let milliseconds = at.unix_milliseconds() - began.unix_milliseconds();
    // Moments lie within the years 1970 to 9999: exact as a floating-point number.
    lasting(Seconds::new(milliseconds as f64 / 1_000.0))
}

/// Which share of the time it runs.
#[must_use]
pub fn run_share(by: RunBy, share: &RunShare, locale: &Locale) -> String {
    let by = match by {
        RunBy::Events => "by starts and stops heard or seen",
        RunBy::Meter => "by the meter's hours of load",
        RunBy::Log(_) => "by a logged temperature",
    };
    format!(
        "It runs {} of the time over {}, {by}.",
        locale.number(share.share.get() * 100.0, 0) + "\u{a0}%",
        lasting(share.span)
    )
}

fn kilowatt_hours(energy: &Uncertain<WattHours>, locale: &Locale) -> String {
    value::scaled(energy, 1e-3, "kWh", locale)
}

/// What a pin is, in a sentence.
#[must_use]
pub fn pin_is(pin: Pin, is: &str) -> String {
    format!("Pin {}: {is}.", pin.number())
}

/// Two pins, in front of what was read between them.
#[must_use]
pub fn pins(pair: Pair) -> String {
    let [one, other] = pair.pins().map(Pin::number);
    format!("Pins {one} and {other}")
}

/// How much the test leads add.
#[must_use]
pub fn leads(ohms: &str) -> String {
    format!("Leads and contacts: {ohms}, taken out of what is said of the windings.")
}

/// What the shapes on the line of rests are.
#[must_use]
pub fn shapes() -> Vec<String> {
    [
        "Each try lies at the rest before it: a disc started at once, a ring hummed first, a \
         cross hummed and clicked off, a dash was silent, a wedge tripped the outlet.",
        "The broad band is where sound machines lie; the bar is where this one lies, nine times \
         in ten.",
    ]
    .map(str::to_owned)
    .to_vec()
}

/// When it was switched on, and how warm the room was.
#[must_use]
pub fn switched_on(began: Moment, room: Option<Celsius>, locale: &Locale) -> String {
    let room = room.map_or_else(
        || "how warm the room was, nobody read".to_owned(),
        |room| format!("the room at {}", locale.temperature(room)),
    );
    format!("Switched on at {}, {room}.", locale.moment(began))
}

/// What a curve is called.
#[must_use]
pub fn course_of(which: Compartment) -> String {
    format!(
        "{}: its temperature since it was switched on",
        compartment(which)
    )
}

/// What the lines of a curve are.
#[must_use]
pub fn key_of_curve() -> Vec<String> {
    vec![
        "Solid: what was read. Dashed: the target. Grey: where it goes, nine times in ten. Dotted \
         lines with a number: what happened, below."
            .to_owned(),
    ]
}

/// What happened while it cooled down that says something.
#[must_use]
pub fn cold_sign(sign: ColdSign, locale: &Locale) -> String {
    match sign {
        ColdSign::Tripped => "It tripped once.".to_owned(),
        ColdSign::TripsAgainAndAgain { times } => format!("It tripped {times} times."),
        ColdSign::ShortRuns { runs } => {
            format!("The compressor ran only briefly, {runs} times, before it was cold.")
        }
        ColdSign::DefrostDoesNotEnd { since } => format!(
            "A defrost began at {} and nobody saw it end.",
            locale.moment(since)
        ),
        ColdSign::ControlMoved { at } => format!(
            "The control was set anew at {}: what came before says less.",
            locale.moment(at)
        ),
        ColdSign::Loaded => "Something warm was put in meanwhile.".to_owned(),
    }
}

/// What it uses in a day and in a year.
#[must_use]
pub fn day_and_year(consumption: &Consumption, locale: &Locale) -> String {
    format!(
        "It uses {} a day, {} a year (k = 2).",
        kilowatt_hours(&consumption.day, locale),
        kilowatt_hours(&consumption.year, locale)
    )
}

/// How a year stands against the greatest that was allowed.
#[must_use]
pub fn limit(against: &EnergyAgainst, locale: &Locale) -> String {
    let year = match against.limit.era {
        Era::Of1993 => 1993,
        Era::Of2001 => 2001,
        Era::Of2014 => 2014,
        Era::Of2029 => 2029,
    };
    let allowed = locale.number(f64::from(against.limit.kilowatt_hours), 0);
    let stands = match against.comparison {
        Comparison::Above => "above it",
        Comparison::Within => "within it",
        Comparison::CannotTell => "too close to it to tell",
        Comparison::CoolRoom => "not compared: the room was cooler than the limit assumes",
        Comparison::RoomUnknown => "not compared: how warm the room was, nobody read",
    };
    format!("Allowed for its kind by the US rules of {year}: {allowed}\u{a0}kWh a year; {stands}.")
}

/// What a year costs, in the price's own currency. For the owner alone.
#[must_use]
pub fn cost(cost: f64, off_by: f64, locale: &Locale) -> String {
    format!(
        "A year costs {} ±\u{a0}{}, in the currency of your price.",
        locale.number(cost, 0),
        locale.number(off_by, 0)
    )
}

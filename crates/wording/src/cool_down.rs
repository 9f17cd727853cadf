//! A cool-down in words: where each compartment stands and ends, what happened, and what has to be
//! asked.

use diagnosis::{ColdSign, Compartment, CoolDown, Course, Forecast, ScaleDoubt};
use measure::cool_down::{CoolDownError, Reach, Sign, Verdict};
use quantity::{Celsius, Seconds};

use crate::start_trials::lasting;
use crate::windings_finding::capital;
use crate::{Locale, Words, odds};

/// The heading over all of it.
pub const TITLE: &str = "Getting cold";

impl Words for Compartment {
    fn words(self) -> &'static str {
        match self {
            Self::Freezer => "freezer",
            Self::FreshFood => "fresh food",
        }
    }
}

/// All of it for the report.
pub(crate) fn report(found: &CoolDown, locale: &Locale) -> Vec<String> {
    let mut lines = vec![since(found, locale)];
    if let Some(room) = found.room {
        lines.push(format!("The room: {}.", locale.temperature(room)));
    }
    lines.extend(found.doubt.as_ref().map(|doubt| scale_doubt(doubt, locale)));
    for course in &found.courses {
        lines.push(stands(course, locale));
        lines.extend(foretold(course, locale));
    }
    if found.courses.is_empty() {
        lines.push("No thermometer was read inside yet.".to_owned());
    }
    lines.extend(found.signs.iter().map(|one| sign(one, locale)));
    lines
}

/// Since when it is on, and until when it was.
#[must_use]
pub fn since(found: &CoolDown, locale: &Locale) -> String {
    let began = locale.moment(found.began);
    match found.ended {
        Some(ended) => format!("On from {began} to {}.", locale.moment(ended)),
        None => format!("On since {began}."),
    }
}

/// Where a compartment stands: "Freezer: −12 °C at 25 Nov 2026, 13:05; it should get to −18 °C."
#[must_use]
pub fn stands(course: &Course, locale: &Locale) -> String {
    let what = capital(course.compartment.words());
    let target = locale.temperature(course.goal().target);
    let Some((at, shown)) = course.latest() else {
        return format!("{what}: not read yet; it should get to {target}.");
    };
    let now = format!(
        "{what}: {} at {}",
        locale.temperature(shown),
        locale.moment(at)
    );
    match course.reached {
        Some(reached) => format!(
            "{now}; it was at {target} by {}, after {}.",
            locale.moment(reached),
            course.reached_after().map(lasting).unwrap_or_default()
        ),
        None => format!("{now}; it should get to {target}."),
    }
}

/// What a course foretells, a sentence each; why nothing yet.
#[must_use]
pub fn foretold(course: &Course, locale: &Locale) -> Vec<String> {
    let what = capital(course.compartment.words());
    match &course.forecast {
        // The doubt is told by itself.
        None => Vec::new(),
        Some(Err(error)) => vec![format!("{what}: {}", too_little(*error))],
        Some(Ok(forecast)) => {
            let mut lines = vec![format!("{what}: {}", verdict(course, forecast, locale))];
            let seen = forecast.signs.iter();
            lines.extend(seen.map(|sign| format!("{what}: {}", course_sign(*sign))));
            lines
        }
    }
}

fn verdict(course: &Course, forecast: &Forecast, locale: &Locale) -> String {
    let target = locale.temperature(course.goal().target);
    let ends = format!("it goes towards {}", band(forecast, locale));
    match forecast.verdict {
        Verdict::WillReach { probability } => {
            let when = match (course.reached, forecast.reach.median) {
                (None, Reach::After(time)) => {
                    format!(", some {} after it was switched on", hours(time))
                }
                _ => String::new(),
            };
            let sure = odds(probability).phrase;
            format!("it gets to {target}{when} ({sure}); {ends}.")
        }
        Verdict::WillNot { probability } => {
            let sure = odds(probability).phrase;
            format!(
                "it won't get to {target} within a day ({sure}); {ends}. Make sure first that its \
                 control is at coldest and its door shut."
            )
        }
        Verdict::TooEarly { probability } => {
            let sure = odds(probability).phrase;
            format!("too early to say whether it gets to {target} ({sure} so far); {ends}.")
        }
    }
}

/// "−24 °C (nine in ten: −27 °C to −21 °C)".
fn band(forecast: &Forecast, locale: &Locale) -> String {
    let [from, median, to] = [forecast.end.from, forecast.end.median, forecast.end.to]
        .map(|one: Celsius| locale.temperature(one));
    format!("{median} (nine in ten: {from} to {to})")
}

/// What is foretold is told in half hours.
fn hours(time: Seconds) -> String {
    lasting(Seconds::new(libm::round(time.get() / 1_800.0) * 1_800.0))
}

/// Why nothing is foretold yet.
pub(crate) fn too_little(why: CoolDownError) -> String {
    match why {
        CoolDownError::TooFew { usable } => {
            let missing = 6_usize.saturating_sub(usable);
            let readings = if missing == 1 { "reading" } else { "readings" };
            format!(
                "too early to say: {missing} more {readings}, and half an hour from the first to the last."
            )
        }
        CoolDownError::TooShort { span } => format!(
            "too early to say: {} read so far, and it takes half an hour.",
            lasting(span)
        ),
        CoolDownError::NotInOrder => "the readings are not in the order of time.".to_owned(),
    }
}

/// What a course shows besides.
#[must_use]
pub const fn course_sign(sign: Sign) -> &'static str {
    match sign {
        Sign::PlateauTooWarm => "it has all but arrived, and that is too warm.",
        Sign::Slowing => "it is getting cold more slowly than it began.",
        Sign::WarmingAgain => {
            "it is warmer than it was: a defrost, an open door, or it is failing. Read again in \
             half an hour."
        }
    }
}

/// Something that happened and says something.
#[must_use]
pub fn sign(sign: &ColdSign, locale: &Locale) -> String {
    match sign {
        ColdSign::Tripped => "It tripped once.".to_owned(),
        ColdSign::TripsAgainAndAgain { times } => {
            format!("It tripped {times} times: switch it off, and find out why before it runs on.")
        }
        ColdSign::ShortRuns { runs } => format!(
            "{runs} runs of less than ten minutes, and it isn't cold: as when its overload \
             protector opens."
        ),
        ColdSign::DefrostDoesNotEnd { since } => format!(
            "A defrost has gone on since {}, and none should for more than an hour. Look whether \
             it still heats; if it does, unplug it.",
            locale.moment(*since)
        ),
        ColdSign::ControlMoved { at } => format!(
            "Its control was set anew at {}: what went before foretells little.",
            locale.moment(*at)
        ),
        ColdSign::Loaded => {
            "Something was put in: it takes longer than an empty cabinet.".to_owned()
        }
    }
}

/// Asks whether degrees are Fahrenheit. Numbers are told bare: their scale is the question.
#[must_use]
pub fn scale_doubt(doubt: &ScaleDoubt, locale: &Locale) -> String {
    let bare = |shown: Celsius| locale.number(shown.get(), 0);
    let seen = match doubt {
        ScaleDoubt::TooWarm { place, shown } => format!(
            "{} stands at {}",
            place.words().to_lowercase(),
            bare(*shown)
        ),
        ScaleDoubt::FarApart {
            fresh_food,
            freezer,
        } => format!(
            "fresh food stands at {} and the freezer at {}",
            bare(*fresh_food),
            bare(*freezer)
        ),
        ScaleDoubt::StandsNearZero { shown } => {
            format!(
                "the freezer stands at {} and was never seen warm",
                bare(*shown)
            )
        }
    };
    format!(
        "Are these degrees Fahrenheit? {}. Entered as Celsius, that can hardly be. Strike them and \
         enter them with °F, or read once more; until then nothing is foretold from them.",
        capital(&seen)
    )
}

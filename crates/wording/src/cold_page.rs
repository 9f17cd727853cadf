//! The words of the screen of a cool-down: what is entered, what it comes to, how sure that is.

use diagnosis::{Compartment, Course, Forecast};
use job::{ColdEventKind, Moment, Place};
use measure::cool_down::{Goal, Reach, TemperatureBand, Verdict};
use quantity::Seconds;

use crate::cool_down::{course_sign, too_little};
use crate::windings_finding::capital;
use crate::{Locale, odds};

/// The page's heading.
pub const TITLE: &str = "Does it get cold?";
/// What it is for, before it was switched on.
pub const WHY: &str = "Switch it on empty, door shut, with a thermometer inside. From half an hour \
                       of readings on, this page says where it is going, and by tomorrow it is proof.";
/// What has to be so before.
pub const MIND: &str = "Only through an outlet with ground-fault protection, and only once the \
                        ground check allows it. Stay near it for the first two hours.";
/// It is on, and by what was found since it may not be.
pub const UNPLUG: &str = "Unplug it, it may not be on:";
/// Begins it.
pub const SWITCHED_ON: &str = "Switched on now";
/// Begins it at an earlier time.
pub const SWITCHED_ON_BEFORE: &str = "It was switched on earlier";
/// What becomes of a course that was taken in before it is said when it was switched on.
pub const LOG_WAITS: &str = "What you took in counts from when it was switched on.";
/// Begins it with the course that was taken in.
#[must_use]
pub fn on_with_log(moment: &str) -> String {
    format!("Switched on as the log begins, {moment}")
}
/// Above the time since then.
pub const ON_FOR: &str = "On for";
/// Asks for the place.
pub const WHERE: &str = "Where does it lie?";
/// Enters it.
pub const ENTER: &str = "Enter";
/// The time at which it was switched on.
pub const SWITCHED_ON_AT: &str = "Switched on at";
/// What helps to type a time.
pub const TIME_HINT: &str = "As a clock shows it: 14:05 or 2:05 pm";
/// The day of a time that isn't within the last one.
pub const ON_DAY: &str = "On this day, if not within the last 24 hours";
/// Places that are measured less often.
pub const OTHER_PLACES: &str = "Other places";
/// The field of a temperature.
pub const READ: &str = "The thermometer shows";
/// Opens the field of another time.
pub const WHEN: &str = "Read earlier";
/// The time of a reading.
pub const READ_AT: &str = "Read at";
/// Events that are less frequent.
pub const OTHER_EVENTS: &str = "Other events, or an earlier time";
/// The time of an event.
pub const HAPPENED_AT: &str = "Happened at";
/// A time was typed, and what happened is to be tapped.
pub const THEN_TAP: &str = "Now tap what happened then.";
/// Above the list of all that was entered.
pub const ENTRIES: &str = "What was entered";
/// Takes an entry back.
pub const TAKE_BACK: &str = "Take back";
/// Leads to taking in a file.
pub const FROM_FILE: &str = "Take in a logger's file";
/// Above the pictures.
pub const COURSE: &str = "Course";
/// The key: a reading.
pub const READING: &str = "Read";
/// The key: the curve.
pub const FITTED: &str = "Likeliest course";
/// Above a doubt about the scale.
pub const DOUBT: &str = "Which scale is that?";
/// What happens most often, in front.
pub const FREQUENT: [ColdEventKind; 5] = [
    ColdEventKind::DoorOpened,
    ColdEventKind::CompressorOff,
    ColdEventKind::CompressorOn,
    ColdEventKind::DefrostBegan,
    ColdEventKind::DefrostEnded,
];
/// Above the events.
pub const HAPPENED: &str = "Something happened";
/// The key: the band.
pub const BAND: &str = "Where the course lies, nine times in ten";
/// The key: the target.
pub const TARGET: &str = "Target";
/// The key: an event.
pub const EVENT: &str = "Something happened: C compressor, D door or load, F defrost, M moved or set anew, \
                         S switched, T tripped";
/// What it can't show.
pub const LIMITS: &str = "Foretold from the shape of the curve alone, empty and with the door shut. On \
                          simulated cabinets such bands held what came in eight to nearly ten of ten \
                          courses, by kind of machine, where nine are meant. A day with a thermometer \
                          inside is what proves it.";
/// A temperature that no place of the kind has.
pub const UNUSUAL: &str = "Few such places are like that. Is it right, and the scale too?";
/// No temperature at all.
pub const IMPOSSIBLE: &str = "No thermometer for a cabinet shows that.";
/// No time of day.
pub const NOT_A_TIME: &str = "That isn't a time of day, like 14:05 or 2:05 pm.";
/// No day.
pub const NOT_A_DAY: &str = "That isn't a day, like 2026-11-25.";
/// A moment that hasn't come.
pub const AHEAD: &str = "That time is still to come.";

/// A place in a word or two, for a button.
#[must_use]
pub const fn place(place: Place) -> &'static str {
    match place {
        Place::Freezer => "Freezer",
        Place::FreshFood => "Fresh food",
        Place::Room => "Room",
        Place::Evaporator => "Coil inside",
        Place::Condenser => "Condenser",
        Place::SuctionLine => "Suction line",
        Place::DrierOutlet => "Drier outlet",
        Place::Shell => "Compressor",
    }
}

/// What a compartment is called.
#[must_use]
pub const fn heading(of: Compartment) -> &'static str {
    match of {
        Compartment::Freezer => "Freezer",
        Compartment::FreshFood => "Fresh-food part",
    }
}

/// So many more lie behind a line.
#[must_use]
pub fn more(rows: usize) -> String {
    format!("{rows} more")
}

/// Whether it gets there, in a sentence with its odds.
#[must_use]
pub fn verdict(course: &Course, locale: &Locale) -> String {
    let target = locale.temperature(course.goal().target);
    let said = match (course.reached, &course.forecast) {
        (Some(at), _) => format!("it reached {target} at {}.", locale.moment(at)),
        (None, None) => "nothing is foretold until the scale is clear.".to_owned(),
        (None, Some(Err(why))) => too_little(*why),
        (None, Some(Ok(forecast))) => odds_of(forecast, &target),
    };
    [heading(course.compartment), ": ", &said].concat()
}

/// What the verdict rests on as a probability, where something is foretold and not seen yet.
#[must_use]
pub fn probability(course: &Course) -> Option<f64> {
    if course.reached.is_some() {
        return None;
    }
    Some(match course.foretold()?.verdict {
        Verdict::WillReach { probability }
        | Verdict::WillNot { probability }
        | Verdict::TooEarly { probability } => probability,
    })
}

fn odds_of(forecast: &Forecast, target: &str) -> String {
    let (words, probability) = match forecast.verdict {
        Verdict::WillReach { probability } => ("it will reach", probability),
        Verdict::WillNot { probability } => ("it will not reach", probability),
        Verdict::TooEarly { probability } => ("too early to say. That it reaches", probability),
    };
    let told = odds(probability);
    format!(
        "{words} {target} within a day: {}, {}.",
        told.word, told.phrase
    )
}

/// What is foretold: where it ends, when it gets there, and what else its course shows.
#[must_use]
pub fn foretold(course: &Course, began: Moment, locale: &Locale) -> Vec<String> {
    let Some(forecast) = course.foretold() else {
        return Vec::new();
    };
    let mut said = vec![end(&forecast.end, locale)];
    if course.reached.is_none() {
        said.extend(reach(forecast, &course.goal(), began, locale));
    }
    let signs = forecast
        .signs
        .iter()
        .map(|sign| capital(course_sign(*sign)));
    said.extend(signs);
    said
}

/// Where it ends.
#[must_use]
pub fn end(end: &TemperatureBand, locale: &Locale) -> String {
    format!(
        "It ends at about {}; nine times in ten between {} and {}.",
        locale.temperature(end.median),
        locale.temperature(end.from),
        locale.temperature(end.to)
    )
}

fn reach(forecast: &Forecast, goal: &Goal, began: Moment, locale: &Locale) -> Option<String> {
    let target = locale.temperature(goal.target);
    let clock = |after: Seconds| began.after(after).map(|at| locale.clock(at));
    let Reach::After(middle) = forecast.reach.median else {
        return None;
    };
    let from = match forecast.reach.from {
        Reach::After(from) => clock(from)?,
        Reach::Beyond => clock(middle)?,
    };
    let about = clock(middle)?;
    Some(match forecast.reach.to {
        Reach::After(to) => format!(
            "{target} at about {about}, nine times in ten between {from} and {}.",
            clock(to)?
        ),
        Reach::Beyond => {
            format!("{target} at about {about}, not before {from}, and maybe not within a day.")
        }
    })
}

/// When the next reading would teach most. Half an hour is what a forecast takes; from then on
/// readings tell most where they lie apart by about a sixth of the time so far, ten minutes to two
/// hours (judgement).
#[must_use]
pub fn next_reading(
    course: Option<&Course>,
    on_for: Seconds,
    now: Moment,
    locale: &Locale,
) -> String {
    const FIRST: f64 = 300.0;
    let last = course.and_then(Course::latest).map(|(at, _)| at);
    let Some(last) = last else {
        return "A reading now tells where it starts.".to_owned();
    };
    let step = match course.and_then(Course::foretold) {
        None => FIRST,
        Some(_) => (on_for.get() / 6.0).clamp(600.0, 7_200.0),
    };
    match last.after(Seconds::new(step)) {
        Some(due) if due > now => format!(
            "The next reading teaches most at about {}.",
            locale.clock(due)
        ),
        _ => "A reading now would teach most.".to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use measure::cool_down::CoolDownError;

    #[test]
    fn too_little_says_how_much_is_missing() {
        let said = too_little(CoolDownError::TooFew { usable: 5 });
        assert!(said.contains("1 more reading,"), "{said}");
        let said = too_little(CoolDownError::TooFew { usable: 2 });
        assert!(said.contains("4 more readings,"), "{said}");
    }

    #[test]
    fn before_any_reading_the_first_is_asked_for() {
        let now = Moment::new(1_795_608_300_000, 60).unwrap();
        let said = next_reading(None, Seconds::new(0.0), now, &Locale::default());
        assert_eq!(said, "A reading now tells where it starts.");
    }
}

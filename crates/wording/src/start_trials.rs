//! Tries to start, and what they prove and don't.

use diagnosis::{Pause, Series, StartTrials};
use job::{Moment, SetUp, StartTrial, Stop, Tried};
use measure::start_trials::{Knowledge, Place, Threshold};
use quantity::Seconds;

use crate::page::EntryWords;
use crate::{Locale, Words, measured, odds};

/// The page's heading.
pub const TITLE: &str = "Start it after a rest";
/// What it is for.
pub const WHY: &str = "A compressor that starts rested and not soon after a stop is the commonest \
                       riddle. Times settle it: how long it rested, and what it did then.";
/// What stands in front of it.
pub const MIND: &str = "Cover on the pins, protector in the circuit, face away. Only through an \
                        outlet with ground-fault protection whose test button works. Unplug it \
                        before every touch, and between tries.";
/// Where it may not be powered.
pub const CLOSED: &str = "Nothing is tried yet:";
/// Above the set-ups.
pub const WITH: &str = "What is on the pins?";
/// It runs, and will be stopped.
pub const STOPPED_NOW: &str = "It stopped now";
/// It stopped a while ago.
pub const STOPPED_BEFORE: &str = "It stopped some minutes ago";
/// How many minutes.
pub const MINUTES_AGO: &str = "Minutes ago";
/// Enters that.
pub const ENTER: &str = "Enter";
/// It has to run before it can stop.
pub const LET_IT_RUN: &str = "Let it run a quarter of an hour or more, then unplug it and say so.";
/// Starts a try.
pub const PLUG_IN: &str = "I plug it in now";
/// What came of it.
pub const WHAT_HAPPENED: &str = "What did it do?";
/// What meters showed during the start, where there were any.
pub const METERS: &str = "What the meters showed";
/// The highest current.
pub const HIGHEST: &str = "Highest amperes";
/// The lowest voltage.
pub const LOWEST: &str = "Lowest volts beside its plug";
/// A number of amperes that only milliamperes can be.
pub const MILLIAMPS: &str = "More than a household outlet gives: were those milliamperes?";
/// A number that can't be read.
pub const NOT_A_READING: &str = "That isn't a number off a meter, like 8.4.";
/// A number of volts that no mains have.
pub const NOT_VOLTS: &str = "No mains fall or rise to that: look at the meter's range.";
/// A try that was not entered when it was made.
pub const EARLIER: &str = "Enter an earlier try";
/// How long it had rested then.
pub const RESTED_MINUTES: &str = "Minutes it had rested";
/// How long ago that was.
pub const TRIED_AGO: &str = "Minutes since the try";
/// It was not plugged in after all.
pub const NOT_AFTER_ALL: &str = "Not plugged in after all";
/// Above the clock.
pub const RESTED: &str = "At rest for";
/// Above the second clock.
pub const DEAD: &str = "Since the last try";
/// Nobody has said when it stopped.
pub const NO_STOP: &str = "Let it run a quarter of an hour if it runs, unplug it, and say when it \
                           stopped. If it doesn't run, say since when it hasn't.";
/// It turns.
pub const TURNS: &str = "It runs since";
/// It stopped longer ago than is counted.
pub const LONG_AGO: &str = "It stopped more than a week ago: it is cold, and every try is one from \
                            cold.";
/// It was tried with its shell as cold as the room.
pub const IS_COLD: &str = "The shell is as cold as the room";
/// A try was to be entered before it is known when it stopped.
pub const NEEDS_STOP: &str = "Not entered: say first when it stopped, or since when it hasn't run.";
/// A try was to be entered while it runs.
pub const STILL_TURNS: &str = "Not entered: by what was entered last it runs. Say when it stopped.";
/// A try was to be entered with a clock set back.
pub const CLOCK_SET_BACK: &str = "Not entered: this phone's clock was set back since.";
/// What was typed for minutes.
pub const NOT_MINUTES: &str = "That isn't a number of minutes, like 12 or 2.5.";
/// What was typed as a rest.
pub const NO_REST: &str = "A rest lies between nothing and a week.";
/// Why no kit is offered.
pub const NO_KIT: &str = "No start kit here: the gas burns and none was entered that is declared for it, or the \
                      plate doesn't say which gas it is.";
/// The band of ordinary rests.
pub const ORDINARY: &str = "Sound machines";
/// The interval of a set-up.
pub const INTERVAL: &str = "Where the truth lies, nine times in ten";
/// Keeps the screen on.
pub const STAY_AWAKE: &str = "Keep the screen on";
/// Leads to the clock from a check that asks for tries.
pub const TIME_IT: &str = "Time it with the clock";
/// The list of tries.
pub const TRIES: &str = "Tries so far";
/// Lists every try, not only the latest.
#[must_use]
pub fn show_all(count: usize) -> String {
    format!("Show all {count} tries")
}

/// Takes a try back.
pub const TAKE_BACK: &str = "Take back";
/// It was entered later than it happened.
pub const ENTERED_LATER: &str = "entered later";
/// What none of it proves.
pub const LIMITS: &str = "This is about starting alone. It doesn't show that the machine gets \
                          cold, nor how it starts on a weaker outlet or in a hotter room.";
/// A failure while warm.
pub const HOT_IS_NOT_COLD: &str = "A failure while it is warm is none from cold.";

impl Words for SetUp {
    fn words(self) -> &'static str {
        match self {
            Self::Original => "Parts as found",
            Self::Substitute => "Known-good start device",
            Self::Kit => "Start kit with capacitor",
        }
    }

    fn hint(self) -> Option<&'static str> {
        match self {
            Self::Original => None,
            Self::Substitute => Some("Of the same kind, declared for the gas"),
            Self::Kit => Some("Never where gas burns, unless declared for it"),
        }
    }
}

impl Words for Tried {
    fn words(self) -> &'static str {
        match self {
            Self::Started => "Started",
            Self::HummedThenStarted => "Hummed, then started",
            Self::HummedAndTripped => "Hummed, then clicked off",
            Self::Silent => "Silent",
            Self::OutletTripped => "The outlet tripped",
        }
    }
}

/// A time as long as people count it: "45 s", "4 min 30 s", "25 min", "2 h 10 min".
///
/// ```
/// use quantity::Seconds;
/// let said = wording::start_trials::lasting(Seconds::new(270.0));
/// assert_eq!(said, "4\u{a0}min 30\u{a0}s");
/// ```
#[must_use]
pub fn lasting(time: Seconds) -> String {
    // A rest in a job lies between nothing and a week.
    let seconds = libm::round(time.get().clamp(0.0, 1e7)) as u64;
    let (minutes, hours) = (seconds / 60, seconds / 3_600);
    match (hours, minutes % 60, seconds % 60) {
        (0, 0, seconds) => format!("{seconds}\u{a0}s"),
        (0, minutes @ ..10, seconds @ 1..) => format!("{minutes}\u{a0}min {seconds}\u{a0}s"),
        (0, ..) | (1, ..30, _) => format!("{minutes}\u{a0}min"),
        (hours, 0, _) => format!("{hours}\u{a0}h"),
        (hours, minutes, _) => format!("{hours}\u{a0}h {minutes}\u{a0}min"),
    }
}

/// The same rounded to two digits, for what is estimated.
fn about(time: Seconds) -> String {
    let seconds = time.get();
    let step = match seconds {
        short if short < 120.0 => 5.0,
        middling if middling < 600.0 => 30.0,
        long if long < 5_400.0 => 60.0,
        _ => 600.0,
    };
    lasting(Seconds::new(libm::round(seconds / step) * step))
}

fn place(place: Place) -> String {
    match place {
        Place::AtOnce => "no rest".to_owned(),
        Place::After(rest) => about(rest),
        Place::Beyond => "over 4\u{a0}h".to_owned(),
    }
}

/// What a set-up's tries say of the rest that it needs.
#[must_use]
pub fn needs(threshold: &Threshold) -> String {
    match threshold.knowledge {
        Knowledge::Nothing => "No try says yet after which rest it starts.".to_owned(),
        Knowledge::AtMost => format!(
            "Has started each time: it needs at most about {} of rest.",
            place(threshold.to)
        ),
        Knowledge::AtLeast => format!(
            "Has failed each time: it needs at least about {} of rest, or doesn't start warm.",
            place(threshold.from)
        ),
        Knowledge::Both => format!(
            "Starts as often as not after about {} of rest; nine times in ten the truth lies \
             between {} and {}.",
            place(threshold.median),
            place(threshold.from),
            place(threshold.to)
        ),
    }
}

/// Whether that is ordinary.
#[must_use]
pub fn is_ordinary(series: &Series) -> String {
    let ordinary = about(series.bands.ordinary_to);
    let long = about(series.bands.abnormal_from);
    let zones = series.zones;
    let judged = match () {
        () if series.threshold.knowledge == Knowledge::Nothing => return String::new(),
        () if zones.ordinary >= SURE => "That is ordinary.".to_owned(),
        () if zones.abnormal >= SURE => "That is longer than a sound machine needs.".to_owned(),
        () => format!("That it needs too long: {}.", odds(zones.abnormal).phrase),
    };
    format!(
        "{judged} With such start gear sound machines start within {ordinary}; over {long} is too \
         long."
    )
}

/// From here on a band is said without odds.
const SURE: f64 = 0.85;

/// What a set-up gains over the parts as found.
#[must_use]
pub fn gains(series: &Series) -> Option<String> {
    let gain = series.gain.filter(|_| series.set_up != SetUp::Original)?;
    let whether = odds(gain.chance_sooner).phrase;
    let with = match series.set_up {
        SetUp::Kit => "with the kit",
        _ => "with the other start device",
    };
    Some(match gain.knowledge {
        Knowledge::Nothing => return None,
        _ if gain.chance_sooner < 0.5 => {
            format!("That it starts sooner {with} than as found: {whether}.")
        }
        _ => format!(
            "That it starts sooner {with} than as found: {whether}. As found it needs about {} \
             times the rest ({} to {}).",
            factor(gain.median.get()),
            factor(gain.from.get()),
            factor(gain.to.get())
        ),
    })
}

fn factor(factor: f64) -> String {
    if factor < 2.95 {
        format!("{factor:.1}")
    } else {
        format!("{factor:.0}")
    }
}

/// Which rest to try next.
#[must_use]
pub fn next(rest: Seconds) -> String {
    format!(
        "Try it next after {} of rest: that teaches most.",
        lasting(rest)
    )
}

/// How long until then.
#[must_use]
pub fn in_time(left: &str) -> String {
    format!("In {left}.")
}

/// It has rested as long as the next try asks.
#[must_use]
pub fn long_enough(rest: Seconds) -> String {
    format!(
        "Rested longer than the {} that would teach most. Try it.",
        lasting(rest)
    )
}

/// Two tries so near each other that they may be one, entered twice.
#[must_use]
pub fn close_together(trials: &StartTrials) -> Option<&'static str> {
    let tries = trials.series.iter().flat_map(|series| &series.tries);
    let mut times: Vec<i64> = tries.map(|(_, one)| one.at.unix_milliseconds()).collect();
    times.sort_unstable();
    let close = times.windows(2).any(|pair| pair[1] - pair[0] < 20_000);
    close.then_some(
        "Two tries lie within seconds of each other. If it was one, entered on two pages, take \
         one back.",
    )
}

/// Why it has to wait.
#[must_use]
pub fn pause(pause: Pause, locale: &Locale) -> String {
    match pause {
        Pause::ThreeInARow { until } => format!(
            "Three tries in a row failed: winding and start device are hot. Not before {}.",
            locale.clock(until)
        ),
        Pause::SixAnHour { until } => format!(
            "Six tries within the hour are enough. Not before {}.",
            locale.clock(until)
        ),
    }
}

/// The clock was set back.
#[must_use]
pub fn set_back(latest: Moment, locale: &Locale) -> String {
    format!(
        "This phone's clock was set back: what was entered last happened at {}. How long it has \
         rested can't be told. Enter anew when it stopped, or take back what is ahead.",
        locale.moment(latest)
    )
}

/// One try in a line: "after 5 min, Parts as found: Started".
#[must_use]
pub fn tried(trial: &StartTrial, locale: &Locale) -> String {
    let mut said = format!(
        "After {}{}: {}",
        lasting(trial.rest.seconds()),
        if trial.is_cold { ", from cold" } else { "" },
        trial.outcome.words().to_lowercase()
    );
    for (reading, of) in [
        (&trial.highest, "at most"),
        (&trial.settled, "then"),
        (&trial.lowest, "down to"),
    ] {
        if let Some(reading) = reading {
            said.push_str(&format!(", {of} {}", measured(reading.measured, locale)));
        }
    }
    said
}

pub(crate) fn entry(trial: &StartTrial, entered: Moment, locale: &Locale) -> EntryWords {
    let mut says = tried(trial, locale);
    if is_later(trial.at, entered) {
        says.push_str(&format!(
            ", at {}, {ENTERED_LATER}",
            locale.moment(trial.at)
        ));
    }
    if let Some(note) = &trial.note {
        says.push_str(&format!(". {}", note.as_str()));
    }
    EntryWords {
        about: format!("Try to start: {}", trial.set_up.words().to_lowercase()),
        says,
    }
}

pub(crate) fn stop(stop: &Stop, entered: Moment, locale: &Locale) -> EntryWords {
    let mut says = format!("at {}", locale.moment(stop.at));
    if let Some(ran) = stop.ran {
        says.push_str(&format!(", after {} of running", lasting(ran)));
    }
    if is_later(stop.at, entered) {
        says.push_str(&format!(", {ENTERED_LATER}"));
    }
    EntryWords {
        about: "The compressor stopped".to_owned(),
        says,
    }
}

/// More than two minutes between what happened and its being entered.
#[must_use]
pub fn is_later(happened: Moment, entered: Moment) -> bool {
    entered.unix_milliseconds() - happened.unix_milliseconds() > 120_000
}

/// All of it for the report.
pub(crate) fn report(trials: &StartTrials, locale: &Locale) -> Vec<String> {
    let mut lines = Vec::new();
    for series in &trials.series {
        lines.push(format!(
            "{}. {}",
            series.set_up.words(),
            needs(&series.threshold)
        ));
        lines.extend(Some(is_ordinary(series)).filter(|said| !said.is_empty()));
        lines.extend(gains(series));
        let tries = series.tries.iter().map(|(_, trial)| tried(trial, locale));
        lines.push(format!("{}.", tries.collect::<Vec<_>>().join("; ")));
    }
    if !trials.series.is_empty() {
        lines.push(HOT_IS_NOT_COLD.to_owned());
        lines.push(LIMITS.to_owned());
    }
    lines
}

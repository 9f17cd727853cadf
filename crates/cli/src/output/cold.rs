//! A cool-down and what is proved of a machine, in what `assess --json` prints.

use diagnosis::{Choice, ColdSign, Compartment, CoolDown as Known, Course as KnownCourse};
use diagnosis::{HeldBack, Proof as Shown, ProofItem, ProofState, ScaleDoubt};
use measure::cool_down::{Reach, Sign, Verdict};
use quantity::Celsius;
use serde::Serialize;
use wording::Locale;

/// How it gets cold since it was switched on.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
pub(crate) struct CoolDown {
    /// When it was switched on: RFC 3339.
    began: String,
    /// When it was switched off again; null where it wasn't.
    ended: Option<String>,
    /// The room, °C; null where nobody read it.
    room: Option<f64>,
    /// Each compartment of which there are readings.
    courses: Vec<Course>,
    /// tripped, trips-again-and-again, short-runs, defrost-does-not-end, control-moved or loaded.
    signs: Vec<Named>,
    /// Whether these may be degrees Fahrenheit: too-warm, far-apart or stands-near-zero; null
    /// where nothing says so.
    doubt: Option<Named>,
}

/// One compartment.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct Course {
    /// freezer or fresh-food.
    compartment: &'static str,
    /// What it is to reach within a day, °C.
    target: f64,
    /// How many readings.
    readings: usize,
    /// The last one, °C.
    latest: Option<f64>,
    /// So many seconds after it was switched on it first showed its target; null where it hasn't.
    reached: Option<f64>,
    /// What that foretells; null where it is too little, or the scale is in doubt.
    forecast: Option<Forecast>,
}

/// What a course comes to.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct Forecast {
    /// Where it ends, °C: 5th, 50th and 95th percentile.
    end: [f64; 3],
    /// So many seconds after it was switched on it is at its target: the same percentiles, null
    /// where that is not within a day.
    reach: [Option<f64>; 3],
    /// will-reach, will-not or too-early.
    verdict: &'static str,
    /// The probability that it is at its target after a day.
    #[cfg_attr(test, schemars(range(min = 0.0, max = 1.0)))]
    probability: f64,
    /// plateau-too-warm, slowing or warming-again.
    signs: Vec<&'static str>,
}

/// A name, and the same in words.
#[derive(Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct Named {
    /// Its name.
    name: &'static str,
    /// In words.
    words: String,
}

/// What is proved.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
pub(crate) struct Proof {
    /// all, cold-defrost-not-proven, not-yet, failed or held-back.
    proven: &'static str,
    /// gas-may-be-out, must-stop or not-to-be-run; null where it is run.
    held_back: Option<&'static str>,
    /// How long the rest takes at least, in seconds.
    takes: f64,
    /// Each point; none where it is held back.
    items: Vec<Item>,
}

/// One point.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct Item {
    /// Its name.
    point: &'static str,
    /// done, not-yet, failed or not-needed.
    state: &'static str,
    /// How long what is missing takes at least, in seconds; null unless the state is not-yet.
    takes: Option<f64>,
    /// In words.
    words: String,
}

impl CoolDown {
    pub(super) fn of(known: &Known, locale: &Locale) -> Self {
        let sign = |one: &ColdSign| Named {
            name: sign_name(one),
            words: wording::cool_down::sign(one, locale),
        };
        let doubt = |one: &ScaleDoubt| Named {
            name: doubt_name(one),
            words: wording::cool_down::scale_doubt(one, locale),
        };
        Self {
            began: jobfile::write_timestamp(known.began),
            ended: known.ended.map(jobfile::write_timestamp),
            room: known.room.map(Celsius::get),
            courses: known.courses.iter().map(Course::of).collect(),
            signs: known.signs.iter().map(sign).collect(),
            doubt: known.doubt.as_ref().map(doubt),
        }
    }
}

impl Course {
    fn of(course: &KnownCourse) -> Self {
        Self {
            compartment: match course.compartment {
                Compartment::Freezer => "freezer",
                Compartment::FreshFood => "fresh-food",
            },
            target: course.goal().target.get(),
            readings: course.points.len(),
            latest: course.latest().map(|(_, shown)| shown.get()),
            reached: course.reached_after().map(quantity::Seconds::get),
            forecast: course.foretold().map(Forecast::of),
        }
    }
}

impl Forecast {
    fn of(known: &diagnosis::Forecast) -> Self {
        let (verdict, probability) = match known.verdict {
            Verdict::WillReach { probability } => ("will-reach", probability),
            Verdict::WillNot { probability } => ("will-not", 1.0 - probability),
            Verdict::TooEarly { probability } => ("too-early", probability),
        };
        let [from, median, to] = [known.end.from, known.end.median, known.end.to];
        let reach = [known.reach.from, known.reach.median, known.reach.to];
        Self {
            end: [from, median, to].map(Celsius::get),
            reach: reach.map(|one| match one {
                Reach::After(time) => Some(time.get()),
                Reach::Beyond => None,
            }),
            verdict,
            probability: probability.clamp(0.0, 1.0),
            signs: known
                .signs
                .iter()
                .map(|one| course_sign_name(*one))
                .collect(),
        }
    }
}

impl Proof {
    pub(super) fn of(shown: &Shown) -> Self {
        Self {
            proven: shown.proven().name(),
            held_back: shown.held_back.map(|why| match why {
                HeldBack::GasMayBeOut => "gas-may-be-out",
                HeldBack::MustStop => "must-stop",
                HeldBack::NotToBeRun => "not-to-be-run",
            }),
            takes: shown.takes().get(),
            items: shown.items.iter().map(Item::of).collect(),
        }
    }
}

impl Item {
    fn of(item: &ProofItem) -> Self {
        let (state, takes) = match item.state {
            ProofState::Done => ("done", None),
            ProofState::NotYet { takes, .. } => ("not-yet", Some(takes.get())),
            ProofState::Failed(_) => ("failed", None),
            ProofState::NotNeeded(_) => ("not-needed", None),
        };
        Self {
            point: item.point.name(),
            state,
            takes,
            words: wording::proof::state(&item.state),
        }
    }
}

const fn sign_name(sign: &ColdSign) -> &'static str {
    match sign {
        ColdSign::Tripped => "tripped",
        ColdSign::TripsAgainAndAgain { .. } => "trips-again-and-again",
        ColdSign::ShortRuns { .. } => "short-runs",
        ColdSign::DefrostDoesNotEnd { .. } => "defrost-does-not-end",
        ColdSign::ControlMoved { .. } => "control-moved",
        ColdSign::Loaded => "loaded",
    }
}

const fn doubt_name(doubt: &ScaleDoubt) -> &'static str {
    match doubt {
        ScaleDoubt::TooWarm { .. } => "too-warm",
        ScaleDoubt::FarApart { .. } => "far-apart",
        ScaleDoubt::StandsNearZero { .. } => "stands-near-zero",
    }
}

const fn course_sign_name(sign: Sign) -> &'static str {
    match sign {
        Sign::PlateauTooWarm => "plateau-too-warm",
        Sign::Slowing => "slowing",
        Sign::WarmingAgain => "warming-again",
    }
}

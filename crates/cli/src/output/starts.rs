//! Tries to start, in what `assess --json` prints.

use diagnosis::Series;
use job::SetUp;
use measure::start_trials::{Knowledge, Place};
use quantity::Seconds;
use serde::Serialize;

/// What the tries with one set-up say.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
pub(crate) struct Starts {
    /// original, substitute or kit.
    set_up: &'static str,
    /// How many tries.
    tries: usize,
    /// Which ends of the rest the tries bound: nothing, at-most, at-least or both.
    bounds: &'static str,
    /// The rest in seconds after which it starts as often as not; null under 15 s or over 4 h.
    rest: Option<f64>,
    /// It lies above this with a probability of 95 %; null under 15 s.
    from: Option<f64>,
    /// It lies below this with a probability of 95 %; null over 4 h.
    to: Option<f64>,
    /// The probability that the rest is an ordinary one for such a machine.
    ordinary: f64,
    /// The probability that it is longer than a sound machine needs.
    too_long: f64,
    /// How many times the rest of this set-up the parts as found need: 5th, 50th and 95th
    /// percentile; null unless both were tried.
    gain: Option<[f64; 3]>,
}

impl Starts {
    pub(crate) fn of(series: &Series) -> Self {
        let threshold = series.threshold;
        let gain = series.gain.filter(|_| series.set_up != SetUp::Original);
        Self {
            set_up: name(series.set_up),
            tries: series.tries.len(),
            bounds: match threshold.knowledge {
                Knowledge::Nothing => "nothing",
                Knowledge::AtMost => "at-most",
                Knowledge::AtLeast => "at-least",
                Knowledge::Both => "both",
            },
            rest: seconds(threshold.median),
            from: seconds(threshold.from),
            to: seconds(threshold.to),
            ordinary: series.zones.ordinary,
            too_long: series.zones.abnormal,
            gain: gain.map(|gain| [gain.from, gain.median, gain.to].map(quantity::Ratio::get)),
        }
    }
}

const fn name(set_up: SetUp) -> &'static str {
    match set_up {
        SetUp::Original => "original",
        SetUp::Substitute => "substitute",
        SetUp::Kit => "kit",
    }
}

fn seconds(place: Place) -> Option<f64> {
    match place {
        Place::After(rest) => Some(Seconds::get(rest)),
        Place::AtOnce | Place::Beyond => None,
    }
}

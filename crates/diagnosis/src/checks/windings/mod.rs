//! Ohms between the compressor's three pins: what was entered, what it means, what comes next.

mod choices;
mod entered;
mod meaning;
mod steps;

use job::{Answer, Job, Moment};
use measure::windings::{
    Explanation, Foreseen, Inspection, Label, Leads, Pair, PairReading, Pin, Role, StartGear,
    Windings,
};
use quantity::{Observed, Ohms};

pub use choices::{GearChoice, LeadsChoice, PairChoice, PinChoice, PinShape, item_of_pair};

use super::machine::Machine;
use crate::Model;
use crate::choice::answered;

/// The name of the check in a job.
const CHECK: &str = "windings";

/// What was entered about the windings, and what it means.
#[derive(Debug, Clone, PartialEq)]
pub struct WindingsKnown {
    /// What was entered.
    pub inspection: Inspection,
    /// What it means.
    pub windings: Windings,
    /// How the pins lie.
    pub shape: Option<PinShape>,
    /// Pairs that can't be measured, as the person says.
    pub given_up: Vec<Pair>,
    /// Minutes since a pair was last read.
    minutes_since_reading: Option<i64>,
    /// Whether an answer about the pins' surroundings was given at all.
    gear_asked: bool,
}

/// From here on an explanation is told as a finding: two of three.
const TOLD: f64 = 2.0 / 3.0;
/// Below this a pair is near zero and the leads decide (a good winding can be as low as 2 Ω:
/// common practice, no source).
const NEAR_ZERO: Ohms = Ohms::new(1.0);
impl WindingsKnown {
    /// The items of this check that are choices of a pin: overload lead, mains wire, and the
    /// letters beside the pins by part.
    pub const OVERLOAD_PIN: (&'static str, &'static str) = (CHECK, "overload-pin");
    /// The pin that the other mains wire went to.
    pub const LINE_PIN: (&'static str, &'static str) = (CHECK, "line-pin");
    /// The pair that the start device sat on.
    pub const START_DEVICE_PAIR: (&'static str, &'static str) = (CHECK, "start-device-pair");
    /// What letters or words beside the pins say, in the order of [`Role::ALL`].
    pub const MARKED: [(&'static str, &'static str); 3] = [
        (CHECK, "marked-common"),
        (CHECK, "marked-start"),
        (CHECK, "marked-run"),
    ];
    /// The probes touched together, as a reading.
    pub const LEADS_READING: (&'static str, &'static str) = (CHECK, "leads-reading");

    pub(crate) fn of(model: &Model, job: &Job, machine: &Machine, now: Moment) -> Self {
        Self::since(model, job, machine, now, None)
    }

    /// The same where something was known before by the same model: what was read then is not
    /// weighed once more.
    pub(crate) fn since(
        model: &Model,
        job: &Job,
        machine: &Machine,
        now: Moment,
        before: Option<&Self>,
    ) -> Self {
        let inspection = entered::inspection_of(job, machine);
        let before = before.filter(|before| before.inspection == inspection);
        let given_up = Pair::ALL
            .into_iter()
            .filter(|pair| {
                matches!(
                    job.answer(CHECK, item_of_pair(*pair)),
                    Some(Answer::NotDone(_))
                )
            })
            .collect();
        let latest = Pair::ALL
            .into_iter()
            .filter_map(|pair| job.counting(CHECK, item_of_pair(pair)))
            .map(|(entry, _)| entry.at.unix_milliseconds())
            .max();
        Self {
            windings: before.map_or_else(
                || Windings::of(&inspection, &model.windings),
                |before| before.windings.clone(),
            ),
            inspection,
            shape: answered(job),
            given_up,
            minutes_since_reading: latest.map(|then| (now.unix_milliseconds() - then) / 60_000),
            gear_asked: answered::<GearChoice>(job).is_some(),
        }
    }

    /// What is written beside a pin.
    #[must_use]
    pub fn label(&self, pin: Pin) -> Label {
        if self.numbers() < 2 {
            // One number joins two pins; the wiring alone is not shown as if it were measured.
            return Label::Nothing;
        }
        self.windings.pins[pin.index()].label()
    }

    /// The pin that plays a part, where it is named.
    #[must_use]
    pub fn pin_of(&self, wanted: Role) -> Option<Pin> {
        let plays =
            |pin: &Pin| matches!(self.label(*pin), Label::Is { role, .. } if role == wanted);
        Pin::ALL.into_iter().find(plays)
    }

    pub(crate) fn anything(&self) -> bool {
        !self.inspection.is_empty()
            || !self.inspection.wiring.is_empty()
            || self.shape.is_some()
            || self.gear_asked
            || !self.given_up.is_empty()
    }

    /// How many pairs were read.
    pub(super) fn read(&self) -> usize {
        self.inspection.readings().count()
    }

    /// How many pairs read a number.
    pub(super) fn numbers(&self) -> usize {
        self.inspection.numbers().len()
    }

    pub(super) fn all_given_up(&self) -> bool {
        self.given_up.len() == Pair::ALL.len()
    }

    /// The likeliest explanation where it is no sound pair of windings and likely enough.
    /// A protector and a common lead look alike: together they are one finding.
    pub(super) fn fault(&self) -> Option<(Explanation, f64)> {
        if self.read() < 3 || self.numbers() == 0 {
            return None;
        }
        let likeliest = self.windings.likeliest()?;
        let of = |explanation| self.windings.probability(explanation);
        let probability = match likeliest.explanation {
            Explanation::Sound | Explanation::LeadsNotZeroed => return None,
            Explanation::ProtectorOpen | Explanation::CommonLeadOpen => {
                of(Explanation::ProtectorOpen) + of(Explanation::CommonLeadOpen)
            }
            _ => likeliest.probability,
        };
        Some((likeliest.explanation, probability))
    }

    pub(super) fn probability_whole(&self) -> f64 {
        self.windings.probability(Explanation::Sound)
            + self.windings.probability(Explanation::LeadsNotZeroed)
    }

    pub(super) fn is_whole(&self) -> bool {
        self.read() == 3 && self.probability_whole() >= TOLD
    }

    /// Whether three equal windings may be told: only with nothing left on the pins.
    pub(super) fn is_equal(&self) -> bool {
        self.inspection.start_gear == StartGear::Off
            && self
                .fault()
                .is_some_and(|(which, p)| which == Explanation::EqualWindings && p >= TOLD)
    }

    pub(super) fn is_alike(&self) -> bool {
        self.is_whole() && self.pin_of(Role::Common).is_some() && self.pin_of(Role::Start).is_none()
    }

    pub(super) fn sum_fails(&self) -> bool {
        self.windings.sum_rule == Some(Foreseen::Neither)
    }

    /// Near zero the leads are of the order of the winding: they come first.
    pub(super) fn leads_first(&self) -> bool {
        let near = |reading: &PairReading| match reading.typed.observed {
            Observed::Value(value) => value < NEAR_ZERO,
            Observed::OverRange { .. } => false,
        };
        let leads_known = matches!(self.inspection.leads, Leads::Zeroed | Leads::Measured(..));
        !leads_known && self.inspection.readings().any(near)
    }
}

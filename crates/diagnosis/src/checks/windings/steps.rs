//! What to do next about the windings, in a safe order.

use measure::windings::{Explanation, Pair, StartGear};
use quantity::Observed;

use super::WindingsKnown;
use crate::Step;

/// How long a protector inside may need before it is worth measuring again (common practice:
/// twenty minutes to hours).
const COOLING_MINUTES: i64 = 60;

impl WindingsKnown {
    pub(crate) fn steps(&self) -> Vec<Step> {
        if self.all_given_up() {
            return Vec::new();
        }
        let mut steps = Vec::new();
        match self.inspection.start_gear {
            StartGear::Unknown => steps.push(Step::BareThePins),
            StartGear::StillOn => steps.push(Step::TakeStartGearOff),
            StartGear::Off => {}
        }
        if self.leads_first() {
            steps.push(Step::TouchProbes);
        }
        let open = Pair::ALL.into_iter().filter(|pair| {
            self.inspection.reading(*pair).is_none() && !self.given_up.contains(pair)
        });
        steps.extend(open.map(Step::Measure));
        if self.read() == 3 {
            steps.extend(self.steps_after_three());
        }
        steps
    }

    fn steps_after_three(&self) -> Option<Step> {
        if self.numbers() == 0 {
            return Some(Step::TouchProbes);
        }
        match self.fault() {
            Some((explanation, _)) => self.step_for(explanation),
            None if self.sum_fails() => Some(Step::Repeat(self.pair_to_repeat())),
            None if self.is_alike() && self.inspection.wiring.is_empty() => Some(Step::NoteWiring),
            None => None,
        }
    }

    fn step_for(&self, explanation: Explanation) -> Option<Step> {
        match explanation {
            Explanation::StartDeviceOn => Some(Step::TakeStartGearOff),
            Explanation::ProtectorOpen | Explanation::CommonLeadOpen => {
                let left = COOLING_MINUTES - self.minutes_since_reading.unwrap_or(0).max(0);
                let minutes_left = u16::try_from(left).unwrap_or(0);
                Some(Step::CoolAndRepeat { minutes_left })
            }
            Explanation::ProbeMissed
            | Explanation::StartOpen
            | Explanation::RunOpen
            | Explanation::ShortedTurns => Some(Step::Repeat(self.pair_to_repeat())),
            Explanation::EqualWindings if self.inspection.start_gear != StartGear::Off => {
                Some(Step::TakeStartGearOff)
            }
            Explanation::EqualWindings
            | Explanation::SingleCoil
            | Explanation::Sound
            | Explanation::LeadsNotZeroed => None,
        }
    }

    /// The pair whose repeat would tell most: one over range among two that read, else the
    /// largest number, which a bad contact can only have raised.
    pub(super) fn pair_to_repeat(&self) -> Pair {
        let over = self
            .inspection
            .readings()
            .find(|reading| matches!(reading.typed.observed, Observed::OverRange { .. }));
        let largest = self
            .inspection
            .numbers()
            .into_iter()
            .max_by(|one, other| one.value.total_cmp(&other.value))
            .map(|number| number.pair);
        over.map(|reading| reading.pair)
            .or(largest)
            .unwrap_or(Pair::OneTwo)
    }
}

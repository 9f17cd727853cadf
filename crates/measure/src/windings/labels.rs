//! What can be written beside each pin, and how surely.

use super::{Assignment, Pin, Role};

/// What is believed about one pin. The three add up to the probability that the motor has a
/// run and a start winding at all.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct PinBelief {
    /// Probability that both windings meet here.
    pub common: f64,
    /// Probability that this is the start winding's far end.
    pub start: f64,
    /// Probability that this is the run winding's far end.
    pub run: f64,
}

/// What is written beside a pin.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Label {
    /// Not enough is known.
    Nothing,
    /// One of the two far ends; which, can't be told yet.
    StartOrRun,
    /// This part, and whether it is sure.
    Is {
        /// The part.
        role: Role,
        /// At least [`PinBelief::SURE`].
        surely: bool,
    },
}

impl PinBelief {
    /// From here on a pin is "surely" something: 99 of 100.
    pub const SURE: f64 = 0.99;
    /// From here on a pin is named at all: 9 of 10.
    pub const NAMED: f64 = 0.9;

    /// The probability of one part.
    #[must_use]
    pub const fn of(&self, role: Role) -> f64 {
        match role {
            Role::Common => self.common,
            Role::Start => self.start,
            Role::Run => self.run,
        }
    }

    /// What can be written beside the pin.
    #[must_use]
    pub fn label(&self) -> Label {
        let named = Role::ALL
            .into_iter()
            .find(|role| self.of(*role) >= Self::NAMED);
        match named {
            Some(role) => Label::Is {
                role,
                surely: self.of(role) >= Self::SURE,
            },
            None if self.start + self.run >= Self::NAMED => Label::StartOrRun,
            None => Label::Nothing,
        }
    }

    /// Sums the probabilities of whole assignments, in the order of [`Assignment::ALL`].
    pub(super) fn from_assignments(totals: &[f64; 6]) -> [Self; 3] {
        let mut pins = [Self::default(); 3];
        for (assignment, total) in Assignment::ALL.into_iter().zip(totals) {
            for pin in Pin::ALL {
                let belief = &mut pins[pin.index()];
                match assignment.role(pin) {
                    Role::Common => belief.common += total,
                    Role::Start => belief.start += total,
                    Role::Run => belief.run += total,
                }
            }
        }
        pins
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn label(common: f64, start: f64, run: f64) -> Label {
        PinBelief { common, start, run }.label()
    }

    #[test]
    fn a_part_is_named_from_nine_of_ten_and_surely_from_ninety_nine_of_a_hundred() {
        let common = |surely| Label::Is {
            role: Role::Common,
            surely,
        };
        assert_eq!(label(0.89, 0.05, 0.05), Label::Nothing);
        assert_eq!(label(0.90, 0.05, 0.05), common(false));
        assert_eq!(label(0.99, 0.01, 0.0), common(true));
    }

    #[test]
    fn what_is_surely_not_common_but_undecided_is_start_or_run() {
        assert_eq!(label(0.0, 0.55, 0.45), Label::StartOrRun);
        assert_eq!(label(0.2, 0.40, 0.40), Label::Nothing);
    }

    #[test]
    fn each_assignment_gives_its_weight_to_three_pins() {
        // All weight on the assignment of common, start, run to pins 1, 2, 3.
        let [one, two, three] = PinBelief::from_assignments(&[1.0, 0.0, 0.0, 0.0, 0.0, 0.0]);
        assert!((one.common - 1.0).abs() < 1e-12);
        assert!((two.start - 1.0).abs() < 1e-12);
        assert!((three.run - 1.0).abs() < 1e-12);
    }
}

//! Every explanation held against what was read, under all ways of giving parts to pins.

use crate::ranked;

use super::priors::WindingPriors;
use super::readings::Inspection;
use super::scene::{Scene, log_sum};
use super::{Assignment, Explanation, PinBelief, Scored};

/// Everything weighed: explanations in the order of [`Explanation::ALL`], and the pins.
pub(super) struct Weighed {
    pub(super) scored: Vec<Scored>,
    pub(super) pins: [PinBelief; 3],
    pub(super) best: Assignment,
}

impl Weighed {
    /// Weighs all explanations with all ways of giving parts to pins.
    pub(super) fn of(inspection: &Inspection, priors: &WindingPriors) -> Self {
        let wiring = log_wiring_factors(inspection, priors);
        let scene = Scene::of(inspection, priors);
        // Logarithms of weight times likelihood: for each explanation, by assignment.
        let mut parts = [[0.0; 6]; Explanation::ALL.len()];
        let mut scored = Vec::with_capacity(Explanation::ALL.len());
        for (explanation, parts) in Explanation::ALL.into_iter().zip(&mut parts) {
            let log_weight = libm::log(priors.weight(explanation, inspection));
            let log_densities = scene.log_densities(explanation);
            for (place, part) in parts.iter_mut().enumerate() {
                *part = log_densities[place] + wiring[place] - libm::log(6.0);
            }
            let log_likelihood = log_sum(parts);
            scored.push(Scored {
                explanation,
                log_likelihood,
                // Its logarithm for now, until all are known.
                probability: log_weight + log_likelihood,
            });
            *parts = parts.map(|part| part + log_weight);
        }
        let logs: Vec<f64> = scored.iter().map(|scored| scored.probability).collect();
        let whole = log_sum(&logs);
        for entry in &mut scored {
            entry.probability = libm::exp(entry.probability - whole);
        }
        let mut totals = [0.0; 6];
        for (explanation, parts) in Explanation::ALL.into_iter().zip(parts) {
            if explanation.has_two_windings() {
                for (total, part) in totals.iter_mut().zip(parts) {
                    *total += libm::exp(part - whole);
                }
            }
        }
        Self {
            scored,
            pins: PinBelief::from_assignments(&totals),
            best: likeliest(&totals),
        }
    }

    /// The likeliest first; ties stay in their order.
    pub(super) fn ranked(self) -> Vec<Scored> {
        ranked(self.scored, |scored| scored.probability)
    }
}

fn likeliest(totals: &[f64; 6]) -> Assignment {
    let mut best = (Assignment::ALL[0], totals[0]);
    for (assignment, &total) in Assignment::ALL.into_iter().zip(totals) {
        if total > best.1 {
            best = (assignment, total);
        }
    }
    best.0
}

/// How well the wiring fits each assignment, in logarithms; the mean of the factors is 1. Notes
/// that are off together fit every assignment alike, which bounds how far a turned picture can
/// mislead.
fn log_wiring_factors(inspection: &Inspection, priors: &WindingPriors) -> [f64; 6] {
    let factors = Assignment::ALL.map(|assignment| {
        let (agree, differ) = inspection.wiring.agreement(assignment);
        priors.wiring_factor(agree, differ)
    });
    let sum: f64 = factors.iter().sum();
    let astray = priors.noted_astray;
    factors.map(|factor| libm::log((1.0 - astray) * 6.0 * factor / sum + astray))
}

#[cfg(test)]
mod tests {
    use super::super::{Pair, Pin, Role};
    use super::*;

    fn factor(inspection: &Inspection, wanted: impl Fn(&Assignment) -> bool) -> f64 {
        let logs = log_wiring_factors(inspection, &WindingPriors::default());
        let all = Assignment::ALL.into_iter().zip(logs);
        let fitting: Vec<f64> = all
            .filter(|(one, _)| wanted(one))
            .map(|(_, log)| libm::exp(log))
            .collect();
        fitting.iter().sum::<f64>() / 6.0
    }

    #[test]
    fn nothing_noted_leaves_every_assignment_as_it_was() {
        for log in log_wiring_factors(&Inspection::default(), &WindingPriors::default()) {
            assert!(log.abs() < 1e-12);
        }
    }

    #[test]
    fn the_mains_wire_points_to_run_and_the_start_device_away_from_common() {
        let mut inspection = Inspection::default();
        inspection.wiring.line_on = Some(Pin::Two);
        assert!(factor(&inspection, |one| one.pin(Role::Run) == Pin::Two) > 0.95);
        inspection.wiring.start_device_on = Some(Pair::OneTwo);
        assert!(factor(&inspection, |one| one.pin(Role::Common) == Pin::Three) > 0.95);
    }

    #[test]
    fn however_many_notes_agree_all_may_be_off_together() {
        let mut inspection = Inspection::default();
        inspection.wiring.overload_on = Some(Pin::One);
        inspection.wiring.start_device_on = Some(Pair::TwoThree);
        inspection.wiring.line_on = Some(Pin::Two);
        inspection.wiring.marked = [Some(Pin::One), Some(Pin::Three), Some(Pin::Two)];
        let noted =
            |one: &Assignment| one.pin(Role::Common) == Pin::One && one.pin(Role::Run) == Pin::Two;
        let others = factor(&inspection, |one| !noted(one));
        let astray = WindingPriors::default().noted_astray;
        assert!(others > 0.8 * astray, "{others}");
    }

    #[test]
    fn letters_beside_the_pins_are_one_note_not_three() {
        let mut inspection = Inspection::default();
        inspection.wiring.marked = [Some(Pin::One), Some(Pin::Two), Some(Pin::Three)];
        assert_eq!(inspection.wiring.agreement(Assignment::ALL[0]), (1, 0));
        assert_eq!(inspection.wiring.agreement(Assignment::ALL[1]), (0, 1));
    }
}

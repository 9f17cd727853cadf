//! How likely everything else that was entered is without one task's readings, worked out from a
//! single pass over all of it. Must never know what the readings are worth.
//!
//! A clue is read from its parents alone. With `L` the likelihood of what was read of it given
//! their joint state, all other readings are more likely than everything together by the mean of
//! `1/L` over what is believed of the parents now (retraction, as in Cowell and Dawid, "Fast
//! retraction of evidence in a probabilistic expert system", 1992; from memory; derived here by
//! Bayes' rule). No row of a clue holds a zero, so that `L` is never small by rounding.

use belief::Posterior;

use super::assembly::digits;
use super::beliefs::MISTAKEN;
use super::clue::Clue;
use super::compiled::Compiled;
use super::entered::{Entered, Weight};

/// For each entry the logarithms of the probability of all others, build by build.
pub(super) struct Retracted<'e> {
    each: Vec<Without<'e>>,
}

struct Without<'e> {
    one: &'e Entered,
    /// One for each build that was seen; nothing where a pass of its own has to say it.
    logs: Option<Vec<f64>>,
}

impl<'e> Retracted<'e> {
    /// Before any build was seen.
    pub(super) fn new(entered: &'e [Entered]) -> Self {
        let each = entered.iter().enumerate().map(|(place, one)| {
            let others = entered.iter().enumerate();
            let others = others.filter(|(other, _)| *other != place);
            let says_alone = is_said_alone(one, &others.map(|(_, one)| one).collect::<Vec<_>>());
            Without {
                one,
                logs: says_alone.then(Vec::new),
            }
        });
        Self {
            each: each.collect(),
        }
    }

    /// Takes in what is believed of one build; `ln` is the logarithm of its share.
    pub(super) fn see(&mut self, compiled: &Compiled, posterior: &Posterior<'_>, ln: f64) {
        for without in &mut self.each {
            let Some(logs) = &mut without.logs else {
                continue;
            };
            match more_likely(compiled, posterior, without.one) {
                Some(more) => logs.push(ln + more),
                None => without.logs = None,
            }
        }
    }

    /// What it comes to for the entry at a place, where all of so many builds were seen.
    pub(super) fn logs(&self, place: usize, builds: usize) -> Option<&[f64]> {
        let logs = self.each.get(place)?.logs.as_deref()?;
        (logs.len() == builds).then_some(logs)
    }
}

/// Whether an entry says one thing only, of which no other says anything. That the motor ran is
/// counted once, whoever says it.
fn is_said_alone(one: &Entered, others: &[&Entered]) -> bool {
    let others = || others.iter().flat_map(|other| &other.weights);
    let of_clue = |clue: Clue| others().any(|weight| says_of(weight, clue));
    let ran = || others().any(|weight| matches!(weight, Weight::Ran));
    match one.weights.as_slice() {
        [Weight::Clue(clue, _)] => !of_clue(*clue),
        [Weight::Clue(clue, _), Weight::Ran] => !of_clue(*clue) && ran(),
        [Weight::Fault(..)] => true,
        _ => false,
    }
}

fn says_of(weight: &Weight, clue: Clue) -> bool {
    matches!(weight, Weight::Clue(other, _) if *other == clue)
}

/// The logarithm of how many times likelier the others are without it; nothing where that isn't
/// told so.
fn more_likely(compiled: &Compiled, posterior: &Posterior<'_>, one: &Entered) -> Option<f64> {
    if compiled.is_changed() {
        return None;
    }
    match one.weights.first()? {
        Weight::Clue(clue, ln_weights) => {
            clue_retracted(compiled, posterior, *clue, ln_weights, one.period)
        }
        Weight::Fault(fault, times) => {
            let there = match compiled.fault_at(*fault, one.period) {
                Some((variable, state)) => *posterior.marginal(variable).get(state)?,
                None => 0.0,
            };
            (*times > 0.0).then(|| libm::log(1.0 - there + there / times))
        }
        _ => None,
    }
}

fn clue_retracted(
    compiled: &Compiled,
    posterior: &Posterior<'_>,
    clue: Clue,
    ln_weights: &[f64],
    period: usize,
) -> Option<f64> {
    let Some(variable) = compiled.at(period).1.variable(clue) else {
        return Some(-libm::log(MISTAKEN));
    };
    let network = compiled.tree.network();
    let mut family = network.parents(variable).to_vec();
    let cards: Vec<usize> = family
        .iter()
        .map(|parent| network.states(*parent).len())
        .collect();
    // Together with the clue, so that the smallest table that holds both is taken.
    family.push(variable);
    let joint = posterior.joint(&family).ok()?;
    // Densities of numbers can be as small as they like: only their ratios are left to round.
    let top = ln_weights.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let weights: Vec<f64> = ln_weights.iter().map(|ln| libm::exp(ln - top)).collect();
    let rows = joint.values().chunks_exact(weights.len()).enumerate();
    let mut times = 0.0;
    for (place, believed) in rows {
        let believed: f64 = believed.iter().sum();
        if believed <= 0.0 {
            continue;
        }
        let row = network.row(variable, &digits(place, &cards))?;
        let likely: f64 = row
            .iter()
            .zip(&weights)
            .map(|(chance, weight)| chance * weight)
            .sum();
        times += believed / likely;
    }
    let more = libm::log(times) - top;
    more.is_finite().then_some(more)
}

#[cfg(test)]
mod tests {
    use super::super::beliefs::{Beliefs, log_sum};
    use super::super::build::Build;
    use super::super::networks::{self, Assumptions};
    use super::*;
    use crate::Choice;

    /// Every third clue, read the one way or the other; one of them is a part that isn't there.
    fn entered(first: usize) -> Vec<Entered> {
        let clues = Clue::ALL.iter().enumerate();
        let read = clues.filter(|(place, _)| place % 3 == first);
        let mut all: Vec<Entered> = read
            .map(|(place, clue)| {
                let answers = clue.answers().len();
                // Mostly a plain answer, sometimes the densities of a number.
                let ln = |answer: usize| match place % 4 {
                    0 => -900.0 - answer as f64,
                    _ if answer == place % answers => 0.0,
                    _ => f64::NEG_INFINITY,
                };
                let weights = (0..answers).map(ln).collect();
                Entered::new(clue.task(), vec![Weight::Clue(*clue, weights)])
            })
            .collect();
        let none = Weight::Fault(super::super::Fault::DamperStuck, 0.1);
        all.push(Entered::new(Clue::AirOutlet.task(), vec![none]));
        all
    }

    #[test]
    fn one_pass_says_what_a_pass_without_each_says() {
        let assumptions = Assumptions::default();
        let networks = assumptions.networks().unwrap();
        let mut desk = networks::desk(&networks);
        for (first, kind) in [(0, None), (1, Some(crate::Kind::FridgeFreezer)), (2, None)] {
            let odds = Build::odds(kind);
            let entered = entered(first);
            let mut retracted = Retracted::new(&entered);
            let mut builds = 0;
            let mut show = |compiled: &Compiled, posterior: &Posterior<'_>, ln: f64| {
                builds += 1;
                retracted.see(compiled, posterior, ln);
            };
            Beliefs::glance_with(&networks, odds, &entered, &mut desk, &mut show).unwrap();
            for place in 0..entered.len() {
                let mut others = entered.clone();
                let one = others.remove(place);
                let quick = log_sum(retracted.logs(place, builds).unwrap()).unwrap();
                let slow = Beliefs::ln_probability(&networks, odds, &others, &mut desk).unwrap();
                assert!(
                    (quick - slow).abs() < 1e-9 * slow.abs().max(1.0),
                    "{:?}: {quick} and {slow}",
                    one.task
                );
            }
        }
    }

    /// Two tasks that speak of one clue, or a motor that ran for one reading alone, aren't told so.
    #[test]
    fn what_hangs_together_is_left_to_a_pass_of_its_own() {
        let lint = Weight::Clue(Clue::Lint, vec![0.0, -1.0]);
        let twice = Entered::new(Clue::Lint.task(), vec![lint]);
        assert!(is_said_alone(&twice, &[]));
        assert!(!is_said_alone(&twice, &[&twice]));
        let hiss = Weight::Clue(Clue::Hiss, vec![0.0, -1.0, -1.0, -1.0]);
        let ran = Entered::new(Clue::Hiss.task(), vec![hiss, Weight::Ran]);
        assert!(!is_said_alone(&ran, &[&twice]));
        let drier = Weight::Clue(Clue::Drier, vec![0.0, -1.0, -1.0]);
        let also = Entered::new(Clue::Drier.task(), vec![drier, Weight::Ran]);
        assert!(is_said_alone(&ran, &[&also]));
    }
}

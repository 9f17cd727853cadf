//! What is believed of a machine once everything entered is weighed, over all builds that it may
//! have.

use belief::{Evidence, Posterior, Variable, Workspace};

use super::build::Build;
use super::clue::Clue;
use super::compiled::Compiled;
use super::entered::{Entered, Weight};
use super::fault::Fault;
use super::picture::Picture;
use super::trouble;
use crate::choice::Choice;

/// Builds that are less likely than this are left out: they can't move a decision.
const LEAST_BUILD: f64 = 0.03;
/// How likely it is that someone observes what such a build doesn't have: a slip in the build or
/// in the answer.
pub(super) const MISTAKEN: f64 = 0.02;
/// Weights on what the compressor does, where something was observed that needs it running.
const RAN: [f64; 9] = [1.0, 0.8, 0.7, 0.02, 0.02, 0.02, 0.02, 0.02, 0.02];

/// One build's network with the evidence in it.
#[derive(Clone)]
pub(super) struct Expert<'a> {
    pub(super) compiled: &'a Compiled,
    pub(super) evidence: Evidence,
    /// Natural logarithm of the probability of the evidence.
    pub(super) ln_evidence: f64,
    /// Probability of the build.
    pub(super) weight: f64,
}

/// Memory for propagations, one for each build.
pub(super) type Desk = [Workspace; 3];

/// The builds that are plausible, each with its evidence.
#[derive(Clone)]
pub(super) struct Beliefs<'a> {
    pub(super) experts: Vec<Expert<'a>>,
}

/// What is held fixed while a question is asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Held {
    /// This fault is there, whatever else.
    Fault(Fault),
    /// This fault is there and no other.
    Only(Fault),
    /// Nothing is at fault.
    Nothing,
}

impl<'a> Beliefs<'a> {
    /// Weighs what was entered. `None` where nothing of it can be true together, which slips
    /// in every row forbid.
    pub(super) fn of(
        networks: &[&'a Compiled],
        odds: [f64; 3],
        entered: &[Entered],
        desk: &mut Desk,
    ) -> Option<Self> {
        let mut experts = Vec::new();
        let mut logs = Vec::new();
        for &compiled in networks {
            let (evidence, factor, ln_offered) = evidence_of(compiled, entered)?;
            let odds = odds[compiled.build.column()] * factor;
            if odds <= 0.0 {
                continue;
            }
            let workspace = &mut desk[compiled.build.column()];
            let ln = compiled.tree.ln_probability(&evidence, workspace).ok()?;
            if ln.is_finite() {
                logs.push(libm::log(odds) + ln - ln_offered);
                experts.push(Expert {
                    compiled,
                    evidence,
                    ln_evidence: ln,
                    weight: 0.0,
                });
            }
        }
        let ln_evidence = log_sum(&logs)?;
        for (expert, log) in experts.iter_mut().zip(&logs) {
            expert.weight = libm::exp(log - ln_evidence);
        }
        experts.retain(|expert| expert.weight >= LEAST_BUILD);
        let kept: f64 = experts.iter().map(|expert| expert.weight).sum();
        for expert in &mut experts {
            expert.weight /= kept;
        }
        Some(Self { experts })
    }

    /// The logarithm of the probability of what was entered, by half a pass over each build.
    pub(super) fn ln_probability(
        networks: &[&'a Compiled],
        odds: [f64; 3],
        entered: &[Entered],
        desk: &mut Desk,
    ) -> Option<f64> {
        let mut logs = Vec::new();
        for &compiled in networks {
            let (evidence, factor, ln_offered) = evidence_of(compiled, entered)?;
            let odds = odds[compiled.build.column()] * factor;
            if odds <= 0.0 {
                continue;
            }
            let workspace = &mut desk[compiled.build.column()];
            let ln = compiled.tree.ln_probability(&evidence, workspace).ok()?;
            logs.push(libm::log(odds) + ln - ln_offered);
        }
        log_sum(&logs)
    }

    /// Everything at once, from one pass over each build; with the logarithm of the probability
    /// of what was entered, to the bit as [`Beliefs::ln_probability`] has it.
    pub(super) fn glance(
        networks: &[&'a Compiled],
        odds: [f64; 3],
        entered: &[Entered],
        desk: &mut Desk,
    ) -> Option<(f64, Picture)> {
        Self::glance_with(networks, odds, entered, desk, &mut |_, _, _| ())
    }

    /// The same, and each build's pass is shown on the way, with the logarithm of the build's
    /// share.
    pub(super) fn glance_with(
        networks: &[&'a Compiled],
        odds: [f64; 3],
        entered: &[Entered],
        desk: &mut Desk,
        show: &mut dyn FnMut(&Compiled, &Posterior<'_>, f64),
    ) -> Option<(f64, Picture)> {
        let mut mixed: Option<(f64, f64, Picture)> = None;
        let mut logs = Vec::new();
        for &compiled in networks {
            let (evidence, factor, ln_offered) = evidence_of(compiled, entered)?;
            let odds = odds[compiled.build.column()] * factor;
            if odds <= 0.0 {
                continue;
            }
            let workspace = &mut desk[compiled.build.column()];
            let ln_nothing = ln_nothing(compiled, &evidence, workspace);
            let Ok(posterior) = compiled.tree.propagate(&evidence, workspace) else {
                continue;
            };
            let ln = libm::log(odds) + posterior.ln_evidence() - ln_offered;
            if !ln.is_finite() {
                continue;
            }
            show(compiled, &posterior, ln);
            logs.push(ln);
            // Relative to the first build, whose weight is one.
            let (first, whole, picture) = mixed.get_or_insert_with(|| (ln, 0.0, Picture::blank()));
            let chance = libm::exp(ln - *first);
            *whole += chance;
            picture.add(compiled, &posterior, chance);
            if let Some(ln_nothing) = ln_nothing {
                picture.nothing += chance * libm::exp(ln_nothing - posterior.ln_evidence());
            }
        }
        let (_, whole, mut picture) = mixed?;
        picture.scale(1.0 / whole);
        Some((log_sum(&logs)?, picture))
    }

    /// Everything at once, with something held fixed; `None` where that can't be. The number
    /// is the probability of what is held fixed.
    pub(super) fn picture(&self, held: Held, desk: &mut Desk) -> Option<(f64, Picture)> {
        let mut mixed: Option<(f64, Picture)> = None;
        for expert in &self.experts {
            let Some(evidence) = expert.held(held) else {
                continue;
            };
            let workspace = &mut desk[expert.compiled.build.column()];
            let Ok(posterior) = expert.compiled.tree.propagate(&evidence, workspace) else {
                continue;
            };
            let chance = expert.weight * libm::exp(posterior.ln_evidence() - expert.ln_evidence);
            let (whole, picture) = mixed.get_or_insert_with(|| (0.0, Picture::blank()));
            *whole += chance;
            picture.add(expert.compiled, &posterior, chance);
        }
        let (whole, mut picture) = mixed?;
        if whole <= 0.0 {
            return None;
        }
        picture.scale(1.0 / whole);
        Some((whole, picture))
    }

    /// The probability of what is held fixed.
    pub(super) fn chance(&self, held: Held, desk: &mut Desk) -> f64 {
        let mut sum = 0.0;
        for expert in &self.experts {
            let workspace = &mut desk[expert.compiled.build.column()];
            if let Some(evidence) = expert.held(held)
                && let Ok(ln) = expert.compiled.tree.ln_probability(&evidence, workspace)
            {
                sum += expert.weight * libm::exp(ln - expert.ln_evidence);
            }
        }
        sum
    }

    /// Each plausible build's network with its evidence, for other programs to check.
    pub(super) fn exported(&self) -> Vec<(Build, f64, belief::Exported)> {
        self.experts
            .iter()
            .map(|expert| {
                let build = expert.compiled.build;
                let network = expert.compiled.tree.network();
                let exported = belief::export_bif(build.name(), network, &expert.evidence);
                (build, expert.weight, exported)
            })
            .collect()
    }

    /// The networks of the builds that are plausible.
    pub(super) fn networks(&self) -> Vec<&'a Compiled> {
        self.experts.iter().map(|expert| expert.compiled).collect()
    }

    /// How many changes the networks span.
    pub(super) fn changes(&self) -> usize {
        let mut experts = self.experts.iter();
        experts.next().map_or(0, |expert| expert.compiled.changes())
    }

    /// The likeliest build; the first of equals.
    pub(super) fn likeliest_build(&self) -> Build {
        let mut best = (Build::ManualDefrost, f64::NEG_INFINITY);
        for expert in &self.experts {
            if expert.weight > best.1 {
                best = (expert.compiled.build, expert.weight);
            }
        }
        best.0
    }
}

impl Expert<'_> {
    /// The evidence with something held fixed.
    fn held(&self, held: Held) -> Option<Evidence> {
        let network = self.compiled.tree.network();
        let mut evidence = self.evidence.clone();
        let fault = match held {
            Held::Fault(fault) | Held::Only(fault) => {
                let (variable, state) = self.compiled.fault(fault)?;
                evidence.observe(network, variable, state).ok()?;
                Some(fault)
            }
            Held::Nothing => None,
        };
        if matches!(held, Held::Only(_) | Held::Nothing) {
            for (part, variable) in self.compiled.parts() {
                if fault.is_none_or(|fault| fault.part() != *part) {
                    evidence.observe(network, variable.variable, 0).ok()?;
                }
            }
        }
        Some(evidence)
    }
}

/// One build's evidence, the factor that what was entered puts on the build itself, and the
/// logarithm of the probability of what is known anyway.
pub(super) fn evidence_of(
    compiled: &Compiled,
    entered: &[Entered],
) -> Option<(Evidence, f64, f64)> {
    let network = compiled.tree.network();
    // What was carried over holds how the machine was offered.
    let (mut evidence, ln_offered) =
        match entered.iter().find_map(|one| one.carried(compiled.build)) {
            Some(carried) => (Evidence::new(), carried.ln),
            None => (compiled.offered().ok()?, compiled.ln_offered),
        };
    let mut factor = 1.0;
    let mut ran = Vec::new();
    for (place, one) in entered.iter().enumerate() {
        let (conditions, clues) = compiled.at(one.period);
        for weight in &one.weights {
            match weight {
                Weight::Clue(clue, ln_weights) => match clues.variable(*clue) {
                    Some(_) if is_asked_again(compiled, *clue, one, &entered[place + 1..]) => {}
                    Some(variable) => evidence.weigh_ln(network, variable, ln_weights).ok()?,
                    None => factor *= MISTAKEN,
                },
                Weight::Fault(fault, times) => {
                    if let Some((variable, state)) = compiled.fault_at(*fault, one.period) {
                        weigh_one(compiled, &mut evidence, variable, state, *times)?;
                    }
                }
                Weight::Nothing(times) => {
                    let trouble = conditions.trouble;
                    weigh_one(compiled, &mut evidence, trouble, trouble::NONE, *times)?;
                }
                Weight::Build(factors) => factor *= factors[compiled.build.column()],
                Weight::Ran if ran.contains(&conditions.motor) => {}
                Weight::Ran => ran.push(conditions.motor),
                Weight::Carried(build, carried) if *build == compiled.build => {
                    carried.weigh_on(compiled, &mut evidence)?;
                }
                Weight::Carried(..) => {}
            }
        }
    }
    for motor in ran {
        evidence.weigh(network, motor, &RAN).ok()?;
    }
    Some((evidence, factor, ln_offered))
}

/// Whether the same thing was read again after something else was changed: the later reading
/// counts.
fn is_asked_again(compiled: &Compiled, clue: Clue, one: &Entered, later: &[Entered]) -> bool {
    let variable = |period: usize| compiled.at(period).1.variable(clue);
    let mut again = later.iter().filter(|other| other.period != one.period);
    again.any(|other| {
        let mut weights = other.weights.iter();
        weights.any(|weight| matches!(weight, Weight::Clue(same, _) if *same == clue))
            && variable(other.period) == variable(one.period)
    })
}

/// The logarithm of the probability of the evidence with nothing at fault now, for networks with
/// changes, where that is no state of a variable.
pub(super) fn ln_nothing(
    compiled: &Compiled,
    evidence: &Evidence,
    workspace: &mut Workspace,
) -> Option<f64> {
    if !compiled.is_changed() {
        return None;
    }
    let mut sound = evidence.clone();
    for (_, part) in compiled.parts() {
        let network = compiled.tree.network();
        sound.observe(network, part.variable, 0).ok()?;
    }
    compiled.tree.ln_probability(&sound, workspace).ok()
}

fn weigh_one(
    compiled: &Compiled,
    evidence: &mut Evidence,
    variable: Variable,
    state: usize,
    times: f64,
) -> Option<()> {
    let network = compiled.tree.network();
    let mut weights = vec![1.0; network.states(variable).len()];
    weights[state] = times;
    evidence.weigh(network, variable, &weights).ok()
}

/// Natural logarithm of the sum of numbers given by their logarithms; `None` of nothing.
pub(super) fn log_sum(logs: &[f64]) -> Option<f64> {
    let top = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let sum: f64 = logs.iter().map(|log| libm::exp(log - top)).sum();
    top.is_finite().then(|| top + libm::log(sum))
}

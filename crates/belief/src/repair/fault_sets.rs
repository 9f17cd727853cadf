//! Which faults there may be together, the likeliest sets first.

use super::weighing::Weigher;
use crate::error::QueryError;
use crate::network::Variable;
use crate::posterior::Posterior;

/// Below this, what sets leave to one is rounding.
const NEXT_TO_NOTHING: f64 = 1e-9;

/// A variable that can be at fault.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Component {
    /// The variable.
    pub variable: Variable,
    /// The number of the state that is no fault.
    pub sound: usize,
}

/// Faults that there are at once, and no others.
#[derive(Debug, Clone, PartialEq)]
pub struct FaultSet {
    /// Each component at fault with the number of its state; none when all are sound.
    pub faults: Vec<(Variable, usize)>,
    /// How likely this set is given the evidence.
    pub probability: f64,
}

/// How far an enumeration goes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// The largest number of faults at once.
    pub most_faults: usize,
    /// Faults whose marginal is below this are left out: no set with them can be likelier.
    pub least_marginal: f64,
    /// How many sets are kept, the likeliest.
    pub keep: usize,
}

impl Default for Limits {
    fn default() -> Self {
        Self {
            most_faults: 2,
            least_marginal: 1e-6,
            keep: 400,
        }
    }
}

/// The likeliest fault sets with their exact probabilities.
///
/// ```
/// use belief::{Component, Evidence, FaultSets, JunctionTree, Limits, Network};
///
/// let mut network = Network::new();
/// let fan = network.prior("fan", &["sound", "stuck"], &[0.9, 0.1])?;
/// let coil = network.prior("coil", &["clear", "iced"], &[0.8, 0.2])?;
/// let air = network.worst_of("air", &["flows", "none"], &[(fan, &[0, 1]), (coil, &[0, 1])])?;
/// let tree = JunctionTree::compile(network)?;
/// let mut evidence = Evidence::new();
/// evidence.observe(tree.network(), air, 1)?;
///
/// let mut workspace = tree.workspace();
/// let posterior = tree.propagate(&evidence, &mut workspace)?;
/// let components = [fan, coil].map(|variable| Component { variable, sound: 0 });
/// let sets = FaultSets::enumerate(&posterior, &components, Limits::default())?;
/// assert_eq!(sets.sets()[0].faults, [(coil, 1)]);
/// assert!((sets.sets()[0].probability - 0.18 / 0.28).abs() < 1e-12);
/// assert!(sets.missing() < 1e-12);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct FaultSets {
    components: Vec<Component>,
    sets: Vec<FaultSet>,
    missing: f64,
}

impl FaultSets {
    /// Enumerates sets of faults: none, each alone, each two, and so on.
    ///
    /// # Errors
    /// When a component is no variable of the network, is named twice, or has no such state.
    pub fn enumerate(
        posterior: &Posterior<'_>,
        components: &[Component],
        limits: Limits,
    ) -> Result<Self, QueryError> {
        check(posterior, components)?;
        let variables: Vec<_> = components.iter().map(|one| one.variable).collect();
        let mut search = Search {
            weigher: Weigher::new(posterior, &variables, &[])?,
            plausible: plausible(posterior, components, limits.least_marginal),
            components,
            states: components.iter().map(|one| one.sound).collect(),
            sets: Vec::new(),
        };
        search.extend(0, limits.most_faults);
        let mut sets = search.sets;
        // Stable: equals stay in the order of the components.
        sets.sort_by(|one, other| other.probability.total_cmp(&one.probability));
        sets.truncate(limits.keep);
        Ok(Self::given(components, sets))
    }

    /// Fault sets whose probabilities are known already; what they leave to one is missing.
    #[must_use]
    pub fn given(components: &[Component], sets: Vec<FaultSet>) -> Self {
        let held: f64 = sets.iter().map(|set| set.probability).sum();
        Self {
            components: components.to_vec(),
            sets,
            missing: (1.0 - held).max(0.0),
        }
    }

    /// The sets, the likeliest first.
    #[must_use]
    pub fn sets(&self) -> &[FaultSet] {
        &self.sets
    }

    /// How likely it is that none of the sets is the true one: more faults, or rarer ones.
    #[must_use]
    pub fn missing(&self) -> f64 {
        self.missing
    }

    /// For each of some findings, one row per set: how likely each answer is if the set is the
    /// true one. The last row is for everything that is missing, and is exact too: what the sets
    /// leave of the finding's marginal. The evidence is that of the posterior, which is the one that was enumerated
    /// under.
    ///
    /// # Errors
    /// When a finding is no variable of the network.
    pub fn answers(
        &self,
        posterior: &Posterior<'_>,
        findings: &[Variable],
    ) -> Result<Vec<Vec<Vec<f64>>>, QueryError> {
        check(posterior, &self.components)?;
        let network = posterior.tree().network();
        let variables: Vec<_> = self.components.iter().map(|one| one.variable).collect();
        let mut weigher = Weigher::new(posterior, &variables, findings)?;
        let mut all = vec![Vec::with_capacity(self.sets.len()); findings.len()];
        for set in &self.sets {
            let states: Vec<_> = self.components.iter().map(|one| set.state(*one)).collect();
            let blank = findings
                .iter()
                .map(|&one| vec![0.0; network.states(one).len()]);
            let mut answers: Vec<_> = blank.collect();
            let weight = weigher.weigh(&states, &mut answers);
            for (rows, mut row) in all.iter_mut().zip(answers) {
                if weight > 0.0 {
                    row.iter_mut().for_each(|chance| *chance /= weight);
                }
                rows.push(row);
            }
        }
        for (rows, &finding) in all.iter_mut().zip(findings) {
            rows.push(self.left_of(posterior.marginal(finding), rows));
        }
        Ok(all)
    }
}

impl FaultSets {
    /// What the sets leave of a marginal, as a distribution; the marginal itself where they leave
    /// next to nothing.
    fn left_of(&self, marginal: &[f64], rows: &[Vec<f64>]) -> Vec<f64> {
        let mut left = marginal.to_vec();
        for (set, row) in self.sets.iter().zip(rows) {
            for (left, chance) in left.iter_mut().zip(row) {
                *left = (*left - set.probability * chance).max(0.0);
            }
        }
        let sum: f64 = left.iter().sum();
        if sum < NEXT_TO_NOTHING {
            return marginal.to_vec();
        }
        left.iter_mut().for_each(|chance| *chance /= sum);
        left
    }
}

impl FaultSet {
    fn state(&self, component: Component) -> usize {
        let fault = self
            .faults
            .iter()
            .find(|(variable, _)| *variable == component.variable);
        fault.map_or(component.sound, |&(_, state)| state)
    }
}

/// The enumeration under way.
struct Search<'a> {
    weigher: Weigher<'a>,
    components: &'a [Component],
    /// Per component the faults that are worth a set.
    plausible: Vec<Vec<usize>>,
    states: Vec<usize>,
    sets: Vec<FaultSet>,
}

impl Search<'_> {
    /// Weighs the set as it is and every set with more faults among the components from `first`
    /// on.
    fn extend(&mut self, first: usize, more_faults: usize) {
        let probability = self.weigher.weigh(&self.states, &mut Vec::new());
        if probability > 0.0 {
            let at_fault = self.components.iter().zip(&self.states);
            self.sets.push(FaultSet {
                faults: at_fault
                    .filter(|(component, state)| component.sound != **state)
                    .map(|(component, state)| (component.variable, *state))
                    .collect(),
                probability,
            });
        }
        if more_faults == 0 {
            return;
        }
        for place in first..self.components.len() {
            for fault in self.plausible[place].clone() {
                self.states[place] = fault;
                self.extend(place + 1, more_faults - 1);
            }
            self.states[place] = self.components[place].sound;
        }
    }
}

fn plausible(
    posterior: &Posterior<'_>,
    components: &[Component],
    least_marginal: f64,
) -> Vec<Vec<usize>> {
    let faults = |component: &Component| {
        let marginal = posterior.marginal(component.variable);
        let faults = (0..marginal.len()).filter(|&state| state != component.sound);
        faults
            .filter(|&state| marginal[state] >= least_marginal)
            .collect()
    };
    components.iter().map(faults).collect()
}

fn check(posterior: &Posterior<'_>, components: &[Component]) -> Result<(), QueryError> {
    let network = posterior.tree().network();
    for (place, component) in components.iter().enumerate() {
        let states = network.states(component.variable).len();
        if states == 0 {
            return Err(QueryError::UnknownVariable);
        }
        let name = || network.name(component.variable).to_owned();
        if component.sound >= states {
            return Err(QueryError::Shape {
                of: name(),
                expected: component.sound + 1,
                found: states,
            });
        }
        if components[..place]
            .iter()
            .any(|other| other.variable == component.variable)
        {
            return Err(QueryError::Repeated { variable: name() });
        }
    }
    Ok(())
}

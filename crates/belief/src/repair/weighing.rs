//! How probable one state of all components is together with the evidence.
//!
//! With the components settled, most of what lies between them and the findings follows: the
//! network is walked once from causes to effects. What is left to chance on the way is branched
//! over; where that would be too often, or the evidence too unlikely for plain numbers, the tree
//! is asked instead.

use crate::error::QueryError;
use crate::evidence::{Evidence, largest};
use crate::network::{Network, Node, Variable};
use crate::posterior::Posterior;
use crate::tree::{JunctionTree, Workspace};

/// Beyond this many branches the tree is faster.
const MOST_BRANCHES: usize = 128;

/// Evidence less likely than this, ln 1e-120, is left to the tree, which goes over to logarithms.
const LEAST_LN_EVIDENCE: f64 = -276.0;

/// Weighs states of all components under one set of evidence.
pub(super) struct Weigher<'a> {
    tree: &'a JunctionTree,
    evidence: &'a Evidence,
    ln_evidence: f64,
    /// The components, in the order in which their states are given.
    components: Vec<Variable>,
    targets: Vec<Variable>,
    way: Way<'a>,
}

/// Weights of the targets' states, by target.
pub(super) type Answers = Vec<Vec<f64>>;

enum Way<'a> {
    Walk(Walk<'a>),
    Tree(Box<Workspace>),
}

/// One node on the walk.
struct Stop<'a> {
    variable: usize,
    node: &'a Node,
    kind: Kind,
    /// The worst state that each state of each parent leads to, where that is all there is to it.
    effects: Option<Vec<Vec<usize>>>,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    /// Its state is given.
    Given,
    /// Its state follows from its parents.
    Certain,
    /// Nothing that matters depends on it, so that it is summed out on the spot.
    Last,
    /// Each of its states is tried.
    Branch,
}

struct Walk<'a> {
    network: &'a Network,
    stops: Vec<Stop<'a>>,
    /// Per variable the weights of its states, at most one.
    weights: Vec<Vec<f64>>,
    /// Natural logarithm of what the weights were divided by.
    ln_scale: f64,
    states: Vec<usize>,
    rows: Vec<Vec<f64>>,
}

impl<'a> Weigher<'a> {
    pub(super) fn new(
        posterior: &Posterior<'a>,
        components: &[Variable],
        targets: &[Variable],
    ) -> Result<Self, QueryError> {
        let tree = posterior.tree();
        let network = tree.network();
        if components
            .iter()
            .chain(targets)
            .any(|&one| network.node(one).is_none())
        {
            return Err(QueryError::UnknownVariable);
        }
        let evidence = posterior.evidence();
        let walk = Walk::new(network, evidence, components, targets);
        let plain = posterior.ln_evidence() - walk.ln_scale >= LEAST_LN_EVIDENCE;
        let way = if plain && walk.branches() <= MOST_BRANCHES {
            Way::Walk(walk)
        } else {
            Way::Tree(Box::new(tree.workspace()))
        };
        Ok(Self {
            tree,
            evidence,
            ln_evidence: posterior.ln_evidence(),
            components: components.to_vec(),
            targets: targets.to_vec(),
            way,
        })
    }

    /// The probability of the components' states given the evidence. Adds that, shared out over
    /// the states of each target, to the answers.
    pub(super) fn weigh(&mut self, states: &[usize], answers: &mut Answers) -> f64 {
        match &mut self.way {
            Way::Walk(walk) => {
                for (component, &state) in self.components.iter().zip(states) {
                    walk.states[component.index()] = state;
                }
                let whole = libm::exp(walk.ln_scale - self.ln_evidence);
                walk.from(0, whole, &self.targets, answers)
            }
            Way::Tree(workspace) => {
                let network = self.tree.network();
                let mut evidence = self.evidence.clone();
                for (&component, &state) in self.components.iter().zip(states) {
                    if evidence.observe(network, component, state).is_err() {
                        return 0.0;
                    }
                }
                let Ok(ln) = self.tree.ln_probability(&evidence, workspace) else {
                    return 0.0;
                };
                let weight = libm::exp(ln - self.ln_evidence);
                if weight > 0.0
                    && !self.targets.is_empty()
                    && let Ok(posterior) = self.tree.propagate(&evidence, workspace)
                {
                    for (&target, answer) in self.targets.iter().zip(answers) {
                        add_scaled(answer, posterior.marginal(target), weight);
                    }
                }
                weight
            }
        }
    }
}

impl<'a> Walk<'a> {
    fn new(
        network: &'a Network,
        evidence: &Evidence,
        components: &[Variable],
        targets: &[Variable],
    ) -> Self {
        let (weights, ln_scale) = weights(network, evidence);
        let nodes = network.nodes();
        let mut given = vec![false; nodes.len()];
        components.iter().for_each(|one| given[one.index()] = true);
        // What matters: what is given, seen or asked for, and all that it comes from.
        let mut matters = given.clone();
        let seen = evidence.findings().iter().map(|finding| finding.variable());
        seen.chain(targets.iter().copied())
            .for_each(|one| matters[one.index()] = true);
        let mut leads_on = vec![false; nodes.len()];
        for variable in (0..nodes.len()).rev() {
            if matters[variable] {
                for parent in &nodes[variable].parents {
                    matters[parent.index()] = true;
                    leads_on[parent.index()] = true;
                }
            }
        }
        let stops = nodes
            .iter()
            .enumerate()
            .filter(|&(variable, _)| matters[variable]);
        let stops = stops.map(|(variable, node)| Stop {
            variable,
            node,
            effects: node.law.effects(),
            kind: match () {
                () if given[variable] => Kind::Given,
                () if node.law.is_deterministic() => Kind::Certain,
                () if !leads_on[variable] => Kind::Last,
                () => Kind::Branch,
            },
        });
        Self {
            network,
            stops: stops.collect(),
            weights,
            ln_scale,
            states: vec![0; nodes.len()],
            rows: nodes
                .iter()
                .map(|node| vec![0.0; node.states.len()])
                .collect(),
        }
    }

    fn branches(&self) -> usize {
        let branching = self.stops.iter().filter(|stop| stop.kind == Kind::Branch);
        crate::configuration::count(branching.map(|stop| stop.node.states.len()))
    }

    /// The weight of everything from one stop on, times what came before it.
    fn from(
        &mut self,
        first: usize,
        before: f64,
        targets: &[Variable],
        answers: &mut Answers,
    ) -> f64 {
        let mut weight = before;
        for place in first..self.stops.len() {
            if weight <= 0.0 {
                return 0.0;
            }
            let (variable, kind) = (self.stops[place].variable, self.stops[place].kind);
            if kind == Kind::Certain {
                let state = self.certain_state(place);
                self.states[variable] = state;
                weight *= self.weights[variable][state];
                continue;
            }
            self.write_row(place);
            let row = &self.rows[variable];
            match kind {
                Kind::Given | Kind::Certain => weight *= row[self.states[variable]],
                Kind::Last => weight *= row.iter().sum::<f64>(),
                Kind::Branch => {
                    let row = row.clone();
                    let mut sum = 0.0;
                    for (state, entry) in row.into_iter().enumerate() {
                        self.states[variable] = state;
                        sum += self.from(place + 1, weight * entry, targets, answers);
                    }
                    return sum;
                }
            }
        }
        if weight > 0.0 {
            self.answer(weight, targets, answers);
        }
        weight
    }

    /// The state that follows from the parents'.
    fn certain_state(&mut self, place: usize) -> usize {
        let Stop {
            variable,
            node,
            effects,
            ..
        } = &self.stops[place];
        let state_of = |parent: usize| self.states[node.parents[parent].index()];
        if let Some(effects) = effects {
            let each = effects.iter().enumerate();
            return each
                .map(|(parent, effects)| effects[state_of(parent)])
                .max()
                .unwrap_or(0);
        }
        let row = &mut self.rows[*variable];
        let states = &self.states;
        self.network
            .write_row(node, |parent| states[node.parents[parent].index()], row);
        row.iter().position(|&entry| entry > 0.0).unwrap_or(0)
    }

    /// Writes a node's chances times its weights.
    fn write_row(&mut self, place: usize) {
        let Stop { variable, node, .. } = &self.stops[place];
        let row = &mut self.rows[*variable];
        let states = &self.states;
        self.network
            .write_row(node, |parent| states[node.parents[parent].index()], row);
        for (entry, weight) in row.iter_mut().zip(&self.weights[*variable]) {
            *entry *= weight;
        }
    }

    fn answer(&self, weight: f64, targets: &[Variable], answers: &mut Answers) {
        for (target, answer) in targets.iter().zip(answers) {
            let variable = target.index();
            let last = self
                .stops
                .binary_search_by_key(&variable, |stop| stop.variable)
                .is_ok_and(|place| self.stops[place].kind == Kind::Last);
            if last {
                let row = &self.rows[variable];
                let sum: f64 = row.iter().sum();
                add_scaled(answer, row, weight / sum);
            } else {
                answer[self.states[variable]] += weight;
            }
        }
    }
}

fn add_scaled(sums: &mut [f64], row: &[f64], factor: f64) {
    for (sum, entry) in sums.iter_mut().zip(row) {
        *sum += factor * entry;
    }
}

/// The findings about each variable multiplied, the largest weight being one.
fn weights(network: &Network, evidence: &Evidence) -> (Vec<Vec<f64>>, f64) {
    let nodes = network.nodes().iter();
    let mut weights: Vec<Vec<f64>> = nodes.map(|node| vec![0.0; node.states.len()]).collect();
    for finding in evidence.findings() {
        let sums = &mut weights[finding.variable().index()];
        sums.iter_mut()
            .zip(finding.ln_weights())
            .for_each(|(sum, ln)| *sum += ln);
    }
    let mut ln_scale = 0.0;
    for row in &mut weights {
        let top = largest(row);
        ln_scale += top;
        row.iter_mut().for_each(|ln| *ln = libm::exp(*ln - top));
    }
    (weights, ln_scale)
}

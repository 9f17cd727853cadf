//! The network as plain tables, small enough to stand in one clique each.
//!
//! The worst of many causes is taken step by step: the worst of the first two, the worst of that
//! and the third, and so on. The steps are variables that nobody asks about; they spare a table
//! over all causes at once.

use super::building::MOST_ENTRIES;
use super::law::{Strongest, take_larger};
use super::{Law, Network, Node};
use crate::configuration::{advance, count};
use crate::error::QueryError;

/// With this many causes a plain table is as good as steps.
const MOST_CAUSES_IN_ONE_TABLE: usize = 3;

/// Whether a node with this many causes is taken step by step.
pub(super) fn is_split(causes: usize) -> bool {
    causes > MOST_CAUSES_IN_ONE_TABLE
}

/// Checks that nodes which the most probable explanation can't split have tables of a size that
/// can be built.
pub(crate) fn check_whole(network: &Network) -> Result<(), QueryError> {
    for node in &network.nodes {
        let cards = node.parents.iter().map(|&parent| network.card(parent));
        let entries = count(cards.chain([node.states.len()]));
        if !node.law.is_deterministic() && entries > MOST_ENTRIES {
            let parents = node.parents.iter().map(|&parent| network.name(parent));
            return Err(QueryError::TooLarge {
                variables: parents
                    .chain([node.name.as_str()])
                    .map(str::to_owned)
                    .collect(),
                entries,
                limit: MOST_ENTRIES,
            });
        }
    }
    Ok(())
}

/// One variable's chances given others', in one table.
#[derive(Debug)]
pub(crate) struct Piece {
    /// Parents in the order of the table, then the variable itself, which changes fastest.
    pub(crate) variables: Vec<usize>,
    pub(crate) table: Vec<f64>,
}

/// Which nodes may be split into steps.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Steps {
    /// All with many causes. Right for sums.
    Wherever,
    /// Those that leave nothing to chance. A step that does would be maximised over where it has
    /// to be summed out, so that the most probable explanation takes only these.
    WhereCertain,
}

/// The tables whose product is the joint distribution.
#[derive(Debug)]
pub(crate) struct Pieces {
    /// How many states each variable has; steps come after the network's own variables.
    pub(crate) cards: Vec<usize>,
    /// Names of the steps.
    pub(crate) step_names: Vec<String>,
    /// Whether a step is left to chance.
    pub(crate) any_by_chance: bool,
    /// In an order in which parents come first.
    pub(crate) pieces: Vec<Piece>,
}

impl Pieces {
    pub(crate) fn of(network: &Network, steps: Steps) -> Self {
        let mut all = Self {
            any_by_chance: false,
            cards: network.nodes.iter().map(|node| node.states.len()).collect(),
            step_names: Vec::new(),
            pieces: Vec::new(),
        };
        for (place, node) in network.nodes.iter().enumerate() {
            let certain = node.law.is_deterministic();
            let may_be_split = certain || steps == Steps::Wherever;
            match &node.law {
                Law::Strongest(law) if may_be_split && is_split(law.tables.len()) => {
                    all.any_by_chance |= !certain;
                    all.push_steps(network, place, node, law);
                }
                _ => all.push_whole(network, place, node),
            }
        }
        all
    }

    fn push_whole(&mut self, network: &Network, place: usize, node: &Node) {
        let states = node.states.len();
        let mut variables: Vec<_> = node.parents.iter().map(|parent| parent.index()).collect();
        let mut at = vec![0; variables.len()];
        let entries = count(variables.iter().map(|&parent| self.cards[parent])) * states;
        let mut table = Vec::with_capacity(entries);
        let mut row = vec![0.0; states];
        loop {
            network.write_row(node, |parent| at[parent], &mut row);
            table.extend_from_slice(&row);
            if !advance(&mut at, |parent| self.cards[variables[parent]]) {
                break;
            }
        }
        variables.push(place);
        self.pieces.push(Piece { variables, table });
    }

    fn push_steps(&mut self, network: &Network, place: usize, node: &Node, law: &Strongest) {
        let states = node.states.len();
        let last = law.tables.len() - 1;
        // The first cause and the leak make up what the second is compared with.
        let mut so_far = node.parents[0].index();
        let mut rows: Vec<Vec<f64>> = law.tables[0]
            .chunks_exact(states)
            .map(|row| {
                let mut row = row.to_vec();
                take_larger(&mut row, &law.leak);
                row
            })
            .collect();
        for (step, table) in law.tables.iter().enumerate().skip(1) {
            let result = if step == last {
                place
            } else {
                self.cards.push(states);
                self.step_names.push(step_name(network, &node.name, step));
                self.cards.len() - 1
            };
            let mut joined = Vec::with_capacity(rows.len() * table.len());
            for row in &rows {
                for other in table.chunks_exact(states) {
                    let mut row = row.clone();
                    take_larger(&mut row, other);
                    joined.extend(row);
                }
            }
            self.pieces.push(Piece {
                variables: vec![so_far, node.parents[step].index(), result],
                table: joined,
            });
            so_far = result;
            rows = (0..states)
                .map(|state| {
                    (0..states)
                        .map(|other| f64::from(u8::from(state == other)))
                        .collect()
                })
                .collect();
        }
    }
}

/// A name that no variable of the network has.
fn step_name(network: &Network, name: &str, step: usize) -> String {
    let mut candidate = format!("{name}_step_{step}");
    while network.find(&candidate).is_some() {
        candidate.push('_');
    }
    candidate
}

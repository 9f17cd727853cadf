//! The network compiled into a tree of cliques.
//!
//! Hugin's way (Jensen, Lauritzen and Olesen 1990; from memory) was taken: one table per clique,
//! two passes, a division per shared entry. Against Shafer and Shenoy's it multiplies every
//! clique once per pass instead of once per neighbour; against lazy propagation it needs no
//! memory while it runs and takes the same time whatever the evidence is, which a screen that
//! answers at once wants more than a better average.

pub(crate) mod algebra;
mod cliques;
pub(crate) mod projection;
mod propagation;
mod triangulation;

use crate::configuration::count;
use crate::error::QueryError;
use crate::evidence::Evidence;
use crate::network::{Network, Pieces, Steps, Variable};
use algebra::SumProduct;
use cliques::Members;
use projection::Projection;
use std::ops::Range;
use triangulation::{Graph, Rule};

pub use propagation::Workspace;

/// All tables of a tree together may have this many entries: 128 MiB of numbers.
const MOST_ENTRIES: usize = 1 << 24;

/// A network made ready for any number of questions.
///
/// The order of summing out is found once, here, and kept, so that the same network, evidence
/// and question give the same bits on every machine.
///
/// ```
/// use belief::{Evidence, JunctionTree, Network};
///
/// let mut network = Network::new();
/// let rain = network.prior("rain", &["no", "yes"], &[0.8, 0.2])?;
/// let wet = network.table("wet", &["no", "yes"], &[rain], &[[0.9, 0.1], [0.05, 0.95]])?;
/// let tree = JunctionTree::compile(network)?;
///
/// let mut evidence = Evidence::new();
/// evidence.observe(tree.network(), wet, 1)?;
/// let mut workspace = tree.workspace();
/// let posterior = tree.propagate(&evidence, &mut workspace)?;
/// assert!((posterior.marginal(rain)[1] - 0.19 / 0.27).abs() < 1e-12);
/// assert!((posterior.probability_of_evidence() - 0.27).abs() < 1e-12);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone)]
pub struct JunctionTree {
    network: Network,
    /// States of each variable, those of steps inside wide nodes after the network's own.
    cards: Vec<usize>,
    cliques: Vec<Clique>,
    /// Of the network's own variables.
    homes: Vec<Home>,
    potentials: Vec<f64>,
    /// How many entries all separators have.
    separator_entries: usize,
    /// Marginals without evidence, laid out as in a [`Workspace`].
    prior: Vec<f64>,
    /// Whether a wide node was split into steps that are left to chance.
    pub(crate) any_step_by_chance: bool,
}

#[derive(Debug, Clone)]
pub(crate) struct Clique {
    members: Members,
    table: Range<usize>,
    separator: Range<usize>,
    /// From the parent's table on what is shared with it.
    from_parent: Option<Projection>,
}

/// Where a variable's evidence goes in and its marginal comes out.
#[derive(Debug, Clone)]
struct Home {
    /// The smallest clique that holds it, with the distance of two of its states in the table.
    clique: usize,
    stride: usize,
    /// The smallest separator that holds it, if that is smaller still.
    separator: Option<(usize, usize)>,
    /// Its place among the marginals.
    marginal: Range<usize>,
}

/// How large a tree is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sizes {
    /// Entries of each clique's table, the largest first.
    pub cliques: Vec<usize>,
    /// Entries of all cliques together.
    pub total: usize,
    /// Entries of all separators together.
    pub separators: usize,
}

impl JunctionTree {
    /// Compiles a network.
    ///
    /// # Errors
    /// When the tables would be too large together.
    pub fn compile(network: Network) -> Result<Self, QueryError> {
        Self::compile_with(network, Steps::Wherever)
    }

    /// Compiles a network to a tree of at most this many entries, for networks that may not cost
    /// more than a bound.
    ///
    /// ```
    /// # use belief::{JunctionTree, Network};
    /// # let mut network = Network::new();
    /// let rain = network.prior("rain", &["no", "yes"], &[0.8, 0.2])?;
    /// network.table("wet", &["no", "yes"], &[rain], &[[0.9, 0.1], [0.05, 0.95]])?;
    /// assert!(JunctionTree::compile_within(network.clone(), 3).is_err());
    /// assert_eq!(JunctionTree::compile_within(network, 4)?.sizes().total, 4);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    /// When the tables found would be too large together.
    pub fn compile_within(network: Network, most_entries: usize) -> Result<Self, QueryError> {
        Self::compile_limited(network, Steps::Wherever, most_entries.min(MOST_ENTRIES))
    }

    pub(crate) fn compile_with(network: Network, steps: Steps) -> Result<Self, QueryError> {
        Self::compile_limited(network, steps, MOST_ENTRIES)
    }

    fn compile_limited(network: Network, steps: Steps, limit: usize) -> Result<Self, QueryError> {
        let pieces = Pieces::of(&network, steps);
        let members = smallest_tree(&pieces);
        check_size(&network, &pieces, &members, limit)?;
        let mut tree = Self {
            cliques: lay_out(&members, &pieces.cards),
            homes: Vec::new(),
            potentials: Vec::new(),
            separator_entries: 0,
            prior: Vec::new(),
            any_step_by_chance: pieces.any_by_chance,
            cards: pieces.cards.clone(),
            network,
        };
        tree.separator_entries = tree.cliques.last().map_or(0, |last| last.separator.end);
        tree.homes = tree.find_homes();
        tree.potentials = tree.multiply_pieces(&pieces);
        let mut workspace = tree.workspace();
        // Without evidence nothing can be impossible: every table is a distribution.
        if tree.propagate(&Evidence::new(), &mut workspace).is_ok() {
            tree.prior = workspace.marginals;
        }
        Ok(tree)
    }

    /// The network that was compiled.
    #[must_use]
    pub fn network(&self) -> &Network {
        &self.network
    }

    /// How large the tables are.
    #[must_use]
    pub fn sizes(&self) -> Sizes {
        let mut cliques: Vec<_> = self
            .cliques
            .iter()
            .map(|clique| clique.table.len())
            .collect();
        cliques.sort_unstable_by(|one, other| other.cmp(one));
        Sizes {
            total: cliques.iter().sum(),
            cliques,
            separators: self.separator_entries,
        }
    }

    /// A variable's marginal without any evidence; empty for a variable of another network.
    #[must_use]
    pub fn prior(&self, variable: Variable) -> &[f64] {
        let range = self.marginal_range(variable);
        range.map_or(&[], |range| &self.prior[range])
    }

    pub(crate) fn marginal_range(&self, variable: Variable) -> Option<Range<usize>> {
        let home = self.homes.get(variable.index())?;
        Some(home.marginal.clone())
    }

    pub(crate) fn cards(&self) -> &[usize] {
        &self.cards
    }

    pub(crate) fn cliques(&self) -> &[Clique] {
        &self.cliques
    }

    /// The smallest clique that holds a variable of the network.
    pub(crate) fn home(&self, variable: usize) -> usize {
        self.homes[variable].clique
    }

    fn find_homes(&self) -> Vec<Home> {
        let mut begin = 0;
        (0..self.network.len())
            .map(|variable| {
                let stride_in = |variables: &[usize]| {
                    let place = variables.iter().position(|&one| one == variable)?;
                    Some(count(
                        variables[place + 1..].iter().map(|&one| self.cards[one]),
                    ))
                };
                let (clique, stride) = (0..self.cliques.len())
                    .filter_map(|one| Some((one, stride_in(&self.cliques[one].members.variables)?)))
                    .min_by_key(|&(one, _)| self.cliques[one].table.len())
                    // Every variable stands in a clique: it was summed out once.
                    .unwrap_or((0, 1));
                let separator = (0..self.cliques.len())
                    .filter_map(|one| {
                        Some((one, stride_in(self.cliques[one].members.separator())?))
                    })
                    .min_by_key(|&(one, _)| self.cliques[one].separator.len())
                    .filter(|&(one, _)| {
                        self.cliques[one].separator.len() < self.cliques[clique].table.len()
                    });
                let marginal = begin..begin + self.cards[variable];
                begin = marginal.end;
                Home {
                    clique,
                    stride,
                    separator,
                    marginal,
                }
            })
            .collect()
    }

    /// Multiplies each table of the network into the smallest clique that holds its variables.
    fn multiply_pieces(&self, pieces: &Pieces) -> Vec<f64> {
        let mut potentials = vec![1.0; self.cliques.last().map_or(0, |last| last.table.end)];
        for piece in &pieces.pieces {
            let holding = self
                .cliques
                .iter()
                .filter(|one| one.members.holds(&piece.variables));
            // A family is linked throughout, so that a clique holds it.
            if let Some(clique) = holding.min_by_key(|one| one.table.len()) {
                Projection::new(&clique.members.variables, &piece.variables, &self.cards)
                    .spread::<SumProduct>(&piece.table, &mut potentials[clique.table.clone()]);
            }
        }
        potentials
    }
}

impl Clique {
    pub(crate) fn variables(&self) -> &[usize] {
        &self.members.variables
    }

    pub(crate) fn holds(&self, variables: &[usize]) -> bool {
        self.members.holds(variables)
    }

    pub(crate) fn table(&self) -> Range<usize> {
        self.table.clone()
    }

    pub(crate) fn separator(&self) -> Range<usize> {
        self.separator.clone()
    }

    pub(crate) fn separator_variables(&self) -> &[usize] {
        self.members.separator()
    }

    pub(crate) fn parent(&self) -> Option<usize> {
        self.members.parent
    }
}

/// The better of the trees that the greedy rules lead to.
fn smallest_tree(pieces: &Pieces) -> Vec<Members> {
    let families = pieces.pieces.iter().map(|piece| piece.variables.as_slice());
    let graph = Graph::of(pieces.cards.len(), families);
    let trees = Rule::ALL.map(|rule| {
        let order = graph.clone().eliminate(&pieces.cards, rule);
        cliques::tree(&order, &pieces.cards)
    });
    let smallest = trees
        .into_iter()
        .min_by_key(|tree| total(tree, &pieces.cards));
    smallest.unwrap_or_default()
}

fn total(tree: &[Members], cards: &[usize]) -> usize {
    let sizes = tree.iter().map(|one| one.entries(cards));
    sizes.fold(0, usize::saturating_add)
}

fn check_size(
    network: &Network,
    pieces: &Pieces,
    members: &[Members],
    limit: usize,
) -> Result<(), QueryError> {
    let entries = total(members, &pieces.cards);
    if entries <= limit {
        return Ok(());
    }
    let largest = members.iter().max_by_key(|one| one.entries(&pieces.cards));
    let variables = largest.map_or(&[][..], |one| &one.variables).iter();
    Err(QueryError::TooLarge {
        variables: variables
            .map(|&variable| {
                let step = variable.checked_sub(network.len());
                step.map_or_else(
                    || network.nodes()[variable].name.clone(),
                    |step| pieces.step_names[step].clone(),
                )
            })
            .collect(),
        entries,
        limit,
    })
}

/// Gives each clique its stretch of the tables.
fn lay_out(members: &[Members], cards: &[usize]) -> Vec<Clique> {
    let (mut table, mut separator) = (0, 0);
    members
        .iter()
        .map(|one| {
            let entries = one.entries(cards);
            let shared = count(one.separator().iter().map(|&variable| cards[variable]));
            (table, separator) = (table + entries, separator + shared);
            Clique {
                members: one.clone(),
                table: table - entries..table,
                separator: separator - shared..separator,
                from_parent: one.parent.map(|parent| {
                    Projection::new(&members[parent].variables, one.separator(), cards)
                }),
            }
        })
        .collect()
}

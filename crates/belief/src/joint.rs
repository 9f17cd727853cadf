//! Joint distributions of a few variables, wherever in the tree they stand.

use crate::configuration::{count, strides};
use crate::error::QueryError;
use crate::network::Variable;
use crate::tree::algebra::{Algebra, SumProduct};
use crate::tree::projection::Projection;
use crate::tree::{Clique, JunctionTree, Workspace};

/// No table on the way to an answer may have more entries.
const MOST_ENTRIES: usize = 1 << 20;

/// How likely each joint state of some variables is.
///
/// ```
/// # use belief::{Evidence, JunctionTree, Network};
/// # let mut network = Network::new();
/// # let left = network.prior("left", &["off", "on"], &[0.5, 0.5])?;
/// # let right = network.prior("right", &["off", "on"], &[0.5, 0.5])?;
/// # let lit = network.function("lit", &["no", "yes"], &[left, right], |at| at[0] ^ at[1])?;
/// # let tree = JunctionTree::compile(network)?;
/// let mut evidence = Evidence::new();
/// evidence.observe(tree.network(), lit, 1)?;
/// let mut workspace = tree.workspace();
/// let joint = tree.propagate(&evidence, &mut workspace)?.joint(&[left, right])?;
/// assert_eq!(joint.probability(&[0, 1]), Some(0.5));
/// assert_eq!(joint.probability(&[1, 1]), Some(0.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Joint {
    cards: Vec<usize>,
    values: Vec<f64>,
}

impl Joint {
    /// One number per joint state in the order of the question, the last variable's state
    /// changing fastest.
    #[must_use]
    pub fn values(&self) -> &[f64] {
        &self.values
    }

    /// How likely one joint state is; none when there is no such state.
    #[must_use]
    pub fn probability(&self, states: &[usize]) -> Option<f64> {
        let fits = states.len() == self.cards.len()
            && states
                .iter()
                .zip(&self.cards)
                .all(|(state, card)| state < card);
        let strides = strides(&self.cards);
        let place: usize = states
            .iter()
            .zip(strides)
            .map(|(state, stride)| state * stride)
            .sum();
        fits.then(|| self.values[place])
    }
}

/// A table over some variables.
struct Factor {
    variables: Vec<usize>,
    values: Vec<f64>,
}

pub(crate) fn joint(
    tree: &JunctionTree,
    beliefs: &Workspace,
    query: &[Variable],
) -> Result<Joint, QueryError> {
    let query = checked(tree, query)?;
    let answer = match tree.cliques().iter().find(|clique| clique.holds(&query)) {
        Some(clique) => Factor::of_clique(clique, beliefs).sum_to(&query, tree),
        None => across_cliques(tree, beliefs, &query)?,
    };
    let mut values = answer.values;
    SumProduct::normalise(&mut values);
    Ok(Joint {
        cards: query
            .iter()
            .map(|&variable| tree.cards()[variable])
            .collect(),
        values,
    })
}

fn checked(tree: &JunctionTree, query: &[Variable]) -> Result<Vec<usize>, QueryError> {
    let network = tree.network();
    for (place, &variable) in query.iter().enumerate() {
        if network.node(variable).is_none() {
            return Err(QueryError::UnknownVariable);
        }
        if query[..place].contains(&variable) {
            return Err(QueryError::Repeated {
                variable: network.name(variable).to_owned(),
            });
        }
    }
    let query: Vec<_> = query.iter().map(|variable| variable.index()).collect();
    check_size(tree, &query)?;
    Ok(query)
}

fn check_size(tree: &JunctionTree, variables: &[usize]) -> Result<(), QueryError> {
    let entries = count(variables.iter().map(|&variable| tree.cards()[variable]));
    if entries <= MOST_ENTRIES {
        return Ok(());
    }
    let nodes = tree.network().nodes();
    Err(QueryError::TooLarge {
        // Steps inside wide nodes are nothing that anybody could ask about less.
        variables: variables
            .iter()
            .filter_map(|&variable| nodes.get(variable).map(|node| node.name.clone()))
            .collect(),
        entries,
        limit: MOST_ENTRIES,
    })
}

/// Multiplies the cliques between the variables, each given what it shares with its parent, and
/// sums out everything else as early as possible.
fn across_cliques(
    tree: &JunctionTree,
    beliefs: &Workspace,
    query: &[usize],
) -> Result<Factor, QueryError> {
    let cliques = tree.cliques();
    let (needed, top) = between(tree, query);
    // What comes up to each clique from the needed ones below it.
    let mut from_below: Vec<Vec<Factor>> = cliques.iter().map(|_| Vec::new()).collect();
    let mut answer = Factor {
        variables: Vec::new(),
        values: vec![1.0],
    };
    for place in (0..cliques.len()).rev().filter(|&place| needed[place]) {
        let clique = &cliques[place];
        let mut factor = Factor::of_clique(clique, beliefs);
        for below in std::mem::take(&mut from_below[place]) {
            factor = factor.times(&below, tree)?;
        }
        let mut keep: Vec<usize> = query.to_vec();
        keep.retain(|variable| factor.variables.contains(variable));
        match clique.parent().filter(|_| !top[place]) {
            Some(parent) => {
                let shared = clique.separator_variables();
                let above = &beliefs.separators[clique.separator()];
                let given = above
                    .iter()
                    .map(|&chance| SumProduct::ratio(1.0, chance))
                    .collect();
                factor = factor.times(
                    &Factor {
                        variables: shared.to_vec(),
                        values: given,
                    },
                    tree,
                )?;
                keep.extend(shared.iter().filter(|one| !query.contains(one)));
                from_below[parent].push(factor.sum_to(&keep, tree));
            }
            None => answer = answer.times(&factor.sum_to(&keep, tree), tree)?,
        }
    }
    Ok(answer.sum_to(query, tree))
}

/// Which cliques lie between those that hold the variables, and which of them are uppermost.
fn between(tree: &JunctionTree, query: &[usize]) -> (Vec<bool>, Vec<bool>) {
    let cliques = tree.cliques();
    let mut asked = vec![false; cliques.len()];
    for &variable in query {
        asked[tree.home(variable)] = true;
    }
    let mut needed = asked.clone();
    let mut needed_below = vec![0; cliques.len()];
    for place in (0..cliques.len())
        .rev()
        .filter(|&place| cliques[place].parent().is_some())
    {
        if let Some(parent) = cliques[place].parent().filter(|_| needed[place]) {
            needed[parent] = true;
            needed_below[parent] += 1;
        }
    }
    // From each root down to where the ways part.
    let mut top = vec![false; cliques.len()];
    for place in 0..cliques.len() {
        let parent = cliques[place].parent();
        let uppermost = needed[place] && parent.is_none_or(|parent| !needed[parent]);
        if uppermost && !asked[place] && needed_below[place] == 1 {
            needed[place] = false;
        } else {
            top[place] = uppermost;
        }
    }
    (needed, top)
}

impl Factor {
    fn of_clique(clique: &Clique, beliefs: &Workspace) -> Self {
        Self {
            variables: clique.variables().to_vec(),
            values: beliefs.tables[clique.table()].to_vec(),
        }
    }

    fn times(&self, other: &Self, tree: &JunctionTree) -> Result<Self, QueryError> {
        let mut variables = self.variables.clone();
        variables.extend(
            other
                .variables
                .iter()
                .filter(|one| !self.variables.contains(one)),
        );
        check_size(tree, &variables)?;
        let mut values = vec![1.0; count(variables.iter().map(|&one| tree.cards()[one]))];
        for factor in [self, other] {
            Projection::new(&variables, &factor.variables, tree.cards())
                .spread::<SumProduct>(&factor.values, &mut values);
        }
        Ok(Self { variables, values })
    }

    fn sum_to(&self, keep: &[usize], tree: &JunctionTree) -> Self {
        let mut values = vec![0.0; count(keep.iter().map(|&one| tree.cards()[one]))];
        Projection::new(&self.variables, keep, tree.cards())
            .gather::<SumProduct>(&self.values, &mut values);
        Self {
            variables: keep.to_vec(),
            values,
        }
    }
}

//! The model: variables with named states, and how likely each state is given the parents'.
//!
//! A network is legal at every moment. A parent has to be there before its child, so that there
//! can't be a cycle, and every table is checked when it is added.

mod building;
mod law;
mod name;
mod pieces;

pub(crate) use law::Law;
pub(crate) use pieces::{Pieces, Steps, check_whole};

/// A variable of one network. It means nothing in another one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Variable(u32);

impl Variable {
    /// Its place in the order in which variables were added, from zero.
    #[must_use]
    pub fn index(self) -> usize {
        self.0 as usize
    }

    /// Networks are far from 2³² variables: each takes at least a name of its own in memory.
    pub(crate) fn at(index: usize) -> Self {
        Self(u32::try_from(index).unwrap_or(u32::MAX))
    }
}

/// A discrete Bayesian network.
///
/// ```
/// use belief::Network;
///
/// let mut network = Network::new();
/// let rain = network.prior("rain", &["no", "yes"], &[0.8, 0.2])?;
/// let wet = network.table("wet", &["no", "yes"], &[rain], &[[0.9, 0.1], [0.05, 0.95]])?;
/// assert_eq!(network.name(wet), "wet");
/// assert_eq!(network.parents(wet), [rain]);
///
/// // Mistakes name the variable.
/// let error = network.prior("snow", &["no", "yes"], &[0.8, 0.3]).unwrap_err();
/// assert!(error.to_string().starts_with("snow: row 0"));
/// # Ok::<(), belief::BuildError>(())
/// ```
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Network {
    nodes: Vec<Node>,
}

#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Node {
    pub(crate) name: String,
    pub(crate) states: Vec<String>,
    pub(crate) parents: Vec<Variable>,
    pub(crate) law: Law,
}

impl Network {
    /// A network without variables.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Every variable in the order in which it was added.
    pub fn variables(&self) -> impl DoubleEndedIterator<Item = Variable> + use<> {
        (0..self.nodes.len()).map(Variable::at)
    }

    /// How many variables there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.nodes.len()
    }

    /// Whether there is no variable.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.nodes.is_empty()
    }

    /// The variable of this name.
    #[must_use]
    pub fn find(&self, name: &str) -> Option<Variable> {
        let place = self.nodes.iter().position(|node| node.name == name)?;
        Some(Variable::at(place))
    }

    /// The variable's name; empty for a variable of another network.
    #[must_use]
    pub fn name(&self, variable: Variable) -> &str {
        self.node(variable).map_or("", |node| &node.name)
    }

    /// The names of the variable's states; none for a variable of another network.
    #[must_use]
    pub fn states(&self, variable: Variable) -> &[String] {
        self.node(variable).map_or(&[], |node| &node.states)
    }

    /// The number of the state of this name.
    #[must_use]
    pub fn state(&self, variable: Variable, name: &str) -> Option<usize> {
        self.states(variable).iter().position(|state| state == name)
    }

    /// The variable's parents in the order of its table.
    #[must_use]
    pub fn parents(&self, variable: Variable) -> &[Variable] {
        self.node(variable).map_or(&[], |node| &node.parents)
    }

    /// The variable's chances given the numbers of its parents' states; none when the variable or
    /// a state is not there.
    #[must_use]
    pub fn row(&self, variable: Variable, parents: &[usize]) -> Option<Vec<f64>> {
        let node = self.node(variable)?;
        let fits = parents.len() == node.parents.len()
            && parents
                .iter()
                .zip(&node.parents)
                .all(|(&state, &parent)| state < self.card(parent));
        let mut row = vec![0.0; node.states.len()];
        fits.then(|| self.write_row(node, |place| parents[place], &mut row))?;
        Some(row)
    }

    pub(crate) fn node(&self, variable: Variable) -> Option<&Node> {
        self.nodes.get(variable.index())
    }

    pub(crate) fn nodes(&self) -> &[Node] {
        &self.nodes
    }

    pub(crate) fn card(&self, variable: Variable) -> usize {
        self.states(variable).len()
    }

    /// Writes a node's chances given the state of each of its parents, all of which exist.
    pub(crate) fn write_row(
        &self,
        node: &Node,
        state_of_parent: impl Fn(usize) -> usize,
        row: &mut [f64],
    ) {
        let configuration = || {
            node.parents
                .iter()
                .enumerate()
                .fold(0, |at, (place, &parent)| {
                    at * self.card(parent) + state_of_parent(place)
                })
        };
        match &node.law {
            Law::Table(table) => {
                let start = configuration() * row.len();
                row.copy_from_slice(&table[start..start + row.len()]);
            }
            Law::Function(table) => {
                row.fill(0.0);
                row[table[configuration()] as usize] = 1.0;
            }
            Law::Strongest(strongest) => strongest.write_row(state_of_parent, row),
        }
    }
}

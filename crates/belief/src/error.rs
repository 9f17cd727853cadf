//! What can be wrong with a network, with evidence or with a question, and which variable it is
//! about.

use std::fmt;

/// Why a variable can't be added to a network.
#[derive(Debug, Clone, PartialEq)]
pub enum BuildError {
    /// A name of a variable or of a state is not a letter followed by letters, digits and
    /// underscores, or is a word of the exchange format.
    Name {
        /// The variable that was to be added.
        variable: String,
        /// The name that can't be used.
        name: String,
    },
    /// Another variable of the network, or another state of the variable, has the name already.
    Taken {
        /// The variable that was to be added.
        variable: String,
        /// The name that is there twice.
        name: String,
    },
    /// A variable needs at least two states.
    TooFewStates {
        /// The variable that was to be added.
        variable: String,
    },
    /// A parent does not belong to this network.
    UnknownParent {
        /// The variable that was to be added.
        variable: String,
    },
    /// A parent stands twice in the list.
    RepeatedParent {
        /// The variable that was to be added.
        variable: String,
        /// The parent's name.
        parent: String,
    },
    /// There are more combinations of the parents' states than a table may have.
    TooLarge {
        /// The variable that was to be added.
        variable: String,
        /// How many entries the table would have, at most [`usize::MAX`].
        entries: usize,
        /// How many are allowed.
        limit: usize,
    },
    /// A table has too many or too few rows, or a row too many or too few entries.
    Shape {
        /// The variable that was to be added.
        variable: String,
        /// How many there have to be.
        expected: usize,
        /// How many there are.
        found: usize,
    },
    /// A row is no distribution: an entry lies outside 0 to 1 or the entries do not add up to one.
    Row {
        /// The variable that was to be added.
        variable: String,
        /// The row, counted from zero in the order of the parents' states, the last parent's
        /// changing fastest.
        row: usize,
        /// What its entries add up to.
        sum: f64,
    },
    /// A function or an effect names a state that the variable doesn't have.
    UnknownState {
        /// The variable that was to be added.
        variable: String,
        /// The state's number, counted from zero.
        state: usize,
        /// How many states the variable has.
        states: usize,
    },
}

impl fmt::Display for BuildError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Name { variable, name } => write!(
                f,
                "{variable}: the name \"{name}\" can't be used; begin with a letter, go on with letters, digits and underscores, and use no word of the exchange format"
            ),
            Self::Taken { variable, name } => {
                write!(f, "{variable}: the name \"{name}\" is there twice")
            }
            Self::TooFewStates { variable } => {
                write!(f, "{variable}: give it at least two states")
            }
            Self::UnknownParent { variable } => write!(
                f,
                "{variable}: a parent is no variable of this network; add the parent first"
            ),
            Self::RepeatedParent { variable, parent } => {
                write!(f, "{variable}: name the parent {parent} once")
            }
            Self::TooLarge {
                variable,
                entries,
                limit,
            } => write!(
                f,
                "{variable}: its table would have {entries} entries, at most {limit} are allowed; give it fewer parents"
            ),
            Self::Shape {
                variable,
                expected,
                found,
            } => write!(
                f,
                "{variable}: the table needs {expected} entries or rows here and has {found}"
            ),
            Self::Row { variable, row, sum } => write!(
                f,
                "{variable}: row {row} is no distribution; its entries must lie from 0 to 1 and add up to 1, they add up to {sum}"
            ),
            Self::UnknownState {
                variable,
                state,
                states,
            } => write!(
                f,
                "{variable}: it has {states} states, there is none with the number {state}"
            ),
        }
    }
}

impl std::error::Error for BuildError {}

/// Why evidence can't be entered or weighed.
#[derive(Debug, Clone, PartialEq)]
pub enum EvidenceError {
    /// The variable does not belong to the network.
    UnknownVariable,
    /// The variable has no such state.
    UnknownState {
        /// The variable's name.
        variable: String,
        /// The state's number, counted from zero.
        state: usize,
    },
    /// There has to be one weight per state.
    Shape {
        /// The variable's name.
        variable: String,
        /// How many states it has.
        expected: usize,
        /// How many weights were given.
        found: usize,
    },
    /// A weight is negative, infinite or no number, or all of them are zero.
    Weights {
        /// The variable's name.
        variable: String,
    },
    /// Taken together, the evidence has probability zero under the model.
    Impossible {
        /// The variables of findings that can't all be true: without any one of these the
        /// others could be.
        together: Vec<String>,
    },
}

impl fmt::Display for EvidenceError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::UnknownVariable => {
                write!(
                    f,
                    "the evidence is about a variable that this network does not have"
                )
            }
            Self::UnknownState { variable, state } => {
                write!(f, "{variable}: there is no state with the number {state}")
            }
            Self::Shape {
                variable,
                expected,
                found,
            } => write!(
                f,
                "{variable}: give {expected} weights, one per state; there are {found}"
            ),
            Self::Weights { variable } => write!(
                f,
                "{variable}: weights must be numbers from 0 upwards, at least one above 0"
            ),
            Self::Impossible { together } => write!(
                f,
                "{}: what was found can't all be true under this model; take one of these back or allow for mistakes in its table",
                together.join(", ")
            ),
        }
    }
}

impl std::error::Error for EvidenceError {}

/// Why a network can't be compiled or a question can't be answered.
#[derive(Debug, Clone, PartialEq)]
pub enum QueryError {
    /// A variable of the question does not belong to the network.
    UnknownVariable,
    /// A variable stands twice in the question.
    Repeated {
        /// The variable's name.
        variable: String,
    },
    /// The answer or a step to it needs more entries than are allowed.
    TooLarge {
        /// The variables that would have to stand in one table.
        variables: Vec<String>,
        /// How many entries that takes, at most [`usize::MAX`].
        entries: usize,
        /// How many are allowed.
        limit: usize,
    },
    /// Numbers were given for another count of states, actions or sets than there are.
    Shape {
        /// What the numbers are for.
        of: String,
        /// How many there have to be.
        expected: usize,
        /// How many there are.
        found: usize,
    },
    /// A cost is negative, infinite or no number, or chances are no distribution.
    Number {
        /// What the number is for.
        of: String,
    },
}

impl fmt::Display for QueryError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::UnknownVariable => {
                write!(
                    f,
                    "the question is about a variable that this network does not have"
                )
            }
            Self::Repeated { variable } => write!(f, "{variable}: name it once"),
            Self::TooLarge {
                variables,
                entries,
                limit,
            } => write!(
                f,
                "{}: a table of them all would have {entries} entries, at most {limit} are allowed; ask about fewer or split a node with many parents",
                variables.join(", ")
            ),
            Self::Shape {
                of,
                expected,
                found,
            } => write!(f, "{of}: give {expected} numbers; there are {found}"),
            Self::Number { of } => write!(
                f,
                "{of}: costs must be finite and not negative, chances must lie from 0 to 1 and add up to 1"
            ),
        }
    }
}

impl std::error::Error for QueryError {}

/// Why there is no most probable explanation.
#[derive(Debug, Clone, PartialEq)]
pub enum ExplanationError {
    /// The evidence can't be weighed.
    Evidence(EvidenceError),
    /// The tables would be too large.
    Size(QueryError),
}

impl fmt::Display for ExplanationError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Evidence(error) => error.fmt(f),
            Self::Size(error) => error.fmt(f),
        }
    }
}

impl std::error::Error for ExplanationError {}

impl From<EvidenceError> for ExplanationError {
    fn from(error: EvidenceError) -> Self {
        Self::Evidence(error)
    }
}

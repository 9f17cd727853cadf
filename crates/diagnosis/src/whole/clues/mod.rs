//! How likely each answer is under what it is read from: a row in percent per case.
//!
//! Standing of all rows: judgement from trade practice, for a careful beginner. Mild cases are in
//! the conditions, slips are mixed in by [`Assembly::finding`].

mod bench;
mod cabinet;
mod cooling;
mod looks;
mod powered;

use belief::{BuildError, Variable};

use super::assembly::{Assembly, Given, Parent, word};
use super::clue::Clue;
use super::conditions::Conditions;
use super::versions::Found;
use crate::choice::Choice;

/// Each clue's variable, where the build can show it.
#[derive(Debug, Clone)]
pub(super) struct Clues {
    variables: Vec<Option<Variable>>,
}

impl Clues {
    pub(super) fn of(assembly: &mut Assembly, conditions: &Conditions) -> Result<Self, BuildError> {
        let mut table = Table {
            assembly,
            clues: Self {
                variables: vec![None; Clue::ALL.len()],
            },
        };
        looks::add(&mut table, conditions)?;
        bench::add(&mut table, conditions)?;
        powered::add(&mut table, conditions)?;
        cabinet::add(&mut table, conditions)?;
        cooling::add(&mut table, conditions)?;
        Ok(table.clues)
    }

    pub(super) fn variable(&self, clue: Clue) -> Option<Variable> {
        self.variables[clue as usize]
    }

    /// Every clue that there is, in order.
    pub(super) fn all(&self) -> impl Iterator<Item = (Clue, Variable)> {
        let pairs = Clue::ALL.iter().zip(&self.variables);
        pairs.filter_map(|(&clue, variable)| Some((clue, (*variable)?)))
    }
}

/// Where the rows are written.
struct Table<'a> {
    assembly: &'a mut Assembly,
    clues: Clues,
}

impl Table<'_> {
    /// Adds a clue, unless the build can't show it.
    fn add<const N: usize>(
        &mut self,
        clue: Clue,
        parents: &[Parent],
        row: impl Fn(&Given<'_>) -> [f64; N],
    ) -> Result<(), BuildError> {
        self.add_rows(clue, parents, &|given| row(given).to_vec())
    }

    /// The same for rows of any length: one copy of the code serves all clues.
    fn add_rows(
        &mut self,
        clue: Clue,
        parents: &[Parent],
        row: &dyn Fn(&Given<'_>) -> Vec<f64>,
    ) -> Result<(), BuildError> {
        let wanted = self.assembly.versions.is_found(Found::Clue(clue));
        if !clue.exists_in(self.assembly.build) || !wanted {
            return Ok(());
        }
        let name = format!("clue_{}", word(clue.name()));
        let answers: Vec<String> = clue.answers().iter().map(|one| answer_word(one)).collect();
        let answers: Vec<&str> = answers.iter().map(String::as_str).collect();
        let variable = self.assembly.finding(&name, &answers, parents, row)?;
        self.assembly.keep(variable);
        self.clues.variables[clue as usize] = Some(variable);
        Ok(())
    }
}

/// A word of the network begins with a letter.
fn answer_word(name: &str) -> String {
    let word = word(name);
    if word.starts_with(|first: char| first.is_ascii_digit()) {
        format!("from_{word}")
    } else {
        word
    }
}

/// Yes in so many of a hundred cases, for answers of which the second is yes.
const fn yes(percent: f64) -> [f64; 2] {
    [100.0 - percent, percent]
}

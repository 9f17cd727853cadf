//! How a variable's chances follow from its parents' states.

use crate::error::BuildError;

/// Rows that people write miss a sum of one by rounding; more than this is a slip.
const SUM_TOLERANCE: f64 = 1e-9;

#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Law {
    /// One row per joint state of the parents.
    Table(Vec<f64>),
    /// One state per joint state of the parents.
    Function(Vec<u32>),
    /// The worst of what each parent does by itself.
    Strongest(Strongest),
}

impl Law {
    /// Whether the parents' states leave no choice.
    pub(crate) fn is_deterministic(&self) -> bool {
        let certain = |entries: &[f64]| entries.iter().all(|&entry| entry <= 0.0 || entry >= 1.0);
        match self {
            Self::Table(table) => certain(table),
            Self::Function(_) => true,
            Self::Strongest(strongest) => {
                certain(&strongest.leak) && strongest.tables.iter().all(|table| certain(table))
            }
        }
    }

    /// For the worst of causes that leave nothing to chance, with a leak into the best state: the
    /// state that each state of each cause leads to.
    pub(crate) fn effects(&self) -> Option<Vec<Vec<usize>>> {
        let Self::Strongest(Strongest { leak, tables }) = self else {
            return None;
        };
        let only_state = |row: &[f64]| row.iter().position(|&entry| entry > 0.0);
        if !self.is_deterministic() || only_state(leak) != Some(0) {
            return None;
        }
        let effects = |table: &Vec<f64>| table.chunks_exact(leak.len()).map(only_state).collect();
        tables.iter().map(effects).collect()
    }
}

/// The largest of independent influences on an ordered scale: noisy-or for two states, noisy-max
/// for more (Henrion 1989; Díez 1993; from memory), worst-of where nothing is left to chance.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Strongest {
    /// What happens without any of the causes.
    pub(crate) leak: Vec<f64>,
    /// Per cause, one row per state of it.
    pub(crate) tables: Vec<Vec<f64>>,
}

impl Strongest {
    pub(super) fn write_row(&self, state_of_parent: impl Fn(usize) -> usize, row: &mut [f64]) {
        row.copy_from_slice(&self.leak);
        for (place, table) in self.tables.iter().enumerate() {
            let start = state_of_parent(place) * row.len();
            take_larger(row, &table[start..start + row.len()]);
        }
    }
}

/// The distribution of the larger of two independent variables on the same scale, without the
/// cancellation that differences of cumulative products suffer from.
pub(super) fn take_larger(row: &mut [f64], other: &[f64]) {
    let (mut below, mut other_up_to) = (0.0, 0.0);
    for (entry, &chance) in row.iter_mut().zip(other) {
        other_up_to += chance;
        let here = *entry;
        *entry = here * other_up_to + chance * below;
        below += here;
    }
}

/// A row that is a distribution, scaled to a sum of one.
pub(super) fn checked_row(
    name: &str,
    states: usize,
    number: usize,
    row: &[f64],
) -> Result<Vec<f64>, BuildError> {
    super::building::check_shape(name, states, row.len())?;
    let sum: f64 = row.iter().sum();
    // Rows that were computed may round to just above one.
    let each_is_a_chance = row
        .iter()
        .all(|chance| (0.0..=1.0 + SUM_TOLERANCE).contains(chance));
    // Written so that a sum that is no number is refused too.
    let sums_to_one = (sum - 1.0).abs() <= SUM_TOLERANCE;
    if !each_is_a_chance || !sums_to_one {
        return Err(BuildError::Row {
            variable: name.to_owned(),
            row: number,
            sum,
        });
    }
    Ok(row.iter().map(|chance| chance / sum).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_larger_of_two_dice_is_as_counted() {
        let die = [1.0 / 6.0; 6];
        let mut row = die;
        take_larger(&mut row, &die);
        for (place, chance) in row.iter().enumerate() {
            let counted = (2.0 * place as f64 + 1.0) / 36.0;
            assert!((chance - counted).abs() < 1e-15);
        }
    }
}

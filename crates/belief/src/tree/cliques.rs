//! From an order of summing out to a tree of cliques (Blair and Peyton 1993; from memory).

use super::triangulation::Elimination;
use crate::configuration::count;

/// Variables that stand in one table.
#[derive(Debug, Clone)]
pub(super) struct Members {
    /// What the clique shares with its parent comes last; both parts are sorted.
    pub(super) variables: Vec<usize>,
    /// How many of the variables, counted from the end, are shared with the parent.
    pub(super) shared: usize,
    /// A clique earlier in the list; none for a root.
    pub(super) parent: Option<usize>,
}

impl Members {
    pub(super) fn separator(&self) -> &[usize] {
        &self.variables[self.variables.len() - self.shared..]
    }

    pub(super) fn holds(&self, variables: &[usize]) -> bool {
        variables
            .iter()
            .all(|variable| self.variables.contains(variable))
    }

    pub(super) fn entries(&self, cards: &[usize]) -> usize {
        count(self.variables.iter().map(|&variable| cards[variable]))
    }
}

/// The cliques that no other one holds, parents before children.
pub(super) fn tree(order: &[Elimination], cards: &[usize]) -> Vec<Members> {
    let mut place_in_order = vec![0; cards.len()];
    for (place, step) in order.iter().enumerate() {
        place_in_order[step.variable] = place;
    }
    let mut cliques: Vec<Members> = Vec::new();
    let mut clique_of = vec![0; cards.len()];
    for step in order.iter().rev() {
        let earliest = step
            .neighbours
            .iter()
            .min_by_key(|&&one| place_in_order[one]);
        let parent = earliest.map(|&one| clique_of[one]);
        clique_of[step.variable] = match parent {
            Some(clique) if cliques[clique].variables.len() == step.neighbours.len() => {
                cliques[clique].variables.insert(0, step.variable);
                clique
            }
            _ => {
                let mut variables = vec![step.variable];
                variables.extend(&step.neighbours);
                cliques.push(Members {
                    variables,
                    shared: step.neighbours.len(),
                    parent,
                });
                cliques.len() - 1
            }
        };
    }
    for clique in &mut cliques {
        let own = clique.variables.len() - clique.shared;
        clique.variables[..own].sort_unstable();
        clique.variables[own..].sort_unstable();
    }
    hang_on_smallest(&mut cliques, cards);
    cliques
}

/// Hangs each clique on the smallest earlier one that holds what it shares. The tree stays a
/// junction tree, and passes over large tables become rarer.
fn hang_on_smallest(cliques: &mut [Members], cards: &[usize]) {
    for place in 1..cliques.len() {
        let (earlier, rest) = cliques.split_at_mut(place);
        let clique = &mut rest[0];
        if clique.parent.is_some() {
            let holding = (0..place).filter(|&one| earlier[one].holds(clique.separator()));
            clique.parent = holding.min_by_key(|&one| earlier[one].entries(cards));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::triangulation::{Graph, Rule};
    use super::*;

    #[test]
    fn a_chain_has_a_clique_per_link_and_shares_one_variable_each() {
        let families: [&[usize]; 3] = [&[0, 1], &[1, 2], &[2, 3]];
        let cards = [2; 4];
        let order = Graph::of(4, families.into_iter()).eliminate(&cards, Rule::FewestLinks);
        let cliques = tree(&order, &cards);
        assert_eq!(cliques.len(), 3);
        assert_eq!(cliques.iter().filter(|one| one.parent.is_none()).count(), 1);
        assert!(
            cliques
                .iter()
                .all(|one| one.variables.len() == 2 && one.shared <= 1)
        );
    }

    #[test]
    fn what_is_not_connected_has_a_root_of_its_own() {
        let families: [&[usize]; 2] = [&[0, 1], &[2, 3]];
        let cards = [2; 4];
        let order = Graph::of(4, families.into_iter()).eliminate(&cards, Rule::FewestLinks);
        let cliques = tree(&order, &cards);
        assert_eq!(cliques.iter().filter(|one| one.parent.is_none()).count(), 2);
    }
}

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
    from_the_middle(&cliques, cards)
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

/// The same trees with the roots from which the ways are shortest: when something is found of one
/// variable, the tables from its clique up to the root are worked out again.
fn from_the_middle(cliques: &[Members], cards: &[usize]) -> Vec<Members> {
    let mut near = vec![Vec::new(); cliques.len()];
    for (place, clique) in cliques.iter().enumerate() {
        if let Some(parent) = clique.parent {
            near[place].push(parent);
            near[parent].push(place);
        }
    }
    let mut homes = vec![0; cliques.len()];
    for variable in 0..cards.len() {
        let holding = (0..cliques.len()).filter(|&one| cliques[one].variables.contains(&variable));
        if let Some(home) = holding.min_by_key(|&one| cliques[one].entries(cards)) {
            homes[home] += 1;
        }
    }
    // Each table is passed over once and once more for each of its neighbours.
    let effort: Vec<usize> = (0..cliques.len())
        .map(|one| cliques[one].entries(cards) * (1 + near[one].len()))
        .collect();
    let ways = |root: usize| -> usize {
        let mut to_root = vec![0; cliques.len()];
        walk(&near, root)
            .into_iter()
            .map(|(one, parent)| {
                to_root[one] = effort[one] + parent.map_or(0, |parent| to_root[parent]);
                to_root[one] * homes[one]
            })
            .sum()
    };
    let mut turned = Vec::with_capacity(cliques.len());
    let roots = (0..cliques.len()).filter(|&one| cliques[one].parent.is_none());
    for root in roots {
        let together = walk(&near, root).into_iter().map(|(one, _)| one);
        let middle = together.min_by_key(|&one| ways(one)).unwrap_or(root);
        let mut place_of = vec![0; cliques.len()];
        for (one, parent) in walk(&near, middle) {
            place_of[one] = turned.len();
            turned.push(hung(
                &cliques[one],
                parent.map(|parent| (place_of[parent], &cliques[parent])),
            ));
        }
    }
    turned
}

/// Every clique that can be reached, with the one that it is reached from, which comes before.
fn walk(near: &[Vec<usize>], root: usize) -> Vec<(usize, Option<usize>)> {
    let mut order = vec![(root, None)];
    let mut place = 0;
    while let Some(&(one, from)) = order.get(place) {
        let others = near[one].iter().filter(|other| Some(**other) != from);
        order.extend(others.map(|&other| (other, Some(one))));
        place += 1;
    }
    order
}

/// The clique with what it shares with its parent last.
fn hung(clique: &Members, parent: Option<(usize, &Members)>) -> Members {
    let is_shared =
        |variable: &usize| parent.is_some_and(|(_, parent)| parent.variables.contains(variable));
    let (mut shared, mut variables): (Vec<usize>, Vec<usize>) =
        clique.variables.iter().copied().partition(is_shared);
    shared.sort_unstable();
    variables.sort_unstable();
    variables.extend(&shared);
    Members {
        variables,
        shared: shared.len(),
        parent: parent.map(|(place, _)| place),
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
    fn a_chain_is_hung_up_in_its_middle_and_stays_a_junction_tree() {
        let families: Vec<[usize; 2]> = (0..8).map(|place| [place, place + 1]).collect();
        let cards = [2; 9];
        let families = families.iter().map(<[usize; 2]>::as_slice);
        let order = Graph::of(9, families).eliminate(&cards, Rule::FewestLinks);
        let cliques = tree(&order, &cards);
        let depth = |mut one: usize| {
            let mut depth = 0;
            while let Some(parent) = cliques[one].parent {
                assert!(parent < one);
                assert!(cliques[parent].holds(cliques[one].separator()));
                (one, depth) = (parent, depth + 1);
            }
            depth
        };
        assert_eq!(cliques.len(), 8);
        assert!((0..8).map(depth).max() <= Some(4));
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

//! In which order variables are summed out.
//!
//! Finding the best order is NP-hard (Arnborg, Corneil and Proskurowski 1987; from memory). Two
//! greedy rules are tried, and the tree with fewer table entries is kept: fewest links to add
//! first with the smaller table deciding between equals, and the smallest table first with fewer
//! links deciding. What is still equal goes in the order in which variables were added.

/// What a greedy rule looks at first.
#[derive(Debug, Clone, Copy)]
pub(super) enum Rule {
    FewestLinks,
    SmallestTable,
}

impl Rule {
    pub(super) const ALL: [Self; 2] = [Self::FewestLinks, Self::SmallestTable];
}

/// One variable with those it was linked to when it was summed out.
#[derive(Debug)]
pub(super) struct Elimination {
    pub(super) variable: usize,
    pub(super) neighbours: Vec<usize>,
}

/// Which variables stand in a table together; one bit per pair.
#[derive(Debug, Clone)]
pub(super) struct Graph {
    rows: Vec<Vec<u64>>,
}

impl Graph {
    /// Links all variables of each family to each other.
    pub(super) fn of<'a>(variables: usize, families: impl Iterator<Item = &'a [usize]>) -> Self {
        let mut graph = Self {
            rows: vec![vec![0; variables.div_ceil(64)]; variables],
        };
        for family in families {
            graph.link_all(family);
        }
        graph
    }

    /// Sums out every variable by a rule.
    pub(super) fn eliminate(mut self, cards: &[usize], rule: Rule) -> Vec<Elimination> {
        let mut left: Vec<usize> = (0..cards.len()).collect();
        let mut order = Vec::with_capacity(cards.len());
        while let Some(place) = self.best(&left, cards, rule) {
            let variable = left.remove(place);
            let neighbours = self.neighbours(variable);
            self.link_all(&neighbours);
            for &neighbour in &neighbours {
                self.rows[neighbour][variable / 64] &= !(1 << (variable % 64));
            }
            order.push(Elimination {
                variable,
                neighbours,
            });
        }
        order
    }

    fn best(&self, left: &[usize], cards: &[usize], rule: Rule) -> Option<usize> {
        let mut best: Option<(usize, (f64, f64))> = None;
        for (place, &variable) in left.iter().enumerate() {
            let neighbours = self.neighbours(variable);
            let links = self.missing_links(variable, &neighbours) as f64;
            let own = cards[variable] as f64;
            let table = neighbours
                .iter()
                .fold(own, |product, &one| product * cards[one] as f64);
            let cost = match rule {
                Rule::FewestLinks => (links, table),
                Rule::SmallestTable => (table, links),
            };
            if best.is_none_or(|(_, least)| cost < least) {
                best = Some((place, cost));
            }
        }
        best.map(|(place, _)| place)
    }

    fn neighbours(&self, variable: usize) -> Vec<usize> {
        let mut found = Vec::new();
        for (word, &bits) in self.rows[variable].iter().enumerate() {
            let mut bits = bits;
            while bits != 0 {
                found.push(word * 64 + bits.trailing_zeros() as usize);
                bits &= bits - 1;
            }
        }
        found
    }

    /// Twice the number of pairs of neighbours that are not linked.
    fn missing_links(&self, variable: usize, neighbours: &[usize]) -> usize {
        let row = &self.rows[variable];
        neighbours
            .iter()
            .map(|&neighbour| {
                let pairs = row.iter().zip(&self.rows[neighbour]);
                let shared: u32 = pairs.map(|(a, b)| (a & b).count_ones()).sum();
                neighbours.len() - 1 - shared as usize
            })
            .sum()
    }

    fn link_all(&mut self, family: &[usize]) {
        for &one in family {
            for &other in family {
                if one != other {
                    self.rows[one][other / 64] |= 1 << (other % 64);
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cycle_of_four_gets_one_chord() {
        let families: [&[usize]; 4] = [&[0, 1], &[1, 2], &[2, 3], &[3, 0]];
        for rule in Rule::ALL {
            let order = Graph::of(4, families.into_iter()).eliminate(&[2; 4], rule);
            let sizes: Vec<_> = order.iter().map(|step| step.neighbours.len()).collect();
            assert_eq!(sizes, [2, 2, 1, 0], "{rule:?}");
            assert_eq!(order[0].variable, 0);
        }
    }

    #[test]
    fn between_equal_numbers_of_links_the_smaller_table_goes_first() {
        let families: [&[usize]; 1] = [&[0, 1]];
        let order = Graph::of(3, families.into_iter()).eliminate(&[5, 5, 2], Rule::FewestLinks);
        assert_eq!(order[0].variable, 2);
    }
}

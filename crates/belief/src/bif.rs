//! The network in the interchange format that other programs read, so that they can check it.
//!
//! Numbers are written so that they read back exactly. The format has no evidence. A finding that
//! leaves one state becomes a comment; one that weighs states becomes a child that was seen, with
//! the weights, scaled to at most one, as its chances. Wide nodes are written as the steps that
//! the tree is made of, which is the same distribution.

use crate::evidence::{Evidence, Finding, largest};
use crate::network::{Network, Pieces, Steps};
use std::fmt::Write;

/// A network with evidence as text.
#[derive(Debug, Clone, PartialEq)]
pub struct Exported {
    /// The network in Bayesian network interchange format, version 0.15.
    pub text: String,
    /// Names of variables, those that stand for weights among them, and of the states they were
    /// seen in.
    pub observed: Vec<(String, String)>,
    /// Add this to the natural logarithm of the probability of what was observed to get that of
    /// the evidence as it was given.
    pub ln_scale: f64,
}

/// Exports a network with evidence. Findings about variables of another network are left out.
///
/// ```
/// use belief::{Evidence, Network, export_bif};
///
/// let mut network = Network::new();
/// let fan = network.prior("fan", &["sound", "stuck"], &[0.9, 0.1])?;
/// let mut evidence = Evidence::new();
/// evidence.weigh(&network, fan, &[1.0, 4.0])?;
/// let exported = export_bif("cabinet", &network, &evidence);
/// assert!(exported.text.contains("table 0.9, 0.1;"));
/// assert_eq!(exported.observed, [("weight_of_fan_1".to_owned(), "seen".to_owned())]);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn export_bif(title: &str, network: &Network, evidence: &Evidence) -> Exported {
    let (variables, tables) = plain_tables(network);
    let mut writer = Writer {
        network,
        variables,
        tables,
    };
    let mut observed = Vec::new();
    let mut ln_scale = 0.0;
    for (place, finding) in evidence.findings().iter().enumerate() {
        let Some(node) = network.node(finding.variable()) else {
            continue;
        };
        if let Some(state) = finding.only_state() {
            observed.push((node.name.clone(), node.states[state].clone()));
            ln_scale += finding.ln_weights()[state];
        } else {
            ln_scale += largest(finding.ln_weights());
            observed.push((writer.push_weight(finding, place + 1), "seen".to_owned()));
        }
    }
    Exported {
        text: writer.text(title, &observed),
        observed,
        ln_scale,
    }
}

type Described = (String, Vec<String>);

struct Table {
    parents: Vec<usize>,
    variable: usize,
    values: Vec<f64>,
}

struct Writer<'a> {
    network: &'a Network,
    variables: Vec<Described>,
    tables: Vec<Table>,
}

/// The network's own variables and the steps inside wide nodes.
fn plain_tables(network: &Network) -> (Vec<Described>, Vec<Table>) {
    let pieces = Pieces::of(network, Steps::Wherever);
    let own = network.nodes().iter();
    let mut variables: Vec<_> = own
        .map(|node| (node.name.clone(), node.states.clone()))
        .collect();
    let step_cards = &pieces.cards[network.len()..];
    variables.extend(
        pieces
            .step_names
            .into_iter()
            .zip(step_cards)
            .map(|(name, &card)| (name, (0..card).map(|state| format!("s{state}")).collect())),
    );
    let tables = pieces.pieces.into_iter().filter_map(|piece| {
        let (&variable, parents) = piece.variables.split_last()?;
        Some(Table {
            parents: parents.to_vec(),
            variable,
            values: piece.table,
        })
    });
    (variables, tables.collect())
}

impl Writer<'_> {
    /// Adds a child that was seen; returns its name.
    fn push_weight(&mut self, finding: &Finding, number: usize) -> String {
        let parent = finding.variable().index();
        let mut name = format!("weight_of_{}_{number}", self.variables[parent].0);
        while self.network.find(&name).is_some() {
            name.push('_');
        }
        let top = largest(finding.ln_weights());
        let values = finding.ln_weights().iter().flat_map(|ln| {
            let weight = libm::exp(ln - top);
            [weight, 1.0 - weight]
        });
        self.tables.push(Table {
            parents: vec![parent],
            variable: self.variables.len(),
            values: values.collect(),
        });
        let states = vec!["seen".to_owned(), "not_seen".to_owned()];
        self.variables.push((name.clone(), states));
        name
    }

    fn text(&self, title: &str, observed: &[(String, String)]) -> String {
        let mut text = String::new();
        // Writing to a string can't fail, so that results are dropped throughout.
        let _ = writeln!(text, "network {} {{\n}}", one_word(title));
        for (name, state) in observed {
            let _ = writeln!(text, "// observed: {name} = {state}");
        }
        for (name, states) in &self.variables {
            let _ = writeln!(
                text,
                "variable {name} {{\n  type discrete [ {} ] {{ {} }};\n}}",
                states.len(),
                states.join(", ")
            );
        }
        for table in &self.tables {
            self.write_table(&mut text, table);
        }
        text
    }

    fn write_table(&self, text: &mut String, table: &Table) {
        let (name, states) = &self.variables[table.variable];
        if table.parents.is_empty() {
            let row = numbers(&table.values);
            let _ = writeln!(text, "probability ( {name} ) {{\n  table {row};\n}}");
            return;
        }
        let parents: Vec<_> = table
            .parents
            .iter()
            .map(|&one| &self.variables[one])
            .collect();
        let names: Vec<_> = parents.iter().map(|(name, _)| name.as_str()).collect();
        let _ = writeln!(text, "probability ( {name} | {} ) {{", names.join(", "));
        for (place, row) in table.values.chunks_exact(states.len()).enumerate() {
            let mut rest = place;
            let mut given: Vec<&str> = Vec::with_capacity(parents.len());
            for (_, states) in parents.iter().rev() {
                given.push(&states[rest % states.len()]);
                rest /= states.len();
            }
            given.reverse();
            let _ = writeln!(text, "  ({}) {};", given.join(", "), numbers(row));
        }
        text.push_str("}\n");
    }
}

/// The shortest numbers that read back as the same ones.
fn numbers(row: &[f64]) -> String {
    let words: Vec<_> = row
        .iter()
        .map(|&chance| {
            if chance <= 0.0 || chance >= 1e-5 {
                format!("{chance}")
            } else {
                format!("{chance:e}")
            }
        })
        .collect();
    words.join(", ")
}

/// A title in the letters that every reader takes.
fn one_word(title: &str) -> String {
    let letters = title.chars().map(|one| {
        if one.is_ascii_alphanumeric() {
            one
        } else {
            '_'
        }
    });
    let word: String = letters.collect();
    if word.is_empty() {
        "network_".to_owned()
    } else {
        word
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_read_back_as_the_same_bits() {
        let row = [
            0.1 + 0.2,
            1.0 / 3.0,
            1e-300,
            5e-324,
            0.0,
            1.0,
            1e-5,
            9.999e-6,
        ];
        let read: Vec<f64> = numbers(&row)
            .split(", ")
            .map(|word| word.parse().unwrap())
            .collect();
        let bits = |row: &[f64]| row.iter().map(|one| one.to_bits()).collect::<Vec<_>>();
        assert_eq!(bits(&read), bits(&row));
    }

    #[test]
    fn made_up_names_step_aside_for_those_of_the_network() {
        let mut network = Network::new();
        let fan = network
            .prior("fan", &["sound", "stuck"], &[0.9, 0.1])
            .unwrap();
        network
            .prior("weight_of_fan_1", &["a", "b"], &[0.5, 0.5])
            .unwrap();
        let mut evidence = Evidence::new();
        evidence.weigh(&network, fan, &[0.5, 0.25]).unwrap();
        let exported = export_bif("a b", &network, &evidence);
        assert_eq!(exported.observed[0].0, "weight_of_fan_1_");
        assert!(exported.text.starts_with("network a_b {"));
        assert!(exported.text.contains("(stuck) 0.5, 0.5;"));
        assert!((exported.ln_scale - libm::log(0.5)).abs() < 1e-15);
    }
}

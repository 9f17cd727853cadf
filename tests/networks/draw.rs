//! One set of evidence, as a machine drawn from its network would give it.

use belief::{Network, Variable};

use crate::motors::Random;

/// The variable that says with what words a machine was offered; its first state is `as faulty`.
const OFFERED: &str = "offered";
/// Clues begin so.
const CLUE: &str = "clue_";
/// How many variables are seen at most, besides that the machine was offered.
const MOST_SEEN: f64 = 24.0;
/// How often a finding is about a clue; otherwise it is about any variable.
const ABOUT_A_CLUE: f64 = 0.75;
/// How often a finding leaves one state only.
const HARD: f64 = 0.5;
/// How often a finding that weighs states rules one out.
const RULED_OUT: f64 = 0.1;

/// What was found of one machine.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawn {
    /// Variables with the weight of each state; one state only has a weight where it was seen.
    pub findings: Vec<(Variable, Vec<f64>)>,
}

impl Drawn {
    /// How many findings leave more than one state.
    #[must_use]
    pub fn weighed(&self) -> usize {
        let more = |weights: &[f64]| weights.iter().filter(|weight| **weight > 0.0).count() > 1;
        let findings = self.findings.iter();
        findings.filter(|(_, weights)| more(weights)).count()
    }
}

/// Draws a machine that was offered as faulty and some findings about it. `None` where the
/// network knows no offer, or its tables don't fit each other.
pub fn draw(network: &Network, random: &mut Random) -> Option<Drawn> {
    let offered = network.find(OFFERED)?;
    // Machines that would not have been offered are drawn again, as a person never sees them.
    let states = std::iter::repeat_with(|| machine(network, random))
        .find(|states| states.as_ref().is_none_or(|all| all[offered.index()] == 0))??;
    let mut findings = vec![(offered, only(network, offered, 0))];
    let (mut clues, mut all) = (Vec::new(), Vec::new());
    for variable in network.variables().filter(|one| *one != offered) {
        all.push(variable);
        if network.name(variable).starts_with(CLUE) {
            clues.push(variable);
        }
    }
    for _ in 0..1 + random.uniform(0.0, MOST_SEEN) as usize {
        let from = if random.chance(ABOUT_A_CLUE) {
            &clues
        } else {
            &all
        };
        let variable = from[(random.unit() * from.len() as f64) as usize];
        let state = states[variable.index()];
        let weights = if random.chance(HARD) {
            only(network, variable, state)
        } else {
            around(network, variable, state, random)
        };
        findings.push((variable, weights));
    }
    Some(Drawn { findings })
}

/// The state of every variable, causes first.
pub(crate) fn machine(network: &Network, random: &mut Random) -> Option<Vec<usize>> {
    let mut states: Vec<usize> = Vec::with_capacity(network.len());
    for variable in network.variables() {
        let parents = network.parents(variable).iter();
        let given: Vec<usize> = parents.map(|parent| states[parent.index()]).collect();
        let row = network.row(variable, &given)?;
        let mut left = random.unit();
        let last = row.iter().rposition(|chance| *chance > 0.0)?;
        let state = row.iter().position(|chance| {
            left -= chance;
            left < 0.0
        });
        // Rounding may leave a crumb beyond the last state.
        states.push(state.unwrap_or(last));
    }
    Some(states)
}

fn only(network: &Network, variable: Variable, state: usize) -> Vec<f64> {
    let states = 0..network.states(variable).len();
    states
        .map(|one| f64::from(u8::from(one == state)))
        .collect()
}

/// A doubtful reading: the true state has the weight one, the others up to four times as much and
/// down to a hundredth; now and then one is ruled out.
fn around(network: &Network, variable: Variable, state: usize, random: &mut Random) -> Vec<f64> {
    let states = 0..network.states(variable).len();
    let weight = |one| match one {
        one if one == state => 1.0,
        _ if random.chance(RULED_OUT) => 0.0,
        _ => random.log_uniform(0.01, 4.0),
    };
    states.map(weight).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_drawn_can_be_true_and_follows_the_tables() {
        let mut network = Network::new();
        let fan = network.prior("fan", &["sound", "stuck"], &[0.5, 0.5]);
        let fan = fan.expect("adds up");
        let rows = [[0.9, 0.1], [0.2, 0.8]];
        let clue = network.table("clue_air", &["strong", "none"], &[fan], &rows);
        let rows = [[0.1, 0.9], [1.0, 0.0]];
        let offered = network.table("offered", &["as_faulty", "as_sound"], &[fan], &rows);
        let (clue, _) = (clue.expect("adds up"), offered.expect("adds up"));
        let mut random = Random::seeded(1);
        let (mut stuck, mut silent) = (0, 0);
        for _ in 0..2_000 {
            let states = machine(&network, &mut random).expect("the tables fit");
            if states[fan.index()] == 1 {
                stuck += 1;
                silent += states[clue.index()];
            }
            assert!(draw(&network, &mut random).is_some());
        }
        assert!((900..1_100).contains(&stuck), "{stuck}");
        assert!((silent as f64 / f64::from(stuck) - 0.8).abs() < 0.05);
    }
}

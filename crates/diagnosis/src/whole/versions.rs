//! The same machine at several times: what a change copies and what it shares.
//!
//! A period is the time between two changes. Only what can differ has a version of its own: the
//! changed part and what follows from it. A condition that a changed part bears on is the worst
//! of what all parts that never change make of it, summed up once for all periods, and of what
//! the changed ones make of it, each time anew.
//!
//! A network with changes holds what evidence hangs on and nothing else: it answers how likely
//! each fault is now, exactly. Nothing in the tables passes with time by itself (pressures that
//! level, a start device that cools are answers to how long it rested), so that there is nothing
//! of that sort to copy.

use belief::{BuildError, Network, Variable};

use super::assembly::{Assembly, PartVariable};
use super::change::{Change, Effect, HARMED};
use super::clue::Clue;

/// What a network has to span: the changes that begin each later period, and what was found in
/// each period. Without changes a network shows everything that can be found.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Plan {
    pub(super) steps: Vec<Vec<Change>>,
    pub(super) found: Vec<(usize, Found)>,
    /// What was known before the first period comes as likelihoods of each part, how the machine
    /// was offered among it.
    pub(super) carried: bool,
}

/// What evidence of a period hangs on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Found {
    Clue(Clue),
    Motor,
    Trouble,
}

/// How likely ice is gone after a thaw, for as long as people look again, whatever let it grow;
/// and how likely it is there after all.
const AFTER_A_THAW: [[f64; 2]; 2] = [[0.99, 0.01], [0.8, 0.2]];

/// What was built so far, and what of it is needed.
#[derive(Default)]
pub(super) struct Versions {
    pub(super) plan: Plan,
    pub(super) period: usize,
    made: Vec<Made>,
    /// What has, or will have, another version.
    varying: Vec<Variable>,
    /// What somebody asks about.
    roots: Vec<Variable>,
    /// What is worth building; everything while that isn't known.
    kept: Option<Vec<String>>,
    /// Stands in for what isn't.
    left_out: Option<Variable>,
    pub(super) offered: Option<Variable>,
}

struct Made {
    name: String,
    parents: Vec<Variable>,
    variable: Variable,
}

impl Versions {
    pub(super) fn new(plan: &Plan, kept: Option<Vec<String>>) -> Self {
        Self {
            plan: plan.clone(),
            kept,
            ..Self::default()
        }
    }

    pub(super) fn varies(&self, variable: Variable) -> bool {
        self.varying.contains(&variable)
    }

    /// Changes made up to this period, or at any time.
    fn changes(&self, periods: usize) -> impl Iterator<Item = Change> {
        self.plan.steps.iter().take(periods).flatten().copied()
    }

    /// Whether evidence of this period hangs on something. One machine all along can show
    /// everything.
    pub(super) fn is_found(&self, found: Found) -> bool {
        self.plan.steps.is_empty() || self.plan.found.contains(&(self.period, found))
    }

    /// Names of everything that what is asked about follows from.
    pub(super) fn needed(&self, network: &Network) -> Vec<String> {
        let mut open = self.roots.clone();
        let mut needed = vec![false; network.len()];
        while let Some(variable) = open.pop() {
            if !std::mem::replace(&mut needed[variable.index()], true) {
                open.extend(network.parents(variable));
            }
        }
        network
            .variables()
            .filter(|variable| needed[variable.index()])
            .map(|variable| network.name(variable).to_owned())
            .collect()
    }
}

impl Assembly {
    /// Adds a variable, unless the same one with the same parents is there from an earlier
    /// period. What nobody asks about isn't built, nor what follows from it; one variable that
    /// says nothing stands in for all of that.
    pub(super) fn add(
        &mut self,
        name: &str,
        parents: &[Variable],
        make: &dyn Fn(&mut Network, &str) -> Result<Variable, BuildError>,
    ) -> Result<Variable, BuildError> {
        let versions = &mut self.versions;
        if versions.plan.steps.is_empty() {
            return make(&mut self.network, name);
        }
        let mut same_name = versions.made.iter().filter(|made| made.name == name);
        let known = same_name.clone().find(|made| made.parents == parents);
        let variable = match known {
            Some(known) => known.variable,
            None => {
                let full = match same_name.next() {
                    Some(_) => format!("{name}_since_{}", versions.period),
                    None => name.to_owned(),
                };
                let kept = versions.kept.as_ref();
                let variable = if kept.is_none_or(|kept| kept.contains(&full)) {
                    make(&mut self.network, &full)?
                } else {
                    match versions.left_out {
                        Some(variable) => variable,
                        None => {
                            let states = ["one", "other"];
                            let variable = self.network.prior("left_out", &states, &[0.5, 0.5])?;
                            *versions.left_out.insert(variable)
                        }
                    }
                };
                if parents.iter().any(|parent| versions.varies(*parent)) {
                    versions.varying.push(variable);
                }
                versions.made.push(Made {
                    name: name.to_owned(),
                    parents: parents.to_vec(),
                    variable,
                });
                variable
            }
        };
        Ok(variable)
    }

    /// Keeps a variable that is asked about.
    pub(super) fn keep(&mut self, variable: Variable) {
        self.versions.roots.push(variable);
    }

    /// Notes how it is offered: asked about unless that is known by other ways.
    pub(super) fn offer(&mut self, offered: Variable) {
        self.versions.offered = Some(offered);
        if !self.versions.plan.carried {
            self.keep(offered);
        }
    }

    /// What is as bad as the worst of some influences: rows per state of each cause.
    pub(super) fn worst(
        &mut self,
        name: &str,
        states: &[&str],
        leak: &[f64],
        influences: Vec<(Variable, Vec<Vec<f64>>)>,
    ) -> Result<Variable, BuildError> {
        let (varying, fixed): (Vec<_>, Vec<_>) = influences
            .into_iter()
            .partition(|(cause, _)| self.versions.varies(*cause));
        if varying.is_empty() {
            return self.add_worst(name, states, leak, &fixed);
        }
        let itself: Vec<Vec<f64>> = (0..states.len())
            .map(|state| one_hot(states.len(), state))
            .collect();
        let rest = self.add_worst(&format!("{name}_rest"), states, leak, &fixed)?;
        let mut all = vec![(rest, itself)];
        all.extend(varying);
        self.add_worst(name, states, &one_hot(states.len(), 0), &all)
    }

    fn add_worst(
        &mut self,
        name: &str,
        states: &[&str],
        leak: &[f64],
        influences: &[(Variable, Vec<Vec<f64>>)],
    ) -> Result<Variable, BuildError> {
        let parents: Vec<Variable> = influences.iter().map(|(cause, _)| *cause).collect();
        self.add(name, &parents, &|network, name| {
            if influences.is_empty() {
                network.prior(name, states, leak)
            } else {
                network.noisy_worst(name, states, influences, leak)
            }
        })
    }

    /// What is as bad as the worst that any cause certainly makes it.
    pub(super) fn worst_of(
        &mut self,
        name: &str,
        states: &[&str],
        causes: &[(Variable, &[usize])],
    ) -> Result<Variable, BuildError> {
        let influences = causes.iter().map(|(cause, effects)| {
            let rows = effects.iter().map(|state| one_hot(states.len(), *state));
            (*cause, rows.collect())
        });
        self.worst(
            name,
            states,
            &one_hot(states.len(), 0),
            influences.collect(),
        )
    }

    /// What follows for certain.
    pub(super) fn function(
        &mut self,
        name: &str,
        states: &[&str],
        parents: &[Variable],
        state: &dyn Fn(&[usize]) -> usize,
    ) -> Result<Variable, BuildError> {
        self.add(name, parents, &|network, name| {
            network.function(name, states, parents, state)
        })
    }

    /// Ice, once it was thawed.
    pub(super) fn thawed(&mut self, ice: Variable) -> Result<Variable, BuildError> {
        let thaws = |mut changes: Box<dyn Iterator<Item = Change> + '_>| {
            changes.any(|change| change == Change::Frost)
        };
        let versions = &self.versions;
        if !thaws(Box::new(versions.changes(usize::MAX))) {
            return Ok(ice);
        }
        let since = thaws(Box::new(versions.changes(versions.period)));
        self.versions.varying.push(ice);
        if !since {
            return Ok(ice);
        }
        self.add("ice_after_thaw", &[ice], &|network, name| {
            network.table(name, &["clear", "iced"], &[ice], &AFTER_A_THAW)
        })
    }

    /// Notes which parts will change. Before the first condition is added.
    pub(super) fn mark_changing(&mut self) {
        let changes: Vec<Change> = self.versions.changes(usize::MAX).collect();
        for (part, _) in changes.iter().flat_map(|change| change.effects()) {
            if let Some(known) = self.part(*part) {
                let variable = known.variable;
                self.versions.varying.push(variable);
            }
        }
    }

    /// Goes on to the next period: each part that was changed has a new version.
    pub(super) fn change(&mut self) -> Result<(), BuildError> {
        let changes = self.versions.plan.steps[self.versions.period].clone();
        self.versions.period += 1;
        for (part, effect) in changes.iter().flat_map(|change| change.effects()) {
            let Some(known) = self.part(*part).cloned() else {
                continue;
            };
            let variable = self.changed(&known, *effect)?;
            self.versions.varying.push(variable);
            let faults = known.faults;
            self.set_part(*part, PartVariable { variable, faults });
        }
        Ok(())
    }

    fn changed(&mut self, old: &PartVariable, effect: Effect) -> Result<Variable, BuildError> {
        let old = old.variable;
        let mut first = old;
        while let Some(before) = self.network.parents(first).first() {
            first = *before;
        }
        // What goes wrong with a new one is spread as with old ones.
        let odds = self.network.row(first, &[]).unwrap_or_default();
        let bad = |share: f64| {
            let faulty = 1.0 - odds[0];
            let faults = odds.iter().map(|one| share * one / faulty);
            let mut row: Vec<f64> = faults.collect();
            row[0] = 1.0 - share;
            row
        };
        let (parents, rows) = match effect {
            Effect::Replaced(share) => (vec![], vec![bad(share)]),
            Effect::Mended(cured) => {
                let stays = (1..odds.len()).map(|fault| {
                    let mut row = vec![0.0; odds.len()];
                    row[0] = cured;
                    row[fault] = 1.0 - cured;
                    row
                });
                (
                    vec![old],
                    std::iter::once(bad(HARMED)).chain(stays).collect(),
                )
            }
        };
        let states = self.network.states(first).to_vec();
        let states: Vec<&str> = states.iter().map(String::as_str).collect();
        let mut name = format!(
            "{}_since_{}",
            self.network.name(first),
            self.versions.period
        );
        while self.network.find(&name).is_some() {
            name.push_str("_again");
        }
        self.network.table(&name, &states, &parents, &rows)
    }
}

fn one_hot(length: usize, state: usize) -> Vec<f64> {
    let mut row = vec![0.0; length];
    if let Some(entry) = row.get_mut(state) {
        *entry = 1.0;
    }
    row
}

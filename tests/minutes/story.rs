//! A worked case as a machine that answers every check.

use belief::Evidence;
use coldcase_tests::motors::Random;
use diagnosis::{Assumptions, Build, Choice, Clue, Fault, Part, Task};
use job::Content;
use practice::Examined;
use serde_json::Value;

use super::bench;
use crate::told;

const CASES: &str = include_str!("../cases/machines.json");
/// What the machine's answers are drawn by, together with the place of the case.
const SEED: u64 = 7;

/// One machine.
pub(crate) struct Story {
    /// What is wrong with it; nothing where nothing is.
    pub(crate) faults: Vec<Fault>,
    told: Vec<String>,
    /// By clue, the answer that the machine gives where the story doesn't say.
    drawn: Vec<Option<usize>>,
}

/// The worked cases of which it is told what is wrong.
pub(crate) fn stories(assumptions: &Assumptions) -> Vec<Story> {
    let cases: Value = serde_json::from_str(CASES).unwrap();
    let cases = cases.as_array().unwrap().iter().enumerate();
    cases
        .filter_map(|(place, case)| {
            let told = case["told"].as_array().unwrap().iter();
            let told: Vec<String> = told.map(|line| line.as_str().unwrap().to_owned()).collect();
            let faults = faults(case)?;
            let mut random = Random::seeded(SEED + 1_000 * place as u64);
            Some(Story {
                drawn: draw(assumptions, &told, &faults, &mut random),
                faults,
                told,
            })
        })
        .collect()
}

/// What is wrong: the faults that the case wants to see raised, or the one on top, or the ones
/// that it calls likely. `None` where it says nothing of that.
fn faults(case: &Value) -> Option<Vec<Fault>> {
    if case["nothing wrong"].is_number() {
        return Some(Vec::new());
    }
    let keys = |key: &str| -> Vec<Fault> {
        let named = case[key].as_object().into_iter().flatten();
        named
            .filter_map(|(name, _)| Fault::from_name(name))
            .collect()
    };
    let top = case["top"].as_str().and_then(Fault::from_name);
    [keys("raised"), top.into_iter().collect(), keys("likely")]
        .into_iter()
        .find(|faults| !faults.is_empty())
}

/// An answer to every clue that the network has, each in the light of those before.
fn draw(
    assumptions: &Assumptions,
    told: &[String],
    faults: &[Fault],
    random: &mut Random,
) -> Vec<Option<usize>> {
    // The build that the whole story speaks for, where it doesn't say.
    let lines: Vec<&str> = told.iter().map(String::as_str).collect();
    let odds = told::assessed(&lines).whole.unwrap().builds;
    let builds = Build::ALL.iter().zip(odds);
    let (build, _) = builds
        .max_by(|one, other| one.1.total_cmp(&other.1))
        .unwrap();
    let tree = assumptions.tree(*build).unwrap();
    let network = tree.network();
    let word = |name: &str| name.replace('-', "_");
    let mut evidence = Evidence::new();
    for part in Part::ALL {
        let Some(variable) = network.find(&word(part.name())) else {
            continue;
        };
        let fault = faults.iter().find(|fault| fault.part() == *part);
        let state = fault.and_then(|fault| network.state(variable, &word(fault.name())));
        evidence
            .observe(network, variable, state.unwrap_or(0))
            .unwrap();
    }
    let variable = |clue: Clue| network.find(&format!("clue_{}", word(clue.name())));
    for &clue in Clue::ALL {
        let said = told.iter().find_map(|line| {
            let answer = line.strip_prefix(clue.name())?.strip_prefix(": ")?;
            clue.answer(answer)
        });
        if let (Some(state), Some(variable)) = (said, variable(clue)) {
            evidence.observe(network, variable, state).unwrap();
        }
    }
    let mut workspace = tree.workspace();
    let mut answers = Vec::new();
    for &clue in Clue::ALL {
        let Some(variable) = variable(clue) else {
            answers.push(None);
            continue;
        };
        let posterior = tree.propagate(&evidence, &mut workspace).unwrap();
        let mut mark = random.unit();
        let chances = posterior.marginal(variable);
        let state = chances.iter().position(|chance| {
            mark -= chance;
            mark < 0.0
        });
        let likeliest = (0..chances.len()).max_by(|a, b| chances[*a].total_cmp(&chances[*b]));
        let state = state.or(likeliest).unwrap();
        evidence.observe(network, variable, state).unwrap();
        answers.push(Some(state));
    }
    answers
}

impl Examined for &Story {
    fn opening(&mut self) -> Vec<Content> {
        let opens = |line: &&String| {
            ["machine/", "refrigerant/", "stored-charge/"]
                .iter()
                .any(|check| line.starts_with(check))
        };
        let told = self.told.iter().filter(opens);
        told.map(|line| told::content(line)).collect()
    }

    /// What the story itself says to a task, or else what was drawn.
    fn answer(&mut self, task: Task) -> Vec<Content> {
        let said = self.said(task);
        let lines = if said.is_empty() {
            self.drawn(task)
        } else {
            said
        };
        lines.iter().map(|line| told::content(line)).collect()
    }
}

impl Story {
    /// What the story itself says to a task.
    pub(crate) fn said(&self, task: Task) -> Vec<String> {
        let name = task.name();
        let of_task = |line: &&String| {
            let rest = line.strip_prefix(name);
            rest.is_some_and(|rest| rest.starts_with(['/', ':', ' ']))
        };
        self.told.iter().filter(of_task).cloned().collect()
    }

    /// What a task brings where the story says nothing; nothing where it can't be played.
    fn drawn(&self, task: Task) -> Vec<String> {
        match task {
            Task::Check(check) => bench::lines(check, |clue| self.state(clue)),
            Task::Clue(clue) => {
                let answer = self.state(clue).and_then(|state| clue.answers().get(state));
                answer
                    .map(|answer| format!("{}: {answer}", task.name()))
                    .into_iter()
                    .collect()
            }
            Task::History => Vec::new(),
        }
    }

    fn state(&self, clue: Clue) -> Option<usize> {
        self.drawn[clue as usize]
    }
}

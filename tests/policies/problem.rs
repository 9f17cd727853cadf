//! A repair problem small enough for its best policy to be found: a few parts of a real machine's
//! network and a few checks that tell them apart.

use belief::{
    Check, Component, Evidence, FaultSet, FaultSets, JunctionTree, Limits, Posterior, Repair,
    RepairAction, Troubleshooting, Variable,
};
use diagnosis::{Assumptions, Build, Choice, Clue, Expense, Link, Part, Task};

use crate::motors::Random;
use crate::networks::machine;

/// Parts that may be at fault; all others are sound.
const PARTS: usize = 5;
/// Checks that can be made.
const CHECKS: usize = 4;
/// A check tells at least so many bits about the fault sets, or it would never be made.
const LEAST_TOLD: f64 = 0.05;
/// The likeliest fault sets; what they leave out stays as something that nothing mends.
const LIMITS: Limits = Limits {
    most_faults: 2,
    least_marginal: 1e-6,
    keep: 40,
};

/// A repair problem with what a fixed checklist needs to know of it.
#[derive(Debug, Clone)]
pub struct Problem {
    /// Parts to mend and checks to make. Checks stand in the order of the Path: by the link of
    /// the part that each tells most about.
    pub troubleshooting: Troubleshooting,
    /// The actions that mend each fault set together; none for what was left out.
    pub mended_by: Vec<Option<Vec<usize>>>,
}

/// A clue that may become a check.
struct Candidate {
    clue: Clue,
    task: Task,
    /// One row per fault set and one for what was left out.
    answers: Vec<Vec<f64>>,
    link: Link,
}

/// Draws a machine with its complaint, some of the parts that are under suspicion then, and some
/// of the checks that tell them apart. `None` where too little tells them apart, so that another
/// one has to be drawn.
pub fn draw(assumptions: &Assumptions, build: Build, random: &mut Random) -> Option<Problem> {
    let tree = assumptions.tree(build)?;
    let network = tree.network();
    let states = machine(network, random)?;
    let mut evidence = Evidence::new();
    for name in ["offered", "clue_opening_seen"] {
        let variable = network.find(name)?;
        let state = if name == "offered" {
            0
        } else {
            states[variable.index()]
        };
        evidence.observe(network, variable, state).ok()?;
    }
    let parts = draw_parts(tree, &evidence, random)?;
    for part in parts_of(tree) {
        if !parts.contains(&part) {
            evidence.observe(network, part.1, 0).ok()?;
        }
    }
    // Something is wrong with it: a repair is asked for.
    evidence
        .weigh(network, network.find("trouble")?, &[0.0, 1.0, 1.0])
        .ok()?;

    let mut workspace = tree.workspace();
    let posterior = tree.propagate(&evidence, &mut workspace).ok()?;
    let components: Vec<Component> = parts
        .iter()
        .map(|&(_, variable)| Component { variable, sound: 0 })
        .collect();
    let sets = FaultSets::enumerate(&posterior, &components, LIMITS).ok()?;
    let checks = draw_checks(&posterior, &sets, &parts, random)?;
    let expense = Expense::of(build);
    let actions = parts
        .iter()
        .map(|&(part, variable)| RepairAction {
            name: part.name().to_owned(),
            cost: price(build, part, posterior.marginal(variable)),
            mends: vec![variable],
        })
        .collect();
    let repair = Repair::new(&sets, actions, expense.scrapping()).ok()?;
    let checks = checks.into_iter().map(|one| Check {
        name: one.clue.name().to_owned(),
        cost: expense.looking(one.task),
        answers: one.answers,
    });
    let troubleshooting = Troubleshooting::new(repair, checks.collect()).ok()?;
    let mending = |set: &FaultSet| {
        let faults = set.faults.iter();
        let places = faults.map(|(one, _)| parts.iter().position(|(_, part)| part == one));
        places.collect::<Option<Vec<usize>>>()
    };
    Some(Problem {
        troubleshooting,
        mended_by: sets.sets().iter().map(mending).chain([None]).collect(),
    })
}

/// Every part that the network has, with its variable; its first state is sound.
fn parts_of(tree: &JunctionTree) -> Vec<(Part, Variable)> {
    let network = tree.network();
    let parts = Part::ALL.iter();
    parts
        .filter_map(|&part| Some((part, network.find(&part.name().replace('-', "_"))?)))
        .collect()
}

/// Parts, each the likelier to be drawn the likelier it is at fault; in the order of the Path.
fn draw_parts(
    tree: &JunctionTree,
    evidence: &Evidence,
    random: &mut Random,
) -> Option<Vec<(Part, Variable)>> {
    let mut workspace = tree.workspace();
    let posterior = tree.propagate(evidence, &mut workspace).ok()?;
    let mut left: Vec<((Part, Variable), f64)> = parts_of(tree)
        .into_iter()
        .map(|part| (part, 1.0 - posterior.marginal(part.1)[0]))
        .collect();
    let mut parts = Vec::new();
    while parts.len() < PARTS {
        let mut mark = random.unit() * left.iter().map(|(_, chance)| chance).sum::<f64>();
        let place = left.iter().position(|(_, chance)| {
            mark -= chance;
            mark < 0.0
        })?;
        parts.push(left.remove(place).0);
    }
    parts.sort();
    Some(parts)
}

/// Some of the checks that tell something, one of a task at most, in the order of the Path.
fn draw_checks(
    posterior: &Posterior<'_>,
    sets: &FaultSets,
    parts: &[(Part, Variable)],
    random: &mut Random,
) -> Option<Vec<Candidate>> {
    let network = posterior.tree().network();
    let mut clues: Vec<(Clue, Variable)> = Clue::ALL
        .iter()
        .filter(|clue| !matches!(clue, Clue::OpeningSeen | Clue::OpeningTold))
        .filter_map(|&clue| {
            let name = format!("clue_{}", clue.name().replace('-', "_"));
            Some((clue, network.find(&name)?))
        })
        .collect();
    let mut checks: Vec<Candidate> = Vec::new();
    while checks.len() < CHECKS && !clues.is_empty() {
        let place = (random.unit() * clues.len() as f64) as usize;
        let (clue, variable) = clues.remove(place);
        let answers = sets.answers(posterior, &[variable]).ok()?.pop()?;
        let each: Vec<Vec<usize>> = (0..answers.len()).map(|place| vec![place]).collect();
        let told = told(sets, &answers, &each);
        let link = told_most(sets, &answers, parts)?;
        let task = clue.task();
        if told >= LEAST_TOLD && checks.iter().all(|one| one.task != task) {
            checks.push(Candidate {
                clue,
                task,
                answers,
                link,
            });
        }
    }
    // Stable: checks of one link stay in the order in which they were drawn.
    checks.sort_by_key(|one| one.link);
    (checks.len() == CHECKS).then_some(checks)
}

/// The link of the part that answers tell most about.
fn told_most(sets: &FaultSets, answers: &[Vec<f64>], parts: &[(Part, Variable)]) -> Option<Link> {
    let mut most: Option<(Link, f64)> = None;
    for &(part, variable) in parts {
        let has = |place: &usize| {
            let set = sets.sets().get(*place);
            set.is_some_and(|set| set.faults.iter().any(|(one, _)| *one == variable))
        };
        let (with, without) = (0..answers.len()).partition(has);
        let told = told(sets, answers, &[with, without]);
        if most.is_none_or(|(_, most)| told > most) {
            most = Some((part.faults().next()?.link(), told));
        }
    }
    most.map(|(link, _)| link)
}

/// Bits that answers tell about in which group the true fault set is.
fn told(sets: &FaultSets, answers: &[Vec<f64>], groups: &[Vec<usize>]) -> f64 {
    let mut chances: Vec<f64> = sets.sets().iter().map(|set| set.probability).collect();
    chances.push(sets.missing());
    let told_by = |answer: usize| -> f64 {
        let joint = |group: &[usize]| -> f64 {
            let places = group.iter();
            places
                .map(|&place| chances[place] * answers[place][answer])
                .sum()
        };
        let whole: f64 = groups.iter().map(|group| joint(group)).sum();
        let of_group = |group: &Vec<usize>| {
            let chance: f64 = group.iter().map(|&place| chances[place]).sum();
            let both = joint(group);
            if both > 0.0 {
                both * libm::log2(both / (chance * whole))
            } else {
                0.0
            }
        };
        groups.iter().map(of_group).sum()
    };
    (0..answers.first().map_or(0, Vec::len)).map(told_by).sum()
}

/// What mending a part costs on average over the faults that it may have.
fn price(build: Build, part: Part, marginal: &[f64]) -> f64 {
    let expense = Expense::of(build);
    let (mut sum, mut whole) = (0.0, 0.0);
    let faults = part.faults().filter(|fault| fault.exists_in(build));
    for (fault, chance) in faults.zip(&marginal[1..]) {
        sum += chance * expense.trying(fault);
        whole += chance;
    }
    if whole > 0.0 { sum / whole } else { sum }
}

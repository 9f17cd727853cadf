//! Whole walks: a machine with a known fault gives the answers that the network holds likeliest,
//! and the first suggestion is followed until the verdict is sure or nothing is worth its time.
//!
//! The network examines itself here: this shows that the choice of checks leads somewhere, and
//! nothing about real machines.

use super::beliefs::{Beliefs, Held};
use super::clue::Task;
use super::entered::{Entered, Weight};
use super::*;
use crate::choice::Choice;
use crate::gate::Gate;
use job::{Id, Moment, Origin};

/// At most so many checks.
const STEPS: usize = 12;

struct Walk {
    checks: Vec<Task>,
    minutes: f64,
    whole: Whole,
}

fn walk(build: Build, fault: Fault) -> Walk {
    let now = Moment::new(0, 0).unwrap();
    let job = Job::new(Id::new("walk").unwrap(), now, Origin::Invented);
    let machine = Machine::of(&job);
    let model = crate::Model::default();
    let windings = WindingsKnown::of(&model, &job, &machine, now);
    let gates = Gates {
        look_and_listen: Gate::Open,
        trials: Gate::Open,
    };
    let assumptions = Assumptions::default();
    let mut entered = vec![Entered::new(
        Task::Check(crate::Check::Machine),
        vec![only(build)],
    )];
    let opening = answered(&assumptions, &entered, fault, Clue::OpeningSeen);
    entered[0].weights.extend(opening);
    let mut checks = Vec::new();
    let mut minutes = 0.0;
    loop {
        let known = Known {
            machine: &machine,
            windings: &windings,
            cautions: &[],
            gates: &gates,
            safety_first: Vec::new(),
            model: &model,
            now,
        };
        let course = Course::default();
        let whole = weigh_entered(&assumptions, &job, known, entered.clone(), &course).unwrap();
        let next = whole.next.first();
        let done = whole.verdict.decided != Decided::GoOn || checks.len() == STEPS;
        let Some(next) = next.filter(|_| !done) else {
            return Walk {
                checks,
                minutes,
                whole,
            };
        };
        minutes += next.minutes;
        checks.push(next.task);
        let weights = next
            .task
            .clues()
            .filter(|clue| clue.exists_in(build))
            .flat_map(|clue| answered(&assumptions, &entered, fault, clue))
            .collect();
        entered.push(Entered::new(next.task, weights));
    }
}

/// The likeliest answer if the fault is there and no other, given what was answered before.
fn answered(
    assumptions: &Assumptions,
    entered: &[Entered],
    fault: Fault,
    clue: Clue,
) -> Vec<Weight> {
    let networks = assumptions.networks().unwrap();
    let mut desk = networks::desk(&networks);
    let odds = Build::odds(None);
    let beliefs = Beliefs::of(&networks, odds, entered, &mut desk).unwrap();
    let (_, picture) = beliefs.picture(Held::Only(fault), &mut desk).unwrap();
    let answers = &picture.answers[clue as usize];
    let mut likeliest = 0;
    for (place, chance) in answers.iter().enumerate() {
        if *chance > answers[likeliest] {
            likeliest = place;
        }
    }
    let weights = (0..answers.len()).map(|place| {
        if place == likeliest {
            0.0
        } else {
            f64::NEG_INFINITY
        }
    });
    entered::with_aside(clue, weights.collect())
}

fn only(build: Build) -> Weight {
    let mut weights = [0.0; 3];
    weights[build.column()] = 1.0;
    Weight::Build(weights)
}

#[test]
fn following_the_first_suggestion_finds_the_fault_or_what_looks_just_like_it() {
    let (mut walked, mut found, mut minutes, mut checks) = (0, 0, 0.0, 0);
    for &build in Build::ALL {
        let priors = Priors::default();
        let common = Fault::ALL
            .iter()
            .filter(|fault| priors.share(build, Some(**fault)) >= 0.01);
        for &fault in common {
            let walk = walk(build, fault);
            let suspects = walk.whole.suspects.iter();
            let rank = suspects.take_while(|one| one.fault != Some(fault)).count() + 1;
            walked += 1;
            found += usize::from(rank <= 2);
            minutes += walk.minutes;
            checks += walk.checks.len();
            println!(
                "{} {}: rank {rank}, {:?} {:?}, {:?}, {:.0} min: {}",
                build.name(),
                fault.name(),
                walk.whole.verdict.best.action,
                walk.whole.verdict.best.fault,
                walk.whole.verdict.decided,
                walk.minutes,
                walk.checks
                    .iter()
                    .map(|one| one.name())
                    .collect::<Vec<_>>()
                    .join(" "),
            );
        }
    }
    println!(
        "{found} of {walked} are first or second; {:.1} checks and {:.0} minutes on average",
        f64::from(checks as u32) / f64::from(walked as u32),
        minutes / f64::from(walked as u32)
    );
    assert!(found * 10 >= walked * 8);
}

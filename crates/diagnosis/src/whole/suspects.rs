//! Which parts may be at fault, where the Path breaks, and which readings say so.

use super::beliefs::{Beliefs, Desk, MISTAKEN, log_sum};
use super::build::Build;
use super::clue::Task;
use super::compiled::Compiled;
use super::conditions::compressor;
use super::entered::{Entered, Weight};
use super::fault::Fault;
use super::memory::Memory;
use super::next_check::may_rest_on_one;
use super::picture::Picture;
use super::retracted::Retracted;
use super::{Depth, Whole};
use crate::Link;
use crate::choice::Choice;
use belief::Posterior;
use measure::ranked;

/// Faults from here on are suspects: one machine in a hundred.
const SUSPECT: f64 = 0.01;
/// A reading that moves the odds by less than this factor points nowhere.
const POINTS: f64 = 1.2;
/// A reading that the others make this many times less likely doesn't fit them.
const CONFLICT: f64 = 2.0;

/// One fault, or nothing wrong, with how likely it is and why.
#[derive(Debug, Clone, PartialEq)]
pub struct Suspect {
    /// The fault; `None` for nothing wrong.
    pub fault: Option<Fault>,
    /// How likely it is. Several faults can be there at once, so that these don't add up to one.
    pub probability: f64,
    /// How likely it was before anything was known but the kind of machine.
    pub before: f64,
    /// What points to it, the strongest first.
    pub pointing_to: Vec<Weighed>,
    /// What points away from it, the strongest first.
    pub pointing_away: Vec<Weighed>,
}

/// What one task's readings say of one suspect.
#[derive(Debug, Clone, PartialEq)]
pub struct Weighed {
    /// The task.
    pub task: Task,
    /// By which factor it changed the odds, all other readings given. Its logarithm is the
    /// weight of evidence (Good 1950; from memory).
    pub factor: f64,
    /// How likely the suspect would be had the task not been done.
    pub without: f64,
    /// Whether it was read before the machine was changed the last time.
    pub before_change: bool,
}

impl Whole {
    /// The link at which the Path is likelier interrupted than not, if there is one. Whatever
    /// breaks it, the cabinet doesn't hold its cold: that counts only where nothing before does.
    #[must_use]
    pub fn likeliest_break(&self) -> Option<Link> {
        let mut likeliest = None;
        for one in self.links.iter().filter(|one| one.broken >= 0.5) {
            let more = |(_, most): (Link, f64)| one.broken > most && one.link != Link::Hold;
            if likeliest.is_none_or(more) {
                likeliest = Some((one.link, one.broken));
            }
        }
        likeliest.map(|(link, _)| link)
    }
}

/// How far the Path is thought to be interrupted at a link.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LinkOdds {
    /// The link.
    pub link: Link,
    /// How likely it is that it doesn't hold.
    pub broken: f64,
}

/// Readings that don't fit together.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Conflict {
    /// How many times less likely its readings are given the others than by themselves (Jensen
    /// and others 1990; from memory).
    pub factor: f64,
    /// The task whose readings fit the others least: to be repeated first.
    pub repeat: Task,
}

/// What is believed with and without each task.
pub(super) struct Compared {
    pub(super) picture: Picture,
    before: Picture,
    /// With how many changes had been made when the task was done.
    pub(super) without: Vec<(Task, usize, Picture)>,
    changes: usize,
    pub(super) conflict: Option<Conflict>,
}

impl Compared {
    pub(super) fn of(
        beliefs: &Beliefs<'_>,
        odds: [f64; 3],
        entered: &[Entered],
        depth: Depth,
        memory: &mut Memory,
    ) -> Option<Self> {
        let networks = beliefs.networks();
        memory.turn_to(&networks, odds);
        let before = memory.before(&networks, odds)?;
        let glance =
            |entered: &[Entered], desk: &mut Desk| Beliefs::glance(&networks, odds, entered, desk);
        let mut retracted = Retracted::new(entered);
        let mut show = |compiled: &Compiled, posterior: &Posterior<'_>, ln: f64| {
            retracted.see(compiled, posterior, ln);
        };
        let desk = &mut memory.desk;
        let (ln_all, picture) = Beliefs::glance_with(&networks, odds, entered, desk, &mut show)?;
        let (mut without, mut logs) = (Vec::new(), Vec::new());
        let carried: Vec<Entered> = entered
            .iter()
            .filter(|one| one.is_carried())
            .cloned()
            .collect();
        let own = || {
            entered
                .iter()
                .enumerate()
                .filter(|(_, one)| !one.is_carried())
        };
        for (place, one) in own() {
            let mut others = entered.to_vec();
            others.remove(place);
            let mut ln_others = retracted.logs(place, networks.len()).and_then(log_sum);
            if depth == Depth::Reasons || may_rest_on_one(one.task, &picture) {
                let (ln, picture) = glance(&others, desk)?;
                without.push((one.task, one.period, picture));
                ln_others = ln_others.or(Some(ln));
            }
            let ln_others = match ln_others {
                Some(ln) => ln,
                None => Beliefs::ln_probability(&networks, odds, &others, desk)?,
            };
            logs.push((one.task, 0.0, ln_others));
        }
        // In a round of its own: what is asked next is quick where it differs little from before.
        for ((_, one), (_, ln_alone, _)) in own().zip(&mut logs) {
            let mut alone = carried.clone();
            alone.push(one.clone());
            *ln_alone = match ln_of_one_clue(&before, &alone) {
                Some(known) => known,
                None => memory.ln_alone(&networks, odds, alone)?,
            };
        }
        Some(Self {
            picture,
            before,
            without,
            changes: beliefs.changes(),
            conflict: conflict(ln_all, &logs),
        })
    }

    /// Looks at what would be believed without some tasks, where that wasn't done yet.
    pub(super) fn look_without(
        &mut self,
        tasks: &[Task],
        beliefs: &Beliefs<'_>,
        odds: [f64; 3],
        entered: &[Entered],
        desk: &mut Desk,
    ) -> Option<()> {
        for (place, one) in entered.iter().enumerate() {
            let is_known = self.without.iter().any(|(task, ..)| *task == one.task);
            if one.is_carried() || is_known || !tasks.contains(&one.task) {
                continue;
            }
            let mut others = entered.to_vec();
            others.remove(place);
            let (_, picture) = Beliefs::glance(&beliefs.networks(), odds, &others, desk)?;
            self.without.push((one.task, one.period, picture));
        }
        Some(())
    }

    /// The same with all but the faults from another picture.
    pub(super) fn within(mut self, rest: Picture) -> Self {
        self.picture = Picture {
            faults: self.picture.faults,
            nothing: self.picture.nothing,
            builds: self.picture.builds,
            ..rest
        };
        self
    }

    /// Every fault that is likely enough, the likeliest first; equals in the order of the Path.
    pub(super) fn suspects(&self) -> Vec<Suspect> {
        let suspects = Fault::ALL
            .iter()
            .filter(|fault| self.picture.faults[fault.place()] >= SUSPECT)
            .map(|&fault| self.suspect(Some(fault)));
        ranked(suspects.collect(), |suspect| suspect.probability)
    }

    pub(super) fn suspect(&self, fault: Option<Fault>) -> Suspect {
        let of = |picture: &Picture| match fault {
            Some(fault) => picture.faults[fault.place()],
            None => picture.nothing,
        };
        let probability = of(&self.picture);
        let weighed = self.without.iter().map(|(task, period, picture)| Weighed {
            task: *task,
            before_change: *period < self.changes,
            factor: odds(probability) / odds(of(picture)),
            without: of(picture),
        });
        let mut weighed = ranked(weighed.collect(), |one| one.factor);
        let away = weighed
            .iter()
            .rev()
            .filter(|one| one.factor < 1.0 / POINTS)
            .cloned()
            .collect();
        weighed.retain(|one| one.factor > POINTS);
        Suspect {
            fault,
            probability,
            before: of(&self.before),
            pointing_to: weighed,
            pointing_away: away,
        }
    }

    /// Each link with how likely it is interrupted there.
    pub(super) fn links(&self) -> Vec<LinkOdds> {
        let picture = &self.picture;
        let not_best = |states: &[f64]| 1.0 - states.first().copied().unwrap_or(1.0);
        let compressor = |states: &[usize]| -> f64 {
            let all = &picture.compressor;
            states.iter().filter_map(|state| all.get(*state)).sum()
        };
        let odds = |link: Link| match link {
            Link::Supply => not_best(&picture.supply),
            Link::Call => not_best(&picture.call),
            Link::Circuit => compressor(&[compressor::BROKEN, compressor::LEAKS]),
            Link::Start => compressor(&[compressor::HUMS, compressor::AFTER_LONG_REST]),
            Link::Run => compressor(&[compressor::CUTS_OUT]),
            Link::Pump => not_best(&picture.pump),
            Link::Exchange => not_best(&picture.exchange),
            Link::Hold => not_best(&picture.hold),
        };
        let each = Link::ALL.iter();
        each.map(|&link| LinkOdds {
            link,
            broken: odds(link).clamp(0.0, 1.0),
        })
        .collect()
    }
}

/// The logarithm of the probability of one clue's answer by itself, which what was believed before
/// holds already. `None` for what says more than that.
fn ln_of_one_clue(before: &Picture, entered: &[Entered]) -> Option<f64> {
    let [one] = entered else {
        return None;
    };
    let [Weight::Clue(clue, ln_weights)] = one.weights.as_slice() else {
        return None;
    };
    let builds = Build::ALL.iter().filter(|build| clue.exists_in(**build));
    let shown: f64 = builds.map(|build| before.builds[build.column()]).sum();
    let seen = before.answers[*clue as usize].iter().zip(ln_weights);
    let seen: f64 = seen.map(|(chance, ln)| chance * libm::exp(*ln)).sum();
    let known = one.period == 0 && shown > 0.0;
    known.then(|| libm::log(shown * seen + (1.0 - shown) * MISTAKEN))
}

/// Odds of a probability, kept away from the ends where rounding would decide.
fn odds(probability: f64) -> f64 {
    let inside = probability.clamp(1e-12, 1.0 - 1e-12);
    inside / (1.0 - inside)
}

/// Each task with the logarithm of its readings' probability by themselves, and of all others'
/// together. Jensen's measure between one task and the rest: what agrees elsewhere can't hide it.
fn conflict(ln_all: f64, logs: &[(Task, f64, f64)]) -> Option<Conflict> {
    let mut worst: Option<(Task, f64)> = None;
    for &(task, alone, others) in logs {
        let apart = alone + others - ln_all;
        if worst.is_none_or(|(_, most)| apart > most) {
            worst = Some((task, apart));
        }
    }
    let (repeat, ln_factor) = worst?;
    (ln_factor >= libm::log(CONFLICT)).then(|| Conflict {
        factor: libm::exp(ln_factor),
        repeat,
    })
}

#[cfg(test)]
mod tests {
    use super::super::clue::Clue;
    use super::super::networks::{self, Assumptions};
    use super::*;

    #[test]
    fn one_clue_by_itself_is_as_likely_as_a_pass_of_its_own_says() {
        let assumptions = Assumptions::default();
        let networks = assumptions.networks().unwrap();
        let mut desk = networks::desk(&networks);
        for kind in [None, Some(crate::Kind::FridgeFreezer)] {
            let odds = Build::odds(kind);
            let (_, before) = Beliefs::glance(&networks, odds, &[], &mut desk).unwrap();
            for &clue in Clue::ALL {
                let ln_weights: Vec<f64> = (0..clue.answers().len())
                    .map(|answer| -(answer as f64))
                    .collect();
                let one = [Entered {
                    is_hint: false,
                    task: clue.task(),
                    period: 0,
                    weights: vec![Weight::Clue(clue, ln_weights)],
                }];
                let quick = ln_of_one_clue(&before, &one).unwrap();
                let slow = Beliefs::ln_probability(&networks, odds, &one, &mut desk).unwrap();
                assert!((quick - slow).abs() < 1e-9, "{clue:?}: {quick} and {slow}");
            }
        }
    }
}

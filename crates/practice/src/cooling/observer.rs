//! What could be called by an observer who has seen what becomes of other simulated cabinets.
//!
//! It starts from what is believed, and learns from other machines what to add for where a course stands and how it
//! goes. It knows how often the simulator breaks what, which nobody knows of real machines: so what it
//! calls is a mark for what the readings hold, which a person's prior can hardly pass. It errs to
//! the low side: what it gets right can be got right, and another learner may get more.

use measure::cool_down::{CoolDown, Goal, Support, TemperatureAt};

use super::cabinet::Place;
use super::outcome::{Fate, Outcome};
use crate::learned::{Case, out_of_fold};

/// Machines are put into so many groups; each is asked about by what the others have taught.
const FOLDS: usize = 5;
/// So many steps of one thing seen.
const STEPS: usize = 16;
/// So many things are seen of a course.
const THINGS: usize = 6;
/// As sure as a verdict.
const SURE: f64 = 0.95;
/// What is believed less is held to this.
const UNLIKELY: f64 = 1e-4;

/// Many courses at one length of log.
#[derive(Debug, Clone, Default)]
pub struct Observer {
    cases: Vec<Case>,
    owners: Vec<u64>,
    fates: Vec<Fate>,
}

impl Observer {
    /// Takes one course: the machine's number, where the thermometer lay, what was read and what is believed.
    pub fn take(
        &mut self,
        (machine, place): (u64, Place),
        (readings, support): (&[TemperatureAt], Option<&Support>),
        found: &CoolDown,
        truth: &Outcome,
    ) {
        let goal = place.goal();
        let kind = Place::ALL.iter().position(|one| *one == place).unwrap_or(0);
        let things = things(readings, support, &goal);
        let seen = things.into_iter().enumerate().flat_map(|(thing, size)| {
            let step = size.map(|size| libm::rint(size).clamp(0.0, STEPS as f64 - 1.0) as usize);
            let step = step.map(|step| thing * STEPS + step);
            // For all cabinets alike, and for such as this.
            let own = step.map(|step| (kind + 1) * THINGS * STEPS + step);
            step.into_iter().chain(own)
        });
        let chance = found.chance(&goal).clamp(UNLIKELY, 1.0 - UNLIKELY);
        self.cases.push(Case {
            seen: seen.collect(),
            believed: vec![libm::log(1.0 - chance), libm::log(chance)],
            class: usize::from(truth.gets_there(&goal)),
        });
        self.owners.push(machine);
        self.fates.push(truth.fate(&goal));
    }

    /// One line: of the hopeless and of the good how many it calls, and how often it is wrong of all.
    #[must_use]
    pub fn line(&self) -> String {
        let fold = |place: usize| (self.owners[place] % FOLDS as u64) as usize;
        let odds = out_of_fold(&self.cases, fold, FOLDS, |_| true);
        let mut called = [(0, 0); 2];
        let mut wrong = 0;
        for (place, odds) in odds.iter().enumerate() {
            let said = odds
                .as_ref()
                .and_then(|odds| odds.iter().position(|one| *one >= SURE));
            wrong += usize::from(said.is_some_and(|class| class != self.cases[place].class));
            let (group, meant) = match self.fates[place] {
                Fate::Hopeless => (0, 0),
                Fate::Good => (1, 1),
                Fate::Borderline => continue,
            };
            called[group].0 += usize::from(said == Some(meant));
            called[group].1 += 1;
        }
        let percent = |part: usize, whole: usize| 100.0 * part as f64 / whole.max(1) as f64;
        format!(
            "who has learned from others: hopeless {:5.1} good {:5.1} wrong {:4.2} of all",
            percent(called[0].0, called[0].1),
            percent(called[1].0, called[1].1),
            percent(wrong, self.cases.len()),
        )
    }
}

/// Sizes of what is seen, in steps: above the target, fallen lately and altogether, warmed again, coil below
/// the air, watts beside what is usual.
fn things(
    readings: &[TemperatureAt],
    support: Option<&Support>,
    goal: &Goal,
) -> [Option<f64>; THINGS] {
    let shown = |place: usize| readings.get(place).map(|one| one.temperature.get());
    let last = shown(readings.len().saturating_sub(1));
    let hours = readings.last().map_or(1.0, |one| one.at.get() / 3600.0);
    let lately = shown(readings.len() * 3 / 4).zip(last);
    let whole = shown(0).zip(last);
    let mut coldest = f64::INFINITY;
    let warmed = readings.iter().fold(0.0, |most: f64, one| {
        coldest = coldest.min(one.temperature.get());
        most.max(one.temperature.get() - coldest)
    });
    let coil = support.and_then(|support| support.coil.last());
    let draw = support.and_then(|support| support.draw);
    [
        last.map(|last| (last - goal.target.get()) / 2.5 + 2.0),
        lately.map(|(before, last)| (before - last) / (0.25 * hours) / 1.5 + 2.0),
        whole.map(|(first, last)| (first - last) / 3.0),
        Some(warmed),
        coil.zip(last)
            .map(|(coil, last)| (last - coil.temperature.get()) / 1.5 + 2.0),
        draw.map(|draw| 8.0 * draw.watts.get() / (draw.usual[0].get() + draw.usual[1].get()) * 2.0),
    ]
}

//! How one walk came out, held against the truth.

use diagnosis::{Action, Clue, Fault, Proposal, Task, Whole};
use measure::MeterKind;
use quantity::Celsius;
use simulator::appliance::Kind;
use simulator::machine::{Ailment, Blueprint, Gear, Machine};

use crate::answers::build_of;
use crate::truth::fault_of;
use crate::walk::Walk;

/// One machine in one order of checks.
#[derive(Debug, Clone, PartialEq)]
pub struct Score {
    /// What kind of machine, one of [`Score::MACHINES`].
    pub machine: &'static str,
    /// What it was measured with.
    pub meter: MeterKind,
    /// What is wrong, the main fault first; nothing where nothing is.
    pub truth: Vec<Fault>,
    /// What is wrong passes by itself: what was put in warm gets cold.
    pub passes: bool,
    /// The likeliest, or that nothing is wrong, and how likely it was called.
    pub first: (Option<Fault>, f64),
    /// The likeliest is true.
    pub right_first: bool,
    /// One of the likeliest three is true.
    pub right_in_three: bool,
    /// What is advised mends it, or begins to.
    pub right_action: bool,
    /// The sum of squares of what was believed less what is true, over everything that can be.
    pub brier: f64,
    /// A sound compressor was given up.
    pub condemned_sound: bool,
    /// A repair was advised that would not have helped.
    pub repair_in_vain: bool,
    /// Checks that would have hurt somebody.
    pub unsafe_steps: usize,
    /// How many checks.
    pub checks: usize,
    /// Minutes of work.
    pub minutes: f64,
    /// Minutes of waiting.
    pub waiting: f64,
}

impl Score {
    /// Kinds of machine that are told apart, as tables name them.
    pub const MACHINES: [&'static str; 6] = [
        "chest-freezer",
        "upright-freezer",
        "refrigerator",
        "frost-free",
        "frost-free-one-thermostat",
        "inverter",
    ];

    /// Of a walk on a machine, measured with such a meter.
    #[must_use]
    pub fn of(walk: &Walk, machine: &Machine, meter: MeterKind) -> Self {
        let ailments = machine.troubles().iter().map(|trouble| trouble.ailment);
        let truth: Vec<Fault> = ailments.map(fault_of).collect();
        let ranked = ranked(&walk.whole);
        let is_true = |fault: Option<Fault>| match fault {
            Some(fault) => truth.contains(&fault),
            None => truth.is_empty(),
        };
        let first = ranked.first().copied().unwrap_or((None, 0.0));
        let best = &walk.whole.verdict.best;
        let passes = passes(machine);
        let right_action = is_right(best, &truth, passes);
        Self {
            machine: machine_name(machine.blueprint()),
            meter,
            right_first: is_true(first.0),
            right_in_three: ranked.iter().take(3).any(|one| is_true(one.0)),
            brier: brier(&ranked, &is_true),
            condemned_sound: condemns_compressor(best)
                && !machine
                    .troubles()
                    .iter()
                    .any(|one| one.ailment.is_in_compressor())
                && !right_action,
            repair_in_vain: is_repair(best.action) && !right_action,
            unsafe_steps: walk
                .tasks
                .iter()
                .filter(|task| would_hurt(**task, machine))
                .count(),
            checks: walk.tasks.len(),
            minutes: walk.minutes,
            waiting: walk.waiting,
            first,
            right_action,
            passes,
            truth,
        }
    }
}

/// Where a machine that is asked too much stands in no hotter room than this, it is what was put in
/// warm that asks it: rooms that ask too much begin at 32 °C, where ordinary machines' climate classes
/// end (IEC 62552, from memory).
const HOT: Celsius = Celsius::new(32.0);

/// Whether a warm load is all that is wrong: it is cold some days later.
fn passes(machine: &Machine) -> bool {
    match machine.troubles() {
        [only] => only.ailment == Ailment::TooMuchAsked && machine.room() < HOT,
        _ => false,
    }
}

fn machine_name(blueprint: &Blueprint) -> &'static str {
    let place = match blueprint.kind {
        _ if blueprint.gear == Gear::Inverter => 5,
        Kind::ChestFreezer => 0,
        Kind::UprightFreezer => 1,
        Kind::PlateRefrigerator => 2,
        Kind::FrostFree => 3,
        Kind::FrostFreeOneThermostat => 4,
    };
    Score::MACHINES[place]
}

/// Everything that can be, likeliest first; of equals in the order of the app's list.
fn ranked(whole: &Whole) -> Vec<(Option<Fault>, f64)> {
    let suspects = whole
        .suspects
        .iter()
        .map(|one| (one.fault, one.probability));
    let mut all: Vec<_> = suspects
        .chain([(None, whole.nothing_wrong.probability)])
        .collect();
    all.sort_by(|one, other| other.1.total_cmp(&one.1));
    all
}

fn brier(ranked: &[(Option<Fault>, f64)], is_true: &dyn Fn(Option<Fault>) -> bool) -> f64 {
    let terms = ranked.iter().map(|(fault, believed)| {
        let off = believed - f64::from(u8::from(is_true(*fault)));
        off * off
    });
    terms.sum()
}

/// Whether an action mends the machine, or one of two things that are wrong with it, and nothing
/// cheaper would have: it is the one that is stated for a fault that is there.
fn is_right(best: &Proposal, truth: &[Fault], passes: bool) -> bool {
    match best.action {
        Action::WaitAndRepeat if passes => true,
        Action::NothingToRepair | Action::WaitAndRepeat => truth.is_empty(),
        Action::Scrap => truth.iter().any(|fault| fault.is_sealed()),
        Action::LicensedWork | Action::StopDoNotEnergise => {
            let blamed = best.fault.filter(|fault| truth.contains(fault));
            blamed.is_some() || truth.iter().any(|fault| fault.is_sealed())
        }
        _ => blamed_part(best, truth),
    }
}

/// The part that is to be dealt with is one that is at fault.
fn blamed_part(best: &Proposal, truth: &[Fault]) -> bool {
    let part = best.fault.map(Fault::part);
    truth.iter().any(|fault| Some(fault.part()) == part)
}

const fn is_repair(action: Action) -> bool {
    !matches!(
        action,
        Action::NothingToRepair
            | Action::WaitAndRepeat
            | Action::Scrap
            | Action::LicensedWork
            | Action::StopDoNotEnergise
            | Action::TestFit
    )
}

/// Whether a compressor is given up, or the machine with it.
fn condemns_compressor(best: &Proposal) -> bool {
    let gives_up = matches!(
        best.action,
        Action::Scrap | Action::LicensedWork | Action::StopDoNotEnergise
    );
    let is_in_compressor = |fault: Fault| {
        let mut ailments = Ailment::ALL.iter();
        ailments.any(|ailment| ailment.is_in_compressor() && fault_of(*ailment) == fault)
    };
    gives_up && best.fault.is_none_or(is_in_compressor)
}

/// Whether a check is a hazard on this very machine: a kit or a plain device on an inverter's
/// pins, an open relay in gas that burns, or power on metal that leaks.
fn would_hurt(task: Task, machine: &Machine) -> bool {
    let Task::Clue(clue) = task else {
        return false;
    };
    let blueprint = machine.blueprint();
    let fits_gear = matches!(clue, Clue::StartKit | Clue::GoodDevice);
    let inverter = blueprint.gear == Gear::Inverter;
    let burns = clue == Clue::StartKit && blueprint.gas_burns();
    let bench = machine.bench();
    let live = bench
        .blades_to_metal()
        .is_some_and(|leak| leak.get() < machine.volts_at_rest().get() / HARMFUL);
    let build = build_of(blueprint.kind, inverter);
    let is_powered = task.setup(build).plugged == Some(true);
    (fits_gear && inverter) || burns || (live && is_powered)
}

/// Amperes to earth from which an unguarded touch can kill; the check is behind a device, and none
/// should be asked for all the same.
const HARMFUL: f64 = 0.030;

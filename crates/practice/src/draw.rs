//! Machines that are offered as faulty, drawn by seed.
//!
//! How common each fault is comes from the app's own table, so that what is tried is how signs are
//! read and not how well shares were guessed. How bad a fault is comes from the simulator. Which
//! kinds of machine there are, and how often two things are wrong, is judgement and stands here.
//! A machine that works all the same is nobody's to offer: it is drawn again.

use diagnosis::{Build, Choice, Fault, Priors};
use quantity::Ratio;
use simulator::appliance::Kind;
use simulator::machine::{Ailment, Blueprint, Gear, Machine, Trouble};
use simulator::{Chance, ParameterError};

use crate::answers::{Sheet, build_of};
use crate::truth::ailment_of;
use measure::MeterKind;

/// Kinds, whether an inverter drives them, and their shares.
const KINDS: [(Kind, bool, f64); 7] = [
    (Kind::ChestFreezer, false, 0.25),
    (Kind::UprightFreezer, false, 0.12),
    (Kind::PlateRefrigerator, false, 0.08),
    (Kind::FrostFree, false, 0.25),
    (Kind::FrostFreeOneThermostat, false, 0.12),
    (Kind::FrostFree, true, 0.12),
    (Kind::FrostFreeOneThermostat, true, 0.06),
];

/// How often something else is wrong besides.
const SECOND: f64 = 0.08;

/// So many tries at one machine; ailments that hardly ever show take some.
const TRIES: u64 = 400;

/// A machine with a fault that shows, or with none. The same number gives the same machine.
///
/// # Errors
/// [`ParameterError`] where the simulator refuses a machine, which tests rule out.
pub fn drawn(
    priors: &Priors,
    meter: MeterKind,
    seed: u64,
    number: u64,
) -> Result<Option<Sheet>, ParameterError> {
    let chance = Chance::new(seed).fork(number.wrapping_add(1));
    let mut first = chance.fork(0);
    let (kind, is_inverter) = kind(&mut first);
    let wanted = main_fault(priors, kind, is_inverter, &mut first);
    for one in 0..TRIES {
        let mut chance = chance.fork(1_000 + one);
        let blueprint = Blueprint::drawn(kind, is_inverter, &mut chance);
        let Some(troubles) = troubles(priors, &blueprint, wanted, &mut chance) else {
            continue;
        };
        let built = |troubles: &[Trouble]| -> Result<Sheet, ParameterError> {
            let machine = Machine::build(&blueprint, troubles, chance.fork(1))?;
            Ok(Sheet::new(machine, meter, &chance.fork(2)))
        };
        let mut sheet = built(&troubles)?;
        // A fault shows, and so does what works without it.
        let shows = troubles.is_empty() || !sheet.works();
        if shows && built(&[])?.works() {
            return Ok(Some(sheet));
        }
    }
    Ok(None)
}

pub(crate) fn kind(chance: &mut Chance) -> (Kind, bool) {
    let mut mark = chance.share();
    let mut last = (Kind::ChestFreezer, false);
    for (kind, is_inverter, share) in KINDS {
        last = (kind, is_inverter);
        mark -= share;
        if mark < 0.0 {
            break;
        }
    }
    last
}

/// The main fault, or that there is none, by the app's shares.
fn main_fault(
    priors: &Priors,
    kind: Kind,
    is_inverter: bool,
    chance: &mut Chance,
) -> Option<Fault> {
    let build = build_of(kind, is_inverter);
    let mut mark = chance.share() * total(priors, build);
    for fault in Fault::ALL.iter().filter(|fault| fault.exists_in(build)) {
        mark -= priors.share(build, Some(*fault));
        if mark < 0.0 {
            return Some(*fault);
        }
    }
    None
}

fn total(priors: &Priors, build: Build) -> f64 {
    let faults = Fault::ALL.iter().filter(|fault| fault.exists_in(build));
    let shares = faults.map(|fault| priors.share(build, Some(*fault)));
    shares.sum::<f64>() + priors.share(build, None)
}

/// The ailment that is the main fault, and perhaps another. `None` where this machine can't have
/// it.
fn troubles(
    priors: &Priors,
    blueprint: &Blueprint,
    wanted: Option<Fault>,
    chance: &mut Chance,
) -> Option<Vec<Trouble>> {
    let Some(wanted) = wanted else {
        return Some(Vec::new());
    };
    let trouble = |ailment: Ailment, chance: &mut Chance| Trouble {
        ailment,
        severity: Ratio::new(chance.share()),
    };
    let main = ailment_of(wanted, chance).filter(|ailment| ailment.exists_in(blueprint))?;
    let mut troubles = vec![trouble(main, chance)];
    if chance.happens(SECOND) {
        let is_inverter = blueprint.gear == Gear::Inverter;
        let other = main_fault(priors, blueprint.kind, is_inverter, chance);
        let other = other.filter(|other| other.part() != wanted.part());
        let other = other.and_then(|other| ailment_of(other, chance));
        if let Some(other) = other.filter(|ailment| ailment.exists_in(blueprint)) {
            troubles.push(trouble(other, chance));
        }
    }
    Some(troubles)
}

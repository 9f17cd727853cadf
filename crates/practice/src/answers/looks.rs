//! What eyes and fingers find with the plug out.

use diagnosis::{Choice, Clue, Sign, Task};
use job::Content;
use quantity::Ratio;
use simulator::machine::{Fan, Trace};

use super::Sheet;
use super::entry::{choices, clue as shown, there_is_none};

/// More dust than this is a felt, by eye.
const MATTED: f64 = 0.4;
/// How much of the space that frost can fill hides the fins, by eye.
const ICED: f64 = 0.6;
/// A paper slides where the gap is wider than this; wider than the other one sees through.
const SLIDES: f64 = 0.02;
const STANDS_OFF: f64 = 0.15;
/// Half of its speed: a finger feels that a fan is stiff.
const STIFF: f64 = 0.6;
/// Below this its motor gives nothing at all.
const DEAD: f64 = 0.12;

/// Signs that the look-over asks for.
pub(super) fn look_over(sheet: &mut Sheet) -> Vec<Content> {
    let traces = sheet.machine.bench().traces().to_vec();
    let is_there = |sign: Sign| {
        let sought: &[Trace] = match sign {
            Sign::CordDamaged => &[Trace::CordOpen],
            Sign::Burnt => &[Trace::ConnectorOpen],
            Sign::OilStain => &[Trace::OilAtJoint, Trace::OilAtFoot],
            Sign::Puncture => &[Trace::Hole],
            _ => &[],
        };
        traces.iter().any(|trace| sought.contains(trace))
    };
    let mut seen = Vec::new();
    for sign in Sign::ALL {
        if sheet.senses.noticed(is_there(*sign)) {
            seen.push(sign.name());
        }
    }
    choices("look-over", "signs", &seen).into_iter().collect()
}

/// Nobody knows its past.
pub(super) fn history() -> Vec<Content> {
    choices(Task::History.name(), "known", &[])
        .into_iter()
        .collect()
}

pub(super) fn clue(sheet: &mut Sheet, clue: Clue) -> Option<Vec<Content>> {
    let bench = sheet.machine.bench();
    let frost = bench.frost();
    let (blower, room_fan) = (bench.blower(), bench.room_fan());
    let (gap, dirt, drain) = (bench.gap().get(), bench.dirt(), bench.drain().get());
    let lamp = bench.lamp_stays_on();
    let frost_free = sheet.machine.blueprint().is_frost_free();
    let iced = sheet.senses.seen(frost).get() > ICED;
    let senses = &mut sheet.senses;
    let truth = match clue {
        Clue::Lint => usize::from(senses.seen(dirt).get() > MATTED),
        Clue::Seal => match gap {
            gap if gap > STANDS_OFF => 2,
            gap if gap > SLIDES => 1,
            _ => 0,
        },
        Clue::DoorLamp => usize::from(lamp),
        Clue::CoilIce => usize::from(iced),
        Clue::Drain if frost_free => usize::from(drain < 0.5),
        Clue::Drain => usize::from(iced),
        Clue::EvaporatorFanMotor => match blower {
            None => return Some(there_is_none(clue).into_iter().collect()),
            // Ice all through holds the blade.
            Some(_) if frost.get() > 0.97 => 1,
            Some(fan) => turned(fan),
        },
        Clue::CondenserFanMotor => match room_fan {
            None => return Some(there_is_none(clue).into_iter().collect()),
            Some(fan) => turned(fan),
        },
        Clue::DoorSwitch => match blower {
            _ if lamp => 1,
            Some(fan) if fan.turning.get() < DEAD => 2,
            _ => 0,
        },
        _ => return None,
    };
    let told = senses.told(truth, clue.answers().len());
    Some(shown(clue, told).into_iter().collect())
}

/// A fan by finger and ohms.
fn turned(fan: Fan) -> usize {
    match fan.turning {
        turning if turning > Ratio::new(STIFF) => 0,
        turning if turning > Ratio::new(DEAD) => 1,
        _ => 2,
    }
}

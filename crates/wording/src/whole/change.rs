//! What was done to the machine, as it is offered, and what a report makes of it.

use diagnosis::{CHANGE, Change, Choice, Whole};
use job::Question;

use super::{NOTHING_WRONG, within};
use crate::{Words, odds};

impl Words for Change {
    fn words(self) -> &'static str {
        match self {
            Self::Cord => "I replaced the cord, the plug or its fuse",
            Self::Outlet => "I took another outlet, or a short heavy cord",
            Self::Control => "I set the control to cool and cleared special modes",
            Self::Thermostat => "I replaced the thermostat",
            Self::Thermistor => "I replaced the temperature sensor",
            Self::Board => "I replaced the main board",
            Self::DefrostTimer => "I replaced the defrost timer",
            Self::Place => "I moved it, or asked less of it",
            Self::Overload => "I replaced the overload protector",
            Self::Wiring => "I mended wires or connectors at the compressor",
            Self::StartDevice => "I replaced the start device",
            Self::StartGear => "I fitted its maker's gear for hard starts",
            Self::Capacitor => "I replaced the capacitor",
            Self::Compressor => "Someone licensed replaced the compressor",
            Self::SealedSystem => "Someone licensed mended and charged the sealed system",
            Self::LeakingPart => "I replaced the part that leaked to metal",
            Self::Drive => "I replaced the inverter board",
            Self::EvaporatorFan => "I replaced the evaporator fan or its switch",
            Self::DefrostHeater => "I replaced the defrost heater, its thermostat or its fuse",
            Self::Frost => "I thawed it fully and cleared the drain",
            Self::Condenser => "I cleaned the condenser and gave it air",
            Self::CondenserFan => "I replaced the condenser fan",
            Self::Seal => "I replaced the door seal, or set the door right",
            Self::Damper => "I replaced the damper",
            Self::Lamp => "I replaced the lamp switch, or the heater that stayed on",
        }
    }
}

/// Everything that can have been done, in the order of the Path, as a person says it.
///
/// ```
/// use diagnosis::Change;
/// let offered: Vec<_> = wording::whole::changes().collect();
/// assert!(offered.contains(&(Change::StartDevice, "I replaced the start device")));
/// ```
pub fn changes() -> impl Iterator<Item = (Change, &'static str)> {
    Change::ALL.iter().map(|change| (*change, change.words()))
}

/// What a list of entries calls a change, and what it says of it.
pub(crate) fn change(question: &Question) -> Option<(&'static str, &'static str)> {
    let change = Change::from_name(question.item.as_str())?;
    (question.check.as_str() == CHANGE).then(|| ("Done to the machine", change.words()))
}

/// What the last changes have come to, and what became of the readings before them; nothing where
/// nothing was done.
#[must_use]
pub fn since(whole: &Whole) -> Vec<String> {
    let changed = &whole.changed;
    let earlier = changed.changes.len() - changed.last.min(changed.changes.len());
    let last: Vec<&str> = changed.changes[earlier..]
        .iter()
        .map(|one| done(*one))
        .collect();
    if last.is_empty() {
        return Vec::new();
    }
    let found = if changed.read_since {
        let top = whole
            .suspects
            .first()
            .filter(|one| one.probability > whole.nothing_wrong.probability);
        let likeliest = top.unwrap_or(&whole.nothing_wrong);
        let what = likeliest.fault.map_or(NOTHING_WRONG, Words::words);
        let phrase = odds(likeliest.probability).phrase;
        format!("likeliest now is: {}, {phrase}.", within(what))
    } else {
        "nothing was read yet. Repeat what showed the trouble.".to_owned()
    };
    let mut lines = vec![format!("Since {}: {found}", last.join(" and "))];
    lines.push("Earlier readings count for the machine as it was then.".to_owned());
    if changed.folded > 0 {
        lines.push(format!(
            "Too many changes to tell each apart: what was read before the first {} counts for \
             each part by itself.",
            changed.folded
        ));
    }
    lines
}

/// A change as it stands behind "since".
const fn done(change: Change) -> &'static str {
    match change {
        Change::Cord => "cord or plug were replaced",
        Change::Outlet => "it has another outlet",
        Change::Control => "the control was set to cool",
        Change::Thermostat => "the thermostat was replaced",
        Change::Thermistor => "the temperature sensor was replaced",
        Change::Board => "the main board was replaced",
        Change::DefrostTimer => "the defrost timer was replaced",
        Change::Place => "it was moved, or less was asked of it",
        Change::Overload => "the overload protector was replaced",
        Change::Wiring => "the wiring at the compressor was mended",
        Change::StartDevice => "the start device was replaced",
        Change::StartGear => "gear for hard starts was fitted",
        Change::Capacitor => "the capacitor was replaced",
        Change::Compressor => "the compressor was replaced",
        Change::SealedSystem => "the sealed system was mended",
        Change::LeakingPart => "the part that leaked was replaced",
        Change::Drive => "the inverter board was replaced",
        Change::EvaporatorFan => "the evaporator fan was replaced",
        Change::DefrostHeater => "the defrost heater was replaced",
        Change::Frost => "it was thawed",
        Change::Condenser => "the condenser was cleaned",
        Change::CondenserFan => "the condenser fan was replaced",
        Change::Seal => "the door seal was mended",
        Change::Damper => "the damper was replaced",
        Change::Lamp => "the lamp switch or heater was replaced",
    }
}

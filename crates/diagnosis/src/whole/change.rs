//! What can be done to a machine while a job is open, and what it makes new.
//!
//! A change is an answer of the check [`CHANGE`]: the item says to what, the answer how. Each one
//! counts, the same twice included; its place among the entries decides what was read before it
//! and what after. Standing of all figures: judgement from trade practice.

use job::{Answer, Content, Entry, Name};

use super::fault::Part;
use crate::Check;
use crate::choice::{Choice, choices};

/// The check under which a job keeps what was done to the machine.
pub const CHANGE: &str = "change";

choices! {
    /// Something that was done to the machine, named by what it was done to.
    pub enum Change {
        /// Cord or plug, or the plug's fuse, replaced.
        Cord = "cord",
        /// Another outlet, or a short heavy cord to it.
        Outlet = "outlet",
        /// Control set to cool, modes cleared.
        Control = "control",
        /// Thermostat replaced.
        Thermostat = "thermostat",
        /// Temperature sensor replaced.
        Thermistor = "thermistor",
        /// Main board replaced.
        Board = "board",
        /// Defrost timer, or what stands in for it, replaced.
        DefrostTimer = "defrost-timer",
        /// The machine moved to another place, or less asked of it.
        Place = "place",
        /// Overload protector replaced.
        Overload = "overload",
        /// Wires and connectors at the compressor mended.
        Wiring = "wiring",
        /// Start device replaced by a like one.
        StartDevice = "start-device",
        /// Start gear for a compressor that starts hard, as its maker allows.
        StartGear = "start-gear",
        /// Start or run capacitor replaced.
        Capacitor = "capacitor",
        /// Compressor replaced by someone licensed.
        Compressor = "compressor",
        /// Sealed system mended and charged by someone licensed.
        SealedSystem = "sealed-system",
        /// The heater, fan or wiring that leaked replaced.
        LeakingPart = "leaking-part",
        /// Inverter's drive board replaced.
        Drive = "drive",
        /// Evaporator fan, or its door switch, replaced.
        EvaporatorFan = "evaporator-fan",
        /// Defrost heater, its thermostat or its fuse replaced.
        DefrostHeater = "defrost-heater",
        /// Thawed fully, the drain cleared.
        Frost = "frost",
        /// Condenser cleaned and given air.
        Condenser = "condenser",
        /// Condenser fan replaced.
        CondenserFan = "condenser-fan",
        /// Door or lid seal replaced or set right.
        Seal = "seal",
        /// Damper or diverter replaced.
        Damper = "damper",
        /// Lamp switch or the heater that stayed on replaced.
        Lamp = "lamp",
    }
}

/// What a change does to one part.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Effect {
    /// Another one, which is bad so often: the wrong one, dead on arrival, wrongly fitted.
    Replaced(f64),
    /// The same one, mended so often if it was at fault.
    Mended(f64),
}

/// How often what was sound is harmed while it is mended: a wire put back wrongly.
pub(super) const HARMED: f64 = 0.01;
/// How often a new part is the wrong one, dead on arrival or wrongly fitted.
const NEW: Effect = Effect::Replaced(0.03);
/// The same for used boards, which is what is mostly to be had.
const USED: Effect = Effect::Replaced(0.12);
/// The same for brazed and charged work.
const BRAZED: Effect = Effect::Replaced(0.08);

impl Change {
    /// The answer under which it is kept: how it was done.
    ///
    /// ```
    /// use diagnosis::{Change, Choice};
    /// assert_eq!(Change::StartDevice.name(), "start-device");
    /// assert_eq!(Change::StartDevice.how(), "replaced");
    /// ```
    #[must_use]
    pub const fn how(self) -> &'static str {
        match self {
            Self::Outlet | Self::Place => "moved",
            Self::Control => "set",
            Self::Wiring | Self::SealedSystem => "mended",
            Self::StartGear => "fitted",
            Self::Frost => "thawed",
            Self::Condenser => "cleaned",
            _ => "replaced",
        }
    }

    /// The answer as a job keeps it.
    #[must_use]
    pub fn answer(self) -> Option<Answer> {
        Name::new(self.how()).ok().map(Answer::Choice)
    }

    /// The change that an entry tells of, where it tells of one that this program knows.
    pub(crate) fn told_by(entry: &Entry) -> Option<Self> {
        let Content::Answer { question, answer } = &entry.content else {
            return None;
        };
        let Answer::Choice(how) = answer else {
            return None;
        };
        let change = Self::from_name(question.item.as_str())?;
        (question.check.as_str() == CHANGE && how.as_str() == change.how()).then_some(change)
    }

    /// What it does to which parts.
    pub(super) const fn effects(self) -> &'static [(Part, Effect)] {
        use Effect::Mended;
        match self {
            Self::Cord => &[(Part::SupplyLine, NEW)],
            Self::Outlet => &[
                (Part::SupplyLine, Mended(0.75)),
                (Part::ProtectiveDevice, Mended(0.8)),
            ],
            Self::Control => &[(Part::Setting, Mended(0.95))],
            Self::Thermostat => &[(Part::Thermostat, NEW)],
            Self::Thermistor => &[(Part::Thermistor, NEW)],
            Self::Board => &[(Part::Board, USED)],
            Self::DefrostTimer => &[(Part::DefrostEnd, NEW), (Part::DefrostStart, NEW)],
            Self::Place => &[(Part::Room, Mended(0.9)), (Part::Demand, Mended(0.85))],
            Self::Overload => &[(Part::Overload, NEW)],
            Self::Wiring => &[(Part::Wiring, Mended(0.88))],
            Self::StartDevice => &[(Part::StartDevice, NEW)],
            // More torque helps most rotors that are tight and no seized one: half on average.
            Self::StartGear => &[(Part::StartDevice, NEW), (Part::Rotor, Mended(0.5))],
            Self::Capacitor => &[(Part::Capacitor, NEW)],
            Self::Compressor => &[
                (Part::InnerProtector, BRAZED),
                (Part::Windings, BRAZED),
                (Part::Insulation, BRAZED),
                (Part::Rotor, BRAZED),
                (Part::Valves, BRAZED),
                (Part::Capillary, BRAZED),
                (Part::Charge, BRAZED),
            ],
            Self::SealedSystem => &[(Part::Capillary, BRAZED), (Part::Charge, BRAZED)],
            Self::LeakingPart => &[(Part::OtherInsulation, Mended(0.9))],
            Self::Drive => &[(Part::Drive, USED)],
            Self::EvaporatorFan => &[(Part::EvaporatorFan, NEW)],
            Self::DefrostHeater => &[(Part::DefrostHeater, NEW)],
            Self::Frost => &[(Part::Drain, Mended(0.85))],
            Self::Condenser => &[(Part::Condenser, Mended(0.95))],
            Self::CondenserFan => &[(Part::CondenserFan, NEW)],
            Self::Seal => &[(Part::Seal, Mended(0.85))],
            Self::Damper => &[(Part::Damper, NEW)],
            Self::Lamp => &[(Part::Lamp, NEW)],
        }
    }

    /// Checks whose readings it takes the ground from: the part is another one, or mains
    /// wiring was touched, so that metal has to be measured again before anything is powered.
    pub(super) const fn outdates(self) -> &'static [Check] {
        match self {
            Self::Cord | Self::Wiring => &[Check::Ground],
            Self::LeakingPart => &[Check::Ground, Check::Leakage],
            Self::Outlet => &[Check::Supply],
            Self::Capacitor => &[Check::CapacitorInCircuit],
            Self::Overload => &[Check::Protector],
            Self::StartDevice | Self::StartGear => &[Check::StartDevice, Check::Running],
            Self::Compressor => &[
                Check::Ground,
                Check::Windings,
                Check::Shell,
                Check::WindingTemperature,
                Check::Running,
                Check::Leakage,
            ],
            _ => &[],
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_change_can_be_kept_in_a_job_and_makes_something_new() {
        for change in Change::ALL {
            assert!(Name::new(change.name()).is_ok());
            assert!(change.answer().is_some());
            assert!(!change.effects().is_empty());
        }
    }
}

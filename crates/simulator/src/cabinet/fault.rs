//! What can be wrong with a cabinet, as a change of its parts.
//!
//! Answers: which parameter differs in a broken one, and by how much? Must never know: what
//! follows from it.

use super::{Cabinet, Contacts};
use quantity::{KelvinDelta, Ratio, Watts};

/// What is wrong. Its severity runs from 0, sound, to 1; what is either broken or not is broken
/// from one half on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CabinetFault {
    /// The condenser is dusty or boxed in.
    DirtyCondenser,
    /// The condenser's fan slows: still at 1.
    RoomFan,
    /// The evaporator's fan slows: still at 1.
    Blower,
    /// The gasket of the first compartment leaks: a tenth of a door ajar at 1.
    Gasket,
    /// The door of the first compartment stands open.
    DoorAjar,
    /// The thermostat never calls.
    ThermostatOpen,
    /// The thermostat never stops.
    ThermostatStuck,
    /// The thermostat feels colder than it is and stops early: 15 K at 1.
    ThermostatCold,
    /// The damper stays shut.
    DamperShut,
    /// The damper stays wide open.
    DamperOpen,
    /// The defrost's timer stands still.
    Timer,
    /// The defrost's heater is burnt out.
    Heater,
    /// The defrost's ending never closes.
    EndingOpen,
    /// The defrost's ending never opens.
    EndingStuck,
    /// The defrost's fuse has melted.
    Fuse,
    /// The drain is blocked.
    Drain,
    /// The lamp stays on: 25 W at 1.
    Lamp,
}

impl CabinetFault {
    /// Each of them.
    pub const ALL: [Self; 17] = [
        Self::DirtyCondenser,
        Self::RoomFan,
        Self::Blower,
        Self::Gasket,
        Self::DoorAjar,
        Self::ThermostatOpen,
        Self::ThermostatStuck,
        Self::ThermostatCold,
        Self::DamperShut,
        Self::DamperOpen,
        Self::Timer,
        Self::Heater,
        Self::EndingOpen,
        Self::EndingStuck,
        Self::Fuse,
        Self::Drain,
        Self::Lamp,
    ];

    /// The cabinet with this fault; as it was where it has no such part. A severity outside of
    /// 0 … 1 counts as the nearest of these.
    #[must_use]
    pub fn in_cabinet(self, sound: Cabinet, severity: Ratio) -> Cabinet {
        let severity = severity.get().clamp(0.0, 1.0);
        let left = |of: Ratio| Ratio::new(of.get() * (1.0 - severity));
        let wider = |gap: Ratio, by: f64| Ratio::new(gap.get().max(by * severity));
        let mut it = sound;
        match self {
            Self::DirtyCondenser => it.condenser.dirt = wider(it.condenser.dirt, 1.0),
            Self::RoomFan => {
                if let Some(fan) = &mut it.condenser.fan {
                    fan.turning = left(fan.turning);
                }
            }
            Self::Blower => {
                if let Some(blower) = &mut it.evaporator.blower {
                    blower.turning = left(blower.turning);
                }
            }
            Self::Gasket => it.first.door.gap = wider(it.first.door.gap, 0.1),
            Self::DoorAjar => it.first.door.gap = wider(it.first.door.gap, 1.0),
            Self::ThermostatCold => {
                it.thermostat.drift = it.thermostat.drift + KelvinDelta::new(-15.0 * severity);
            }
            Self::Lamp => it.lamp = it.lamp + Watts::new(25.0 * severity),
            Self::Drain => {
                if let Some(defrost) = &mut it.defrost {
                    defrost.drain = left(defrost.drain);
                }
            }
            _ if severity >= 0.5 => self.break_off(&mut it),
            _ => {}
        }
        it
    }

    /// The faults that know no degrees.
    fn break_off(self, it: &mut Cabinet) {
        match self {
            Self::ThermostatOpen => it.thermostat.contacts = Contacts::StuckOpen,
            Self::ThermostatStuck => it.thermostat.contacts = Contacts::StuckClosed,
            Self::DamperShut => it.damper.fixed = Some(Ratio::new(0.0)),
            Self::DamperOpen => it.damper.fixed = Some(Ratio::new(1.0)),
            _ => {}
        }
        let Some(defrost) = &mut it.defrost else {
            return;
        };
        match self {
            Self::Timer => defrost.timer.advances = false,
            Self::Heater => defrost.heater = None,
            Self::EndingOpen => defrost.ending.contacts = Contacts::StuckOpen,
            Self::EndingStuck => defrost.ending.contacts = Contacts::StuckClosed,
            Self::Fuse => defrost.fuse = None,
            _ => {}
        }
    }
}

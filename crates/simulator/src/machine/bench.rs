//! What is there to be measured with the plug out.
//!
//! Answers: which ohms lie between two points of this machine? `None` stands for open. Must never
//! know: what a meter shows of them, or what they mean.

use quantity::{Celsius, Farads, Ohms, Ratio};

use super::blueprint::{Blueprint, Control, Gear};
use super::build::{Machine, SOUND_LEAK};
use super::traces::Trace;
use crate::appliance::Mains;
use crate::cabinet::Contacts;
use crate::compressor::Pair;
use crate::protector::{Place, ProtectorFault};
use crate::start_gear::{Contact, Switch};

/// A machine with its plug out.
#[derive(Debug, Clone, Copy)]
pub struct Bench<'a> {
    machine: &'a Machine,
}

/// The three pins, by what they lead to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Pin {
    Common,
    Run,
    Start,
}

/// A start device off its pins.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum StartDevice {
    /// A pellet: its printed ohms and those that are there.
    Ptc {
        /// As printed.
        marking: Ohms,
        /// As it is.
        ohms: Option<Ohms>,
    },
    /// A relay: its coil, and its contact upright and upside down.
    CurrentRelay {
        /// Its coil.
        coil: Ohms,
        /// Closed as it hangs.
        upright: bool,
        /// Closed upside down.
        inverted: bool,
    },
}

/// A motor or a bearing with its wires.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fan {
    /// The share of its speed that it reaches.
    pub turning: Ratio,
}

impl Machine {
    /// The machine with its plug out.
    #[must_use]
    pub const fn bench(&self) -> Bench<'_> {
        Bench { machine: self }
    }
}

impl Bench<'_> {
    const fn blueprint(&self) -> &Blueprint {
        &self.machine.blueprint
    }

    const fn is_inverter(&self) -> bool {
        matches!(self.blueprint().gear, Gear::Inverter)
    }

    /// Between two of the pins 1, 2 and 3, nothing plugged on; which is which differs.
    #[must_use]
    pub fn between_pins(&self, one: usize, other: usize) -> Option<Ohms> {
        let pair = match (self.pin(one), self.pin(other)) {
            (Pin::Common, Pin::Run) | (Pin::Run, Pin::Common) => Pair::CommonRun,
            (Pin::Common, Pin::Start) | (Pin::Start, Pin::Common) => Pair::CommonStart,
            _ => Pair::StartRun,
        };
        if self.is_inverter() {
            self.machine.inverter.winding_ohms(pair)
        } else {
            self.machine.compressor.winding_ohms(pair, false)
        }
    }

    /// Which pin is which: six ways, by the machine's own ohms.
    fn pin(&self, number: usize) -> Pin {
        const WAYS: [[Pin; 3]; 6] = [
            [Pin::Start, Pin::Common, Pin::Run],
            [Pin::Start, Pin::Run, Pin::Common],
            [Pin::Common, Pin::Start, Pin::Run],
            [Pin::Common, Pin::Run, Pin::Start],
            [Pin::Run, Pin::Common, Pin::Start],
            [Pin::Run, Pin::Start, Pin::Common],
        ];
        let bits = self
            .machine
            .compressor
            .parts()
            .motor
            .main
            .resistance
            .get()
            .to_bits();
        let way = WAYS[(bits % 6) as usize];
        way[number.clamp(1, 3) - 1]
    }

    /// From any pin to the shell.
    #[must_use]
    pub fn pins_to_shell(&self) -> Option<Ohms> {
        if self.is_inverter() {
            self.machine.inverter.ohms_to_shell()
        } else {
            self.machine.compressor.ohms_to_shell()
        }
    }

    /// Across the protector, off its pin; nothing where there is none outside.
    #[must_use]
    pub fn protector(&self) -> Option<Option<Ohms>> {
        let protector = &self.machine.compressor.parts().protector;
        let is_outside = !self.is_inverter() && protector.place == Place::Shell;
        is_outside
            .then(|| (protector.fault != ProtectorFault::Open).then_some(protector.resistance))
    }

    /// The start device; none on an inverter.
    #[must_use]
    pub fn start_device(&self) -> Option<StartDevice> {
        if self.is_inverter() {
            return None;
        }
        let branches = &self.machine.compressor.parts().gear.branches;
        branches.iter().find_map(|branch| match branch.switch {
            Switch::Ptc(ptc) => Some(StartDevice::Ptc {
                marking: nearest_printed(ptc.resistance),
                ohms: ptc.cold_ohms(self.machine.room()),
            }),
            Switch::CurrentRelay(relay) => Some(StartDevice::CurrentRelay {
                coil: relay.coil,
                upright: relay.contact == Contact::Welded,
                inverted: relay.contact != Contact::NeverCloses,
            }),
            _ => None,
        })
    }

    /// A start or run capacitor: as printed, and as it is; a shorted one has none.
    #[must_use]
    pub fn capacitor(&self) -> Option<(Farads, Option<Farads>)> {
        let branches = &self.machine.compressor.parts().gear.branches;
        let capacitor = branches.iter().find_map(|branch| branch.capacitor)?;
        let left = (!capacitor.short).then_some(capacitor.capacitance);
        Some((self.blueprint().capacitor()?, left))
    }

    /// Across the thermostat's contacts at this temperature of its bulb, dial at coldest; nothing
    /// where a board decides.
    #[must_use]
    pub fn thermostat(&self, bulb: Celsius) -> Option<Option<Ohms>> {
        if self.blueprint().control == Control::Board {
            return None;
        }
        let thermostat = &self.machine.appliance.cabinet.thermostat;
        let closed = match thermostat.contacts {
            Contacts::Sound => bulb.get() > thermostat.opens.get(),
            Contacts::StuckClosed => true,
            Contacts::StuckOpen => false,
        };
        Some(closed.then_some(CONTACT))
    }

    /// How many kelvins a board's sensor is off; nothing where contacts decide.
    #[must_use]
    pub fn sensor_error(&self) -> Option<quantity::KelvinDelta> {
        let by_board = self.blueprint().control == Control::Board;
        by_board.then_some(self.machine.appliance.cabinet.thermostat.drift)
    }

    /// Heater, its thermostat in the cold, and fuse, one after the other; nothing without defrost.
    #[must_use]
    pub fn defrost_circuit(&self) -> Option<[Option<Ohms>; 3]> {
        let defrost = self.machine.appliance.cabinet.defrost.as_ref()?;
        let ending = match defrost.ending.contacts {
            Contacts::StuckOpen => None,
            Contacts::Sound | Contacts::StuckClosed => Some(CONTACT),
        };
        Some([defrost.heater, ending, defrost.fuse.map(|_| CONTACT)])
    }

    /// From one blade of the plug to the other, dial at coldest, cabinet as warm as the room.
    #[must_use]
    pub fn blade_to_blade(&self) -> Option<Ohms> {
        let machine = self.machine;
        if machine.has(Trace::CordOpen) || self.blueprint().control == Control::Board {
            // A board's supply lets no direct current of a meter through.
            return None;
        }
        let is_called = self.thermostat(machine.room()).flatten().is_some()
            && !machine.has(Trace::SetOff)
            && !machine.has(Trace::StandsInDefrost);
        if !is_called {
            // A lamp's wire hangs on the door: it is dark with the door shut.
            return None;
        }
        let protector = match self.protector() {
            Some(None) => None,
            Some(Some(ohms)) => Some(ohms.get()),
            None => Some(0.0),
        };
        let motor = machine.compressor.winding_ohms(Pair::CommonRun, true);
        let compressor = match (motor, protector) {
            (Some(motor), Some(protector)) if !machine.has(Trace::ConnectorOpen) => {
                Some(motor.get() + protector)
            }
            _ => None,
        };
        let fans = [self.blower(), self.room_fan()];
        let fans = fans
            .into_iter()
            .flatten()
            .map(|_| fan_winding(self.blueprint().mains));
        let all: f64 = compressor.into_iter().chain(fans).map(f64::recip).sum();
        (all > 0.0).then(|| Ohms::new(1.0 / all + machine.supply.cord.get()))
    }

    /// From the blades, joined, to earth and to bare metal.
    #[must_use]
    pub fn blades_to_metal(&self) -> Option<Ohms> {
        let machine = self.machine;
        // What nothing switches hangs on the other blade all the time.
        let windings = (!machine.has(Trace::ConnectorOpen))
            .then(|| self.pins_to_shell())
            .flatten();
        let leaks = &machine.supply.leaks;
        // What a sound machine leaks is capacitive: no meter sees it.
        let seen = |leak: Option<Ohms>| leak.filter(|ohms| *ohms != SOUND_LEAK);
        let all = [windings, seen(leaks.standing), seen(leaks.switched)];
        let sum: f64 = all.into_iter().flatten().map(|ohms| 1.0 / ohms.get()).sum();
        let reaches = sum > 0.0 && !machine.has(Trace::CordOpen);
        reaches.then(|| Ohms::new(1.0 / sum))
    }

    /// Whether something other than the compressor leaks.
    #[must_use]
    pub fn another_part_leaks(&self) -> bool {
        let leaks = &self.machine.supply.leaks;
        let all = [leaks.standing, leaks.switched];
        all.into_iter().flatten().any(|ohms| ohms != SOUND_LEAK)
    }

    /// From the plug's earth pin to bare metal.
    #[must_use]
    pub const fn earth_to_metal(&self) -> Ohms {
        Ohms::new(0.1)
    }

    /// The evaporator's fan, where there is one.
    #[must_use]
    pub fn blower(&self) -> Option<Fan> {
        let blower = self.machine.appliance.cabinet.evaporator.blower?;
        Some(Fan {
            turning: blower.turning,
        })
    }

    /// Air that a sound evaporator's fan moves, in m³/s.
    #[must_use]
    pub fn full_air(&self) -> Option<f64> {
        let blower = self.machine.appliance.cabinet.evaporator.blower;
        blower.map(|blower| blower.flow)
    }

    /// Whether the way into the second compartment is open while that is warm; nothing where
    /// there is none.
    #[must_use]
    pub fn damper_is_open(&self) -> Option<bool> {
        let cabinet = &self.machine.appliance.cabinet;
        cabinet.second.as_ref()?;
        Some(cabinet.damper.fixed.is_none_or(|fixed| fixed.get() > 0.0))
    }

    /// The condenser's fan, where there is one.
    #[must_use]
    pub fn room_fan(&self) -> Option<Fan> {
        let fan = self.machine.appliance.cabinet.condenser.fan?;
        Some(Fan {
            turning: fan.turning,
        })
    }

    /// How much of the condenser is matted or boxed in.
    #[must_use]
    pub const fn dirt(&self) -> Ratio {
        self.machine.appliance.cabinet.condenser.dirt
    }

    /// How far the door gapes.
    #[must_use]
    pub const fn gap(&self) -> Ratio {
        self.machine.appliance.cabinet.first.door.gap
    }

    /// How much of the space that frost can fill is filled.
    #[must_use]
    pub const fn frost(&self) -> Ratio {
        self.machine.frost()
    }

    /// Whether the drain is free.
    #[must_use]
    pub fn drain(&self) -> Ratio {
        let defrost = self.machine.appliance.cabinet.defrost.as_ref();
        defrost.map_or(Ratio::new(1.0), |defrost| defrost.drain)
    }

    /// Whether the lamp stays on behind a shut door.
    #[must_use]
    pub fn lamp_stays_on(&self) -> bool {
        self.machine.appliance.cabinet.lamp.get() > 0.0
    }

    /// What a look finds.
    #[must_use]
    pub fn traces(&self) -> &[Trace] {
        &self.machine.traces
    }
}

/// Across closed contacts.
const CONTACT: Ohms = Ohms::new(0.1);

/// A shaded-pole fan: 50 to 300 Ω at 115 V (from memory); four times that at 230.
const fn fan_winding(mains: Mains) -> f64 {
    match mains {
        Mains::V115F60 => 120.0,
        Mains::V230F50 => 480.0,
    }
}

/// Pellets are printed with one of a few values: 4.7, 6.8, 15, 22, 33 Ω (component tables).
fn nearest_printed(ohms: Ohms) -> Ohms {
    const PRINTED: [f64; 5] = [4.7, 6.8, 15.0, 22.0, 33.0];
    let off = |printed: &f64| libm::fabs(libm::log(printed / ohms.get()));
    let nearest = PRINTED
        .into_iter()
        .min_by(|one, other| off(one).total_cmp(&off(other)));
    Ohms::new(nearest.unwrap_or(ohms.get()))
}

//! Parts from which a machine is made, and examples of sound ones.
//!
//! Answers: what does a plausible machine of each kind consist of? Sizes are of the order of
//! household machines and from memory, unless a source stands beside them.
//!
//! Must never know: how it will behave.

use super::SteadyDrive;
use crate::cabinet::{
    Blower, Cabinet, Compartment, CondenserWall, Contacts, Contents, Damper, Defrost, Door, Ending,
    EvaporatorWall, Rime, RoomFan, Sensor, Shell, Thermostat, Timer,
};
use crate::circuit::{Circuit, Sizing};
use crate::{ParameterError, Refrigerant};
use quantity::{
    Celsius, CubicMetres, Hertz, JoulesPerKelvin, KelvinDelta, Kilograms, Ohms, Pascals, Ratio,
    Seconds, Volts, Watts, WattsPerKelvin,
};

/// What kind of machine.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// Chest freezer, evaporator in the wall.
    ChestFreezer,
    /// Upright freezer with shelves of evaporator, frost taken off by hand.
    UprightFreezer,
    /// Refrigerator-freezer with a fan, a defrost heater and a damper that follows the
    /// fresh-food compartment.
    FrostFree,
    /// The same with a fixed opening and its only thermostat in the fresh-food compartment.
    FrostFreeOneThermostat,
    /// Refrigerator whose cold plate thaws at each stop.
    PlateRefrigerator,
}

impl Kind {
    /// Each of them.
    pub const ALL: [Self; 5] = [
        Self::ChestFreezer,
        Self::UprightFreezer,
        Self::FrostFree,
        Self::FrostFreeOneThermostat,
        Self::PlateRefrigerator,
    ];
}

/// The mains that a machine is made for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mains {
    /// 115 V and 60 Hz.
    V115F60,
    /// 230 V and 50 Hz.
    V230F50,
}

impl Mains {
    /// Nominal volts.
    #[must_use]
    pub const fn volts(self) -> Volts {
        match self {
            Self::V115F60 => Volts::new(115.0),
            Self::V230F50 => Volts::new(230.0),
        }
    }

    /// Turns a second of a two-pole motor with 3 % of slip.
    #[must_use]
    pub const fn turns(self) -> Hertz {
        match self {
            Self::V115F60 => Hertz::new(60.0 * 0.97),
            Self::V230F50 => Hertz::new(50.0 * 0.97),
        }
    }

    /// The heater of a common power for this voltage: 450 W at 115 V, 350 W at 230 V (R = V²/P).
    const fn defrost_heater(self) -> Ohms {
        match self {
            Self::V115F60 => Ohms::new(29.0),
            Self::V230F50 => Ohms::new(151.0),
        }
    }
}

/// Everything a machine consists of, but what turns its pump.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Parts {
    /// The refrigerant circuit.
    pub circuit: Circuit,
    /// The cabinet around it.
    pub cabinet: Cabinet,
    /// Its mains.
    pub mains: Mains,
}

impl Parts {
    /// # Errors
    /// [`ParameterError`] names the first parameter that is out of bounds.
    pub fn checked(&self) -> Result<(), ParameterError> {
        self.circuit.checked()?;
        self.cabinet.checked()
    }

    /// A sound machine in a room of 25 °C.
    ///
    /// # Errors
    /// None for any of these arguments; the bounds of [`Circuit::sized`] are checked all the same.
    pub fn example(
        kind: Kind,
        mains: Mains,
        refrigerant: Refrigerant,
    ) -> Result<Self, ParameterError> {
        let (cooling, evaporator, condenser) = match kind {
            Kind::ChestFreezer | Kind::UprightFreezer => (110.0, 3.2e-4, 2.4e-4),
            Kind::FrostFree | Kind::FrostFreeOneThermostat => (150.0, 3.0e-4, 2.8e-4),
            Kind::PlateRefrigerator => (65.0, 1.8e-4, 1.4e-4),
        };
        let circuit = Circuit::sized(&Sizing {
            refrigerant,
            cooling: Watts::new(cooling),
            speed: mains.turns(),
            evaporator: CubicMetres::new(evaporator),
            boiling: WattsPerKelvin::new(0.55 * cooling),
            condenser: CubicMetres::new(condenser),
            condensing: WattsPerKelvin::new(0.8 * cooling),
        })?;
        let cabinet = match kind {
            Kind::ChestFreezer => chest(),
            Kind::UprightFreezer => upright(),
            Kind::FrostFree => frost_free(mains),
            Kind::FrostFreeOneThermostat => one_thermostat(mains),
            Kind::PlateRefrigerator => plate(),
        };
        Ok(Self {
            circuit,
            cabinet,
            mains,
        })
    }

    /// The drive that goes with the example.
    ///
    /// # Errors
    /// None for the mains there are.
    pub fn steady_drive(&self) -> Result<SteadyDrive, ParameterError> {
        SteadyDrive::new(
            self.mains.turns(),
            Ratio::new(0.75),
            Watts::new(8.0),
            Pascals::new(2.5e5),
        )
    }
}

/// Litres, W/K of insulation and kilograms of food.
fn compartment(litres: f64, insulation: f64, food: f64, openings: f64) -> Compartment {
    Compartment {
        volume: CubicMetres::new(litres / 1000.0),
        air: JoulesPerKelvin::new(50.0 * litres),
        wall: JoulesPerKelvin::new(80.0 * litres),
        insulation: WattsPerKelvin::new(insulation),
        contents: Contents {
            mass: Kilograms::new(food),
            exchange: WattsPerKelvin::new(0.5 + 0.3 * food),
        },
        door: Door {
            openings,
            gap: Ratio::new(0.001),
        },
    }
}

fn thermostat(sensor: Sensor, closes: f64, opens: f64) -> Thermostat {
    Thermostat {
        sensor,
        closes: Celsius::new(closes),
        opens: Celsius::new(opens),
        drift: KelvinDelta::new(0.0),
        contacts: Contacts::Sound,
    }
}

/// A cabinet with one compartment and without fans.
fn still(first: Compartment, evaporator: f64, condenser: f64, control: Thermostat) -> Cabinet {
    Cabinet {
        first,
        second: None,
        evaporator: EvaporatorWall {
            metal: JoulesPerKelvin::new(250.0 * evaporator),
            still: WattsPerKelvin::new(evaporator),
            blower: None,
            rime: Rime {
                area: evaporator / 8.0,
                fills: Kilograms::new(15.0),
            },
        },
        condenser: CondenserWall {
            metal: JoulesPerKelvin::new(300.0 * condenser),
            still: WattsPerKelvin::new(condenser),
            fan: None,
            dirt: Ratio::new(0.0),
            into_wall: WattsPerKelvin::new(0.0),
        },
        shell: Shell {
            metal: JoulesPerKelvin::new(3700.0),
            to_room: WattsPerKelvin::new(0.65),
        },
        thermostat: control,
        damper: Damper {
            set: Celsius::new(4.0),
            most: Ratio::new(0.0),
            fixed: None,
        },
        defrost: None,
        lamp: Watts::new(0.0),
        room: Celsius::new(25.0),
        humidity: Ratio::new(0.5),
    }
}

fn chest() -> Cabinet {
    let control = thermostat(Sensor::FirstAir, -18.0, -21.5);
    let mut it = still(compartment(200.0, 0.85, 6.0, 2.0), 13.0, 11.0, control);
    it.condenser.into_wall = WattsPerKelvin::new(0.2);
    it
}

fn upright() -> Cabinet {
    let control = thermostat(Sensor::FirstAir, -18.0, -21.5);
    still(compartment(180.0, 1.0, 6.0, 4.0), 15.0, 11.0, control)
}

fn frost_free(mains: Mains) -> Cabinet {
    let control = thermostat(Sensor::FirstAir, -16.5, -20.5);
    let mut it = still(compartment(100.0, 0.6, 6.0, 5.0), 1.0, 5.0, control);
    it.second = Some(compartment(250.0, 1.1, 8.0, 20.0));
    it.evaporator = EvaporatorWall {
        metal: JoulesPerKelvin::new(1800.0),
        still: WattsPerKelvin::new(1.0),
        blower: Some(Blower {
            flow: 0.017,
            exchange: Ratio::new(0.85),
            turning: Ratio::new(1.0),
            power: Watts::new(6.0),
        }),
        rime: Rime {
            area: 2.0,
            fills: Kilograms::new(1.6),
        },
    };
    it.condenser.metal = JoulesPerKelvin::new(3000.0);
    it.condenser.fan = Some(RoomFan {
        blown: WattsPerKelvin::new(10.0),
        turning: Ratio::new(1.0),
        power: Watts::new(6.0),
    });
    it.damper = Damper {
        set: Celsius::new(4.0),
        most: Ratio::new(0.3),
        fixed: None,
    };
    it.defrost = Some(Defrost {
        timer: Timer {
            after: Seconds::new(8.0 * 3600.0),
            turn: Seconds::new(25.0 * 60.0),
            advances: true,
        },
        heater: Some(mains.defrost_heater()),
        ending: Ending {
            closes: Celsius::new(-5.0),
            opens: Celsius::new(10.0),
            contacts: Contacts::Sound,
        },
        fuse: Some(Celsius::new(72.0)),
        drain: Ratio::new(1.0),
    });
    it
}

fn one_thermostat(mains: Mains) -> Cabinet {
    let mut it = frost_free(mains);
    it.thermostat = thermostat(Sensor::SecondAir, 5.5, 2.0);
    it.damper.fixed = Some(Ratio::new(0.27));
    it
}

fn plate() -> Cabinet {
    let control = thermostat(Sensor::EvaporatorEnd, 4.5, -18.0);
    still(compartment(140.0, 0.9, 5.0, 15.0), 3.2, 7.0, control)
}

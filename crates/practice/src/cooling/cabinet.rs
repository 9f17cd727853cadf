//! Machines that cool: sound ones, and such as cool less than they should.

use measure::cool_down::{CabinetKind, Goal};
use quantity::{Celsius, Ratio, Seconds};
use simulator::appliance::{Kind, Sample};
use simulator::machine::{Ailment, Blueprint, Machine, Trouble};
use simulator::{Chance, ParameterError};

/// What weakens cooling without keeping the compressor from running.
const WEAKENS: [Ailment; 14] = [
    Ailment::ValvesWorn,
    Ailment::CapillaryNarrow,
    Ailment::ChargeLow,
    Ailment::ChargeGone,
    Ailment::Moisture,
    Ailment::WrongCharge,
    Ailment::BlowerStopped,
    Ailment::HeaterOpen,
    Ailment::IcedUp,
    Ailment::CondenserMatted,
    Ailment::RoomFanStopped,
    Ailment::SealLeaks,
    Ailment::DamperShut,
    Ailment::LampOn,
];
/// So many of all machines are sound (judgement).
const SOUND: f64 = 0.4;
/// So many are sound and asked too much: a hot room or a warm load (judgement).
const ASKED_MUCH: f64 = 0.08;
/// How long a machine is watched to know where it ends.
const WATCHED: Seconds = Seconds::new(48.0 * 3600.0);

/// Where a thermometer lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Place {
    /// In a chest freezer.
    Chest,
    /// In an upright freezer.
    Upright,
    /// In the freezer of a combined machine.
    CombinedFreezer,
    /// In the fresh food of a combined machine.
    CombinedFreshFood,
    /// In a refrigerator with a plate.
    Refrigerator,
}

impl Place {
    /// All of them.
    pub const ALL: [Self; 5] = [
        Self::Chest,
        Self::Upright,
        Self::CombinedFreezer,
        Self::CombinedFreshFood,
        Self::Refrigerator,
    ];

    /// What a person would say it is.
    #[must_use]
    pub const fn kind(self) -> CabinetKind {
        match self {
            Self::Chest => CabinetKind::ChestFreezer,
            Self::Upright | Self::CombinedFreezer => CabinetKind::UprightFreezer,
            Self::CombinedFreshFood | Self::Refrigerator => CabinetKind::Refrigerator,
        }
    }

    /// What it is to reach within a day: −18 °C in a freezer, which a combined machine's control
    /// keeps to on the mean and no better, so that −15 °C counts there; 8 °C where fresh food is
    /// kept (common practice, no source).
    #[must_use]
    pub const fn goal(self) -> Goal {
        let target = match self {
            Self::Chest | Self::Upright => -18.0,
            Self::CombinedFreezer => -15.0,
            Self::CombinedFreshFood | Self::Refrigerator => 8.0,
        };
        Goal {
            target: Celsius::new(target),
            within: Seconds::new(86_400.0),
        }
    }
}

/// A machine of which two days are known.
#[derive(Debug, Clone)]
pub struct CoolingMachine {
    /// What is wrong with it; nothing with a sound one.
    pub ailment: Option<Ailment>,
    /// Minute by minute since it was switched on.
    pub samples: Vec<Sample>,
    /// The room it stands in.
    pub room: Celsius,
    places: Vec<Place>,
}

impl CoolingMachine {
    /// The machine of a number; `None` where it doesn't start to cool at all: nobody lays a
    /// thermometer in one that stands still.
    ///
    /// # Errors
    /// [`ParameterError`] where the simulator refuses a machine, which tests rule out.
    pub fn drawn(seed: u64, number: u64) -> Result<Option<Self>, ParameterError> {
        let chance = Chance::new(seed).fork(number.wrapping_add(1));
        let mut draw = chance.fork(0);
        let (kind, is_inverter) = crate::draw::kind(&mut draw);
        let blueprint = Blueprint::drawn(kind, is_inverter, &mut draw);
        let ailment = match draw.share() {
            mark if mark < SOUND => None,
            mark if mark < SOUND + ASKED_MUCH => Some(Ailment::TooMuchAsked),
            _ => {
                let fits = |ailment: &Ailment| ailment.exists_in(&blueprint);
                let all: Vec<Ailment> = WEAKENS.iter().copied().filter(fits).collect();
                all.get((draw.share() * all.len() as f64) as usize).copied()
            }
        };
        let trouble = ailment.map(|ailment| Trouble {
            ailment,
            severity: Ratio::new(draw.share()),
        });
        let machine = Machine::build(&blueprint, trouble.as_slice(), chance.fork(1))?;
        let mut session = machine.plug_in(Seconds::new(1_800.0))?;
        if !session.has_run() {
            return Ok(None);
        }
        session.go_on(Seconds::new(WATCHED.get() - 1_800.0))?;
        Ok(Some(Self {
            ailment,
            samples: session.course().samples.clone(),
            room: machine.room(),
            places: places(kind).to_vec(),
        }))
    }

    /// Where thermometers lie in it.
    #[must_use]
    pub fn places(&self) -> &[Place] {
        &self.places
    }

    /// The air at a place, minute by minute.
    #[must_use]
    pub fn air(&self, place: Place) -> Vec<f64> {
        let samples = self.samples.iter();
        samples
            .map(|sample| match (place, sample.second_air) {
                (Place::CombinedFreshFood, Some(second)) => second.get(),
                _ => sample.air.get(),
            })
            .collect()
    }
}

const fn places(kind: Kind) -> &'static [Place] {
    match kind {
        Kind::ChestFreezer => &[Place::Chest],
        Kind::UprightFreezer => &[Place::Upright],
        Kind::PlateRefrigerator => &[Place::Refrigerator],
        Kind::FrostFree | Kind::FrostFreeOneThermostat => {
            &[Place::CombinedFreezer, Place::CombinedFreshFood]
        }
    }
}

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
            Self::Upright => CabinetKind::UprightFreezer,
            Self::CombinedFreezer => CabinetKind::CombinedFreezer,
            Self::CombinedFreshFood => CabinetKind::CombinedFreshFood,
            Self::Refrigerator => CabinetKind::Refrigerator,
        }
    }

    /// What it is to reach within a day: 0 °F and 40 °F (USDA FSIS and FDA).
    #[must_use]
    pub const fn goal(self) -> Goal {
        let target = match self {
            Self::Chest | Self::Upright | Self::CombinedFreezer => -18.0,
            Self::CombinedFreshFood | Self::Refrigerator => 4.0,
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
            samples: each_minute(&session.course().samples),
            room: machine.room(),
            places: places(kind).to_vec(),
        }))
    }

    /// Where thermometers lie in it.
    #[must_use]
    pub fn places(&self) -> &[Place] {
        &self.places
    }

    /// The air at a place with its time, in seconds and °C.
    #[must_use]
    pub fn air(&self, place: Place) -> Vec<(f64, f64)> {
        let samples = self.samples.iter();
        samples
            .map(|sample| {
                let air = match (place, sample.second_air) {
                    (Place::CombinedFreshFood, Some(second)) => second,
                    _ => sample.air,
                };
                (sample.time.get(), air.get())
            })
            .collect()
    }
}

/// A session has two samples a minute, one of them at the end of a stretch.
fn each_minute(samples: &[Sample]) -> Vec<Sample> {
    let mut minute = 0.0;
    let mut kept = Vec::new();
    for sample in samples {
        if sample.time.get() >= minute {
            kept.push(*sample);
            minute = 60.0 * (libm::floor(sample.time.get() / 60.0) + 1.0);
        }
    }
    kept
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

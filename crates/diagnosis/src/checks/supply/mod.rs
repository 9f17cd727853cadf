//! The outlet, the way to the machine, and what is left of the volts as it starts.
//!
//! Answers: may it be powered there, how far do the volts fall and what is left of the torque,
//! how much resistance lies in between, how long may a cord be? Must never know: whether the fall
//! or the motor is to blame (that is weighed with everything else).

mod choices;

pub use choices::{Caught, CordConductors, OutletWiring, PowerSource, Protection};

use job::Job;
use measure::Against;
use measure::supply::{
    Conductors, LOCKED_ROTOR_POWER_FACTOR, SUPPLY_STANDARDS, SupplyError, SupplyStandard,
    VoltageStandard, longest_cord, sag, source_resistance, torque_left,
};
use quantity::{Amps, Celsius, Metres, Observed, Ohms, Ratio, Uncertain, Volts};

use super::machine::MainsChoice;
use super::meter_readings::MeterReadings;
use crate::choice::{Choice, answered};
use crate::{Basis, Caution, Item, Link, LinkState};

/// What a cord may take of the volts: 3 % (NEC 210.19(A), informational note: advice, not a
/// rule), here at the current of a start.
pub const CORD_MAY_TAKE: Ratio = Ratio::new(0.03);
/// From here on the fall alone can keep a sound compressor from starting: starting torque is
/// rated for nine tenths of the volts (NEMA MG 1, a motor's plate ±10 %).
pub const FALLS_TOO_FAR: Ratio = Ratio::new(0.1);
/// Up to here a fall is ordinary (NEC 210.19(A), informational note: 5 % in all).
pub const FALLS_AS_USUAL: Ratio = Ratio::new(0.05);
/// A cord in a room (judgement).
const COPPER: Celsius = Celsius::new(20.0);

/// What is known of the supply.
#[derive(Debug, Clone, PartialEq)]
pub struct Supply {
    /// What protects the outlet.
    pub protection: Option<Protection>,
    /// What a tester shows of it.
    pub wiring: Option<OutletWiring>,
    /// What feeds the machine.
    pub source: Option<PowerSource>,
    /// An extension cord's length and conductors.
    pub cord: (Option<Metres>, Option<Conductors>),
    /// Volts while the machine is off.
    pub idle: Option<Uncertain<Volts>>,
    /// The lowest volts during a start.
    pub lowest: Option<Uncertain<Volts>>,
    /// Whether those were surely the lowest.
    pub is_caught: bool,
    /// Amperes during the same start.
    pub starting: Option<Uncertain<Amps>>,
    mains: Option<MainsChoice>,
}

/// One statement about the supply.
#[derive(Debug, Clone, PartialEq)]
pub enum SupplyFinding {
    /// What protects the outlet.
    Protection(Protection),
    /// What a plug-in tester shows: earth missing, or poles swapped.
    Wiring(OutletWiring),
    /// It was fed by something else than an outlet with nothing in between.
    Source(PowerSource),
    /// The idle volts against a standard.
    Idle(StandsAgainst),
    /// By how much of the idle volts they fall during a start.
    Fall {
        /// The share that is lost.
        share: Uncertain<Ratio>,
        /// Whether the lowest was surely caught; else they may have fallen further.
        is_caught: bool,
    },
    /// Why nothing follows from the volts.
    Unusable(SupplyError),
    /// The lowest volts against a standard.
    Lowest(StandsAgainst),
    /// What is left of the starting torque that the motor is rated for.
    TorqueLeft {
        /// The share.
        share: Uncertain<Ratio>,
        /// Whether the lowest volts were surely caught; else it may be less.
        is_caught: bool,
    },
    /// What lies between the mains and the machine.
    Resistance {
        /// Mains, house wiring, contacts and cord together, by volts and current: an upper bound.
        way: Option<Uncertain<Ohms>>,
        /// The cord alone, by its size.
        cord: Option<Ohms>,
    },
    /// The longest cord that takes no more than [`CORD_MAY_TAKE`] at this starting current.
    LongestCord {
        /// Its conductors.
        conductors: Conductors,
        /// Its length.
        length: Metres,
        /// How long the one in use is.
        used: Option<Metres>,
    },
}

/// Volts held against a standard.
#[derive(Debug, Clone, PartialEq)]
pub struct StandsAgainst {
    /// What was read.
    pub volts: Uncertain<Volts>,
    /// The standard, with its limits.
    pub standard: VoltageStandard,
    /// How they stand.
    pub against: Against,
}

impl StandsAgainst {
    fn of(volts: &Uncertain<Volts>, standard: VoltageStandard) -> Self {
        Self {
            volts: volts.clone(),
            against: standard.judge(volts),
            standard,
        }
    }
}

impl Supply {
    /// What is asked, in order. Nothing is plugged in where nothing would disconnect it.
    pub(crate) fn items(job: &Job) -> Vec<Item> {
        let mut items = vec![Item::OutletProtection, Item::OutletWiring];
        match answered::<Protection>(job) {
            Some(Protection::None | Protection::ButtonDoesNothing) => return items,
            Some(Protection::TripsByItsButton) | None => items.push(Item::PowerSource),
        }
        if answered(job) == Some(PowerSource::ExtensionCord) {
            items.extend([Item::CordLength, Item::CordConductors]);
        }
        items.extend([
            Item::IdleVolts,
            Item::LowestVolts,
            Item::LowestCaught,
            Item::StartingAmps,
        ]);
        items
    }

    pub(crate) fn of(job: &Job, mains: Option<MainsChoice>) -> Self {
        let mut readings = MeterReadings::of(job);
        let source = answered(job);
        let is_corded = source == Some(PowerSource::ExtensionCord);
        let length = Item::CordLength
            .metres(job)
            .and_then(|typed| match typed.observed {
                Observed::Value(value) if value.get() >= 0.0 => Some(value),
                _ => None,
            });
        Self {
            protection: answered(job),
            wiring: answered(job),
            source,
            cord: (
                length.filter(|_| is_corded),
                answered::<CordConductors>(job)
                    .filter(|_| is_corded)
                    .map(Into::into),
            ),
            idle: readings.volts(Item::IdleVolts),
            lowest: readings.volts(Item::LowestVolts),
            is_caught: matches!(
                answered(job),
                Some(Caught::HumLasted | Caught::MeterKeepsLowest)
            ),
            starting: readings.amps(Item::StartingAmps),
            mains,
        }
    }

    /// The share of the idle volts that is lost during a start.
    pub(crate) fn fall(&self) -> Option<Result<Uncertain<Ratio>, SupplyError>> {
        Some(sag(self.idle.as_ref()?, self.lowest.as_ref()?))
    }

    pub(crate) fn findings(&self) -> Vec<SupplyFinding> {
        let protection = self.protection.map(SupplyFinding::Protection);
        let wiring = self
            .wiring
            .filter(|wiring| {
                matches!(
                    wiring,
                    OutletWiring::EarthMissing | OutletWiring::PolesSwapped
                )
            })
            .map(SupplyFinding::Wiring);
        let source = self
            .source
            .filter(|source| *source != PowerSource::OutletAlone)
            .map(SupplyFinding::Source);
        let named = protection.into_iter().chain(wiring).chain(source);
        named
            .chain(self.idle_volts())
            .chain(self.falling())
            .chain(self.resistance())
            .chain(self.longest_cord())
            .collect()
    }

    pub(crate) fn cautions(&self) -> Vec<Caution> {
        let unprotected = match self.protection {
            Some(Protection::None) => Some(Caution::UnprotectedOutlet),
            Some(Protection::ButtonDoesNothing) => Some(Caution::DeadProtection),
            Some(Protection::TripsByItsButton) | None => None,
        };
        let no_earth = (self.wiring == Some(OutletWiring::EarthMissing))
            .then_some(Caution::OutletWithoutEarth);
        unprotected.into_iter().chain(no_earth).collect()
    }

    /// Volts that hold under load, or that surely don't.
    pub(crate) fn link(&self) -> Option<(Link, LinkState)> {
        let fall = self.fall()?.ok()?;
        let (least, most) = (
            fall.value() - fall.expanded(),
            fall.value() + fall.expanded(),
        );
        if least > FALLS_TOO_FAR {
            Some((Link::Supply, LinkState::Doubtful(Basis::Measured)))
        } else if most < FALLS_AS_USUAL && self.is_caught {
            Some((Link::Supply, LinkState::SoundSoFar(Basis::Measured)))
        } else {
            None
        }
    }

    /// Within range A that is said, else how it stands against range B, which is wider.
    fn idle_volts(&self) -> Option<SupplyFinding> {
        let (volts, mains) = (self.idle.as_ref()?, self.mains?);
        let found = match mains {
            MainsChoice::V120F60 => {
                let normal =
                    StandsAgainst::of(volts, standard(SupplyStandard::AnsiUtilisationA, mains));
                if normal.against == Against::Within {
                    normal
                } else {
                    StandsAgainst::of(volts, standard(SupplyStandard::AnsiUtilisationB, mains))
                }
            }
            MainsChoice::V230F50 => {
                StandsAgainst::of(volts, standard(SupplyStandard::Iec230, mains))
            }
            _ => StandsAgainst::of(volts, VoltageStandard::of_motor(mains.motor_volts())),
        };
        Some(SupplyFinding::Idle(found))
    }

    fn falling(&self) -> Vec<SupplyFinding> {
        let (Some(lowest), is_caught) = (&self.lowest, self.is_caught) else {
            return Vec::new();
        };
        let mut found = Vec::new();
        match self.fall() {
            Some(Ok(share)) => found.push(SupplyFinding::Fall { share, is_caught }),
            Some(Err(error)) => return vec![SupplyFinding::Unusable(error)],
            None => {}
        }
        if let Some(mains) = self.mains {
            let under_load = match mains {
                MainsChoice::V120F60 => standard(SupplyStandard::RefrigeratorOutlet115, mains),
                _ => VoltageStandard::of_motor(mains.motor_volts()),
            };
            found.push(SupplyFinding::Lowest(StandsAgainst::of(lowest, under_load)));
            found.extend(torque(lowest, mains.motor_volts(), is_caught));
        }
        found
    }

    fn resistance(&self) -> Option<SupplyFinding> {
        let way = match (&self.idle, &self.lowest, &self.starting) {
            (Some(idle), Some(lowest), Some(amps)) => {
                source_resistance(idle, lowest, amps, LOCKED_ROTOR_POWER_FACTOR).ok()
            }
            _ => None,
        };
        let cord = match self.cord {
            (Some(length), Some(conductors)) => conductors.loop_resistance(length, COPPER),
            _ => None,
        };
        (way.is_some() || cord.is_some()).then_some(SupplyFinding::Resistance { way, cord })
    }

    /// For the cord in use, or else for the thinnest that is advised for a test: 14 AWG up to
    /// 127 V, 1.5 mm² above (from memory).
    fn longest_cord(&self) -> Option<SupplyFinding> {
        if self.source != Some(PowerSource::ExtensionCord) {
            return None;
        }
        let mains = self.mains?;
        let advised = match mains {
            MainsChoice::V230F50 | MainsChoice::V220F60 => Conductors::Square1_5,
            _ => Conductors::Awg14,
        };
        let conductors = self.cord.1.unwrap_or(advised);
        let allowed = mains.volts() * CORD_MAY_TAKE.get();
        let amps = self.starting.as_ref()?.value();
        Some(SupplyFinding::LongestCord {
            conductors,
            length: longest_cord(conductors, COPPER, amps, allowed)?,
            used: self.cord.0,
        })
    }
}

/// One of the standards that give volts by themselves; a motor's own tolerance where it doesn't.
fn standard(wanted: SupplyStandard, mains: MainsChoice) -> VoltageStandard {
    let mut all = SUPPLY_STANDARDS.into_iter();
    all.find(|one| one.standard == wanted)
        .unwrap_or_else(|| VoltageStandard::of_motor(mains.motor_volts()))
}

/// It goes with the square, so that its relative uncertainty is twice that of the volts.
fn torque(lowest: &Uncertain<Volts>, rated: Volts, is_caught: bool) -> Option<SupplyFinding> {
    let share = torque_left(lowest.value(), rated)?;
    let slope = 2.0 * lowest.value().get() / (rated.get() * rated.get());
    let nothing = Uncertain::exact(Volts::new(0.0));
    Some(SupplyFinding::TorqueLeft {
        share: Uncertain::following(share, (lowest, slope), (&nothing, 0.0)),
        is_caught,
    })
}

impl SupplyFinding {
    /// Its short name for files.
    #[must_use]
    pub fn name(&self) -> &'static str {
        match self {
            Self::Protection(_) => "outlet-protection",
            Self::Wiring(wiring) => wiring.name(),
            Self::Source(source) => source.name(),
            Self::Idle(_) => "idle-volts",
            Self::Fall { .. } => "volts-fall",
            Self::Unusable(_) => "volts-unusable",
            Self::Lowest(_) => "lowest-volts",
            Self::TorqueLeft { .. } => "torque-left",
            Self::Resistance { .. } => "way-resistance",
            Self::LongestCord { .. } => "longest-cord",
        }
    }
}

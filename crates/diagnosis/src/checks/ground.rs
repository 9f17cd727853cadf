//! Is the metal live? From the plug, with nothing taken apart.

use job::{Job, Unit};
use measure::{Insulation, InsulationReading, ProtectiveDevice, SOUND, Tester, Trip, leakage};
use quantity::{Amps, Observed, Ohms, Volts};

use super::machine::MainsChoice;

use crate::choice::{answered, choices};
use crate::{Caution, Finding, Item};

choices! {
    /// Whether the plug has an earth pin.
    pub enum EarthPin answers "ground" / "earth-pin" {
        /// It has one.
        Has = "has",
        /// Two pins only, or the earth pin is gone.
        None = "none",
    }
}

choices! {
    /// What the insulation is measured with.
    pub enum TesterChoice answers "ground" / "tester" {
        /// A multimeter on ohms.
        Ohmmeter = "ohmmeter",
        /// An insulation tester at 250 V.
        Tester250 = "tester-250-v",
        /// An insulation tester at 500 V.
        Tester500 = "tester-500-v",
    }
}

impl From<TesterChoice> for Tester {
    fn from(choice: TesterChoice) -> Self {
        match choice {
            TesterChoice::Ohmmeter => Self::Ohmmeter,
            TesterChoice::Tester250 => Self::InsulationTester(Volts::new(250.0)),
            TesterChoice::Tester500 => Self::InsulationTester(Volts::new(500.0)),
        }
    }
}

/// Where insulation is measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum LeakPath {
    /// From the plug's blades to its earth pin.
    BladesToEarth,
    /// From the plug's blades to the cabinet's metal.
    BladesToMetal,
    /// From a pin of the compressor to its shell.
    PinToShell(measure::windings::Pin),
    /// From each of the compressor's three pins to its shell.
    PinsToShell,
}

/// What a leak would let through at mains voltage, by resistance alone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Leakage {
    /// The mains.
    pub volts: Volts,
    /// The current; where only a bound on the resistance is known, at most this.
    pub current: Amps,
    /// The protective device that is usual for these mains.
    pub device: ProtectiveDevice,
    /// Whether it would trip.
    pub trip: Trip,
}

impl Leakage {
    /// Nothing where the mains aren't known.
    pub(crate) fn of(proved: Insulation, mains: Option<MainsChoice>) -> Option<Self> {
        let mains = mains?;
        let volts = mains.volts();
        let device = usual_device(mains);
        let resistance = match proved {
            Insulation::Clear { above } | Insulation::RangeTooLow { above } => above,
            Insulation::Doubtful { reading } | Insulation::Leaks { reading } => reading,
        };
        let current = leakage(volts, resistance);
        Some(Self {
            volts,
            current,
            device,
            trip: device.at(current),
        })
    }
}

/// Class A devices are usual where there are 120 V and 60 Hz, 30 mA elsewhere (common practice,
/// no source).
pub(crate) const fn usual_device(mains: MainsChoice) -> ProtectiveDevice {
    match mains {
        MainsChoice::V120F60 => ProtectiveDevice::GroundFault6Milliamps,
        MainsChoice::V230F50 | MainsChoice::V220F60 | MainsChoice::V127F60 | MainsChoice::V100 => {
            ProtectiveDevice::ResidualCurrent30Milliamps
        }
    }
}

/// What stands between a machine and power, by grade.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Grade {
    /// Not measured, or not all of it.
    Open,
    /// Measured, and clear as far as this meter can see.
    Clear,
    /// Measured, and not clear.
    NotClear,
}

/// The ground check at the plug.
#[derive(Debug, Clone, PartialEq)]
pub struct Ground {
    /// The plug's earth pin.
    pub earth_pin: Option<EarthPin>,
    /// What was measured with.
    pub tester: Tester,
    /// Blades to earth and to metal.
    pub paths: Vec<(LeakPath, Insulation)>,
    /// Whether the earth pin reaches the cabinet's metal.
    pub earth_reaches: Option<bool>,
    /// What one blade reads to the other.
    pub blades: Option<Blades>,
    given_up: bool,
}

/// What one blade of the plug reads to the other. Where contacts stand in between it shows the
/// motor; behind a board it shows the board.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Blades {
    /// A dead short.
    Shorted,
    /// Current can get through.
    Joined(Ohms),
    /// Nothing gets through.
    Open,
}

/// An earth wire reads less than this with any leads; a handheld meter can't prove the 0.1 to
/// 0.3 Ω of the standards, only broken or not broken.
const EARTH_REACHES: Ohms = Ohms::new(2.0);
/// Less than any motor or heater has between the blades (judgement).
const SHORTED: Ohms = Ohms::new(0.8);

impl Ground {
    /// What is asked, in order.
    pub(crate) fn items(job: &Job) -> Vec<Item> {
        let earthed = [Item::BladesToEarth, Item::BladesToMetal, Item::EarthToMetal];
        let measured: &[Item] = match answered::<EarthPin>(job) {
            Some(EarthPin::None) => &[Item::BladesToMetal],
            Some(EarthPin::Has) | None => &earthed,
        };
        [Item::EarthPin, Item::Tester]
            .into_iter()
            .chain(measured.iter().copied())
            .chain([Item::BladeToBlade])
            .collect()
    }

    pub(crate) fn of(job: &Job) -> Self {
        let tester = answered::<TesterChoice>(job).map_or(Tester::Ohmmeter, Into::into);
        let path =
            |item: Item, path: LeakPath| insulation(job, item, tester).map(|proved| (path, proved));
        let items = Self::items(job);
        Self {
            earth_pin: answered(job),
            tester,
            paths: [
                path(Item::BladesToEarth, LeakPath::BladesToEarth),
                path(Item::BladesToMetal, LeakPath::BladesToMetal),
            ]
            .into_iter()
            .flatten()
            .collect(),
            earth_reaches: Item::EarthToMetal.ohms(job).map(|(typed, _)| {
                matches!(typed.observed, Observed::Value(value) if value < EARTH_REACHES)
            }),
            blades: Item::BladeToBlade
                .ohms(job)
                .map(|(typed, _)| match typed.observed {
                    Observed::Value(value) if value < SHORTED => Blades::Shorted,
                    Observed::Value(value) => Blades::Joined(value),
                    Observed::OverRange { .. } => Blades::Open,
                }),
            given_up: items
                .iter()
                .filter(|item| item.unit() == Some(Unit::Ohm) && **item != Item::BladeToBlade)
                .any(|item| item.is_answered(job) && item.reading(job).is_none()),
        }
    }

    /// What the plug-level check allows.
    #[must_use]
    pub fn grade(&self) -> Grade {
        let bad = |proved: &Insulation| {
            matches!(
                proved,
                Insulation::Leaks { .. } | Insulation::Doubtful { .. }
            )
        };
        if self.paths.iter().any(|(_, proved)| bad(proved))
            || self.earth_reaches == Some(false)
            || self.blades == Some(Blades::Shorted)
        {
            return Grade::NotClear;
        }
        let clear = |wanted: LeakPath| {
            self.paths
                .iter()
                .any(|(path, proved)| *path == wanted && matches!(proved, Insulation::Clear { .. }))
        };
        let complete = match self.earth_pin {
            None => false,
            Some(EarthPin::None) => clear(LeakPath::BladesToMetal),
            Some(EarthPin::Has) => {
                clear(LeakPath::BladesToEarth)
                    && clear(LeakPath::BladesToMetal)
                    && self.earth_reaches == Some(true)
            }
        };
        if complete && !self.given_up {
            Grade::Clear
        } else {
            Grade::Open
        }
    }

    pub(crate) fn findings(&self, mains: Option<MainsChoice>) -> Vec<Finding> {
        let paths = self
            .paths
            .iter()
            .map(|&(path, proved)| Finding::Insulation {
                path,
                proved,
                tester: self.tester,
                leakage: Leakage::of(proved, mains),
            });
        let earth = self.earth_reaches.map(|reaches| Finding::Earth { reaches });
        paths
            .chain(earth)
            .chain(self.blades.map(Finding::Blades))
            .collect()
    }

    pub(crate) fn cautions(&self) -> Vec<Caution> {
        let mut cautions = cautions_about(self.paths.iter().map(|(_, proved)| *proved));
        if self.earth_reaches == Some(false) {
            cautions.push(Caution::BrokenEarth);
        }
        if self.earth_pin == Some(EarthPin::None) {
            cautions.push(Caution::NoEarthPin);
        }
        if self.blades == Some(Blades::Shorted) {
            cautions.push(Caution::ShortedPlug);
        }
        if matches!(self.tester, Tester::InsulationTester(_)) {
            cautions.push(Caution::InsulationTester);
        }
        cautions
    }
}

/// What a reading between a conductor and metal proves.
pub(crate) fn insulation(job: &Job, item: Item, tester: Tester) -> Option<Insulation> {
    let (typed, reading) = item.ohms(job)?;
    let accuracy = reading.accuracy;
    Some(
        InsulationReading {
            typed,
            accuracy,
            tester,
        }
        .proves(),
    )
}

/// A leak stops; a doubt stops until it is cleared.
pub(crate) fn cautions_about(proved: impl Iterator<Item = Insulation>) -> Vec<Caution> {
    let mut cautions = Vec::new();
    for proved in proved {
        let caution = match proved {
            Insulation::Leaks { .. } => Caution::LiveMetal,
            Insulation::Doubtful { .. } => Caution::LeakInDoubt,
            Insulation::Clear { .. } | Insulation::RangeTooLow { .. } => continue,
        };
        if !cautions.contains(&caution) {
            cautions.push(caution);
        }
    }
    cautions
}

/// The least that counts as clear, for words.
#[must_use]
pub const fn clear_above() -> Ohms {
    SOUND
}

//! Current that goes astray, and what is known of trips.
//!
//! Answers: how much leaks while it is energised, would that trip which device, do several small
//! leaks add up, which part does the moment of a trip point to? Must never know: how likely each
//! part is (that is weighed with everything else).

use job::Job;
use measure::{Against, ProtectiveDevice, Trip, against};
use quantity::{Amps, Uncertain};

use super::machine::MainsChoice;
use super::meter_readings::MeterReadings;
use crate::choice::{answered, choices};
use crate::{Basis, Caution, Item, Link, LinkState};

choices! {
    /// What tripped.
    pub enum TripDevice answers "leakage" / "trip-device" {
        /// A ground-fault device of 6 mA.
        GroundFault = "ground-fault-6-ma",
        /// A residual-current device of 30 mA.
        ResidualCurrent = "residual-current-30-ma",
        /// A breaker or a fuse: too much current, and not astray.
        Breaker = "breaker-or-fuse",
        /// One that looks for arcs.
        ArcFault = "arc-fault",
    }
}

choices! {
    /// When it trips.
    pub enum TripWhen answers "leakage" / "trip-when" {
        /// As the plug goes in.
        AtOnce = "at-once",
        /// As the compressor starts.
        AtStart = "at-start",
        /// As a defrost begins: the timer was turned by hand, or a heater is felt or heard.
        AtDefrost = "at-defrost",
        /// Hours later.
        HoursLater = "hours-later",
        /// As the compressor stops, or a switch opens.
        AsItStops = "as-it-stops",
        /// Without a pattern.
        Irregular = "irregular",
    }
}

choices! {
    /// What else hangs on the same device.
    pub enum TripCompany answers "leakage" / "trip-company" {
        /// Nothing.
        Nothing = "nothing",
        /// Other things.
        Others = "others",
    }
}

/// In service no more than this may flow in an appliance's protective conductor
/// (VDE 0701-0702:2008-06, 5.5; IEC 60335-1, 13.2, for stationary motor-operated appliances of
/// class I).
pub const IN_SERVICE: Amps = Amps::new(3.5e-3);

/// What is known of leakage and trips.
#[derive(Debug, Clone, PartialEq)]
pub struct Leaking {
    /// What tripped.
    pub device: Option<TripDevice>,
    /// When.
    pub when: Option<TripWhen>,
    /// What else hangs on it.
    pub company: Option<TripCompany>,
    /// What the machine leaks.
    pub current: Option<Uncertain<Amps>>,
    /// What everything else behind the device leaks, together.
    pub others: Option<Uncertain<Amps>>,
    mains: Option<MainsChoice>,
}

/// One statement about leakage and trips.
#[derive(Debug, Clone, PartialEq)]
pub enum LeakageFinding {
    /// What the machine leaks.
    Current {
        /// How much.
        current: Uncertain<Amps>,
        /// Against [`IN_SERVICE`].
        in_service: Against,
        /// The device that is there, or is usual for these mains, and whether it would trip.
        device: Option<(ProtectiveDevice, Trip)>,
    },
    /// What leaks behind one device, together.
    Sum {
        /// The sum of amounts: phases can only make it less.
        sum: Uncertain<Amps>,
        /// The device, and whether it would trip.
        device: ProtectiveDevice,
        /// What it would do.
        trip: Trip,
        /// What it would do with this machine alone.
        alone: Trip,
    },
    /// Which part the moment of the trip points to (judgement).
    PointsTo(TripWhen),
    /// A breaker or a fuse went: too much current, and not astray.
    TooMuchCurrent,
    /// A trip is never answered by an outlet without protection.
    NoUnprotectedOutlet,
}

impl Leaking {
    /// What is asked, in order. Once a trip is noted nobody is sent to measure live.
    pub(crate) fn items(job: &Job) -> Vec<Item> {
        let current = Item::LeakageCurrent.is_answered(job);
        let is_safe = current || !has_tripped_on_a_leak(answered(job), answered(job));
        let mut items: Vec<Item> = is_safe
            .then_some(Item::LeakageCurrent)
            .into_iter()
            .collect();
        items.extend([Item::TripDevice, Item::TripWhen, Item::TripCompany]);
        if current && answered(job) == Some(TripCompany::Others) {
            items.push(Item::LeakageOfOthers);
        }
        items
    }

    pub(crate) fn of(job: &Job, mains: Option<MainsChoice>) -> Self {
        let mut readings = MeterReadings::of(job);
        let company = answered(job);
        Self {
            device: answered(job),
            when: answered(job),
            company,
            current: readings.amps(Item::LeakageCurrent),
            others: readings
                .amps(Item::LeakageOfOthers)
                .filter(|_| company == Some(TripCompany::Others)),
            mains,
        }
    }

    pub(crate) fn findings(&self) -> Vec<LeakageFinding> {
        let points = match (self.device, self.when) {
            (Some(TripDevice::Breaker | TripDevice::ArcFault), _) | (_, None) => None,
            (_, Some(when)) => Some(LeakageFinding::PointsTo(when)),
        };
        let too_much =
            (self.device == Some(TripDevice::Breaker)).then_some(LeakageFinding::TooMuchCurrent);
        let never = self
            .has_tripped_on_a_leak()
            .then_some(LeakageFinding::NoUnprotectedOutlet);
        too_much
            .into_iter()
            .chain(points)
            .chain(self.current())
            .chain(self.sum())
            .chain(never)
            .collect()
    }

    pub(crate) fn cautions(&self) -> Vec<Caution> {
        let leaks = match self.in_service() {
            Some(Against::Above) => Some(Caution::LeakInDoubt),
            _ => None,
        };
        // What was measured and lies well within stands against the trip.
        let tripped = self.has_tripped_on_a_leak() && self.in_service() != Some(Against::Within);
        let tripped = tripped.then_some(Caution::TrippedProtection);
        leaks.into_iter().chain(tripped).collect()
    }

    pub(crate) fn link(&self) -> Option<(Link, LinkState)> {
        match self.in_service()? {
            Against::Above => Some((Link::Circuit, LinkState::Doubtful(Basis::Measured))),
            _ => None,
        }
    }

    fn has_tripped_on_a_leak(&self) -> bool {
        has_tripped_on_a_leak(self.device, self.when)
    }

    fn in_service(&self) -> Option<Against> {
        Some(against(self.current.as_ref()?, Amps::new(0.0), IN_SERVICE))
    }

    /// The device that is there; else the one that is usual for these mains (common practice, no
    /// source).
    fn protective(&self) -> Option<ProtectiveDevice> {
        match (self.device, self.mains) {
            (Some(TripDevice::GroundFault), _) => Some(ProtectiveDevice::GroundFault6Milliamps),
            (Some(TripDevice::ResidualCurrent), _) => {
                Some(ProtectiveDevice::ResidualCurrent30Milliamps)
            }
            (_, Some(mains)) => Some(super::ground::usual_device(mains)),
            (_, None) => None,
        }
    }

    fn current(&self) -> Option<LeakageFinding> {
        let current = self.current.as_ref()?;
        Some(LeakageFinding::Current {
            current: current.clone(),
            in_service: self.in_service()?,
            device: self
                .protective()
                .map(|device| (device, trips(device, current))),
        })
    }

    fn sum(&self) -> Option<LeakageFinding> {
        let (current, others) = (self.current.as_ref()?, self.others.as_ref()?);
        let sum = current + others;
        let device = self.protective()?;
        Some(LeakageFinding::Sum {
            trip: trips(device, &sum),
            alone: trips(device, current),
            device,
            sum,
        })
    }
}

/// Whether a device that looks for leaks is known to have tripped. When it did isn't asked of a
/// machine that never tripped.
fn has_tripped_on_a_leak(device: Option<TripDevice>, when: Option<TripWhen>) -> bool {
    match device {
        Some(TripDevice::GroundFault | TripDevice::ResidualCurrent) => true,
        Some(TripDevice::Breaker | TripDevice::ArcFault) => false,
        None => when.is_some(),
    }
}

/// What a device does at a current that is known so well: where both ends of it differ, it may.
fn trips(device: ProtectiveDevice, current: &Uncertain<Amps>) -> Trip {
    let (middle, spread) = (current.value(), current.expanded());
    let (least, most) = (device.at(middle - spread), device.at(middle + spread));
    if least == most { least } else { Trip::May }
}

impl LeakageFinding {
    /// Its short name for files.
    #[must_use]
    pub const fn name(&self) -> &'static str {
        match self {
            Self::Current { .. } => "leakage-current",
            Self::Sum { .. } => "leakage-sum",
            Self::PointsTo(_) => "trip-points-to",
            Self::TooMuchCurrent => "too-much-current",
            Self::NoUnprotectedOutlet => "no-unprotected-outlet",
        }
    }
}

//! The start device, off the pins and cold.

use job::Job;
use measure::{Band, CurrentRelay, PotentialRelay, Ptc};
use quantity::Observed;

use super::look_over::motor_mains;
use super::machine::Machine;
use crate::choice::{answered, choices};
use crate::{Basis, Finding, Item, Link, LinkState};

choices! {
    /// What kind it is.
    pub enum StartDeviceKind answers "start-device" / "start-device-kind" {
        /// A small flat box with a disc inside and no moving part.
        Ptc = "ptc",
        /// A coil of thick wire with a contact that falls by its weight.
        CurrentRelay = "current-relay",
        /// A box with a coil of thin wire, numbers 1, 2 and 5 at its terminals.
        PotentialRelay = "potential-relay",
        /// A sealed module with a circuit board.
        Electronic = "electronic",
        /// There is none, or it can't be found.
        NotFound = "not-found",
    }
}

choices! {
    /// How it looks, smells and sounds when shaken.
    pub enum Looks answers "start-device" / "start-device-looks" {
        /// Whole, and silent when shaken.
        Whole = "whole",
        /// Something rattles in it.
        Rattles = "rattles",
        /// Cracked, burnt or smelling of it.
        Burnt = "burnt",
    }
}

choices! {
    /// A current relay's contact, upright.
    pub enum Upright answers "start-device" / "relay-upright" {
        /// Over range.
        Open = "open",
        /// Reads next to nothing.
        Closed = "closed",
    }
}

choices! {
    /// A current relay's contact, upside down.
    pub enum Inverted answers "start-device" / "relay-inverted" {
        /// Reads next to nothing.
        Closed = "closed",
        /// Over range.
        Open = "open",
    }
}

choices! {
    /// A potential relay's contact at rest.
    pub enum Contact answers "start-device" / "relay-contact" {
        /// Reads next to nothing.
        Closed = "closed",
        /// Over range.
        Open = "open",
    }
}

/// What is found on a start device.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum StartDevice {
    /// A PTC by its cold ohms, and whether the printed part was known.
    Ptc(Ptc, bool),
    /// A current relay by its contact in both positions.
    CurrentRelay(CurrentRelay),
    /// A potential relay by coil and contact.
    PotentialRelay(PotentialRelay),
    /// Ohms say nothing about an electronic one: only a known good one in its place does.
    ElectronicBySubstitution,
}

/// What is known of the start device.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StartDeviceKnown {
    /// How it looks.
    pub looks: Option<Looks>,
    /// What was found.
    pub found: Option<StartDevice>,
}

impl StartDeviceKnown {
    /// What is asked, in order.
    pub(crate) fn items(job: &Job) -> Vec<Item> {
        let kind: &[Item] = match answered::<StartDeviceKind>(job) {
            Some(StartDeviceKind::Ptc) => {
                &[Item::StartDeviceLooks, Item::PtcMarking, Item::PtcReading]
            }
            Some(StartDeviceKind::CurrentRelay) => &[
                Item::StartDeviceLooks,
                Item::RelayCoil,
                Item::RelayUpright,
                Item::RelayInverted,
            ],
            Some(StartDeviceKind::PotentialRelay) => {
                &[Item::StartDeviceLooks, Item::RelayCoil, Item::RelayContact]
            }
            Some(StartDeviceKind::Electronic) => &[Item::StartDeviceLooks],
            Some(StartDeviceKind::NotFound) | None => &[],
        };
        [Item::StartDeviceKind]
            .into_iter()
            .chain(kind.iter().copied())
            .collect()
    }

    pub(crate) fn of(job: &Job, machine: &Machine) -> Self {
        let found = match answered::<StartDeviceKind>(job) {
            Some(StartDeviceKind::Ptc) => ptc(job, machine),
            Some(StartDeviceKind::CurrentRelay) => current_relay(job),
            Some(StartDeviceKind::PotentialRelay) => potential_relay(job),
            Some(StartDeviceKind::Electronic) => Some(StartDevice::ElectronicBySubstitution),
            Some(StartDeviceKind::NotFound) | None => None,
        };
        Self {
            looks: answered(job),
            found,
        }
    }

    fn looks_broken(&self) -> bool {
        matches!(self.looks, Some(Looks::Rattles | Looks::Burnt))
    }

    pub(crate) fn findings(&self) -> Vec<Finding> {
        let looks = self
            .looks
            .filter(|_| self.looks_broken())
            .map(Finding::StartDeviceLooks);
        let found = self.found.map(Finding::StartDevice);
        looks.into_iter().chain(found).collect()
    }

    pub(crate) fn link(&self) -> Option<(Link, LinkState)> {
        let broken = matches!(
            self.found,
            Some(
                StartDevice::Ptc(Ptc::Open | Ptc::NearZero, _)
                    | StartDevice::CurrentRelay(CurrentRelay::Welded | CurrentRelay::NeverMakes)
                    | StartDevice::PotentialRelay(
                        PotentialRelay::CoilOpen | PotentialRelay::ContactOpen
                    )
            )
        );
        let doubtful = matches!(self.found, Some(StartDevice::Ptc(Ptc::Low | Ptc::High, _)));
        let state = if broken {
            LinkState::Broken(Basis::Measured)
        } else if doubtful || self.looks_broken() {
            LinkState::Doubtful(Basis::Measured)
        } else {
            return None;
        };
        Some((Link::Start, state))
    }
}

fn ptc(job: &Job, machine: &Machine) -> Option<StartDevice> {
    let (typed, reading) = Item::PtcReading.ohms(job)?;
    let marked = Item::PtcMarking
        .ohms(job)
        .and_then(|(typed, _)| match typed.observed {
            Observed::Value(value) => Some(Band::of_marked(value)),
            Observed::OverRange { .. } => None,
        });
    let band = marked.or_else(|| motor_mains(job, machine).map(Band::of_mains))?;
    let state = measure::ptc(typed, reading.accuracy, band);
    Some(StartDevice::Ptc(state, marked.is_some()))
}

fn current_relay(job: &Job) -> Option<StartDevice> {
    let upright = answered::<Upright>(job)? == Upright::Closed;
    let inverted = answered::<Inverted>(job)? == Inverted::Closed;
    let found = measure::current_relay(upright, inverted);
    Some(StartDevice::CurrentRelay(found))
}

fn potential_relay(job: &Job) -> Option<StartDevice> {
    let (coil, _) = Item::RelayCoil.ohms(job)?;
    let closed = answered::<Contact>(job)? == Contact::Closed;
    let found = measure::potential_relay(coil.observed, closed);
    Some(StartDevice::PotentialRelay(found))
}

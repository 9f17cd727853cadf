//! What was found, in words.

use diagnosis::{Complaint, Finding};
use measure::windings::{Explanation, Label, Pair, Pin, Role};

use crate::bench_finding as bench;
use crate::powered_finding as powered;
use crate::running_finding::running_finding;
use crate::supply_finding::supply_finding;
use crate::windings_finding::windings_finding;
use crate::{Locale, Words};

/// Says a finding, in one sentence or a few.
#[must_use]
pub fn finding(finding: &Finding, locale: &Locale) -> String {
    match finding {
        Finding::Complaint { complaint, seen } => told(*complaint, *seen),
        Finding::Sign(sign) => bench::sign(*sign),
        Finding::Insulation {
            path,
            proved,
            tester,
            leakage,
        } => bench::insulation(*path, *proved, *tester, *leakage, locale),
        Finding::Earth { reaches } => bench::earth(*reaches),
        Finding::Blades(blades) => bench::blades(*blades, locale),
        Finding::ChargeLeft {
            left,
            safe,
            marking,
        } => bench::charge_left(*left, *safe, *marking, locale),
        Finding::Windings(finding) => windings_finding(finding, locale),
        Finding::Protector { state, rested } => bench::protector(*state, *rested, locale),
        Finding::StartDeviceLooks(looks) => bench::looks(*looks),
        Finding::StartDevice(found) => bench::start_device(*found),
        Finding::WindingTemperature(found) => bench::winding_temperature(found, locale),
        Finding::Supply(found) => supply_finding(found, locale),
        Finding::Running(found) => running_finding(found, locale),
        Finding::CapacitorInCircuit(found) => powered::capacitor(found, locale),
        Finding::Leakage(found) => powered::leakage(found, locale),
    }
}

fn told(complaint: Complaint, seen: bool) -> String {
    let who = if seen { "Seen" } else { "The seller says" };
    let what = match complaint {
        Complaint::Silent => {
            "silent when plugged in. Supply, control or protector may be open, or the control \
             simply waits: many delay the start by some minutes."
        }
        Complaint::HumsThenClicks => {
            "hums, then clicks. Current reaches the motor and it doesn't turn: start device, low \
             voltage or a tight rotor, with the start device the commonest."
        }
        Complaint::RunsStaysWarm => {
            "runs, stays warm. The motor turns; air, ice, a dirty condenser or the sealed system \
             comes next."
        }
        Complaint::RunsThenStops => {
            "runs, then stops by itself. Something overheats, or a protector opens too early: \
             condenser, fans, start device and voltage come next."
        }
        Complaint::OneSideWarm => {
            "freezer cold, the rest warm. It makes cold, and the air doesn't bring it across: fan, \
             ice or damper, not the compressor."
        }
        Complaint::TooCold => {
            "gets too cold. It makes cold, and nothing tells it to stop: setting, sensor, \
             thermostat or damper."
        }
        Complaint::NeverStops => {
            "never stops. Either something lets warmth in or holds it back, or the control never \
             lets go. In a hot week some never stop and are sound."
        }
        Complaint::Noisy => {
            "runs, far too loud. Most noises are a tube, a panel, a foot or a fan; a compressor \
             that knocks as it runs is another matter."
        }
        Complaint::TripsTheOutlet => "trips the outlet. Something leaks or is shorted.",
        Complaint::NotPluggedIn | Complaint::Unknown => complaint.words(),
    };
    format!("{who}: {what}")
}

/// A pin by its number.
#[must_use]
pub fn pin(pin: Pin) -> &'static str {
    match pin {
        Pin::One => "pin 1",
        Pin::Two => "pin 2",
        Pin::Three => "pin 3",
    }
}

/// A pair by its pins.
#[must_use]
pub fn pair(pair: Pair) -> &'static str {
    match pair {
        Pair::OneTwo => "pins 1 and 2",
        Pair::OneThree => "pins 1 and 3",
        Pair::TwoThree => "pins 2 and 3",
    }
}

/// What stands beside a pin; nothing where nothing is known.
#[must_use]
pub fn label(label: Label) -> &'static str {
    match label {
        Label::Nothing => "",
        Label::StartOrRun => "start or run",
        Label::Is { role, surely } => match (role, surely) {
            (Role::Common, true) => "common, surely",
            (Role::Common, false) => "common, likely",
            (Role::Start, true) => "start, surely",
            (Role::Start, false) => "start, likely",
            (Role::Run, true) => "run, surely",
            (Role::Run, false) => "run, likely",
        },
    }
}

/// An explanation of the three readings, in a few words.
#[must_use]
pub fn explanation(explanation: Explanation) -> &'static str {
    match explanation {
        Explanation::Sound => "two whole windings, leads taken out",
        Explanation::LeadsNotZeroed => "two whole windings, leads still in the readings",
        Explanation::ProtectorOpen => "the protector inside is open",
        Explanation::CommonLeadOpen => "the common lead or pin is broken",
        Explanation::StartOpen => "the start winding, its lead or its pin is open",
        Explanation::RunOpen => "the run winding, its lead or its pin is open",
        Explanation::ShortedTurns => "turns of a winding are shorted",
        Explanation::StartDeviceOn => "the start device is still on the pins",
        Explanation::ProbeMissed => "a probe didn't touch bare metal",
        Explanation::EqualWindings => "three equal windings, driven by an electronic board",
        Explanation::SingleCoil => "one coil on two pins, a linear drive",
    }
}

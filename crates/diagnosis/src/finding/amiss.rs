//! Which findings name something that isn't as it should be.

use measure::windings::Explanation;
use measure::{Against, CurrentRelay, Insulation, PotentialRelay, Protector, Ptc, Trip};

use super::{Finding, WindingsFinding};
use crate::checks::capacitor_in_circuit::CapacitorFinding;
use crate::checks::ground::Blades;
use crate::checks::leakage::LeakageFinding;
use crate::checks::running::RunningFinding;
use crate::checks::start_device::{Looks, StartDevice};
use crate::checks::supply::{OutletWiring, Protection, SupplyFinding};

impl Finding {
    /// Whether it names something that is not as it should be, or may not be. What is sound, and
    /// what only explains, doesn't.
    #[must_use]
    pub fn is_amiss(&self) -> bool {
        match self {
            Self::Complaint { .. } | Self::Sign(_) => true,
            Self::Insulation { proved, .. } => !matches!(proved, Insulation::Clear { .. }),
            Self::Earth { reaches } => !reaches,
            Self::Blades(blades) => !matches!(blades, Blades::Joined(_)),
            Self::ChargeLeft { safe, .. } => !safe,
            Self::Windings(finding) => finding.is_amiss(),
            Self::Protector { state, .. } => !matches!(state, Protector::Closed),
            Self::StartDeviceLooks(looks) => *looks != Looks::Whole,
            Self::StartDevice(device) => is_device_amiss(*device),
            Self::WindingTemperature(_) => false,
            Self::Supply(finding) => is_supply_amiss(finding),
            Self::Running(finding) => is_running_amiss(finding),
            Self::CapacitorInCircuit(CapacitorFinding::Capacitance { marked, .. }) => {
                marked.is_some_and(|(_, against)| against != Against::Within)
            }
            Self::CapacitorInCircuit(_) => false,
            Self::Leakage(finding) => is_leakage_amiss(finding),
        }
    }
}

impl WindingsFinding {
    fn is_amiss(&self) -> bool {
        match self {
            Self::Joined(_)
            | Self::Foretold(_)
            | Self::AddsUp
            | Self::Whole { .. }
            | Self::LeadsTakenOut(_)
            | Self::UnusualOrder { .. } => false,
            Self::Fault { explanation, .. } => *explanation != Explanation::Sound,
            Self::DoesNotAddUp { .. }
            | Self::WholeButAlike { .. }
            | Self::AlikeButNotBare
            | Self::NothingReads
            | Self::NearZero
            | Self::WiringDisagrees { .. } => true,
        }
    }
}

fn is_device_amiss(device: StartDevice) -> bool {
    match device {
        StartDevice::Ptc(ptc, _) => ptc != Ptc::AsItShould,
        StartDevice::CurrentRelay(relay) => relay != CurrentRelay::Sound,
        StartDevice::PotentialRelay(relay) => relay != PotentialRelay::Sound,
        StartDevice::ElectronicBySubstitution => false,
    }
}

fn is_supply_amiss(finding: &SupplyFinding) -> bool {
    match finding {
        SupplyFinding::Protection(protection) => *protection != Protection::TripsByItsButton,
        SupplyFinding::Wiring(wiring) => *wiring != OutletWiring::Right,
        SupplyFinding::Idle(stands) | SupplyFinding::Lowest(stands) => {
            stands.against != Against::Within
        }
        SupplyFinding::Source(_)
        | SupplyFinding::Fall { .. }
        | SupplyFinding::Unusable(_)
        | SupplyFinding::TorqueLeft { .. }
        | SupplyFinding::Resistance { .. }
        | SupplyFinding::LongestCord { .. } => false,
    }
}

fn is_running_amiss(finding: &RunningFinding) -> bool {
    match finding {
        RunningFinding::AgainstLabel { against, .. } => *against != Against::Within,
        RunningFinding::StartWindingLeftIn { .. } | RunningFinding::MoreThanItsWindings { .. } => {
            true
        }
        RunningFinding::PowerFactor { .. }
        | RunningFinding::Unusable(_)
        | RunningFinding::Trend(_)
        | RunningFinding::LockedRotor { .. } => false,
    }
}

fn is_leakage_amiss(finding: &LeakageFinding) -> bool {
    match finding {
        LeakageFinding::Current { in_service, .. } => *in_service != Against::Within,
        LeakageFinding::Sum { trip, .. } => *trip != Trip::No,
        LeakageFinding::PointsTo(_) | LeakageFinding::TooMuchCurrent => true,
        LeakageFinding::NoUnprotectedOutlet => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_sound_isnt_amiss_and_what_is_broken_is() {
        let protector = |state| Finding::Protector {
            state,
            rested: true,
        };
        assert!(!protector(Protector::Closed).is_amiss());
        assert!(protector(Protector::Open).is_amiss());
        let device = |ptc| Finding::StartDevice(StartDevice::Ptc(ptc, true));
        assert!(!device(Ptc::AsItShould).is_amiss());
        assert!(device(Ptc::Open).is_amiss() && device(Ptc::CannotTell).is_amiss());
        assert!(!Finding::Earth { reaches: true }.is_amiss());
        assert!(Finding::Earth { reaches: false }.is_amiss());
        assert!(!Finding::Windings(WindingsFinding::AddsUp).is_amiss());
        assert!(Finding::Windings(WindingsFinding::NothingReads).is_amiss());
        let device_trips = Finding::Leakage(LeakageFinding::TooMuchCurrent);
        assert!(device_trips.is_amiss());
    }
}

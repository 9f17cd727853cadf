//! Where a start kit is the wrong answer, whatever its capacitance.

use job::{Job, Reading, SetUp, Tried};
use measure::windings::Explanation;
use measure::{CurrentRelay, PotentialRelay, Ptc};
use quantity::{Observed, Volts};

use super::KitDeclared;
use crate::choice::{Choice, answered, choices};
use crate::whole::{ANSWER, Build, Clue, Fault};
use crate::{
    Assessment, Finding, Refrigerant, StartDevice, StartDeviceKind, Stores, WindingsFinding,
};

choices! {
    /// Why a start kit is the wrong answer, the gravest first.
    pub enum NoKit {
        /// Something says that the machine may not be powered at all.
        NotToBePowered = "not-to-be-powered",
        /// The refrigerant burns: nothing that arcs, unless the maker declares it for this gas.
        GasBurns = "gas-burns",
        /// Nobody could read which refrigerant it is: treated as one that burns.
        GasUnknown = "gas-unknown",
        /// A board drives the motor: it has no start winding.
        Inverter = "inverter",
        /// Windings or the protector inside don't read as they should.
        WindingsNotWhole = "windings-not-whole",
        /// The start device is dead by its own readings: the same kind takes its place.
        StartDeviceDead = "start-device-dead",
        /// It starts with a capacitor by design: that one is checked and replaced by its marking.
        CapacitorByDesign = "capacitor-by-design",
        /// The rotor is likely tight or seized: a kit hides it for a while.
        RotorTight = "rotor-tight",
        /// The volts fall under load: torque goes with their square.
        VoltsFall = "volts-fall",
        /// Capillary or charge is likely at fault: pressures level slowly, and a kit starts against
        /// them.
        SealedSystem = "sealed-system",
    }
}

/// From here on a suspect counts as likely: likelier than not (judgement).
const LIKELY: f64 = 0.5;
/// Below this share of the nominal volts during a start, the supply comes first: a fall of more
/// than a tenth (common practice, no source; a fifth of the torque is gone then).
const LEAST_SHARE: f64 = 0.9;

/// Everything that speaks against a kit.
pub(super) fn against(job: &Job, known: &Assessment) -> Vec<NoKit> {
    let refrigerant = known.machine.refrigerant;
    let found = [
        (known.must_stop(), NoKit::NotToBePowered),
        (
            KitDeclared::is_asked(&known.machine) && !KitDeclared::suits(job, &known.machine),
            NoKit::GasBurns,
        ),
        (
            refrigerant == Some(Refrigerant::OtherOrUnreadable),
            NoKit::GasUnknown,
        ),
        (is_inverter(job, known), NoKit::Inverter),
        (not_whole(known), NoKit::WindingsNotWhole),
        (device_dead(job, known), NoKit::StartDeviceDead),
        (capacitor_by_design(job), NoKit::CapacitorByDesign),
        (
            chance(known, &[Fault::RotorTight, Fault::RotorSeized]) >= LIKELY,
            NoKit::RotorTight,
        ),
        (volts_fall(job, known), NoKit::VoltsFall),
        (sealed_system(known), NoKit::SealedSystem),
    ];
    let found = found.into_iter();
    found
        .filter_map(|(is_so, why)| is_so.then_some(why))
        .collect()
}

/// The chances of some faults added up: no less than that one of them is there.
pub(super) fn chance(known: &Assessment, faults: &[Fault]) -> f64 {
    let suspects = known.whole.iter().flat_map(|whole| &whole.suspects);
    suspects
        .filter(|one| one.fault.is_some_and(|fault| faults.contains(&fault)))
        .map(|one| one.probability)
        .sum()
}

fn windings_fault(known: &Assessment) -> Option<Explanation> {
    known.findings.iter().find_map(|finding| match finding {
        Finding::Windings(WindingsFinding::Fault {
            explanation,
            probability,
            ..
        }) if *probability >= LIKELY => Some(*explanation),
        _ => None,
    })
}

fn is_inverter(job: &Job, known: &Assessment) -> bool {
    let by_pins = matches!(
        windings_fault(known),
        Some(Explanation::EqualWindings | Explanation::SingleCoil)
    );
    let mut builds = known.whole.iter().flat_map(|whole| {
        let all = Build::ALL.iter().copied();
        all.zip(whole.builds)
    });
    let likely = builds.any(|(build, odds)| build == Build::Inverter && odds >= LIKELY);
    by_pins || likely || answered::<Stores>(job) == Some(Stores::InverterBoard)
}

fn not_whole(known: &Assessment) -> bool {
    let by_pins = matches!(
        windings_fault(known),
        Some(
            Explanation::StartOpen
                | Explanation::RunOpen
                | Explanation::ShortedTurns
                | Explanation::ProtectorOpen
                | Explanation::CommonLeadOpen
        )
    );
    let faults = [
        Fault::WindingOpen,
        Fault::TurnsShorted,
        Fault::InnerProtectorOpen,
        Fault::WindingLeaks,
    ];
    by_pins || chance(known, &faults) >= LIKELY
}

/// By its own readings or looks, as long as no known-good one has failed in its place.
fn device_dead(job: &Job, known: &Assessment) -> bool {
    let dead = known.findings.iter().any(|finding| {
        matches!(
            finding,
            Finding::StartDeviceLooks(_)
                | Finding::StartDevice(
                    StartDevice::Ptc(Ptc::Open | Ptc::NearZero, _)
                        | StartDevice::CurrentRelay(
                            CurrentRelay::Welded | CurrentRelay::NeverMakes
                        )
                        | StartDevice::PotentialRelay(
                            PotentialRelay::CoilOpen | PotentialRelay::ContactOpen
                        )
                )
        )
    });
    dead && !good_one_failed(job, known)
}

fn good_one_failed(job: &Job, known: &Assessment) -> bool {
    let series = known
        .start_trials
        .iter()
        .filter_map(|trials| trials.series(SetUp::Substitute));
    let mut tries = series.flat_map(|series| &series.tries);
    let hummed = tries.any(|(_, one)| {
        matches!(
            one.outcome,
            Tried::HummedAndTripped | Tried::HummedThenStarted
        )
    });
    hummed || job.choice(Clue::GoodDevice.name(), ANSWER) == Some("hums")
}

/// A relay beside a start capacitor. A potential relay has no other use (common practice, no
/// source).
fn capacitor_by_design(job: &Job) -> bool {
    let has_one = answered::<Stores>(job) == Some(Stores::Capacitor);
    match answered::<StartDeviceKind>(job) {
        Some(StartDeviceKind::PotentialRelay) => true,
        Some(StartDeviceKind::CurrentRelay) => has_one,
        _ => false,
    }
}

fn volts_fall(job: &Job, known: &Assessment) -> bool {
    let told = job.choice(Clue::SaggingVolts.name(), ANSWER);
    let measured = told.is_some() && told == Clue::SaggingVolts.answers().last().copied();
    measured || chance(known, &[Fault::VoltageFalls]) >= LIKELY || fell_at_a_try(known)
}

/// Whether a meter beside the plug showed so, beyond its own error. Against the nominal volts:
/// the idle ones aren't entered with a try.
fn fell_at_a_try(known: &Assessment) -> bool {
    let Some(mains) = known.machine.mains else {
        return false;
    };
    let least = mains.volts() * LEAST_SHARE;
    let series = known.start_trials.iter().flat_map(|trials| &trials.series);
    let mut lowest = series
        .flat_map(|series| &series.tries)
        .filter_map(|(_, one)| highest_that_can_be(one.lowest.as_ref()?));
    lowest.any(|volts| volts < least)
}

/// The most that the volts can have been, by the meter's limit.
fn highest_that_can_be(reading: &Reading) -> Option<Volts> {
    match reading.measured {
        job::Measured::Volts(typed) => match typed.observed {
            Observed::Value(volts) => Some(volts + reading.accuracy.limit(volts, typed.count)),
            Observed::OverRange { .. } => None,
        },
        _ => None,
    }
}

fn sealed_system(known: &Assessment) -> bool {
    let faults = [
        Fault::CapillaryRestricted,
        Fault::ChargeLow,
        Fault::ChargeGone,
        Fault::ChargeContaminated,
    ];
    chance(known, &faults) >= LIKELY
}

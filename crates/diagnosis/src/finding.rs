//! What the observations mean, one statement at a time, each with how sure it is.

mod amiss;

use measure::windings::{Explanation, Forecast, Pair, Pin};
use measure::{Insulation, Protector, Tester};
use quantity::{Celsius, Farads, Ohms, Uncertain, Volts};

use crate::checks::Check;
use crate::checks::capacitor_in_circuit::CapacitorFinding;
use crate::checks::ground::{Blades, LeakPath, Leakage};
use crate::checks::leakage::LeakageFinding;
use crate::checks::look_over::Sign;
use crate::checks::machine::Complaint;
use crate::checks::running::RunningFinding;
use crate::checks::start_device::{Looks, StartDevice};
use crate::checks::supply::SupplyFinding;
use crate::choice::Choice;

/// One statement about the machine.
#[derive(Debug, Clone, PartialEq)]
pub enum Finding {
    /// What it did when it was last plugged in.
    Complaint {
        /// What.
        complaint: Complaint,
        /// Whether the person saw it, rather than heard of it.
        seen: bool,
    },
    /// What was seen on looking it over.
    Sign(Sign),
    /// What a reading between a conductor and metal proves.
    Insulation {
        /// From where to where.
        path: LeakPath,
        /// What it proves.
        proved: Insulation,
        /// What measured it.
        tester: Tester,
        /// What that means at mains voltage.
        leakage: Option<Leakage>,
    },
    /// Whether the plug's earth pin reaches the cabinet.
    Earth {
        /// It does.
        reaches: bool,
    },
    /// What one blade of the plug reads to the other.
    Blades(Blades),
    /// What was measured across what can hold a charge.
    ChargeLeft {
        /// The volts.
        left: Volts,
        /// Whether that is safe.
        safe: bool,
        /// What is printed on the capacitor.
        marking: Option<Farads>,
    },
    /// What the three pins say.
    Windings(WindingsFinding),
    /// What the protector says.
    Protector {
        /// Its state.
        state: Protector,
        /// Whether it had rested.
        rested: bool,
    },
    /// How the start device looks.
    StartDeviceLooks(Looks),
    /// What the start device says.
    StartDevice(StartDevice),
    /// How hot a winding is.
    WindingTemperature(Uncertain<Celsius>),
    /// What the supply does.
    Supply(SupplyFinding),
    /// What the machine takes as it runs.
    Running(RunningFinding),
    /// What a capacitor is while it works.
    CapacitorInCircuit(CapacitorFinding),
    /// What leaks, and what its trips say.
    Leakage(LeakageFinding),
}

/// One statement about the windings.
#[derive(Debug, Clone, PartialEq)]
pub enum WindingsFinding {
    /// One pair reads a number: joined, no more.
    Joined(Pair),
    /// Two pairs read numbers: what the third should read.
    Foretold(Forecast),
    /// The third number is the sum of the two others, as foretold.
    AddsUp,
    /// Three numbers, and no two of them add up to the third.
    DoesNotAddUp {
        /// The pair to repeat first.
        repeat: Pair,
    },
    /// Two whole windings, as far as ohms can tell.
    Whole {
        /// The run winding, leads taken out.
        run: Uncertain<Ohms>,
        /// The start winding, leads taken out.
        start: Uncertain<Ohms>,
        /// Probability that the windings are whole.
        probability: f64,
    },
    /// Two whole windings, but start and run can't be told apart yet.
    WholeButAlike {
        /// The common pin.
        common: Pin,
        /// Probability that the windings are whole.
        probability: f64,
    },
    /// The leads are in every reading and were taken out.
    LeadsTakenOut(Uncertain<Ohms>),
    /// An explanation other than sound windings is the likeliest.
    Fault {
        /// Which.
        explanation: Explanation,
        /// Its probability.
        probability: f64,
        /// The next likeliest, where it is at least a tenth as likely.
        rival: Option<Explanation>,
        /// The pin that both open pairs share, or the pair that misfits has none of.
        pin: Option<Pin>,
    },
    /// Three alike, but something may still be on the pins: no verdict.
    AlikeButNotBare,
    /// No pair reads: the meter or its leads come first.
    NothingReads,
    /// A pair reads so little that the leads must be measured first.
    NearZero,
    /// The wiring as noted and the ohms don't agree on the common pin.
    WiringDisagrees {
        /// Common by the ohms.
        common: Pin,
    },
    /// The usual order for a triangle would swap start and run. Ohms and wiring decide.
    UnusualOrder {
        /// The start pin.
        start: Pin,
    },
}

impl Finding {
    /// The check that found it.
    #[must_use]
    pub const fn check(&self) -> Check {
        match self {
            Self::Complaint { .. } => Check::Machine,
            Self::Sign(_) => Check::LookOver,
            Self::Insulation {
                path: LeakPath::PinToShell(_) | LeakPath::PinsToShell,
                ..
            } => Check::Shell,
            Self::Insulation { .. } | Self::Earth { .. } | Self::Blades(_) => Check::Ground,
            Self::ChargeLeft { .. } => Check::StoredCharge,
            Self::Windings(_) => Check::Windings,
            Self::Protector { .. } => Check::Protector,
            Self::StartDeviceLooks(_) | Self::StartDevice(_) => Check::StartDevice,
            Self::WindingTemperature(_) => Check::WindingTemperature,
            Self::Supply(_) => Check::Supply,
            Self::Running(_) => Check::Running,
            Self::CapacitorInCircuit(_) => Check::CapacitorInCircuit,
            Self::Leakage(_) => Check::Leakage,
        }
    }

    /// Its short name for files.
    #[must_use]
    pub fn name(&self) -> &'static str {
        match self {
            Self::Complaint { .. } => "complaint",
            Self::Sign(sign) => sign.name(),
            Self::Insulation { proved, .. } => match proved {
                Insulation::Clear { .. } => "insulation-clear",
                Insulation::RangeTooLow { .. } => "insulation-range-too-low",
                Insulation::Doubtful { .. } => "insulation-doubtful",
                Insulation::Leaks { .. } => "insulation-leaks",
            },
            Self::Earth { reaches: true } => "earth-reaches",
            Self::Earth { reaches: false } => "earth-broken",
            Self::Blades(Blades::Shorted) => "blades-shorted",
            Self::Blades(Blades::Joined(_)) => "blades-joined",
            Self::Blades(Blades::Open) => "blades-open",
            Self::ChargeLeft { .. } => "charge-left",
            Self::Windings(finding) => finding.name(),
            Self::Protector { .. } => "protector",
            Self::StartDeviceLooks(_) => "start-device-looks",
            Self::StartDevice(_) => "start-device",
            Self::WindingTemperature(_) => "winding-temperature",
            Self::Supply(finding) => finding.name(),
            Self::Running(finding) => finding.name(),
            Self::CapacitorInCircuit(finding) => finding.name(),
            Self::Leakage(finding) => finding.name(),
        }
    }
}

impl WindingsFinding {
    /// Its short name for files.
    #[must_use]
    pub const fn name(&self) -> &'static str {
        match self {
            Self::Joined(_) => "joined",
            Self::Foretold(_) => "third-pair-foretold",
            Self::AddsUp => "adds-up",
            Self::DoesNotAddUp { .. } => "does-not-add-up",
            Self::Whole { .. } => "windings-whole",
            Self::WholeButAlike { .. } => "windings-whole-start-and-run-alike",
            Self::LeadsTakenOut(_) => "leads-taken-out",
            Self::Fault { explanation, .. } => explanation_name(*explanation),
            Self::AlikeButNotBare => "alike-but-not-bare",
            Self::NothingReads => "nothing-reads",
            Self::NearZero => "near-zero",
            Self::WiringDisagrees { .. } => "wiring-disagrees",
            Self::UnusualOrder { .. } => "unusual-order",
        }
    }
}

/// The short name of an explanation for files.
#[must_use]
pub const fn explanation_name(explanation: Explanation) -> &'static str {
    match explanation {
        Explanation::Sound => "sound",
        Explanation::LeadsNotZeroed => "leads-not-zeroed",
        Explanation::ProtectorOpen => "protector-open",
        Explanation::CommonLeadOpen => "common-lead-open",
        Explanation::StartOpen => "start-open",
        Explanation::RunOpen => "run-open",
        Explanation::ShortedTurns => "shorted-turns",
        Explanation::StartDeviceOn => "start-device-on",
        Explanation::ProbeMissed => "probe-missed",
        Explanation::EqualWindings => "equal-windings",
        Explanation::SingleCoil => "single-coil",
    }
}

//! What can be done about each fault, what that costs, and what a mistake costs.
//!
//! Standing: judgement from trade practice. Money is in units of one US dollar or euro, ordinary
//! parts without delivery; minutes are hands-on, for a practised amateur.

use super::build::Build;
use super::fault::Fault::{self, *};
use crate::Kind;
use crate::choice::choices;

choices! {
    /// What the machine may need.
    pub enum Action {
        /// Nothing: it does what it should.
        NothingToRepair = "nothing-to-repair",
        /// Wait, rest, give it time, and repeat.
        WaitAndRepeat = "wait-and-repeat",
        /// Set the control right, clear a mode.
        SetControl = "set-control",
        /// Another outlet, a short heavy cord.
        BetterOutlet = "better-outlet",
        /// Put it where it is neither too hot nor too cold, or ask less of it.
        Move = "move",
        /// Clean, give air.
        Clean = "clean",
        /// Thaw it fully.
        Thaw = "thaw",
        /// Mend wires and connectors.
        MendWiring = "mend-wiring",
        /// Fit a known-good part to see whether that is it.
        TestFit = "test-fit",
        /// Replace the part.
        Replace = "replace",
        /// Fit the start gear that the maker allows for a compressor that starts hard: a stopgap.
        FitStartGear = "fit-start-gear",
        /// Work on the sealed system by someone licensed.
        LicensedWork = "licensed-work",
        /// Stop: it must not be energised again as it is.
        StopDoNotEnergise = "stop-do-not-energise",
        /// Scrap, with the refrigerant recovered.
        Scrap = "scrap",
    }
}

/// What mends a fault.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Remedy {
    pub(super) action: Action,
    /// Parts, or all of someone else's work.
    pub(super) price: f64,
    pub(super) minutes: f64,
    /// How likely it still holds after a year, if the fault was the true one.
    pub(super) lasts: f64,
}

/// What mends each fault.
pub(super) fn remedy(fault: Fault, build: Build) -> Remedy {
    use Action::*;
    let (action, price, minutes, lasts) = match fault {
        CordOpen => (Replace, 12.0, 20.0, 0.97),
        VoltageFalls => (BetterOutlet, 10.0, 10.0, 0.95),
        TripsByItself => (BetterOutlet, 15.0, 10.0, 0.95),
        SetNotToCool => (SetControl, 0.0, 10.0, 0.95),
        ThermostatOpen => (Replace, 30.0, 35.0, 0.92),
        ControlStaysOn => (Replace, 35.0, 35.0, 0.9),
        ThermistorOff => (Replace, 18.0, 32.0, 0.9),
        // Used, or mended by someone trained.
        BoardDoesNotCall => (Replace, 55.0, 40.0, 0.72),
        StuckInDefrost | NeverDefrosts => (Replace, 30.0, 25.0, 0.92),
        RoomTooCold => (Move, 5.0, 10.0, 0.9),
        OverloadOpen | OverloadWeak => (Replace, 14.0, 18.0, 0.75),
        WiringBurnt => (MendWiring, 6.0, 30.0, 0.85),
        StartDeviceOpen | StartDeviceWeak | StartDeviceStaysIn => (Replace, 15.0, 18.0, 0.88),
        CapacitorFailed => (Replace, 16.0, 18.0, 0.9),
        // A stopgap, and to be told as one.
        RotorTight => (FitStartGear, 22.0, 22.0, 0.4),
        AnotherPartLeaks => (Replace, 35.0, 60.0, 0.9),
        DriveWithoutOutput => (Replace, 110.0, 28.0, 0.7),
        EvaporatorFanStopped => (Replace, 35.0, 50.0, 0.92),
        DefrostHeaterOpen => (Replace, 35.0, 80.0, 0.89),
        IcedUp if matches!(build, Build::ManualDefrost) => (Thaw, 0.0, 20.0, 0.9),
        IcedUp => (Thaw, 6.0, 60.0, 0.75),
        CondenserMatted => (Clean, 2.0, 25.0, 0.85),
        CondenserFanStopped => (Replace, 35.0, 32.0, 0.92),
        SealLeaks => (Replace, 40.0, 40.0, 0.8),
        DamperStuck => (Replace, 55.0, 55.0, 0.85),
        HeatStaysOn => (Replace, 15.0, 20.0, 0.93),
        TooMuchAsked => (Move, 0.0, 12.0, 0.95),
        ChargeLow | ChargeGone => (LicensedWork, 250.0, 60.0, 0.55),
        ChargeContaminated => (LicensedWork, 250.0, 60.0, 0.6),
        CapillaryRestricted => (LicensedWork, 290.0, 60.0, 0.6),
        InnerProtectorOpen | WindingOpen | TurnsShorted | InverterMotorFailed | RotorSeized
        | ValvesWorn => (LicensedWork, 420.0, 60.0, 0.75),
        WindingLeaks => (StopDoNotEnergise, 420.0, 60.0, 0.75),
    };
    Remedy {
        action,
        price,
        minutes,
        lasts,
    }
}

/// What a minute of work is worth: an hour at fifteen.
pub(super) const MINUTE: f64 = 0.25;
/// What a minute of waiting is worth: two days of occupied space cost one to three.
pub(super) const WAITING: f64 = 0.001;
/// What is left of a machine when it is scrapped: parts less disposal.
const SALVAGE: f64 = 10.0;
/// What an hour of going on after a failed repair and another trip cost.
const ANOTHER_TRY: f64 = 15.0;

/// What is at stake on one machine.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Stakes {
    build: Build,
    /// What it sells for, proven and clean.
    worth: f64,
}

impl Stakes {
    pub(super) fn of(kind: Option<Kind>, build: Build) -> Self {
        let worth = match (kind, build) {
            (_, Build::Inverter) => 420.0,
            (Some(Kind::ChestFreezer), _) => 120.0,
            (Some(Kind::UprightFreezer), Build::ManualDefrost) => 170.0,
            (Some(Kind::UprightFreezer), _) => 280.0,
            (Some(Kind::FridgeFreezer), _) => 240.0,
            (Some(Kind::Refrigerator) | None, _) => 150.0,
        };
        Self { build, worth }
    }

    /// The loss by scrapping it, whatever is wrong: all of it, if a sound compressor was
    /// condemned.
    pub(super) fn scrap(self) -> f64 {
        self.worth - SALVAGE
    }

    /// What a machine with several faults costs once its likeliest one is dealt with: half of
    /// them are mended, half are scrapped.
    pub(super) fn several(self) -> f64 {
        ANOTHER_TRY + 0.5 * self.scrap()
    }

    /// The price of giving it a day and looking again, and of the explanation.
    pub(super) const WAITING_A_DAY: f64 = 5.0;

    /// The price of trying a remedy, right or wrong.
    pub(super) fn trying(self, fault: Fault) -> f64 {
        let remedy = remedy(fault, self.build);
        remedy.price + remedy.minutes * MINUTE
    }

    /// What is lost on average when a right remedy doesn't last.
    pub(super) fn not_lasting(self, fault: Fault) -> f64 {
        (1.0 - remedy(fault, self.build).lasts) * 1.2 * self.worth
    }

    /// Whether it is at the compressor or in the sealed system, or mending it costs more than it
    /// saves even where it is surely the fault.
    pub(super) fn is_condemned_by(self, fault: Fault) -> bool {
        fault.is_sealed() || self.trying(fault) + self.not_lasting(fault) >= self.scrap()
    }

    pub(super) fn action(self, fault: Fault) -> Action {
        remedy(fault, self.build).action
    }
}

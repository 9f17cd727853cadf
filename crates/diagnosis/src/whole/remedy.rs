//! What can be done about each fault, what that is stated to cost, and what is lost by mistake.
//!
//! Standing: judgement from trade practice. Money is in units of one US dollar or euro, ordinary
//! parts without delivery; minutes are hands-on, for a practised amateur.

use super::build::Build;
use super::costs::{Cost, Costs, Stake, Term};
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

/// What mends each fault, as stated.
pub(super) fn stated(fault: Fault, build: Build) -> Remedy {
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

/// What is at stake on one machine.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Stakes<'a> {
    build: Build,
    /// What it sells for.
    selling: Stake,
    costs: &'a Costs,
}

const HOUR: f64 = 60.0;
const DAY: f64 = 1_440.0;

impl<'a> Stakes<'a> {
    pub(super) fn of(kind: Option<Kind>, build: Build, costs: &'a Costs) -> Self {
        Self {
            build,
            selling: Stake::selling(kind, build),
            costs,
        }
    }

    /// The loss by scrapping it, whatever is wrong: all of it, if a sound compressor was
    /// condemned. A machine that is worth less than its scrap is no loss.
    pub(super) fn scrap(self) -> f64 {
        (self.at(self.selling) - self.at(Stake::Salvage)).max(0.0)
    }

    /// What a machine with several faults costs once its likeliest one is dealt with: half of
    /// them are mended, half are scrapped.
    pub(super) fn several(self) -> f64 {
        self.at(Stake::AnotherTry) + 0.5 * self.scrap()
    }

    /// The price of giving it a day and looking again, and of the explanation.
    pub(super) fn waiting_a_day(self) -> f64 {
        self.at(Stake::AnotherDay)
    }

    /// The price of looking: minutes of work, and of waiting.
    pub(super) fn looking(self, minutes: f64, waiting: f64) -> f64 {
        self.work(minutes) + waiting * self.at(Stake::DayOfWaiting) / DAY
    }

    /// The price of trying a remedy, right or wrong.
    pub(super) fn trying(self, fault: Fault) -> f64 {
        self.mending(fault, Term::Price) + self.work(self.mending(fault, Term::Minutes))
    }

    /// What is lost on average when a right remedy doesn't last.
    pub(super) fn not_lasting(self, fault: Fault) -> f64 {
        (1.0 - self.mending(fault, Term::Lasts) / 100.0) * 1.2 * self.at(self.selling)
    }

    /// Whether it is at the compressor or in the sealed system, or mending it costs more than it
    /// saves even where it is surely the fault.
    pub(super) fn is_condemned_by(self, fault: Fault) -> bool {
        fault.is_sealed() || self.trying(fault) + self.not_lasting(fault) >= self.scrap()
    }

    pub(super) fn action(self, fault: Fault) -> Action {
        stated(fault, self.build).action
    }

    fn work(self, minutes: f64) -> f64 {
        minutes * self.at(Stake::HourOfWork) / HOUR
    }

    fn at(self, stake: Stake) -> f64 {
        self.costs.of(Cost::Stake(stake))
    }

    fn mending(self, fault: Fault, term: Term) -> f64 {
        self.costs.of(Cost::Mending(self.build, fault, term))
    }
}

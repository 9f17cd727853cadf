//! What to do next, and what it takes.

use measure::windings::Pair;

use crate::checks::Check;
use crate::choice::choices;

/// One thing to do.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Step {
    /// Answer what a check asks.
    Do(Check),
    /// Note the wiring, then take everything off the three pins.
    BareThePins,
    /// Something is still on the pins, or seems to be: take it off and measure again.
    TakeStartGearOff,
    /// Touch the probes together and enter what they read.
    TouchProbes,
    /// Measure between two pins.
    Measure(Pair),
    /// Scrape the pins and measure between these two again.
    Repeat(Pair),
    /// Let the compressor cool, then measure the open pairs again.
    CoolAndRepeat {
        /// Minutes until an hour has passed since the pairs were found open.
        minutes_left: u16,
    },
    /// Tell start from run by where the wires were.
    NoteWiring,
}

choices! {
    /// What state the machine must be in.
    pub enum Power {
        /// The plug is out and stays out.
        Unplugged = "unplugged",
        /// Plugged in, through an outlet whose protective device trips by its own button.
        Protected = "protected",
    }
}

choices! {
    /// What one needs in hand.
    pub enum Tool {
        /// Nothing but eyes.
        Eyes = "eyes",
        /// A multimeter on ohms.
        Multimeter = "multimeter",
        /// A screwdriver for the cover at the compressor.
        Screwdriver = "screwdriver",
        /// A phone to take a photo of the wires.
        Camera = "camera",
        /// A plug-in power meter.
        PowerMeter = "power-meter",
        /// A clamp, with a line splitter or for leakage.
        Clamp = "clamp",
    }
}

impl Step {
    /// The check that it belongs to.
    #[must_use]
    pub const fn check(self) -> Check {
        match self {
            Self::Do(check) => check,
            _ => Check::Windings,
        }
    }

    /// Whether it comes before anything is touched or powered, whatever it is worth.
    #[must_use]
    pub const fn is_for_safety(self) -> bool {
        matches!(
            self,
            Self::Do(
                Check::Machine
                    | Check::Refrigerant
                    | Check::LookOver
                    | Check::Ground
                    | Check::StoredCharge
            )
        )
    }

    /// Its short name for files.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Do(_) => "do",
            Self::BareThePins => "bare-the-pins",
            Self::TakeStartGearOff => "take-start-gear-off",
            Self::TouchProbes => "touch-probes",
            Self::Measure(_) => "measure",
            Self::Repeat(_) => "repeat",
            Self::CoolAndRepeat { .. } => "cool-and-repeat",
            Self::NoteWiring => "note-wiring",
        }
    }

    /// The state that the machine must be in.
    #[must_use]
    pub const fn power(self) -> Power {
        match self {
            Self::Do(check) if check.is_powered() => Power::Protected,
            _ => Power::Unplugged,
        }
    }

    /// Minutes of work for someone who does it for the first time (judgement).
    #[must_use]
    pub const fn minutes(self) -> u16 {
        match self {
            Self::Do(Check::Machine | Check::Refrigerant)
            | Self::Measure(_)
            | Self::Repeat(_)
            | Self::TouchProbes => 1,
            Self::Do(Check::Ground | Check::StoredCharge) | Self::NoteWiring => 2,
            Self::Do(Check::Shell | Check::Protector) => 3,
            Self::Do(Check::LookOver | Check::WindingTemperature | Check::Windings)
            | Self::CoolAndRepeat { .. }
            | Self::TakeStartGearOff => 5,
            Self::BareThePins => 8,
            Self::Do(Check::StartDevice | Check::Supply | Check::Leakage) => 10,
            Self::Do(Check::CapacitorInCircuit) => 15,
            // Half an hour of it is waiting.
            Self::Do(Check::Running) => 35,
        }
    }

    /// What one needs in hand.
    #[must_use]
    pub const fn tools(self) -> &'static [Tool] {
        match self {
            Self::Do(Check::Machine | Check::Refrigerant | Check::LookOver) | Self::NoteWiring => {
                &[Tool::Eyes]
            }
            Self::BareThePins | Self::TakeStartGearOff => &[Tool::Screwdriver, Tool::Camera],
            Self::Do(Check::Supply) => &[Tool::PowerMeter],
            Self::Do(Check::Running) => &[Tool::PowerMeter, Tool::Clamp],
            Self::Do(Check::Leakage) => &[Tool::Clamp],
            Self::Do(Check::CapacitorInCircuit) => &[Tool::Clamp, Tool::Multimeter],
            _ => &[Tool::Multimeter],
        }
    }
}

//! What was read and what else was seen at the pins.

use quantity::{Accuracy, Observed, Ohms, Typed};

use super::{Assignment, Pair, Pin, Role};

/// One pair with what the meter showed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PairReading {
    /// The two pins touched.
    pub pair: Pair,
    /// What the meter showed.
    pub typed: Typed<Ohms>,
    /// How good the meter is.
    pub accuracy: Accuracy,
}

/// What is known about the resistance of the test leads.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub enum Leads {
    /// Nothing.
    #[default]
    Unknown,
    /// Taken out by the meter's relative mode, or by the person before typing.
    Zeroed,
    /// Still in every reading, not measured.
    NotZeroed,
    /// Still in every reading; the probes touched together read this.
    Measured(Typed<Ohms>, Accuracy),
}

/// Whether anything is still plugged on the pins.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum StartGear {
    /// Not said.
    #[default]
    Unknown,
    /// The pins are bare.
    Off,
    /// Start device or protector still sits on them.
    StillOn,
}

/// The mains that the machine is made for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Mains {
    /// About 115 to 120 V, 60 Hz.
    V120F60,
    /// About 220 to 240 V, 50 Hz.
    V230F50,
}

/// How the pins were wired before anything was pulled off. Each is independent testimony.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct WiringAsFound {
    /// The pin that the overload protector's lead was on: common.
    pub overload_on: Option<Pin>,
    /// The two pins that the start device sat on: start and run.
    pub start_device_on: Option<Pair>,
    /// The pin that the other mains wire went to: run.
    pub line_on: Option<Pin>,
    /// The pins that letters or words beside them name, by part in the order of [`Role::ALL`].
    pub marked: [Option<Pin>; 3],
}

/// Everything that bears on the windings.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Inspection {
    readings: [Option<PairReading>; 3],
    /// The test leads.
    pub leads: Leads,
    /// Whether the pins are bare.
    pub start_gear: StartGear,
    /// The machine's mains; both are thought possible where unknown.
    pub mains: Option<Mains>,
    /// The wiring as it was found.
    pub wiring: WiringAsFound,
}

impl Inspection {
    /// No hand-held meter shows more than this, in ohms (from memory).
    const LARGEST: f64 = 1e9;

    /// Puts a reading in place of an earlier one of the same pair. A number beyond what any
    /// hand-held meter shows is taken as the end of that: it says no more.
    pub fn set(&mut self, mut reading: PairReading) {
        if let Observed::Value(value) = &mut reading.typed.observed {
            *value = Ohms::new(value.get().clamp(-Self::LARGEST, Self::LARGEST));
        }
        self.readings[reading.pair.index()] = Some(reading);
    }

    /// The reading of a pair.
    #[must_use]
    pub fn reading(&self, pair: Pair) -> Option<&PairReading> {
        self.readings[pair.index()].as_ref()
    }

    /// All readings, in the order of [`Pair::ALL`].
    pub fn readings(&self) -> impl Iterator<Item = &PairReading> {
        self.readings.iter().flatten()
    }

    /// The readings that are numbers.
    #[must_use]
    pub fn numbers(&self) -> Vec<Number> {
        self.readings().filter_map(Number::of).collect()
    }

    /// Whether anything was read.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.readings.iter().all(Option::is_none)
    }
}

/// A pair that reads a number, with its standard uncertainty apart from the leads.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Number {
    /// The two pins touched.
    pub pair: Pair,
    /// The number shown, in ohms.
    pub value: f64,
    /// Standard uncertainty from the meter, in ohms.
    pub standard: f64,
}

impl Number {
    /// No two touches of a probe agree better than this (common practice, no source). It keeps
    /// a display that claims twenty decimals from having a weight that no number can hold.
    const SURE_TO: f64 = 1e-4;

    pub(super) fn of(reading: &PairReading) -> Option<Self> {
        match reading.typed.observed {
            Observed::Value(value) => Some(Self {
                pair: reading.pair,
                value: value.get(),
                standard: reading
                    .accuracy
                    .standard(value, reading.typed.count)
                    .get()
                    .max(Self::SURE_TO),
            }),
            Observed::OverRange { .. } => None,
        }
    }
}

impl WiringAsFound {
    /// Whether nothing was noted.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    /// How many of the things noted agree with an assignment, and how many don't. The letters
    /// beside the pins are one thing: who misreads one misreads them all.
    #[must_use]
    pub fn agreement(&self, assignment: Assignment) -> (u32, u32) {
        let overload = self
            .overload_on
            .map(|pin| pin == assignment.pin(Role::Common));
        let start_device = self
            .start_device_on
            .map(|pair| pair == assignment.series_pair());
        let line = self.line_on.map(|pin| pin == assignment.pin(Role::Run));
        let mut letters = Role::ALL
            .into_iter()
            .zip(self.marked)
            .filter_map(|(role, pin)| Some(pin? == assignment.pin(role)))
            .peekable();
        let letters = letters
            .peek()
            .is_some()
            .then(|| letters.all(|agrees| agrees));
        let noted = [overload, start_device, line, letters]
            .into_iter()
            .flatten();
        noted.fold((0, 0), |(agree, differ), agrees| {
            if agrees {
                (agree + 1, differ)
            } else {
                (agree, differ + 1)
            }
        })
    }
}

//! A capacitor by its current and volts while it works.
//!
//! Answers: how much capacitance has it, how surely, does that fit its marking, what does it hold
//! when the plug is pulled? Must never know: whether that explains what the machine does.
//!
//! Energised work is not for lay users: the capacitance range of a meter on the discharged part
//! says the same, and is asked for by a check of its own.

use job::{Answer, Job, Measured, Reading};
use measure::{
    Against, CapacitorError, CapacitorMarking, SAFE_BELOW, can_hurt, capacitance, discharge_time,
    stored_energy,
};
use quantity::{Amps, Farads, Joules, Observed, Ohms, Seconds, Uncertain, Volts};

use super::machine::MainsChoice;
use super::meter_readings::MeterReadings;
use crate::choice::{Choice, answered, choices};
use crate::whole::Clue;
use crate::{Caution, Check, Item};

choices! {
    /// What a capacitor is for, and how it is marked.
    pub enum CapacitorKind answers "capacitor-in-circuit" / "capacitor-kind" {
        /// A run capacitor with its own print.
        Run = "run",
        /// A run capacitor that only the machine's plate names.
        RunByPlate = "run-by-plate",
        /// A start capacitor marked with one number.
        Start = "start",
        /// A start capacitor marked with a range.
        StartRange = "start-range",
    }
}

/// What it is discharged through (common practice, no source).
pub const DISCHARGED_THROUGH: Ohms = Ohms::new(10e3);

/// What is known of a capacitor that was measured while it worked.
#[derive(Debug, Clone, PartialEq)]
pub struct CapacitorInCircuit {
    /// What it is for.
    pub kind: Option<CapacitorKind>,
    /// From where to where it should lie.
    pub marking: Option<CapacitorMarking>,
    /// Amperes through it.
    pub amps: Option<Uncertain<Amps>>,
    /// Volts across it.
    pub volts: Option<Uncertain<Volts>>,
    mains: Option<MainsChoice>,
    is_touched: bool,
}

/// One statement about a capacitor in circuit.
#[derive(Debug, Clone, PartialEq)]
pub enum CapacitorFinding {
    /// What it has.
    Capacitance {
        /// How much.
        farads: Uncertain<Farads>,
        /// From where to where it should lie, where that is known, and how it stands.
        marked: Option<(CapacitorMarking, Against)>,
    },
    /// What it may hold when the plug is pulled at the worst moment.
    Holds {
        /// The energy.
        energy: Joules,
        /// The volts at the crest.
        volts: Volts,
        /// Whether that can hurt.
        hurts: bool,
        /// How long [`DISCHARGED_THROUGH`] takes to bring it below [`SAFE_BELOW`].
        safe_after: Seconds,
    },
    /// Why nothing follows.
    Unusable(CapacitorError),
    /// These mains have either frequency, and the capacitance follows from it.
    FrequencyNotKnown,
}

impl CapacitorInCircuit {
    /// What is asked, in order. A start capacitor is in circuit for a second or two, which no
    /// ordinary meter follows.
    pub(crate) fn items(job: &Job) -> Vec<Item> {
        let mut items = vec![Item::CapacitorKind];
        let kind = answered::<CapacitorKind>(job);
        if kind == Some(CapacitorKind::StartRange) {
            items.push(Item::CapacitorLeast);
        }
        items.push(Item::CapacitorMarking);
        if !matches!(kind, Some(CapacitorKind::Start | CapacitorKind::StartRange)) {
            items.extend([Item::CapacitorAmps, Item::CapacitorVolts]);
        }
        items
    }

    pub(crate) fn of(job: &Job, mains: Option<MainsChoice>) -> Self {
        let mut readings = MeterReadings::of(job);
        let kind = answered(job);
        let printed = readings
            .printed_farads(Item::CapacitorMarking)
            .or_else(|| printed_on_the_clue(job));
        let least = readings.printed_farads(Item::CapacitorLeast);
        let items = Self::items(job);
        Self {
            kind,
            marking: printed.and_then(|printed| marking(kind?, printed, least)),
            amps: readings.amps(Item::CapacitorAmps),
            volts: readings.volts(Item::CapacitorVolts),
            mains,
            is_touched: items
                .iter()
                .filter(|item| item.check() == Check::CapacitorInCircuit)
                .any(|item| item.is_answered(job)),
        }
    }

    /// Its capacitance, where both readings are there and the frequency is known.
    pub(crate) fn capacitance(&self) -> Option<Result<Uncertain<Farads>, CapacitorError>> {
        let frequency = self.mains?.frequency()?;
        Some(capacitance(
            self.amps.as_ref()?,
            self.volts.as_ref()?,
            frequency,
        ))
    }

    pub(crate) fn findings(&self) -> Vec<CapacitorFinding> {
        let both_read = self.amps.is_some() && self.volts.is_some();
        match self.capacitance() {
            None if both_read && self.mains == Some(MainsChoice::V100) => {
                vec![CapacitorFinding::FrequencyNotKnown]
            }
            None => Vec::new(),
            Some(Err(error)) => vec![CapacitorFinding::Unusable(error)],
            Some(Ok(farads)) => {
                let holds = self.holds(&farads);
                let marked = self
                    .marking
                    .map(|marking| (marking, marking.judge(&farads)));
                [CapacitorFinding::Capacitance { farads, marked }]
                    .into_iter()
                    .chain(holds)
                    .collect()
            }
        }
    }

    /// The crest is the most that it can be left with: the plug may be pulled at any moment.
    fn holds(&self, farads: &Uncertain<Farads>) -> Option<CapacitorFinding> {
        let crest = self.volts.as_ref()?.value() * core::f64::consts::SQRT_2;
        let farads = farads.value();
        Some(CapacitorFinding::Holds {
            energy: stored_energy(farads, crest),
            volts: crest,
            hurts: can_hurt(farads, crest),
            safe_after: discharge_time(farads, DISCHARGED_THROUGH, crest, SAFE_BELOW)?,
        })
    }

    pub(crate) fn cautions(&self) -> Option<Caution> {
        self.is_touched.then_some(Caution::EnergisedCapacitor)
    }
}

fn marking(
    kind: CapacitorKind,
    printed: Farads,
    least: Option<Farads>,
) -> Option<CapacitorMarking> {
    Some(match kind {
        CapacitorKind::Run => CapacitorMarking::run(printed),
        CapacitorKind::RunByPlate => CapacitorMarking::nameplate(printed),
        CapacitorKind::Start => CapacitorMarking::start(printed),
        CapacitorKind::StartRange => CapacitorMarking::range(least?, printed),
    })
}

/// What was printed on it, told where it is measured discharged.
fn printed_on_the_clue(job: &Job) -> Option<Farads> {
    match job.answer(Clue::Capacitor.name(), crate::whole::MARKING)? {
        Answer::Reading(Reading {
            measured: Measured::Farads(typed),
            ..
        }) => match typed.observed {
            Observed::Value(value) if value.get() > 0.0 => Some(value),
            _ => None,
        },
        _ => None,
    }
}

impl CapacitorFinding {
    /// Its short name for files.
    #[must_use]
    pub const fn name(&self) -> &'static str {
        match self {
            Self::Capacitance { .. } => "capacitance",
            Self::Holds { .. } => "capacitor-holds",
            Self::Unusable(_) => "capacitance-unusable",
            Self::FrequencyNotKnown => "frequency-not-known",
        }
    }
}

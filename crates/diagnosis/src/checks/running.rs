//! Watts, volts and amperes of a running machine.
//!
//! Answers: how do they stand against a label, which way do they go, is the motor pumping or idle
//! as far as its power factor tells, may the start winding be left in, what can it draw at most?
//! Must never know: which fault that speaks for (that is weighed with everything else).

use job::{Job, Moment};
use measure::running::{
    AMPS_LIMITS, Plate, RunningError, both_windings_bound, current_against_plate, locked_rotor,
    power_factor,
};
use measure::{Against, Direction, WattsAt, WattsTrend, watts_trend};
use quantity::{Amps, Ohms, Ratio, Seconds, Uncertain, Volts, Watts};

use super::machine::MainsChoice;
use super::meter_readings::MeterReadings;
use super::stored_charge::Stores;
use crate::choice::{Choice, answered, choices};
use crate::whole::Build;
use crate::{Caution, Item};

choices! {
    /// On whose label amperes and watts were read.
    pub enum LabelOf answers "running" / "label-of" {
        /// The compressor's own.
        Compressor = "compressor",
        /// The whole machine's plate, which may include a defrost heater.
        WholeMachine = "whole-machine",
    }
}

impl From<LabelOf> for Plate {
    fn from(choice: LabelOf) -> Self {
        match choice {
            LabelOf::Compressor => Self::Compressor,
            LabelOf::WholeMachine => Self::Machine,
        }
    }
}

choices! {
    /// What a motor does as far as its power factor tells (judgement).
    pub enum MotorLoad {
        /// It turns and has next to nothing to do.
        Idle = "idle",
        /// It works.
        Pumping = "pumping",
        /// The power factor lies in between, is too uncertain, or is that of a board.
        CannotTell = "cannot-tell",
    }
}

/// When the two readings of watts are taken, counted from the start.
pub(crate) const EARLY: Seconds = Seconds::new(300.0);
pub(crate) const LATE: Seconds = Seconds::new(1_800.0);

/// Up to here a small motor without a run capacitor idles, and from the second on it works
/// (judgement: textbook split-phase motors have 0.2 to 0.4 unloaded and 0.6 to 0.7 loaded).
const IDLES_BELOW: f64 = 0.4;
const WORKS_ABOVE: f64 = 0.55;
/// From so many times the compressor's own label on, a steady current is that of a motor whose
/// start winding was left in, or that can't come up to speed (judgement).
const FAR_OVER: f64 = 1.3;
/// Mains have at most so many times their nominal volts (IEC 60038, from memory; 127 of 120 V by
/// ANSI C84.1 is less).
const MOST_VOLTS: f64 = 1.1;

/// What is known of the machine as it runs.
#[derive(Debug, Clone, PartialEq)]
pub struct Running {
    /// Watts five minutes after it started.
    pub early: Option<Uncertain<Watts>>,
    /// Watts after half an hour.
    pub late: Option<Uncertain<Watts>>,
    /// Volts in the same minute as the last watts.
    pub volts: Option<Uncertain<Volts>>,
    /// Amperes in the same minute.
    pub amps: Option<Uncertain<Amps>>,
    /// On whose label what follows was read.
    pub label_of: Option<LabelOf>,
    /// The label's amperes.
    pub label_amps: Option<Amps>,
    /// The label's watts.
    pub label_watts: Option<Watts>,
    /// Whether a board drives the motor: then the power factor is the board's.
    pub is_by_board: bool,
    mains: Option<MainsChoice>,
}

/// One statement about the machine as it runs.
#[derive(Debug, Clone, PartialEq)]
pub enum RunningFinding {
    /// Its power factor, and what the motor does as far as that tells.
    PowerFactor {
        /// Watts over volt-amperes.
        factor: Uncertain<Ratio>,
        /// What it tells (judgement).
        load: MotorLoad,
    },
    /// Why watts, volts and amperes don't go together.
    Unusable(RunningError),
    /// Its current against a label.
    AgainstLabel {
        /// Whose label.
        whose: Plate,
        /// The current as a share of the label's.
        share: Uncertain<Ratio>,
        /// How it stands.
        against: Against,
    },
    /// A steady current far over the compressor's label: the start winding may be left in.
    StartWindingLeftIn {
        /// The current as a share of the label's.
        share: Uncertain<Ratio>,
    },
    /// Where the watts went between both readings.
    Trend(WattsTrend),
    /// What its motor should draw with the rotor locked.
    LockedRotor {
        /// At least, by its running current.
        least: Amps,
        /// At most, by its running current and its windings.
        most: Amps,
        /// What the windings let through at most, where they were measured.
        bound: Option<Uncertain<Amps>>,
    },
    /// It was seen to draw more than its windings can let through.
    MoreThanItsWindings {
        /// What they let through at most.
        bound: Uncertain<Amps>,
    },
}

impl Running {
    /// What is asked, in order. A label is asked for once there are amperes or watts to hold
    /// against it.
    pub(crate) fn items(job: &Job) -> Vec<Item> {
        let mut items = vec![
            Item::EarlyWatts,
            Item::LateWatts,
            Item::RunningVolts,
            Item::RunningAmps,
            Item::LabelOf,
        ];
        if Item::LabelOf.is_answered(job) && answered::<LabelOf>(job).is_none() {
            return items;
        }
        items.push(Item::LabelAmps);
        if answered(job) != Some(LabelOf::WholeMachine) {
            items.push(Item::LabelWatts);
        }
        items
    }

    pub(crate) fn of(job: &Job, mains: Option<MainsChoice>) -> Self {
        let mut readings = MeterReadings::of(job);
        Self {
            early: readings.watts(Item::EarlyWatts),
            late: readings.watts(Item::LateWatts),
            volts: readings.volts(Item::RunningVolts),
            amps: readings.amps(Item::RunningAmps),
            label_of: answered(job),
            label_amps: readings.printed_amps(Item::LabelAmps),
            label_watts: readings.printed_watts(Item::LabelWatts),
            is_by_board: answered(job) == Some(Stores::InverterBoard)
                || answered(job) == Some(Build::Inverter),
            mains,
        }
    }

    /// The watts that amperes and volts belong to: the latest.
    pub(crate) fn watts(&self) -> Option<&Uncertain<Watts>> {
        self.late.as_ref().or(self.early.as_ref())
    }

    /// When those were entered.
    pub(crate) fn watts_read(&self, job: &Job) -> Option<Moment> {
        let late = self.late.as_ref().map(|_| Item::LateWatts);
        let item = late.or_else(|| self.early.as_ref().map(|_| Item::EarlyWatts))?;
        let (entry, _) = job.counting(item.check().name(), item.name())?;
        Some(entry.at)
    }

    /// The amperes, unless they look like milliamperes: then nothing is built on them.
    fn believed_amps(&self) -> Option<&Uncertain<Amps>> {
        let amps = self.amps.as_ref()?;
        let milliamperes = RunningFinding::Unusable(RunningError::Milliamperes);
        let is_too_much = AMPS_LIMITS.beyond(amps.value()).is_some();
        (!is_too_much && self.power_factor() != Some(milliamperes)).then_some(amps)
    }

    /// The settled current as a share of a label's.
    pub(crate) fn share_of_label(&self) -> Option<Uncertain<Ratio>> {
        let label = Uncertain::exact(self.label_amps?);
        Some(self.believed_amps()?.ratio(&label))
    }

    /// `windings`: run and start, where they were measured and are whole. `seen`: the current of
    /// a start, where one was read.
    pub(crate) fn findings(
        &self,
        windings: Option<&[Uncertain<Ohms>; 2]>,
        seen: Option<&Uncertain<Amps>>,
    ) -> Vec<RunningFinding> {
        let bound = windings.and_then(|both| self.bound(both));
        self.power_factor()
            .into_iter()
            .chain(self.against_label())
            .chain(self.trend())
            .chain(self.locked_rotor(bound.as_ref()))
            .chain(more_than(bound, seen))
            .collect()
    }

    /// A start winding that is left in burns within minutes.
    pub(crate) fn cautions(&self) -> Option<Caution> {
        self.against_label()
            .iter()
            .any(|finding| matches!(finding, RunningFinding::StartWindingLeftIn { .. }))
            .then_some(Caution::UnplugBeforeItBurns)
    }

    fn power_factor(&self) -> Option<RunningFinding> {
        let (watts, volts, amps) = (self.watts()?, self.volts.as_ref()?, self.amps.as_ref()?);
        Some(match power_factor(watts, volts, amps) {
            Ok(factor) => RunningFinding::PowerFactor {
                load: self.load(&factor),
                factor,
            },
            Err(error) => RunningFinding::Unusable(error),
        })
    }

    fn load(&self, factor: &Uncertain<Ratio>) -> MotorLoad {
        let (middle, spread) = (factor.value().get(), factor.expanded().get());
        if self.is_by_board {
            MotorLoad::CannotTell
        } else if middle + spread < IDLES_BELOW {
            MotorLoad::Idle
        } else if middle - spread > WORKS_ABOVE {
            MotorLoad::Pumping
        } else {
            MotorLoad::CannotTell
        }
    }

    fn against_label(&self) -> Vec<RunningFinding> {
        let Some((whose, share, against)) = self.stands_against_label() else {
            return Vec::new();
        };
        let is_far_over =
            whose == Plate::Compressor && (share.value() - share.expanded()).get() > FAR_OVER;
        let left_in = is_far_over.then(|| RunningFinding::StartWindingLeftIn {
            share: share.clone(),
        });
        [RunningFinding::AgainstLabel {
            whose,
            share,
            against,
        }]
        .into_iter()
        .chain(left_in)
        .collect()
    }

    fn stands_against_label(&self) -> Option<(Plate, Uncertain<Ratio>, Against)> {
        let whose = self.label_of?.into();
        let share = self.share_of_label()?;
        let against = current_against_plate(self.believed_amps()?, self.label_amps?, whose)?;
        Some((whose, share, against))
    }

    /// Which way its watts go, from two readings of them.
    pub(crate) fn direction(&self) -> Option<Direction> {
        match self.trend()? {
            RunningFinding::Trend(trend) => Some(trend.direction),
            _ => None,
        }
    }

    /// Both readings are of one meter: its scatter is taken for all of its uncertainty, which errs
    /// towards "can't tell".
    fn trend(&self) -> Option<RunningFinding> {
        let (early, late) = (self.early.as_ref()?, self.late.as_ref()?);
        let readings = [(EARLY, early), (LATE, late)].map(|(at, watts)| WattsAt {
            at,
            watts: watts.value(),
        });
        let scatter = late.standard().get().max(early.standard().get());
        watts_trend(&readings, Watts::new(scatter)).map(RunningFinding::Trend)
    }

    /// What both windings let through with nothing in the start winding's way, at the most volts
    /// that such mains have: no start device lets more.
    fn bound(&self, [run, start]: &[Uncertain<Ohms>; 2]) -> Option<Uncertain<Amps>> {
        both_windings_bound(self.mains?.volts() * MOST_VOLTS, run, start, Ohms::new(0.0))
    }

    fn locked_rotor(&self, bound: Option<&Uncertain<Amps>>) -> Option<RunningFinding> {
        if self.is_by_board {
            return None;
        }
        let running = self.believed_amps()?.value();
        let (least, most) = locked_rotor(running, bound.map(Uncertain::value))?;
        Some(RunningFinding::LockedRotor {
            least,
            most,
            bound: bound.cloned(),
        })
    }
}

fn more_than(
    bound: Option<Uncertain<Amps>>,
    seen: Option<&Uncertain<Amps>>,
) -> Option<RunningFinding> {
    let (bound, seen) = (bound?, seen?);
    // Read with different meters, and counted from sources of their own: independent.
    let spread = libm::hypot(seen.expanded().get(), bound.expanded().get());
    ((seen.value() - bound.value()).get() > spread)
        .then_some(RunningFinding::MoreThanItsWindings { bound })
}

impl RunningFinding {
    /// Its short name for files.
    #[must_use]
    pub const fn name(&self) -> &'static str {
        match self {
            Self::PowerFactor { .. } => "power-factor",
            Self::Unusable(RunningError::Milliamperes) => "milliamperes-for-amperes",
            Self::Unusable(_) => "power-unusable",
            Self::AgainstLabel { .. } => "current-against-label",
            Self::StartWindingLeftIn { .. } => "start-winding-may-be-left-in",
            Self::Trend(_) => "watts-trend",
            Self::LockedRotor { .. } => "locked-rotor-current",
            Self::MoreThanItsWindings { .. } => "more-than-its-windings",
        }
    }
}

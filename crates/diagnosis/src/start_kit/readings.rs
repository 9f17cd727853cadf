//! What a job holds of one motor and its supply, and what it lacks.

use job::{Job, Measured, SetUp, StartTrial, Tried};
use measure::start_kit::LockedRotor;
use quantity::{Accuracy, Amps, Hertz, Observed, Ohms, Sources, Typed, Uncertain, Volts};

use crate::choice::{Choice, answered, choices};
use crate::{Assessment, Check, Finding, Item, StartDeviceKind, StartTrials, WindingsFinding};

choices! {
    /// Something to be known first, or to be known better.
    pub enum KitNeed {
        /// The mains.
        Mains = "mains",
        /// Whether the mains have 50 or 60 Hz.
        Frequency = "frequency",
        /// The refrigerant by the plate.
        Refrigerant = "refrigerant",
        /// The three pairs of pins, whole and bare.
        Windings = "windings",
        /// Which of two like windings is the start winding: the wiring as found.
        StartAndRun = "start-and-run",
        /// What kind of start device it has.
        StartDevice = "start-device",
        /// The cold PTC's ohms, or those printed on it.
        DeviceOhms = "device-ohms",
        /// An electronic start device: its ohms say nothing of how it starts.
        DeviceWithoutOhms = "device-without-ohms",
        /// No motor fits these windings: measure them again.
        WindingsAgain = "windings-again",
        /// No motor fits these windings and that current: read it again.
        CurrentAgain = "current-again",
        /// The highest amperes at a try that hums.
        Current = "current",
        /// The lowest volts at the same try.
        Volts = "volts",
    }
}

impl KitNeed {
    /// The name of the check, or of the screen, that brings it.
    #[must_use]
    pub fn place(self) -> &'static str {
        match self {
            Self::Mains | Self::Frequency => Check::Machine.name(),
            Self::Refrigerant => Check::Refrigerant.name(),
            Self::Windings | Self::StartAndRun | Self::WindingsAgain => Check::Windings.name(),
            Self::StartDevice | Self::DeviceOhms | Self::DeviceWithoutOhms => {
                Check::StartDevice.name()
            }
            Self::CurrentAgain | Self::Current | Self::Volts => StartTrials::NAME,
        }
    }
}

/// A line current at a try with a plain start device.
#[derive(Debug, Clone, PartialEq)]
pub struct KitCurrent {
    /// The highest that the clamp showed. Where the volts weren't read, what they may have been
    /// is in its uncertainty.
    pub amps: Uncertain<Amps>,
    /// Whether it hummed. At a try that started, the rotor is at rest for a moment only, which a
    /// plain clamp may miss.
    pub hummed: bool,
}

/// What is known of one motor, its plain start device and its supply.
#[derive(Debug, Clone, PartialEq)]
pub struct KitReadings {
    /// The run winding, cold. At a try it is some tens of kelvins warmer, which the width of what
    /// is thought of the rotor covers.
    pub main: Uncertain<Ohms>,
    /// The start winding, cold.
    pub start: Uncertain<Ohms>,
    /// The plain start device while it starts: a cold PTC's ohms, none for a relay's contact.
    pub device: Ohms,
    /// The volts while it hums: the lowest read at that try, else the nominal ones.
    pub supply: Volts,
    /// Whether they were read.
    pub supply_read: bool,
    /// The mains' frequency.
    pub frequency: Hertz,
    /// The line's current with the rotor at rest, where there is one.
    pub current: Option<KitCurrent>,
}

/// What the volts may differ from the nominal ones where nobody read them, as a share, standard
/// uncertainty (judgement: the ±5 % that utilities keep, and what a start takes off).
const UNREAD_VOLTS: f64 = 0.05;

impl KitReadings {
    /// Of a job as it is now, or what it lacks.
    pub(super) fn of(job: &Job, known: &Assessment) -> Result<Self, Vec<KitNeed>> {
        let mains = known.machine.mains.ok_or(KitNeed::Mains);
        let frequency = mains.and_then(|mains| mains.frequency().ok_or(KitNeed::Frequency));
        let refrigerant = known.machine.refrigerant.ok_or(KitNeed::Refrigerant);
        let windings = windings(known);
        let device = device(job);
        let needs = [
            frequency.as_ref().err(),
            refrigerant.as_ref().err(),
            windings.as_ref().err(),
            device.as_ref().err(),
        ];
        if let (Ok(mains), Ok(frequency), Ok(_), Ok((main, start)), Ok(device)) =
            (mains, frequency, refrigerant, &windings, device)
        {
            let nominal = mains.volts();
            let (current, volts) = current(known, nominal);
            return Ok(Self {
                main: main.clone(),
                start: start.clone(),
                device,
                supply: volts.unwrap_or(nominal),
                supply_read: volts.is_some(),
                frequency,
                current,
            });
        }
        Err(needs.into_iter().flatten().copied().collect())
    }

    /// As a motor is fitted to it.
    pub(super) fn locked_rotor(&self) -> LockedRotor {
        LockedRotor {
            main: self.main.clone(),
            start: self.start.clone(),
            device: self.device,
            supply: self.supply,
            frequency: self.frequency,
            main_alone: None,
            with_start: self.current.as_ref().map(|current| current.amps.clone()),
        }
    }
}

fn windings(known: &Assessment) -> Result<(Uncertain<Ohms>, Uncertain<Ohms>), KitNeed> {
    let mut need = KitNeed::Windings;
    for finding in &known.findings {
        match finding {
            Finding::Windings(WindingsFinding::Whole { run, start, .. }) => {
                return Ok((run.clone(), start.clone()));
            }
            Finding::Windings(WindingsFinding::WholeButAlike { .. }) => need = KitNeed::StartAndRun,
            _ => {}
        }
    }
    Err(need)
}

/// The ohms in series with the start winding through a plain device that is cold.
fn device(job: &Job) -> Result<Ohms, KitNeed> {
    match answered::<StartDeviceKind>(job) {
        Some(StartDeviceKind::Ptc) => ptc(job).ok_or(KitNeed::DeviceOhms),
        // Coil and contact have a fraction of an ohm, and the coil lies in the run winding's way
        // (common practice, no source).
        Some(StartDeviceKind::CurrentRelay | StartDeviceKind::PotentialRelay) => Ok(Ohms::new(0.0)),
        Some(StartDeviceKind::Electronic) => Err(KitNeed::DeviceWithoutOhms),
        Some(StartDeviceKind::NotFound) | None => Err(KitNeed::StartDevice),
    }
}

/// What was read counts before what is printed; of a dead one only the print does.
fn ptc(job: &Job) -> Option<Ohms> {
    /// A PTC beyond this is open, below the other shorted: then the print counts (judgement).
    const ALIVE: (Ohms, Ohms) = (Ohms::new(1.0), Ohms::new(100.0));
    let value = |item: Item| match item.ohms(job)?.0.observed {
        Observed::Value(ohms) => Some(ohms),
        Observed::OverRange { .. } => None,
    };
    let alive = |ohms: &Ohms| *ohms >= ALIVE.0 && *ohms <= ALIVE.1;
    let read = value(Item::PtcReading).filter(alive);
    read.or_else(|| value(Item::PtcMarking).filter(alive))
}

/// The current at rest with a plain device, and the volts at the same try. A try that hummed
/// counts before one that started; of several the highest current.
fn current(known: &Assessment, nominal: Volts) -> (Option<KitCurrent>, Option<Volts>) {
    let series = known.start_trials.iter().flat_map(|trials| &trials.series);
    let plain = series.filter(|series| series.set_up != SetUp::Kit);
    let tries = plain.flat_map(|series| &series.tries);
    let mut best: Option<(bool, Typed<Amps>, Accuracy, &StartTrial)> = None;
    for (_, one) in tries {
        let hummed = match one.outcome {
            Tried::HummedAndTripped | Tried::HummedThenStarted => true,
            Tried::Started => false,
            Tried::Silent | Tried::OutletTripped => continue,
        };
        let Some((typed, accuracy)) = one.highest.as_ref().and_then(amps) else {
            continue;
        };
        let beats = best.as_ref().is_none_or(|(other_hummed, other, ..)| {
            (hummed, size(typed)) > (*other_hummed, size(*other))
        });
        if beats {
            best = Some((hummed, typed, accuracy, one));
        }
    }
    let Some((hummed, typed, accuracy, one)) = best else {
        return (None, None);
    };
    let mut sources = Sources::default();
    let value = Amps::new(size(typed));
    let clamp = accuracy.measured(value, typed.count, &mut sources);
    let volts = one.lowest.as_ref().and_then(volts);
    // The current goes with the volts: what these may be off by, it may be off by.
    let share = volts.map_or(UNREAD_VOLTS, |(volts, standard)| {
        standard.get() / volts.get().max(f64::MIN_POSITIVE)
    });
    let amps = clamp.with(sources.fresh(), value * share);
    let read = volts.map(|(volts, _)| volts).filter(|volts| {
        // A meter in the wrong range isn't taken for the mains.
        volts.get() > 0.3 * nominal.get()
    });
    (Some(KitCurrent { amps, hummed }), read)
}

fn size(typed: Typed<Amps>) -> f64 {
    match typed.observed {
        Observed::Value(amps) => amps.get(),
        Observed::OverRange { .. } => 0.0,
    }
}

fn amps(reading: &job::Reading) -> Option<(Typed<Amps>, Accuracy)> {
    match reading.measured {
        Measured::Amps(typed) if size(typed) > 0.0 => Some((typed, reading.accuracy)),
        _ => None,
    }
}

/// The volts with their standard uncertainty.
fn volts(reading: &job::Reading) -> Option<(Volts, Volts)> {
    match reading.measured {
        Measured::Volts(typed) => match typed.observed {
            Observed::Value(volts) => Some((volts, reading.accuracy.standard(volts, typed.count))),
            Observed::OverRange { .. } => None,
        },
        _ => None,
    }
}

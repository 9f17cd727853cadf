//! What a capacitor would do to the motors that fit the readings.

use job::{Job, SetUp};
use measure::start_kit::{Fit, FitError, KitPoint, KitPrior, UsefulRange};
use measure::start_trials::Knowledge;
use quantity::{Farads, Ohms, Seconds, Volts};

use super::KitDeclared;
use super::readings::{KitNeed, KitReadings};
use super::reasons::chance;
use crate::choice::{Choice, choices};
use crate::whole::{ANSWER, Clue, Fault, Hold};
use crate::{Assessment, StartTrials};

choices! {
    /// What a kit would be good for here.
    pub enum KitAdvice {
        /// It starts by itself after an ordinary rest: a kit is a convenience.
        Convenience = "convenience",
        /// It would hardly add torque.
        LittleGain = "little-gain",
        /// A plain start device that is known to be good comes first.
        PlainDeviceFirst = "plain-device-first",
        /// Why it doesn't start isn't settled, and a kit would hide it.
        WouldHide = "would-hide",
        /// It is worth a test.
        WorthATest = "worth-a-test",
    }
}

choices! {
    /// Whether tries with a kit bear out what was foretold.
    pub enum KitTries {
        /// Nobody has tried one.
        None = "none",
        /// Too few tries to tell.
        TooFew = "too-few",
        /// They do.
        Agree = "agree",
        /// They don't.
        Disagree = "disagree",
    }
}

/// What a kit would do, for the motors that fit what was read.
#[derive(Debug, Clone, PartialEq)]
pub struct KitCurve {
    /// From what it was drawn.
    pub readings: KitReadings,
    /// Capacitances in even steps of their logarithm, the smallest first, from well below the
    /// useful range to well above it: torque over that with the plain device, the line's current
    /// and the capacitor's volts, each as 10th, 50th and 90th percentile.
    pub points: Vec<KitPoint>,
    /// Which capacitances help.
    pub range: UsefulRange,
    /// What the medians of both ends of the range do.
    pub ends: [KitPoint; 2],
    /// What the capacitance in the (geometric) middle of the range does.
    pub middle: KitPoint,
    /// How many motors of equal weight the percentiles stand for; a few dozen is little.
    pub support: f64,
    /// The least voltage class that holds what nine motors of ten put across the capacitor, in
    /// volts of the alternating mains; `None` where none of the usual ones, up to 330 V, does.
    pub class: Option<Volts>,
    /// How long [`KitCurve::BLEEDER`] takes, at the most, to bring such a capacitor below what can
    /// shock.
    pub discharge: Option<Seconds>,
    /// What it would be good for.
    pub advice: KitAdvice,
    /// Whether tries bear it out.
    pub tries: KitTries,
    /// Whether only a kit that was declared for this gas and this compressor comes into question.
    pub is_declared: bool,
    /// What would narrow it.
    pub narrower: Vec<KitNeed>,
}

/// Points of the curve: enough for a smooth line a hand wide.
const POINTS: usize = 17;
/// How far the curve goes beyond what nine motors of ten call useful.
const BEYOND: f64 = 2.0;
/// From this many times the plain device's torque on, a kit should be noticed at a try
/// (judgement).
const NOTICED: f64 = 1.5;
/// From here on tries have shown which set-up starts sooner, and that a rest is ordinary
/// (judgement).
const SHOWN: f64 = 0.85;
/// What a kit hides, and from which chance on that is minded (judgement, as in the verdict).
const TIGHT: [Fault; 2] = [Fault::RotorTight, Fault::RotorSeized];
const MAY_BE_TIGHT: f64 = 0.1;
/// Voltage classes of start capacitors (EIA-463, from memory).
const CLASSES: [f64; 6] = [110.0, 125.0, 165.0, 220.0, 250.0, 330.0];
/// The capacitor's volts rise while the motor comes up to speed, until the kit cuts it out
/// (from memory: a quarter and more).
const CLASS_MARGIN: f64 = 1.25;

impl KitCurve {
    /// The resistor by which a capacitor is discharged by hand (common practice, no source).
    pub const BLEEDER: Ohms = Ohms::new(10_000.0);

    /// Of what was read; or what no motor fits.
    pub(super) fn of(
        readings: KitReadings,
        job: &Job,
        known: &Assessment,
    ) -> Result<Self, KitNeed> {
        let prior = KitPrior::default();
        let fit = Fit::of(&readings.locked_rotor(), &prior);
        let fit = fit.map_err(|error| need(error, &readings, &prior))?;
        let drawn = drawn(&fit).ok_or(KitNeed::WindingsAgain)?;
        let [low, middle, high] = drawn.marks;
        let trials = known.start_trials.as_ref();
        let gains = middle.torque.median.get() >= NOTICED;
        Ok(Self {
            class: class(&[low, high]),
            discharge: discharge(drawn.range.to.ninetieth, &[low, high]),
            advice: advice(job, known, gains),
            tries: tries(trials, gains),
            is_declared: KitDeclared::suits(job, &known.machine),
            narrower: narrower(&readings),
            points: drawn.points,
            range: drawn.range,
            ends: [low, high],
            middle,
            support: fit.support(),
            readings,
        })
    }
}

struct Drawn {
    points: Vec<KitPoint>,
    range: UsefulRange,
    /// Both ends of the range, with its middle between them.
    marks: [KitPoint; 3],
}

fn drawn(fit: &Fit) -> Option<Drawn> {
    // A kit's own relay or PTC adds little beside the winding (judgement).
    let none = Ohms::new(0.0);
    let range = fit.useful_range(none)?;
    let (low, high) = (range.from.median, range.to.median);
    let middle = Farads::new(libm::sqrt(low.get() * high.get()));
    let mark = |capacitance| fit.at(capacitance, none);
    let (least, most) = (
        range.from.tenth.get() / BEYOND,
        range.to.ninetieth.get() * BEYOND,
    );
    let points = (0..POINTS).map(|place| {
        let share = place as f64 / (POINTS - 1) as f64;
        mark(Farads::new(least * libm::pow(most / least, share)))
    });
    Some(Drawn {
        points: points.collect::<Option<Vec<_>>>()?,
        marks: [mark(low)?, mark(middle)?, mark(high)?],
        range,
    })
}

/// What is to be read again: the current, where the windings alone would do.
fn need(error: FitError, readings: &KitReadings, prior: &KitPrior) -> KitNeed {
    let mut without = readings.locked_rotor();
    without.with_start = None;
    match error {
        FitError::NoSupply => KitNeed::Mains,
        _ if readings.current.is_some() && Fit::of(&without, prior).is_ok() => {
            KitNeed::CurrentAgain
        }
        _ => KitNeed::WindingsAgain,
    }
}

/// The volts that nine motors of ten don't exceed at either end.
fn highest(ends: &[KitPoint; 2]) -> Volts {
    let [low, high] = ends;
    let (low, high) = (
        low.capacitor_volts.ninetieth,
        high.capacitor_volts.ninetieth,
    );
    if low > high { low } else { high }
}

fn class(ends: &[KitPoint; 2]) -> Option<Volts> {
    let least = highest(ends).get() * CLASS_MARGIN;
    let fits = CLASSES.into_iter().find(|class| *class >= least);
    fits.map(Volts::new)
}

/// From the peak of the volts, with the margin, down to where a meter may prove it.
fn discharge(capacitance: Farads, ends: &[KitPoint; 2]) -> Option<Seconds> {
    let peak = highest(ends) * (CLASS_MARGIN * core::f64::consts::SQRT_2);
    measure::discharge_time(capacitance, KitCurve::BLEEDER, peak, measure::SAFE_BELOW)
}

fn advice(job: &Job, known: &Assessment, gains: bool) -> KitAdvice {
    let trials = known.start_trials.as_ref();
    let found = trials.and_then(|trials| trials.series(SetUp::Original));
    let starts = found.is_some_and(|series| {
        series.threshold.knowledge != Knowledge::Nothing && series.zones.ordinary >= SHOWN
    });
    let good_tried = trials.is_some_and(|trials| trials.series(SetUp::Substitute).is_some())
        || job.choice(Clue::GoodDevice.name(), ANSWER).is_some();
    let holds = known.whole.iter().flat_map(|whole| &whole.verdict.hold);
    let held = holds.copied().any(|hold| hold == Hold::DoNotFitStartKit)
        // Where gas burns that stands for universal kits alone.
        && (!KitDeclared::suits(job, &known.machine) || chance(known, &TIGHT) >= MAY_BE_TIGHT);
    if starts {
        KitAdvice::Convenience
    } else if !gains {
        KitAdvice::LittleGain
    } else if !good_tried {
        KitAdvice::PlainDeviceFirst
    } else if held {
        KitAdvice::WouldHide
    } else {
        KitAdvice::WorthATest
    }
}

fn tries(trials: Option<&StartTrials>, gains: bool) -> KitTries {
    let kit = trials.and_then(|trials| trials.series(SetUp::Kit));
    let Some(kit) = kit else {
        return KitTries::None;
    };
    let Some(gain) = kit.gain.filter(|gain| gain.knowledge != Knowledge::Nothing) else {
        return KitTries::TooFew;
    };
    let sooner = gain.chance_sooner >= SHOWN;
    if !sooner && gain.chance_sooner > 1.0 - SHOWN {
        KitTries::TooFew
    } else if sooner == gains {
        KitTries::Agree
    } else {
        KitTries::Disagree
    }
}

fn narrower(readings: &KitReadings) -> Vec<KitNeed> {
    match &readings.current {
        None => vec![KitNeed::Current, KitNeed::Volts],
        Some(current) => {
            let better = (!current.hummed).then_some(KitNeed::Current);
            let volts = (!readings.supply_read).then_some(KitNeed::Volts);
            better.into_iter().chain(volts).collect()
        }
    }
}

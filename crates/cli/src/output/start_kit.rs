//! Whether a start kit would help, in what `assess --json` prints.

use diagnosis::{Choice, KitCurve, KitNeed, NoKit, StartKit};
use measure::start_kit::{KitPoint, Spread};
use quantity::{Amps, Quantity, Seconds, Volts};
use serde::Serialize;
use wording::Words;

use super::Resistance;

/// What is to be said of a start kit: reasons against one, or what is missing, or what it would do.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
pub(crate) struct Kit {
    /// not-this-machine, missing or curve.
    answer: &'static str,
    /// The answer in words.
    words: &'static str,
    /// Why a kit is the wrong answer, the gravest first; empty unless it is.
    against: Vec<Against>,
    /// What has to be known first; empty unless something is missing.
    missing: Vec<Need>,
    /// What a kit would do; null unless that can be told.
    curve: Option<Curve>,
}

/// A reason against a kit.
#[derive(Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct Against {
    /// Its name.
    name: &'static str,
    /// In words.
    words: &'static str,
}

/// Something to be known first, or to be known better.
#[derive(Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct Need {
    /// Its name.
    name: &'static str,
    /// The check, or the screen, that brings it.
    check: &'static str,
    /// In words.
    words: &'static str,
}

/// What a kit would do, for the motors that fit the readings. Three numbers are the 10th, 50th and
/// 90th percentile over those motors.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct Curve {
    /// convenience, little-gain, plain-device-first, would-hide or worth-a-test.
    advice: &'static str,
    /// Whether tries with a kit bear it out: none, too-few, agree or disagree.
    tries: &'static str,
    /// Where the useful range begins, in farads: both windings' currents at a right angle.
    useful_from: [f64; 3],
    /// Where it ends, in farads: the greatest torque.
    useful_to: [f64; 3],
    /// Torque, current and volts at capacitances from well below the useful range to well above
    /// it, the smallest first.
    points: Vec<Point>,
    /// How many motors of equal weight the percentiles stand for.
    support: f64,
    /// The least voltage class that holds what nine motors of ten put across the capacitor, in
    /// volts; null where none of the usual ones does.
    class_volts: Option<f64>,
    /// How long 10 kΩ take, at the most, to bring such a capacitor below what can shock, in
    /// seconds; null where that doesn't follow.
    discharge_seconds: Option<f64>,
    /// Whether only a kit that its maker declares for this gas that burns comes into question.
    declared_only: bool,
    /// From what it was drawn.
    readings: Readings,
    /// What would narrow it.
    narrower: Vec<Need>,
}

/// What one capacitance does.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct Point {
    /// The capacitance in farads.
    farads: f64,
    /// Starting torque over that with the plain start device.
    torque: [f64; 3],
    /// The line's current with the rotor at rest, in amperes.
    line_amperes: [f64; 3],
    /// The effective volts across the capacitor.
    capacitor_volts: [f64; 3],
}

/// What is known of the motor, its plain start device and its supply.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct Readings {
    /// The run winding, cold.
    run: Resistance,
    /// The start winding, cold.
    start: Resistance,
    /// The plain start device while it starts, in ohms.
    device_ohms: f64,
    /// The volts while it hums.
    supply_volts: f64,
    /// Whether they were read; else they are the mains' by name.
    supply_read: bool,
    /// The mains' frequency in hertz.
    hertz: f64,
    /// The highest line current with the plain device, in amperes, with its standard uncertainty;
    /// null where none was read.
    amperes: Option<[f64; 2]>,
    /// Whether it hummed then; null where no current was read.
    hummed: Option<bool>,
}

impl Kit {
    pub(crate) fn of(kit: &StartKit) -> Self {
        let (against, missing): (&[NoKit], &[KitNeed]) = match kit {
            StartKit::NotThisMachine(reasons) => (reasons, &[]),
            StartKit::Missing(needs) => (&[], needs),
            StartKit::Curve(_) => (&[], &[]),
        };
        Self {
            answer: match kit {
                StartKit::NotThisMachine(_) => "not-this-machine",
                StartKit::Missing(_) => "missing",
                StartKit::Curve(_) => "curve",
            },
            words: wording::start_kit::verdict(kit),
            against: against.iter().copied().map(Against::of).collect(),
            missing: missing.iter().copied().map(Need::of).collect(),
            curve: kit.curve().map(Curve::of),
        }
    }
}

impl Against {
    fn of(reason: NoKit) -> Self {
        Self {
            name: reason.name(),
            words: reason.words(),
        }
    }
}

impl Need {
    fn of(need: KitNeed) -> Self {
        Self {
            name: need.name(),
            check: need.place(),
            words: need.words(),
        }
    }
}

impl Curve {
    fn of(curve: &KitCurve) -> Self {
        Self {
            advice: curve.advice.name(),
            tries: curve.tries.name(),
            useful_from: percentiles(curve.range.from),
            useful_to: percentiles(curve.range.to),
            points: curve.points.iter().map(Point::of).collect(),
            support: curve.support,
            class_volts: curve.class.map(Volts::get),
            discharge_seconds: curve.discharge.map(Seconds::get),
            declared_only: curve.is_declared,
            readings: Readings::of(curve),
            narrower: curve.narrower.iter().copied().map(Need::of).collect(),
        }
    }
}

impl Point {
    fn of(point: &KitPoint) -> Self {
        Self {
            farads: point.capacitance.get(),
            torque: percentiles(point.torque),
            line_amperes: percentiles(point.line),
            capacitor_volts: percentiles(point.capacitor_volts),
        }
    }
}

impl Readings {
    fn of(curve: &KitCurve) -> Self {
        let readings = &curve.readings;
        let current = readings.current.as_ref();
        let amperes = current.map(|read| [read.amps.value(), read.amps.standard()].map(Amps::get));
        Self {
            run: Resistance::of(&readings.main),
            start: Resistance::of(&readings.start),
            device_ohms: readings.device.get(),
            supply_volts: readings.supply.get(),
            supply_read: readings.supply_read,
            hertz: readings.frequency.get(),
            amperes,
            hummed: current.map(|read| read.hummed),
        }
    }
}

fn percentiles<Q: Quantity>(spread: Spread<Q>) -> [f64; 3] {
    [spread.tenth, spread.median, spread.ninetieth].map(Q::get)
}

//! What a machine uses, in what `assess --json` prints.

use diagnosis::{Energy as Known, EnergyAgainst, Metering, RunBy, Stands};
use measure::energy::{Comparison, RunShare, Standing};
use quantity::{Uncertain, WattHours};
use serde::Serialize;
use wording::Locale;

/// Energy and running time.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
pub(crate) struct Energy {
    /// The share of the time that the compressor runs; null where nothing tells it.
    run: Option<Run>,
    /// The metering that counts; null where nothing was metered since the last change.
    metered: Option<Metered>,
    /// The room's mean temperature while it was metered, °C; null where nobody read it.
    room: Option<f64>,
    /// open, cooling-down, other-rules, before-limits, no-limit or against.
    stands: &'static str,
    /// Each limit that it may have been made under.
    limits: Vec<Limit>,
    /// What a year costs with its expanded uncertainty (k = 2), in the currency of the price; null
    /// without a price or a year.
    cost: Option<[f64; 2]>,
    /// All of it in words.
    words: Vec<String>,
}

/// How long a compressor runs.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct Run {
    /// events, meter or log.
    by: &'static str,
    /// From 0 to 1.
    share: f64,
    /// Its standard uncertainty by the scatter of cycles; null of fewer than two.
    standard_uncertainty: Option<f64>,
    /// Whole cycles.
    cycles: usize,
}

/// What a meter in the outlet counted.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct Metered {
    /// How long, in seconds.
    seconds: f64,
    /// Whether it was cooling down then: a year doesn't follow from that.
    cooled_down: bool,
    /// In 24 hours; null where it was metered for too short.
    day: Option<Amount>,
    /// In 365 such days, likewise.
    year: Option<Amount>,
    /// What of both the length of metering leaves open, as a share; likewise.
    length_error: Option<f64>,
}

/// An amount of energy.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct Amount {
    /// The best estimate.
    watt_hours: f64,
    /// Its standard uncertainty; twice this holds about 95 of 100.
    standard_uncertainty: f64,
}

/// The greatest energy allowed.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct Limit {
    /// The first year of that limit.
    since: u16,
    /// Whole kilowatt hours a year.
    kilowatt_hours: u32,
    /// excerpt, memory or doubtful: how well the limit is founded.
    standing: &'static str,
    /// above, within, cannot-tell, cool-room or room-unknown.
    comparison: &'static str,
}

impl Energy {
    pub(crate) fn of(known: &Known, locale: &Locale) -> Self {
        let against = match &known.stands {
            Stands::Against(all) => all.as_slice(),
            _ => &[],
        };
        Self {
            run: known.run.as_ref().map(|(by, share)| Run::of(*by, share)),
            metered: known.metering.as_ref().map(Metered::of),
            room: known.room.map(quantity::Celsius::get),
            stands: stands(&known.stands),
            limits: against.iter().map(Limit::of).collect(),
            cost: known.cost.map(|(middle, spread)| [middle, spread]),
            words: wording::energy::report(known, locale),
        }
    }
}

const fn stands(stands: &Stands) -> &'static str {
    match stands {
        Stands::Open => "open",
        Stands::CoolingDown => "cooling-down",
        Stands::OtherRules => "other-rules",
        Stands::BeforeLimits => "before-limits",
        Stands::NoLimit(_) => "no-limit",
        Stands::Against(_) => "against",
    }
}

impl Run {
    fn of(by: RunBy, share: &RunShare) -> Self {
        Self {
            by: match by {
                RunBy::Events => "events",
                RunBy::Meter => "meter",
                RunBy::Log(_) => "log",
            },
            share: share.share.get(),
            standard_uncertainty: share.standard.map(quantity::Ratio::get),
            cycles: share.cycles,
        }
    }
}

impl Metered {
    fn of(metering: &Metering) -> Self {
        let found = metering.consumption.as_ref().ok();
        Self {
            seconds: metering.length().get(),
            cooled_down: metering.cooled_down,
            day: found.map(|found| Amount::of(&found.day)),
            year: found.map(|found| Amount::of(&found.year)),
            length_error: found.map(|found| found.length_error.get()),
        }
    }
}

impl Amount {
    fn of(energy: &Uncertain<WattHours>) -> Self {
        Self {
            watt_hours: energy.value().get(),
            standard_uncertainty: energy.standard().get(),
        }
    }
}

impl Limit {
    fn of(against: &EnergyAgainst) -> Self {
        Self {
            since: against.since(),
            kilowatt_hours: against.limit.kilowatt_hours,
            standing: match against.limit.standing {
                Standing::Excerpt => "excerpt",
                Standing::Memory => "memory",
                Standing::Doubtful => "doubtful",
            },
            comparison: match against.comparison {
                Comparison::Above => "above",
                Comparison::Within => "within",
                Comparison::CannotTell => "cannot-tell",
                Comparison::CoolRoom => "cool-room",
                Comparison::RoomUnknown => "room-unknown",
            },
        }
    }
}

//! What probes on the sealed circuit's surfaces say of it.

use diagnosis::{Circuit, Draw, Saturation};
use job::Place;
use measure::refrigerant::{Cycle, CycleError, LowSide};
use quantity::{Celsius, Pascals, Uncertain};

use crate::gas_page::beyond;
use crate::value::scaled;
use crate::{Degrees, Locale};

/// The heading over all of it.
pub const TITLE: &str = "The circuit by its surfaces";
/// How such figures come about, where there are none yet.
pub const HOW: &str = "Lay a probe on the coil inside and one on the condenser, let it run for a \
                       quarter of an hour and longer, and enter both under Does it get cold?, with the \
                       air inside and the room. What they say of the circuit stands here then.";
/// How sure all of it is.
const BY_SURFACES: &str = "Told from surfaces, no gauge was on it. The truth lies within each ± in 19 \
                           of 20 such estimates, as far as that is judged rightly.";

/// All of it, a sentence each.
#[must_use]
pub fn report(found: &Circuit, locale: &Locale) -> Vec<String> {
    let cold = found
        .evaporating
        .as_ref()
        .map(|one| evaporates(one, locale));
    let warm = found.condensing.as_ref();
    let warm = warm.map(|one| condenses(one, found.room, locale));
    let cycle = found
        .cycle
        .as_ref()
        .map_or_else(Vec::new, |cycle| match cycle {
            Ok(cycle) => vec![squeezes(cycle, locale), low_side(cycle.low_side).to_owned()],
            Err(why) => vec![no_cycle(*why, locale)],
        });
    let draw = found.draw.as_ref().map(|draw| takes(draw, locale));
    cold.into_iter()
        .chain(warm)
        .chain(cycle)
        .chain(draw)
        .chain([BY_SURFACES.to_owned()])
        .collect()
}

fn evaporates(found: &Saturation, locale: &Locale) -> String {
    format!(
        "Where the probe lies inside, the refrigerant boils at {}, if it boils there.",
        about(&found.temperature, locale)
    )
}

fn condenses(found: &Saturation, room: Option<Celsius>, locale: &Locale) -> String {
    let at = about(&found.temperature, locale);
    if found.by == Place::Room {
        return format!(
            "It should condense at {at} in such a room; no probe lay on the condenser."
        );
    }
    let above = room.map(|room| {
        let degree = degree(locale);
        let kelvins = found.temperature.value().get() - room.get();
        format!(
            ", {} degrees above the room; {} to {} are usual",
            locale.number(kelvins * degree, 0),
            locale.number(10.0 * degree, 0),
            locale.number(20.0 * degree, 0)
        )
    });
    format!("It condenses at {at}{}.", above.unwrap_or_default())
}

/// One kelvin in the reader's degrees.
const fn degree(locale: &Locale) -> f64 {
    match locale.degrees {
        Degrees::Celsius => 1.0,
        Degrees::Fahrenheit => 1.8,
    }
}

/// "about −31 °C (± 4)".
fn about(at: &Uncertain<Celsius>, locale: &Locale) -> String {
    let off = at.expanded().get() * degree(locale);
    format!(
        "about {} (±\u{a0}{})",
        locale.temperature(at.value()),
        locale.number(off, 0)
    )
}

fn squeezes(cycle: &Cycle, locale: &Locale) -> String {
    let (unit, pascals) = match locale.degrees {
        Degrees::Celsius => ("bar", 1e5),
        Degrees::Fahrenheit => ("psi", 6_894.757),
    };
    let pressure = |of: &Uncertain<Pascals>| scaled(of, 1.0 / pascals, unit, locale);
    let ratio = &cycle.pressure_ratio;
    format!(
        "That is {} on the low side and {} on the high side, above vacuum: the compressor squeezes \
         {} to one (±\u{a0}{}).",
        pressure(&cycle.low),
        pressure(&cycle.high),
        locale.number(ratio.value().get(), 0),
        locale.number(ratio.expanded().get(), 0)
    )
}

const fn low_side(found: LowSide) -> &'static str {
    match found {
        LowSide::BelowAtmosphere => {
            "Its low side lies below the pressure of the air at sea level: while it runs, a leak there \
             draws air and damp in and lets nothing out."
        }
        LowSide::AboveAtmosphere => {
            "Its low side lies above the pressure of the air at sea level: a leak anywhere lets \
             refrigerant out."
        }
        LowSide::CannotTell => {
            "Whether its low side lies above or below the pressure of the air can't be told so finely."
        }
    }
}

fn no_cycle(why: CycleError, locale: &Locale) -> String {
    match why {
        CycleError::Evaporating(why) | CycleError::Condensing(why) => beyond(why, locale),
        CycleError::NotPumping => {
            "It condenses no warmer than it boils: nothing is pumped, or both \
                                   readings were exchanged."
                .to_owned()
        }
        CycleError::Atmosphere => "Without the air's pressure nothing can be told.".to_owned(),
    }
}

fn takes(draw: &Draw, locale: &Locale) -> String {
    let share = draw.share();
    let (middle, off) = (share.value().get(), share.expanded().get());
    let means = if middle + off < 1.0 {
        "Less than that: little is pumped, or nothing boils where the probe lies"
    } else if middle - off > 1.0 {
        "More than that: look for what brakes the motor, and at its start gear"
    } else {
        "That fits as far as it can be told"
    };
    format!(
        "It takes {}. A compressor of that label that pumps what boils so cold takes {}. {means}.",
        scaled(&draw.watts, 1.0, "W", locale),
        scaled(&draw.expected, 1.0, "W", locale)
    )
}

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

#[cfg(test)]
mod tests {
    use super::*;
    use job::Moment;
    use measure::refrigerant::{Refrigerant, STANDARD_ATMOSPHERE};
    use quantity::{Sources, Watts};

    fn circuit(cold: f64, warm: f64, by: Place) -> Circuit {
        let mut sources = Sources::default();
        let mut at = |celsius: f64, by: Place| Saturation {
            temperature: Uncertain::exact(Celsius::new(celsius))
                .with(sources.fresh(), Celsius::new(2.0)),
            by,
            at: Moment::new(0, 0).unwrap(),
        };
        let (cold, warm) = (at(cold, Place::Evaporator), at(warm, by));
        let gas = Refrigerant::R600a;
        let both = (&cold.temperature, &warm.temperature);
        Circuit {
            cycle: Some(Cycle::of(gas, both.0, both.1, STANDARD_ATMOSPHERE)),
            evaporating: Some(cold),
            condensing: Some(warm),
            room: Some(Celsius::new(22.0)),
            draw: None,
        }
    }

    fn said(found: &Circuit, degrees: Degrees) -> String {
        let locale = Locale {
            degrees,
            ..Locale::default()
        };
        report(found, &locale).join("\n").replace('\u{a0}', " ")
    }

    #[test]
    fn temperatures_and_pressures_are_told_on_the_reader_s_scales() {
        let found = circuit(-25.0, 40.0, Place::Condenser);
        let celsius = said(&found, Degrees::Celsius);
        assert!(celsius.contains("boils at about −25 °C (± 4), if it boils there"));
        assert!(
            celsius.contains("condenses at about 40 °C (± 4), 18 degrees above the room; 10 to 20")
        );
        // 58.4 and 531 kPa by CoolProp 8.0.0, which is 9.1 to one.
        assert!(celsius.contains("9 to one"), "{celsius}");
        assert!(
            celsius.contains("0.6 ±") && celsius.contains("5.3 ±"),
            "{celsius}"
        );
        assert!(celsius.contains("draws air and damp in"));
        let fahrenheit = said(&found, Degrees::Fahrenheit);
        assert!(fahrenheit.contains("−13 °F (± 7)"), "{fahrenheit}");
        assert!(fahrenheit.contains("32 degrees above the room; 18 to 36 are usual"));
        assert!(fahrenheit.contains("8.5 ±") && fahrenheit.contains("psi"));
    }

    #[test]
    fn what_was_not_read_is_not_said_to_be_read() {
        let by_room = said(&circuit(-25.0, 37.0, Place::Room), Degrees::Celsius);
        assert!(by_room.contains("no probe lay on the condenser"));
        assert!(!by_room.contains("above the room"));
        let swapped = said(&circuit(30.0, 20.0, Place::Condenser), Degrees::Celsius);
        assert!(swapped.contains("nothing is pumped, or both readings were exchanged"));
    }

    #[test]
    fn watts_are_called_too_few_or_too_many_only_beyond_what_is_known() {
        let takes = |watts: f64| {
            let mut sources = Sources::default();
            let mut of = |middle: f64, standard: f64| {
                Uncertain::exact(Watts::new(middle)).with(sources.fresh(), Watts::new(standard))
            };
            let draw = Draw {
                watts: of(watts, 1.0),
                expected: of(90.0, 15.0),
            };
            super::takes(&draw, &Locale::default())
        };
        assert!(takes(50.0).contains("Less than that"));
        assert!(takes(75.0).contains("fits"));
        assert!(takes(180.0).contains("More than that"));
    }
}

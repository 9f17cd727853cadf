//! Sentences about energy.

use diagnosis::{Energy, EnergyAgainst, Metering, RunBy, Stands};
use job::Place;
use measure::energy::{
    Comparison, EnergyLimit, Era, NoConsumption, NoLimit, RunShare, Standing, TEST_ROOM,
};
use quantity::{Celsius, Seconds, Uncertain, WattHours};

use super::{LIMITS, need};
use crate::Locale;
use crate::value::scaled;

/// All that is known, a line each.
#[must_use]
pub fn report(energy: &Energy, locale: &Locale) -> Vec<String> {
    [at_a_glance(energy, locale), behind(energy, locale)].concat()
}

/// What it uses, and what that costs.
#[must_use]
pub fn at_a_glance(energy: &Energy, locale: &Locale) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    lines.extend(
        energy
            .run
            .as_ref()
            .map(|(by, share)| run(*by, share, locale)),
    );
    lines.extend(energy.metering.as_ref().map(|one| metering(one, locale)));
    lines.extend(energy.cost.map(|(middle, spread)| {
        let [middle, spread] = [middle, spread].map(|one| locale.number(one, 2));
        format!("A year costs {middle} ±\u{a0}{spread} at the price given.")
    }));
    lines
}

/// How that stands against what was allowed, what it rests on, and what is missing.
#[must_use]
pub fn behind(energy: &Energy, locale: &Locale) -> Vec<String> {
    let room = energy.room.map(|warm| room(warm, locale));
    let mut lines: Vec<String> = room.into_iter().collect();
    lines.extend(stands(&energy.stands, locale));
    let missing: Vec<&str> = energy.missing.iter().map(|one| need(*one)).collect();
    if !missing.is_empty() {
        lines.push(format!("Not known yet: {}.", missing.join("; ")));
    }
    if matches!(energy.stands, Stands::Against(_)) {
        lines.push(LIMITS.to_owned());
    }
    lines
}

/// Which share of the time it runs.
#[must_use]
pub fn run(by: RunBy, share: &RunShare, locale: &Locale) -> String {
    let percent = |ratio: quantity::Ratio| locale.number(ratio.get() * 100.0, 0);
    let share_of = match share.standard {
        Some(standard) => format!(
            "{} ±\u{a0}{}\u{a0}%",
            percent(share.share),
            percent(standard * 2.0)
        ),
        None => format!("{}\u{a0}%", percent(share.share)),
    };
    let by = match by {
        RunBy::Events => "starts and stops as noted",
        RunBy::Meter => "the meter's own hours of load",
        RunBy::Log(Place::Shell) => "the logged shell",
        RunBy::Log(Place::Condenser) => "the logged condenser",
        RunBy::Log(Place::Evaporator) => "the logged evaporator",
        RunBy::Log(Place::Freezer) => "the logged freezer",
        RunBy::Log(Place::FreshFood) => "the logged fresh-food compartment",
        RunBy::Log(Place::Room | Place::SuctionLine | Place::DrierOutlet) => "a log",
    };
    let cycles = match share.cycles {
        0 => String::new(),
        1 => ", one whole cycle".to_owned(),
        count => format!(
            ", {count} whole cycles of {} on and {} off",
            time(share.run, locale),
            time(share.rest, locale)
        ),
    };
    format!("The compressor runs {share_of} of the time, by {by}{cycles}.")
}

fn time(seconds: Seconds, locale: &Locale) -> String {
    let minutes = seconds.get() / 60.0;
    if minutes < 120.0 {
        format!("{}\u{a0}min", locale.number(minutes, 0))
    } else {
        format!(
            "{}\u{a0}h",
            locale.number(minutes / 60.0, usize::from(minutes < 600.0))
        )
    }
}

/// In kilowatt hours.
fn kilowatt_hours(energy: &Uncertain<WattHours>, locale: &Locale) -> String {
    scaled(energy, 0.001, "kWh", locale)
}

/// What was metered, and what it comes to.
#[must_use]
pub fn metering(metering: &Metering, locale: &Locale) -> String {
    let length = time(metering.length(), locale);
    match (&metering.consumption, metering.cooled_down) {
        (Err(NoConsumption::TooShort), _) => {
            format!(
                "Metered for {length}: too short to say anything. Leave the meter in for a day."
            )
        }
        (Err(NoConsumption::NotAReading), _) => "What was metered can't be.".to_owned(),
        (Ok(found), true) => format!(
            "Metered for {length} while it was cooling down or less than a day after: {} a day then, \
             which says nothing of a year.",
            kilowatt_hours(&found.day, locale)
        ),
        (Ok(found), false) => format!(
            "Metered for {length}: {} a day, {} a year of such days.",
            kilowatt_hours(&found.day, locale),
            kilowatt_hours(&found.year, locale)
        ),
    }
}

/// How warm it was.
#[must_use]
pub fn room(warm: Celsius, locale: &Locale) -> String {
    format!("The room had {} meanwhile.", locale.temperature(warm))
}

/// How a year stands.
#[must_use]
pub fn stands(stands: &Stands, locale: &Locale) -> Vec<String> {
    match stands {
        Stands::Open => Vec::new(),
        Stands::CoolingDown => {
            vec![
                "Not held against a limit: meter it again a day after it was switched on."
                    .to_owned(),
            ]
        }
        Stands::OtherRules => {
            vec!["Not comparable: the limits known here are American.".to_owned()]
        }
        Stands::BeforeLimits => vec!["Made before 1993: no limit was in force.".to_owned()],
        Stands::NoLimit(why) => vec![format!("No limit: {}.", no_limit(*why))],
        Stands::Against(all) => all.iter().flat_map(|one| against(one, locale)).collect(),
    }
}

const fn no_limit(why: NoLimit) -> &'static str {
    match why {
        NoLimit::NoVolume => "no volume was given",
        NoLimit::OutsideTheRule => "it is larger than the machines that the rule covers",
        NoLimit::NotCompact => "a compact machine has less than 7.75 cubic feet",
        NoLimit::IsCompact => "below 7.75 cubic feet it belongs to a compact class",
        NoLimit::NoneThen => "its class had none of its own when it was made",
        NoLimit::OtherDoors => "the rule knows no such doors for its class",
    }
}

/// The greatest energy allowed, and how well that is founded.
#[must_use]
pub fn limit(limit: &EnergyLimit, locale: &Locale) -> String {
    let since = match limit.era {
        Era::Of1993 => "made from 1993 on",
        Era::Of2001 => "made from July 2001 on",
        Era::Of2014 => "made from 15 September 2014 on",
        Era::Of2029 => "made from 2029 or 2030 on",
    };
    let standing = match limit.standing {
        Standing::Excerpt => "",
        Standing::Memory => " (that limit is from memory)",
        Standing::Doubtful => " (that limit doesn't fit the others: look it up)",
    };
    format!(
        "Machines of its class and size {since} were allowed {}\u{a0}kWh a year in a room of {}{standing}.",
        limit.kilowatt_hours,
        locale.temperature(TEST_ROOM)
    )
}

fn against(against: &EnergyAgainst, locale: &Locale) -> Vec<String> {
    let stands = match against.comparison {
        Comparison::Above => "It uses more than that, whatever the room.",
        Comparison::Within => "It uses no more than that.",
        Comparison::CannotTell => "Too close to that to tell: meter it for longer.",
        Comparison::CoolRoom => {
            "Not comparable: this room is cooler than the test's, where any machine needs less."
        }
        Comparison::RoomUnknown => "Not comparable until it is known how warm the room was.",
    };
    let mut lines = vec![format!("{} {stands}", limit(&against.limit, locale))];
    lines.extend(against.field.map(|field| {
        format!(
            "For context: by a field study of 209 machines, such a label went with about {}\u{a0}kWh in homes.",
            locale.number(field.get() / 1000.0, 0)
        )
    }));
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use job::Moment;
    use measure::energy::{
        CUBIC_FOOT, Class, Compartments, Extras, Product, consumption, run_share_of_hours,
    };
    use quantity::{CubicMetres, Sources};

    fn known(hours: f64) -> Energy {
        let mut sources = Sources::default();
        let counted = Uncertain::exact(WattHours::new(hours * 50.0))
            .with(sources.fresh(), WattHours::new(1.0));
        let length = Seconds::new(hours * 3600.0);
        let moment = |seconds: f64| Moment::new((seconds * 1000.0) as i64, 0).unwrap();
        let product = Product {
            class: Class::UprightFreezerManual,
            compartments: Compartments::Freezer,
            fresh: CubicMetres::new(0.0),
            frozen: CubicMetres::new(14.0 * CUBIC_FOOT.get()),
            extras: Extras::default(),
        };
        let against = EnergyAgainst {
            limit: product.limit(Era::Of2014).unwrap(),
            comparison: Comparison::CoolRoom,
            field: None,
        };
        Energy {
            run: run_share_of_hours(Seconds::new(9.0), Seconds::new(24.0))
                .ok()
                .map(|share| (RunBy::Meter, share)),
            metering: Some(Metering {
                from: moment(0.0),
                to: moment(length.get()),
                consumption: consumption(&counted, length, &mut sources),
                cooled_down: false,
            }),
            room: Some(Celsius::new(18.0)),
            stands: Stands::Against(vec![against]),
            cost: Some((131.4, 8.0)),
            missing: Vec::new(),
        }
    }

    #[test]
    fn energy_is_told_with_its_error_and_with_what_it_may_be_compared_to() {
        let said = report(&known(24.0), &Locale::default())
            .join("\n")
            .replace('\u{a0}', " ");
        assert_eq!(
            said,
            "The compressor runs 38 % of the time, by the meter's own hours of load.\n\
             Metered for 24 h: 1.20 ± 0.07 kWh a day, 438 ± 26 kWh a year of such days.\n\
             A year costs 131.40 ± 8.00 at the price given.\n\
             The room had 18 °C meanwhile.\n\
             Machines of its class and size made from 15 September 2014 on were allowed 331 kWh a year in a \
             room of 32 °C (that limit is from memory). Not comparable: this room is cooler than the \
             test's, where any machine needs less.\n"
                .to_owned()
                + LIMITS
        );
    }

    #[test]
    fn a_short_metering_says_how_little_it_says() {
        let short = report(&known(0.3), &Locale::default());
        assert!(short[1].contains("too short"), "{}", short[1]);
        let hour = report(&known(1.0), &Locale::default())[1].replace('\u{a0}', " ");
        assert_eq!(
            hour,
            "Metered for 60 min: 1.2 ± 1.1 kWh a day, 438 ± 397 kWh a year of such days."
        );
    }
}

//! Energy a day and a year from what a meter counted, and how that stands.

use quantity::{Celsius, Ratio, Seconds, Sources, Uncertain, WattHours};

use super::limit::EnergyLimit;
use super::metering::metering_error;
use crate::{Against, against};

const DAY: f64 = 86_400.0;
/// As the rule counts: 0.23 kWh a day are 84 kWh a year.
const DAYS: f64 = 365.0;

/// Energy by a metering of some length.
#[derive(Debug, Clone, PartialEq)]
pub struct Consumption {
    /// In 24 hours.
    pub day: Uncertain<WattHours>,
    /// In 365 days, were they all like this one.
    pub year: Uncertain<WattHours>,
    /// How far the length of metering alone may put both off, as a share (a standard error).
    pub length_error: Ratio,
}

/// Why nothing comes of a metering.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoConsumption {
    /// Below half an hour: it may lie within one run, or within one rest.
    TooShort,
    /// The energy is negative or no number.
    NotAReading,
}

/// What was metered over so long, taken for a day and a year. The meter's own error comes in
/// `counted`, the length's from [`metering_error`]; both are independent.
///
/// # Errors
/// [`NoConsumption`].
///
/// ```
/// use measure::energy::consumption;
/// use quantity::{Seconds, Sources, Uncertain, WattHours};
/// let counted = Uncertain::exact(WattHours::new(150.0));
/// let found = consumption(&counted, Seconds::new(3.0 * 3600.0), &mut Sources::default()).unwrap();
/// assert!((found.year.value().get() - 438_000.0).abs() < 1e-6);
/// assert!(found.year.standard().get() > 25_000.0);
/// ```
pub fn consumption(
    counted: &Uncertain<WattHours>,
    length: Seconds,
    sources: &mut Sources,
) -> Result<Consumption, NoConsumption> {
    let value = counted.value().get();
    if !(value >= 0.0 && value.is_finite()) {
        return Err(NoConsumption::NotAReading);
    }
    let length_error = metering_error(length).ok_or(NoConsumption::TooShort)?;
    let a_day = counted * (DAY / length.get());
    let by_length = a_day.value() * length_error.get();
    let day = a_day.with(sources.fresh(), by_length);
    Ok(Consumption {
        year: &day * DAYS,
        day,
        length_error,
    })
}

/// The test room of the American rule, 90 °F (10 CFR 430 subpart B appendices A and B, from memory).
pub const TEST_ROOM: Celsius = Celsius::new(290.0 / 9.0);
/// A room that is cooler than the test's by more than this makes a machine need less (judgement).
const AS_WARM: f64 = 2.0;

/// How a year's energy stands against the greatest allowed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Comparison {
    /// More than was allowed, even in a room that makes it need less.
    Above,
    /// No more than was allowed, in a room as warm as the test's.
    Within,
    /// The limit lies within what is uncertain.
    CannotTell,
    /// Not more than was allowed, in a room that is cooler than the test's: says nothing.
    CoolRoom,
    /// The same, and nobody said how warm the room was.
    RoomUnknown,
}

/// Holds a year's energy against the greatest allowed for machines of that make. The label is of a
/// room of 90 °F with doors closed: only what exceeds it in a cooler room says something as well.
///
/// For machines sold under other rules there is nothing to compare with: don't ask.
#[must_use]
pub fn against_limit(
    year: &Uncertain<WattHours>,
    limit: &EnergyLimit,
    room: Option<Celsius>,
) -> Comparison {
    let most = WattHours::new(f64::from(limit.kilowatt_hours) * 1000.0);
    let stands = against(year, WattHours::new(f64::NEG_INFINITY), most);
    let is_as_warm = room.map(|room| (TEST_ROOM - room).get() <= AS_WARM);
    match (stands, is_as_warm) {
        (Against::Above, _) => Comparison::Above,
        (_, None) => Comparison::RoomUnknown,
        (_, Some(false)) => Comparison::CoolRoom,
        (Against::CannotTell, _) => Comparison::CannotTell,
        (Against::Within | Against::Below, _) => Comparison::Within,
    }
}

/// What a machine with that label used in homes: 0.94 of the label less 85 kWh a year, for context; a
/// line through 209 units with a mean of 1009 kWh a year.
///
/// Source: LBNL, *Field Performance of Residential Refrigerators* (excerpt seen). Below zero for labels
/// that no such machine had: `None` below 300 kWh a year (judgement).
#[must_use]
pub fn field_from_label(label: WattHours) -> Option<WattHours> {
    const LEAST: f64 = 300e3;
    (label.get() >= LEAST && label.get().is_finite()).then(|| label * 0.94 - WattHours::new(85e3))
}

/// The share of the time that a machine of that label would run at so many watts: its mean watts
/// over those of running. `None` where the watts aren't above zero, or it could never do it.
///
/// ```
/// use measure::energy::duty_from_label;
/// use quantity::{WattHours, Watts};
/// let duty = duty_from_label(WattHours::new(300e3), Watts::new(100.0)).unwrap();
/// assert!((duty.get() - 0.342).abs() < 5e-4);
/// ```
#[must_use]
pub fn duty_from_label(label: WattHours, running: quantity::Watts) -> Option<Ratio> {
    const HOURS: f64 = 8760.0;
    let share = label.get() / HOURS / running.get();
    (running.get() > 0.0 && (0.0..=1.0).contains(&share)).then_some(Ratio::new(share))
}

/// What energy costs at a price for a kilowatt hour, with its expanded uncertainty, both in the
/// price's own currency. `None` where the price is negative or no number.
#[must_use]
pub fn cost(energy: &Uncertain<WattHours>, price: f64) -> Option<(f64, f64)> {
    let of = |energy: WattHours| energy.get() / 1000.0 * price;
    (price >= 0.0 && price.is_finite()).then(|| (of(energy.value()), of(energy.expanded())))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::energy::{CUBIC_FOOT, Class, Compartments, Era, Extras, Product};
    use quantity::{CubicMetres, Watts};

    fn year(kilowatt_hours: f64, percent: f64) -> Uncertain<WattHours> {
        let value = WattHours::new(kilowatt_hours * 1000.0);
        Uncertain::exact(value).with(Sources::default().fresh(), value * (percent / 100.0))
    }

    fn chest() -> EnergyLimit {
        let product = Product {
            class: Class::ChestFreezer,
            compartments: Compartments::Freezer,
            fresh: CubicMetres::new(0.0),
            frozen: CUBIC_FOOT * 14.0,
            extras: Extras::default(),
        };
        product.limit(Era::Of2014).unwrap()
    }

    #[test]
    fn a_cool_room_acquits_nobody_and_excess_in_it_counts() {
        let (cool, warm) = (Some(Celsius::new(18.0)), Some(Celsius::new(32.0)));
        let limit = chest();
        assert_eq!(limit.kilowatt_hours, 287);
        assert_eq!(
            against_limit(&year(200.0, 3.0), &limit, cool),
            Comparison::CoolRoom
        );
        assert_eq!(
            against_limit(&year(200.0, 3.0), &limit, None),
            Comparison::RoomUnknown
        );
        assert_eq!(
            against_limit(&year(200.0, 3.0), &limit, warm),
            Comparison::Within
        );
        assert_eq!(
            against_limit(&year(400.0, 3.0), &limit, cool),
            Comparison::Above
        );
        assert_eq!(
            against_limit(&year(290.0, 3.0), &limit, warm),
            Comparison::CannotTell
        );
    }

    #[test]
    fn meter_and_length_both_blur_a_year() {
        let counted = Uncertain::exact(WattHours::new(1000.0))
            .with(Sources::default().fresh(), WattHours::new(20.0));
        let mut sources = Sources::default();
        let _meter = sources.fresh();
        let day = Seconds::new(DAY);
        let found = consumption(&counted, day, &mut sources).unwrap();
        let expected = libm::sqrt(0.02 * 0.02 + 0.03 * 0.03) * 365e3;
        assert!((found.year.standard().get() - expected).abs() < 1.0);
        let short = Seconds::new(600.0);
        assert_eq!(
            consumption(&counted, short, &mut sources),
            Err(NoConsumption::TooShort)
        );
        let nothing = Uncertain::exact(WattHours::new(-1.0));
        assert_eq!(
            consumption(&nothing, day, &mut sources),
            Err(NoConsumption::NotAReading)
        );
    }

    #[test]
    fn labels_and_prices() {
        let field = field_from_label(WattHours::new(1000e3)).unwrap();
        assert!((field.get() - 855e3).abs() < 1e-6);
        assert_eq!(field_from_label(WattHours::new(90e3)), None);
        let duty = duty_from_label(WattHours::new(700e3), Watts::new(150.0)).unwrap();
        assert!((duty.get() - 0.5327).abs() < 1e-4);
        assert_eq!(
            duty_from_label(WattHours::new(700e3), Watts::new(0.0)),
            None
        );
        let (middle, spread) = cost(&year(400.0, 5.0), 0.25).unwrap();
        assert!((middle - 100.0).abs() < 1e-9 && (spread - 10.0).abs() < 1e-9);
        assert_eq!(cost(&year(400.0, 5.0), f64::NAN), None);
    }
}

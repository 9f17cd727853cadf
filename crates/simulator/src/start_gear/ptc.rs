//! A thermistor whose resistance rises a thousandfold when it is hot.
//!
//! The logarithm of its resistance goes from cold to hot along a logistic curve, placed so that the
//! resistance has doubled at the switching temperature. One temperature holds for the whole pellet;
//! what depends on the voltage across it is left out.

use quantity::{Celsius, JoulesPerKelvin, Ohms, Ratio, WattsPerKelvin};

use crate::ParameterError;
use crate::error::within;
use crate::phasor::Phasor;

/// What feeds a pellet: volts, and what is in series with it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Fed {
    pub(super) volts: f64,
    pub(super) rest: Phasor,
}

impl Fed {
    /// The heat in a pellet of so many ohms.
    fn heat(&self, ohms: Option<f64>) -> f64 {
        ohms.map_or(0.0, |ohms| {
            self.volts * self.volts * ohms / (self.rest + Phasor::real(ohms)).square()
        })
    }
}

/// A PTC thermistor on the compressor's pins.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ptc {
    /// Resistance of the whole pellet at 25 °C. Aged contacts raise it.
    pub resistance: Ohms,
    /// How many times its cold resistance it has when it is as hot as can be.
    pub rise: Ratio,
    /// The temperature at which its resistance has doubled.
    pub switch_temperature: Celsius,
    /// The share of the pellet that still has contact: 1 when whole, 0 when it is open.
    pub area_left: Ratio,
    /// A bridge across the pellet, where it is burnt through.
    pub short: Option<Ohms>,
    /// Heat capacity of the whole pellet and its springs.
    pub heat_capacity: JoulesPerKelvin,
    /// How it loses heat, half to the shell and half to the room.
    pub cooling: WattsPerKelvin,
}

impl Ptc {
    /// A PTC of so many ohms for 115 or 230 V. It switches at 120 °C and is held hot by about
    /// 3 W, as component tables say; heat capacity chosen so that it lets go after some tenths of a
    /// second (common practice, no source).
    #[must_use]
    pub const fn of(resistance: Ohms) -> Self {
        Self {
            resistance,
            rise: Ratio::new(3000.0),
            switch_temperature: Celsius::new(120.0),
            area_left: Ratio::new(1.0),
            short: None,
            heat_capacity: JoulesPerKelvin::new(1.0),
            cooling: WattsPerKelvin::new(0.022),
        }
    }

    /// How steep the curve is: kelvins for the logistic's unit (judgement: a decade of resistance
    /// in about 12 K around the middle).
    const STEEPNESS: f64 = 9.0;

    pub(super) fn check(&self) -> Result<(), ParameterError> {
        within("gear.ptc.resistance", self.resistance.get(), 0.5, 1e4)?;
        within("gear.ptc.rise", self.rise.get(), 1.0, 1e6)?;
        let switches = self.switch_temperature.get();
        within("gear.ptc.switch_temperature", switches, 40.0, 250.0)?;
        within("gear.ptc.area_left", self.area_left.get(), 0.0, 1.0)?;
        let short = self.short.map_or(1.0, Ohms::get);
        within("gear.ptc.short", short, 0.05, 1e6)?;
        let capacity = self.heat_capacity.get();
        within("gear.ptc.heat_capacity", capacity, 0.05, 50.0)?;
        within("gear.ptc.cooling", self.cooling.get(), 0.001, 1.0)
    }

    /// What an ohmmeter finds at rest in a room; `None` when it is open.
    #[must_use]
    pub fn cold_ohms(&self, room: quantity::Celsius) -> Option<Ohms> {
        self.pellet().ohms(room.get()).map(Ohms::new)
    }

    /// The pellet's law, worked out once.
    pub(super) fn pellet(&self) -> Pellet {
        const LN_2: f64 = core::f64::consts::LN_2;
        let area = self.area_left.get();
        let decades = libm::log(self.rise.get());
        // The logistic is at ln 2 of its whole height at the switching temperature; what never
        // doubles stays cold.
        let (decades, middle) = if decades > LN_2 {
            let offset = Self::STEEPNESS * libm::log(decades / LN_2 - 1.0);
            (decades, self.switch_temperature.get() + offset)
        } else {
            (0.0, 0.0)
        };
        // What has lost contact takes no part in the heat.
        let taking_part = area.max(0.01);
        let mut pellet = Pellet {
            // A thousandth of a pellet is a crumb that rattles.
            cold: (area >= 1e-3).then(|| self.resistance.get() / area),
            decades,
            middle,
            bridge: self.short.map(Ohms::get),
            capacity: self.heat_capacity.get() * taking_part,
            cooling: self.cooling.get() * taking_part,
            lets_go: f64::INFINITY,
        };
        pellet.lets_go = pellet.hot_enough();
        pellet
    }
}

/// A PTC's law of resistance and heat.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Pellet {
    /// Ohms far below the switching temperature; `None` when it is open.
    cold: Option<f64>,
    /// The logarithm of its rise.
    decades: f64,
    /// Where half of that is reached, in °C.
    middle: f64,
    bridge: Option<f64>,
    capacity: f64,
    cooling: f64,
    /// From this temperature on it has let go, in °C.
    lets_go: f64,
}

impl Pellet {
    /// Past this no pellet is held by any supply that is let in, in °C.
    const HOTTEST: f64 = 400.0;

    /// Ohms at a temperature in °C, the bridge taken in; `None` when it is open.
    pub(super) fn ohms(&self, celsius: f64) -> Option<f64> {
        let pellet = self.cold.map(|cold| {
            let from_middle = (celsius - self.middle) / Ptc::STEEPNESS;
            cold * libm::exp(self.decades / (1.0 + libm::exp(-from_middle)))
        });
        match (pellet, self.bridge) {
            (Some(pellet), Some(bridge)) => Some(pellet * bridge / (pellet + bridge)),
            (pellet, bridge) => pellet.or(bridge),
        }
    }

    /// Whether it has let go, its resistance having doubled four times; or is open.
    pub(super) fn has_let_go(&self, celsius: f64) -> bool {
        celsius > self.lets_go
    }

    /// The temperature at which it has let go; what never does, does at no temperature.
    fn hot_enough(&self) -> f64 {
        let Some(cold) = self.ohms(25.0) else {
            return f64::NEG_INFINITY;
        };
        let is_out = |celsius: f64| self.ohms(celsius).is_some_and(|ohms| ohms > 16.0 * cold);
        if !is_out(Self::HOTTEST) {
            return f64::INFINITY;
        }
        let (mut low, mut high) = (25.0, Self::HOTTEST);
        for _ in 0..50 {
            let middle = (low + high) / 2.0;
            if is_out(middle) {
                high = middle;
            } else {
                low = middle;
            }
        }
        high
    }

    /// Its temperature after a time under constant volts. Short steps go by the middle of the
    /// step; where that would carry it far, the end's temperature carries the heat (backward
    /// Euler), so that no step is too long.
    pub(super) fn warmed(&self, from: f64, around: f64, seconds: f64, fed: Option<Fed>) -> f64 {
        let slope = |celsius: f64| {
            let heat = fed.map_or(0.0, |fed| fed.heat(self.ohms(celsius)));
            (heat - self.cooling * (celsius - around)) / self.capacity
        };
        let half = slope(from) * seconds / 2.0;
        if half.abs() < Ptc::STEEPNESS / 6.0 && seconds < 0.02 {
            return from + slope(from + half) * seconds;
        }
        if fed.is_none() {
            let left = libm::exp(-seconds * self.cooling / self.capacity);
            return around + (from - around) * left;
        }
        let excess = |celsius: f64| celsius - from - seconds * slope(celsius);
        // It rises at least as steeply as the temperature where heat doesn't rise with that: then
        // the end lies no farther away than what is missing here, a hair while a motor runs.
        let missing = -excess(from);
        let end = from + missing;
        if missing * excess(end) >= 0.0 {
            return root(excess, from.min(end), from.max(end));
        }
        let highest = Self::HOTTEST.max(from).max(around);
        root(excess, from.min(around), highest)
    }
}

/// Where a rising function crosses nought between two bounds: by straight lines between them, the
/// bound that stays losing half its weight each time (the Illinois method), and by halves every
/// third time, so that no shape keeps it from the end.
fn root(rising: impl Fn(f64) -> f64, mut low: f64, mut high: f64) -> f64 {
    let (mut at_low, mut at_high) = (rising(low), rising(high));
    let mut kept_low = false;
    for round in 0..150 {
        if high - low < 1e-9 || at_high - at_low <= 0.0 {
            break;
        }
        let middle = if round % 3 == 2 {
            (low + high) / 2.0
        } else {
            (low * at_high - high * at_low) / (at_high - at_low)
        };
        let at_middle = rising(middle);
        if at_middle.abs() < 1e-9 {
            return middle;
        }
        if at_middle > 0.0 {
            (high, at_high) = (middle, at_middle);
            at_low *= if kept_low { 0.5 } else { 1.0 };
            kept_low = true;
        } else {
            (low, at_low) = (middle, at_middle);
            at_high *= if kept_low { 1.0 } else { 0.5 };
            kept_low = false;
        }
    }
    (low + high) / 2.0
}

#[cfg(test)]
mod tests {
    use super::*;

    fn fed(volts: f64) -> Option<Fed> {
        let rest = Phasor::NOUGHT;
        Some(Fed { volts, rest })
    }

    /// Component tables for such parts: 15 Ω at 25 °C, switching at 120 °C, held by 3.2 W at most;
    /// several thousand ohms when hot (common practice). 4.7 Ω, 3.5 W.
    #[test]
    fn cold_it_is_as_printed_and_hot_a_few_watts_hold_it() {
        for (ohms, volts, most) in [(4.7, 115.0, 3.5), (15.0, 230.0, 3.2)] {
            let ptc = Ptc::of(Ohms::new(ohms)).pellet();
            assert!((ptc.ohms(25.0).unwrap() / ohms - 1.0).abs() < 0.002);
            assert!((ptc.ohms(120.0).unwrap() / ohms - 2.0).abs() < 0.01);
            let celsius = ptc.warmed(25.0, 25.0, 1e5, fed(volts));
            let hot = ptc.ohms(celsius).unwrap();
            let hold = volts * volts / hot;
            assert!(hold > 2.0 && hold <= most, "{hold} W at {celsius} °C");
            assert!(hot > 1000.0 && hot < 30_000.0, "{hot} Ω");
        }
    }

    #[test]
    fn a_settled_temperature_is_a_balance_of_heat() {
        let ptc = Ptc::of(Ohms::new(5.0)).pellet();
        let celsius = ptc.warmed(80.0, 30.0, 4.0, fed(115.0));
        let heat = 115.0 * 115.0 / ptc.ohms(celsius).unwrap();
        let kept = 1.0 * (celsius - 80.0) / 4.0;
        let lost = 0.022 * (celsius - 30.0);
        assert!((heat - kept - lost).abs() < 1e-3, "{heat} {kept} {lost}");
    }

    #[test]
    fn it_opens_bridges_and_rises_as_it_is_broken() {
        let mut ptc = Ptc::of(Ohms::new(5.0));
        ptc.area_left = Ratio::new(0.5);
        assert!((ptc.pellet().ohms(25.0).unwrap() - 10.0).abs() < 0.02);
        ptc.area_left = Ratio::new(0.0);
        assert!(ptc.pellet().ohms(25.0).is_none());
        ptc.short = Some(Ohms::new(2.0));
        assert!((ptc.pellet().ohms(200.0).unwrap() - 2.0).abs() < 1e-12);
        assert!(!ptc.pellet().has_let_go(300.0));
    }
}

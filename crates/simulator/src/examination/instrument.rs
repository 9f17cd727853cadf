//! Meters as they are sold: ranges, counts, an error of their own, leads.
//!
//! Accuracies: ohms ±(1 % + 5 counts) low-cost and ±(0.8 % + 2) good, leads 0.2 to 0.5 Ω, power at
//! the plug ±(2 % + 5), thermometer ±1 K, capacitance ±(3 % + 5): common practice, from memory. An
//! error is anywhere within its limit alike (rectangular, JCGM 100:2008, 4.3.7).

use quantity::{Celsius, Farads, Ohms, Volts, Watts, write_decimal};

use crate::Chance;

/// What a meter shows, as a person types it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Display {
    /// Digits with their prefix, `4.7` or `12.03k`; `OL` beyond the last range.
    pub text: String,
}

impl Display {
    /// Whether it is beyond the last range.
    #[must_use]
    pub fn is_over_range(&self) -> bool {
        self.text == OVER_RANGE
    }
}

const OVER_RANGE: &str = "OL";

/// One range: up to where it goes, what one count of it is, and how it is written.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Range {
    top: f64,
    count: f64,
    prefix: &'static str,
    factor: f64,
}

const fn range(top: f64, count: f64, prefix: &'static str, factor: f64) -> Range {
    Range {
        top,
        count,
        prefix,
        factor,
    }
}

/// A display of 2,000 counts.
const OHMS_TO_2_MEGOHMS: [Range; 5] = [
    range(200.0, 0.1, "", 1.0),
    range(2e3, 1.0, "", 1.0),
    range(20e3, 10.0, "k", 1e3),
    range(200e3, 100.0, "k", 1e3),
    range(2e6, 1e3, "k", 1e3),
];
/// A display of 4,000 counts.
const OHMS_TO_40_MEGOHMS: [Range; 6] = [
    range(400.0, 0.1, "", 1.0),
    range(4e3, 1.0, "", 1.0),
    range(40e3, 10.0, "k", 1e3),
    range(400e3, 100.0, "k", 1e3),
    range(4e6, 1e3, "M", 1e6),
    range(40e6, 1e4, "M", 1e6),
];
const VOLTS: [Range; 1] = [range(600.0, 0.1, "", 1.0)];
const WATTS: [Range; 1] = [range(3_600.0, 0.1, "", 1.0)];
const CELSIUS: [Range; 1] = [range(200.0, 0.1, "", 1.0)];
const FARADS: [Range; 2] = [
    range(40e-6, 1e-8, "u", 1e-6),
    range(400e-6, 1e-7, "u", 1e-6),
];

/// One meter in one use.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Instrument {
    ranges: &'static [Range],
    percent: f64,
    counts: f64,
    offset: f64,
    /// Where in its limit of percent this very meter stands, from −1 to 1: the same in each reading.
    gain: f64,
}

impl Instrument {
    fn new(ranges: &'static [Range], percent: f64, counts: f64, chance: &mut Chance) -> Self {
        Self {
            ranges,
            percent,
            counts,
            offset: 0.0,
            gain: chance.between(-1.0, 1.0),
        }
    }

    /// Reads a value.
    fn show(&self, value: f64, chance: &mut Chance) -> Display {
        let off = value * (1.0 + self.gain * self.percent / 100.0) + self.offset;
        let fits = |one: &&Range| libm::fabs(off) <= one.top;
        let shown = self.ranges.iter().find(fits).map(|range| {
            let error = chance.between(-self.counts, self.counts);
            let steps = libm::rint(off / range.count + error);
            // Ohms and the like have no sign.
            let steps = if value >= 0.0 { steps.max(0.0) } else { steps };
            let shown = steps * range.count / range.factor;
            let decimals = places(range.count / range.factor);
            [fixed(shown, decimals), range.prefix.to_owned()].concat()
        });
        Display {
            text: shown.unwrap_or_else(|| OVER_RANGE.to_owned()),
        }
    }
}

/// How many digits stand behind the point where one count is so much.
fn places(count: f64) -> usize {
    (0..6)
        .find(|places| libm::pow(10.0, f64::from(*places)) * count > 0.999)
        .unwrap_or(6) as usize
}

/// A number with just so many digits behind the point, as a display has it.
fn fixed(value: f64, decimals: usize) -> String {
    let scale = libm::pow(10.0, decimals as f64);
    let text = write_decimal(libm::rint(value * scale) / scale);
    let (whole, part) = text.split_once('.').unwrap_or((&text, ""));
    if decimals == 0 {
        return whole.to_owned();
    }
    let zeros = "0".repeat(decimals.saturating_sub(part.len()));
    [whole, ".", part, &zeros].concat()
}

/// What lies in a person's box.
#[derive(Debug, Clone, PartialEq)]
pub struct Kit {
    ohms: Instrument,
    volts: Instrument,
    watts: Instrument,
    celsius: Instrument,
    farads: Instrument,
    /// What the test leads add to every reading of ohms.
    pub leads: Ohms,
    chance: Chance,
}

impl Kit {
    /// A low-cost meter, which no one zeroed.
    #[must_use]
    pub fn basic(chance: Chance) -> Self {
        Self::with(&OHMS_TO_2_MEGOHMS, 1.0, 5.0, chance)
    }

    /// A good meter.
    ///
    /// ```
    /// use quantity::Ohms;
    /// use simulator::{Chance, Kit};
    /// let mut kit = Kit::good(Chance::new(1));
    /// let shown = kit.ohms(Ohms::new(10.0)).text;
    /// let read: f64 = shown.parse().unwrap();
    /// // Leads, 0.8 % and two counts of 0.1 Ω, and half a count of rounding.
    /// assert!(read > 10.0 + 0.2 - 0.09 - 0.26 && read < 10.0 + 0.5 + 0.09 + 0.26);
    /// ```
    #[must_use]
    pub fn good(chance: Chance) -> Self {
        Self::with(&OHMS_TO_40_MEGOHMS, 0.8, 2.0, chance)
    }

    fn with(ohms: &'static [Range], percent: f64, counts: f64, mut chance: Chance) -> Self {
        let leads = chance.between(0.2, 0.5);
        Self {
            ohms: Instrument::new(ohms, percent, counts, &mut chance),
            volts: Instrument::new(&VOLTS, 0.8, 5.0, &mut chance),
            watts: Instrument::new(&WATTS, 2.0, 5.0, &mut chance),
            celsius: Instrument {
                // It is off by so many degrees wherever it is.
                offset: chance.between(-1.0, 1.0),
                ..Instrument::new(&CELSIUS, 0.0, 1.0, &mut chance)
            },
            farads: Instrument::new(&FARADS, 3.0, 5.0, &mut chance),
            leads: Ohms::new(leads),
            chance,
        }
    }

    /// The same instruments with errors of their own from here on.
    pub const fn take_up(&mut self, chance: Chance) {
        self.chance = chance;
    }

    /// Ohms through the leads; infinity for what is open.
    pub fn ohms(&mut self, between_the_tips: Ohms) -> Display {
        let seen = between_the_tips.get() + self.leads.get();
        self.ohms.show(seen, &mut self.chance)
    }

    /// Volts.
    pub fn volts(&mut self, volts: Volts) -> Display {
        self.volts.show(volts.get(), &mut self.chance)
    }

    /// Watts at the plug.
    pub fn watts(&mut self, watts: Watts) -> Display {
        self.watts.show(watts.get(), &mut self.chance)
    }

    /// Degrees Celsius.
    pub fn celsius(&mut self, temperature: Celsius) -> Display {
        self.celsius.show(temperature.get(), &mut self.chance)
    }

    /// Farads of a capacitor off its wires, with its charge gone.
    pub fn farads(&mut self, capacitance: Farads) -> Display {
        self.farads.show(capacitance.get(), &mut self.chance)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_reading_is_farther_off_than_its_data_sheet_allows() {
        for seed in 0..200 {
            let mut kit = Kit::basic(Chance::new(seed));
            for (truth, count) in [(4.7, 0.1), (1_250.0, 1.0), (47_000.0, 100.0)] {
                let text = kit.ohms(Ohms::new(truth)).text;
                let factor = if text.ends_with('k') { 1e3 } else { 1.0 };
                let read: f64 = text.trim_end_matches('k').parse().unwrap();
                let seen = truth + kit.leads.get();
                // Rounding to a count is on top of the sheet's limit.
                let limit = 0.01 * seen + 5.5 * count;
                assert!((read * factor - seen).abs() <= limit, "{text} for {seen}");
            }
        }
    }

    #[test]
    fn what_is_open_or_beyond_the_last_range_shows_as_such() {
        let mut kit = Kit::basic(Chance::new(1));
        assert!(kit.ohms(Ohms::new(f64::INFINITY)).is_over_range());
        assert!(kit.ohms(Ohms::new(5e6)).is_over_range());
        assert!(
            !Kit::good(Chance::new(1))
                .ohms(Ohms::new(5e6))
                .is_over_range()
        );
    }

    #[test]
    fn a_display_keeps_the_zeros_of_its_range() {
        assert_eq!(fixed(12.0, 1), "12.0");
        assert_eq!(fixed(0.2, 2), "0.20");
        assert_eq!(fixed(-18.04, 1), "-18.0");
        assert_eq!(fixed(1_250.0, 0), "1250");
    }

    #[test]
    fn one_meter_is_off_to_one_side() {
        let mut kit = Kit::good(Chance::new(3));
        let mean = |kit: &mut Kit, ohms: f64| {
            let read = |_| -> f64 { kit.ohms(Ohms::new(ohms)).text.parse().unwrap() };
            (0..400).map(read).sum::<f64>() / 400.0 - kit.leads.get()
        };
        // Counts even out over many readings, percent don't.
        let off = mean(&mut kit, 300.0) / 300.0 - 1.0;
        let expected = kit.ohms.gain * 0.008;
        assert!((off - expected).abs() < 2e-4, "{off} {expected}");
    }
}

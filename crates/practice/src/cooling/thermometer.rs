//! A thermometer in the air, as a person or a logger reads it.

use measure::cool_down::TemperatureAt;
use quantity::{Celsius, Seconds};
use simulator::Chance;

/// How slowly probes in still air follow: time constants in seconds (common practice, no source: one to
/// six minutes).
pub(crate) const LAG: (f64, f64) = (60.0, 360.0);

/// A probe that follows the air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Probe {
    lag: f64,
    /// When it was followed last, in seconds, and what it showed then.
    last: Option<(f64, f64)>,
}

impl Probe {
    /// One of a time constant, in seconds, that is as warm as the first air that it meets.
    pub(crate) const fn of(lag: f64) -> Self {
        Self { lag, last: None }
    }

    /// What it shows once it has been in that air until a time.
    pub(crate) fn follow(&mut self, at: f64, air: f64) -> f64 {
        let (before, probe) = self.last.unwrap_or((at, air));
        let keeps = libm::exp((before - at) / self.lag);
        let shown = air + keeps * (probe - air);
        self.last = Some((at, shown));
        shown
    }
}

/// How temperatures are taken down.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Logger {
    /// Between two readings, in seconds.
    pub each: f64,
    /// How slowly its probe follows the air: a time constant in seconds.
    pub lag: f64,
    /// What one step of its display is, in kelvins.
    pub step: f64,
    /// What it errs by from reading to reading, as a standard deviation in kelvins.
    pub noise: f64,
    /// What it errs by in all readings alike, in kelvins.
    pub offset: f64,
}

impl Logger {
    /// Half are loggers, a reading each one or two minutes to a tenth of a degree; half are read by
    /// a person, each five to ten minutes. A probe in still air takes 1 to 6 minutes to follow, and
    /// is off by up to a degree, as such things are sold (common practice, no source).
    #[must_use]
    pub fn drawn(chance: &mut Chance) -> Self {
        let is_logger = chance.happens(0.5);
        let each = match (is_logger, chance.happens(0.5)) {
            (true, true) => 60.0,
            (true, false) => 120.0,
            (false, true) => 300.0,
            (false, false) => 600.0,
        };
        Self {
            each,
            lag: chance.between(LAG.0, LAG.1),
            step: if is_logger || chance.happens(0.7) {
                0.1
            } else {
                0.5
            },
            noise: chance.between(0.02, 0.1),
            offset: chance.between(-1.0, 1.0),
        }
    }

    /// What it shows of air that is known by time, over so many hours from its beginning.
    #[must_use]
    pub fn readings(
        &self,
        air: &[(f64, f64)],
        hours: f64,
        chance: &mut Chance,
    ) -> Vec<TemperatureAt> {
        let mut probe = Probe::of(self.lag);
        let mut next = 0.0;
        let mut readings = Vec::new();
        for &(at, air) in air.iter().take_while(|(at, _)| *at <= hours * 3600.0 + 1.0) {
            let followed = probe.follow(at, air);
            // Samples stand within half a minute of the time that is asked for.
            if at + 30.0 >= next {
                let shown = followed + self.offset + self.noise * chance.normal();
                readings.push(TemperatureAt {
                    at: Seconds::new(at),
                    temperature: Celsius::new(libm::rint(shown / self.step) * self.step),
                });
                next += self.each;
            }
        }
        readings
    }
}

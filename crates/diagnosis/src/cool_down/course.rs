//! One compartment's course: what was read, and what that foretells.

use job::{Content, Job, Measured, Moment, Place};
use measure::cool_down::{
    self, CoolDownError, CoolDownPrior, Goal, ReachBand, Sign, Support, TemperatureAt,
    TemperatureBand, Verdict,
};
use quantity::{Celsius, Observed};

use super::Compartment;

/// A reading with its moment.
pub(super) type Point = (Moment, Celsius);

/// What counts of a job's readings.
#[derive(Debug, Clone, Copy)]
pub(super) struct Watched {
    pub(super) began: Moment,
    pub(super) until: Moment,
    /// From when on thermometers lay where they lie.
    pub(super) comparable: Moment,
}

/// What was read in a compartment, and what follows.
#[derive(Debug, Clone, PartialEq)]
pub struct Course {
    /// Which it is.
    pub compartment: Compartment,
    /// What was read since it was switched on, in the order of time.
    pub points: Vec<(Moment, Celsius)>,
    /// When it first showed the target or less, where it did.
    pub reached: Option<Moment>,
    began: Moment,
    /// What it comes to, or why that can't be told yet; `None` where the scale is in doubt.
    pub forecast: Option<Result<Forecast, CoolDownError>>,
}

/// What a course comes to. Bands hold nine in ten.
#[derive(Debug, Clone, PartialEq)]
pub struct Forecast {
    /// The temperature that it ends at.
    pub end: TemperatureBand,
    /// When it is at its target, since it was switched on.
    pub reach: ReachBand,
    /// Whether it is there within a day.
    pub verdict: Verdict,
    /// What its course shows besides.
    pub signs: Vec<Sign>,
    fit: Fit,
}

/// Follows from the points, and they are compared.
#[derive(Debug, Clone)]
struct Fit(cool_down::CoolDown);

impl PartialEq for Fit {
    fn eq(&self, _: &Self) -> bool {
        true
    }
}

impl Course {
    pub(super) fn of(
        (compartment, prior): (Compartment, CoolDownPrior),
        points: Vec<Point>,
        watched: &Watched,
        is_foretold: bool,
        shown: Option<&Support>,
    ) -> Self {
        let goal = compartment.goal();
        let shows = points.iter().find(|(_, shown)| *shown <= goal.target);
        let reached = shows.map(|(at, _)| *at);
        let forecast = is_foretold.then(|| {
            let comparable = watched.comparable.unix_milliseconds();
            let readings: Vec<TemperatureAt> = points
                .iter()
                .filter(|(at, _)| at.unix_milliseconds() >= comparable)
                .map(|&(at, temperature)| TemperatureAt {
                    at: watched.began.until(at),
                    temperature,
                })
                .collect();
            let fit = cool_down::CoolDown::of(&readings, &prior)?;
            Ok(Forecast::of(fit, &goal, shown))
        });
        Self {
            compartment,
            points,
            reached,
            began: watched.began,
            forecast,
        }
    }

    /// What it is to reach, and until when.
    #[must_use]
    pub const fn goal(&self) -> Goal {
        self.compartment.goal()
    }

    /// How long after it was switched on it first showed the target, where it did.
    #[must_use]
    pub fn reached_after(&self) -> Option<quantity::Seconds> {
        self.reached.map(|reached| self.began.until(reached))
    }

    /// The last reading.
    #[must_use]
    pub fn latest(&self) -> Option<(Moment, Celsius)> {
        self.points.last().copied()
    }

    /// What was foretold, where it was.
    #[must_use]
    pub fn foretold(&self) -> Option<&Forecast> {
        self.forecast.as_ref()?.as_ref().ok()
    }
}

impl Forecast {
    /// What is shown has its signs, and what else was read with it. What is weighed has neither: a coil and
    /// watts are weighed by clues of their own.
    fn of(fit: cool_down::CoolDown, goal: &Goal, shown: Option<&Support>) -> Self {
        let signs = shown.map_or_else(Vec::new, |_| fit.signs(goal));
        let fit = shown.map_or_else(|| fit.clone(), |support| fit.with(support));
        Self {
            end: fit.end(),
            reach: fit.reach(goal),
            verdict: fit.verdict(goal),
            signs,
            fit: Fit(fit),
        }
    }

    /// The temperature so long after it was switched on, past or to come, for who draws it.
    #[must_use]
    pub fn temperature_at(&self, after: quantity::Seconds) -> TemperatureBand {
        self.fit.0.temperature_at(after)
    }

    /// How likely it is at or below a temperature after a day.
    #[must_use]
    pub fn chance_below(&self, target: Celsius) -> f64 {
        self.fit.0.chance(&Goal {
            target,
            within: super::CoolDown::DAY,
        })
    }
}

impl Watched {
    /// All readings at a place in the order of time, each once: a file that was taken in twice
    /// says nothing twice.
    pub(super) fn readings(&self, job: &Job, place: Place) -> Vec<Point> {
        let standing = job.standing();
        let mut points: Vec<Point> = standing
            .iter()
            .flat_map(|entry| match &entry.content {
                Content::Spot(spot) if spot.place == place => {
                    shown(spot).map_or_else(Vec::new, |shown| vec![(spot.at, shown)])
                }
                Content::Log(log) if log.place() == place => log.points().to_vec(),
                _ => Vec::new(),
            })
            .filter(|(at, _)| self.holds(*at))
            .collect();
        points.sort_by(|one, other| {
            let by_time = one.0.unix_milliseconds().cmp(&other.0.unix_milliseconds());
            by_time.then(one.1.get().total_cmp(&other.1.get()))
        });
        points.dedup_by(|one, other| {
            one.0.unix_milliseconds() == other.0.unix_milliseconds() && one.1 == other.1
        });
        points
    }

    pub(super) fn holds(&self, at: Moment) -> bool {
        let within = self.began.unix_milliseconds()..=self.until.unix_milliseconds();
        within.contains(&at.unix_milliseconds())
    }
}

/// What a thermometer showed; `None` of what none shows.
pub(crate) fn shown(spot: &job::Spot) -> Option<Celsius> {
    match spot.reading.measured {
        Measured::Celsius(typed) => match typed.observed {
            // What no thermometer shows is no reading.
            Observed::Value(value) if value.get().abs() < 1_000.0 => Some(value),
            _ => None,
        },
        _ => None,
    }
}

/// The middle one of some readings.
pub(super) fn middle(points: &[Point]) -> Option<Celsius> {
    let mut all: Vec<f64> = points.iter().map(|(_, shown)| shown.get()).collect();
    all.sort_by(f64::total_cmp);
    all.get(all.len() / 2).copied().map(Celsius::new)
}

//! A cooling curve: what was read, the band in which it goes on, the target, and what happened.

use diagnosis::{CoolDown, Course};
use job::{ColdEventKind, Moment};
use quantity::{Celsius, Seconds};
use wording::{Degrees, Locale};

use crate::svg::{Anchor, Drawing, line};

const WIDTH: f64 = 340.0;
const HEIGHT: f64 = 220.0;
const LEFT: f64 = 34.0;
const RIGHT: f64 = WIDTH - 20.0;
const TOP: f64 = 18.0;
const FOOT: f64 = HEIGHT - 26.0;
/// The band is drawn through so many places.
const PLACES: u32 = 48;
/// A day is shown even where less was watched; of more than a week the beginning is shown.
const HOURS: (f64, f64) = (24.0, 168.0);
/// No more marks than that along either side.
const MOST_MARKS: f64 = 8.0;

/// The scales of one drawing, in hours and in the reader's degrees.
struct Scales {
    hours: f64,
    low: f64,
    high: f64,
    step: f64,
    is_fahrenheit: bool,
}

impl Scales {
    fn x(&self, hours: f64) -> f64 {
        LEFT + (hours / self.hours).clamp(0.0, 1.0) * (RIGHT - LEFT)
    }

    fn y(&self, temperature: Celsius) -> f64 {
        self.y_of(degrees(temperature, self.is_fahrenheit))
    }

    fn y_of(&self, degrees: f64) -> f64 {
        let share = (degrees - self.low) / (self.high - self.low);
        FOOT - share.clamp(0.0, 1.0) * (FOOT - TOP)
    }
}

fn degrees(temperature: Celsius, is_fahrenheit: bool) -> f64 {
    if is_fahrenheit {
        temperature.to_fahrenheit()
    } else {
        temperature.get()
    }
}

/// The drawing; `None` where nothing was read.
pub(crate) fn drawing(
    course: &Course,
    cooling: &CoolDown,
    events: &[(Moment, ColdEventKind)],
    locale: &Locale,
) -> Option<Drawing> {
    let scales = scales(course, cooling.began, locale)?;
    let mut drawing = Drawing::new(WIDTH, HEIGHT);
    band(&mut drawing, course, &scales);
    grid(&mut drawing, &scales, locale);
    let target = scales.y(course.goal().target);
    drawing.path("rec-target", &format!("M{LEFT:.1} {target:.1}H{RIGHT:.1}"));
    for (place, (at, _)) in events.iter().enumerate() {
        let hours = hours(cooling.began, *at);
        if hours > scales.hours {
            break;
        }
        let x = scales.x(hours);
        drawing.path("rec-event", &format!("M{x:.1} {TOP:.1}V{FOOT:.1}"));
        let number = (place + 1).to_string();
        drawing.words(
            "rec-words rec-mark",
            (x, TOP - 6.0),
            Anchor::Middle,
            &number,
        );
    }
    let shown: Vec<(f64, f64)> = course
        .points
        .iter()
        .map(|(at, shown)| (hours(cooling.began, *at), *shown))
        .filter(|(hours, _)| *hours <= scales.hours)
        .map(|(hours, shown)| (scales.x(hours), scales.y(shown)))
        .collect();
    drawing.path("rec-course", &line(shown.iter().copied()));
    // Dots where they can be told apart.
    if shown.len() <= 60 {
        for (x, y) in shown {
            let dot = format!(
                "M{:.1} {y:.1}a2.5 2.5 0 1 0 5 0a2.5 2.5 0 1 0 -5 0z",
                x - 2.5
            );
            drawing.path("rec-dot", &dot);
        }
    }
    Some(drawing)
}

/// Where it goes on, nine times in ten, from the first reading to the end of the drawing.
fn band(drawing: &mut Drawing, course: &Course, scales: &Scales) {
    let Some(forecast) = course.foretold() else {
        return;
    };
    let at = |place: u32| scales.hours * f64::from(place) / f64::from(PLACES);
    let bands: Vec<_> = (0..=PLACES)
        .map(|place| {
            let hours = at(place);
            let band = forecast.temperature_at(Seconds::new(hours * 3_600.0));
            (scales.x(hours), scales.y(band.from), scales.y(band.to))
        })
        .collect();
    let there = bands.iter().map(|(x, _, warm)| (*x, *warm));
    let back = bands.iter().rev().map(|(x, cold, _)| (*x, *cold));
    drawing.path("rec-band", &(line(there.chain(back)) + "Z"));
}

fn grid(drawing: &mut Drawing, scales: &Scales, locale: &Locale) {
    let lowest = libm::ceil(scales.low / scales.step) as i32;
    let highest = libm::floor(scales.high / scales.step) as i32;
    for mark in lowest..=highest {
        let shown = f64::from(mark) * scales.step;
        let y = scales.y_of(shown);
        drawing.path("rec-grid", &format!("M{LEFT:.1} {y:.1}H{RIGHT:.1}"));
        let text = locale.number(shown, 0);
        drawing.words(
            "rec-words rec-mark",
            (LEFT - 4.0, y + 4.0),
            Anchor::End,
            &text,
        );
    }
    let step = round_step(scales.hours, &[1.0, 2.0, 3.0, 6.0, 12.0, 24.0]);
    let marks = libm::floor(scales.hours / step) as u32;
    for mark in 0..=marks {
        let hours = f64::from(mark) * step;
        let x = scales.x(hours);
        let text = format!("{hours:.0}\u{a0}h");
        drawing.words(
            "rec-words rec-mark",
            (x, FOOT + 16.0),
            Anchor::Middle,
            &text,
        );
    }
    let unit = if scales.is_fahrenheit { "°F" } else { "°C" };
    drawing.words("rec-words rec-mark", (2.0, TOP - 6.0), Anchor::Start, unit);
}

fn scales(course: &Course, began: Moment, locale: &Locale) -> Option<Scales> {
    let is_fahrenheit = locale.degrees == Degrees::Fahrenheit;
    let last = hours(began, course.points.last()?.0);
    let mut shown: Vec<f64> = course.points.iter().map(|(_, shown)| shown.get()).collect();
    shown.push(course.goal().target.get());
    if let Some(forecast) = course.foretold() {
        shown.push(forecast.end.from.get());
    }
    let low = shown.iter().copied().fold(f64::INFINITY, f64::min) - 2.0;
    let high = shown.iter().copied().fold(f64::NEG_INFINITY, f64::max) + 2.0;
    let (low, high) = (
        degrees(Celsius::new(low), is_fahrenheit),
        degrees(Celsius::new(high), is_fahrenheit),
    );
    Some(Scales {
        hours: last.clamp(HOURS.0, HOURS.1),
        low,
        high,
        step: round_step(high - low, &[1.0, 2.0, 5.0, 10.0, 20.0]),
        is_fahrenheit,
    })
}

/// The smallest of the steps with which a range has few enough marks.
fn round_step(range: f64, steps: &[f64]) -> f64 {
    let fits = steps.iter().find(|step| range / **step <= MOST_MARKS);
    fits.or(steps.last()).copied().unwrap_or(range)
}

fn hours(began: Moment, at: Moment) -> f64 {
    began.until(at).get() / 3_600.0
}

#[cfg(test)]
mod tests {
    use super::*;

    fn scales(is_fahrenheit: bool) -> Scales {
        Scales {
            hours: 24.0,
            low: -20.0,
            high: 100.0,
            step: 5.0,
            is_fahrenheit,
        }
    }

    #[test]
    fn colder_lies_lower_and_later_further_right_within_the_drawing() {
        let scales = scales(false);
        assert!(scales.y(Celsius::new(-18.0)) > scales.y(Celsius::new(20.0)));
        assert!(scales.x(2.0) < scales.x(20.0));
        assert!((scales.y(Celsius::new(-300.0)) - FOOT).abs() < 1e-9);
        assert!((scales.x(1e6) - RIGHT).abs() < 1e-9);
    }

    #[test]
    fn the_same_temperature_lies_by_the_readers_scale() {
        let freezing = scales(true).y(Celsius::new(0.0));
        assert!((freezing - scales(true).y_of(32.0)).abs() < 1e-9);
    }

    #[test]
    fn marks_are_few_and_round() {
        for range in [3.0, 12.0, 40.0, 90.0] {
            let step = round_step(range, &[1.0, 2.0, 5.0, 10.0, 20.0]);
            assert!(range / step <= MOST_MARKS && step.fract() < 1e-9, "{range}");
        }
    }
}

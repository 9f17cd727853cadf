//! A cooling curve: what was read, the band in which it goes on, the target, and what happened.

use diagnosis::{CoolDown, Course};
use job::{ColdEventKind, Moment};
use quantity::{Celsius, Seconds};
use wording::{Degrees, Locale, Words};

use crate::cooling_chart::{CoolingChart, FOOT, HEIGHT, WIDTH};
use crate::shape::disc;
use crate::svg::{Anchor, Drawing};

/// A day is shown even where less was watched; of more than a week the beginning is shown.
const SHOWN: (f64, f64) = (24.0 * HOUR, 168.0 * HOUR);
const HOUR: f64 = 3_600.0;
/// Readings of which there are no more are drawn as dots too.
const MOST_DOTS: usize = 60;

fn degrees(temperature: Celsius, locale: &Locale) -> f64 {
    match locale.degrees {
        Degrees::Celsius => temperature.get(),
        Degrees::Fahrenheit => temperature.to_fahrenheit(),
    }
}

/// The drawing; `None` where nothing was read.
pub(crate) fn drawing(
    course: &Course,
    cooling: &CoolDown,
    events: &[(Moment, ColdEventKind)],
    locale: &Locale,
) -> Option<Drawing> {
    let began = cooling.began;
    let last = began.until(course.points.last()?.0);
    let until = Seconds::new(last.get().clamp(SHOWN.0, SHOWN.1));
    let points = course.points.iter();
    let read: Vec<(Seconds, f64)> = points
        .map(|(at, shown)| (began.until(*at), degrees(*shown, locale)))
        .filter(|(after, _)| *after <= until)
        .collect();
    let target = degrees(course.goal().target, locale);
    let coldest = course.foretold().map(|forecast| forecast.end.from);
    let coldest = coldest.map(|end| degrees(end, locale));
    let all = read.iter().map(|(_, shown)| *shown).chain([target]);
    let chart = CoolingChart::of(until, all.chain(coldest))?;
    let mut drawing = Drawing::new(WIDTH, HEIGHT);
    drawing.path("rec-band", &band(course, &chart, until, locale));
    grid(&mut drawing, &chart, locale);
    let ((left, right), y) = (chart.sides(), chart.y(target));
    drawing.path("rec-target", &format!("M{left:.1} {y:.1}H{right:.1}"));
    happened(&mut drawing, &chart, began, until, events);
    drawing.path("rec-course", &chart.line(&read));
    if read.len() <= MOST_DOTS {
        for (after, shown) in read {
            let (x, y) = (chart.x(after), chart.y(shown));
            drawing.path("rec-dot", &disc((x, y), 2.5));
        }
    }
    Some(drawing)
}

/// Where it goes on, nine times in ten, from the first reading to the end of the drawing.
fn band(course: &Course, chart: &CoolingChart, until: Seconds, locale: &Locale) -> String {
    let Some(forecast) = course.foretold() else {
        return String::new();
    };
    let samples = CoolingChart::samples(until).into_iter();
    let edges = samples.map(|after| {
        let band = forecast.temperature_at(after);
        (after, degrees(band.from, locale), degrees(band.to, locale))
    });
    chart.band(&edges.collect::<Vec<_>>())
}

/// A stroke with its number at the head.
fn happened(
    drawing: &mut Drawing,
    chart: &CoolingChart,
    began: Moment,
    until: Seconds,
    events: &[(Moment, ColdEventKind)],
) {
    let head = chart.head();
    for (place, (at, _)) in events.iter().enumerate() {
        let after = began.until(*at);
        if after > until {
            break;
        }
        let x = chart.x(after);
        drawing.path("rec-event", &format!("M{x:.1} {head:.1}V{FOOT:.1}"));
        let number = (place + 1).to_string();
        let at = (x, head - 3.0);
        drawing.words("rec-words", at, Anchor::Middle, &number);
    }
}

fn grid(drawing: &mut Drawing, chart: &CoolingChart, locale: &Locale) {
    let (left, right) = chart.sides();
    for shown in chart.degrees() {
        let y = chart.y(shown);
        drawing.path("rec-grid", &format!("M{left:.1} {y:.1}H{right:.1}"));
        let text = locale.number(shown, 0);
        drawing.words("rec-words", (left - 4.0, y + 4.0), Anchor::End, &text);
    }
    for after in chart.times(0.0) {
        let x = chart.x(after);
        let text = wording::record::hours_after(after, locale);
        drawing.words("rec-words", (x, FOOT + 16.0), Anchor::Middle, &text);
    }
    let scale = locale.degrees.words();
    drawing.words("rec-words", (2.0, FOOT + 16.0), Anchor::Start, scale);
}

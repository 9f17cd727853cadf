//! Each course with its band and its target. The same stands beside it in words.

use diagnosis::{CoolDown, Course};
use job::{ColdEvent, ColdEventKind, Content, Moment};
use leptos::prelude::*;
use quantity::{Celsius, Seconds};
use record::cooling_chart::{CoolingChart, FOOT, HEIGHT, WIDTH};
use record::shape::disc;
use wording::{Degrees, Locale, Words, cold_page as words};

use super::Bench;
use crate::parts::plain::{paragraph, section_heading};

/// One picture a compartment with what it says below.
pub(super) fn picture(bench: Bench, locale: &Locale) -> AnyView {
    bench.cool_down.with(|found| {
        let Some(found) = found else {
            return ().into_any();
        };
        let events = bench.open.with_job(|job| events(job, found));
        let courses = found.courses.iter().map(|course| {
            let said = words::foretold(course, found.began, locale);
            let all = said.join(" ");
            view! {
                <section>
                    <h3>{words::heading(course.compartment)}</h3>
                    {drawing(course, found.began, &events, locale, all)}
                    {said.into_iter().map(|line| paragraph("", line)).collect::<Vec<_>>()}
                </section>
            }
        });
        let courses: Vec<_> = courses.collect();
        if courses.is_empty() {
            return ().into_any();
        }
        view! {
            <section>
                {section_heading(words::COURSE)}
                {courses}
                {key()}
            </section>
        }
        .into_any()
    })
}

fn events(job: &job::Job, found: &CoolDown) -> Vec<ColdEvent> {
    let standing = job.standing().into_iter();
    let events = standing.filter_map(|entry| match &entry.content {
        Content::Event(event) if event.at > found.began => Some(*event),
        _ => None,
    });
    events.collect()
}

fn of_scale(celsius: Celsius, locale: &Locale) -> f64 {
    match locale.degrees {
        Degrees::Celsius => celsius.get(),
        Degrees::Fahrenheit => celsius.to_fahrenheit(),
    }
}

fn drawing(
    course: &Course,
    began: Moment,
    events: &[ColdEvent],
    locale: &Locale,
    said: String,
) -> AnyView {
    let degrees = |celsius| of_scale(celsius, locale);
    let points: Vec<(Seconds, f64)> = course
        .points
        .iter()
        .map(|(at, shown)| (began.until(*at), degrees(*shown)))
        .collect();
    let last = points.last().map_or(Seconds::new(0.0), |(after, _)| *after);
    let until = CoolingChart::until(last);
    let forecast: Vec<(Seconds, [f64; 3])> = course.foretold().map_or_else(Vec::new, |forecast| {
        let samples = CoolingChart::samples(until).into_iter();
        let at = |after| {
            let band = forecast.temperature_at(after);
            (after, [band.from, band.median, band.to].map(degrees))
        };
        samples.map(at).collect()
    });
    let target = degrees(course.goal().target);
    let all = points.iter().map(|(_, shown)| *shown);
    let all = all.chain(forecast.iter().flat_map(|(_, band)| *band));
    let Some(chart) = CoolingChart::of(until, all.chain([target])) else {
        return ().into_any();
    };
    let band: Vec<_> = forecast
        .iter()
        .map(|(at, [from, _, to])| (*at, *from, *to))
        .collect();
    let middle: Vec<_> = forecast
        .iter()
        .map(|(at, [_, median, _])| (*at, *median))
        .collect();
    let (left, right) = chart.sides();
    let y = chart.y(target);
    let marks = marks(&chart, &points);
    let title = [words::COURSE, ": ", words::heading(course.compartment)].concat();
    view! {
        <svg class="kit-curve cooling" viewBox=format!("0 0 {WIDTH} {HEIGHT}") role="img" aria-label=[title, ". ".to_owned(), said].concat()>
            {grid(&chart, began, locale)}
            <path class="rest-band" d=chart.band(&band)></path>
            {strokes(&chart, began, events)}
            <path class="kit-plain" d=format!("M{left:.1} {y:.1}H{right:.1}")></path>
            <path class="rest-interval" d=chart.line(&middle)></path>
            <path class="cooling-points" d=marks></path>
        </svg>
    }
    .into_any()
}

/// A round mark for each reading, as one path. A course out of a file has many more than a phone has
/// pixels across: what would lie on the mark before is left out.
fn marks(chart: &CoolingChart, points: &[(Seconds, f64)]) -> String {
    let mut path = String::new();
    let mut before = None;
    for (after, shown) in points {
        let (x, y) = (chart.x(*after), chart.y(*shown));
        let place = (libm::round(x) as i32, libm::round(y) as i32);
        if before != Some(place) {
            path.push_str(&disc((x, y), 3.0));
            before = Some(place);
        }
    }
    path
}

fn grid(chart: &CoolingChart, began: Moment, locale: &Locale) -> AnyView {
    let (left, right) = chart.sides();
    let degrees = chart.degrees().into_iter().map(|degrees| {
        let y = chart.y(degrees);
        view! {
            <path class="rest-mark" d=format!("M{left:.1} {y:.1}H{right:.1}")></path>
            <text class="rest-text" x=format!("{:.0}", left - 5.0) y=format!("{:.1}", y + 4.0) text-anchor="end">
                {locale.number(degrees, 0)}
            </text>
        }
    });
    let clock = began.wall_clock();
    let clock =
        f64::from(clock.hour) * 3_600.0 + f64::from(clock.minute) * 60.0 + f64::from(clock.second);
    let times = chart.times(clock).into_iter().map(|after| {
        let x = chart.x(after);
        view! {
            <path class="kit-tick" d=format!("M{x:.1} {FOOT}v5")></path>
            <text class="rest-text" x=format!("{x:.1}") y=format!("{:.0}", FOOT + 18.0) text-anchor="middle">
                {time_told(began, after, locale)}
            </text>
        }
    });
    view! {
        <text class="rest-text" x="1" y=format!("{:.0}", FOOT + 18.0)>{locale.degrees.words()}</text>
        {degrees.collect::<Vec<_>>()}
        {times.collect::<Vec<_>>()}
    }
    .into_any()
}

/// What stands below a time: the clock, and at midnight the day that begins.
fn time_told(began: Moment, after: Seconds, locale: &Locale) -> String {
    let Some(at) = began.after(after) else {
        return String::new();
    };
    let clock = at.wall_clock();
    if (clock.hour, clock.minute) == (0, 0) {
        locale.day(at)
    } else {
        locale.clock(at)
    }
}

/// A stroke with a letter at its head; the letters are told in the key.
fn strokes(chart: &CoolingChart, began: Moment, events: &[ColdEvent]) -> AnyView {
    let strokes = events.iter().map(|event| {
        let x = chart.x(began.until(event.at));
        let sign = sign_of(event.kind);
        view! {
            <path class="cooling-event" d=format!("M{x:.1} {:.1}V{FOOT}", chart.head())></path>
            <text class="rest-text" x=format!("{x:.1}") y="10" text-anchor="middle">{sign}</text>
        }
    });
    strokes.collect::<Vec<_>>().into_any()
}

/// One letter an event, told in the key.
const fn sign_of(kind: ColdEventKind) -> &'static str {
    match kind {
        ColdEventKind::SwitchedOn | ColdEventKind::SwitchedOff => "S",
        ColdEventKind::CompressorOn | ColdEventKind::CompressorOff => "C",
        ColdEventKind::Tripped => "T",
        ColdEventKind::DoorOpened | ColdEventKind::Loaded => "D",
        ColdEventKind::DefrostBegan | ColdEventKind::DefrostEnded | ColdEventKind::DefrostWater => {
            "F"
        }
        ColdEventKind::SetPointChanged | ColdEventKind::ProbeMoved => "M",
    }
}

/// What the shapes are.
fn key() -> AnyView {
    let entries: [(&'static str, &'static str, &'static str); 5] = [
        (
            "cooling-points",
            "M7 10a3 3 0 1 0 6 0a3 3 0 1 0 -6 0z",
            words::READING,
        ),
        ("rest-interval", "M1 5C6 14 12 15 19 15", words::FITTED),
        ("rest-band", "M1 3H19V17H1Z", words::BAND),
        ("kit-plain", "M1 10H19", words::TARGET),
        ("cooling-event", "M10 2V18", words::EVENT),
    ];
    let entries = entries.map(|(class, d, text)| {
        view! {
            <li>
                <svg class="rest-shape" viewBox="0 0 20 20" aria-hidden="true">
                    <path class=class d=d></path>
                </svg>
                <span>{text}</span>
            </li>
        }
    });
    view! { <ul class="rest-key">{entries.into_iter().collect_view()}</ul> }.into_any()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// What stands along the foot of a picture that ends so many hours after 25 November 2026,
    /// 20:05:17 by a clock an hour east of UTC.
    fn told(hours: f64) -> Vec<String> {
        let began = Moment::new(1_795_633_517_000, 60).unwrap();
        let until = Seconds::new(hours * 3_600.0);
        let chart = CoolingChart::of(until, [4.0].into_iter()).unwrap();
        let times = chart.times(20.0 * 3_600.0 + 5.0 * 60.0 + 17.0).into_iter();
        times
            .map(|after| time_told(began, after, &Locale::default()))
            .collect()
    }

    #[test]
    fn of_thousands_of_readings_no_two_marks_lie_on_each_other_and_of_few_each_has_its_own() {
        let count = |readings: u32| {
            let at = |reading| Seconds::new(86_400.0 * f64::from(reading) / f64::from(readings));
            let degrees = |reading| 21.0 - 40.0 * f64::from(reading) / f64::from(readings);
            let points: Vec<(Seconds, f64)> =
                (0..readings).map(|one| (at(one), degrees(one))).collect();
            let all = points.iter().map(|(_, shown)| *shown);
            let chart = CoolingChart::of(Seconds::new(86_400.0), all).unwrap();
            marks(&chart, &points).matches('M').count()
        };
        assert_eq!(count(40), 40);
        let many = count(2_000);
        assert!((200..600).contains(&many), "{many}");
    }

    #[test]
    fn beyond_midnight_the_day_is_told_and_before_it_is_not() {
        assert_eq!(told(2.0), ["20:30", "21:00", "21:30", "22:00"]);
        assert_eq!(told(8.0), ["22:00", "26 Nov", "02:00", "04:00"]);
        assert_eq!(told(24.0), ["26 Nov", "06:00", "12:00", "18:00"]);
        assert_eq!(told(72.0), ["26 Nov", "27 Nov", "28 Nov"]);
    }
}

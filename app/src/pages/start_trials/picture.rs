//! Tries on a line of rests, one row a set-up. The same stands beside it in words.

use diagnosis::{Series, StartTrials};
use job::Tried;
use leptos::prelude::*;
use measure::start_trials::Knowledge;
use quantity::Seconds;
use record::rest_line::{MARGIN, MARKS, ROW, TOP, WIDTH, band, end_of, mark, place_of};
use wording::{Words, start_trials as words};

/// The picture.
pub(super) fn picture(trials: &StartTrials) -> AnyView {
    let rows = trials.series.len() as f64;
    let bottom = TOP + rows * ROW;
    let view_box = format!("0 0 {WIDTH} {}", bottom + 22.0);
    let marks = MARKS.map(|(seconds, text)| {
        let x = place_of(Seconds::new(seconds));
        view! {
            <path class="rest-mark" d=format!("M{x:.1} {TOP}V{bottom:.0}")></path>
            <text class="rest-text" x=format!("{x:.1}") y=format!("{:.0}", bottom + 16.0) text-anchor="middle">{text}</text>
        }
    });
    let series = trials.series.iter().enumerate();
    let rows: Vec<AnyView> = series
        .map(|(place, series)| row(series, TOP + place as f64 * ROW))
        .collect();
    view! {
        <svg class="rest-line" viewBox=view_box aria-hidden="true">
            {marks.into_iter().collect_view()}
            {rows}
        </svg>
    }
    .into_any()
}

fn row(series: &Series, top: f64) -> AnyView {
    let middle = top + 32.0;
    let (from, to) = (series.bands.ordinary_from, series.bands.ordinary_to);
    let band = band(from, to, middle);
    let threshold = series.threshold;
    let told = threshold.knowledge != Knowledge::Nothing;
    let (from, to) = (end_of(threshold.from), end_of(threshold.to));
    let interval = told.then(|| {
        let median = (threshold.knowledge == Knowledge::Both).then(|| {
            let x = end_of(threshold.median);
            format!("M{x:.1} {:.1}V{:.1}", middle - 7.0, middle + 7.0)
        });
        view! {
            <path class="rest-interval" d=format!("M{from:.1} {middle:.1}H{to:.1}")></path>
            <path class="rest-median" d=median></path>
        }
    });
    let tries = series.tries.iter().map(|(_, one)| {
        let x = place_of(one.rest.seconds());
        view! { <path class=mark_class(one.outcome) d=mark(one.outcome, x, middle)></path> }
    });
    view! {
        <text class="rest-name" x=MARGIN.to_string() y=format!("{:.0}", top + 15.0)>{series.set_up.words()}</text>
        <path class="rest-band" d=band></path>
        {interval}
        {tries.collect::<Vec<_>>()}
    }
    .into_any()
}

fn mark_class(outcome: Tried) -> &'static str {
    match outcome {
        Tried::Started => "try full",
        _ => "try",
    }
}

/// What the shapes are.
pub(super) fn key() -> AnyView {
    let entries = Tried::ALL.map(|outcome| {
        view! {
            <li>
                <svg class="rest-shape" viewBox="0 0 20 20" aria-hidden="true">
                    <path class=mark_class(outcome) d=mark(outcome, 10.0, 10.0)></path>
                </svg>
                <span>{outcome.words()}</span>
            </li>
        }
    });
    view! {
        <ul class="rest-key">
            {entries.into_iter().collect_view()}
            <li>
                <svg class="rest-shape" viewBox="0 0 20 20" aria-hidden="true">
                    <path class="rest-band" d="M1 3H19V17H1Z"></path>
                </svg>
                <span>{words::ORDINARY}</span>
            </li>
            <li>
                <svg class="rest-shape" viewBox="0 0 20 20" aria-hidden="true">
                    <path class="rest-interval" d="M1 10H19"></path>
                </svg>
                <span>{words::INTERVAL}</span>
            </li>
        </ul>
    }
    .into_any()
}

//! Tries to start it after a rest, on a line of rests and in a table.

use diagnosis::{Series, StartTrials};
use job::Tried;
use measure::start_trials::{Knowledge, Place};
use quantity::Seconds;
use wording::{Words, record as words, start_trials};

use crate::assembly::Source;
use crate::page::{Block, Picture, Table};
use crate::svg::{Anchor, Drawing};

/// The ends of the line, in seconds.
const ENDS: (f64, f64) = (15.0, 14_400.0);
const WIDTH: f64 = 340.0;
const ROW: f64 = 48.0;
const TOP: f64 = 8.0;
const MARGIN: f64 = 12.0;
/// Marks of the line, in seconds, with what stands below.
const MARKS: [(f64, &str); 5] = [
    (30.0, "30 s"),
    (120.0, "2 min"),
    (600.0, "10 min"),
    (1_800.0, "30 min"),
    (7_200.0, "2 h"),
];

pub(crate) fn blocks(from: Source<'_>) -> Vec<Block> {
    let trials = from.assessment.start_trials.as_ref();
    let Some(trials) = trials.filter(|trials| !trials.series.is_empty()) else {
        return Vec::new();
    };
    let tries = trials.series.iter().flat_map(|series| &series.tries);
    let there: Vec<Tried> = tries.map(|(_, one)| one.outcome).collect();
    let picture = Picture {
        title: words::STARTS.to_owned(),
        says: trials.series.iter().map(said).collect(),
        drawing: drawing(trials),
    };
    vec![
        Block::Picture(picture),
        Block::Paragraph(words::shapes(&there)),
    ]
}

/// Every try, and what tries can't show.
pub(crate) fn tries(from: Source<'_>) -> Vec<Block> {
    let trials = from.assessment.start_trials.iter();
    let rows = trials.flat_map(|trials| &trials.series).flat_map(|series| {
        series.tries.iter().map(|(_, one)| {
            vec![
                series.set_up.words().to_owned(),
                start_trials::tried(one, from.locale),
                from.locale.moment(one.at),
            ]
        })
    });
    let heads = [words::WITH, words::OUTCOME, words::WHEN];
    let Some(table) = Table::block(words::TRIES, &heads, rows.collect()) else {
        return Vec::new();
    };
    let limits = Block::Paragraph(start_trials::LIMITS.to_owned());
    vec![table, limits]
}

fn said(series: &Series) -> String {
    let needs = start_trials::needs(&series.threshold);
    format!("{}: {needs}", series.set_up.words())
}

/// Where a rest lies on the line.
fn place_of(rest: Seconds) -> f64 {
    let (from, to) = ENDS;
    let share = libm::log(rest.get().clamp(from, to) / from) / libm::log(to / from);
    MARGIN + share * (WIDTH - 2.0 * MARGIN)
}

fn end_of(place: Place) -> f64 {
    match place {
        Place::AtOnce => place_of(Seconds::new(ENDS.0)),
        Place::After(rest) => place_of(rest),
        Place::Beyond => place_of(Seconds::new(ENDS.1)),
    }
}

fn drawing(trials: &StartTrials) -> Drawing {
    let bottom = TOP + trials.series.len() as f64 * ROW;
    let mut drawing = Drawing::new(WIDTH, bottom + 24.0);
    for (seconds, text) in MARKS {
        let x = place_of(Seconds::new(seconds));
        drawing.path("rec-grid", &format!("M{x:.1} {TOP}V{bottom:.0}"));
        drawing.words(
            "rec-words rec-mark",
            (x, bottom + 16.0),
            Anchor::Middle,
            text,
        );
    }
    for (place, series) in trials.series.iter().enumerate() {
        row(&mut drawing, series, TOP + place as f64 * ROW);
    }
    drawing
}

fn row(drawing: &mut Drawing, series: &Series, top: f64) {
    let middle = top + 32.0;
    let bands = &series.bands;
    let (left, right) = (place_of(bands.ordinary_from), place_of(bands.ordinary_to));
    let (above, below) = (middle - 9.0, middle + 9.0);
    let band = format!("M{left:.1} {above:.1}H{right:.1}V{below:.1}H{left:.1}Z");
    drawing.path("rec-band", &band);
    let threshold = &series.threshold;
    if threshold.knowledge != Knowledge::Nothing {
        let (left, right) = (end_of(threshold.from), end_of(threshold.to));
        drawing.path(
            "rec-interval",
            &format!("M{left:.1} {middle:.1}H{right:.1}"),
        );
    }
    for (_, one) in &series.tries {
        let x = place_of(one.rest.seconds());
        let class = if one.outcome == Tried::Started {
            "rec-try rec-full"
        } else {
            "rec-try"
        };
        drawing.path(class, &mark(one.outcome, x, middle));
    }
    let name = series.set_up.words();
    drawing.words(
        "rec-words rec-name",
        (MARGIN, top + 14.0),
        Anchor::Start,
        name,
    );
}

/// One shape an outcome, as on the page of the tries: a disc, a ring, a cross, a dash, a wedge.
fn mark(outcome: Tried, x: f64, y: f64) -> String {
    match outcome {
        Tried::Started | Tried::HummedThenStarted => {
            format!("M{:.1} {y:.1}a6 6 0 1 0 12 0a6 6 0 1 0 -12 0z", x - 6.0)
        }
        Tried::HummedAndTripped => format!("M{:.1} {:.1}l11 11m0 -11l-11 11", x - 5.5, y - 5.5),
        Tried::Silent => format!("M{:.1} {y:.1}h10", x - 5.0),
        Tried::OutletTripped => format!("M{:.1} {:.1}l6 11l6 -11z", x - 6.0, y - 5.5),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn longer_rests_lie_further_right_and_none_outside_the_drawing() {
        let at = |seconds| place_of(Seconds::new(seconds));
        assert!(at(30.0) < at(300.0) && at(300.0) < at(3_600.0));
        assert!((at(1.0) - MARGIN).abs() < 1e-9);
        assert!((at(1e9) - (WIDTH - MARGIN)).abs() < 1e-9);
    }
}

//! Tries to start it after a rest, on a line of rests and in a table.

use diagnosis::{Series, StartTrials};
use job::Tried;
use measure::start_trials::Knowledge;
use quantity::Seconds;
use wording::{Words, record as words, start_trials};

use crate::assembly::Source;
use crate::page::{Block, Picture, Table};
use crate::rest_line::{MARGIN, MARKS, ROW, TOP, WIDTH, band, end_of, mark, place_of};
use crate::svg::{Anchor, Drawing};

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
    let (from, to) = (series.bands.ordinary_from, series.bands.ordinary_to);
    drawing.path("rec-band", &band(from, to, middle));
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

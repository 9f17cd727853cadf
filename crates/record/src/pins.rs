//! Which pin is which, drawn and in words.

use diagnosis::{PinShape, item_of_pair};
use job::Answer;
use measure::windings::{Label, Pair, Pin};
use wording::{label, measured, record as words, uncertain_ohms};

use crate::assembly::Source;
use crate::page::{Block, Picture};
use crate::pin_drawing::drawing;

pub(crate) fn blocks(from: Source<'_>) -> Vec<Block> {
    let Some(known) = &from.assessment.windings else {
        return Vec::new();
    };
    let labels = Pin::ALL.map(|pin| known.label(pin));
    let said = |label_of: Label| match label(label_of) {
        "" => words::NOT_TOLD,
        told => told,
    };
    // After a change the pins are those of now, and so are their readings.
    let readings = Pair::ALL.map(|which| {
        known.inspection.reading(which)?;
        match from.job.answer("windings", item_of_pair(which)) {
            Some(Answer::Reading(reading)) => Some(measured(reading.measured, from.locale)),
            _ => None,
        }
    });
    let shown = readings
        .each_ref()
        .map(|reading| reading.as_deref().unwrap_or("?"));
    let short = Pair::ALL.map(|which| {
        let text = shown[which.index()];
        if text.starts_with("over range") {
            "OL"
        } else {
            text
        }
    });
    let pins = Pin::ALL.into_iter().zip(labels);
    let pins: Vec<String> = pins
        .map(|(pin, label)| words::pin_is(pin, said(label)))
        .collect();
    let mut says = vec![pins.join(" ")];
    if let Some(found) = &known.windings.resistances {
        says.push(words::leads(&uncertain_ohms(&found.leads, from.locale)));
    }
    let picture = Picture {
        title: words::PINS.to_owned(),
        says,
        drawing: drawing(known.shape.unwrap_or(PinShape::PointUp), labels, short),
    };
    vec![Block::Picture(picture)]
}

//! The three pins as they lie, each with its number and its name.

use diagnosis::PinShape;
use measure::windings::{Label, Pair, Pin};

use crate::shape::disc;
use crate::svg::{Anchor, Drawing};

const WIDTH: f64 = 320.0;
const HEIGHT: f64 = 190.0;
const RADIUS: f64 = 15.0;

/// Where a pin stands. Pin 1 is the first from the top, then clockwise; in a line the first.
const fn place(shape: PinShape, pin: Pin) -> (f64, f64) {
    let percent = match shape {
        PinShape::PointUp => [(50.0, 20.0), (78.0, 72.0), (22.0, 72.0)],
        PinShape::PointDown => [(22.0, 26.0), (78.0, 26.0), (50.0, 76.0)],
        PinShape::PointRight => [(28.0, 20.0), (72.0, 48.0), (28.0, 76.0)],
        PinShape::PointLeft => [(72.0, 20.0), (72.0, 76.0), (28.0, 48.0)],
        PinShape::Row => [(17.0, 50.0), (50.0, 50.0), (83.0, 50.0)],
        PinShape::Column => [(50.0, 15.0), (50.0, 47.0), (50.0, 79.0)],
    };
    let (x, y) = percent[pin.index()];
    (x * WIDTH / 100.0, y * HEIGHT / 100.0)
}

/// The drawing. Names are shortened to what fits beside a pin; the table has them in full.
pub(crate) fn drawing(shape: PinShape, labels: [Label; 3], readings: [&str; 3]) -> Drawing {
    let mut drawing = Drawing::new(WIDTH, HEIGHT);
    for (pair, reading) in Pair::ALL.into_iter().zip(readings) {
        let (path, words) = lead(shape, pair);
        drawing.path("rec-lead", &path);
        drawing.words("rec-words rec-value", words, Anchor::Middle, reading);
    }
    for (pin, label) in Pin::ALL.into_iter().zip(labels) {
        let (x, y) = place(shape, pin);
        drawing.path("rec-pin", &disc((x, y), RADIUS));
        drawing.words(
            "rec-words rec-number",
            (x, y + 5.0),
            Anchor::Middle,
            &pin.number().to_string(),
        );
        let beside = beside(shape, pin);
        let named = wording::label(label);
        drawing.words("rec-words rec-name", beside.0, beside.1, named);
    }
    drawing
}

/// The line between two pins, and the middle of its words. In a line of three the outer pair goes
/// round the middle pin.
fn lead(shape: PinShape, pair: Pair) -> (String, (f64, f64)) {
    let [from, to] = pair.pins().map(|pin| place(shape, pin));
    let middle = ((from.0 + to.0) / 2.0, (from.1 + to.1) / 2.0);
    match (shape, pair) {
        (PinShape::Row, Pair::OneThree) => (curve(from, to, (0.0, -70.0)), (middle.0, 34.0)),
        (PinShape::Column, Pair::OneThree) => (curve(from, to, (-90.0, 0.0)), (70.0, middle.1)),
        _ => {
            let line = format!("M{:.1} {:.1}L{:.1} {:.1}", from.0, from.1, to.0, to.1);
            (line, (middle.0, middle.1 + 4.0))
        }
    }
}

/// Where a pin's name stands: away from the lines.
fn beside(shape: PinShape, pin: Pin) -> ((f64, f64), Anchor) {
    let (x, y) = place(shape, pin);
    let right = ((x + 24.0, y + 5.0), Anchor::Start);
    let above = ((x, y - 22.0), Anchor::Middle);
    let below = ((x, y + 32.0), Anchor::Middle);
    match (shape, pin) {
        (PinShape::Column, _)
        | (PinShape::PointUp, Pin::One)
        | (PinShape::PointDown, Pin::Three) => right,
        (PinShape::PointDown, _) | (PinShape::PointRight | PinShape::PointLeft, Pin::One) => above,
        _ => below,
    }
}

fn curve(from: (f64, f64), to: (f64, f64), out: (f64, f64)) -> String {
    format!(
        "M{:.1} {:.1}C{:.1} {:.1} {:.1} {:.1} {:.1} {:.1}",
        from.0,
        from.1,
        from.0 + out.0,
        from.1 + out.1,
        to.0 + out.0,
        to.1 + out.1,
        to.0,
        to.1
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use diagnosis::Choice;

    #[test]
    fn every_pin_stands_inside_with_room_for_its_name_and_apart_from_the_others() {
        for &shape in PinShape::ALL {
            let places = Pin::ALL.map(|pin| place(shape, pin));
            for (x, y) in places {
                assert!(x > RADIUS + 30.0 && x < WIDTH - RADIUS - 30.0, "{shape:?}");
                assert!(y > RADIUS && y < HEIGHT - 36.0, "{shape:?}");
            }
            for (one, other) in [(0, 1), (0, 2), (1, 2)] {
                let (a, b): ((f64, f64), (f64, f64)) = (places[one], places[other]);
                let apart = (a.0 - b.0).abs().max((a.1 - b.1).abs());
                assert!(apart > 3.0 * RADIUS, "{shape:?}: {apart}");
            }
        }
    }

    /// A word's box: from the left and right, down to its foot. Letters of 12 are 7 wide at most.
    fn box_of((x, foot): (f64, f64), anchor: Anchor, letters: f64) -> [f64; 4] {
        let wide = letters * 7.0;
        let left = match anchor {
            Anchor::Start => x,
            Anchor::Middle => x - wide / 2.0,
            Anchor::End => x - wide,
        };
        [left, left + wide, foot - 11.0, foot + 3.0]
    }

    #[test]
    fn no_name_lies_on_a_reading_or_outside() {
        for &shape in PinShape::ALL {
            for pin in Pin::ALL {
                let (at, anchor) = beside(shape, pin);
                // "common, surely"
                let name = box_of(at, anchor, 14.0);
                assert!(name[0] >= 0.0 && name[1] <= WIDTH, "{shape:?} {pin:?}");
                assert!(name[2] >= 0.0 && name[3] <= HEIGHT, "{shape:?} {pin:?}");
                for pair in Pair::ALL {
                    let value = box_of(lead(shape, pair).1, Anchor::Middle, 6.0);
                    let apart = name[1] <= value[0]
                        || value[1] <= name[0]
                        || name[3] <= value[2]
                        || value[3] <= name[2];
                    assert!(apart, "{shape:?} {pin:?} {pair:?}: {name:?} {value:?}");
                }
            }
        }
    }
}

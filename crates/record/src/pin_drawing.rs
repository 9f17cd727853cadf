//! The three pins as they lie, each with its number and its name.

use diagnosis::PinShape;
use measure::windings::{Label, Pair, Pin};

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
        let [from, to] = pair.pins().map(|pin| place(shape, pin));
        let outer = matches!(shape, PinShape::Row | PinShape::Column) && pair == Pair::OneThree;
        // In a line of three the outer pair goes round the middle pin.
        let (path, words) = match (shape, outer) {
            (PinShape::Row, true) => (curve(from, to, (0.0, -70.0)), ((from.0 + to.0) / 2.0, 34.0)),
            (_, true) => (curve(from, to, (-90.0, 0.0)), (70.0, from.1 + 64.0)),
            _ => (
                format!("M{:.1} {:.1}L{:.1} {:.1}", from.0, from.1, to.0, to.1),
                ((from.0 + to.0) / 2.0, (from.1 + to.1) / 2.0 - 5.0),
            ),
        };
        drawing.path("rec-lead", &path);
        drawing.words("rec-words rec-value", words, Anchor::Middle, reading);
    }
    for (pin, label) in Pin::ALL.into_iter().zip(labels) {
        let (x, y) = place(shape, pin);
        drawing.path("rec-pin", &disc(x, y));
        drawing.words(
            "rec-words rec-number",
            (x, y + 5.0),
            Anchor::Middle,
            &pin.number().to_string(),
        );
        let beside = match shape {
            PinShape::Column => ((x + 24.0, y + 5.0), Anchor::Start),
            _ => ((x, y + 32.0), Anchor::Middle),
        };
        let named = wording::label(label);
        drawing.words("rec-words rec-name", beside.0, beside.1, named);
    }
    drawing
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

fn disc(x: f64, y: f64) -> String {
    let wide = 2.0 * RADIUS;
    format!(
        "M{:.1} {y:.1}a{RADIUS} {RADIUS} 0 1 0 {wide} 0a{RADIUS} {RADIUS} 0 1 0 -{wide} 0z",
        x - RADIUS
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
}

//! Where the pins, the lines between them and their words stand in the picture.
//!
//! Places are percent of the picture's box, so that the picture stretches with the screen while
//! its words keep the size that the reader chose.

use diagnosis::PinShape;
use measure::windings::{Pair, Pin};

/// A place, in percent of the box from its top left corner.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Place {
    /// To the right.
    pub x: f64,
    /// Down.
    pub y: f64,
}

/// On which side of its pin a label stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// Over it.
    Above,
    /// Under it.
    Below,
    /// To its right.
    Right,
}

/// Where one pin stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PinPlace {
    /// Its middle.
    pub at: Place,
    /// Where its label goes.
    pub label: Side,
}

/// Where one line runs.
#[derive(Debug, Clone, PartialEq)]
pub struct Course {
    /// The line as an SVG path in a box of 100 by 100.
    pub path: String,
    /// The middle of its words.
    pub words: Place,
}

impl Side {
    /// Its name in the style sheet.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Above => "above",
            Self::Below => "below",
            Self::Right => "right",
        }
    }
}

/// Where a pin stands. Pin 1 is the first from the top, then clockwise; in a line the first.
#[must_use]
pub const fn pin_place(shape: PinShape, pin: Pin) -> PinPlace {
    let (x, y, label) = match (shape, pin) {
        (PinShape::PointUp, Pin::One) => (50.0, 17.0, Side::Right),
        (PinShape::PointUp, Pin::Two) => (80.0, 70.0, Side::Below),
        (PinShape::PointUp, Pin::Three) => (20.0, 70.0, Side::Below),
        (PinShape::PointDown, Pin::One) => (20.0, 30.0, Side::Above),
        (PinShape::PointDown, Pin::Two) => (80.0, 30.0, Side::Above),
        (PinShape::PointDown, Pin::Three) => (50.0, 83.0, Side::Right),
        (PinShape::PointRight, Pin::One) => (26.0, 26.0, Side::Above),
        (PinShape::PointRight, Pin::Two) => (82.0, 50.0, Side::Below),
        (PinShape::PointRight, Pin::Three) => (26.0, 74.0, Side::Below),
        (PinShape::PointLeft, Pin::One) => (74.0, 26.0, Side::Above),
        (PinShape::PointLeft, Pin::Two) => (74.0, 74.0, Side::Below),
        (PinShape::PointLeft, Pin::Three) => (18.0, 50.0, Side::Below),
        (PinShape::Row, Pin::One) => (17.0, 66.0, Side::Below),
        (PinShape::Row, Pin::Two) => (50.0, 66.0, Side::Below),
        (PinShape::Row, Pin::Three) => (83.0, 66.0, Side::Below),
        (PinShape::Column, Pin::One) => (50.0, 15.0, Side::Right),
        (PinShape::Column, Pin::Two) => (50.0, 50.0, Side::Right),
        (PinShape::Column, Pin::Three) => (50.0, 85.0, Side::Right),
    };
    PinPlace {
        at: Place { x, y },
        label,
    }
}

/// Where the line between two pins runs. In a line of three the outer pair goes round the
/// middle pin.
#[must_use]
pub fn course(shape: PinShape, pair: Pair) -> Course {
    let [from, to] = pair.pins().map(|pin| pin_place(shape, pin).at);
    let middle = Place {
        x: (from.x + to.x) / 2.0,
        y: (from.y + to.y) / 2.0,
    };
    let start = format!("M{} {}", from.x, from.y);
    match (shape, pair) {
        (PinShape::Row, Pair::OneThree) => Course {
            path: format!("{start}C{} 2 {} 2 {} {}", from.x, to.x, to.x, to.y),
            words: Place { x: 50.0, y: 18.0 },
        },
        (PinShape::Column, Pair::OneThree) => Course {
            path: format!("{start}C6 {} 6 {} {} {}", from.y, to.y, to.x, to.y),
            words: Place { x: 21.0, y: 50.0 },
        },
        // Above the line, and a little outwards: side by side they need all of the width.
        (PinShape::Row, _) => straight(
            start,
            to,
            Place {
                x: if middle.x < 50.0 { 29.0 } else { 71.0 },
                y: 49.0,
            },
        ),
        (PinShape::Column, _) => straight(
            start,
            to,
            Place {
                x: 66.0,
                y: middle.y,
            },
        ),
        // Away from the label of the pin to which both lines lead.
        (PinShape::PointRight, Pair::OneTwo | Pair::TwoThree) => {
            straight(start, to, Place { x: 49.0, ..middle })
        }
        (PinShape::PointLeft, Pair::OneThree | Pair::TwoThree) => {
            straight(start, to, Place { x: 51.0, ..middle })
        }
        _ => straight(start, to, middle),
    }
}

fn straight(start: String, to: Place, words: Place) -> Course {
    Course {
        path: format!("{start}L{} {}", to.x, to.y),
        words,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use diagnosis::Choice;

    /// The box on the smallest phone that is supported: all of 320 px wide, 208 high.
    const BOX: Place = Place { x: 320.0, y: 208.0 };
    /// The smallest target for a thumb, in CSS pixels.
    const TARGET: f64 = 48.0;

    fn pixels(place: Place) -> Place {
        Place {
            x: place.x / 100.0 * BOX.x,
            y: place.y / 100.0 * BOX.y,
        }
    }

    fn places(shape: PinShape) -> [Place; 3] {
        Pin::ALL.map(|pin| pin_place(shape, pin).at)
    }

    #[test]
    fn no_two_targets_overlap_on_the_smallest_phone() {
        for &shape in PinShape::ALL {
            let words = Pair::ALL.map(|pair| pixels(course(shape, pair).words));
            for (one, other) in [(0, 1), (0, 2), (1, 2)] {
                let (one, other) = (words[one], words[other]);
                let apart = (one.x - other.x).abs().max((one.y - other.y).abs());
                assert!(apart >= TARGET, "{shape:?}: {apart}");
            }
        }
    }

    #[test]
    fn triangles_are_numbered_clockwise_from_the_top() {
        for &shape in PinShape::ALL.iter().filter(|shape| shape.is_triangle()) {
            let [one, two, three] = places(shape);
            // With y downwards a positive cross product is a turn to the right.
            let turn = (two.x - one.x) * (three.y - two.y) - (two.y - one.y) * (three.x - two.x);
            assert!(turn > 0.0, "{shape:?}");
            assert!(one.y <= two.y && one.y <= three.y, "{shape:?}");
        }
    }

    #[test]
    fn lines_of_three_are_numbered_from_the_left_and_from_the_top() {
        let [one, two, three] = places(PinShape::Row);
        assert!(one.x < two.x && two.x < three.x);
        let [one, two, three] = places(PinShape::Column);
        assert!(one.y < two.y && two.y < three.y);
    }

    #[test]
    fn the_outer_pair_of_a_line_goes_round_the_middle_pin() {
        for shape in [PinShape::Row, PinShape::Column] {
            assert!(course(shape, Pair::OneThree).path.contains('C'));
            assert!(course(shape, Pair::OneTwo).path.contains('L'));
        }
    }

    #[test]
    fn everything_stands_inside_the_box_with_room_for_a_pin_around_it() {
        for &shape in PinShape::ALL {
            for place in places(shape) {
                assert!((12.0..=88.0).contains(&place.x), "{shape:?}");
                assert!((12.0..=88.0).contains(&place.y), "{shape:?}");
            }
        }
    }
}

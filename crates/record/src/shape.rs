//! Shapes that stand in more than one drawing, so that the same thing looks the same in all of them.

use diagnosis::LinkState;

/// A disc, or a ring where it isn't filled, as commands of a path.
///
/// ```
/// assert_eq!(
///     record::shape::disc((10.0, 5.0), 2.5),
///     "M7.5 5.0a2.5 2.5 0 1 0 5 0a2.5 2.5 0 1 0 -5 0z"
/// );
/// ```
#[must_use]
pub fn disc((x, y): (f64, f64), radius: f64) -> String {
    let (left, wide) = (x - radius, 2.0 * radius);
    format!("M{left:.1} {y:.1}a{radius} {radius} 0 1 0 {wide} 0a{radius} {radius} 0 1 0 -{wide} 0z")
}

/// One shape a state of a link, so that none needs a colour, round the middle of a box of 24 by 24. Where
/// it holds the ring is filled.
#[must_use]
pub const fn link_mark(state: LinkState) -> &'static str {
    match state {
        LinkState::Unknown | LinkState::Holds(_) => "M12 6a6 6 0 1 1-.01 0z",
        LinkState::SoundSoFar(_) => "M12 6a6 6 0 1 1-.01 0zM8.5 12l2.5 2.5 4.5-5",
        LinkState::Doubtful(_) => "M12 4l8 8-8 8-8-8zM12 8v5M12 15.5v.2",
        LinkState::Broken(_) => "M6 6l12 12M18 6L6 18",
    }
}

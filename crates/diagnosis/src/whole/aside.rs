//! What an answer says of a fault far from what its clue hangs on.
//!
//! Kept out of the tables, where a parent far away would tie distant parts of the machine to each
//! other and make the network many times larger.

use super::clue::Clue;
use super::fault::Fault::{self, *};

/// What an answer says of a fault far from what the clue hangs on, as a factor on its odds; of
/// nothing being wrong where there is no fault.
pub(super) fn aside(clue: Clue, answer: usize) -> Option<(Option<Fault>, f64)> {
    Some(match (clue, clue.answers().get(answer).copied()?) {
        (Clue::RoomTemperature, "hot") => (Some(TooMuchAsked), 6.0),
        (Clue::RoomTemperature, "usual") => (Some(TooMuchAsked), 0.6),
        (Clue::FlashCode, "no-command") => (Some(BoardDoesNotCall), 12.0),
        (Clue::DefrostParts, "leaks") => (Some(AnotherPartLeaks), 20.0),
        (Clue::DefrostParts, "all-good") => (Some(AnotherPartLeaks), 0.5),
        (Clue::Temperatures, "freezer-warm-rest-fine") => (Some(RoomTooCold), 15.0),
        (Clue::ModesCleared, "starts") => (Some(RoomTooCold), 12.0),
        (Clue::ThawTrial, "cools-properly") => (None, 4.0),
        (Clue::PowerUp, "knocks") => (Some(ValvesWorn), 7.0),
        (Clue::EvaporatorFan, "none") => (Some(StuckInDefrost), 1.7),
        (Clue::Wet, "present") => (Some(BoardDoesNotCall), 2.0),
        (Clue::Lint, "matted") => (Some(RotorTight), 1.3),
        _ => return None,
    })
}

//! What an answer says of a fault far from what its clue hangs on.
//!
//! Kept out of the tables, where a parent far away would tie distant parts of the machine to each
//! other and make the network many times larger.

use super::clue::Clue;
use super::fault::Fault::*;
use super::history::Factor;

/// What an answer says of faults far from what the clue hangs on, as factors on their odds.
pub(super) fn aside(clue: Clue, answer: usize) -> &'static [Factor] {
    let answers = clue.answers();
    match (clue, answers.get(answer).copied().unwrap_or_default()) {
        (Clue::RoomTemperature, "hot") => &[(Some(TooMuchAsked), 6.0)],
        (Clue::RoomTemperature, "usual") => &[(Some(TooMuchAsked), 0.6)],
        (Clue::FlashCode, "no-command") => &[(Some(BoardDoesNotCall), 12.0)],
        (Clue::DefrostParts, "leaks") => &[(Some(AnotherPartLeaks), 20.0)],
        (Clue::DefrostParts, "all-good") => &[(Some(AnotherPartLeaks), 0.5)],
        // What never opens gets too cold in half a day, a hot one excepted.
        (Clue::Temperatures, "both-near-target") => &[(Some(ControlStaysOn), 0.4)],
        (Clue::Temperatures, "freezer-warm-rest-fine") => &[(Some(RoomTooCold), 15.0)],
        (Clue::Temperatures, "too-cold") => &[
            (Some(ControlStaysOn), 12.0),
            (Some(ThermistorOff), 3.0),
            (Some(DamperStuck), 1.5),
        ],
        (Clue::RunPattern, "all-the-time") => &[(Some(ControlStaysOn), 5.0)],
        (Clue::RunPattern, "on-and-off") => &[(Some(ControlStaysOn), 0.05)],
        (Clue::ModesCleared, "starts") => &[(Some(RoomTooCold), 12.0)],
        // A machine with nothing wrong cools after a thaw as before: 80, 15 and 5 of 100. Much that
        // is asked is often no longer asked by then, and a door was shut well: 55, 35 and 10.
        (Clue::ThawTrial, "cools-properly") => &[
            (None, 5.0),
            (Some(TooMuchAsked), 3.5),
            (Some(SealLeaks), 1.3),
        ],
        (Clue::ThawTrial, "cools-partly") => &[
            (None, 0.6),
            (Some(TooMuchAsked), 1.3),
            (Some(SealLeaks), 1.5),
        ],
        (Clue::ThawTrial, "no-change") => &[
            (None, 0.1),
            (Some(TooMuchAsked), 0.2),
            (Some(SealLeaks), 0.2),
        ],
        // A capillary passes no more for much heat: the last turns run dry (ASHRAE Handbook,
        // Refrigeration, capillary tubes; from memory). How often one sees it is judgement.
        (Clue::FrostPattern, "first-part-only") => {
            &[(Some(TooMuchAsked), 6.0), (Some(SealLeaks), 4.0)]
        }
        (Clue::PowerUp, "knocks") => &[(Some(ValvesWorn), 7.0)],
        (Clue::Noise, "fan-scrapes") => &[
            (Some(EvaporatorFanStopped), 3.0),
            (Some(CondenserFanStopped), 3.0),
        ],
        (Clue::Noise, "buzzes") => &[(Some(StartDeviceStaysIn), 1.5)],
        // A rotor that doesn't turn kills its start device more often than chance would.
        (Clue::StartDeviceOhms, "open") => &[(Some(RotorSeized), 2.2), (Some(RotorTight), 1.2)],
        (Clue::Wet, "present") => &[(Some(BoardDoesNotCall), 2.0)],
        (Clue::Lint, "matted") => &[(Some(RotorTight), 1.3)],
        _ => &[],
    }
}

//! What is felt, heard and read while the compressor runs.

use diagnosis::Clue;

use super::Lesson;

pub(super) fn lesson(clue: Clue) -> Option<Lesson> {
    watts_and_sounds(clue)
        .or_else(|| by_hand(clue))
        .or_else(|| cold_side(clue))
}

fn watts_and_sounds(clue: Clue) -> Option<Lesson> {
    Some(match clue {
        Clue::PowerLevel => Lesson {
            why: "Low watts: little is pumped. High watts: heat doesn't get away.",
            tools: "a plug-in power meter",
            steps: &[
                "Let it run for half an hour with the doors shut.",
                "Read the watts.",
                "Usual once it has settled: small chests 60 to 95, large ones 80 to 140, uprights \
                 75 to 140, frost-free 90 to 170. Inverters change all the time: leave it out.",
            ],
            mind: &[],
        },
        Clue::WattsTrend => Lesson {
            why: "How the watts move says more than how high they are.",
            tools: "a plug-in power meter, a watch",
            steps: &[
                "Start cold or after a rest, doors shut.",
                "Write down the watts every five minutes for half an hour.",
                "Sound: high at first, then slowly down. Say what yours did.",
            ],
            mind: &[],
        },
        Clue::Noise => Lesson {
            why: "Most noises are harmless, and each of the others has its own cause.",
            tools: "ears, and a hand",
            steps: &[
                "Listen at the back for some minutes while it runs.",
                "Press a hand on tubes and panels: a rattle that stops was only that.",
                "Open the freezer and press its switch: a scrape that stops or starts is the fan.",
                "Listen as it stops: one dull knock is usual.",
            ],
            mind: &["Hands away from fan blades, and from the hot tube at the compressor."],
        },
        Clue::Hiss => Lesson {
            why: "Gas that settles can be heard: steady for a sound one, none where none is left.",
            tools: "an ear",
            steps: &[
                "After twenty minutes of running, put an ear to the freezer's wall.",
                "Have the control turned to off, or wait until it stops.",
                "A hiss or gurgle should fade within one to six minutes.",
            ],
            mind: &[],
        },
        _ => return None,
    })
}

/// A number says more than a hand, and stands for it.
const OR_A_PROBE: &str = "Or bind a thermometer's probe to it, cover it, and enter what it shows under \
                          Does it get cold?, with the room: that stands for the hand.";

fn by_hand(clue: Clue) -> Option<Lesson> {
    Some(match clue {
        Clue::CondenserWarmth => Lesson {
            why: "Where the heat goes tells a lost charge from a condenser without air.",
            tools: "the back of a hand",
            steps: &[
                "Let it run for half an hour without a stop.",
                "Feel the grid behind from first to last tube; without one, the cabinet's sides.",
                "Evenly warm is good. Warm at the start and cool at the end, or cool all over, \
                 isn't.",
                OR_A_PROBE,
            ],
            mind: &["The first tube can be too hot to touch for long."],
        },
        Clue::Drier => Lesson {
            why: "A filter drier that is cold at its outlet is blocked, and hardly anything else.",
            tools: "the back of a hand",
            steps: &[
                "Find the thick piece of copper, a finger long, where the condenser ends and the \
                 hair-thin tube begins.",
                "After half an hour of running, feel its outlet and the first of the thin tube.",
                "A little warmer than the room is good. Cold, wet or frosted isn't.",
                OR_A_PROBE,
            ],
            mind: &["Don't bend the thin tube. Mind the fan and the hot tube beside it."],
        },
        Clue::SuctionLine => Lesson {
            why: "The tube that comes back should be cool; frost on it is liquid that found no heat.",
            tools: "the back of a hand",
            steps: &[
                "Find the thicker tube that comes out of the cabinet to the compressor.",
                "After half an hour of running, feel it where it comes out.",
                "Cool is good. Say if it is as the room, or frosted.",
                OR_A_PROBE,
            ],
            mind: &[],
        },
        Clue::CondenserFan => Lesson {
            why: "A fan that stands still there lets everything overheat.",
            tools: "eyes, a strip of paper",
            steps: &[
                "While the compressor runs, hold a strip of paper at the grille below.",
                "It should be blown or sucked strongly. No fan: say that there is none.",
            ],
            mind: &["Fingers and sleeves away from the blades."],
        },
        _ => return None,
    })
}

fn cold_side(clue: Clue) -> Option<Lesson> {
    Some(match clue {
        Clue::EvaporatorFan => Lesson {
            why: "Cold that isn't blown around stays at the coil.",
            tools: "a finger on the door's switch",
            steps: &[
                "Compressor running, not in defrost. Open the freezer.",
                "Hold the door's switch in for a minute.",
                "Feel for air at the slots. No slots and no fan: say that there is none.",
            ],
            mind: &["Fingers off the blades."],
        },
        Clue::FrostPattern => Lesson {
            why: "Where the frost lies is what a technician looks at first.",
            tools: "a screwdriver where there is a panel, a torch",
            steps: &[
                "Start without frost: thawed, or just moved.",
                "Let it run for two hours, doors shut.",
                "Unplug it, take the panel off where there is one, and look at once.",
                "Hard white frost from first to last is good. Frost on the first turns only, a wet \
                 film, or none, isn't.",
            ],
            mind: &[],
        },
        _ => return None,
    })
}

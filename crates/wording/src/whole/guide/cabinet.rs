//! What is looked at or felt about the cabinet.

use diagnosis::Clue;

use super::Lesson;

pub(super) fn lesson(clue: Clue) -> Option<Lesson> {
    looks(clue).or_else(|| doors(clue)).or_else(|| cold(clue))
}

fn looks(clue: Clue) -> Option<Lesson> {
    Some(match clue {
        Clue::Lint => Lesson {
            why: "A condenser under felt, or without room, is the cheapest fault there is.",
            tools: "a torch",
            steps: &[
                "Look behind it, and below behind the kick plate: a grid or a coil of thin tubes.",
                "Is it covered with lint? Is it a hand's width from the wall?",
                "Smooth walls and no grid: the walls are the condenser. Ask only whether they have \
                 air.",
            ],
            mind: &[],
        },
        Clue::Drain => Lesson {
            why: "A plugged drain lets ice grow from below until it stops the air.",
            tools: "a torch",
            steps: &[
                "Look for the drain hole: at the back of the fresh-food compartment, or below the \
                 evaporator.",
                "Look at the freezer's floor for a sheet of ice, and under the drawers for water.",
            ],
            mind: &[],
        },
        Clue::CoilIce => Lesson {
            why: "A coil under ice is no fault of the compressor.",
            tools: "a screwdriver where there is a panel, a torch",
            steps: &[
                "Frost thawed by hand: look at the plates or walls.",
                "Frost-free: empty the freezer and take off the panel at its back.",
                "Light white frost all over is good. A block that hides the fins isn't.",
            ],
            mind: &[],
        },
        Clue::RoomTemperature => Lesson {
            why: "Some controls stop in a cold room, and every machine struggles in a hot one.",
            tools: "a thermometer",
            steps: &[
                "Hang it beside the machine, off the floor and out of the sun.",
                "Read it after a quarter of an hour.",
            ],
            mind: &[],
        },
        _ => return None,
    })
}

fn doors(clue: Clue) -> Option<Lesson> {
    Some(match clue {
        Clue::Seal => Lesson {
            why: "A door that doesn't seal lets in warmth and damp all day.",
            tools: "a strip of paper",
            steps: &[
                "Shut the strip in the door and pull it out slowly: it should drag.",
                "Do the same every hand's width, all round, hinges too.",
                "Look for a gap that you can see through, and for a drawer that holds the door open.",
            ],
            mind: &[],
        },
        Clue::DoorLamp => Lesson {
            why: "A lamp that stays on heats the cabinet.",
            tools: "a phone that films",
            steps: &[
                "Stand the phone inside, filming, and shut the door for ten seconds.",
                "Look at the film: the lamp should go out as the door shuts.",
                "Without a phone: shut the door slowly and look through the last gap.",
            ],
            mind: &[],
        },
        Clue::DoorSwitch => Lesson {
            why: "One switch often serves the lamp and the fan: stuck, it warms or stops the air.",
            tools: "a finger",
            steps: &[
                "Find the switch that the door presses, while the compressor runs.",
                "Press it in: the lamp should go out.",
                "Keep it pressed and listen: where there is a fan, it should run within a minute.",
            ],
            mind: &[],
        },
        _ => return None,
    })
}

fn cold(clue: Clue) -> Option<Lesson> {
    Some(match clue {
        Clue::Temperatures => Lesson {
            why: "Which compartment is warm tells air and ice from the sealed system.",
            tools: "one or two thermometers, a glass of water each",
            steps: &[
                "Stand a thermometer in a glass of water in each compartment; in the freezer, \
                 between packages.",
                "Doors shut for half a day and more.",
                "Read both at once and enter them. A freezer should have −18 °C (0 °F) or so, fresh \
                 food 2 to 7 °C (36 to 45 °F).",
            ],
            mind: &[],
        },
        Clue::ThawTrial => Lesson {
            why: "What a full thaw cures is ice; what it doesn't is the sealed system.",
            tools: "towels, bowls of warm water, a day or two",
            steps: &[
                "Unplug it, empty it, open all doors, towels below.",
                "Wait until all ice is gone, behind the panel too: up to a day.",
                "Dry it, close it, and run it for a day or two.",
                "Say how it cools then. A cure lasts one to four weeks if the defrost stays broken.",
            ],
            mind: &["No blade, no heat gun, no hair dryer."],
        },
        Clue::RunPattern => Lesson {
            why: "Running on and off is how a sound one lives; the other ways each have their causes.",
            tools: "ears, or someone who lives with it",
            steps: &[
                "Ask, or listen every quarter of an hour over half a day, doors shut.",
                "Say whether it goes on and off, runs all the time, stops again within minutes, or \
                 never runs.",
                "An inverter machine may hum softly nearly all the time: that is how it is made.",
            ],
            mind: &[],
        },
        Clue::AirOutlet => Lesson {
            why: "Cold that is made and doesn't arrive is a damper's fault, or ice.",
            tools: "a strip of paper",
            steps: &[
                "Freezer cold, compressor running.",
                "Hold the fresh-food door's switch in.",
                "Hold the strip in front of the slots in the fresh-food compartment: it should move.",
            ],
            mind: &[],
        },
        _ => return None,
    })
}

//! What it does when it is plugged in, and how it starts.

use diagnosis::Clue;

use super::Lesson;

pub(super) fn lesson(clue: Clue) -> Option<Lesson> {
    supply(clue)
        .or_else(|| first_minutes(clue))
        .or_else(|| starts(clue))
}

fn supply(clue: Clue) -> Option<Lesson> {
    Some(match clue {
        Clue::OtherOutlet => Lesson {
            why: "A weak outlet or a thin cord looks just like a tired compressor.",
            tools: "another protected outlet on a circuit of its own",
            steps: &[
                "Unplug it and let it rest for half an hour.",
                "Plug it straight into the other outlet, which runs a kettle well; no extension.",
                "Say whether it does the same there, or runs as it should.",
            ],
            mind: &["Not if it tripped, and never an outlet without protection."],
        },
        Clue::TripPattern => Lesson {
            why: "When it trips says what leaks: the motor at once, a heater with the defrost.",
            tools: "someone's memory",
            steps: &[
                "Ask, or remember: at once, as the compressor starts, hours later, or now and then.",
                "Ask what else hangs on that outlet.",
            ],
            mind: &["Don't provoke another trip to find out."],
        },
        Clue::Lamp => Lesson {
            why: "A lamp that lights shows that current arrives, and no more than that.",
            tools: "eyes",
            steps: &[
                "Plug it in, open the door, look.",
                "Dark? Try the bulb elsewhere before it counts. No lamp: say that there is none.",
            ],
            mind: &[],
        },
        Clue::SaggingVolts => Lesson {
            why: "Below nine tenths of its volts a sound compressor may only hum.",
            tools: "a plug-in power meter that shows volts",
            steps: &[
                "Meter into the outlet, machine into the meter. Note the volts before it tries.",
                "Watch while it hums, and note the lowest.",
                "By how much of a hundred did they fall?",
            ],
            mind: &["Nothing is opened for this."],
        },
        _ => return None,
    })
}

fn first_minutes(clue: Clue) -> Option<Lesson> {
    Some(match clue {
        Clue::PowerUp => Lesson {
            why: "What is heard in the first quarter of an hour parts the faults better than anything.",
            tools: "ears",
            steps: &[
                "At rest for half an hour or more, control at coldest.",
                "Plug it in, a hand on its side, and stay for fifteen minutes: many wait before \
                 they start.",
                "Say what it does. Unplug it if it hums for more than half a minute.",
            ],
            mind: &[],
        },
        Clue::ClickInterval => Lesson {
            why: "A click within seconds is a motor that doesn't start; after minutes, one too hot.",
            tools: "a watch",
            steps: &[
                "Count from the start of the hum to the click.",
                "Two or three rounds are enough; then unplug it.",
            ],
            mind: &[
                "A hum of half a minute without a click: unplug it. Its protector trips late or \
                 not at all (judgement), and a motor that stands burns. One of the same rating \
                 first.",
            ],
        },
        Clue::PowerMeter => Lesson {
            why: "Watts tell silence from defrost, and a start that fails from one that lasts.",
            tools: "a plug-in power meter",
            steps: &[
                "Meter into the outlet, machine into the meter, control at coldest.",
                "Watch for a quarter of an hour. Bursts last seconds and are several times what it \
                 takes running.",
                "150 W and more without a sound from the compressor is a heater.",
            ],
            mind: &[],
        },
        Clue::ModesCleared => Lesson {
            why: "A holiday, showroom or lock mode, or a start delay, looks like a dead machine.",
            tools: "its manual, if there is one",
            steps: &[
                "Dial or display to coldest.",
                "End holiday, showroom, demonstration and lock modes: look for a key held for some \
                 seconds.",
                "Wait a quarter of an hour and listen.",
            ],
            mind: &[],
        },
        Clue::FlashCode => Lesson {
            why: "The machine may say itself whether it misses its motor, its command or a sensor.",
            tools: "its manual or the label inside",
            steps: &[
                "Look at the display and for a small lamp that flashes, from outside.",
                "Count the flashes between two pauses, three times.",
                "Look the code up, and say what kind it is.",
            ],
            mind: &["No meter and no finger on a board that runs."],
        },
        _ => return None,
    })
}

fn starts(clue: Clue) -> Option<Lesson> {
    Some(match clue {
        Clue::Restart => Lesson {
            why: "A sound one starts again within minutes; a tight one only after long rests.",
            tools: "a watch",
            steps: &[
                "Once it has run or hummed, unplug it.",
                "Plug it in after five minutes; if it hums, unplug it at once.",
                "Try again after half an hour, then after some hours. Say which rest it needs.",
            ],
            mind: &["One try of a few seconds each time."],
        },
        Clue::InstantRestart => Lesson {
            why: "Pressed gas should hold the motor: one that starts at once has pressed nothing.",
            tools: "a watch",
            steps: &[
                "Let it run for a quarter of an hour.",
                "Unplug it and plug it in again at once.",
                "Hums: as it should be. Unplug it, and let it rest for ten minutes.",
            ],
            mind: &["One try only."],
        },
        Clue::GoodDevice => Lesson {
            why: "One good start on a sound device clears the compressor; a hum on it doesn't yet \
                  condemn it.",
            tools: "a plain start device and protector of the right kind, known to be good",
            steps: &[
                "Unplug it. Take a photo, pull the old start device and protector off the pins.",
                "Fit the good ones on the same pins. Cover back on.",
                "At rest for half an hour, then plug it in and listen for ten seconds.",
                "Hums: unplug it at once.",
            ],
            mind: &[
                "The protector stays in the circuit, face away from the compressor. With gas \
                     that burns, or one that isn't known: only the maker's part or one declared \
                     for it.",
            ],
        },
        Clue::StartKit => Lesson {
            why: "It shows whether more torque turns the rotor. It doesn't say why that is needed.",
            tools: "a start kit for this size of compressor",
            steps: &[
                "A known-good plain device was tried before, and the machine has rested half an hour.",
                "Unplug it, wire the kit as its sheet says, cover back on.",
                "One try of a few seconds, then unplug it and take the kit off.",
            ],
            mind: &[
                "Never on gas that burns or isn't known, and never on an inverter's compressor. \
                     A test, no repair.",
            ],
        },
        _ => return None,
    })
}

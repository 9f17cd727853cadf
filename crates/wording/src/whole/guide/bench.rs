//! What is measured or turned by hand with the plug out.

use diagnosis::Clue;

use super::Lesson;

pub(super) fn lesson(clue: Clue) -> Option<Lesson> {
    control(clue).or_else(|| parts(clue)).or_else(|| fans(clue))
}

fn control(clue: Clue) -> Option<Lesson> {
    Some(match clue {
        Clue::Thermostat => Lesson {
            why: "Contacts that don't close in a warm cabinet are why a machine stays silent.",
            tools: "an ohmmeter on its lowest range",
            steps: &[
                "Let the cabinet be as warm as the room, and turn the dial to coldest.",
                "Take a photo of the wires, then pull one off the thermostat.",
                "Measure between the two terminals that switch the compressor.",
                "Next to nothing: closed. Over range: open. Tap it: a number that comes and goes \
                 is a worn contact.",
                "Put the wire back where it was.",
            ],
            mind: &[],
        },
        Clue::ThermostatCold => Lesson {
            why: "Contacts that never open keep the compressor running without end.",
            tools: "an ohmmeter on its lowest range",
            steps: &[
                "Pull one wire off the thermostat, as for the warm test.",
                "Turn the dial to off and measure: sound contacts read over range.",
                "No off on the dial? Measure in a freezer that has run for half a day, dial at \
                 warmest. Ice water isn't cold enough.",
                "Put the wire back where it was.",
            ],
            mind: &[],
        },
        Clue::Thermistor => Lesson {
            why: "A temperature sensor that reads wrong tells the board that it is cold enough.",
            tools: "an ohmmeter, a cup of ice water, a thermometer",
            steps: &[
                "Unplug the sensor's connector and look for damp or green pins.",
                "Put its tip into ice water for five minutes and measure.",
                "Measure again at room temperature.",
                "Compare with the maker's table. Within a tenth is good. A common type has about \
                 33 kΩ in ice water and 11 kΩ at 23 °C (73 °F), another about half of both.",
            ],
            mind: &[],
        },
        Clue::TimerByHand => Lesson {
            why: "It shows whether the machine is only stuck in its defrost.",
            tools: "a screwdriver for the timer's slot, or the maker's key presses",
            steps: &[
                "Find the slot in the timer's housing, from outside; or look up how the cooling \
                 test is started.",
                "Turn the slot slowly until it clicks, or start the test.",
                "Wait two minutes and listen for the compressor.",
            ],
            mind: &["Nothing that carries wires is opened for this."],
        },
        _ => return None,
    })
}

fn parts(clue: Clue) -> Option<Lesson> {
    Some(match clue {
        Clue::Capacitor => Lesson {
            why: "A capacitor that lost part of its microfarads, or all, keeps a motor from starting.",
            tools: "a meter that measures µF, a resistor of about 10 kΩ, a voltmeter",
            steps: &[
                "Discharge it through the resistor for five seconds and more, then prove that it \
                 has less than 50 V.",
                "Take a photo, pull its wires off, and look: swollen, leaking or burnt is dead.",
                "Enter what is printed on it in µF; of a range like 88–106, the middle.",
                "Measure its µF twice and enter what the meter shows.",
            ],
            mind: &[
                "Never with a screwdriver across its terminals. One that leaks oil from before \
                     1979 may hold PCB: don't touch it.",
                "A new one: the marking's µF, at least its volts, run for run and start for start \
                 (its class), made for alternating current: one with a plus and a minus bursts.",
            ],
        },
        Clue::DefrostParts => Lesson {
            why: "One open part among heater, thermostat and fuse, and the ice is never thawed.",
            tools: "an ohmmeter",
            steps: &[
                "Pull the connectors of the defrost heater, its thermostat and its fuse.",
                "Heater: it reads some tens or hundreds of ohms. Over range is open.",
                "Fuse: next to nothing at any temperature.",
                "Its thermostat: next to nothing below −12 °C (10 °F). Warm, an open one is as \
                 it should be: leave it out.",
                "Highest range, from the heater to bare metal: it should read over range.",
            ],
            mind: &["A heater that just ran burns the hand."],
        },
        Clue::PartByPart => Lesson {
            why: "It tells the compressor's leak, which ends it, from a heater's, which doesn't.",
            tools: "an ohmmeter on its highest range",
            steps: &[
                "Unplug the connectors of compressor, fans, heaters and lamp.",
                "Measure from each part's terminals to bare metal, one part after another.",
                "Over range is clear. Anything below 2 MΩ leaks: wipe it, dry it, measure again.",
                "Say whether the compressor leaks, another part, or none.",
            ],
            mind: &["It stays unplugged until the leak is found and mended."],
        },
        _ => return None,
    })
}

fn fans(clue: Clue) -> Option<Lesson> {
    Some(match clue {
        Clue::EvaporatorFanMotor => Lesson {
            why: "It tells a dead fan from one that is only frozen in, or not switched on.",
            tools: "a finger, and an ohmmeter",
            steps: &[
                "Turn the blade with a finger: it should spin on by itself for a moment.",
                "Look whether ice holds it.",
                "A motor with two wires: pull its connector and measure through it. Tens to some \
                 hundreds of ohms are usual.",
                "A motor with three wires or more can't be judged by ohms: say only how it turns.",
            ],
            mind: &[],
        },
        Clue::CondenserFanMotor => Lesson {
            why: "Without that fan the condenser overheats and the protector stops the compressor.",
            tools: "a finger, and an ohmmeter",
            steps: &[
                "Take off the cardboard at the back, below, and find the fan beside the compressor.",
                "Turn the blade with a finger: lint and dry bearings hold it.",
                "A motor with two wires: pull its connector and measure through it. Tens to some \
                 hundreds of ohms are usual.",
                "Three wires or more: say only how it turns. No fan at all: say that there is none.",
            ],
            mind: &["The tube from the compressor may be hot."],
        },
        _ => return None,
    })
}

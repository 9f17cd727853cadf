//! What each item of a check asks.

use diagnosis::Item;

/// An item ready to be asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ItemWords {
    /// The question, or what to measure.
    pub ask: &'static str,
    /// How, in one sentence.
    pub how: Option<&'static str>,
}

/// Says what an item asks.
#[must_use]
pub fn item(item: Item) -> ItemWords {
    ItemWords {
        ask: ask(item),
        how: how(item),
    }
}

fn ask(item: Item) -> &'static str {
    match item {
        Item::PlateMains => "Which mains does the plate name?",
        Item::Signs => "What do you see?",
        Item::EarthPin => "Does the plug have an earth pin?",
        Item::Tester => "What do you measure with?",
        Item::BladesToEarth => "Both flat pins of the plug to its earth pin",
        Item::BladesToMetal => "Both flat pins of the plug to bare metal",
        Item::EarthToMetal => "The plug's earth pin to bare metal",
        Item::BladeToBlade => "One flat pin of the plug to the other",
        Item::Stores => "What can hold a charge?",
        Item::CapacitorMarking => "What is printed on the capacitor?",
        Item::ChargeLeft => "Direct volts across it now",
        Item::PinOneToShell => "Pin 1 to the shell",
        Item::PinTwoToShell => "Pin 2 to the shell",
        Item::PinThreeToShell => "Pin 3 to the shell",
        Item::ProtectorKind => "Where is the overload protector?",
        Item::ProtectorWarmth => "Has it rested?",
        Item::ProtectorReading => "Ohms across the protector",
        Item::StartDeviceKind => "What kind of start device is it?",
        Item::StartDeviceLooks => "How does it look, and what when shaken?",
        Item::PtcMarking => "Ohms printed on it, if any",
        Item::PtcReading => "Ohms across it, cold",
        Item::RelayCoil => "Ohms across its coil",
        Item::RelayUpright => "Its contact, relay upright",
        Item::RelayInverted => "Its contact, relay upside down",
        Item::RelayContact => "Its contact, 1 to 2",
        Item::ColdWinding => "The winding when it was cold",
        Item::ColdTemperature => "The room's temperature then",
        Item::HotWinding => "The same winding now",
        Item::OutletProtection => "What protects the outlet?",
        Item::OutletWiring => "What does a plug-in tester show of the outlet?",
        Item::PowerSource => "What feeds the machine?",
        Item::CordLength => "How long is the cord?",
        Item::CordConductors => "What size is printed on the cord?",
        Item::IdleVolts => "Volts while the machine is off",
        Item::LowestVolts => "Lowest volts while it tries to start",
        Item::LowestCaught => "Was that surely the lowest?",
        Item::StartingAmps => "Amperes during that start",
        Item::EarlyWatts => "Watts five minutes after it started",
        Item::LateWatts => "Watts after half an hour of running",
        Item::RunningVolts => "Volts in the same minute",
        Item::RunningAmps => "Amperes in the same minute",
        Item::LabelOf => "Whose label can you read?",
        Item::LabelAmps => "Amperes on that label",
        Item::LabelWatts => "Watts taken, on that label, if any",
        Item::CapacitorKind => "What is it for, and how is it marked?",
        Item::CapacitorLeast => "The smaller number of its range",
        Item::CapacitorAmps => "Amperes through it while it works",
        Item::CapacitorVolts => "Alternating volts across it at that moment",
        Item::TripDevice => "What tripped?",
        Item::TripWhen => "When does it trip?",
        Item::TripCompany => "What else hangs on that device?",
        Item::LeakageCurrent => "The machine's leakage current",
        Item::LeakageOfOthers => "The leakage of everything else behind it, together",
    }
}

fn how(item: Item) -> Option<&'static str> {
    Some(match item {
        Item::Signs => "Tick all that you see. Nothing to tick is an answer too.",
        Item::BladesToEarth => {
            "Hold both flat pins together with one probe. Highest ohms range; control at coldest."
        }
        Item::BladesToMetal => "A screw head or a hinge, scratched bright. Highest ohms range.",
        Item::EarthToMetal => "Lowest range. An earth that reaches reads next to nothing.",
        Item::BladeToBlade => {
            "Lowest range, cabinet warm, dial at its coldest. Through closed contacts it shows the motor."
        }
        Item::CapacitorMarking => "In µF, for example 12 µF; of a range, the larger number.",
        Item::ChargeLeft => {
            "Wait ten minutes first. A capacitor: through a resistor of 10 kΩ or so, never with a \
             screwdriver. Meter on direct volts."
        }
        Item::PinOneToShell | Item::PinTwoToShell | Item::PinThreeToShell => {
            "Highest range. Bare metal of the shell, paint scratched off; pins wiped clean and dry."
        }
        Item::ProtectorReading => "Off the compressor, lowest range.",
        Item::PtcReading => "Off the pins and as cold as the room. It can be hot enough to burn.",
        Item::RelayUpright => "As it sat on the compressor: open is right.",
        Item::RelayInverted => "Turned over: the contact falls shut, closed is right.",
        Item::RelayContact => "At rest it is closed.",
        Item::RelayCoil => {
            "A current relay reads next to nothing, a potential relay some kilo-ohms."
        }
        Item::ColdWinding | Item::HotWinding => "The same pair, same meter, same leads.",
        Item::ProtectorKind => "It sits on the common pin, or in the wire to it.",
        Item::Tester => {
            "A multimeter tests at a few volts. An insulation tester only with every board \
             unplugged, and never with charge or gas in doubt."
        }
        _ => return powered(item),
    })
}

/// The same for what is measured on a live machine.
fn powered(item: Item) -> Option<&'static str> {
    Some(match item {
        Item::OutletProtection => {
            "Press its test button with the machine unplugged: it must trip. A strip with a \
             button of its own counts."
        }
        Item::OutletWiring => "With nothing else plugged in. Nobody opens the outlet for this.",
        Item::CordLength => "In metres, or in feet as 50 ft. One way, as it lies.",
        Item::IdleVolts => {
            "By a plug-in meter at the machine's own end of any cord, its compressor at rest."
        }
        Item::LowestVolts => {
            "The same meter at the same place, while it hums or starts. Unplug it after ten \
             seconds of hum."
        }
        Item::LowestCaught => "A plug-in meter shows a new number about once a second.",
        Item::StartingAmps => {
            "By the plug-in meter, or a clamp in a line splitter. A clamp round a whole cord reads \
             zero: what flows there flows back."
        }
        Item::EarlyWatts | Item::LateWatts => "By a plug-in meter, doors shut, control at coldest.",
        Item::RunningVolts => "With the last watts that you read.",
        Item::RunningAmps => {
            "By the plug-in meter, or a clamp in a line splitter; type m after milliamperes. A \
             clamp round a whole cord reads zero."
        }
        Item::LabelOf => {
            "The compressor's own says more: the machine's plate may count a defrost heater that \
             only works while the compressor rests."
        }
        Item::LabelWatts => "What it takes, not what it cools.",
        Item::CapacitorKind => {
            "Better than all that follows: unplug it, discharge the capacitor, take a lead off, \
             and use a meter's capacitance range."
        }
        Item::CapacitorLeast => "Of 88–108 µF, 88. The larger one is asked for next.",
        Item::CapacitorAmps => {
            "Clamp one of its own leads, set up with the plug out; then stand clear and plug in."
        }
        Item::CapacitorVolts => "Across its own terminals, not the line's volts.",
        Item::TripWhen => "Don't provoke another trip to find out.",
        Item::LeakageCurrent => {
            "A leakage clamp round live and neutral together, earth left out, in a line splitter. \
             In mA."
        }
        Item::LeakageOfOthers => "The same clamp, with this machine unplugged. In mA.",
        _ => return None,
    })
}

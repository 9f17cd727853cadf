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
        _ => return None,
    })
}

//! Cautions in words. They stand in front of everything else.

use diagnosis::{Caution, Level};

use crate::Words;

/// A caution ready to be shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CautionWords {
    /// "Stop" or "Take care".
    pub level: &'static str,
    /// What it is about, in a few words.
    pub heading: &'static str,
    /// What to do and what not.
    pub text: &'static str,
}

impl CautionWords {
    /// The whole caution as one line of text.
    #[must_use]
    pub fn line(&self) -> String {
        format!("{}: {}. {}", self.level, self.heading, self.text)
    }
}

/// Says a caution.
#[must_use]
pub fn caution(caution: Caution) -> CautionWords {
    let (heading, text) = match caution {
        Caution::TrippedProtection => (
            "it tripped the outlet, so its metal may be live",
            "Leave it unplugged. Don't try another outlet: the trip has told you something. \
             Nothing may be powered until the leak is found.",
        ),
        Caution::FlammableRefrigerant => (
            "the refrigerant burns",
            "Gas may have leaked inside. Doors open, fresh air, no flame, no spark, no lamp or \
             hair dryer near it. If you smell or suspect gas and it is plugged in, switch it off \
             at the breaker, not at the plug. The tubes stay closed: opening them is licensed work.",
        ),
        Caution::UnknownRefrigerant => (
            "the refrigerant isn't known",
            "Treat it as one that burns: doors open, fresh air, no flame, no spark, no lamp or \
             hair dryer near it. The tubes stay closed: opening them is licensed work.",
        ),
        Caution::StayUnplugged => (
            "leave it unplugged for now",
            "Nobody has measured yet whether its metal is live. Keep the plug where you can see it.",
        ),
        Caution::BeforeThePins => (
            "before you touch the pins",
            "Plug out. A start device just taken off can be hot enough to burn, and a capacitor \
             or an electronic board may hold a charge: wait ten minutes, don't touch bare \
             contacts. Take a photo of every wire before you pull it. A compressor's pin can \
             blow out under power: never power it with the cover off.",
        ),
        Caution::InverterPins => (
            "never mains or a start kit on these pins",
            "An electronic board drives this compressor. The board holds a dangerous charge for \
             minutes after unplugging: wait ten minutes and touch nothing on it.",
        ),
        Caution::DamagedWindings => (
            "don't power it to see what happens",
            "A damaged winding can burn, or blow a pin out of the shell.",
        ),
        Caution::LiveMetal => (
            "a conductor leaks to the metal you touch",
            "Leave it unplugged. If the compressor's pins leak with everything off them, wiped \
             clean and dry, it is never powered again. Else find the part that leaks: unplug each \
             and measure again.",
        ),
        Caution::LeakInDoubt => (
            "a conductor may leak to the metal you touch",
            "Leave it unplugged. Clean and dry what you measured, and repeat.",
        ),
        Caution::BrokenEarth => (
            "the earth pin doesn't reach the cabinet",
            "A fault can make the whole cabinet live. Mend cord or earth wire first, and measure \
             the compressor's pins to its shell.",
        ),
        Caution::NoEarthPin => (
            "no earth pin",
            "Its cabinet isn't earthed, so a fault can make it live. A tingle means unplug and \
             stop. Only on a protected outlet.",
        ),
        Caution::ShortedPlug => (
            "the plug's blades are shorted",
            "Plugged in it would trip the breaker at best. Find the short in cord or wiring first.",
        ),
        Caution::WrongMains => (
            "the plate names other mains than yours",
            "Don't plug it in here. A plug that fits proves nothing.",
        ),
        Caution::DamagedCord => (
            "cord or plug is damaged",
            "Replace it by one of the right rating, earth kept, before anything is powered.",
        ),
        Caution::BurntWiring => (
            "something has burnt",
            "Find what, and mend it, before anything is powered.",
        ),
        Caution::ChewedWiring => (
            "wires may be chewed",
            "Look along every wire before anything is powered. Gloves and mask; wet the droppings \
             first, never sweep them dry.",
        ),
        Caution::WetWiring => (
            "wiring is wet",
            "Let it dry for days, then measure to metal again, before anything is powered.",
        ),
        Caution::GasMayBeOut => (
            "gas that burns may have come out",
            "Doors open, fresh air, no flame, no spark, and no power: a thermostat's click is a \
             spark. If it is plugged in, switch it off at the breaker. Licensed work, or scrap.",
        ),
        Caution::InsulationTester => (
            "an insulation tester bites",
            "It puts hundreds of volts on what it touches. Every board unplugged first, no \
             capacitor in the circuit, no gas about, hands off while it measures.",
        ),
        Caution::ChargedCapacitor => (
            "the capacitor may hold a charge",
            "Discharge it through a resistor of 10 kΩ or so, five seconds and more, then prove it \
             below 50 V with a meter. Never with a screwdriver. One that leaks oil from before \
             1979 may hold PCB: don't touch it.",
        ),
        Caution::ChargedBoard => (
            "the board holds up to 340 V for minutes",
            "Unplugged, wait ten minutes, prove it below 50 V with a meter, then touch. No meter \
             on a board that runs.",
        ),
        Caution::NeverBridgeTheProtector => (
            "never bridge the protector to see whether it runs",
            "Without it a motor that doesn't turn burns. One of the same rating, or none.",
        ),
        Caution::UnprotectedOutlet => (
            "nothing disconnects this outlet when current goes astray",
            "Don't power the machine there. Take an outlet with ground-fault protection whose test \
             button works, or a plug-in device that has one.",
        ),
        Caution::DeadProtection => (
            "the outlet's protection doesn't answer to its test button",
            "It may not answer to a fault either. Don't power the machine there; have the device \
             replaced.",
        ),
        Caution::OutletWithoutEarth => (
            "the outlet has no earth",
            "A fault makes the whole cabinet live, and nothing carries it away. Another outlet, or \
             have the earth mended; a tingle means unplug and stop.",
        ),
        Caution::UnplugBeforeItBurns => (
            "it draws so much that its motor burns",
            "Unplug it now and let it cool. Not again before the start device has been looked at.",
        ),
        Caution::EnergisedCapacitor => (
            "a capacitor that works has mains and more on its terminals",
            "Not for lay users, and never with the cover off within reach. The same is told by a \
             meter's capacitance range: plug out, discharged, one lead off. Who measures it live \
             sets up with the plug out and touches nothing while it is in.",
        ),
    };
    let level: Level = caution.level();
    CautionWords {
        level: level.words(),
        heading,
        text,
    }
}

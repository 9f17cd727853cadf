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
    };
    let level: Level = caution.level();
    CautionWords {
        level: level.words(),
        heading,
        text,
    }
}

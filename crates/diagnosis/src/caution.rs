//! What to be careful of, and when to stop.

use crate::choice::choices;

choices! {
    /// Something that can hurt someone, or the machine.
    pub enum Caution {
        /// It tripped a protective device: it may be live. A trip is evidence.
        TrippedProtection = "tripped-protection",
        /// The refrigerant burns.
        FlammableRefrigerant = "flammable-refrigerant",
        /// Nobody could read which refrigerant it is: treated as one that burns.
        UnknownRefrigerant = "unknown-refrigerant",
        /// Nobody has measured yet whether its metal is live.
        StayUnplugged = "stay-unplugged",
        /// Before touching the pins: hot parts, stored charge, wires to be noted.
        BeforeThePins = "before-the-pins",
        /// An electronic board drives it: never mains or a start kit on these pins.
        InverterPins = "inverter-pins",
        /// Its windings are not whole: it must not be powered to see what happens.
        DamagedWindings = "damaged-windings",
    }
}

choices! {
    /// How much a caution weighs.
    pub enum Level {
        /// Nothing may be powered until this is cleared.
        Stop = "stop",
        /// Mind this.
        Care = "care",
    }
}

impl Caution {
    /// How much it weighs.
    #[must_use]
    pub const fn level(self) -> Level {
        match self {
            Self::TrippedProtection => Level::Stop,
            _ => Level::Care,
        }
    }
}

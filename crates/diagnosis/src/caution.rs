//! What to be careful of, and when to stop.

use crate::Check;
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
        /// A conductor leaks to metal that a hand can touch.
        LiveMetal = "live-metal",
        /// A conductor may leak to metal that a hand can touch.
        LeakInDoubt = "leak-in-doubt",
        /// The earth pin doesn't reach the cabinet.
        BrokenEarth = "broken-earth",
        /// There is no earth pin.
        NoEarthPin = "no-earth-pin",
        /// The plug's blades are shorted.
        ShortedPlug = "shorted-plug",
        /// The plate names other mains than there are here.
        WrongMains = "wrong-mains",
        /// Cord or plug is damaged.
        DamagedCord = "damaged-cord",
        /// Something has burnt.
        BurntWiring = "burnt-wiring",
        /// Wires may be chewed.
        ChewedWiring = "chewed-wiring",
        /// Wiring is wet.
        WetWiring = "wet-wiring",
        /// Gas that burns may have come out.
        GasMayBeOut = "gas-may-be-out",
        /// An insulation tester has dangers of its own.
        InsulationTester = "insulation-tester",
        /// A capacitor may hold a charge.
        ChargedCapacitor = "charged-capacitor",
        /// An inverter's board may hold a charge.
        ChargedBoard = "charged-board",
        /// The protector is never bridged to see whether it runs.
        NeverBridgeTheProtector = "never-bridge-the-protector",
        /// Nothing disconnects this outlet when current goes astray.
        UnprotectedOutlet = "unprotected-outlet",
        /// The outlet's protective device doesn't answer to its test button.
        DeadProtection = "dead-protection",
        /// The outlet has no earth.
        OutletWithoutEarth = "outlet-without-earth",
        /// It draws so much that its motor burns within minutes.
        UnplugBeforeItBurns = "unplug-before-it-burns",
        /// A capacitor that is measured while it works has mains and more on its terminals.
        EnergisedCapacitor = "energised-capacitor",
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
    /// The check that it follows from, where it is one alone.
    #[must_use]
    pub const fn check(self) -> Option<Check> {
        Some(match self {
            Self::TrippedProtection => Check::Machine,
            Self::FlammableRefrigerant | Self::UnknownRefrigerant => Check::Refrigerant,
            Self::WrongMains
            | Self::DamagedCord
            | Self::BurntWiring
            | Self::ChewedWiring
            | Self::WetWiring
            | Self::GasMayBeOut => Check::LookOver,
            Self::BrokenEarth | Self::NoEarthPin | Self::ShortedPlug | Self::InsulationTester => {
                Check::Ground
            }
            Self::ChargedCapacitor | Self::ChargedBoard => Check::StoredCharge,
            Self::BeforeThePins | Self::InverterPins | Self::DamagedWindings => Check::Windings,
            Self::NeverBridgeTheProtector => Check::Protector,
            Self::UnprotectedOutlet | Self::DeadProtection | Self::OutletWithoutEarth => {
                Check::Supply
            }
            Self::UnplugBeforeItBurns => Check::Running,
            Self::EnergisedCapacitor => Check::CapacitorInCircuit,
            Self::StayUnplugged | Self::LiveMetal | Self::LeakInDoubt => return None,
        })
    }

    /// How much it weighs.
    #[must_use]
    pub const fn level(self) -> Level {
        match self {
            Self::TrippedProtection
            | Self::LiveMetal
            | Self::LeakInDoubt
            | Self::BrokenEarth
            | Self::ShortedPlug
            | Self::WrongMains
            | Self::DamagedCord
            | Self::BurntWiring
            | Self::ChewedWiring
            | Self::WetWiring
            | Self::GasMayBeOut
            | Self::UnprotectedOutlet
            | Self::DeadProtection => Level::Stop,
            _ => Level::Care,
        }
    }
}

//! What the outlet and the way to the machine can be.

use measure::supply::Conductors;

use crate::choice::choices;

choices! {
    /// What disconnects the outlet when current goes astray.
    pub enum Protection answers "supply" / "outlet-protection" {
        /// A ground-fault or residual-current device that trips by its own button.
        TripsByItsButton = "trips-by-its-button",
        /// None.
        None = "none",
        /// There is one, and its button does nothing.
        ButtonDoesNothing = "button-does-nothing",
    }
}

choices! {
    /// What a plug-in tester shows of the outlet.
    pub enum OutletWiring answers "supply" / "outlet-wiring" {
        /// Earth is there and the poles are where they belong.
        Right = "right",
        /// No earth.
        EarthMissing = "earth-missing",
        /// Live and neutral are swapped.
        PolesSwapped = "poles-swapped",
        /// Nobody has looked.
        NotLooked = "not-looked",
    }
}

choices! {
    /// What feeds the machine.
    pub enum PowerSource answers "supply" / "power-source" {
        /// The outlet, with nothing in between.
        OutletAlone = "outlet-alone",
        /// An extension cord or a strip.
        ExtensionCord = "extension-cord",
        /// A small generator, or an inverter on a battery.
        Generator = "generator-or-inverter",
    }
}

choices! {
    /// The size of an extension cord's conductors, as printed on it.
    pub enum CordConductors answers "supply" / "cord-conductors" {
        /// 18 AWG.
        Awg18 = "18-awg",
        /// 16 AWG.
        Awg16 = "16-awg",
        /// 14 AWG.
        Awg14 = "14-awg",
        /// 12 AWG.
        Awg12 = "12-awg",
        /// 10 AWG.
        Awg10 = "10-awg",
        /// 0.5 mm².
        Square0_5 = "0-5-mm2",
        /// 0.75 mm².
        Square0_75 = "0-75-mm2",
        /// 1.0 mm².
        Square1_0 = "1-mm2",
        /// 1.5 mm².
        Square1_5 = "1-5-mm2",
        /// 2.5 mm².
        Square2_5 = "2-5-mm2",
    }
}

choices! {
    /// Why the lowest volts shown are the lowest there were.
    pub enum Caught answers "supply" / "lowest-caught" {
        /// It hummed for three seconds or more: a display that changes once a second shows it.
        HumLasted = "hum-lasted-three-seconds",
        /// The meter keeps the lowest by itself.
        MeterKeepsLowest = "meter-keeps-the-lowest",
        /// Neither: it may have been lower for a moment.
        Neither = "neither",
    }
}

impl From<CordConductors> for Conductors {
    fn from(choice: CordConductors) -> Self {
        match choice {
            CordConductors::Awg18 => Self::Awg18,
            CordConductors::Awg16 => Self::Awg16,
            CordConductors::Awg14 => Self::Awg14,
            CordConductors::Awg12 => Self::Awg12,
            CordConductors::Awg10 => Self::Awg10,
            CordConductors::Square0_5 => Self::Square0_5,
            CordConductors::Square0_75 => Self::Square0_75,
            CordConductors::Square1_0 => Self::Square1_0,
            CordConductors::Square1_5 => Self::Square1_5,
            CordConductors::Square2_5 => Self::Square2_5,
        }
    }
}

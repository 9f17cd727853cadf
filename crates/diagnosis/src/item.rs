//! What the checks ask, item by item, for a page that can ask any of them.

use job::{Answer, Job, Measured, Reading, Unit};
use quantity::{Amps, Celsius, Farads, Metres, Ohms, Typed, Volts, Watts};

use crate::checks::Check;
use crate::choice::choices;

choices! {
    /// One question of one check.
    pub enum Item {
        /// The mains that the plate names.
        PlateMains = "plate-mains",
        /// What was seen on looking the machine over.
        Signs = "signs",
        /// Whether the plug has an earth pin.
        EarthPin = "earth-pin",
        /// Ohmmeter or insulation tester.
        Tester = "tester",
        /// The plug's blades, joined, to its earth pin.
        BladesToEarth = "blades-to-earth",
        /// The plug's blades, joined, to the cabinet's bare metal.
        BladesToMetal = "blades-to-metal",
        /// The plug's earth pin to the cabinet's bare metal.
        EarthToMetal = "earth-to-metal",
        /// One blade of the plug to the other.
        BladeToBlade = "blade-to-blade",
        /// What can hold a charge.
        Stores = "stores",
        /// What is printed on the capacitor.
        CapacitorMarking = "capacitor-marking",
        /// Direct volts across it, after waiting or discharging.
        ChargeLeft = "charge-left",
        /// Pin 1 to the shell.
        PinOneToShell = "pin-1-to-shell",
        /// Pin 2 to the shell.
        PinTwoToShell = "pin-2-to-shell",
        /// Pin 3 to the shell.
        PinThreeToShell = "pin-3-to-shell",
        /// Whether the protector is a part of its own.
        ProtectorKind = "protector-kind",
        /// Whether it has rested.
        ProtectorWarmth = "protector-warmth",
        /// Ohms across it.
        ProtectorReading = "protector-reading",
        /// What kind of start device it is.
        StartDeviceKind = "start-device-kind",
        /// How it looks and sounds when shaken.
        StartDeviceLooks = "start-device-looks",
        /// The ohms printed on a PTC.
        PtcMarking = "ptc-marking",
        /// Ohms across a cold PTC.
        PtcReading = "ptc-reading",
        /// Ohms of the relay's coil.
        RelayCoil = "relay-coil",
        /// A current relay's contact with the relay upright.
        RelayUpright = "relay-upright",
        /// A current relay's contact with the relay upside down.
        RelayInverted = "relay-inverted",
        /// A potential relay's contact at rest.
        RelayContact = "relay-contact",
        /// A winding's ohms when it was as cold as the room.
        ColdWinding = "cold-winding",
        /// The room's temperature then.
        ColdTemperature = "cold-temperature",
        /// The same winding's ohms now.
        HotWinding = "hot-winding",
        /// What protects the outlet.
        OutletProtection = "outlet-protection",
        /// What a plug-in tester shows of the outlet's earth and poles.
        OutletWiring = "outlet-wiring",
        /// What feeds the machine.
        PowerSource = "power-source",
        /// The length of an extension cord.
        CordLength = "cord-length",
        /// The size of its conductors.
        CordConductors = "cord-conductors",
        /// Volts beside the machine's own plug while it is off.
        IdleVolts = "idle-volts",
        /// The lowest volts there during a start.
        LowestVolts = "lowest-volts",
        /// What makes that lowest reading one to be believed.
        LowestCaught = "lowest-caught",
        /// Amperes during the same start.
        StartingAmps = "starting-amps",
        /// Watts some minutes after it started.
        EarlyWatts = "watts-after-five-minutes",
        /// Watts after half an hour.
        LateWatts = "watts-after-half-an-hour",
        /// Volts in the same minute as the last watts.
        RunningVolts = "running-volts",
        /// Amperes in the same minute.
        RunningAmps = "running-amps",
        /// On whose label amperes and watts were read.
        LabelOf = "label-of",
        /// The amperes on that label.
        LabelAmps = "label-amps",
        /// The watts on that label.
        LabelWatts = "label-watts",
        /// What the capacitor is for, and how it is marked.
        CapacitorKind = "capacitor-kind",
        /// The smaller number of a marking that is a range.
        CapacitorLeast = "capacitor-marking-least",
        /// Amperes through it while it works.
        CapacitorAmps = "capacitor-amps",
        /// Alternating volts across it at that moment.
        CapacitorVolts = "capacitor-volts",
        /// What tripped.
        TripDevice = "trip-device",
        /// When it trips.
        TripWhen = "trip-when",
        /// What else hangs on the same device.
        TripCompany = "trip-company",
        /// The machine's leakage current, by a clamp round all its conductors but earth.
        LeakageCurrent = "leakage-current",
        /// The same of everything else behind the device, together.
        LeakageOfOthers = "leakage-of-others",
    }
}

impl Item {
    /// The check that asks it.
    #[must_use]
    pub const fn check(self) -> Check {
        match self {
            Self::PlateMains | Self::Signs => Check::LookOver,
            Self::EarthPin
            | Self::Tester
            | Self::BladesToEarth
            | Self::BladesToMetal
            | Self::EarthToMetal
            | Self::BladeToBlade => Check::Ground,
            Self::Stores | Self::CapacitorMarking | Self::ChargeLeft => Check::StoredCharge,
            Self::PinOneToShell | Self::PinTwoToShell | Self::PinThreeToShell => Check::Shell,
            Self::ProtectorKind | Self::ProtectorWarmth | Self::ProtectorReading => {
                Check::Protector
            }
            Self::StartDeviceKind
            | Self::StartDeviceLooks
            | Self::PtcMarking
            | Self::PtcReading
            | Self::RelayCoil
            | Self::RelayUpright
            | Self::RelayInverted
            | Self::RelayContact => Check::StartDevice,
            Self::ColdWinding | Self::ColdTemperature | Self::HotWinding => {
                Check::WindingTemperature
            }
            Self::OutletProtection
            | Self::OutletWiring
            | Self::PowerSource
            | Self::CordLength
            | Self::CordConductors
            | Self::IdleVolts
            | Self::LowestVolts
            | Self::LowestCaught
            | Self::StartingAmps => Check::Supply,
            Self::EarlyWatts
            | Self::LateWatts
            | Self::RunningVolts
            | Self::RunningAmps
            | Self::LabelOf
            | Self::LabelAmps
            | Self::LabelWatts => Check::Running,
            Self::CapacitorKind
            | Self::CapacitorLeast
            | Self::CapacitorAmps
            | Self::CapacitorVolts => Check::CapacitorInCircuit,
            Self::TripDevice
            | Self::TripWhen
            | Self::TripCompany
            | Self::LeakageCurrent
            | Self::LeakageOfOthers => Check::Leakage,
        }
    }

    /// The unit, where a number is asked for.
    #[must_use]
    pub const fn unit(self) -> Option<Unit> {
        match self {
            Self::BladesToEarth
            | Self::BladesToMetal
            | Self::EarthToMetal
            | Self::BladeToBlade
            | Self::PinOneToShell
            | Self::PinTwoToShell
            | Self::PinThreeToShell
            | Self::ProtectorReading
            | Self::PtcMarking
            | Self::PtcReading
            | Self::RelayCoil
            | Self::ColdWinding
            | Self::HotWinding => Some(Unit::Ohm),
            Self::ChargeLeft
            | Self::IdleVolts
            | Self::LowestVolts
            | Self::RunningVolts
            | Self::CapacitorVolts => Some(Unit::Volt),
            Self::CapacitorMarking | Self::CapacitorLeast => Some(Unit::Farad),
            Self::ColdTemperature => Some(Unit::Celsius),
            Self::StartingAmps
            | Self::RunningAmps
            | Self::LabelAmps
            | Self::CapacitorAmps
            | Self::LeakageCurrent
            | Self::LeakageOfOthers => Some(Unit::Ampere),
            Self::EarlyWatts | Self::LateWatts | Self::LabelWatts => Some(Unit::Watt),
            Self::CordLength => Some(Unit::Metre),
            _ => None,
        }
    }

    /// The reading that counts, where there is one.
    #[must_use]
    pub fn reading(self, job: &Job) -> Option<&Reading> {
        use crate::Choice;
        match job.answer(self.check().name(), self.name()) {
            Some(Answer::Reading(reading)) => Some(reading),
            _ => None,
        }
    }

    /// Whether anything was answered, "can't do this" included.
    #[must_use]
    pub fn is_answered(self, job: &Job) -> bool {
        use crate::Choice;
        job.answer(self.check().name(), self.name()).is_some()
    }

    pub(crate) fn ohms(self, job: &Job) -> Option<(Typed<Ohms>, &Reading)> {
        let reading = self.reading(job)?;
        match reading.measured {
            Measured::Ohms(typed) => Some((typed, reading)),
            _ => None,
        }
    }

    pub(crate) fn volts(self, job: &Job) -> Option<Typed<Volts>> {
        match self.reading(job)?.measured {
            Measured::Volts(typed) => Some(typed),
            _ => None,
        }
    }

    pub(crate) fn celsius(self, job: &Job) -> Option<Typed<Celsius>> {
        match self.reading(job)?.measured {
            Measured::Celsius(typed) => Some(typed),
            _ => None,
        }
    }

    pub(crate) fn farads(self, job: &Job) -> Option<Typed<Farads>> {
        match self.reading(job)?.measured {
            Measured::Farads(typed) => Some(typed),
            _ => None,
        }
    }
    pub(crate) fn amps(self, job: &Job) -> Option<Typed<Amps>> {
        match self.reading(job)?.measured {
            Measured::Amps(typed) => Some(typed),
            _ => None,
        }
    }

    pub(crate) fn watts(self, job: &Job) -> Option<Typed<Watts>> {
        match self.reading(job)?.measured {
            Measured::Watts(typed) => Some(typed),
            _ => None,
        }
    }

    pub(crate) fn metres(self, job: &Job) -> Option<Typed<Metres>> {
        match self.reading(job)?.measured {
            Measured::Metres(typed) => Some(typed),
            _ => None,
        }
    }
}

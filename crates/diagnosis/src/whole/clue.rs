//! What can be seen, heard, felt or read, one variable each, with the answers that it takes.

mod answers;

use super::build::Build;
use crate::Check;
use crate::choice::{Choice, choices};

choices! {
    /// One thing to observe. What the unplugged checks bring comes first.
    pub enum Clue {
        /// What it did when it was last plugged in, seen or heard by the person.
        OpeningSeen = "opening-seen",
        /// The same as the seller tells it.
        OpeningTold = "opening-told",
        /// Cord or plug damaged.
        CordDamaged = "cord-damaged",
        /// Something has burnt.
        Burnt = "burnt",
        /// Oil on a tube.
        OilStain = "oil-stain",
        /// A hole or nick in a tube or plate.
        Puncture = "puncture",
        /// Traces of earlier work on the sealed system.
        EarlierSealedWork = "earlier-sealed-work",
        /// Traces of rodents.
        Rodents = "rodents",
        /// A part is missing.
        MissingParts = "missing-parts",
        /// Wiring or boards are wet.
        Wet = "wet",
        /// From the plug's blades to earth and to metal.
        PlugInsulation = "plug-insulation",
        /// From blade to blade.
        BladeToBlade = "blade-to-blade",
        /// The three pairs of pins.
        Pins = "pins",
        /// From the pins to the shell.
        ShellInsulation = "shell-insulation",
        /// Ohms across the overload protector.
        Protector = "protector",
        /// How the start device looks and sounds when shaken.
        StartDeviceLooks = "start-device-looks",
        /// What the start device's ohms or contacts say.
        StartDeviceOhms = "start-device-ohms",
        /// How hot a winding got.
        WindingHeat = "winding-heat",
        /// Ohms of the thermostat's contacts, unplugged, in a warm cabinet, dial at coldest.
        Thermostat = "thermostat",
        /// The same contacts with the dial at off, or in the cold: they should open.
        ThermostatCold = "thermostat-cold",
        /// A sensor at two known temperatures.
        Thermistor = "thermistor",
        /// A capacitor, discharged, against its marking.
        Capacitor = "capacitor",
        /// Defrost heater, its thermostat cold, and its fuse, by ohms.
        DefrostParts = "defrost-parts",
        /// Each part unplugged in turn, ohms to earth.
        PartByPart = "part-by-part",
        /// The condenser looked at.
        Lint = "lint",
        /// A strip of paper all round the door.
        Seal = "seal",
        /// Whether the lamp goes out when the door shuts.
        DoorLamp = "door-lamp",
        /// The door's switch pressed by hand, while the machine runs.
        DoorSwitch = "door-switch",
        /// The evaporator's fan unplugged, turned by hand and measured.
        EvaporatorFanMotor = "evaporator-fan-motor",
        /// The condenser's fan unplugged, turned by hand and measured.
        CondenserFanMotor = "condenser-fan-motor",
        /// The drain hole and the floor below the evaporator.
        Drain = "drain",
        /// The evaporator looked at.
        CoilIce = "coil-ice",
        /// The room's temperature.
        RoomTemperature = "room-temperature",
        /// Plugged into another outlet that is known to be good and protected.
        OtherOutlet = "other-outlet",
        /// When it trips.
        TripPattern = "trip-pattern",
        /// How it runs over half a day.
        RunPattern = "run-pattern",
        /// The lamp when it is plugged in.
        Lamp = "lamp-at-power-up",
        /// What is heard in the first quarter of an hour after a rest.
        PowerUp = "power-up",
        /// What it sounds like while it runs, and as it stops.
        Noise = "noise",
        /// Seconds or minutes between hum and click.
        ClickInterval = "click-interval",
        /// A plug-in power meter for a quarter of an hour.
        PowerMeter = "power-meter",
        /// The watts of a running machine against what such a machine takes.
        PowerLevel = "power-level",
        /// How the watts change in half an hour.
        WattsTrend = "watts-trend",
        /// Control at coldest, modes cleared, a quarter of an hour waited.
        ModesCleared = "modes-cleared",
        /// The timer turned by hand, or the maker's own cooling test.
        TimerByHand = "timer-by-hand",
        /// What a display or a lamp flashes.
        FlashCode = "flash-code",
        /// The lowest volts at its plug while it tries to start.
        SaggingVolts = "sagging-volts",
        /// Air at the evaporator with the door switch held in.
        EvaporatorFan = "evaporator-fan-air",
        /// The condenser's fan while the compressor runs.
        CondenserFan = "condenser-fan-air",
        /// Air into the fresh-food compartment.
        AirOutlet = "air-outlet",
        /// Restarts after short and long rests.
        Restart = "restart",
        /// A restart at once after a quarter of an hour of running.
        InstantRestart = "instant-restart",
        /// A known-good plain start device in place of the old one.
        GoodDevice = "good-device",
        /// A capacitor start kit, rested, as a test only.
        StartKit = "start-kit",
        /// Condenser or cabinet sides by hand.
        CondenserWarmth = "condenser-warmth",
        /// The drier's outlet and the first of the capillary by hand.
        Drier = "drier",
        /// The suction line where it comes back.
        SuctionLine = "suction-line",
        /// What is heard at the evaporator when the compressor stops.
        Hiss = "hiss",
        /// Frost on the evaporator after two hours.
        FrostPattern = "frost-pattern",
        /// Both compartments after half a day and more.
        Temperatures = "temperatures",
        /// A full thaw, then a day or two of running.
        ThawTrial = "thaw-trial",
    }
}

impl Clue {
    /// The place of an answer.
    #[must_use]
    pub fn answer(self, name: &str) -> Option<usize> {
        self.answers().iter().position(|answer| *answer == name)
    }

    /// Whether a machine built so can show it.
    #[must_use]
    pub fn exists_in(self, build: Build) -> bool {
        match self {
            Self::EvaporatorFan
            | Self::EvaporatorFanMotor
            | Self::DoorSwitch
            | Self::AirOutlet
            | Self::DefrostParts
            | Self::TimerByHand => build != Build::ManualDefrost,
            Self::FlashCode => build == Build::Inverter,
            Self::Protector
            | Self::StartDeviceLooks
            | Self::StartDeviceOhms
            | Self::GoodDevice
            | Self::StartKit
            | Self::Capacitor
            | Self::Thermostat
            | Self::ThermostatCold
            // A board waits some minutes before it tries again, whatever the pressures are.
            | Self::InstantRestart
            | Self::BladeToBlade => build != Build::Inverter,
            _ => true,
        }
    }

    /// The check that brings it, where it is one of the unplugged ones; the others are checks of
    /// their own, by the clue's name.
    #[must_use]
    pub const fn check(self) -> Option<Check> {
        Some(match self {
            Self::OpeningSeen | Self::OpeningTold => Check::Machine,
            Self::CordDamaged
            | Self::Burnt
            | Self::OilStain
            | Self::Puncture
            | Self::EarlierSealedWork
            | Self::Rodents
            | Self::MissingParts
            | Self::Wet => Check::LookOver,
            Self::PlugInsulation | Self::BladeToBlade => Check::Ground,
            Self::Pins => Check::Windings,
            Self::ShellInsulation => Check::Shell,
            Self::Protector => Check::Protector,
            Self::StartDeviceLooks | Self::StartDeviceOhms => Check::StartDevice,
            Self::WindingHeat => Check::WindingTemperature,
            _ => return None,
        })
    }

    /// The task that brings it.
    #[must_use]
    pub fn task(self) -> Task {
        self.check().map_or(Task::Clue(self), Task::Check)
    }

    /// Whether it says something only of a machine whose compressor runs.
    #[must_use]
    pub const fn needs_running(self) -> bool {
        matches!(
            self,
            Self::PowerLevel
                | Self::Noise
                | Self::WattsTrend
                | Self::CondenserFan
                | Self::InstantRestart
                | Self::CondenserWarmth
                | Self::Drier
                | Self::SuctionLine
                | Self::Hiss
                | Self::FrostPattern
        )
    }
}

/// Something to do that brings clues.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Task {
    /// One of the unplugged checks.
    Check(Check),
    /// A check that asks for one clue.
    Clue(Clue),
    /// What is known of the machine's past.
    History,
}

impl Task {
    /// Its published name: the check's name in a job.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Check(check) => check.name(),
            Self::Clue(clue) => clue.name(),
            Self::History => HISTORY,
        }
    }

    /// The clues that it brings.
    pub fn clues(self) -> impl Iterator<Item = Clue> {
        Clue::ALL
            .iter()
            .copied()
            .filter(move |clue| clue.task() == self)
    }
}

/// The name of the check that asks for the machine's past, as any number of choices.
const HISTORY: &str = "history";

/// The item under which a job keeps the answer to a check that asks for one clue.
pub const ANSWER: &str = "answer";

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_those_that_a_job_can_keep_and_no_check_is_called_twice() {
        let mut names: Vec<&str> = Check::ALL.iter().map(|check| check.name()).collect();
        for clue in Clue::ALL {
            assert!(job::Name::new(clue.name()).is_ok(), "{clue:?}");
            for answer in clue.answers() {
                assert!(job::Name::new(answer).is_ok(), "{answer}");
            }
            if clue.check().is_none() {
                names.push(clue.name());
            }
        }
        names.push(HISTORY);
        let count = names.len();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), count);
    }
}

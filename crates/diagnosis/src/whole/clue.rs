//! What can be seen, heard, felt or read, one variable each, with the answers that it takes.

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
        /// The lamp when it is plugged in.
        Lamp = "lamp-at-power-up",
        /// What is heard in the first quarter of an hour after a rest.
        PowerUp = "power-up",
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
    /// The names of its answers, the one that a sound machine gives first.
    #[must_use]
    pub const fn answers(self) -> &'static [&'static str] {
        match self {
            Self::OpeningSeen | Self::OpeningTold => &[
                "runs-stays-warm",
                "silent",
                "hums-then-clicks",
                "trips-the-outlet",
            ],
            Self::CordDamaged
            | Self::Burnt
            | Self::OilStain
            | Self::Puncture
            | Self::EarlierSealedWork
            | Self::Rodents
            | Self::MissingParts
            | Self::Wet => &["absent", "present"],
            Self::PlugInsulation | Self::ShellInsulation => &["clear", "doubtful", "leaks"],
            Self::BladeToBlade => &["few-ohms", "open", "near-zero", "heater-only"],
            Self::Pins => &[
                "two-windings",
                "common-open",
                "one-open",
                "does-not-add-up",
                "three-equal",
                "missed",
            ],
            Self::Protector => &["closed", "open", "resistive"],
            Self::StartDeviceLooks => &["whole", "broken"],
            Self::StartDeviceOhms => &["as-it-should", "open", "near-zero", "drifted"],
            Self::WindingHeat => &["usual", "hot"],
            Self::Thermostat => &["closed", "open", "unsteady"],
            Self::Thermistor => &["on-its-curve", "off-its-curve", "open-or-shorted"],
            Self::Capacitor => &["within-marking", "low", "open-or-shorted"],
            Self::DefrostParts => &["all-good", "one-open", "leaks"],
            Self::PartByPart => &["none-leaks", "compressor-leaks", "another-leaks"],
            Self::Lint => &["clear", "matted"],
            Self::Seal => &["drags-all-round", "slides-somewhere", "stands-off"],
            Self::DoorLamp => &["goes-out", "stays-on"],
            Self::Drain => &["clear", "ice-or-plugged"],
            Self::CoilIce => &["clear", "iced"],
            Self::RoomTemperature => &["usual", "hot", "cold"],
            Self::OtherOutlet => &["same", "cured"],
            Self::TripPattern => &["at-once", "at-start", "hours-later", "irregular"],
            Self::Lamp => &["lit", "dark"],
            Self::PowerUp => &[
                "runs",
                "silent",
                "hums-then-clicks",
                "cuts-out",
                "knocks",
                "trips",
            ],
            Self::ClickInterval => &["no-click", "within-seconds", "after-minutes"],
            Self::PowerMeter => &[
                "runs",
                "nothing",
                "standby",
                "bursts",
                "heater",
                "stops-by-itself",
                "trips",
            ],
            Self::PowerLevel => &["as-expected", "low", "high"],
            Self::WattsTrend => &[
                "falls-slowly",
                "low-and-flat",
                "falls-in-minutes",
                "high-and-rising",
                "high-and-steady",
            ],
            Self::ModesCleared => &["no-change", "starts"],
            Self::TimerByHand => &["no-change", "starts"],
            Self::FlashCode => &["none", "motor-or-drive", "no-command", "other"],
            Self::SaggingVolts => &["under-5-percent", "5-to-10-percent", "over-10-percent"],
            Self::EvaporatorFan => &["strong", "none", "weak"],
            Self::CondenserFan => &["blows", "slow-or-stopped"],
            Self::AirOutlet => &["blows", "little-or-none"],
            Self::Restart => &["within-minutes", "only-after-long-rest", "not-at-all"],
            Self::InstantRestart => &["hums", "starts"],
            Self::GoodDevice | Self::StartKit => &["starts", "hums", "silent"],
            Self::CondenserWarmth => &[
                "evenly-warm",
                "hot-all-over",
                "first-part-warm",
                "barely-warm",
                "room-temperature",
            ],
            Self::Drier => &["warmer-than-room", "room-temperature", "colder-than-room"],
            Self::SuctionLine => &["cool", "room-temperature", "frosted"],
            Self::Hiss => &["fades-in-minutes", "weak", "long-and-faint", "none"],
            Self::FrostPattern => &[
                "even",
                "first-part-only",
                "none",
                "block-of-ice",
                "wet-film",
                "patchy",
            ],
            Self::Temperatures => &[
                "both-near-target",
                "freezer-cold-rest-warm",
                "half-cold",
                "both-warm",
                "freezer-warm-rest-fine",
            ],
            Self::ThawTrial => &["cools-properly", "cools-partly", "no-change"],
        }
    }

    /// The place of an answer.
    #[must_use]
    pub fn answer(self, name: &str) -> Option<usize> {
        self.answers().iter().position(|answer| *answer == name)
    }

    /// Whether a machine built so can show it.
    #[must_use]
    pub fn exists_in(self, build: Build) -> bool {
        match self {
            Self::EvaporatorFan | Self::AirOutlet | Self::DefrostParts | Self::TimerByHand => {
                build != Build::ManualDefrost
            }
            Self::FlashCode => build == Build::Inverter,
            Self::Protector
            | Self::StartDeviceLooks
            | Self::StartDeviceOhms
            | Self::GoodDevice
            | Self::StartKit
            | Self::Capacitor
            | Self::Thermostat
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

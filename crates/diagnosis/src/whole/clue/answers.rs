//! The answers that each clue takes, by the names that a job keeps.

use super::Clue;

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
                "cuts-out",
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
            Self::ThermostatCold => &["opens", "stays-closed"],
            Self::Thermistor => &["on-its-curve", "off-its-curve", "open-or-shorted"],
            Self::Capacitor => &["within-marking", "low", "open-or-shorted"],
            Self::DefrostParts => &["all-good", "one-open", "leaks"],
            Self::PartByPart => &["none-leaks", "compressor-leaks", "another-leaks"],
            Self::Lint => &["clear", "matted"],
            Self::Seal => &["drags-all-round", "slides-somewhere", "stands-off"],
            Self::DoorLamp => &["goes-out", "stays-on"],
            Self::DoorSwitch => &["both-follow", "lamp-stays-on", "fan-stays-still"],
            Self::EvaporatorFanMotor | Self::CondenserFanMotor => {
                &["turns-and-reads", "stiff-or-blocked", "open"]
            }
            Self::Drain => &["clear", "ice-or-plugged"],
            Self::CoilIce => &["clear", "iced"],
            Self::RoomTemperature => &["usual", "hot", "cold"],
            Self::OtherOutlet => &["same", "cured"],
            Self::TripPattern => &["at-once", "at-start", "hours-later", "irregular"],
            Self::RunPattern => &["on-and-off", "all-the-time", "short-runs", "never"],
            Self::Lamp => &["lit", "dark"],
            Self::PowerUp => &[
                "runs",
                "silent",
                "hums-then-clicks",
                "cuts-out",
                "knocks",
                "trips",
            ],
            Self::Noise => &[
                "usual",
                "knocks-on-stopping",
                "rattles",
                "buzzes",
                "fan-scrapes",
                "knocks-while-running",
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
                "too-cold",
            ],
            Self::ThawTrial => &["cools-properly", "cools-partly", "no-change"],
        }
    }
}

//! What a reading is called where it is given as a reason.

use diagnosis::{Check, Clue, Task};

use crate::Words;

impl Words for Clue {
    fn words(self) -> &'static str {
        match self {
            Self::OpeningSeen => "What it did when plugged in",
            Self::OpeningTold => "What it is said to have done",
            Self::CordDamaged => "Cord or plug damaged",
            Self::Burnt => "Something burnt",
            Self::OilStain => "Oil on a tube",
            Self::Puncture => "A hole or nick in a tube or wall",
            Self::EarlierSealedWork => "Earlier work on the sealed system",
            Self::Rodents => "Traces of rodents",
            Self::MissingParts => "A missing part",
            Self::Wet => "Wet wiring",
            Self::PlugInsulation => "Plug to earth and metal",
            Self::BladeToBlade => "One flat pin of the plug to the other",
            Self::Pins => "The compressor's three pins",
            Self::ShellInsulation => "Pins to the shell",
            Self::Protector => "Overload protector",
            Self::StartDeviceLooks => "Looks of the start device",
            Self::StartDeviceOhms => "Ohms of the start device",
            Self::WindingHeat => "Winding temperature",
            Self::Thermostat => "Thermostat contacts",
            Self::ThermostatCold => "Thermostat contacts at off",
            Self::Thermistor => "Temperature sensor",
            Self::Capacitor => "Capacitor",
            Self::DefrostParts => "Defrost parts",
            Self::PartByPart => "Leak looked for part by part",
            Self::Lint => "Condenser surface",
            Self::Seal => "Door seal",
            Self::DoorLamp => "Lamp at the door switch",
            Self::DoorSwitch => "Door switch by hand",
            Self::EvaporatorFanMotor => "Evaporator fan's motor",
            Self::CondenserFanMotor => "Condenser fan's motor",
            Self::Drain => "Drain",
            Self::CoilIce => "Ice on the evaporator",
            Self::RoomTemperature => "Room temperature",
            Self::OtherOutlet => "Another outlet",
            Self::TripPattern => "When it trips",
            Self::RunPattern => "How it runs over half a day",
            Self::Lamp => "Lamp at plugging in",
            Self::PowerUp => "First quarter of an hour plugged in",
            Self::Noise => "Noises",
            Self::ClickInterval => "Time from hum to click",
            Self::PowerMeter => "Watts in the first quarter of an hour",
            Self::PowerLevel => "Watts against its kind",
            Self::WattsTrend => "Watts over half an hour",
            Self::ModesCleared => "Coldest setting with modes cleared",
            Self::TimerByHand => "Timer or cooling test",
            Self::FlashCode => "Flash code",
            Self::SaggingVolts => "Volts while it tries to start",
            Self::EvaporatorFan => "Evaporator fan",
            Self::CondenserFan => "Condenser fan",
            Self::AirOutlet => "Air into the fresh food",
            Self::Restart => "Restarts after rests",
            Self::InstantRestart => "Restart at once",
            Self::GoodDevice => "Known-good start device",
            Self::StartKit => "Start kit as a test",
            Self::CondenserWarmth => "Warmth of the condenser",
            Self::Drier => "Warmth of the filter drier",
            Self::SuctionLine => "Warmth of the suction line",
            Self::Hiss => "Hiss after it stops",
            Self::FrostPattern => "Frost on the evaporator",
            Self::Temperatures => "Compartment temperatures",
            Self::ThawTrial => "Full thaw and run",
        }
    }
}

/// What a task is called where all of them stand in a list.
#[must_use]
pub fn name(task: Task) -> &'static str {
    match task {
        Task::Check(check) => check.words(),
        other => reading(other),
    }
}

/// What a task's readings are called.
#[must_use]
pub fn reading(task: Task) -> &'static str {
    match task {
        Task::Check(Check::Machine) => "What it did",
        Task::Check(Check::Ground) => "Readings at the plug",
        Task::Check(Check::LookOver) => "What was seen on it",
        Task::Check(check) => check.words(),
        Task::Clue(clue) => clue.words(),
        Task::History => "What is known of its past",
    }
}

//! A checklist along the Path, as a book would print it: link by link, what is quick first
//! (judgement).

use diagnosis::{Check, Clue, Task};

/// What is done, in order. What isn't offered for a machine is passed over.
pub(crate) const ALONG_THE_PATH: &[Task] = &[
    // Supply.
    Task::Check(Check::LookOver),
    Task::Check(Check::Ground),
    Task::History,
    Task::Clue(Clue::Lamp),
    Task::Clue(Clue::PowerUp),
    Task::Clue(Clue::TripPattern),
    Task::Clue(Clue::OtherOutlet),
    // Call.
    Task::Clue(Clue::ModesCleared),
    Task::Clue(Clue::RoomTemperature),
    Task::Clue(Clue::FlashCode),
    Task::Clue(Clue::TimerByHand),
    Task::Clue(Clue::Thermostat),
    Task::Clue(Clue::Thermistor),
    // Circuit.
    Task::Check(Check::Protector),
    Task::Check(Check::Windings),
    Task::Check(Check::Shell),
    Task::Clue(Clue::PartByPart),
    // Start.
    Task::Check(Check::StartDevice),
    Task::Clue(Clue::Capacitor),
    Task::Clue(Clue::ClickInterval),
    Task::Clue(Clue::SaggingVolts),
    Task::Clue(Clue::Restart),
    Task::Clue(Clue::GoodDevice),
    Task::Clue(Clue::StartKit),
    // Run.
    Task::Clue(Clue::PowerMeter),
    Task::Clue(Clue::PowerLevel),
    Task::Clue(Clue::WattsTrend),
    Task::Check(Check::WindingTemperature),
    // Pump.
    Task::Clue(Clue::CondenserWarmth),
    Task::Clue(Clue::Drier),
    Task::Clue(Clue::SuctionLine),
    Task::Clue(Clue::Hiss),
    Task::Clue(Clue::InstantRestart),
    Task::Clue(Clue::FrostPattern),
    // Exchange.
    Task::Clue(Clue::Lint),
    Task::Clue(Clue::CondenserFan),
    Task::Clue(Clue::EvaporatorFan),
    Task::Clue(Clue::AirOutlet),
    Task::Clue(Clue::CoilIce),
    Task::Clue(Clue::Drain),
    Task::Clue(Clue::DefrostParts),
    Task::Clue(Clue::Seal),
    Task::Clue(Clue::DoorLamp),
    // Hold.
    Task::Clue(Clue::Temperatures),
    Task::Clue(Clue::ThawTrial),
];

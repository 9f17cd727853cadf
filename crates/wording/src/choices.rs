//! Words for each choice.

use diagnosis::{
    Check, Complaint, GearChoice, Kind, LeadsChoice, Level, Link, MainsChoice, PairChoice,
    PinChoice, PinShape, Power, Refrigerant, ToldBy, Tool,
};
use job::NotDone;
use measure::MeterKind;

/// Words for one of a fixed list.
pub trait Words {
    /// What it is called.
    fn words(self) -> &'static str;

    /// What helps to recognise it, where that needs saying.
    fn hint(self) -> Option<&'static str>
    where
        Self: Sized,
    {
        None
    }
}

impl Words for Kind {
    fn words(self) -> &'static str {
        match self {
            Self::ChestFreezer => "Chest freezer",
            Self::UprightFreezer => "Upright freezer",
            Self::FridgeFreezer => "Fridge-freezer",
            Self::Refrigerator => "Refrigerator",
        }
    }

    fn hint(self) -> Option<&'static str> {
        Some(match self {
            Self::ChestFreezer => "A lid on top",
            Self::UprightFreezer => "One door, all of it freezes",
            Self::FridgeFreezer => "A freezer compartment with a door of its own",
            Self::Refrigerator => "No freezer, or a small box inside",
        })
    }
}

impl Words for MainsChoice {
    fn words(self) -> &'static str {
        match self {
            Self::V120F60 => "120 V, 60 Hz",
            Self::V230F50 => "230 V, 50 Hz",
            Self::V220F60 => "220 V, 60 Hz",
            Self::V127F60 => "127 V, 60 Hz",
            Self::V100 => "100 V",
        }
    }

    fn hint(self) -> Option<&'static str> {
        match self {
            Self::V120F60 => Some("Outlets of 110 to 125 V"),
            Self::V230F50 => Some("Outlets of 220 to 240 V"),
            Self::V220F60 | Self::V127F60 => None,
            Self::V100 => Some("50 or 60 Hz"),
        }
    }
}

impl Words for Complaint {
    fn words(self) -> &'static str {
        match self {
            Self::NotPluggedIn => "Not plugged in yet",
            Self::Silent => "Silent",
            Self::HumsThenClicks => "Hums, then clicks, again and again",
            Self::RunsStaysWarm => "Runs, stays warm",
            Self::RunsThenStops => "Runs, then stops by itself",
            Self::OneSideWarm => "Freezer cold, fridge warm",
            Self::TooCold => "Gets too cold",
            Self::NeverStops => "Never stops running",
            Self::Noisy => "Runs, far too loud",
            Self::TripsTheOutlet => "Trips the outlet",
            Self::Unknown => "I don't know",
        }
    }
}

impl Words for ToldBy {
    fn words(self) -> &'static str {
        match self {
            Self::Myself => "I saw it myself",
            Self::Seller => "The seller says so",
        }
    }
}

impl Words for Refrigerant {
    fn words(self) -> &'static str {
        match self {
            Self::R600a => "R600a, isobutane",
            Self::R290 => "R290, propane",
            Self::R134a => "R134a",
            Self::R12 => "R12",
            Self::R22 => "R22",
            Self::OtherOrUnreadable => "Another, or I can't read it",
        }
    }

    fn hint(self) -> Option<&'static str> {
        match self {
            Self::R600a | Self::R290 => Some("It burns"),
            Self::OtherOrUnreadable => Some("Treated as one that burns"),
            Self::R134a | Self::R12 | Self::R22 => None,
        }
    }
}

impl Words for Check {
    fn words(self) -> &'static str {
        match self {
            Self::Machine => "The machine",
            Self::Refrigerant => "Refrigerant",
            Self::LookOver => "Look it over",
            Self::Ground => "Is the metal live?",
            Self::StoredCharge => "Stored charge",
            Self::Windings => "Windings",
            Self::Shell => "Pins to the shell",
            Self::Protector => "Overload protector",
            Self::StartDevice => "Start device",
            Self::WindingTemperature => "Winding temperature",
            Self::Supply => "Outlet and volts",
            Self::Running => "Watts and amperes",
            Self::CapacitorInCircuit => "Capacitor as it works",
            Self::Leakage => "Leakage and trips",
        }
    }

    fn hint(self) -> Option<&'static str> {
        Some(match self {
            Self::Machine => "What it is, its mains, and what it did",
            Self::Refrigerant => "What the plate says is inside",
            Self::LookOver => "Plate, cord, marks, missing parts",
            Self::Ground => "From the plug to earth and to bare metal, two minutes, unplugged",
            Self::StoredCharge => "Capacitor or board: proved below 50 V before it is touched",
            Self::Windings => "Ohms between the compressor's three pins",
            Self::Shell => "From each pin to the compressor's bare metal",
            Self::Protector => "Off the compressor, rested",
            Self::StartDevice => "Off the pins, cold",
            Self::WindingTemperature => "By ohms now and when it was cold",
            Self::Supply => "What protects the outlet, and how far its volts fall as it starts",
            Self::Running => "By a plug-in meter, after five minutes and after half an hour",
            Self::CapacitorInCircuit => {
                "Energised, not for lay users: better discharged, by a meter"
            }
            Self::Leakage => "By a leakage clamp, and what is known of its trips",
        })
    }
}

impl Words for Link {
    fn words(self) -> &'static str {
        match self {
            Self::Supply => "Supply",
            Self::Call => "Call",
            Self::Circuit => "Circuit",
            Self::Start => "Start",
            Self::Run => "Run",
            Self::Pump => "Pump",
            Self::Exchange => "Exchange",
            Self::Hold => "Hold",
        }
    }

    fn hint(self) -> Option<&'static str> {
        Some(match self {
            Self::Supply => "Enough voltage reaches the machine, under load too",
            Self::Call => "The control asks for cooling",
            Self::Circuit => "Current can reach sound windings and nothing else",
            Self::Start => "The rotor is turned from rest",
            Self::Run => "It keeps turning at a sane current",
            Self::Pump => "Refrigerant goes round",
            Self::Exchange => "Heat is let in and let out",
            Self::Hold => "The cabinet gets cold and stays cold",
        })
    }
}

impl Words for GearChoice {
    fn words(self) -> &'static str {
        match self {
            Self::Off => "The pins are bare",
            Self::StillOn => "Something is still on",
        }
    }
}

impl Words for LeadsChoice {
    fn words(self) -> &'static str {
        match self {
            Self::Zeroed => "They read zero",
            Self::NotZeroed => "They read a little",
            Self::Unknown => "I haven't looked",
        }
    }
}

impl Words for PinShape {
    fn words(self) -> &'static str {
        match self {
            Self::PointUp => "Point up",
            Self::PointRight => "Point to the right",
            Self::PointDown => "Point down",
            Self::PointLeft => "Point to the left",
            Self::Row => "Row",
            Self::Column => "Column",
        }
    }
}

impl Words for PinChoice {
    fn words(self) -> &'static str {
        match self {
            Self::One => "Pin 1",
            Self::Two => "Pin 2",
            Self::Three => "Pin 3",
            Self::NotNoted => "Not noted",
        }
    }
}

impl Words for PairChoice {
    fn words(self) -> &'static str {
        match self {
            Self::OneTwo => "Pins 1 and 2",
            Self::OneThree => "Pins 1 and 3",
            Self::TwoThree => "Pins 2 and 3",
            Self::NotNoted => "Not noted",
        }
    }
}

impl Words for Power {
    fn words(self) -> &'static str {
        match self {
            Self::Unplugged => "Plug out",
            Self::Protected => "Protected outlet, its test button tried",
        }
    }
}

impl Words for Tool {
    fn words(self) -> &'static str {
        match self {
            Self::Eyes => "just your eyes",
            Self::Multimeter => "multimeter",
            Self::Screwdriver => "screwdriver",
            Self::Camera => "phone camera",
            Self::PowerMeter => "plug-in power meter",
            Self::Clamp => "clamp with a line splitter",
        }
    }
}

impl Words for Level {
    fn words(self) -> &'static str {
        match self {
            Self::Stop => "Stop",
            Self::Care => "Take care",
        }
    }
}

impl Words for NotDone {
    fn words(self) -> &'static str {
        match self {
            Self::CannotReach => "I can't reach it",
            Self::NoTool => "I don't have the tool",
            Self::NotSafe => "It doesn't look safe",
            Self::NotSure => "I looked, but can't say",
        }
    }
}

impl Words for MeterKind {
    fn words(self) -> &'static str {
        match self {
            Self::Basic => "Ordinary meter",
            Self::Good => "Good meter",
        }
    }

    fn hint(self) -> Option<&'static str> {
        Some(match self {
            Self::Basic => "Within 1 % and 5 steps of its last digit",
            Self::Good => "Within 0.8 % and 2 steps of its last digit",
        })
    }
}

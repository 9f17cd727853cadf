//! Words for the answers that a clue takes, in the order of its answers.

use diagnosis::{Choice, Clue};

/// Words for each answer, in the order of [`Clue::answers`].
#[must_use]
pub const fn answers(clue: Clue) -> &'static [&'static str] {
    match clue {
        Clue::OpeningSeen | Clue::OpeningTold => &[
            "it runs and stays warm",
            "it is silent",
            "it hums, then clicks",
            "it trips the outlet",
            "it runs, then stops by itself",
        ],
        Clue::CordDamaged
        | Clue::Burnt
        | Clue::OilStain
        | Clue::Puncture
        | Clue::EarlierSealedWork
        | Clue::Rodents
        | Clue::MissingParts
        | Clue::Wet => &["not seen", "seen"],
        Clue::PlugInsulation | Clue::ShellInsulation => &["clear", "doubtful", "leaks"],
        Clue::BladeToBlade => &[
            "a few ohms, a motor",
            "over range",
            "next to nothing",
            "a heater or fans alone",
        ],
        Clue::Pins => &[
            "two windings that add up",
            "both ways through the common pin open",
            "one winding open",
            "the three don't add up",
            "three alike",
            "a reading missed its pin",
        ],
        Clue::Protector => &[
            "next to nothing",
            "over range",
            "some ohms, a burnt contact",
        ],
        Clue::StartDeviceLooks => &["whole", "cracked, burnt or rattling"],
        Clue::StartDeviceOhms => &[
            "as it should be",
            "over range",
            "next to nothing",
            "drifted",
        ],
        Clue::WindingHeat => &["as after running", "hotter than usual"],
        Clue::Thermostat => &[
            "next to nothing: closed",
            "over range: open",
            "comes and goes when tapped",
        ],
        Clue::ThermostatCold => &["they open", "they stay closed"],
        Clue::Thermistor => &[
            "within a tenth of its table",
            "further off than a tenth",
            "over range, or next to nothing",
        ],
        Clue::Capacitor => &[
            "about as marked",
            "well below its marking",
            "next to nothing, or no reading",
        ],
        Clue::DefrostParts => &["all sound", "one is open", "one leaks to metal"],
        Clue::PartByPart => &["none leaks", "the compressor leaks", "another part leaks"],
        Clue::Lint => &["clear, with air", "matted or boxed in"],
        Clue::Seal => &["drags all round", "slides out somewhere", "stands off"],
        Clue::DoorLamp => &["goes out", "stays on"],
        Clue::DoorSwitch => &[
            "lamp goes out, fan runs",
            "lamp stays on",
            "lamp goes out, fan stays still",
        ],
        Clue::EvaporatorFanMotor | Clue::CondenserFanMotor => &[
            "turns freely, and reads some ohms",
            "stiff, scraping or blocked",
            "turns freely, but reads over range",
        ],
        Clue::Drain => &["clear", "iced or plugged"],
        Clue::CoilIce => &["clear or lightly frosted", "a block of ice"],
        Clue::RoomTemperature => &[
            "usual",
            "hot, over 32 °C or 90 °F",
            "cold, under 10 °C or 50 °F",
        ],
        Clue::OtherOutlet => &["the same there", "cured there"],
        Clue::TripPattern => &[
            "at once",
            "as the compressor starts",
            "hours later",
            "without a pattern",
        ],
        Clue::RunPattern => &[
            "on for a while, off for a while",
            "on all the time",
            "off again within minutes, many times",
            "never on",
        ],
        Clue::Lamp => &["lit", "dark"],
        Clue::PowerUp => &[
            "it runs on",
            "silence",
            "hum, then click",
            "it runs, then cuts out",
            "it knocks",
            "it trips the outlet",
        ],
        Clue::Noise => &[
            "a steady hum, nothing else",
            "one knock as it stops",
            "a rattle that a hand on tube or panel stops",
            "a loud buzz",
            "a scrape or howl from a fan",
            "heavy knocks for as long as it runs",
        ],
        Clue::ClickInterval => &["no click", "within seconds", "after minutes"],
        Clue::PowerMeter => &[
            "steady, as when it runs",
            "nothing",
            "some watts, and no compressor",
            "bursts of some seconds",
            "a heater's watts",
            "it runs, then stops by itself",
            "it trips",
        ],
        Clue::PowerLevel => &["as expected", "low", "high"],
        Clue::WattsTrend => &[
            "falls slowly",
            "low and flat",
            "falls within minutes",
            "high and rising",
            "high and steady",
        ],
        Clue::ModesCleared | Clue::TimerByHand => &["no change", "it starts"],
        Clue::FlashCode => &[
            "no code",
            "a code for motor or drive",
            "a code for a missing command",
            "another code",
        ],
        Clue::SaggingVolts => &[
            "falls by less than 5 %",
            "falls by 5 to 10 %",
            "falls by more than 10 %",
        ],
        Clue::EvaporatorFan => &["blows strongly", "no air, no sound", "weak, or it scrapes"],
        Clue::CondenserFan => &["blows strongly", "slow or stopped"],
        Clue::AirOutlet => &["blows", "little or none"],
        Clue::Restart => &[
            "starts again within minutes",
            "only after a long rest",
            "not at all",
        ],
        Clue::InstantRestart => &["hums, as it should", "starts"],
        Clue::GoodDevice | Clue::StartKit => &["it starts", "it hums", "silence"],
        Clue::CondenserWarmth => &[
            "evenly warm",
            "hot all over",
            "first part warm, the rest cool",
            "barely warm",
            "as the room",
        ],
        Clue::Drier => &[
            "warmer than the room",
            "as the room",
            "colder than the room",
        ],
        Clue::SuctionLine => &["cool", "as the room", "frosted"],
        Clue::Hiss => &[
            "a hiss that fades within minutes",
            "weak, over in half a minute",
            "faint, for many minutes",
            "nothing to hear",
        ],
        Clue::FrostPattern => &[
            "hard and white from first to last",
            "on its first turns only",
            "none",
            "a block of ice or snow",
            "a thin wet film",
            "patchy, comes and goes",
        ],
        Clue::Temperatures => &[
            "both near target",
            "freezer cold, fresh food warm",
            "both cool, neither cold enough",
            "both warm",
            "freezer warm, fresh food fine",
            "colder than it is set to",
        ],
        Clue::ThawTrial => &["cools as it should", "cools partly", "no change"],
    }
}

/// An answer in words, by its name in a job.
pub(crate) fn answer(clue: Clue, name: &str) -> Option<&'static str> {
    answers(clue).get(clue.answer(name)?).copied()
}

// A clue with more answers than words, or fewer, does not compile.
const _: () = {
    let mut place = 0;
    while place < Clue::ALL.len() {
        let clue = Clue::ALL[place];
        assert!(answers(clue).len() == clue.answers().len());
        place += 1;
    }
};

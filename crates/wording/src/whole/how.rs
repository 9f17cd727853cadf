//! How a check is done, in one or two plain sentences.
//!
//! Figures of time are those that practice gives a machine to show something: common practice,
//! no source.

use diagnosis::{Check, Clue, Task};

pub(super) fn how(task: Task) -> &'static str {
    match task {
        Task::Check(check) => of_check(check),
        Task::Clue(clue) => of_clue(clue),
        Task::History => "Ask how it stood, how it stopped, and what was done to it.",
    }
}

fn of_check(check: Check) -> &'static str {
    match check {
        Check::Machine => "Say what it is, its mains, and what it did.",
        Check::Refrigerant => "Read on the plate what is inside.",
        Check::LookOver => "Look at cord, plug, tubes and wiring for damage and missing parts.",
        Check::Ground => "Highest ohms range, from the plug's flat pins to earth and bare metal.",
        Check::StoredCharge => "Wait ten minutes, then prove capacitor or board below 50 V.",
        Check::Windings => "Ohms between the compressor's three bare pins.",
        Check::Shell => "Highest ohms range, from each pin to bare metal of the shell.",
        Check::Protector => "Off the compressor and rested, lowest ohms range.",
        Check::StartDevice => "Off the pins and cold: look, shake, measure.",
        Check::WindingTemperature => "The same winding by ohms, now and when it was cold.",
    }
}

fn of_clue(clue: Clue) -> &'static str {
    match clue {
        // What the unplugged checks bring is asked by them.
        Clue::OpeningSeen
        | Clue::OpeningTold
        | Clue::CordDamaged
        | Clue::Burnt
        | Clue::OilStain
        | Clue::Puncture
        | Clue::EarlierSealedWork
        | Clue::Rodents
        | Clue::MissingParts
        | Clue::Wet
        | Clue::PlugInsulation
        | Clue::BladeToBlade
        | Clue::Pins
        | Clue::ShellInsulation
        | Clue::Protector
        | Clue::StartDeviceLooks
        | Clue::StartDeviceOhms
        | Clue::WindingHeat => clue.check().map_or("", of_check),
        Clue::Thermostat => {
            "Cabinet warm, dial at coldest, one wire pulled off: the contacts should read next to \
             nothing."
        }
        Clue::Thermistor => {
            "Unplug its connector. Ohms in ice water and at room temperature, against the maker's \
             table."
        }
        Clue::Capacitor => {
            "Discharge it through a resistor of 10 kΩ or so, prove it below 50 V, take it off, \
             then measure against its marking."
        }
        Clue::DefrostParts => {
            "Pull the connectors. Ohms through the heater, its thermostat while cold, and the \
             fuse, and from each to bare metal."
        }
        Clue::PartByPart => {
            "Unplug each part's connector in turn; highest ohms range from the part to bare metal."
        }
        Clue::Lint => "Look behind and below, with a torch. Is air let in and out?",
        Clue::Seal => "Shut a strip of paper in the door, all round: it should drag everywhere.",
        Clue::DoorLamp => "Press the door switch, or leave a phone inside filming.",
        Clue::Drain => "Look at the drain hole and at the floor for ice or water.",
        Clue::CoilIce => "Look at the evaporator, behind its panel if it has one.",
        Clue::RoomTemperature => "A thermometer in the room, off the floor and out of the sun.",
        Clue::OtherOutlet => {
            "One that is known to be good and protected. Never one without protection, and not if \
             it tripped."
        }
        Clue::TripPattern => "From memory, or ask. Don't provoke another trip.",
        Clue::Lamp => "Plug it in, open the door and look.",
        Clue::PowerUp => "Plug it in after a rest, control at coldest, and listen for a while.",
        Clue::ClickInterval => "Count from the start of the hum to the click.",
        Clue::PowerMeter => "A plug-in power meter at the outlet; write down what it shows.",
        Clue::PowerLevel => "The watts while it runs, against the plate and machines of its size.",
        Clue::WattsTrend => "Read the power meter every five minutes while it runs.",
        Clue::ModesCleared => {
            "Dial to coldest; end holiday, showroom and lock modes; wait out the start delay."
        }
        Clue::TimerByHand => {
            "Turn the defrost timer on by its slot, or start the maker's cooling test; nothing that \
             carries wires is opened."
        }
        Clue::FlashCode => {
            "Count the flashes of lamp or display from outside. No meter on a drive that runs."
        }
        Clue::SaggingVolts => {
            "A plug-in meter at the outlet: the lowest volts while it hums. Nothing is opened."
        }
        Clue::EvaporatorFan => "Hold the door switch in and feel for air. Fingers off the blades.",
        Clue::CondenserFan => "Look and feel from outside while the compressor runs.",
        Clue::AirOutlet => "Door switch held in: a strip of paper at the outlet should move.",
        Clue::Restart => "Note after which rest it starts: five minutes, half an hour, hours.",
        Clue::InstantRestart => {
            "Once it has run, unplug it and plug it in again at once: pressed gas should hold it. \
             One try, then let it rest."
        }
        Clue::GoodDevice => {
            "The right plain start device and protector for this compressor, cover back on, then \
             plug it in and listen."
        }
        Clue::StartKit => {
            "Rested, cover back on, one try of a few seconds; then unplug it and take the kit off."
        }
        Clue::CondenserWarmth => "After half an hour of running, by hand along its length.",
        Clue::Drier => "By the back of the hand, after half an hour: its outlet and the thin tube.",
        Clue::SuctionLine => "By hand where the thick cold tube comes back. Look for frost.",
        Clue::Hiss => {
            "Ear at the evaporator as the compressor stops: gas should be heard settling."
        }
        Clue::FrostPattern => {
            "After two hours of running, unplug it and look at the evaporator at once, first to last."
        }
        Clue::Temperatures => {
            "A thermometer in a glass of water in each compartment, half a day and more."
        }
        Clue::ThawTrial => {
            "Unplugged, doors open, until all ice is gone, with no blade. Then run it a day or two."
        }
    }
}

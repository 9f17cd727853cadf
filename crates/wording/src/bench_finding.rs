//! What the unplugged bench found, in words.

use diagnosis::{Blades, LeakPath, Leakage, Looks, Sign, StartDevice};
use measure::{
    CurrentRelay, Insulation, PotentialRelay, ProtectiveDevice, Protector, Ptc, Tester, Trip,
    can_hurt, stored_energy,
};
use quantity::{Amps, Celsius, Farads, Uncertain, Volts};

use crate::windings_finding::capital;
use crate::{Locale, Words, ohms, pin};

pub(crate) fn sign(sign: Sign) -> String {
    let meaning = match sign {
        Sign::CordDamaged | Sign::Burnt | Sign::Rodents | Sign::Wet => {
            "Mend that before anything is powered."
        }
        Sign::OilStain | Sign::Puncture => {
            "Refrigerant has probably come out with the oil. That is licensed work, or scrap."
        }
        Sign::EarlierSealedWork => "Somebody has opened the sealed system before you.",
        Sign::MissingParts => "Find out what is missing before you measure.",
    };
    format!("{}. {meaning}", sign.words())
}

pub(crate) fn insulation(
    path: LeakPath,
    proved: Insulation,
    tester: Tester,
    leakage: Option<Leakage>,
    locale: &Locale,
) -> String {
    let from = leak_path(path);
    let told = match proved {
        Insulation::Clear { above } => {
            let above = ohms(above, locale);
            match tester {
                Tester::Ohmmeter => format!(
                    "no leak that this meter can see, above {above} at a few volts. That isn't a \
                     full insulation test."
                ),
                Tester::InsulationTester(volts) => {
                    format!("no leak, above {above} at {}.", volts_of(volts, locale))
                }
            }
        }
        Insulation::RangeTooLow { above } => format!(
            "over range, but the range ends at {}: that proves nothing. Repeat in the highest \
             range.",
            ohms(above, locale)
        ),
        Insulation::Doubtful { reading } => format!(
            "{} is neither clear nor a plain leak. Wipe it clean and dry, and repeat.",
            ohms(reading, locale)
        ),
        Insulation::Leaks { reading } => format!("it leaks, {}.", ohms(reading, locale)),
    };
    let at_mains = leakage.map_or_else(String::new, |leakage| {
        format!(" {}", current(leakage, proved, locale))
    });
    format!("{from}: {told}{at_mains}")
}

fn current(leakage: Leakage, proved: Insulation, locale: &Locale) -> String {
    let bound = match proved {
        Insulation::Clear { .. } | Insulation::RangeTooLow { .. } => "at most",
        Insulation::Doubtful { .. } | Insulation::Leaks { .. } => "about",
    };
    let flows = format!(
        "At {} {bound} {} would flow through it",
        volts_of(leakage.volts, locale),
        milliamps(leakage.current, locale)
    );
    let device = match leakage.device {
        ProtectiveDevice::GroundFault6Milliamps => "a ground-fault device of 6\u{a0}mA",
        ProtectiveDevice::ResidualCurrent30Milliamps => "a residual-current device of 30\u{a0}mA",
    };
    match (proved, leakage.trip) {
        (Insulation::RangeTooLow { .. }, _) => String::new(),
        (_, Trip::No) => format!("{flows}; {device} stays on."),
        (_, Trip::May) => format!("{flows}; {device} may trip."),
        (_, Trip::Must) => format!("{flows}; {device} trips."),
    }
}

fn leak_path(path: LeakPath) -> String {
    match path {
        LeakPath::BladesToEarth => "Plug to earth pin".to_owned(),
        LeakPath::BladesToMetal => "Plug to bare metal".to_owned(),
        LeakPath::PinsToShell => "Each pin to the shell".to_owned(),
        LeakPath::PinToShell(which) => format!("{} to the shell", capital(pin(which))),
    }
}

fn milliamps(current: Amps, locale: &Locale) -> String {
    let milliamps = current.get() * 1e3;
    let decimals = if milliamps < 0.095 {
        3
    } else if milliamps < 9.5 {
        1
    } else {
        0
    };
    format!("{}\u{a0}mA", locale.number(milliamps, decimals))
}

fn volts_of(volts: Volts, locale: &Locale) -> String {
    format!("{}\u{a0}V", locale.number(volts.get(), 0))
}

pub(crate) fn blades(blades: Blades, locale: &Locale) -> String {
    match blades {
        Blades::Shorted => "The plug's blades are shorted to each other.".to_owned(),
        Blades::Joined(reading) => format!(
            "Current can get through from one flat pin to the other, {}.",
            ohms(reading, locale)
        ),
        Blades::Open => {
            "Nothing gets through from one flat pin to the other. With contacts and the \
                         dial at its coldest that is the break: control, protector, cord or \
                         winding. Behind a board it says nothing."
                .to_owned()
        }
    }
}

pub(crate) fn earth(reaches: bool) -> String {
    if reaches {
        "The earth pin reaches the cabinet, as far as a handheld meter can tell.".to_owned()
    } else {
        "The earth pin doesn't reach the cabinet: cord, plug or earth wire is broken.".to_owned()
    }
}

pub(crate) fn charge_left(
    left: Volts,
    safe: bool,
    marking: Option<Farads>,
    locale: &Locale,
) -> String {
    let volts = format!("{}\u{a0}V", locale.number(left.get().abs(), 1));
    if safe {
        return format!("{volts} left: below 50 V, discharged.");
    }
    let energy = marking.map_or_else(String::new, |capacitance| {
        let joules = locale.number(stored_energy(capacitance, left).get(), 1);
        let hurts = if can_hurt(capacitance, left) {
            "enough to hurt"
        } else {
            "not to be touched all the same"
        };
        format!(" That is {joules} J, {hurts}.")
    });
    format!("{volts} left: 50 V or more.{energy} Wait or discharge, and measure again.")
}

pub(crate) fn protector(state: Protector, rested: bool, locale: &Locale) -> String {
    match (state, rested) {
        (Protector::Closed, _) => "The protector is closed, as it should be.".to_owned(),
        (Protector::Open, true) => {
            "The protector is open although it has rested: it has failed. Replace it by one of \
             the same rating, and ask what made it open."
                .to_owned()
        }
        (Protector::Open, false) => {
            "The protector is open, and may be so from heat. Give it half an hour and repeat."
                .to_owned()
        }
        (Protector::Resistive { reading }, _) => format!(
            "The protector reads {}: too much for a contact. Clean its terminals and repeat.",
            ohms(reading, locale)
        ),
    }
}

pub(crate) fn looks(looks: Looks) -> String {
    format!(
        "Start device: {}. Replace it before judging anything else by it.",
        looks.words()
    )
}

pub(crate) fn start_device(found: StartDevice) -> String {
    match found {
        StartDevice::Ptc(state, by_print) => ptc(state, by_print),
        StartDevice::CurrentRelay(state) => match state {
            CurrentRelay::Sound => {
                "Current relay: open upright, closed turned over, as it should be."
            }
            CurrentRelay::Welded => "Current relay: closed upright too. Its contact is welded.",
            CurrentRelay::NeverMakes => {
                "Current relay: open in both positions. Its contact never makes."
            }
        }
        .to_owned(),
        StartDevice::PotentialRelay(state) => match state {
            PotentialRelay::Sound => "Potential relay: coil whole, contact closed at rest.",
            PotentialRelay::CoilOpen => "Potential relay: its coil is open.",
            PotentialRelay::ContactOpen => "Potential relay: its contact is open at rest.",
        }
        .to_owned(),
        StartDevice::ElectronicBySubstitution => {
            "An electronic start device can't be judged by ohms: only a known good one in its \
             place tells."
                .to_owned()
        }
    }
}

fn ptc(state: Ptc, by_print: bool) -> String {
    let told = match state {
        Ptc::AsItShould => "The PTC reads as it should",
        Ptc::NearZero => "The PTC is shorted",
        Ptc::Low => "The PTC reads too little",
        Ptc::High => "The PTC reads too much",
        Ptc::Open => "The PTC is open",
        Ptc::CannotTell => "The PTC is too close to a limit for this meter to tell",
    };
    let by = if by_print {
        "held against what is printed on it"
    } else {
        "held against what such parts usually have; the printed value would tell more"
    };
    let what_now = match state {
        Ptc::NearZero | Ptc::Open => " Replace it before judging anything else.",
        _ => "",
    };
    format!("{told}, {by}.{what_now}")
}

pub(crate) fn winding_temperature(found: &Uncertain<Celsius>, locale: &Locale) -> String {
    let spread = found.expanded().get();
    let scale = match locale.degrees {
        crate::Degrees::Celsius => 1.0,
        crate::Degrees::Fahrenheit => 1.8,
    };
    format!(
        "The winding is at {}, give or take {} degrees.",
        locale.temperature(found.value()),
        locale.number(spread * scale, 0)
    )
}

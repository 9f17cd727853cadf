//! What a meter shows with the plug out.

use diagnosis::{
    Check, Choice, Clue, EarthPin, Inverted, Item, Looks, ProtectorKind, StartDeviceKind,
    TesterChoice, Upright, Warmth, item_of_pair,
};
use job::{Answer, Content};
use measure::windings::Pair;
use quantity::{Celsius, Ohms, parse_decimal};
use simulator::machine::{StartDevice, Trace};

use super::Sheet;
use super::entry::{answer, choice, clue as shown, reading, there_is_none, typed};

/// What an ohmmeter makes of nothing connected.
const OPEN: Ohms = Ohms::new(f64::INFINITY);

pub(super) fn check(sheet: &mut Sheet, check: Check) -> Vec<Content> {
    let found = match check {
        Check::Ground => ground(sheet),
        Check::Windings => windings(sheet),
        Check::Shell => shell(sheet),
        Check::Protector => protector(sheet),
        Check::StartDevice => start_device(sheet),
        _ => Vec::new(),
    };
    found.into_iter().flatten().collect()
}

fn chosen(item: Item, name: &str) -> Option<Content> {
    choice(item.check().name(), item.name(), name)
}

fn ohms(sheet: &mut Sheet, item: Item, truth: Option<Ohms>) -> Option<Content> {
    let display = sheet.kit.ohms(truth.unwrap_or(OPEN));
    reading(item, &display, sheet.meter)
}

fn ground(sheet: &mut Sheet) -> Vec<Option<Content>> {
    let bench = sheet.machine.bench();
    let (leak, earth, between) = (
        bench.blades_to_metal(),
        bench.earth_to_metal(),
        bench.blade_to_blade(),
    );
    vec![
        chosen(Item::EarthPin, EarthPin::Has.name()),
        chosen(Item::Tester, TesterChoice::Ohmmeter.name()),
        ohms(sheet, Item::BladesToEarth, leak),
        ohms(sheet, Item::BladesToMetal, leak),
        ohms(sheet, Item::EarthToMetal, Some(earth)),
        ohms(sheet, Item::BladeToBlade, between),
    ]
}

fn windings(sheet: &mut Sheet) -> Vec<Option<Content>> {
    let mut found = vec![choice("windings", "start-gear", "off")];
    for (pair, one, other) in [
        (Pair::OneTwo, 1, 2),
        (Pair::OneThree, 1, 3),
        (Pair::TwoThree, 2, 3),
    ] {
        let truth = sheet.machine.bench().between_pins(one, other);
        let display = sheet.kit.ohms(truth.unwrap_or(OPEN));
        let reading = typed(&display, job::Unit::Ohm, sheet.meter);
        found.push(
            reading.and_then(|reading| {
                answer("windings", item_of_pair(pair), Answer::Reading(reading))
            }),
        );
    }
    found
}

fn shell(sheet: &mut Sheet) -> Vec<Option<Content>> {
    let truth = sheet.machine.bench().pins_to_shell();
    [
        Item::PinOneToShell,
        Item::PinTwoToShell,
        Item::PinThreeToShell,
    ]
    .map(|item| ohms(sheet, item, truth))
    .into()
}

fn protector(sheet: &mut Sheet) -> Vec<Option<Content>> {
    match sheet.machine.bench().protector() {
        None => vec![chosen(Item::ProtectorKind, ProtectorKind::Inside.name())],
        Some(truth) => vec![
            chosen(Item::ProtectorKind, ProtectorKind::External.name()),
            chosen(Item::ProtectorWarmth, Warmth::Rested.name()),
            ohms(sheet, Item::ProtectorReading, truth),
        ],
    }
}

fn start_device(sheet: &mut Sheet) -> Vec<Option<Content>> {
    let bench = sheet.machine.bench();
    let rattles = bench.traces().contains(&Trace::StartDeviceRattles);
    let device = bench.start_device();
    let looks = if sheet.senses.noticed(rattles) {
        Looks::Rattles
    } else {
        Looks::Whole
    };
    let looks = chosen(Item::StartDeviceLooks, looks.name());
    match device {
        None => vec![chosen(
            Item::StartDeviceKind,
            StartDeviceKind::NotFound.name(),
        )],
        Some(StartDevice::Ptc {
            marking,
            ohms: truth,
        }) => {
            let printed = simulator::Display {
                text: quantity::write_decimal(marking.get()),
            };
            vec![
                chosen(Item::StartDeviceKind, StartDeviceKind::Ptc.name()),
                looks,
                reading(Item::PtcMarking, &printed, sheet.meter),
                ohms(sheet, Item::PtcReading, truth),
            ]
        }
        Some(StartDevice::CurrentRelay {
            coil,
            upright,
            inverted,
        }) => vec![
            chosen(Item::StartDeviceKind, StartDeviceKind::CurrentRelay.name()),
            looks,
            ohms(sheet, Item::RelayCoil, Some(coil)),
            chosen(
                Item::RelayUpright,
                if upright {
                    Upright::Closed
                } else {
                    Upright::Open
                }
                .name(),
            ),
            chosen(
                Item::RelayInverted,
                if inverted {
                    Inverted::Closed
                } else {
                    Inverted::Open
                }
                .name(),
            ),
        ],
    }
}

/// Kelvins that a tenth of a sensor's ohms is worth: about 4 % a kelvin (beta about 3,900 K,
/// common practice).
const A_TENTH: f64 = 2.5;
/// So far off that it reads like an open or a shorted one.
const FAR_OFF: f64 = 20.0;

pub(super) fn clue(sheet: &mut Sheet, clue: Clue) -> Option<Vec<Content>> {
    let bench = sheet.machine.bench();
    let none = || Some(there_is_none(clue).into_iter().collect());
    let room = sheet.machine.room();
    let truth = match clue {
        Clue::Thermostat => match bench.thermostat(room) {
            None => return none(),
            Some(contacts) => usize::from(contacts.is_none()),
        },
        // At "off" sound contacts open, whatever the bulb feels.
        Clue::ThermostatCold => match bench.thermostat(Celsius::new(-30.0)) {
            None => return none(),
            Some(contacts) => usize::from(contacts.is_some()),
        },
        Clue::Thermistor => match bench.sensor_error() {
            None => return none(),
            Some(error) => match error.get().abs() {
                error if error > FAR_OFF => 2,
                error if error > A_TENTH => 1,
                _ => 0,
            },
        },
        Clue::Capacitor => match bench.capacitor() {
            None => return none(),
            Some((_, None)) => 2,
            Some((printed, Some(left))) => match left.get() / printed.get() {
                share if share < 0.1 => 2,
                // Six per cent is what such parts are allowed (North America, common practice).
                share if share < 0.94 => 1,
                _ => 0,
            },
        },
        Clue::DefrostParts => match bench.defrost_circuit() {
            None => return none(),
            Some(circuit) if circuit.iter().any(Option::is_none) => 1,
            Some(_) if bench.another_part_leaks() => 2,
            Some(_) => 0,
        },
        Clue::PartByPart => match (bench.pins_to_shell(), bench.another_part_leaks()) {
            (Some(_), _) => 1,
            (None, true) => 2,
            (None, false) => 0,
        },
        Clue::RoomTemperature => return Some(room_temperature(sheet)),
        _ => return None,
    };
    let told = sheet.senses.told(truth, clue.answers().len());
    Some(shown(clue, told).into_iter().collect())
}

/// As a thermometer shows it, hot from 32 °C, cold below 14 °C: where tables of climate classes
/// end for ordinary machines (16 and 32 °C, IEC 62552) with a margin for one control.
fn room_temperature(sheet: &mut Sheet) -> Vec<Content> {
    let room = sheet.machine.room();
    let display = sheet.kit.celsius(room).text;
    let place = match parse_decimal(&display) {
        Some(degrees) if degrees > 32.0 => 1,
        Some(degrees) if degrees < 14.0 => 2,
        _ => 0,
    };
    shown(Clue::RoomTemperature, place).into_iter().collect()
}

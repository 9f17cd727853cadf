//! Everything that can be known before a machine is ever plugged in.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

mod story;

use diagnosis::{
    Assessment, Blades, Caution, Closed, Finding, Gate, Item, Link, LinkState, StartDevice, Step,
};
use measure::{Insulation, Protector, Ptc};
use story::Story;

const MAINS: &str = "230-v-50-hz";

fn pins(story: Story, readings: [&str; 3]) -> Story {
    let [one, two, three] = readings;
    story
        .item(Item::PinOneToShell, one)
        .item(Item::PinTwoToShell, two)
        .item(Item::PinThreeToShell, three)
}

#[test]
fn nothing_may_be_powered_before_the_ground_check() {
    let now = Story::begin(MAINS).now();
    let closed = Gate::Closed(vec![Closed::PlugNotChecked]);
    assert_eq!(now.gates.look_and_listen, closed);
    assert!(now.cautions.contains(&Caution::StayUnplugged));
}

#[test]
fn the_plug_opens_looking_and_listening_and_only_the_pins_open_trials() {
    let plugged = Story::grounded(MAINS);
    let now = plugged.now();
    assert_eq!(now.gates.look_and_listen, Gate::Open);
    assert_eq!(now.gates.trials, Gate::Closed(vec![Closed::PinsNotChecked]));
    assert!(!now.cautions.contains(&Caution::StayUnplugged));

    let bare = pins(plugged, ["OL", "OL", "OL"]).now();
    assert_eq!(bare.gates.trials, Gate::Open);
}

#[test]
fn a_leak_at_one_pin_closes_everything_however_clear_the_plug_was() {
    let now = pins(Story::grounded(MAINS), ["OL", "35k", "OL"]).now();
    assert!(now.must_stop());
    assert!(now.cautions.contains(&Caution::LiveMetal));
    let closed = vec![Closed::Stop, Closed::PinsNotClear];
    assert_eq!(now.gates.look_and_listen, Gate::Closed(closed.clone()));
    assert_eq!(now.gates.trials, Gate::Closed(closed));
    let circuit = now.path.iter().find(|(link, _)| *link == Link::Circuit);
    assert!(matches!(circuit.unwrap().1, LinkState::Broken(_)));
}

#[test]
fn over_range_on_a_low_range_proves_nothing_and_opens_nothing() {
    let now = pins(Story::grounded(MAINS), ["OL", ">200", "OL"]).now();
    assert_eq!(now.gates.trials, Gate::Closed(vec![Closed::PinsNotChecked]));
    assert!(now.findings.iter().any(|finding| matches!(
        finding,
        Finding::Insulation {
            proved: Insulation::RangeTooLow { .. },
            ..
        }
    )));
}

#[test]
fn an_earth_pin_that_does_not_reach_the_cabinet_is_a_stop() {
    let now = Story::grounded(MAINS).item(Item::EarthToMetal, "OL").now();
    assert!(now.must_stop());
    assert_eq!(now.cautions[0], Caution::BrokenEarth);
}

#[test]
fn blades_that_are_shorted_to_each_other_are_told_and_nothing_is_plugged_in() {
    let read = |typed| Story::grounded(MAINS).item(Item::BladeToBlade, typed).now();
    let shorted = read("0.3");
    assert!(shorted.findings.contains(&Finding::Blades(Blades::Shorted)));
    assert!(shorted.cautions.contains(&Caution::ShortedPlug));
    assert!(matches!(shorted.gates.look_and_listen, Gate::Closed(_)));
    let motor = read("4.1");
    assert!(!motor.findings.contains(&Finding::Blades(Blades::Shorted)));
    assert_eq!(motor.gates.look_and_listen, Gate::Open);
}

#[test]
fn a_plug_that_was_found_to_leak_is_not_called_unmeasured() {
    let now = Story::grounded(MAINS)
        .item(Item::BladesToMetal, "8.7k")
        .now();
    assert!(now.cautions.contains(&Caution::LiveMetal));
    assert!(!now.cautions.contains(&Caution::StayUnplugged));
    assert!(now.must_stop());
}

#[test]
fn a_plug_without_earth_pin_is_judged_by_its_metal_and_cautioned() {
    let now = Story::begin(MAINS)
        .with("ground", "earth-pin", "none")
        .item(Item::BladesToMetal, "OL")
        .now();
    assert!(now.cautions.contains(&Caution::NoEarthPin));
    assert_eq!(now.gates.look_and_listen, Gate::Open);
}

#[test]
fn a_plate_for_other_mains_is_a_stop() {
    let now = Story::begin(MAINS)
        .with("look-over", "plate-mains", "120-v-60-hz")
        .now();
    assert!(now.must_stop());
    assert!(now.cautions.contains(&Caution::WrongMains));
}

#[test]
fn oil_on_a_tube_stops_only_where_the_gas_burns() {
    let oily = |gas: &str| {
        let mut story = Story::begin(MAINS).with("refrigerant", "plate", gas);
        story.tick("look-over", "signs", &["oil-stain"]);
        story.now().must_stop()
    };
    assert!(oily("r600a"));
    assert!(oily("other-or-unreadable"));
    assert!(!oily("r134a"));
}

#[test]
fn a_protector_that_is_open_while_warm_is_not_broken() {
    let read = |warmth: &str, typed: &str| {
        Story::grounded(MAINS)
            .with("protector", "protector-kind", "external")
            .with("protector", "protector-warmth", warmth)
            .item(Item::ProtectorReading, typed)
            .now()
    };
    let circuit = |now: diagnosis::Assessment| {
        now.path
            .iter()
            .find(|(link, _)| *link == Link::Circuit)
            .unwrap()
            .1
    };
    assert!(matches!(
        circuit(read("warm", "OL")),
        LinkState::Doubtful(_)
    ));
    assert!(matches!(
        circuit(read("rested", "OL")),
        LinkState::Broken(_)
    ));
    assert_eq!(circuit(read("rested", "0.4")), LinkState::Unknown);
    let resistive = read("rested", "6.5");
    assert!(resistive.findings.iter().any(|finding| matches!(
        finding,
        Finding::Protector {
            state: Protector::Resistive { .. },
            rested: true
        }
    )));
    assert!(
        resistive
            .cautions
            .contains(&Caution::NeverBridgeTheProtector)
    );
}

#[test]
fn a_ptc_is_judged_by_its_print_or_else_by_the_mains() {
    let read = |marking: Option<&str>, typed: &str| {
        let mut story = Story::grounded(MAINS).with("start-device", "start-device-kind", "ptc");
        if let Some(marking) = marking {
            story = story.item(Item::PtcMarking, marking);
        }
        let now = story.item(Item::PtcReading, typed).now();
        now.findings
            .iter()
            .find_map(|finding| match finding {
                Finding::StartDevice(StartDevice::Ptc(state, by_print)) => {
                    Some((*state, *by_print))
                }
                _ => None,
            })
            .unwrap()
    };
    assert_eq!(read(None, "22"), (Ptc::AsItShould, false));
    assert_eq!(read(Some("4.7"), "22"), (Ptc::High, true));
    assert_eq!(read(None, "OL"), (Ptc::Open, false));
}

#[test]
fn a_current_relay_is_turned_over_and_must_change() {
    let relay = |upright: &str, inverted: &str| {
        let now = Story::grounded(MAINS)
            .with("start-device", "start-device-kind", "current-relay")
            .with("start-device", "relay-upright", upright)
            .with("start-device", "relay-inverted", inverted)
            .now();
        now.path
            .iter()
            .find(|(link, _)| *link == Link::Start)
            .unwrap()
            .1
    };
    assert_eq!(relay("open", "closed"), LinkState::Unknown);
    assert!(matches!(relay("closed", "closed"), LinkState::Broken(_)));
    assert!(matches!(relay("open", "open"), LinkState::Broken(_)));
}

#[test]
fn an_electronic_start_device_is_never_judged_by_ohms() {
    let now = Story::grounded(MAINS)
        .with("start-device", "start-device-kind", "electronic")
        .item(Item::PtcReading, "OL")
        .now();
    let electronic = Finding::StartDevice(StartDevice::ElectronicBySubstitution);
    assert!(now.findings.contains(&electronic));
    let start = now.path.iter().find(|(link, _)| *link == Link::Start);
    assert_eq!(start.unwrap().1, LinkState::Unknown);
}

#[test]
fn a_board_is_charged_until_it_is_measured_below_fifty_volts() {
    let board = Story::begin(MAINS).with("stored-charge", "stores", "inverter-board");
    assert!(board.now().cautions.contains(&Caution::ChargedBoard));
    let measured = board.item(Item::ChargeLeft, "62");
    assert!(measured.now().cautions.contains(&Caution::ChargedBoard));
    let discharged = measured.item(Item::ChargeLeft, "-3.2");
    assert!(!discharged.now().cautions.contains(&Caution::ChargedBoard));
}

#[test]
fn a_winding_is_as_hot_as_its_copper_says() {
    let now = Story::grounded(MAINS)
        .item(Item::ColdWinding, "4.0")
        .item(Item::ColdTemperature, "25")
        .item(Item::HotWinding, "5.2")
        .now();
    let found = now.findings.iter().find_map(|finding| match finding {
        Finding::WindingTemperature(found) => Some(found),
        _ => None,
    });
    assert!((found.unwrap().value().get() - 102.85).abs() < 0.01);
}

#[test]
fn the_metal_is_asked_about_before_the_pins() {
    let next = Story::begin(MAINS).now().next;
    let place = |wanted: &dyn Fn(&Step) -> bool| next.iter().position(wanted).unwrap();
    let ground = place(&|step| step.check() == diagnosis::Check::Ground);
    let pins = place(&|step| *step == Step::BareThePins);
    let shell = place(&|step| step.check() == diagnosis::Check::Shell);
    assert!(ground < pins && pins < shell);
}

#[test]
fn from_blade_to_blade_a_short_stops_and_nothing_at_all_is_told_as_a_break() {
    let blades = |typed| {
        let story = Story::begin("230-v-50-hz").item(Item::BladeToBlade, typed);
        story.now()
    };
    let said = |known: &Assessment| {
        let names = known.findings.iter().map(Finding::name);
        names.collect::<Vec<_>>()
    };
    let short = blades("0.3");
    assert!(said(&short).contains(&"blades-shorted"));
    assert!(short.cautions.contains(&Caution::ShortedPlug));
    let whole = blades("14.2");
    assert!(said(&whole).contains(&"blades-joined"));
    assert!(!whole.cautions.contains(&Caution::ShortedPlug));
    assert!(said(&blades("OL")).contains(&"blades-open"));
}

#[test]
fn a_plate_of_other_mains_stops_and_its_motor_is_judged_by_the_plate() {
    let imported = |plate: &str| {
        Story::begin("230-v-50-hz")
            .with("look-over", "plate-mains", plate)
            .with("start-device", "start-device-kind", "ptc")
            .item(Item::PtcReading, "5.0")
            .now()
    };
    let ptc = |known: &Assessment| {
        let mut devices = known.findings.iter().filter_map(|found| match found {
            Finding::StartDevice(StartDevice::Ptc(state, _)) => Some(*state),
            _ => None,
        });
        devices.next_back()
    };
    // 5 Ω is ordinary for 120 V and too little for 230 V.
    let (other, same) = (imported("120-v-60-hz"), imported("230-v-50-hz"));
    assert!(other.cautions.contains(&Caution::WrongMains));
    assert_eq!(ptc(&other), Some(Ptc::AsItShould));
    assert!(!same.cautions.contains(&Caution::WrongMains));
    assert_eq!(ptc(&same), Some(Ptc::Low));
}

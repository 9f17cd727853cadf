//! Readings of the unplugged bench that stand for what a clue of the network says.

use diagnosis::{Check, Choice, Clue};

/// What a person would enter; nothing where a check isn't played.
pub(super) fn lines(check: Check, state: impl Fn(Clue) -> Option<usize>) -> Vec<String> {
    let pick = |clue: Clue, readings: &[&'static str]| -> Option<&'static str> {
        readings.get(state(clue)?).copied()
    };
    let lines = match check {
        Check::LookOver => return look_over(state),
        Check::Ground => {
            let leak = pick(Clue::PlugInsulation, &["OL", "900k", "40k"]);
            let between = pick(Clue::BladeToBlade, &["6.4", "OL", "0.1", "300"]);
            vec![
                Some("earth-pin: has".to_owned()),
                Some("tester: ohmmeter".to_owned()),
                leak.map(|ohms| format!("blades-to-earth = {ohms}")),
                leak.map(|ohms| format!("blades-to-metal = {ohms}")),
                Some("earth-to-metal = 0.3".to_owned()),
                between.map(|ohms| format!("blade-to-blade = {ohms}")),
            ]
        }
        Check::Windings => {
            // A probe that missed is set again.
            let first = pick(Clue::Pins, &["4.7", "OL", "4.7", "4.7", "8.1", "4.7"]);
            let second = pick(Clue::Pins, &["7.6", "OL", "OL", "7.6", "8.2", "7.6"]);
            let third = pick(Clue::Pins, &["12.0", "12.0", "OL", "9.0", "8.1", "12.0"]);
            vec![
                Some("start-gear: off".to_owned()),
                first.map(|ohms| format!("pair-1-2 = {ohms}")),
                second.map(|ohms| format!("pair-2-3 = {ohms}")),
                third.map(|ohms| format!("pair-1-3 = {ohms}")),
            ]
        }
        Check::Shell => {
            let ohms = pick(Clue::ShellInsulation, &["OL", "900k", "40k"]);
            (1..=3)
                .map(|pin| ohms.map(|ohms| format!("pin-{pin}-to-shell = {ohms}")))
                .collect()
        }
        Check::Protector => {
            let ohms = pick(Clue::Protector, &["0.2", "OL", "40"]);
            vec![
                ohms.map(|_| "protector-kind: external".to_owned()),
                ohms.map(|_| "protector-warmth: rested".to_owned()),
                ohms.map(|ohms| format!("protector-reading = {ohms}")),
            ]
        }
        Check::StartDevice => {
            let looks = pick(Clue::StartDeviceLooks, &["whole", "rattles"]);
            let ohms = pick(Clue::StartDeviceOhms, &["4.9", "OL", "0.2", "60"]);
            vec![
                looks.map(|_| "start-device-kind: ptc".to_owned()),
                looks.map(|looks| format!("start-device-looks: {looks}")),
                ohms.map(|_| "ptc-marking = 4.7".to_owned()),
                ohms.map(|ohms| format!("ptc-reading = {ohms}")),
            ]
        }
        _ => Vec::new(),
    };
    lines
        .into_iter()
        .flatten()
        .map(|line| format!("{}/{line}", check.name()))
        .collect()
}

fn look_over(state: impl Fn(Clue) -> Option<usize>) -> Vec<String> {
    let signs = Clue::ALL.iter().filter(|clue| {
        clue.check() == Some(Check::LookOver) && state(**clue).is_some_and(|state| state == 1)
    });
    let signs: Vec<&str> = signs.map(|clue| clue.name()).collect();
    let seen = if signs.is_empty() {
        "none".to_owned()
    } else {
        signs.join(", ")
    };
    vec![format!("look-over/signs: {seen}")]
}

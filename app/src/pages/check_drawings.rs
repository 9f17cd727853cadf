//! What each check looks like at the machine: line drawings of our own, as the inside of an `svg`
//! of 320 by 120, all of one stroke. Leads are never told apart by colour.

use diagnosis::Check;

/// The drawing of a check, where it has one.
#[must_use]
pub const fn drawing_of(check: Check) -> Option<&'static str> {
    Some(match check {
        Check::LookOver => LOOK_OVER,
        Check::Ground => GROUND,
        Check::StoredCharge => STORED_CHARGE,
        Check::Shell => SHELL,
        Check::Protector => PROTECTOR,
        Check::StartDevice => START_DEVICE,
        Check::WindingTemperature => WINDING_TEMPERATURE,
        _ => return None,
    })
}

/// The back of a cabinet with its plate, seen through a glass.
const LOOK_OVER: &str = r#"<path d="M52 8h132v104H52zM52 112h132M76 26h48v30H76zM84 36h32M84 46h20M140 112V94c0-10 6-14 16-14s16 4 16 14v18M184 100c28 0 34 8 40 12"/><circle cx="206" cy="50" r="25"/><path d="m224 68 24 24M196 44h20M196 54h14"/>"#;
/// One probe on both flat pins of the plug together, the other on its earth pin.
const GROUND: &str = r#"<path d="M20 22h46v64H20zM29 31h28v13H29z"/><circle cx="43" cy="66" r="9"/><path d="M234 36h42v48h-42zM276 60h36M234 44h-26M234 76h-26M234 60h-16M208 40v40"/><path d="M34 86c4 34 140 34 172-2M52 86c6 18 110 18 164-24"/>"#;
/// A resistor across a capacitor's ends, and the meter that proves it empty.
const STORED_CHARGE: &str = r#"<path d="M20 22h46v64H20zM29 31h28v13H29z"/><circle cx="43" cy="66" r="9"/><path d="M212 54h52v58h-52zM224 54V20h5l4-8 7 16 7-16 4 8h5v34"/><path d="M34 86c10 30 150 26 186-28M52 86c8 14 100 10 166-34"/>"#;
/// One probe on a pin, the other on bare metal of the shell.
const SHELL: &str = r#"<path d="M20 22h46v64H20zM29 31h28v13H29z"/><circle cx="43" cy="66" r="9"/><path d="M186 108c-10-64 14-88 52-88s62 24 52 88zM178 108h120"/><circle cx="238" cy="44" r="6"/><circle cx="222" cy="70" r="6"/><circle cx="254" cy="70" r="6"/><path d="M52 86c16 14 110 10 164-14M34 86c6 30 100 34 150 12M182 90l8 6M180 98l8 6"/>"#;
/// A probe on each end of a disc.
const PROTECTOR: &str = r#"<path d="M20 22h46v64H20zM29 31h28v13H29z"/><circle cx="43" cy="66" r="9"/><circle cx="236" cy="66" r="32"/><path d="M218 40V18h10v18M244 36V18h10v22M220 66c8-10 24-10 32 0"/><path d="M34 86c10 34 130 34 170-10M52 86C90 100 190 60 222 20"/>"#;
/// A probe in each socket of a flat box, which is shaken and rattles if it is broken.
const START_DEVICE: &str = r#"<path d="M20 22h46v64H20zM29 31h28v13H29z"/><circle cx="43" cy="66" r="9"/><path d="M196 34h84v56h-84zM292 44c6 10 6 26 0 36M300 38c9 14 9 34 0 48"/><circle cx="220" cy="62" r="8"/><circle cx="256" cy="62" r="8"/><path d="M34 86c10 36 180 36 220-18M52 86c10 18 110 18 162-20"/>"#;
/// The probes on two pins, and a thermometer in the room.
const WINDING_TEMPERATURE: &str = r#"<path d="M20 22h46v64H20zM29 31h28v13H29z"/><circle cx="43" cy="66" r="9"/><path d="M156 108c-10-60 12-82 46-82s56 22 46 82zM148 108h108"/><circle cx="202" cy="48" r="6"/><circle cx="188" cy="72" r="6"/><circle cx="216" cy="72" r="6"/><path d="M52 86c16 12 90 8 130-12M34 86c6 40 160 30 180-8M286 20a6 6 0 0 1 12 0v60a14 14 0 1 1-12 0zM292 84V46"/>"#;

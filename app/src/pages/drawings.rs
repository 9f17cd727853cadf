//! Line drawings of our own, as the inside of an `svg` of 72 by 72, all of one stroke.

use diagnosis::Kind;

/// A machine.
#[must_use]
pub fn machine(kind: Kind) -> &'static str {
    match kind {
        Kind::ChestFreezer => CHEST_FREEZER,
        Kind::UprightFreezer => UPRIGHT_FREEZER,
        Kind::FridgeFreezer => FRIDGE_FREEZER,
        Kind::Refrigerator => REFRIGERATOR,
    }
}

/// A chest with its lid a hand's breadth open.
const CHEST_FREEZER: &str = r#"<path d="M8 30h56v30H8zM8 30 14 13l49 8 1 9M32 30v4h8v-4M14 60v4M58 60v4"/><path d="M36 41v12M30.800 44l10.400 6M41.200 44l-10.400 6"/>"#;
/// One door, ice behind it.
const UPRIGHT_FREEZER: &str = r#"<path d="M20 6h32v56H20zM25 62v4M47 62v4M25.500 26v14"/><path d="M38 27v12M32.800 30l10.400 6M43.200 30l-10.400 6"/>"#;
/// Two doors, ice behind the upper one.
const FRIDGE_FREEZER: &str = r#"<path d="M20 6h32v56H20zM20 26h32M25 62v4M47 62v4M25.500 13v7M25.500 32v11"/><path d="M38 10v12M32.800 13l10.400 6M43.200 13l-10.400 6"/>"#;
/// One door, standing open on shelves and a bottle.
const REFRIGERATOR: &str = r#"<path d="M14 6h30v56H14zM44 6l14 6v54l-14-4M18 62v4M40 62v4M14 24h30M14 44h30M53 36v8"/><path d="M20 44V34l2-3v-3h3v3l2 3v10M33 24v-7h6v7"/>"#;

/// A chest freezer with its plug lying beside it, as the inside of an `svg` of 320 by 200.
pub const UNPLUGGED: &str = r#"<path d="M16 164h288"/><path d="M72 78h136v80H72zM72 78l12-40 120 18 4 22M128 78v9h24v-9M84 158v6M196 158v6"/><path d="M140 104v32M126.100 112l27.700 16M153.900 112l-27.700 16"/><path d="M208 146c14 0 20 4 22 12 1 4 4 6 8 6"/><path d="M258 154h14v14h-14zM258 161h-20M272 157h9M272 165h9"/>"#;

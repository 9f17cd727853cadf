//! How the machine is built, as far as it decides which parts there are to fail.

use crate::Kind;
use crate::choice::choices;

choices! {
    /// How a machine gets rid of its frost and drives its compressor.
    pub enum Build answers "machine" / "build" {
        /// Its frost is thawed by hand; the compressor runs at one speed.
        ManualDefrost = "manual-defrost",
        /// It thaws its own frost and blows cold air; the compressor runs at one speed.
        FrostFree = "frost-free",
        /// It thaws its own frost; an electronic drive turns the compressor.
        Inverter = "inverter",
    }
}

impl Build {
    /// Its column in tables.
    pub(super) const fn column(self) -> usize {
        match self {
            Self::ManualDefrost => 0,
            Self::FrostFree => 1,
            Self::Inverter => 2,
        }
    }

    /// How likely each build is among machines of a kind (judgement): a lid means frost by hand,
    /// two compartments nearly always mean a fan, inverters came with the larger ones.
    pub(super) const fn odds(kind: Option<Kind>) -> [f64; 3] {
        match kind {
            Some(Kind::ChestFreezer) => [0.96, 0.02, 0.02],
            Some(Kind::UprightFreezer) => [0.55, 0.38, 0.07],
            Some(Kind::FridgeFreezer) => [0.15, 0.60, 0.25],
            Some(Kind::Refrigerator) => [0.40, 0.45, 0.15],
            None => [0.40, 0.42, 0.18],
        }
    }
}

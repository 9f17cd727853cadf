//! What a refrigerant does: at which pressure it boils at a temperature, and whether it burns.
//!
//! Answers: which pressure belongs to a temperature of saturation, and the other way round; where
//! it evaporates and condenses, judged by surfaces that can be touched; how hard the compressor
//! has to squeeze and what that should take; whether the low side draws air in where it leaks; and
//! how much of a room or of a closed cabinet a charge can make burn.
//!
//! Must never know: which machine holds it, what is wrong there, who may open a circuit, words.
//!
//! Nothing here needs a gauge, and nothing says that one should be put on: household circuits are
//! sealed. Pressures above vacuum are [`quantity::Pascals`], those that a gauge shows are
//! [`quantity::GaugePascals`], and one becomes the other with the pressure of the air around alone.

mod atmosphere;
mod curve;
mod cycle;
mod flammable;
mod kind;
mod power;
mod surfaces;

pub use atmosphere::{STANDARD_ATMOSPHERE, standard_atmosphere_at};
pub use curve::{SATURATION_RANGE, SaturationError};
pub use cycle::{Cycle, CycleError, LowSide};
pub use flammable::{
    Concentration, EVACUATE_AT, FlammableError, HOUSEHOLD_CHARGE_LIMIT, InAir,
    lower_flammable_limit_of,
};
pub use kind::{Refrigerant, SafetyClass};
pub use power::LOW_TEMPERATURE_RATING;
pub use surfaces::{CondensingSign, EvaporatingSign};

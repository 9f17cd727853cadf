//! Typed values: units, values with their uncertainty, and what a person types off a meter.
//!
//! Answers: what unit is this number in, how well is it known, what did the person mean by
//! "4,7k", and is that value believable at all?
//!
//! Must never know: what a compressor is, where a value is stored, which words a person reads.
//!
//! Figures come from the GUM (JCGM 100:2008) and its treatment of rectangular limits.

#![forbid(unsafe_code)]

mod accuracy;
mod decimal;
mod limits;
mod typed;
mod uncertain;
mod unit;

pub use accuracy::Accuracy;
pub use decimal::{parse_decimal, write_decimal};
pub use limits::{Limit, Limits, Side, Strictness};
pub use typed::{Observed, ParseError, Typed, parse_reading};
pub use uncertain::{Source, Sources, Uncertain};
pub use unit::{
    Amps, Celsius, CubicMetres, Farads, GaugePascals, Hertz, Joules, JoulesPerKelvin, KelvinDelta,
    Kilograms, KilogramsPerCubicMetre, Metres, NewtonMetres, Ohms, Pascals, Prefix, Quantity,
    Ratio, Seconds, Volts, WattHours, Watts, WattsPerKelvin,
};

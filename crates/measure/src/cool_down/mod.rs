//! Whether a cabinet that is cooling down will get cold enough, and when.
//!
//! Answers, from half an hour of temperatures on: where it ends, how fast, when it reaches a
//! target, each with how surely; whether it will, won't, or whether it is too early to say; and
//! what its course shows: a plateau too warm, slowing, warming again.
//!
//! Must never know: which fault lets it end there, what a job is, who says it in which words.
//!
//! # The model
//!
//! After a delay *d* the temperature approaches an end exponentially, most of the way with a time
//! constant τ, a part *B* of it six times as fast (air and plates before the walls; judgement):
//! T(t) = F + (T₀ − F − B)·e^(−(t − d)/τ) + B·e^(−6(t − d)/τ), and T₀ before. One exponential
//! alone takes a cabinet's quick beginning for the whole and foretells an end that is too warm.
//!
//! Beforehand ([`CoolDownPrior`], judgement by kind of cabinet) F, T₀ and B are normal, τ and d
//! log-normal. What lies between curve and readings (a control that cycles, fans, the thermometer's
//! steps) is no white noise: it is taken as a stationary Gaussian process whose correlation fades
//! over 1, 4, 15 or 60 minutes, all as likely (judgement), with a standard deviation σ that is
//! log-normal. On readings one after another that is an AR(1) process, whose steps need not be
//! equal.
//!
//! F, T₀ and B stand in the curve linearly, so that they are normal given all else and integrated
//! out exactly. τ and d go over a grid that turns and shrinks until it fits what is believed of
//! them; σ over seven places around its most likely value. What that costs in accuracy is held
//! against brute force by SciPy (`tests/reference/cool_down.py`).
//!
//! Cabinets are not made by that model. On courses whose quick part is any share up to half of the
//! way and three to twelve times as fast, the band of the end held the truth in 80 % at one hour and
//! in 60 to 70 % at two and four, where 90 % are stated, and 1 to 2.5 % of all verdicts were wrong
//! (200 drawn courses, `tests/cool_down_coverage.rs`). Times to reach a target fared better: 80 %.
//!
//! Readings are thinned to medians of equal stretches of time. A defrost, an open door or a
//! probe's slip stands out from a first robust fit and is left out ([`CoolDown::left_out`]).

mod belief;
mod course;
mod events;
mod evidence;
mod forecast;
mod noise;
mod prior;
mod signs;
mod symmetric;
mod thinned;

pub use course::{CoolDown, CoolDownError};
pub use forecast::{Goal, Reach, ReachBand, TemperatureBand, Verdict};
pub use prior::{CabinetKind, CoolDownPrior};
pub use signs::Sign;
pub use thinned::{MOST_POINTS, TemperatureAt};

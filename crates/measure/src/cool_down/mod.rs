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
//! The air follows what it goes towards just now, T′ = (E − T)/τ, and that wanders about where it
//! ends, E′ = (F − E)/θ with white noise: plates and coil get cold at once, walls and contents wait,
//! food halts it while it freezes, a control cycles, frost grows. A sum of exponentials fits a
//! beginning as well and takes it for the whole: on simulated cabinets its bands of nine in ten held
//! the truth in three, since a cabinet isn't one. Here the doubt of a forecast grows with its
//! distance, and shrinks as the log shows how steady this cabinet is.
//!
//! All of that is linear, so that air, E and F are jointly normal under a given τ, θ, wandering and
//! error of a reading: a Kalman filter. Those four go over a grid (270 places, judgement), and weigh by
//! how likely they make the readings. Where F lies beforehand is one of two normal distributions, of
//! sound cabinets and of weakened ones: one wide one for both took half of what is dead for slow, and
//! half of what is sound for doubtful. What cools as strongly as it was made to is soon through with its
//! walls and goes on evenly, so that θ and wandering are likelier short and small there. What all that
//! comes to is held against full covariance matrices by SciPy (`tests/reference/cool_down.py`).
//!
//! A forecast adds three things ([`CoolDownPrior`], judgement by kind of cabinet): what may come that
//! no reading shows beforehand, the thermometer's own error, and the control that stops the cooling
//! where it is set, so that the air ends at whichever is warmer; a share of controls never gets to stop
//! it. All temperatures to come are meant on the mean over a control's cycle.
//!
//! A coil's temperature and watts say more of the end ([`CoolDown::with`]).
//!
//! # Where its figures come from
//!
//! Means and shares are first principles and judgement, with their reasons beside them. Deviations
//! (of what is yet to come, of wandering, of controls) were judged and then moved in round numbers until
//! bands held on cabinets that the simulator cools with seed 2; the README's figures are of seed 1001, which
//! nothing was moved for. The simulator doesn't vary where controls are set, so that sound cabinets nearly
//! always lie in their bands.
//!
//! How it fares on those is measured by `cargo xtask measure cooling`.
//! "Too early" is an answer: a sound freezer set to −18 °C is as likely a little above as below. What
//! a defrost will thaw, and a load that takes longer than a day, no first hours show.
//!
//! Readings are thinned to medians of equal stretches of time. A defrost, an open door or a
//! probe's slip comes and goes again and is left out ([`CoolDown::left_out`]).

mod belief;
mod course;
mod ends;
mod events;
mod forecast;
mod motion;
mod prior;
mod signs;
mod support;
mod symmetric;
mod thinned;

pub use course::{CoolDown, CoolDownError};
pub use forecast::{Goal, Reach, ReachBand, TemperatureBand, Verdict};
pub use prior::{CabinetKind, CoolDownPrior, EndPrior};
pub use signs::Sign;
pub use support::{Draw, Support};
pub use thinned::{MOST_POINTS, TemperatureAt};

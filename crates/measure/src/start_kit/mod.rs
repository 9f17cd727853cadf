//! What a start capacitor does for a split-phase motor at standstill.
//!
//! Answers: starting torque, currents and the capacitor's volts for any capacitance; which
//! capacitance puts the currents at a right angle and which gives the greatest torque; and, where
//! no more than winding ohms and a clamp's reading are known, in which range all of that lies.
//!
//! Must never know: which kit is sold, whether a machine may have one, why it doesn't start.
//!
//! # The model
//!
//! At standstill both windings are impedances that don't depend on each other. Torque is in
//! proportion to Im·Ia·sin α with α between the currents (C. P. Steinmetz, *Theory and
//! Calculation of Electrical Apparatus*, 1917, p. 104, equation 36, in voltages). Both
//! capacitances follow from that: Xc = Xa + Ra·Rm/Xm for α = 90°, and
//! Xc = Xa + Ra·Rm/(|Zm| + Xm) for the greatest torque. They differ about twofold.
//!
//! Ohms are no impedances: a rotor at rest adds its own. What isn't known is drawn from a stated
//! prior ([`KitPrior`], judgement) by a low-discrepancy sequence, weighed by the clamp's
//! readings, and told as the 10th, 50th and 90th percentile.

mod circuit;
mod fit;
mod prior;
mod range;
mod spread;

pub use circuit::{Impedance, Standstill, capacitance_of, capacitor};
pub use fit::{Fit, FitError, LockedRotor};
pub use prior::{KitPrior, Span};
pub use range::{KitPoint, Useful, UsefulRange};
pub use spread::Spread;

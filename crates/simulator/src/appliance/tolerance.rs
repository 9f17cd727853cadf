//! How exactly a machine is followed.
//!
//! Answers: which error in a step is small enough? Held against SciPy by the test of the circuit.
//! Must never know: of which machine.

/// Of a temperature, K.
pub(crate) const KELVIN: f64 = 0.05;
/// Of refrigerant in one place, as a share of the charge.
pub(crate) const GRAIN: f64 = 5e-4;

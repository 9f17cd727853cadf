//! How hot a winding is, from its resistance hot and cold.
//!
//! Formula: T = (R/r)·(k + t) − k, with r cold at t and R hot (IEC 60335-1, 11.8; IEC 60034-1,
//! 8.6.2; clauses from memory). Copper k = 234.5 (IEC 60335-1) or 235 (IEC 60034-1); the two
//! differ by 0.2 K at most up to 130 °C.

use quantity::{Celsius, KelvinDelta, Ohms, Uncertain};

/// What the winding is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Conductor {
    /// Copper, k = 234.5.
    Copper,
    /// Electrical-grade aluminium, k = 225.
    Aluminium,
}

impl Conductor {
    /// The temperature below 0 °C at which its resistance would vanish, in kelvins.
    #[must_use]
    pub const fn constant(self) -> KelvinDelta {
        match self {
            Self::Copper => KelvinDelta::new(234.5),
            Self::Aluminium => KelvinDelta::new(225.0),
        }
    }
}

/// A winding's temperature with its uncertainty from both resistances. The leads must be taken
/// out of both, and be the same ones.
///
/// `None` where a resistance isn't positive.
///
/// ```
/// use measure::{Conductor, winding_temperature};
/// use quantity::{Celsius, Ohms, Sources, Uncertain};
/// let mut sources = Sources::default();
/// let tenth = Ohms::new(0.1 / 3f64.sqrt());
/// let cold = Uncertain::exact(Ohms::new(4.0)).with(sources.fresh(), tenth);
/// let hot = Uncertain::exact(Ohms::new(5.2)).with(sources.fresh(), tenth);
/// let found = winding_temperature(&cold, Celsius::new(25.0), &hot, Conductor::Copper).unwrap();
/// assert!((found.value().get() - 102.85).abs() < 0.01);
/// assert!((found.standard().get() - 6.1).abs() < 0.1);
/// ```
#[must_use]
pub fn winding_temperature(
    cold: &Uncertain<Ohms>,
    cold_at: Celsius,
    hot: &Uncertain<Ohms>,
    conductor: Conductor,
) -> Option<Uncertain<Celsius>> {
    let (cold_ohms, hot_ohms) = (cold.value().get(), hot.value().get());
    if cold_ohms <= 0.0 || hot_ohms <= 0.0 {
        return None;
    }
    let k = conductor.constant().get();
    let from_vanishing = k + cold_at.get();
    let temperature = hot_ohms / cold_ohms * from_vanishing - k;
    let slopes = [
        from_vanishing / cold_ohms,
        -hot_ohms * from_vanishing / (cold_ohms * cold_ohms),
    ];
    Some(Uncertain::derived(
        Celsius::new(temperature),
        slopes,
        hot,
        cold,
    ))
}

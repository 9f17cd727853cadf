//! Whether a measured value lies within two limits, as far as its uncertainty lets one tell.
//!
//! Guard bands as in JCGM 106:2012: a value is inside or outside only where all of its expanded
//! uncertainty (k = 2) is.

use quantity::{Quantity, Uncertain};

/// Where a value stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Against {
    /// Between both limits.
    Within,
    /// Under the lower one.
    Below,
    /// Over the upper one.
    Above,
    /// Too close to a limit for what it was measured with.
    CannotTell,
}

/// Where a value stands between `least` and `most`.
///
/// ```
/// use measure::{Against, against};
/// use quantity::{Sources, Uncertain, Volts};
/// let mut sources = Sources::default();
/// let shown = Uncertain::exact(Volts::new(104.0)).with(sources.fresh(), Volts::new(0.6));
/// assert_eq!(against(&shown, Volts::new(103.5), Volts::new(126.5)), Against::CannotTell);
/// assert_eq!(against(&shown, Volts::new(110.0), Volts::new(127.0)), Against::Below);
/// ```
#[must_use]
pub fn against<Q: Quantity>(value: &Uncertain<Q>, least: Q, most: Q) -> Against {
    let (middle, spread) = (value.value().get(), value.expanded().get());
    if middle - spread >= least.get() && middle + spread <= most.get() {
        Against::Within
    } else if middle + spread < least.get() {
        Against::Below
    } else if middle - spread > most.get() {
        Against::Above
    } else {
        Against::CannotTell
    }
}

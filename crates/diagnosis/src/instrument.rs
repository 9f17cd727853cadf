//! How good an instrument is taken to be of which nobody has told.

use job::Unit;
use quantity::Accuracy;

/// A low-cost meter's, clamp's and plug-in meter's and a household thermometer's; metres by tape or by
/// steps (common practice, no source). `None` of ohms: those go by the meter that was chosen.
///
/// ```
/// use job::Unit;
/// assert_eq!(diagnosis::usual_accuracy(Unit::Ohm), None);
/// assert_eq!(diagnosis::usual_accuracy(Unit::Watt).unwrap().percent(), 2.0);
/// ```
#[must_use]
pub const fn usual_accuracy(unit: Unit) -> Option<Accuracy> {
    match unit {
        Unit::Ohm => None,
        Unit::Volt => Accuracy::new(0.5, 3.0),
        Unit::Ampere => Accuracy::new(3.0, 5.0),
        Unit::Watt | Unit::WattHour => Accuracy::new(2.0, 2.0),
        Unit::Metre => Accuracy::new(5.0, 1.0),
        Unit::Celsius | Unit::Farad => Accuracy::new(1.0, 2.0),
    }
}

//! What a plug-in meter counted.

use quantity::{Observed, Seconds};

use crate::{Measured, Moment, Reading};

/// Energy counted between two moments.
#[derive(Debug, Clone, PartialEq)]
pub struct Metered {
    from: Moment,
    to: Moment,
    energy: Reading,
    ran: Option<Seconds>,
}

/// Why something is no count of energy.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MeteredError {
    /// It ends when it begins, or before.
    EndsBeforeItBegins,
    /// The reading is no energy, or over range.
    NotEnergy,
    /// Less than nothing.
    Negative,
    /// The hours of load are less than nothing, or more than the time that was metered.
    RanTooLong,
}

impl Metered {
    /// What was counted from one moment to a later one: an energy in watt-hours, and for how long the
    /// meter saw a load, where it shows that.
    ///
    /// # Errors
    /// [`MeteredError`] where it can't be so.
    pub fn new(
        from: Moment,
        to: Moment,
        energy: Reading,
        ran: Option<Seconds>,
    ) -> Result<Self, MeteredError> {
        let metered = from.until(to).get();
        if metered <= 0.0 {
            return Err(MeteredError::EndsBeforeItBegins);
        }
        let Measured::WattHours(typed) = energy.measured else {
            return Err(MeteredError::NotEnergy);
        };
        let Observed::Value(counted) = typed.observed else {
            return Err(MeteredError::NotEnergy);
        };
        if counted.get() < 0.0 {
            return Err(MeteredError::Negative);
        }
        // Hours are often shown in tenths: half an hour over is a rounding.
        if ran.is_some_and(|ran| !(0.0..=metered + 1_800.0).contains(&ran.get())) {
            return Err(MeteredError::RanTooLong);
        }
        Ok(Self {
            from,
            to,
            energy,
            ran,
        })
    }

    /// When counting began.
    #[must_use]
    pub const fn from(&self) -> Moment {
        self.from
    }

    /// When it was read off.
    #[must_use]
    pub const fn to(&self) -> Moment {
        self.to
    }

    /// What was counted, in watt-hours.
    #[must_use]
    pub const fn energy(&self) -> &Reading {
        &self.energy
    }

    /// For how long the meter saw a load.
    #[must_use]
    pub const fn ran(&self) -> Option<Seconds> {
        self.ran
    }
}

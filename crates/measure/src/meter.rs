//! Hand-held multimeters as their data sheets describe them.

use quantity::{Accuracy, Ohms};

/// How good a meter is on its ohms ranges.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MeterKind {
    /// A low-cost meter: ±(1 % + 5 counts), up to 2 MΩ. From memory.
    Basic,
    /// A good meter: ±(0.8 % + 2 counts), up to 40 MΩ. From memory.
    Good,
}

/// A meter as it is set for one reading.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Meter {
    /// ±(percent of reading + counts) on ohms.
    pub accuracy: Accuracy,
    /// The end of the range it is in: what "over range" lies above.
    pub top: Ohms,
}

impl MeterKind {
    /// Both kinds, the commoner first.
    pub const ALL: [Self; 2] = [Self::Basic, Self::Good];

    /// The ends of the ranges that such a meter has where its range is set by hand
    /// (common practice, no source).
    pub const MANUAL_RANGES: [Ohms; 5] = [
        Ohms::new(200.0),
        Ohms::new(2e3),
        Ohms::new(20e3),
        Ohms::new(200e3),
        Ohms::new(2e6),
    ];

    /// The meter as it is when it chooses its range itself.
    #[must_use]
    pub fn automatic(self) -> Meter {
        let top = match self {
            Self::Basic => Ohms::new(2e6),
            Self::Good => Ohms::new(40e6),
        };
        Meter {
            accuracy: self.accuracy(),
            top,
        }
    }

    /// The meter as it is when its range was set by hand to end at `top`.
    #[must_use]
    pub fn set_to(self, top: Ohms) -> Meter {
        Meter {
            accuracy: self.accuracy(),
            top,
        }
    }

    fn accuracy(self) -> Accuracy {
        let (percent, counts) = match self {
            Self::Basic => (1.0, 5.0),
            Self::Good => (0.8, 2.0),
        };
        // Both pairs lie inside the ranges that `Accuracy::new` allows, as a test shows.
        #[allow(clippy::expect_used)]
        Accuracy::new(percent, counts).expect("both meters lie inside the allowed ranges")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_kind_of_meter_can_be_built() {
        for kind in MeterKind::ALL {
            assert!(kind.automatic().top > kind.set_to(Ohms::new(200.0)).top);
        }
    }
}

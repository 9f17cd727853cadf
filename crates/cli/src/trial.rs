//! Which simulated machines, and what they are measured with.

use measure::MeterKind;

/// Which simulated machines.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Trial {
    /// How many; of one machine, which.
    pub(crate) machines: u64,
    pub(crate) seed: u64,
    pub(crate) meter: MeterKind,
    /// Every other machine is measured with the other kind of meter.
    pub(crate) both_meters: bool,
    pub(crate) json: bool,
}

impl Default for Trial {
    fn default() -> Self {
        Self {
            machines: 0,
            seed: 1,
            meter: MeterKind::Basic,
            both_meters: false,
            json: false,
        }
    }
}

impl Trial {
    /// The most machines of one run: some hours.
    pub(crate) const MOST: u64 = 100_000;

    pub(crate) const fn meter_name(&self) -> &'static str {
        if self.both_meters {
            "both"
        } else {
            meter_name(self.meter)
        }
    }

    /// What the machine of a number is measured with.
    pub(crate) const fn meter_of(&self, number: u64) -> MeterKind {
        match number % 2 {
            1 if self.both_meters => MeterKind::Good,
            _ => self.meter,
        }
    }
}

/// What a kind of meter is called.
pub(crate) const fn meter_name(meter: MeterKind) -> &'static str {
    match meter {
        MeterKind::Basic => "basic",
        MeterKind::Good => "good",
    }
}

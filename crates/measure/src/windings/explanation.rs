//! What can be behind the three readings, by name.

/// What can be behind the three readings.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Explanation {
    /// Two whole windings, the leads taken out.
    Sound,
    /// Two whole windings, the leads still in every reading.
    LeadsNotZeroed,
    /// The protector inside, in the common lead, is open: from heat, or for good.
    ProtectorOpen,
    /// The common lead or pin is open. Ohms can't tell this from the protector.
    CommonLeadOpen,
    /// The start winding, its lead or pin is open.
    StartOpen,
    /// The run winding, its lead or pin is open.
    RunOpen,
    /// Turns of a winding, or of both against each other, are shorted.
    ShortedTurns,
    /// The start device still bridges start and run.
    StartDeviceOn,
    /// One probe didn't touch bare metal, or touched another pin.
    ProbeMissed,
    /// Three equal windings: driven by an inverter.
    EqualWindings,
    /// One coil on two of the pins: a linear drive.
    SingleCoil,
}

impl Explanation {
    /// All of them; ties are told in this order.
    pub const ALL: [Self; 11] = [
        Self::Sound,
        Self::LeadsNotZeroed,
        Self::ProtectorOpen,
        Self::CommonLeadOpen,
        Self::StartOpen,
        Self::RunOpen,
        Self::ShortedTurns,
        Self::StartDeviceOn,
        Self::ProbeMissed,
        Self::EqualWindings,
        Self::SingleCoil,
    ];

    /// Whether all three pairs read two whole windings, give or take the leads.
    #[must_use]
    pub const fn is_whole_pair_of_windings(self) -> bool {
        matches!(self, Self::Sound | Self::LeadsNotZeroed)
    }

    /// Whether a motor with a run and a start winding is part of it.
    #[must_use]
    pub const fn has_two_windings(self) -> bool {
        !matches!(self, Self::EqualWindings | Self::SingleCoil)
    }
}

/// An explanation with its standing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scored {
    /// The explanation.
    pub explanation: Explanation,
    /// Natural logarithm of the density of the readings under it.
    pub log_likelihood: f64,
    /// Its probability under the stated priors.
    pub probability: f64,
}

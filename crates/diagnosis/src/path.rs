//! The Path: eight links, each of which needs the one before it.

use crate::choice::choices;

choices! {
    /// A link of the Path.
    pub enum Link {
        /// Enough voltage reaches the machine, under load too.
        Supply = "supply",
        /// The control asks for cooling.
        Call = "call",
        /// Current can reach sound windings and nothing else.
        Circuit = "circuit",
        /// The rotor is turned from rest.
        Start = "start",
        /// It keeps turning at a sane current.
        Run = "run",
        /// Refrigerant goes round.
        Pump = "pump",
        /// Heat is let in and let out.
        Exchange = "exchange",
        /// The cabinet gets cold and stays cold.
        Hold = "hold",
    }
}

choices! {
    /// What stands behind a statement about a link. Later ones weigh more.
    pub enum Basis {
        /// Everything that is known, weighed together.
        Weighed = "weighed",
        /// The seller says so.
        Told = "told",
        /// The person saw or heard it.
        Seen = "seen",
        /// It was measured.
        Measured = "measured",
    }
}

/// What is known about a link.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LinkState {
    /// Nothing.
    Unknown,
    /// Nothing wrong in what was looked at; more is to be looked at.
    SoundSoFar(Basis),
    /// It holds.
    Holds(Basis),
    /// Something is wrong here, or may be.
    Doubtful(Basis),
    /// It is broken.
    Broken(Basis),
}

impl LinkState {
    /// A short name for files and diagrams.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Unknown => "unknown",
            Self::SoundSoFar(_) => "sound-so-far",
            Self::Holds(_) => "holds",
            Self::Doubtful(_) => "doubtful",
            Self::Broken(_) => "broken",
        }
    }

    /// What stands behind it.
    #[must_use]
    pub const fn basis(self) -> Option<Basis> {
        match self {
            Self::Unknown => None,
            Self::SoundSoFar(basis)
            | Self::Holds(basis)
            | Self::Doubtful(basis)
            | Self::Broken(basis) => Some(basis),
        }
    }

    /// How bad it is, for choosing between statements that are founded alike.
    pub(crate) const fn severity(self) -> u8 {
        match self {
            Self::Unknown => 0,
            Self::SoundSoFar(_) => 1,
            Self::Holds(_) => 2,
            Self::Doubtful(_) => 3,
            Self::Broken(_) => 4,
        }
    }

    /// Whether the Path is, or may be, interrupted here.
    #[must_use]
    pub const fn interrupts(self) -> bool {
        matches!(self, Self::Doubtful(_) | Self::Broken(_))
    }
}

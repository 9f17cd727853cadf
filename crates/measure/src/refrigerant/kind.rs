//! Which refrigerants household machines hold.

/// What a plate says is in a circuit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Refrigerant {
    /// Dichlorodifluoromethane, until about 1995.
    R12,
    /// Chlorodifluoromethane, in some freezers.
    R22,
    /// 1,1,1,2-tetrafluoroethane, from about 1993 on.
    R134a,
    /// Isobutane.
    R600a,
    /// Propane.
    R290,
    /// Another one, or not to be read. Nothing is known of its pressures, and it is taken for one
    /// that burns.
    Other,
}

/// Safety classes of ANSI/ASHRAE 34: A for lower toxicity, the digit for how it burns.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SafetyClass {
    /// No flame propagates.
    A1,
    /// Higher flammability.
    A3,
}

impl SafetyClass {
    /// The class as printed.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::A1 => "A1",
            Self::A3 => "A3",
        }
    }
}

impl Refrigerant {
    /// All of them.
    pub const ALL: [Self; 6] = [
        Self::R12,
        Self::R22,
        Self::R134a,
        Self::R600a,
        Self::R290,
        Self::Other,
    ];

    /// The class in ANSI/ASHRAE 34-2022 (R12: from memory). `None` where nobody knows what it is.
    #[must_use]
    pub const fn safety_class(self) -> Option<SafetyClass> {
        match self {
            Self::R12 | Self::R22 | Self::R134a => Some(SafetyClass::A1),
            Self::R600a | Self::R290 => Some(SafetyClass::A3),
            Self::Other => None,
        }
    }

    /// Whether it has to be handled as one that burns. What isn't known has to.
    ///
    /// ```
    /// use measure::refrigerant::Refrigerant;
    /// assert!(!Refrigerant::R134a.burns());
    /// assert!(Refrigerant::Other.burns());
    /// ```
    #[must_use]
    pub const fn burns(self) -> bool {
        !matches!(self.safety_class(), Some(SafetyClass::A1))
    }
}

/// Those whose curves are known.
#[cfg(test)]
pub(super) const KNOWN: [Refrigerant; 5] = [
    Refrigerant::R12,
    Refrigerant::R22,
    Refrigerant::R134a,
    Refrigerant::R600a,
    Refrigerant::R290,
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_not_known_not_to_burn_is_handled_as_if_it_did() {
        for refrigerant in Refrigerant::ALL {
            let harmless = refrigerant.safety_class() == Some(SafetyClass::A1);
            assert_eq!(refrigerant.burns(), !harmless, "{refrigerant:?}");
        }
        let names = Refrigerant::ALL.map(|one| one.safety_class().map(SafetyClass::name));
        let a1 = Some("A1");
        assert_eq!(names, [a1, a1, a1, Some("A3"), Some("A3"), None]);
    }
}

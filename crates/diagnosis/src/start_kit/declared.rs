//! A start kit that its maker declares for a gas that burns.
//!
//! Answers: was one entered that is declared for the gas in this very machine? Must never know:
//! which kits there are, or what they would do to the motor.

use job::Job;

use crate::choice::{answered, choices};
use crate::{Machine, Refrigerant};

choices! {
    /// For which gas that burns, and for this compressor, a kit is declared on its packing or
    /// sheet. As read there, so that it follows by comparing, and a corrected plate undoes it.
    pub enum KitDeclared answers "would-a-kit-help" / "declared-for" {
        /// Isobutane, and this compressor.
        R600a = "r600a",
        /// Propane, and this compressor.
        R290 = "r290",
        /// No gas that burns, or not this compressor.
        Neither = "neither",
    }
}

impl KitDeclared {
    /// The gas that is named.
    #[must_use]
    pub const fn gas(self) -> Option<Refrigerant> {
        match self {
            Self::R600a => Some(Refrigerant::R600a),
            Self::R290 => Some(Refrigerant::R290),
            Self::Neither => None,
        }
    }

    /// Whether it is worth asking: the gas burns, and is known. One that nobody could read can't
    /// be compared with a packing.
    #[must_use]
    pub fn is_asked(machine: &Machine) -> bool {
        Self::ALL_GASES
            .iter()
            .copied()
            .map(Some)
            .any(|gas| gas == machine.refrigerant)
    }

    /// Whether a kit was entered whose maker declares it for the gas in this machine and its
    /// compressor.
    ///
    /// ```
    /// use diagnosis::{KitDeclared, Machine};
    /// use job::{Id, Job, Moment, Origin};
    /// let now = Moment::new(0, 0).unwrap();
    /// let job = Job::new(Id::new("j").unwrap(), now, Origin::Invented);
    /// assert!(!KitDeclared::suits(&job, &Machine::of(&job)));
    /// ```
    #[must_use]
    pub fn suits(job: &Job, machine: &Machine) -> bool {
        let declared = answered::<Self>(job).and_then(Self::gas);
        declared.is_some() && declared == machine.refrigerant
    }

    const ALL_GASES: [Refrigerant; 2] = [Refrigerant::R600a, Refrigerant::R290];
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Asked, Choice, StartKit};

    #[test]
    fn the_answer_is_kept_under_the_name_of_the_kits_screen() {
        assert_eq!(KitDeclared::CHECK, StartKit::NAME);
    }

    #[test]
    fn every_gas_that_burns_and_can_be_read_is_asked_about_and_no_other() {
        for &gas in Refrigerant::ALL {
            let machine = Machine {
                refrigerant: Some(gas),
                ..Machine::default()
            };
            let readable = gas.burns() && gas != Refrigerant::OtherOrUnreadable;
            assert_eq!(KitDeclared::is_asked(&machine), readable, "{gas:?}");
            let named = KitDeclared::ALL.iter().any(|one| one.gas() == Some(gas));
            assert_eq!(named, readable, "{gas:?}");
        }
        assert!(!KitDeclared::is_asked(&Machine::default()));
    }
}

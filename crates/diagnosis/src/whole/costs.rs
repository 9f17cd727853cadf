//! What work, parts, waiting and mistakes are taken to cost, and how a person changes it.
//!
//! Standing: judgement from trade practice. Money is in units of one US dollar or euro.

use super::build::Build;
use super::fault::Fault;
use super::remedy::stated;
use crate::Kind;
use crate::choice::choices;

choices! {
    /// What is at stake whatever the fault is.
    pub enum Stake {
        /// What an hour of one's own work is worth.
        HourOfWork = "hour-of-work",
        /// What a day costs in which the machine stands and waits.
        DayOfWaiting = "day-of-waiting",
        /// The price of giving it a day and looking again, and of the explanation.
        AnotherDay = "another-day",
        /// What going on after a failed repair costs: an hour and another trip.
        AnotherTry = "another-try",
        /// What is left of a machine that is scrapped: its parts less its disposal.
        Salvage = "salvage",
        /// What a chest freezer sells for, proven and clean.
        ChestFreezer = "chest-freezer",
        /// What an upright freezer sells for that is thawed by hand.
        StaticUpright = "static-upright",
        /// What a frost-free upright freezer sells for.
        FrostFreeUpright = "frost-free-upright",
        /// What a refrigerator with a freezer sells for.
        FridgeFreezer = "fridge-freezer",
        /// What a refrigerator sells for, and a machine whose kind isn't told.
        Refrigerator = "refrigerator",
        /// What a machine with an inverter sells for.
        InverterMachine = "inverter-machine",
    }
}

choices! {
    /// What it takes to mend a fault.
    pub enum Term {
        /// The part, or all of someone else's work.
        Price = "price",
        /// Minutes hands-on, for a practised amateur.
        Minutes = "minutes",
        /// How many of a hundred such repairs still hold after a year, where the fault was the
        /// true one.
        Lasts = "lasts",
    }
}

/// One figure of what things cost.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Cost {
    /// Whatever the fault is.
    Stake(Stake),
    /// Of mending a fault on machines built so.
    Mending(Build, Fault, Term),
}

/// What things are taken to cost: the stated figures, and a person's own in place of some.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Costs {
    /// In order, so that equal ones compare equal.
    edits: Vec<(Cost, f64)>,
}

/// The stated figures.
pub(super) static STATED: Costs = Costs { edits: Vec::new() };

/// Why a cost is refused.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum CostError {
    /// It is no number.
    NotANumber,
    /// Below the least that makes sense.
    TooLittle {
        /// The least that is taken.
        least: f64,
    },
    /// Above the most that makes sense.
    TooMuch {
        /// The most that is taken.
        most: f64,
    },
    /// Machines built so don't have the part.
    NoSuchPart,
}

impl Cost {
    /// The stated figure.
    #[must_use]
    pub fn stated(self) -> f64 {
        match self {
            Self::Stake(stake) => stake.stated(),
            Self::Mending(build, fault, term) => {
                let remedy = stated(fault, build);
                match term {
                    Term::Price => remedy.price,
                    Term::Minutes => remedy.minutes,
                    Term::Lasts => remedy.lasts * 100.0,
                }
            }
        }
    }

    /// The least and the most that are taken: prices of household machines, a working week; no
    /// repair is so sure, or so hopeless, that nothing could be learned from it.
    #[must_use]
    pub const fn range(self) -> (f64, f64) {
        match self {
            Self::Mending(_, _, Term::Minutes) => (1.0, 2_400.0),
            Self::Mending(_, _, Term::Lasts) => (1.0, 99.0),
            Self::Stake(_) | Self::Mending(_, _, Term::Price) => (0.0, 10_000.0),
        }
    }
}

impl Stake {
    const fn stated(self) -> f64 {
        match self {
            Self::HourOfWork => 15.0,
            // Two days of occupied space cost one to three.
            Self::DayOfWaiting => 1.5,
            Self::AnotherDay => 5.0,
            Self::AnotherTry => 15.0,
            Self::Salvage => 10.0,
            Self::ChestFreezer => 120.0,
            Self::StaticUpright => 170.0,
            Self::FrostFreeUpright => 280.0,
            Self::FridgeFreezer => 240.0,
            Self::Refrigerator => 150.0,
            Self::InverterMachine => 420.0,
        }
    }

    /// What a machine sells for.
    #[must_use]
    pub const fn selling(kind: Option<Kind>, build: Build) -> Self {
        match (kind, build) {
            (_, Build::Inverter) => Self::InverterMachine,
            (Some(Kind::ChestFreezer), _) => Self::ChestFreezer,
            (Some(Kind::UprightFreezer), Build::ManualDefrost) => Self::StaticUpright,
            (Some(Kind::UprightFreezer), _) => Self::FrostFreeUpright,
            (Some(Kind::FridgeFreezer), _) => Self::FridgeFreezer,
            (Some(Kind::Refrigerator) | None, _) => Self::Refrigerator,
        }
    }
}

impl Costs {
    /// The figure that holds.
    ///
    /// ```
    /// use diagnosis::{Cost, Costs, Stake};
    /// assert_eq!(Costs::default().of(Cost::Stake(Stake::HourOfWork)), 15.0);
    /// ```
    #[must_use]
    pub fn of(&self, cost: Cost) -> f64 {
        self.own(cost).unwrap_or_else(|| cost.stated())
    }

    /// The person's own figure, if there is one.
    #[must_use]
    pub fn own(&self, cost: Cost) -> Option<f64> {
        let found = self.edits.iter().find(|(edited, _)| *edited == cost);
        found.map(|(_, value)| *value)
    }

    /// The figures that were changed.
    #[must_use]
    pub fn edits(&self) -> &[(Cost, f64)] {
        &self.edits
    }

    /// Puts a figure in place of the stated one.
    ///
    /// # Errors
    /// [`CostError`] where the figure can't be taken; nothing is changed then.
    ///
    /// ```
    /// use diagnosis::{Cost, CostError, Costs, Stake};
    /// let mut costs = Costs::default();
    /// let hour = Cost::Stake(Stake::HourOfWork);
    /// costs.set(hour, 25.0)?;
    /// assert_eq!(costs.of(hour), 25.0);
    /// assert_eq!(costs.set(hour, -1.0), Err(CostError::TooLittle { least: 0.0 }));
    /// # Ok::<(), CostError>(())
    /// ```
    pub fn set(&mut self, cost: Cost, value: f64) -> Result<(), CostError> {
        if let Cost::Mending(build, fault, _) = cost
            && !fault.exists_in(build)
        {
            return Err(CostError::NoSuchPart);
        }
        let (least, most) = cost.range();
        if !value.is_finite() {
            return Err(CostError::NotANumber);
        }
        if value < least {
            return Err(CostError::TooLittle { least });
        }
        if value > most {
            return Err(CostError::TooMuch { most });
        }
        self.reset(cost);
        let place = self.edits.partition_point(|(edited, _)| *edited < cost);
        self.edits.insert(place, (cost, value));
        Ok(())
    }

    /// Goes back to the stated figure.
    pub fn reset(&mut self, cost: Cost) {
        self.edits.retain(|(edited, _)| *edited != cost);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::choice::Choice;

    #[test]
    fn every_stated_figure_can_be_typed_in_again_and_taken_back() {
        let mut costs = Costs::default();
        for build in Build::ALL {
            for fault in Fault::ALL.iter().filter(|fault| fault.exists_in(*build)) {
                for term in Term::ALL {
                    let cost = Cost::Mending(*build, *fault, *term);
                    costs.set(cost, cost.stated()).unwrap();
                }
            }
        }
        for stake in Stake::ALL {
            let cost = Cost::Stake(*stake);
            costs.set(cost, cost.stated()).unwrap();
        }
        for (cost, value) in costs.clone().edits() {
            assert!((*value - cost.stated()).abs() < 1e-12);
            costs.reset(*cost);
        }
        assert_eq!(costs, Costs::default());
    }

    #[test]
    fn what_makes_no_sense_is_refused_and_changes_nothing() {
        let mut costs = Costs::default();
        let lasts = |build, fault| Cost::Mending(build, fault, Term::Lasts);
        let heater = lasts(Build::FrostFree, Fault::DefrostHeaterOpen);
        assert_eq!(costs.set(heater, f64::NAN), Err(CostError::NotANumber));
        assert_eq!(
            costs.set(heater, 100.0),
            Err(CostError::TooMuch { most: 99.0 })
        );
        assert_eq!(
            costs.set(lasts(Build::ManualDefrost, Fault::DefrostHeaterOpen), 50.0),
            Err(CostError::NoSuchPart)
        );
        assert_eq!(costs, Costs::default());
    }
}

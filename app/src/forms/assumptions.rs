//! One figure of what is assumed: as it is shown, as it is typed, as it is taken back.

use diagnosis::{Build, Cost, CostError, Fault, Figures, PriorError};
use quantity::parse_decimal;

/// The setting that holds the person's own figures, a line each.
pub const SETTING: &str = "assumptions";

/// A figure that a person can change.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Figure {
    /// Of a hundred machines built so, how many have this as their main fault; `None` for nothing
    /// wrong.
    Share(Build, Option<Fault>),
    /// What something costs.
    Cost(Cost),
}

/// Why a figure is not taken.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Refused {
    /// What was typed is no number.
    NoNumber,
    /// It is no share.
    Share(PriorError),
    /// It is no such cost.
    Cost(CostError),
}

impl Figure {
    /// What holds.
    #[must_use]
    pub fn of(self, figures: &Figures) -> f64 {
        match self {
            Self::Share(build, fault) => figures.priors.share(build, fault) * 100.0,
            Self::Cost(cost) => figures.costs.of(cost),
        }
    }

    /// Whether it is the person's own.
    #[must_use]
    pub fn is_own(self, figures: &Figures) -> bool {
        match self {
            Self::Share(build, fault) => {
                let mut edits = figures.priors.edits().iter();
                edits.any(|edit| (edit.build, edit.fault) == (build, fault))
            }
            Self::Cost(cost) => figures.costs.own(cost).is_some(),
        }
    }

    /// Takes a figure as it was typed.
    ///
    /// # Errors
    /// [`Refused`]; nothing is changed then.
    pub fn put(self, typed: &str, figures: &mut Figures) -> Result<(), Refused> {
        let number = typed.trim().trim_end_matches('%').trim();
        let number = parse_decimal(number).ok_or(Refused::NoNumber)?;
        match self {
            Self::Share(build, fault) => {
                let taken = figures.priors.set(build, fault, number);
                taken.map_err(Refused::Share)
            }
            Self::Cost(cost) => figures.costs.set(cost, number).map_err(Refused::Cost),
        }
    }

    /// Goes back to the stated figure.
    pub fn reset(self, figures: &mut Figures) {
        match self {
            Self::Share(build, fault) => figures.priors.reset(build, fault),
            Self::Cost(cost) => figures.costs.reset(cost),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use diagnosis::Stake;

    #[test]
    fn a_figure_is_taken_as_people_type_it_and_given_back() {
        let mut figures = Figures::default();
        let share = Figure::Share(Build::FrostFree, Some(Fault::ChargeGone));
        let hour = Figure::Cost(Cost::Stake(Stake::HourOfWork));
        assert!(!share.is_own(&figures) && !hour.is_own(&figures));
        share.put(" 12,5 %", &mut figures).unwrap();
        hour.put("20", &mut figures).unwrap();
        assert!((share.of(&figures) - 12.5).abs() < 1e-12);
        assert!((hour.of(&figures) - 20.0).abs() < 1e-12);
        assert!(share.is_own(&figures) && hour.is_own(&figures));
        share.reset(&mut figures);
        hour.reset(&mut figures);
        assert_eq!(figures, Figures::default());
    }

    #[test]
    fn what_is_no_figure_is_refused_with_the_reason_and_changes_nothing() {
        let mut figures = Figures::default();
        let share = Figure::Share(Build::FrostFree, None);
        assert_eq!(share.put("many", &mut figures), Err(Refused::NoNumber));
        assert_eq!(
            share.put("100", &mut figures),
            Err(Refused::Share(PriorError::TooCommon))
        );
        let hour = Figure::Cost(Cost::Stake(Stake::HourOfWork));
        assert_eq!(
            hour.put("-5", &mut figures),
            Err(Refused::Cost(CostError::TooLittle { least: 0.0 }))
        );
        assert_eq!(figures, Figures::default());
    }
}

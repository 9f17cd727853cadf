//! What is assumed before anything is known, and how a person changes it.
//!
//! The table says which fault is the *main* one. The network needs odds of each fault by itself.
//! With odds o = share × [`SECOND`] the chance of a set of faults is proportional to the product
//! of its odds, so that single faults stand to each other as their shares do, and a second one
//! comes with a chance of about 0.3 times its share. Wear faults (seal, lint, frost, cord) are
//! commoner as a second fault, with 0.5: their odds are larger by 5/3, and a machine that has
//! nothing but wear is offered as faulty in 3 of 5 cases only.

use super::build::Build;
use super::fault::{Fault, Part};
use super::prior_table::{NOTHING_WRONG, ROWS};
use crate::choice::Choice;

/// How much rarer a fault is as a second one than as the main one (judgement).
const SECOND: f64 = 0.3;
/// The same for wear faults (judgement).
const SECOND_BY_WEAR: f64 = 0.5;
/// How often a machine with nothing but wear is offered as faulty.
pub(super) const OFFERED_FOR_WEAR: f64 = SECOND / SECOND_BY_WEAR;

/// What is assumed about how common each fault is.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Priors {
    /// In the order of builds and faults, so that equal assumptions compare equal.
    edits: Vec<Edit>,
}

/// A figure that a person has put in place of the stated one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Edit {
    /// For which machines.
    pub build: Build,
    /// For which fault; `None` for nothing wrong.
    pub fault: Option<Fault>,
    /// How many of a hundred such machines have it as their main fault.
    pub percent: f64,
}

/// Why an assumption is refused.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum PriorError {
    /// Below [`Priors::LEAST`]: nothing is so rare that no evidence may bring it back.
    TooRare,
    /// Above [`Priors::MOST`]: nothing is so common that no evidence may speak against it.
    TooCommon,
    /// It is no number.
    NotANumber,
    /// Machines built so don't have the part.
    NoSuchPart,
    /// The edited figures leave nothing for the others, which need at least this many percent.
    LeavesTooLittle {
        /// Percent that the figures that weren't edited need together.
        needed: f64,
    },
}

impl Priors {
    /// The least that is taken, in percent.
    pub const LEAST: f64 = 0.1;
    /// The most that is taken, in percent.
    pub const MOST: f64 = 99.9;

    /// The share of machines that have this as their main fault, from 0 to 1; `None` for nothing
    /// wrong. All shares of a build add up to one.
    ///
    /// ```
    /// use diagnosis::{Build, Fault, Priors};
    /// let priors = Priors::default();
    /// let share = priors.share(Build::ManualDefrost, Some(Fault::StartDeviceOpen));
    /// assert!((share - 0.11).abs() < 1e-3);
    /// ```
    #[must_use]
    pub fn share(&self, build: Build, fault: Option<Fault>) -> f64 {
        if let Some(percent) = self.edited(build, fault) {
            return percent / 100.0;
        }
        let (mut held, mut free) = (0.0, 0.0);
        for cause in causes() {
            match self.edited(build, cause) {
                Some(percent) => held += percent / 100.0,
                None => free += stated(build, cause),
            }
        }
        stated(build, fault) * (1.0 - held) / free
    }

    /// The figures that were changed.
    #[must_use]
    pub fn edits(&self) -> &[Edit] {
        &self.edits
    }

    /// Puts a figure in place of the stated one. The others share what is left as before.
    ///
    /// # Errors
    /// [`PriorError`] where the figure can't be taken; nothing is changed then.
    ///
    /// ```
    /// use diagnosis::{Build, Fault, PriorError, Priors};
    /// let mut priors = Priors::default();
    /// let leaks = Some(Fault::ChargeGone);
    /// priors.set(Build::ManualDefrost, leaks, 30.0)?;
    /// assert!((priors.share(Build::ManualDefrost, leaks) - 0.3).abs() < 1e-12);
    /// assert_eq!(priors.set(Build::ManualDefrost, leaks, 100.0), Err(PriorError::TooCommon));
    /// # Ok::<(), PriorError>(())
    /// ```
    pub fn set(
        &mut self,
        build: Build,
        fault: Option<Fault>,
        percent: f64,
    ) -> Result<(), PriorError> {
        if !percent.is_finite() {
            return Err(PriorError::NotANumber);
        }
        if percent < Self::LEAST {
            return Err(PriorError::TooRare);
        }
        if percent > Self::MOST {
            return Err(PriorError::TooCommon);
        }
        if stated(build, fault) <= 0.0 {
            return Err(PriorError::NoSuchPart);
        }
        let mut changed = self.clone();
        changed.reset(build, fault);
        let key = |edit: &Edit| (edit.build, edit.fault);
        let place = changed
            .edits
            .partition_point(|edit| key(edit) < (build, fault));
        changed.edits.insert(
            place,
            Edit {
                build,
                fault,
                percent,
            },
        );
        changed.leaves_enough(build)?;
        *self = changed;
        Ok(())
    }

    /// Goes back to the stated figure.
    pub fn reset(&mut self, build: Build, fault: Option<Fault>) {
        self.edits
            .retain(|edit| (edit.build, edit.fault) != (build, fault));
    }

    fn edited(&self, build: Build, fault: Option<Fault>) -> Option<f64> {
        let edit = self
            .edits
            .iter()
            .find(|edit| edit.build == build && edit.fault == fault);
        edit.map(|edit| edit.percent)
    }

    /// Each figure that wasn't edited keeps at least a tenth of the least.
    fn leaves_enough(&self, build: Build) -> Result<(), PriorError> {
        let held: f64 = causes().filter_map(|cause| self.edited(build, cause)).sum();
        let others = causes()
            .filter(|cause| stated(build, *cause) > 0.0 && self.edited(build, *cause).is_none());
        let needed = others.count() as f64 * Self::LEAST / 10.0;
        if held + needed > 100.0 {
            return Err(PriorError::LeavesTooLittle { needed });
        }
        Ok(())
    }

    /// The odds of a fault by itself, against the part being sound.
    pub(super) fn odds(&self, build: Build, fault: Fault) -> f64 {
        let second = if fault.is_wear() {
            SECOND_BY_WEAR
        } else {
            SECOND
        };
        self.share(build, Some(fault)) * second
    }

    /// How often a machine with nothing wrong is offered as faulty, compared with one that has a
    /// fault.
    pub(super) fn offered_for_nothing(&self, build: Build) -> f64 {
        self.share(build, None) * SECOND
    }
}

impl Part {
    /// Whether machines built so have it.
    #[must_use]
    pub fn exists_in(self, build: Build) -> bool {
        self.faults().any(|fault| fault.exists_in(build))
    }
}

impl Fault {
    /// Whether it can be in machines built so.
    #[must_use]
    pub fn exists_in(self, build: Build) -> bool {
        stated(build, Some(self)) > 0.0
    }
}

fn causes() -> impl Iterator<Item = Option<Fault>> {
    Fault::ALL.iter().copied().map(Some).chain([None])
}

/// The stated share.
fn stated(build: Build, fault: Option<Fault>) -> f64 {
    let column = build.column();
    let whole: f64 = ROWS.iter().map(|(_, shares)| shares[column]).sum();
    let share = fault.map_or(NOTHING_WRONG[column], |fault| ROWS[fault.place()].1[column]);
    share / (whole + NOTHING_WRONG[column])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_table_has_one_row_per_fault_in_order_and_each_build_adds_up() {
        for (fault, (row, _)) in Fault::ALL.iter().zip(&ROWS) {
            assert_eq!(fault, row);
        }
        for build in Build::ALL {
            let sum: f64 = causes()
                .map(|cause| Priors::default().share(*build, cause))
                .sum();
            assert!((sum - 1.0).abs() < 1e-12);
            let column = build.column();
            let written: f64 = ROWS.iter().map(|(_, shares)| shares[column]).sum();
            // Rounded to thousandths, forty rows may miss a thousand by a few.
            assert!((written + NOTHING_WRONG[column] - 1000.0).abs() < 5.0);
        }
    }

    #[test]
    fn an_edited_figure_is_kept_and_the_others_share_the_rest_as_before() {
        let mut priors = Priors::default();
        let build = Build::FrostFree;
        let (fan, heater) = (Fault::EvaporatorFanStopped, Fault::DefrostHeaterOpen);
        let before = priors.share(build, Some(heater)) / priors.share(build, None);
        priors.set(build, Some(fan), 40.0).unwrap();
        assert!((priors.share(build, Some(fan)) - 0.4).abs() < 1e-12);
        let after = priors.share(build, Some(heater)) / priors.share(build, None);
        assert!((before - after).abs() < 1e-12);
        let sum: f64 = causes().map(|cause| priors.share(build, cause)).sum();
        assert!((sum - 1.0).abs() < 1e-12);
        priors.reset(build, Some(fan));
        assert_eq!(priors, Priors::default());
    }

    #[test]
    fn figures_beyond_a_tenth_of_a_percent_either_way_are_refused_and_change_nothing() {
        let mut priors = Priors::default();
        let fault = Some(Fault::ChargeLow);
        let mut refused = |percent| priors.set(Build::Inverter, fault, percent).unwrap_err();
        assert_eq!(refused(0.05), PriorError::TooRare);
        assert_eq!(refused(-3.0), PriorError::TooRare);
        assert_eq!(refused(99.95), PriorError::TooCommon);
        assert_eq!(refused(f64::NAN), PriorError::NotANumber);
        assert_eq!(
            priors.set(Build::Inverter, Some(Fault::ThermostatOpen), 5.0),
            Err(PriorError::NoSuchPart)
        );
        assert_eq!(priors, Priors::default());
        priors.set(Build::Inverter, fault, 60.0).unwrap();
        let error = priors.set(Build::Inverter, Some(Fault::ChargeGone), 39.9);
        assert!(matches!(error, Err(PriorError::LeavesTooLittle { .. })));
    }
}

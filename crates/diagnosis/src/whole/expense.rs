//! What looking, trying and scrapping cost, for whoever holds our advice against other policies.

use super::build::Build;
use super::clue::Task;
use super::costs;
use super::fault::Fault;
use super::remedy::Stakes;
use super::setup::{AS_FOUND, minutes_between};

/// What things are stated to cost on one build of machine, in units of money.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Expense {
    build: Build,
    stakes: Stakes<'static>,
}

impl Expense {
    /// On a machine of which nothing but the build is known.
    ///
    /// ```
    /// use diagnosis::{Build, Clue, Expense, Fault};
    /// let expense = Expense::of(Build::FrostFree);
    /// assert!(expense.looking(Clue::Lint.task()) < expense.looking(Clue::CoilIce.task()));
    /// assert!(expense.trying(Fault::IcedUp) < expense.scrapping());
    /// ```
    #[must_use]
    pub fn of(build: Build) -> Self {
        let stakes = Stakes::of(None, build, &costs::STATED);
        Self { build, stakes }
    }

    /// Of a task on a machine as it is met: minutes of work, access among them, and of waiting.
    #[must_use]
    pub fn looking(self, task: Task) -> f64 {
        let effort = task.effort(self.build);
        let minutes = effort.minutes + minutes_between(AS_FOUND, effort.setup);
        self.stakes.looking(minutes, effort.waiting)
    }

    /// Of trying what mends a fault, right or wrong.
    #[must_use]
    pub fn trying(self, fault: Fault) -> f64 {
        self.stakes.trying(fault)
    }

    /// Of scrapping the machine.
    #[must_use]
    pub fn scrapping(self) -> f64 {
        self.stakes.scrap()
    }
}

//! The app's way of working against others, on many machines.

use diagnosis::{Model, Priors};
use measure::MeterKind;
use simulator::{Chance, ParameterError};

use crate::answers::{Examiner, Sheet};
use crate::best_possible::End;
use crate::draw::drawn;
use crate::score::Score;
use crate::walk::{Order, walk};

/// How a machine is worked on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Ways {
    /// By the app's next check.
    Ours,
    /// By a fixed checklist along the Path.
    Checklist,
    /// By any check that is offered.
    Random,
}

impl Ways {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Ours, Self::Checklist, Self::Random];
}

/// One machine worked on in each way, with the same readings.
#[derive(Debug, Clone, PartialEq)]
pub struct Evaluation {
    /// In the order of [`Ways::ALL`].
    pub scores: [Score; 3],
    /// What was known at the end of each.
    pub ends: [End; 3],
    /// What machine it is.
    pub blueprint: simulator::machine::Blueprint,
}

impl Evaluation {
    /// Of the machine of this number; `None` where no such machine would have been offered.
    ///
    /// ```
    /// use diagnosis::Model;
    /// use measure::MeterKind;
    /// let one = practice::Evaluation::of(&Model::default(), MeterKind::Basic, 1, 0)?;
    /// assert_eq!(one, practice::Evaluation::of(&Model::default(), MeterKind::Basic, 1, 0)?);
    /// # Ok::<(), simulator::ParameterError>(())
    /// ```
    ///
    /// # Errors
    /// [`ParameterError`] where the simulator refuses a machine, which tests rule out.
    pub fn of(
        model: &Model,
        meter: MeterKind,
        seed: u64,
        number: u64,
    ) -> Result<Option<Self>, ParameterError> {
        let Some(mut sheet) = drawn(&Priors::default(), meter, seed, number)? else {
            return Ok(None);
        };
        let orders = [
            Order::Ours,
            Order::Checklist,
            Order::Random(Chance::new(seed).fork(!number)),
        ];
        let scores = orders.map(|order| scored(&mut sheet, model, order));
        let [Some(ours), Some(checklist), Some(random)] = scores else {
            return Ok(None);
        };
        let [(ours, first), (checklist, second), (random, third)] = [ours, checklist, random];
        Ok(Some(Self {
            scores: [ours, checklist, random],
            ends: [first, second, third],
            blueprint: *sheet.machine().blueprint(),
        }))
    }
}

fn scored(sheet: &mut Sheet, model: &Model, order: Order) -> Option<(Score, End)> {
    let walked = walk(&mut Examiner::of(sheet), model, order)?;
    let end = End::of(&walked.job, &walked.whole);
    let score = Score::of(&walked, sheet.machine(), sheet.meter());
    Some((score, end))
}

//! To give a machine time and look again, and what the verdict is once that was done.

use super::super::clue::Clue;
use super::super::entered::{Weight, likeliest};
use super::super::prospects::Aim;
use super::super::remedy::Action;
use super::Case;

impl Case<'_> {
    /// The best plan's aim and that of the best without it. To give it time and look again is not the
    /// best of them once that was done, unless the other gives up what is rather sound.
    pub(super) fn best_two(&self) -> [(Aim, f64); 2] {
        let [best, other] = self.prospects.best_two();
        let waits = self.proposal(best.0, best.1).action == Action::WaitAndRepeat;
        // Nothing is given up that is likelier to be sound.
        let gives_up = matches!(other.0.action, Action::Scrap | Action::LicensedWork);
        let is_rash = gives_up && self.prospects.right(other.0) < 0.5;
        if waits && self.had_its_time() && !is_rash {
            [other, best]
        } else {
            [best, other]
        }
    }

    /// Whether half a day has shown that it isn't as cold as it should be.
    fn had_its_time(&self) -> bool {
        let clue = Clue::Temperatures;
        let shown = self.entered.iter().filter(|one| one.answers(clue.task()));
        let mut weights = shown.flat_map(|one| &one.weights);
        weights.any(|weight| match weight {
            Weight::Clue(of, weights) if *of == clue => {
                clue.answer("both-near-target") != Some(likeliest(weights))
            }
            _ => false,
        })
    }
}

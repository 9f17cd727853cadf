//! A machine at random, as hard as one likes.

use measure::MeterKind;
use simulator::Chance;

use crate::answers::Sheet;
use crate::made::Made;

/// How hard it is to find out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Difficulty {
    /// One fault that can't be overlooked.
    Easy,
    /// As machines are offered.
    Ordinary,
    /// Two faults, or one that barely shows.
    Hard,
}

/// From here on a fault is plain, and below there it barely shows (judgement).
const PLAIN: f64 = 0.6;
const FAINT: f64 = 0.35;

/// So many machines are looked at before the last is taken as it is.
const LOOKED_AT: u64 = 40;

impl Difficulty {
    /// All of them, from the easiest.
    pub const ALL: [Self; 3] = [Self::Easy, Self::Ordinary, Self::Hard];

    /// The first machine of a row that is as hard as this. Nothing where the row holds none.
    #[must_use]
    pub fn machine(self, meter: MeterKind, seed: u64) -> Option<(Made, Sheet)> {
        (0..LOOKED_AT).find_map(|number| {
            let made = Made::Drawn { seed, number };
            let sheet = made.sheet(meter)?;
            self.is_of(&sheet).then_some((made, sheet))
        })
    }

    /// Whether a machine is as hard as this.
    fn is_of(self, sheet: &Sheet) -> bool {
        let troubles = sheet.machine().troubles();
        // An open contact shows all it has, however bad it is called.
        let graded = troubles.iter().filter(|one| one.ailment.is_graded());
        let mut severities = graded.map(|one| one.severity.get());
        match self {
            Self::Easy => troubles.len() == 1 && severities.all(|how| how > PLAIN),
            Self::Ordinary => true,
            Self::Hard => troubles.len() > 1 || severities.any(|how| how < FAINT),
        }
    }

    /// A row of machines, from bits of chance. Few digits: it may be read out.
    #[must_use]
    pub fn row(bits: u64) -> u64 {
        Chance::new(bits).bits() % 1_000_000
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_machine_is_as_hard_as_asked_for_and_the_same_for_the_same_row() {
        for difficulty in Difficulty::ALL {
            let row = Difficulty::row(7);
            let (made, sheet) = difficulty.machine(MeterKind::Basic, row).unwrap();
            let (again, other) = difficulty.machine(MeterKind::Basic, row).unwrap();
            assert_eq!(made, again);
            assert_eq!(sheet.machine().troubles(), other.machine().troubles());
            let troubles = sheet.machine().troubles();
            let is_graded = troubles.iter().all(|one| one.ailment.is_graded());
            let severity = troubles.first().map_or(0.0, |one| one.severity.get());
            match difficulty {
                Difficulty::Easy => {
                    assert!(troubles.len() == 1 && (severity > 0.6 || !is_graded));
                }
                Difficulty::Ordinary => assert!(troubles.len() <= 2),
                Difficulty::Hard => {
                    assert!(troubles.len() == 2 || (severity < 0.35 && is_graded));
                }
            }
        }
    }
}

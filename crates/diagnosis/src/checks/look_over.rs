//! Looking the machine over, unplugged: what the plate says and what can be seen.

use std::collections::BTreeSet;

use job::{Answer, Job};

use super::machine::{Machine, MainsChoice};
use crate::choice::{Choice, answered, choices};
use crate::{Caution, Finding, Item, Refrigerant};

choices! {
    /// The mains that the plate names.
    pub enum PlateMains answers "look-over" / "plate-mains" {
        /// 110 to 127 V.
        V120F60 = "120-v-60-hz",
        /// 220 to 240 V, 50 Hz or both.
        V230F50 = "230-v-50-hz",
        /// 220 to 240 V, 60 Hz and no other.
        V220F60 = "220-v-60-hz",
        /// 100 V.
        V100 = "100-v",
        /// Gone, or not to be read.
        Unreadable = "unreadable",
    }
}

choices! {
    /// What can be seen.
    pub enum Sign {
        /// Cord or plug cut, crushed, scorched or mended with tape.
        CordDamaged = "cord-damaged",
        /// Burnt smell, soot or melted plastic at the compressor or a board.
        Burnt = "burnt",
        /// Oil on a tube or below the compressor.
        OilStain = "oil-stain",
        /// A hole or a nick in a tube, a plate or the freezer's wall.
        Puncture = "puncture",
        /// A valve clamped on a tube, a second braze, a new drier.
        EarlierSealedWork = "earlier-sealed-work",
        /// Droppings, a nest, chewed wires.
        Rodents = "rodents",
        /// A cover, a fan, a start device or a board is missing.
        MissingParts = "missing-parts",
        /// Water or damp in wiring or boards.
        Wet = "wet",
    }
}

/// What was seen.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct LookedOver {
    /// The mains on the plate.
    pub plate: Option<PlateMains>,
    /// What was ticked; `None` where nobody looked.
    pub signs: Option<BTreeSet<Sign>>,
}

impl LookedOver {
    /// What is asked, in order.
    pub(crate) const ITEMS: [Item; 2] = [Item::PlateMains, Item::Signs];

    pub(crate) fn of(job: &Job) -> Self {
        let signs = match job.answer("look-over", Item::Signs.name()) {
            Some(Answer::Choices(names)) => Some(
                names
                    .iter()
                    .filter_map(|name| Sign::from_name(name.as_str()))
                    .collect(),
            ),
            _ => None,
        };
        Self {
            plate: answered(job),
            signs,
        }
    }

    /// Whether the plate names other mains than the person has.
    pub(crate) fn wrong_mains(&self, machine: &Machine) -> bool {
        let (Some(plate), Some(mains)) = (self.plate, machine.mains) else {
            return false;
        };
        match plate {
            PlateMains::V120F60 => !matches!(mains, MainsChoice::V120F60 | MainsChoice::V127F60),
            PlateMains::V230F50 => !matches!(mains, MainsChoice::V230F50 | MainsChoice::V220F60),
            PlateMains::V220F60 => mains != MainsChoice::V220F60,
            PlateMains::V100 => mains != MainsChoice::V100,
            PlateMains::Unreadable => false,
        }
    }

    fn saw(&self, sign: Sign) -> bool {
        self.signs
            .as_ref()
            .is_some_and(|signs| signs.contains(&sign))
    }

    pub(crate) fn cautions(&self, machine: &Machine) -> Vec<Caution> {
        let gas_burns = machine.refrigerant.is_some_and(Refrigerant::burns);
        let gas_may_be_out = self.saw(Sign::Puncture) || self.saw(Sign::OilStain);
        let found = [
            (self.wrong_mains(machine), Caution::WrongMains),
            (self.saw(Sign::CordDamaged), Caution::DamagedCord),
            (self.saw(Sign::Burnt), Caution::BurntWiring),
            (self.saw(Sign::Rodents), Caution::ChewedWiring),
            (self.saw(Sign::Wet), Caution::WetWiring),
            (gas_burns && gas_may_be_out, Caution::GasMayBeOut),
        ];
        found
            .into_iter()
            .filter_map(|(is_so, caution)| is_so.then_some(caution))
            .collect()
    }

    pub(crate) fn findings(&self) -> Vec<Finding> {
        let signs = self.signs.iter().flatten();
        signs.copied().map(Finding::Sign).collect()
    }
}

//! Machines with one clear lesson each.

use diagnosis::Complaint;
use measure::MeterKind;
use quantity::Ratio;
use simulator::Chance;
use simulator::appliance::Kind;
use simulator::machine::{Ailment, Blueprint, Gear, Machine, Trouble};

use crate::answers::Sheet;

/// A machine with one clear lesson.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Lesson {
    /// A chest freezer whose start device is open.
    HumsAndClicks,
    /// A frost-free machine that trips the outlet: which part leaks?
    TripsTheOutlet,
    /// A chest freezer that has lost part of its gas.
    NeverGetsThere,
    /// A frost-free machine behind ice, with a dead defrost heater.
    ColdOnOneSide,
    /// A sound machine that was brought back.
    BroughtBack,
}

/// So many machines are tried; a sound one that does what the lesson needs is among the first.
const TRIES: u64 = 60;

impl Lesson {
    /// All of them, from the easiest.
    pub const ALL: [Self; 5] = [
        Self::HumsAndClicks,
        Self::TripsTheOutlet,
        Self::NeverGetsThere,
        Self::ColdOnOneSide,
        Self::BroughtBack,
    ];

    /// Its published name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::HumsAndClicks => "hums-and-clicks",
            Self::TripsTheOutlet => "trips-the-outlet",
            Self::NeverGetsThere => "never-gets-there",
            Self::ColdOnOneSide => "cold-on-one-side",
            Self::BroughtBack => "brought-back",
        }
    }

    /// The lesson of this name.
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|one| one.name() == name)
    }

    /// Its kind of machine, what is wrong with it and how badly, and what it must be seen to do.
    const fn set_up(self) -> (Kind, Option<(Ailment, f64)>, &'static [Complaint]) {
        match self {
            Self::HumsAndClicks => (
                Kind::ChestFreezer,
                Some((Ailment::StartDeviceOpen, 1.0)),
                &[Complaint::HumsThenClicks],
            ),
            Self::TripsTheOutlet => (
                Kind::FrostFree,
                Some((Ailment::WiringLeaks, 0.9)),
                &[Complaint::TripsTheOutlet],
            ),
            Self::NeverGetsThere => (
                Kind::ChestFreezer,
                Some((Ailment::ChargeLow, 0.95)),
                &[Complaint::RunsStaysWarm],
            ),
            Self::ColdOnOneSide => (
                Kind::FrostFree,
                Some((Ailment::HeaterOpen, 0.9)),
                &[Complaint::OneSideWarm, Complaint::RunsStaysWarm],
            ),
            Self::BroughtBack => (Kind::ChestFreezer, None, &[]),
        }
    }

    /// Makes its machine: the first that fits the lesson and works but for what is wrong with it.
    #[must_use]
    pub fn sheet(self, meter: MeterKind) -> Option<Sheet> {
        let (kind, wrong, complaints) = self.set_up();
        let place = Self::ALL.iter().position(|one| *one == self)? as u64;
        (0..TRIES).find_map(|one| {
            let chance = Chance::new(place).fork(one);
            let blueprint = Blueprint::drawn(kind, false, &mut chance.fork(0));
            if !self.suits(&blueprint) {
                return None;
            }
            let built = |troubles: &[Trouble]| {
                let machine = Machine::build(&blueprint, troubles, chance.fork(1)).ok()?;
                Some(Sheet::new(machine, meter, &chance.fork(2)))
            };
            let mut sound = built(&[])?;
            if !sound.works() {
                return None;
            }
            let Some((ailment, severity)) = wrong else {
                return Some(sound);
            };
            let severity = Ratio::new(severity);
            let mut sheet = built(&[Trouble { ailment, severity }])?;
            let symptom = sheet.symptom()?;
            complaints.contains(&symptom).then_some(sheet)
        })
    }

    /// Whether a machine shows the lesson without a detour.
    fn suits(self, blueprint: &Blueprint) -> bool {
        match self {
            Self::HumsAndClicks => blueprint.gear == Gear::Ptc,
            _ => blueprint.gear != Gear::CurrentRelay,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::walk::{Examined, Order, walk};
    use crate::{Score, fault_of};
    use diagnosis::{Fault, Model};

    #[test]
    fn every_lesson_has_its_machine_under_its_name() {
        for lesson in Lesson::ALL {
            assert_eq!(Lesson::from_name(lesson.name()), Some(lesson));
            let mut sheet = lesson.sheet(MeterKind::Basic).unwrap();
            let (_, wrong, _) = lesson.set_up();
            let there: Vec<_> = sheet.machine().troubles().to_vec();
            assert_eq!(
                there.iter().map(|one| one.ailment).collect::<Vec<_>>(),
                wrong
                    .iter()
                    .map(|(ailment, _)| *ailment)
                    .collect::<Vec<_>>()
            );
            assert!(!sheet.opening().is_empty());
        }
    }

    /// A lesson that the app itself gets wrong would teach a mistake.
    #[test]
    fn who_follows_the_next_check_comes_to_the_point_of_every_lesson() {
        for lesson in Lesson::ALL {
            let mut sheet = lesson.sheet(MeterKind::Basic).unwrap();
            let walked = walk(&mut sheet, &Model::default(), Order::Ours).unwrap();
            let score = Score::of(&walked, sheet.machine(), sheet.meter());
            assert!(score.right_first, "{lesson:?}: {:?}", score.first);
            assert_eq!(score.unsafe_steps, 0, "{lesson:?}");
        }
    }

    #[test]
    fn the_leak_of_the_second_lesson_is_none_of_the_compressor() {
        let sheet = Lesson::TripsTheOutlet.sheet(MeterKind::Basic).unwrap();
        let faults = sheet.machine().troubles().iter();
        let faults: Vec<Fault> = faults.map(|one| fault_of(one.ailment)).collect();
        assert_eq!(faults, [Fault::AnotherPartLeaks]);
        let bench = sheet.machine().bench();
        assert_eq!(bench.pins_to_shell(), None);
        assert!(bench.blades_to_metal().is_some());
    }
}

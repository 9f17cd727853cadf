//! What to do about it, with what it costs, what would be next best, and what must not be done
//! meanwhile.

mod before_giving_up;
mod own_look;
mod time_given;

use super::build::Build;
use super::clue::{Clue, Task};
use super::conditions::motor;
use super::fault::Fault::{self, *};
use super::prospects::{Aim, Prospects};
use super::remedy::{Action, Stakes};
use super::suspects::Compared;
use super::{Entered, NextCheck};
use crate::choice::choices;
use crate::{Caution, Check, Machine, Refrigerant};

choices! {
    /// What must not be done meanwhile.
    pub enum Hold {
        /// Don't energise it: its metal may be live.
        DoNotEnergise = "do-not-energise",
        /// Don't run it: gas that burns may be out.
        DoNotRunGasMayBeOut = "do-not-run-gas-may-be-out",
        /// Don't call the compressor dead before a known-good start device and enough volts.
        DoNotCondemnCompressor = "do-not-condemn-compressor",
        /// No start kit: it would hide why it doesn't start, or isn't made for this motor.
        DoNotFitStartKit = "do-not-fit-start-kit",
        /// Don't buy the board before the three windings are equal and clear of earth.
        DoNotBuyBoardYet = "do-not-buy-board-yet",
        /// Don't scrap it yet: what is known so far doesn't say that nothing else helps.
        DoNotScrapYet = "do-not-scrap-yet",
        /// The sealed system stays closed.
        DoNotOpenSealedSystem = "do-not-open-sealed-system",
    }
}

choices! {
    /// Whether enough is known.
    pub enum Decided {
        /// Another check is worth more than it costs.
        GoOn = "go-on",
        /// One action is right in nine cases of ten, or more; in nineteen of twenty where it can't be
        /// undone.
        NearlySure = "nearly-sure",
        /// No check that can be done safely now is worth its time.
        NothingWorthwhile = "nothing-worthwhile",
    }
}

/// One action at its expected cost.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Proposal {
    /// What to do.
    pub action: Action,
    /// About which fault; `None` where it is about the whole machine.
    pub fault: Option<Fault>,
    /// What it costs in expectation, in units of money: with what is worth trying before and
    /// after it, and the scrap yard in the end. Of a best bet while one goes on: what the cheapest
    /// plan costs.
    pub cost: f64,
    /// How likely it is right.
    pub right: f64,
}

/// What to do.
#[derive(Debug, Clone, PartialEq)]
pub struct Verdict {
    /// The action with the least expected cost.
    pub best: Proposal,
    /// The best that leaves it out.
    pub runner_up: Proposal,
    /// What must not be done meanwhile.
    pub hold: Vec<Hold>,
    /// Whether enough is known to do it.
    pub decided: Decided,
}

/// From here on an action may be taken without more checks: nine of ten.
const NEARLY_SURE: f64 = 0.9;
/// The same for what can't be undone.
const SURE_TO_SCRAP: f64 = 0.95;
/// Below this a part is fitted to see, not replaced for good.
const FOR_GOOD: f64 = 0.8;
/// A fault that scrapping is put down to is at least this likely.
const NAMED: f64 = 0.1;

/// Below this a cheap try is no verdict: the likeliest repair is.
const HARDLY: f64 = 0.1;
/// A runner-up from here on has to be held back while one goes on, if it can't be undone.
const HALF: f64 = 0.5;
/// From this chance on that it hums, the trouble is at the start.
const HUMS: f64 = 0.25;

/// What is seen, felt and heard of the sealed system from outside.
pub(super) const SEALED_SIGNS: [Task; 7] = [
    Task::Clue(Clue::PowerLevel),
    Task::Clue(Clue::WattsTrend),
    Task::Clue(Clue::CondenserWarmth),
    Task::Clue(Clue::Drier),
    Task::Clue(Clue::SuctionLine),
    Task::Clue(Clue::Hiss),
    Task::Clue(Clue::FrostPattern),
];
/// The check that a test fit is.
pub(super) const TEST_FIT: Task = Task::Clue(Clue::GoodDevice);

/// Whether a verdict may be to give a machine up: then what would be believed without a sign of the
/// sealed system is asked for.
pub(super) fn may_give_up(prospects: &Prospects<'_>) -> bool {
    let [(best, _), (other, _)] = prospects.best_two();
    let gives_up = |aim: Aim| matches!(aim.action, Action::Scrap | Action::LicensedWork);
    // To give it time may be ruled out, and then the other is the best.
    let by_time = best.action == Action::NothingToRepair && gives_up(other);
    gives_up(best) || by_time || prospects.best_bet().is_some_and(gives_up)
}

/// Everything that a verdict is drawn from.
pub(super) struct Case<'a> {
    pub(super) machine: &'a Machine,
    pub(super) cautions: &'a [Caution],
    pub(super) entered: &'a [Entered],
    pub(super) compared: &'a Compared,
    pub(super) prospects: &'a Prospects<'a>,
    pub(super) stakes: Stakes<'a>,
    pub(super) next: &'a [NextCheck],
}

impl Case<'_> {
    pub(super) fn verdict(&self) -> Verdict {
        let [(aim, cost), (other, other_cost)] = self.best_two();
        let mut best = self.proposal(aim, cost);
        let mut runner_up = self.proposal(other, other_cost);
        let mut hold = self.hold();
        let mut decided = self.decided(&best, &hold);
        if (decided == Decided::GoOn || best.right < HARDLY)
            && let Some(bet) = self.prospects.best_bet()
            && bet != aim
        {
            // What it costs is what going on costs: nobody buys a part on such a bet.
            if bet == other {
                runner_up = self.proposal(aim, cost);
            }
            best = self.proposal(bet, cost);
            if self.open_look(&best).is_some() {
                decided = Decided::GoOn;
            }
        }
        let comes_to_scrap = best.action == Action::Scrap
            || (runner_up.action == Action::Scrap && runner_up.right >= HALF);
        if comes_to_scrap && decided == Decided::GoOn {
            hold.push(Hold::DoNotScrapYet);
        }
        Verdict {
            runner_up,
            best,
            hold,
            decided,
        }
    }

    /// The check that the verdict asks for before any other: to fit a part to see, once the old
    /// one and the pins were looked at; a second sign before a sealed system is given up.
    pub(super) fn asks_first(&self, verdict: &Verdict) -> Option<Task> {
        if verdict.best.action == Action::TestFit {
            return Some(self.look_before_fitting(&verdict.best).unwrap_or(TEST_FIT));
        }
        self.missing_proof(&verdict.best, &verdict.hold)
            .or_else(|| self.open_look(&verdict.best))
            .or_else(|| {
                let [(aim, cost), _] = self.best_two();
                self.open_look(&self.proposal(aim, cost))
            })
    }

    /// The look that belongs to what is advised, where it can be had and nothing else is worth its
    /// time: then it is all that is left before one acts.
    fn open_look(&self, best: &Proposal) -> Option<Task> {
        let look = own_look::own_look(best.action, best.fault)?;
        let is_open = best.right < NEARLY_SURE
            && !self.was_done(look)
            && self.next.iter().any(|check| check.task == look);
        (is_open && !self.is_any_worthwhile()).then_some(look)
    }

    /// A question about its past is worth asking, and holds nothing up.
    fn is_any_worthwhile(&self) -> bool {
        let mut checks = self.next.iter().filter(|check| check.task != Task::History);
        checks.any(NextCheck::is_worthwhile)
    }

    /// What is still to be seen before a machine may be given up, where it can be seen.
    fn missing_proof(&self, best: &Proposal, hold: &[Hold]) -> Option<Task> {
        self.sealed_sign(best)
            .or_else(|| self.look_outside(best))
            .or_else(|| self.place_of_leak(best))
            .or_else(|| self.trial_of_compressor(best, hold))
            .or_else(|| self.look_before_fitting(best))
    }

    /// The look and the ohms that come before a part is fetched to be fitted: who fits it bares
    /// the pins anyway, and an open winding or a good old part makes the trial needless.
    fn look_before_fitting(&self, best: &Proposal) -> Option<Task> {
        const LOOKS: [Check; 3] = [Check::StartDevice, Check::Shell, Check::Windings];
        if best.action != Action::TestFit {
            return None;
        }
        let looks = LOOKS.iter().map(|check| Task::Check(*check));
        let mut open = looks.filter(|task| !self.was_done(*task));
        open.find(|task| self.next.iter().any(|check| check.task == *task))
    }

    /// The check that tells a winding's leak from another part's, where none was made: from the
    /// plug both look the same, and a heater that leaks ends no compressor.
    fn place_of_leak(&self, best: &Proposal) -> Option<Task> {
        let telling = [Task::Check(Check::Shell), Task::Clue(Clue::PartByPart)];
        let is_blamed = best.fault == Some(WindingLeaks)
            && matches!(
                best.action,
                Action::StopDoNotEnergise | Action::Scrap | Action::LicensedWork
            );
        if !is_blamed || telling.iter().any(|task| self.was_done(*task)) {
            return None;
        }
        let mut next = self.next.iter().map(|check| check.task);
        next.find(|task| telling.contains(task))
    }

    /// The trial with a known-good start device, or what clears the way for it.
    fn trial_of_compressor(&self, best: &Proposal, hold: &[Hold]) -> Option<Task> {
        let condemns = matches!(best.action, Action::Scrap | Action::LicensedWork);
        if !condemns || !hold.contains(&Hold::DoNotCondemnCompressor) {
            return None;
        }
        let is_key = |check: &&NextCheck| check.opens.is_some_and(|opens| opens.task == TEST_FIT);
        let fit = self.next.iter().find(|check| check.task == TEST_FIT);
        let found = fit.or_else(|| self.next.iter().find(is_key));
        found.map(|check| check.task)
    }

    fn proposal(&self, aim: Aim, cost: f64) -> Proposal {
        let right = self.prospects.right(aim);
        let (action, fault) = match aim.action {
            Action::NothingToRepair if right < FOR_GOOD => (Action::WaitAndRepeat, None),
            Action::Replace
                if aim.fault.is_some_and(is_start_device)
                    && right < FOR_GOOD
                    && !self.was_done(Task::Clue(Clue::GoodDevice)) =>
            {
                (Action::TestFit, aim.fault)
            }
            Action::Scrap if self.chance(&[WindingLeaks]) >= 0.5 => {
                (Action::StopDoNotEnergise, Some(WindingLeaks))
            }
            Action::Scrap => (Action::Scrap, self.likeliest_condemning()),
            other => (other, aim.fault),
        };
        Proposal {
            action,
            fault,
            cost,
            right,
        }
    }

    fn decided(&self, best: &Proposal, hold: &[Hold]) -> Decided {
        let condemns = matches!(best.action, Action::Scrap | Action::LicensedWork);
        let held_back = condemns && hold.contains(&Hold::DoNotCondemnCompressor);
        // To fit a part to see is itself the next check.
        let to_see =
            best.action == Action::TestFit && self.next.iter().any(|check| check.task == TEST_FIT);
        let proof = self.missing_proof(best, hold);
        let worthwhile =
            to_see || proof.is_some() || self.is_any_worthwhile() || self.open_look(best).is_some();
        let enough = if condemns { SURE_TO_SCRAP } else { NEARLY_SURE };
        if best.right >= enough && !held_back && proof.is_none() {
            Decided::NearlySure
        } else if worthwhile {
            Decided::GoOn
        } else {
            Decided::NothingWorthwhile
        }
    }

    fn hold(&self) -> Vec<Hold> {
        let live = [
            Caution::LiveMetal,
            Caution::LeakInDoubt,
            Caution::BrokenEarth,
        ]
        .iter()
        .any(|caution| self.cautions.contains(caution));
        let flammable = self.machine.refrigerant.is_some_and(Refrigerant::burns);
        let stuck = self.chance(&[RotorTight, RotorSeized, WindingOpen, TurnsShorted]);
        let cheap = self.chance(&[
            VoltageFalls,
            WiringBurnt,
            StartDeviceOpen,
            StartDeviceWeak,
            StartDeviceStaysIn,
            CapacitorFailed,
        ]);
        let tried = self.was_done(Task::Clue(Clue::GoodDevice));
        let leaks = self.chance(&[WindingLeaks, AnotherPartLeaks]);
        let gas = self.chance(&[ChargeLow, ChargeGone]);
        let sealed = self.chance(&[
            ValvesWorn,
            CapillaryRestricted,
            ChargeLow,
            ChargeGone,
            ChargeContaminated,
        ]);
        let drive = self.chance(&[DriveWithoutOutput]);
        let found = [
            (live || leaks >= 0.2, Hold::DoNotEnergise),
            (flammable && gas >= 0.3, Hold::DoNotRunGasMayBeOut),
            (
                stuck >= 0.1 && !tried && cheap >= 0.03,
                Hold::DoNotCondemnCompressor,
            ),
            (self.may_think_of_a_kit(), Hold::DoNotFitStartKit),
            (
                drive >= 0.1 && !self.was_done(Task::Check(Check::Windings)),
                Hold::DoNotBuyBoardYet,
            ),
            (sealed >= 0.1, Hold::DoNotOpenSealedSystem),
        ];
        found
            .into_iter()
            .filter_map(|(is_so, hold)| is_so.then_some(hold))
            .collect()
    }

    /// Whether someone may think of a start kit where none helps: the trouble is at the start, or
    /// one was tried.
    fn may_think_of_a_kit(&self) -> bool {
        let picture = &self.compared.picture;
        let hums = picture.motor.get(motor::HUMS).copied().unwrap_or(0.0);
        let inverter = picture.builds[Build::Inverter.column()] >= 0.3
            && self.chance(&[DriveWithoutOutput, InverterMotorFailed]) >= 0.1;
        let burns = self.machine.refrigerant.is_some_and(Refrigerant::burns);
        let hard = self.chance(&[RotorTight, RotorSeized]) >= 0.1;
        inverter
            || (hums >= HUMS && (burns || hard))
            || self.chance(&[RotorTight]) >= 0.1
            || self.was_done(Task::Clue(Clue::StartKit))
    }

    /// The chances of some faults added up: no less than that one of them is there.
    fn chance(&self, faults: &[Fault]) -> f64 {
        let each = faults.iter();
        each.map(|fault| self.compared.picture.faults[fault.place()])
            .sum()
    }

    fn likeliest_condemning(&self) -> Option<Fault> {
        let suspects = self.compared.suspects();
        let likely = suspects.iter().filter(|one| one.probability >= NAMED);
        let mut faults = likely.filter_map(|suspect| suspect.fault);
        faults.find(|fault| self.stakes.is_condemned_by(*fault))
    }

    fn was_done(&self, task: Task) -> bool {
        self.entered.iter().any(|one| one.answers(task))
    }
}

const fn is_start_device(fault: Fault) -> bool {
    matches!(
        fault,
        StartDeviceOpen | StartDeviceWeak | StartDeviceStaysIn
    )
}

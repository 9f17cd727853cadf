//! What is proved of a machine that cools again, and what is still owed.
//!
//! Answers: for each thing that a buyer of such a machine should ask, is it shown by readings, what
//! is missing, how long does that take, or has it failed? Must never know: how it is said.
//!
//! Nothing here can be ticked: each point follows from readings, tries and events with their
//! times. What is asked for and how long is judgement where no source stands beside it.

mod cold;
mod defrost;
mod start;

use job::{Job, Moment};
use quantity::Seconds;

use crate::choice::{Choice, answered, choices};
use crate::cool_down::{Compartment, CoolDown};
use crate::whole::{Action, Build, Change, Fault, Hold, Whole, present};
use crate::{Assessment, Caution, Kind, Refrigerant};

choices! {
    /// Something to be shown.
    pub enum ProofPoint {
        /// It starts after the rest that it gets in use.
        Restarts = "restarts",
        /// What it takes doesn't rise while it runs.
        SteadyPower = "steady-power",
        /// Somebody stood by for the first two hours.
        FirstTwoHours = "first-two-hours",
        /// Each compartment got as cold as it should.
        TargetReached = "target-reached",
        /// It stayed so for a day, with its cycles.
        HeldForADay = "held-for-a-day",
        /// Nothing tripped in that time.
        NoTrips = "no-trips",
        /// The seal was looked at.
        Seal = "seal",
        /// A frost-free machine defrosted and went on.
        Defrost = "defrost",
    }
}

/// How far a point is shown.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ProofState {
    /// Readings show it.
    Done,
    /// Not shown yet.
    NotYet {
        /// What is missing.
        missing: Missing,
        /// How long it takes from here at least.
        takes: Seconds,
    },
    /// Readings show the contrary.
    Failed(Failure),
    /// Not asked of this machine.
    NotNeeded(NotNeeded),
}

/// What is missing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Missing {
    /// So many starts after a rest of ten minutes at most.
    Starts(usize),
    /// Watts after half an hour, beside those after five minutes.
    LaterWatts,
    /// Switch it on, warm, and note when.
    SwitchOn,
    /// Somebody who stands by: switch it on again and read every half hour.
    StandBy,
    /// So much more time, with readings.
    Time,
    /// A thermometer in a compartment.
    Thermometer(Compartment),
    /// A compartment isn't at its target yet.
    Target(Compartment),
    /// The thermometer's scale is in doubt.
    Scale,
    /// Readings with no longer gap than a night.
    Gap,
    /// Its cycles: when the compressor goes on and off, or a file that shows them.
    Cycles,
    /// The slip of paper at the seal.
    SealLook,
    /// A defrost that begins.
    DefrostBegin,
    /// That it ends by itself.
    DefrostEnd,
    /// Its water in the pan.
    DefrostWater,
    /// That it gets colder again afterwards.
    DefrostAfter,
}

/// What readings show to the contrary.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Failure {
    /// It didn't start after a rest of five minutes or more.
    NoStart,
    /// What it takes rises while it runs.
    PowerRises,
    /// A day was over and a compartment not there.
    TooWarm(Compartment),
    /// A compartment that had got there didn't stay so.
    DidNotHold(Compartment),
    /// It tripped so often.
    Tripped(usize),
    /// The seal lets air in.
    SealLeaks,
    /// The defrost went on for more than an hour.
    DefrostWithoutEnd,
}

/// Why a point isn't asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NotNeeded {
    /// A board starts it and decides when.
    BoardStarts,
    /// No meter was there: what isn't measured is no part of it.
    NoMeter,
    /// Frost is taken off by hand.
    DefrostedByHand,
}

/// One point with its state.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ProofItem {
    /// What.
    pub point: ProofPoint,
    /// How far.
    pub state: ProofState,
}

/// Why a machine isn't run for proof.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HeldBack {
    /// Its gas burns, or nobody knows which it is, and may be out.
    GasMayBeOut,
    /// Something says that it must not be powered.
    MustStop,
    /// It isn't to be mended, or by someone licensed first.
    NotToBeRun,
}

choices! {
    /// What all points come to.
    pub enum Proven {
        /// All is shown.
        All = "all",
        /// It is cold and held, and no defrost was seen.
        ColdDefrostNotProven = "cold-defrost-not-proven",
        /// Something is still owed.
        NotYet = "not-yet",
        /// Something failed.
        Failed = "failed",
        /// It isn't run for proof.
        HeldBack = "held-back",
    }
}

/// What is proved of a machine.
#[derive(Debug, Clone, PartialEq)]
pub struct Proof {
    /// Each point in order; none where it is held back.
    pub items: Vec<ProofItem>,
    /// Why it isn't run for proof.
    pub held_back: Option<HeldBack>,
}

impl Proof {
    /// Of a job, as of a moment. `None` before there is anything to prove: until something was
    /// done to the machine, it was switched on for it, or nothing needs doing.
    #[must_use]
    pub fn of(job: &Job, assessment: &Assessment, now: Moment) -> Option<Self> {
        if !is_due(job, assessment) {
            return None;
        }
        if let Some(why) = held_back(assessment) {
            let held_back = Some(why);
            let items = Vec::new();
            return Some(Self { items, held_back });
        }
        let seen = Seen {
            job,
            present: present(job),
            assessment,
            cool_down: assessment.cool_down.as_ref(),
            now,
        };
        let items = ProofPoint::ALL.iter().map(|point| ProofItem {
            point: *point,
            state: seen.state(*point),
        });
        Some(Self {
            items: items.collect(),
            held_back: None,
        })
    }

    /// The state of a point; `None` where it is held back.
    #[must_use]
    pub fn state(&self, point: ProofPoint) -> Option<ProofState> {
        let found = self.items.iter().find(|item| item.point == point);
        found.map(|item| item.state)
    }

    /// What all of it comes to.
    #[must_use]
    pub fn proven(&self) -> Proven {
        if self.held_back.is_some() {
            return Proven::HeldBack;
        }
        let states = || self.items.iter().map(|item| (item.point, item.state));
        if states().any(|(_, state)| matches!(state, ProofState::Failed(_))) {
            return Proven::Failed;
        }
        let mut owed = states().filter(|(_, state)| matches!(state, ProofState::NotYet { .. }));
        match (owed.next(), owed.next()) {
            (None, _) => Proven::All,
            (Some((ProofPoint::Defrost, _)), None) => Proven::ColdDefrostNotProven,
            _ => Proven::NotYet,
        }
    }

    /// How long the rest takes at least: points go on beside each other.
    #[must_use]
    pub fn takes(&self) -> Seconds {
        let each = self.items.iter().filter_map(|item| match item.state {
            ProofState::NotYet { takes, .. } => Some(takes.get()),
            _ => None,
        });
        Seconds::new(each.fold(0.0, f64::max))
    }
}

fn is_due(job: &Job, assessment: &Assessment) -> bool {
    let whole = assessment.whole.as_ref();
    let is_fine = whole.is_some_and(|whole| {
        let best = &whole.verdict.best;
        best.action == Action::NothingToRepair
    });
    let standing = job.standing();
    let was_changed = standing
        .iter()
        .any(|entry| Change::told_by(entry).is_some());
    assessment.cool_down.is_some() || was_changed || is_fine
}

fn held_back(assessment: &Assessment) -> Option<HeldBack> {
    let whole = assessment.whole.as_ref();
    let holds = |hold: Hold| whole.is_some_and(|whole| whole.verdict.hold.contains(&hold));
    let is_out = assessment.cautions.contains(&Caution::GasMayBeOut);
    let may_burn = assessment
        .machine
        .refrigerant
        .is_none_or(Refrigerant::burns);
    let is_likely = may_burn && whole.is_some_and(|whole| lost(whole) >= MAY_BE_OUT);
    if is_out || is_likely || holds(Hold::DoNotRunGasMayBeOut) {
        return Some(HeldBack::GasMayBeOut);
    }
    if assessment.must_stop() || holds(Hold::DoNotEnergise) {
        return Some(HeldBack::MustStop);
    }
    let given_up = [
        Action::Scrap,
        Action::LicensedWork,
        Action::StopDoNotEnergise,
    ];
    let is_given_up = whole.is_some_and(|whole| given_up.contains(&whole.verdict.best.action));
    // One that runs already shows what it fails in.
    let runs = assessment.cool_down.is_some();
    (is_given_up && !runs).then_some(HeldBack::NotToBeRun)
}

/// As likely as this gas may be out (the verdict's own bound: judgement).
const MAY_BE_OUT: f64 = 0.3;

/// How likely charge is lost: one compressor loses its charge wholly or in part.
fn lost(whole: &Whole) -> f64 {
    let charge = [Some(Fault::ChargeLow), Some(Fault::ChargeGone)];
    let of_charge = whole
        .suspects
        .iter()
        .filter(|one| charge.contains(&one.fault));
    of_charge.map(|one| one.probability).sum()
}

/// What there is to show it by.
struct Seen<'a> {
    job: &'a Job,
    /// As the machine is now, where something was changed.
    present: Option<Job>,
    assessment: &'a Assessment,
    cool_down: Option<&'a CoolDown>,
    now: Moment,
}

impl Seen<'_> {
    fn state(&self, point: ProofPoint) -> ProofState {
        match point {
            ProofPoint::Restarts => self.restarts(),
            ProofPoint::SteadyPower => self.steady_power(),
            ProofPoint::FirstTwoHours => self.first_two_hours(),
            ProofPoint::TargetReached => self.target_reached(),
            ProofPoint::HeldForADay => self.held_for_a_day(),
            ProofPoint::NoTrips => self.no_trips(),
            ProofPoint::Seal => self.seal(),
            ProofPoint::Defrost => self.defrost(),
        }
    }

    fn build(&self) -> Option<Build> {
        answered(self.job)
    }

    fn compartments(&self) -> &'static [Compartment] {
        Compartment::of_kind(answered::<Kind>(self.job))
    }
}

const fn not_yet(missing: Missing, takes: Seconds) -> ProofState {
    ProofState::NotYet { missing, takes }
}

//! What is known now: the one function that turns observations into conclusions.

mod advised;
mod path_state;

pub use advised::{Adviser, advise};

use job::{Job, Moment};
use measure::windings::{Leads, WindingPriors};

use crate::checks::capacitor_in_circuit::CapacitorInCircuit;
use crate::checks::ground::{Grade, Ground};
use crate::checks::leakage::Leaking;
use crate::checks::look_over::LookedOver;
use crate::checks::machine::Machine;
use crate::checks::protector::ProtectorKnown;
use crate::checks::running::Running;
use crate::checks::shell::Shell;
use crate::checks::start_device::StartDeviceKnown;
use crate::checks::stored_charge::StoredCharge;
use crate::checks::supply::Supply;
use crate::checks::winding_temperature::WindingTemperature;
use crate::checks::windings::WindingsKnown;
use crate::choice::Choice;
use crate::cool_down::CoolDown;
use crate::proof::Proof;
use crate::start_trials::StartTrials;
use crate::whole::{self, Assumptions, ExportedNetwork, Figures, Whole};
use crate::{Caution, Check, Finding, Gates, Level, Link, LinkState, Step};
use path_state::path_of;

/// The assumptions behind every conclusion.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Model {
    /// What is thought of windings before they are measured.
    pub windings: WindingPriors,
    /// What is thought of whole machines before anything is known.
    pub machines: Assumptions,
}

impl Model {
    /// The model that a job is weighed with: the figures that came with it count, and where none
    /// did a person's own. Is this one, networks and all, where it has those already.
    #[must_use]
    pub fn for_job(self, job: &Job, own: &Figures) -> Self {
        let figures = Figures::of_job(job).unwrap_or_else(|| own.clone());
        if *self.machines.figures() == figures {
            return self;
        }
        Self {
            machines: Assumptions::new(figures),
            ..self
        }
    }
}

/// What is known about a machine. Never stored: made anew from the job each time.
#[derive(Debug, Clone, PartialEq)]
pub struct Assessment {
    /// What machine it is.
    pub machine: Machine,
    /// The state of each link, in the order of the Path.
    pub path: Vec<(Link, LinkState)>,
    /// What was found, in the order of the checks.
    pub findings: Vec<Finding>,
    /// What to be careful of; stops first.
    pub cautions: Vec<Caution>,
    /// What may be powered.
    pub gates: Gates,
    /// What to do, in a safe order; the first is the next step.
    pub next: Vec<Step>,
    /// The windings, once anything about them was entered.
    pub windings: Option<WindingsKnown>,
    /// What tries to start it say, once there were any or it was timed.
    pub start_trials: Option<StartTrials>,
    /// How it cools since it was switched on, once it was.
    pub cool_down: Option<CoolDown>,
    /// What is proved of it, once there is something to prove.
    pub proof: Option<Proof>,
    /// Everything weighed together, once there is something to weigh.
    pub whole: Option<Whole>,
}

/// Draws all conclusions from a job. Same model, job and moment: same answer.
///
/// `now` is the moment of asking: cooling is counted up to it.
#[must_use]
pub fn assess(model: &Model, job: &Job, now: Moment) -> Assessment {
    let present = whole::present(job);
    let as_it_is = present.as_ref().unwrap_or(job);
    let known = Known::of(model, as_it_is, now);
    let mut assessment = known.assessment(as_it_is, present.is_some());
    let weighed = known.to_weigh(&assessment, model, now);
    assessment.whole = whole::weigh(&model.machines, job, weighed);
    assessment.start_trials = StartTrials::of(job, now).if_any();
    assessment.cool_down = CoolDown::of(job, now);
    assessment.proof = Proof::of(job, &assessment, now);
    let mut links = known.links(present.is_some());
    links.extend(path_state::shown(job, &assessment));
    assessment.path = path_of(&links);
    assessment
}

/// The same without weighing the whole machine, for lists of many jobs: what each check says by
/// itself takes a small part of the time.
#[must_use]
pub fn assess_checks(model: &Model, job: &Job, now: Moment) -> Assessment {
    let present = whole::present(job);
    let as_it_is = present.as_ref().unwrap_or(job);
    Known::of(model, as_it_is, now).assessment(as_it_is, present.is_some())
}

/// The networks behind [`Assessment::whole`] with a job's evidence, for other programs to check.
#[must_use]
pub fn export_networks(model: &Model, job: &Job, now: Moment) -> Vec<ExportedNetwork> {
    let present = whole::present(job);
    let known = Known::of(model, present.as_ref().unwrap_or(job), now);
    let weighed = whole::Known {
        machine: &known.machine,
        windings: &known.windings,
        cautions: &[],
        gates: &Gates::of(&[], &known.ground, &known.shell),
        safety_first: Vec::new(),
        model,
        now,
    };
    whole::export(&model.machines, job, &weighed)
}

/// What each check knows by itself.
struct Known {
    machine: Machine,
    looked_over: LookedOver,
    ground: Ground,
    charge: StoredCharge,
    windings: WindingsKnown,
    shell: Shell,
    protector: ProtectorKnown,
    start_device: StartDeviceKnown,
    temperature: WindingTemperature,
    supply: Supply,
    running: Running,
    capacitor: CapacitorInCircuit,
    leaking: Leaking,
}

impl Known {
    fn of(model: &Model, job: &Job, now: Moment) -> Self {
        let machine = Machine::of(job);
        let windings = WindingsKnown::of(model, job, &machine, now);
        Self::with(machine, windings, job)
    }

    fn with(machine: Machine, windings: WindingsKnown, job: &Job) -> Self {
        let leads_zeroed = windings.inspection.leads == Leads::Zeroed;
        Self {
            looked_over: LookedOver::of(job),
            ground: Ground::of(job),
            charge: StoredCharge::of(job),
            shell: Shell::of(job),
            protector: ProtectorKnown::of(job, leads_zeroed),
            start_device: StartDeviceKnown::of(job, &machine),
            temperature: WindingTemperature::of(job),
            supply: Supply::of(job, machine.mains),
            running: Running::of(job, machine.mains),
            capacitor: CapacitorInCircuit::of(job, machine.mains),
            leaking: Leaking::of(job, machine.mains),
            windings,
            machine,
        }
    }

    fn assessment(&self, job: &Job, was_changed: bool) -> Assessment {
        let cautions = self.cautions();
        let windings = &self.windings;
        Assessment {
            machine: self.machine.clone(),
            path: path_of(&self.links(was_changed)),
            findings: self.findings(),
            gates: Gates::of(&cautions, &self.ground, &self.shell),
            cautions,
            next: self.next_steps(job),
            windings: windings.anything().then(|| windings.clone()),
            start_trials: None,
            cool_down: None,
            proof: None,
            whole: None,
        }
    }

    /// What weighing the whole machine takes from it.
    fn to_weigh<'a>(
        &'a self,
        assessment: &'a Assessment,
        model: &'a Model,
        now: Moment,
    ) -> whole::Known<'a> {
        let next = assessment.next.iter().copied();
        whole::Known {
            machine: &self.machine,
            windings: &self.windings,
            cautions: &assessment.cautions,
            gates: &assessment.gates,
            safety_first: next.filter(|step| step.is_for_safety()).collect(),
            model,
            now,
        }
    }

    fn findings(&self) -> Vec<Finding> {
        let mut findings: Vec<Finding> = self.machine.findings().into_iter().collect();
        findings.extend(self.looked_over.findings());
        findings.extend(self.ground.findings(self.machine.mains));
        findings.extend(self.charge.findings());
        findings.extend(self.windings.findings().into_iter().map(Finding::Windings));
        findings.extend(self.shell.findings(self.machine.mains));
        findings.extend(self.protector.findings());
        findings.extend(self.start_device.findings());
        findings.extend(self.temperature.findings());
        findings.extend(self.powered_findings());
        findings
    }

    /// What was measured on a live machine.
    fn powered_findings(&self) -> impl Iterator<Item = Finding> {
        let supply = self.supply.findings().into_iter().map(Finding::Supply);
        let whole = self.windings.whole_windings();
        let running = self
            .running
            .findings(whole.as_ref(), self.supply.starting.as_ref())
            .into_iter()
            .map(Finding::Running);
        let capacitor = self.capacitor.findings().into_iter();
        let leaking = self.leaking.findings().into_iter().map(Finding::Leakage);
        supply
            .chain(running)
            .chain(capacitor.map(Finding::CapacitorInCircuit))
            .chain(leaking)
    }

    /// Each caution once, stops first.
    fn cautions(&self) -> Vec<Caution> {
        let mut cautions = self.machine.cautions();
        // It says that nobody has measured; what a measurement found has a caution of its own.
        if self.ground.grade() != Grade::Open {
            cautions.retain(|caution| *caution != Caution::StayUnplugged);
        }
        cautions.extend(self.looked_over.cautions(&self.machine));
        cautions.extend(self.ground.cautions());
        cautions.extend(self.charge.cautions());
        cautions.extend(self.windings.cautions());
        cautions.extend(self.shell.cautions());
        cautions.extend(self.protector.cautions());
        cautions.extend(self.supply.cautions());
        cautions.extend(self.running.cautions());
        cautions.extend(self.capacitor.cautions());
        cautions.extend(self.leaking.cautions());
        let all = [Level::Stop, Level::Care].into_iter().flat_map(|level| {
            let of_level = Caution::ALL.iter().copied();
            of_level.filter(move |caution| caution.level() == level)
        });
        all.filter(|caution| cautions.contains(caution)).collect()
    }

    /// What it did before something was changed says nothing of how it is now.
    fn links(&self, was_changed: bool) -> Vec<(Link, LinkState)> {
        let mut links = Vec::new();
        if !was_changed {
            links.extend(self.machine.links());
        }
        links.extend(self.windings.link());
        links.extend(self.shell.link());
        links.extend(self.protector.link());
        links.extend(self.start_device.link());
        links.extend(self.supply.link());
        links.extend(self.leaking.link());
        links
    }

    /// Safety questions come before anything is touched, the metal before the pins.
    fn next_steps(&self, job: &Job) -> Vec<Step> {
        let machine = &self.machine;
        let unasked =
            machine.kind.is_none() || machine.mains.is_none() || machine.complaint.is_none();
        let open = |check: Check| {
            let items = check.items(job);
            items
                .iter()
                .any(|item| !item.is_answered(job))
                .then_some(Step::Do(check))
        };
        let before = [
            unasked.then_some(Step::Do(Check::Machine)),
            machine
                .refrigerant
                .is_none()
                .then_some(Step::Do(Check::Refrigerant)),
            open(Check::LookOver),
            open(Check::Ground),
            open(Check::StoredCharge),
        ];
        let after = [
            open(Check::Shell),
            open(Check::Protector),
            open(Check::StartDevice),
        ];
        if self.shell.leaks() {
            // It is never powered again: no other part is worth a look.
            return before.into_iter().flatten().collect();
        }
        before
            .into_iter()
            .flatten()
            .chain(self.windings.steps())
            .chain(after.into_iter().flatten())
            .collect()
    }
}

impl Assessment {
    /// Whether anything says that nothing may be powered.
    #[must_use]
    pub fn must_stop(&self) -> bool {
        self.cautions
            .iter()
            .any(|caution| caution.level() == Level::Stop)
    }

    /// The first link where the Path is, or may be, interrupted.
    #[must_use]
    pub fn first_break(&self) -> Option<(Link, LinkState)> {
        self.path
            .iter()
            .copied()
            .find(|(_, state)| state.interrupts())
    }
}

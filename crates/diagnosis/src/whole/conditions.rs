//! The conditions between faults and findings: the eight links of the Path, and a few within
//! them. Each has three to seven named states from best to worst.
//!
//! Rows are percent, judgement from trade practice. They carry what is mild or comes and goes:
//! one in four charge losses still looks nearly normal, and then to every finding alike, because
//! findings hang on the condition and not on the fault.

mod cold_side;
mod motor_side;
mod states;

use belief::{BuildError, Variable};

use super::assembly::Assembly;
use super::priors::{OFFERED_FOR_WEAR, Priors};
use super::trouble;

pub(super) use states::{call, compressor, hold, motor, pump, supply, turns, watts};

/// The variables between faults and findings.
#[derive(Debug, Clone)]
pub(super) struct Conditions {
    pub(super) supply: Variable,
    pub(super) call: Variable,
    pub(super) compressor: Variable,
    /// What would start it, with enough volts.
    pub(super) started_by: Variable,
    pub(super) motor: Variable,
    pub(super) turns: Variable,
    pub(super) pump: Variable,
    pub(super) ice: Variable,
    pub(super) evaporator: Variable,
    pub(super) heat_out: Variable,
    pub(super) watts: Variable,
    pub(super) exchange: Variable,
    pub(super) hold: Variable,
    pub(super) trouble: Variable,
    pub(super) offered: Variable,
}

impl Conditions {
    pub(super) fn of(assembly: &mut Assembly, priors: &Priors) -> Result<Self, BuildError> {
        let blocks = trouble::Blocks::of(assembly)?;
        let supply = motor_side::supply_of(assembly)?;
        let call = motor_side::call_of(assembly)?;
        let pump = cold_side::pump_of(assembly)?;
        let heat_out = cold_side::heat_out_of(assembly, pump)?;
        let load = motor_side::load_of(assembly, supply, pump, heat_out)?;
        let compressor = motor_side::compressor_of(assembly, load)?;
        let started_by = motor_side::started_by_of(assembly)?;
        let motor = motor_side::motor_of(assembly, [supply, call, compressor])?;
        let turns = cold_side::turns_of(assembly, motor)?;
        let ice = cold_side::ice_of(assembly)?;
        let evaporator = cold_side::evaporator_of(assembly, ice)?;
        let heat_in = cold_side::heat_in_of(assembly)?;
        let watts = cold_side::watts_of(assembly, [pump, evaporator, heat_out])?;
        let exchange = cold_side::exchange_of(assembly, evaporator, heat_out, heat_in)?;
        let hold = cold_side::hold_of(assembly, [turns, pump, exchange], blocks.sealed)?;
        let trouble = blocks.worst(assembly)?;
        // It is offered once, as it is before anything is done to it.
        let offered = match assembly.versions.offered {
            Some(offered) => offered,
            None => offered_of(assembly, priors, trouble)?,
        };
        Ok(Self {
            supply,
            call,
            compressor,
            started_by,
            motor,
            turns,
            pump,
            ice,
            evaporator,
            heat_out,
            watts,
            exchange,
            hold,
            trouble,
            offered,
        })
    }
}

/// Whether the machine is offered as not getting cold. Always so here: it is what the shares
/// of faults are conditioned on.
fn offered_of(
    assembly: &mut Assembly,
    priors: &Priors,
    trouble: Variable,
) -> Result<Variable, BuildError> {
    let nothing = priors.offered_for_nothing(assembly.build);
    let offered = |chance: f64| [chance, 1.0 - chance];
    let rows = [offered(nothing), offered(OFFERED_FOR_WEAR), offered(1.0)];
    let states = ["as_faulty", "as_sound"];
    let offered = assembly.add("offered", &[trouble], &|network, name| {
        network.table(name, &states, &[trouble], &rows)
    })?;
    assembly.offer(offered);
    Ok(offered)
}

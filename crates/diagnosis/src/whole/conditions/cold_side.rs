//! From refrigerant that goes round to a cabinet that gets cold.

use belief::{BuildError, Variable};

use super::super::assembly::{Assembly, Cause};
use super::super::build::Build;
use super::super::fault::Fault::*;
use super::{motor, turns};

pub(super) fn pump_of(assembly: &mut Assembly) -> Result<Variable, BuildError> {
    assembly.condition(
        "pump",
        &["full", "erratic", "starved", "blocked", "weak", "none"],
        &[98.7, 0.2, 0.5, 0.1, 0.3, 0.2],
        &[
            Cause::Fault(ValvesWorn, &[14.0, 0.0, 2.0, 0.0, 75.0, 9.0]),
            Cause::Fault(CapillaryRestricted, &[14.0, 3.0, 3.0, 80.0, 0.0, 0.0]),
            Cause::Fault(ChargeLow, &[20.0, 0.0, 75.0, 0.0, 0.0, 5.0]),
            Cause::Fault(ChargeGone, &[2.0, 0.0, 5.0, 0.0, 0.0, 93.0]),
            Cause::Fault(ChargeContaminated, &[22.0, 70.0, 8.0, 0.0, 0.0, 0.0]),
        ],
    )
}

pub(super) fn ice_of(assembly: &mut Assembly) -> Result<Variable, BuildError> {
    let ice = assembly.condition(
        "ice",
        &["clear", "iced"],
        &[98.0, 2.0],
        &[
            Cause::Fault(EvaporatorFanStopped, &[58.0, 42.0]),
            Cause::Fault(DefrostHeaterOpen, &[6.0, 94.0]),
            Cause::Fault(NeverDefrosts, &[8.0, 92.0]),
            Cause::Fault(IcedUp, &[8.0, 92.0]),
            Cause::Fault(SealLeaks, &[60.0, 40.0]),
        ],
    )?;
    assembly.thawed(ice)
}

/// What the evaporator takes in: the air over it, or the plates it stands on.
pub(super) fn evaporator_of(
    assembly: &mut Assembly,
    ice: Variable,
) -> Result<Variable, BuildError> {
    assembly.condition(
        "evaporator",
        &["takes_heat", "weak", "none"],
        &[97.0, 2.0, 1.0],
        &[
            Cause::Fault(EvaporatorFanStopped, &[3.0, 24.0, 73.0]),
            Cause::State(ice, &[&[100.0, 0.0, 0.0], &[6.0, 78.0, 16.0]]),
        ],
    )
}

pub(super) fn heat_out_of(assembly: &mut Assembly, pump: Variable) -> Result<Variable, BuildError> {
    let good: &[f64] = &[100.0, 0.0];
    assembly.condition(
        "heat_out",
        &["good", "poor"],
        &[97.0, 3.0],
        &[
            Cause::Fault(CondenserMatted, &[13.0, 87.0]),
            Cause::Fault(CondenserFanStopped, &[11.0, 89.0]),
            Cause::Fault(TooMuchAsked, &[58.0, 42.0]),
            // Air in the condenser takes room from the gas.
            Cause::State(pump, &[good, &[35.0, 65.0], good, good, good, good]),
        ],
    )
}

pub(super) fn heat_in_of(assembly: &mut Assembly) -> Result<Variable, BuildError> {
    assembly.condition(
        "heat_in",
        &["usual", "too_much"],
        &[98.0, 2.0],
        &[
            Cause::Fault(SealLeaks, &[12.0, 88.0]),
            Cause::Fault(HeatStaysOn, &[15.0, 85.0]),
            Cause::Fault(TooMuchAsked, &[25.0, 75.0]),
        ],
    )
}

/// Little to pump hides what would raise the watts.
pub(super) fn watts_of(
    assembly: &mut Assembly,
    causes: [Variable; 3],
) -> Result<Variable, BuildError> {
    let [pump, evaporator, heat_out] = causes;
    let usual: &[f64] = &[100.0, 0.0, 0.0];
    assembly.condition(
        "watts",
        &["usual", "high", "low"],
        &[97.0, 1.5, 1.5],
        &[
            Cause::State(
                pump,
                &[
                    usual,
                    &[38.0, 45.0, 17.0],
                    &[28.0, 1.0, 71.0],
                    &[34.0, 4.0, 62.0],
                    &[20.0, 3.0, 77.0],
                    &[14.0, 1.0, 85.0],
                ],
            ),
            Cause::State(evaporator, &[usual, &[74.0, 0.0, 26.0], &[70.0, 0.0, 30.0]]),
            Cause::State(heat_out, &[usual, &[47.0, 53.0, 0.0]]),
        ],
    )
}

pub(super) fn exchange_of(
    assembly: &mut Assembly,
    evaporator: Variable,
    heat_out: Variable,
    heat_in: Variable,
) -> Result<Variable, BuildError> {
    assembly.condition(
        "exchange",
        &["good", "one_side_only", "poor", "none"],
        &[98.5, 0.5, 0.8, 0.2],
        &[
            Cause::State(
                evaporator,
                &[
                    &[100.0, 0.0, 0.0, 0.0],
                    &[4.0, 30.0, 58.0, 8.0],
                    &[4.0, 34.0, 52.0, 10.0],
                ],
            ),
            Cause::Fault(DamperStuck, &[10.0, 79.0, 11.0, 0.0]),
            Cause::State(
                heat_out,
                &[&[100.0, 0.0, 0.0, 0.0], &[14.0, 8.0, 56.0, 22.0]],
            ),
            Cause::State(
                heat_in,
                &[&[100.0, 0.0, 0.0, 0.0], &[20.0, 10.0, 60.0, 10.0]],
            ),
        ],
    )
}

/// What any fault of the sealed system does to the cabinet, even where it can't be seen yet: a
/// mild one looks nearly normal, but doesn't hold what it should.
const MILD: [f64; 4] = [10.0, 8.0, 62.0, 20.0];

/// What the cabinet gets of the compressor.
pub(super) fn turns_of(assembly: &mut Assembly, motor: Variable) -> Result<Variable, BuildError> {
    assembly.function(
        "turns",
        &[
            "steadily",
            "too_seldom",
            "until_it_cuts_out",
            "not",
            "not_though_called",
        ],
        &[motor],
        &|at| match at[0] {
            motor::RUNS => 0,
            motor::TOO_SELDOM => 1,
            motor::CUTS_OUT => 2,
            motor::HUMS | motor::CALLED_IN_VAIN => turns::NOT_THOUGH_CALLED,
            _ => turns::NOT,
        },
    )
}

pub(super) fn hold_of(
    assembly: &mut Assembly,
    [turns, pump, exchange]: [Variable; 3],
    sealed: Variable,
) -> Result<Variable, BuildError> {
    let here = |rows: &[[f64; 4]]| -> Vec<[f64; 4]> {
        rows.iter()
            .map(|row| by_compartments(assembly, *row))
            .collect()
    };
    let by_pump = here(&[
        [100.0, 0.0, 0.0, 0.0],
        [12.0, 5.0, 50.0, 33.0],
        [3.0, 5.0, 52.0, 40.0],
        [2.0, 2.0, 38.0, 58.0],
        [1.0, 1.0, 34.0, 64.0],
        [0.0, 0.0, 4.0, 96.0],
    ]);
    let by_exchange = here(&[
        [100.0, 0.0, 0.0, 0.0],
        [0.0, 100.0, 0.0, 0.0],
        [0.0, 0.0, 100.0, 0.0],
        [0.0, 0.0, 0.0, 100.0],
    ]);
    let by_turns = here(&[
        [100.0, 0.0, 0.0, 0.0],
        // Less is asked for than is needed.
        [12.0, 4.0, 54.0, 30.0],
        [12.0, 4.0, 44.0, 40.0],
        [3.0, 1.0, 2.0, 94.0],
        [3.0, 1.0, 2.0, 94.0],
    ]);
    let by_sealed = here(&[[100.0, 0.0, 0.0, 0.0], [100.0, 0.0, 0.0, 0.0], MILD]);
    let leak = by_compartments(assembly, [97.0, 1.0, 1.5, 0.5]);
    assembly.condition(
        "hold",
        &["cold", "unbalanced", "partly", "warm"],
        &leak,
        &[
            Cause::State(pump, &slices(&by_pump)),
            Cause::State(exchange, &slices(&by_exchange)),
            Cause::State(sealed, &slices(&by_sealed)),
            Cause::State(turns, &slices(&by_turns)),
        ],
    )
}

/// A machine with one compartment has no cold side and warm side: what would be unbalanced is
/// partly cold.
fn by_compartments(assembly: &Assembly, row: [f64; 4]) -> [f64; 4] {
    let [cold, unbalanced, partly, warm] = row;
    if assembly.build == Build::ManualDefrost {
        [cold, 0.0, partly + unbalanced, warm]
    } else {
        row
    }
}

fn slices(rows: &[[f64; 4]]) -> Vec<&[f64]> {
    rows.iter().map(|row| &row[..]).collect()
}

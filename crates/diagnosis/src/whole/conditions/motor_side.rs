//! From the outlet to a turning rotor: supply, call, and the compressor itself.

use belief::{BuildError, Variable};

use super::super::assembly::{Assembly, Cause};
use super::super::fault::Fault::*;
use super::{call, compressor, motor, supply};

pub(super) fn supply_of(assembly: &mut Assembly) -> Result<Variable, BuildError> {
    assembly.condition(
        "supply",
        &["good", "sags", "dead", "trips"],
        &[99.5, 0.2, 0.2, 0.1],
        &[
            // Loose rather than open in one of fourteen: it reads well when it is looked at.
            Cause::Fault(CordOpen, &[7.0, 0.0, 93.0, 0.0]),
            Cause::Fault(VoltageFalls, &[5.0, 92.0, 3.0, 0.0]),
            // Trips on some starts only.
            Cause::Fault(TripsByItself, &[42.0, 0.0, 0.0, 58.0]),
        ],
    )
}

pub(super) fn call_of(assembly: &mut Assembly) -> Result<Variable, BuildError> {
    assembly.condition(
        "call",
        &["calls", "too_seldom", "defrosting", "idle"],
        &[98.5, 0.5, 0.2, 0.8],
        &[
            Cause::Fault(SetNotToCool, &[2.0, 16.0, 0.0, 82.0]),
            // Contacts that open now and then.
            Cause::Fault(ThermostatOpen, &[2.0, 14.0, 0.0, 84.0]),
            Cause::Fault(ThermistorOff, &[3.0, 30.0, 3.0, 64.0]),
            Cause::Fault(BoardDoesNotCall, &[2.0, 9.0, 1.0, 88.0]),
            Cause::Fault(StuckInDefrost, &[1.0, 3.0, 22.0, 74.0]),
            Cause::Fault(RoomTooCold, &[2.0, 34.0, 0.0, 64.0]),
        ],
    )
}

/// What refrigerant and volts ask of the motor.
pub(super) fn load_of(
    assembly: &mut Assembly,
    supply: Variable,
    pump: Variable,
    heat_out: Variable,
) -> Result<Variable, BuildError> {
    let usual: &[f64] = &[100.0, 0.0, 0.0, 0.0];
    let overheats = |percent: f64| [100.0 - percent, percent, 0.0, 0.0];
    assembly.condition(
        "load",
        &["usual", "overheats", "slow_to_level", "too_much"],
        &[99.0, 0.5, 0.3, 0.2],
        &[
            Cause::State(
                pump,
                &[
                    usual,
                    // Air keeps the pressures apart, and loads the motor.
                    &[62.0, 12.0, 20.0, 6.0],
                    &overheats(6.0),
                    // Long rests, rarely no start at all.
                    &[48.0, 10.0, 38.0, 4.0],
                    // The suction gas cools the motor: without it the protector opens in the end.
                    &overheats(9.0),
                    &overheats(12.0),
                ],
            ),
            Cause::State(heat_out, &[usual, &overheats(25.0)]),
            Cause::State(supply, &[usual, &[3.0, 15.0, 12.0, 70.0], usual, usual]),
        ],
    )
}

/// Circuit, start and run in one scale: what is broken hides what hums, and what hums hides what
/// would cut out. A machine that holds its cold has restarted many times a day, so that what
/// starts now and then counts as starting after a long rest. Each row is what such a compressor does after half an hour of rest.
pub(super) fn compressor_of(
    assembly: &mut Assembly,
    load: Variable,
) -> Result<Variable, BuildError> {
    let runs: &[f64] = &[100.0, 0.0, 0.0, 0.0, 0.0, 0.0];
    let cuts_out: &[f64] = &[0.0, 100.0, 0.0, 0.0, 0.0, 0.0];
    let rests: &[f64] = &[0.0, 0.0, 100.0, 0.0, 0.0, 0.0];
    let hums: &[f64] = &[0.0, 0.0, 0.0, 100.0, 0.0, 0.0];
    assembly.condition(
        "compressor",
        &[
            "runs",
            "cuts_out",
            "starts_after_long_rest",
            "hums",
            "broken",
            "leaks",
        ],
        &[96.0, 1.5, 0.5, 1.0, 0.8, 0.2],
        &[
            Cause::Fault(OverloadOpen, &[3.0, 0.0, 0.0, 0.0, 97.0, 0.0]),
            Cause::Fault(OverloadWeak, &[2.0, 67.0, 2.0, 24.0, 5.0, 0.0]),
            Cause::Fault(WiringBurnt, &[2.0, 12.0, 4.0, 16.0, 65.0, 1.0]),
            Cause::Fault(StartDeviceOpen, &[0.0, 3.0, 1.0, 90.0, 6.0, 0.0]),
            Cause::Fault(StartDeviceWeak, &[2.0, 18.0, 20.0, 58.0, 2.0, 0.0]),
            Cause::Fault(StartDeviceStaysIn, &[1.0, 55.0, 2.0, 41.0, 1.0, 0.0]),
            Cause::Fault(CapacitorFailed, &[6.0, 27.0, 16.0, 47.0, 2.0, 2.0]),
            Cause::Fault(RotorTight, &[1.0, 13.0, 21.0, 63.0, 2.0, 0.0]),
            Cause::Fault(RotorSeized, &[0.0, 0.5, 0.5, 95.0, 2.0, 2.0]),
            Cause::Fault(InnerProtectorOpen, &[2.0, 1.0, 0.0, 0.0, 97.0, 0.0]),
            Cause::Fault(WindingOpen, &[0.0, 2.0, 0.0, 76.0, 17.0, 5.0]),
            Cause::Fault(TurnsShorted, &[3.0, 27.0, 2.0, 42.0, 2.0, 24.0]),
            Cause::Fault(InverterMotorFailed, &[2.0, 8.0, 0.0, 40.0, 42.0, 8.0]),
            Cause::Fault(DriveWithoutOutput, &[1.0, 3.0, 0.0, 4.0, 88.0, 4.0]),
            Cause::Fault(WindingLeaks, &[9.0, 6.0, 0.0, 9.0, 3.0, 73.0]),
            Cause::Fault(AnotherPartLeaks, &[12.0, 5.0, 0.0, 0.0, 2.0, 81.0]),
            Cause::State(load, &[runs, cuts_out, rests, hums]),
        ],
    )
}

/// What would start it, with enough volts. A kit has more torque than a plain device: it helps a
/// tight rotor and what is slow to level, so that a start by it says little of why.
pub(super) fn started_by_of(assembly: &mut Assembly) -> Result<Variable, BuildError> {
    assembly.condition(
        "started_by",
        &["plain_device", "kit_only", "nothing"],
        &[98.5, 0.5, 1.0],
        &[
            Cause::Fault(OverloadOpen, &[3.0, 0.0, 97.0]),
            Cause::Fault(OverloadWeak, &[80.0, 8.0, 12.0]),
            // Pulled off and put back, a loose connector often makes contact.
            Cause::Fault(WiringBurnt, &[60.0, 5.0, 35.0]),
            Cause::Fault(CapacitorFailed, &[65.0, 20.0, 15.0]),
            Cause::Fault(RotorTight, &[35.0, 53.0, 12.0]),
            Cause::Fault(RotorSeized, &[1.0, 5.0, 94.0]),
            Cause::Fault(InnerProtectorOpen, &[3.0, 0.0, 97.0]),
            Cause::Fault(WindingOpen, &[1.0, 0.0, 99.0]),
            Cause::Fault(TurnsShorted, &[35.0, 7.0, 58.0]),
            Cause::Fault(WindingLeaks, &[45.0, 5.0, 50.0]),
        ],
    )
}

/// What the compressor does follows from supply, call and itself.
pub(super) fn motor_of(
    assembly: &mut Assembly,
    links: [Variable; 3],
) -> Result<Variable, BuildError> {
    assembly.function(
        "motor",
        &[
            "runs",
            "runs_too_seldom",
            "cuts_out",
            "hums",
            "silent",
            "defrosting",
            "dead",
            "trips",
            "called_in_vain",
        ],
        &links,
        &|at| match (at[0], at[1], at[2]) {
            (supply::DEAD, ..) => motor::DEAD,
            (supply::TRIPS, ..) | (_, _, compressor::LEAKS) => motor::TRIPS,
            (_, call::DEFROSTING, _) => motor::DEFROSTING,
            (_, call::IDLE, _) => motor::SILENT,
            // Not a sound of it either; but what is called besides it, a fan, comes on.
            (_, _, compressor::BROKEN) => motor::CALLED_IN_VAIN,
            (_, _, compressor::HUMS) => motor::HUMS,
            (_, _, compressor::CUTS_OUT) => motor::CUTS_OUT,
            (_, call::TOO_SELDOM, _) => motor::TOO_SELDOM,
            // It starts when it is met rested; in use it has minutes between two runs.
            (_, _, compressor::AFTER_LONG_REST) => motor::TOO_SELDOM,
            _ => motor::RUNS,
        },
    )
}

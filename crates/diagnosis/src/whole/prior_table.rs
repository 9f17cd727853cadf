//! What is at fault in how many of a hundred machines that are offered cheaply as "powers on,
//! doesn't get cold", before anything is known of the one at hand.
//!
//! Standing of every figure: judgement from trade practice, no survey. Owners have already mended
//! part of the cheap faults, so that faults of the sealed system are commoner than in ordinary
//! service calls. Each figure is worth about thirty machines seen.

use super::fault::Fault::{self, *};

/// How many of a thousand machines have it as their main fault: manual defrost, frost-free, and
/// inverter. Zero where there is no such part.
pub(super) type Row = (Fault, [f64; 3]);

/// The same for machines with nothing wrong: a delay, a rest not given, time not given.
pub(super) const NOTHING_WRONG: [f64; 3] = [50.0, 42.0, 44.0];

/// One row per fault. The reason for each is said where the figures are shown
/// (`wording::whole::usual`).
#[rustfmt::skip]
pub(super) const ROWS: [Row; 41] = [
    (CordOpen, [8.0, 7.0, 8.0]),
    (VoltageFalls, [15.0, 9.0, 4.0]),
    (TripsByItself, [8.0, 6.0, 5.0]),
    (SetNotToCool, [20.0, 23.0, 39.0]),
    (ThermostatOpen, [72.0, 22.0, 0.0]),
    (ControlStaysOn, [3.0, 3.0, 3.0]),
    (ThermistorOff, [8.0, 19.0, 34.0]),
    (BoardDoesNotCall, [20.0, 44.0, 65.0]),
    (StuckInDefrost, [0.0, 19.0, 8.0]),
    (RoomTooCold, [5.0, 14.0, 8.0]),
    (OverloadOpen, [30.0, 23.0, 0.0]),
    (OverloadWeak, [12.0, 9.0, 0.0]),
    (WiringBurnt, [20.0, 14.0, 19.0]),
    (InnerProtectorOpen, [8.0, 6.0, 2.0]),
    (WindingOpen, [10.0, 7.0, 0.0]),
    (TurnsShorted, [8.0, 6.0, 0.0]),
    (InverterMotorFailed, [0.0, 0.0, 29.0]),
    (WindingLeaks, [15.0, 11.0, 8.0]),
    (AnotherPartLeaks, [4.0, 11.0, 10.0]),
    (StartDeviceOpen, [110.0, 88.0, 0.0]),
    (StartDeviceWeak, [20.0, 14.0, 0.0]),
    (StartDeviceStaysIn, [12.0, 7.0, 0.0]),
    (CapacitorFailed, [8.0, 14.0, 0.0]),
    (RotorTight, [25.0, 17.0, 0.0]),
    (RotorSeized, [50.0, 37.0, 0.0]),
    (DriveWithoutOutput, [0.0, 0.0, 127.0]),
    (ValvesWorn, [50.0, 37.0, 54.0]),
    (CapillaryRestricted, [45.0, 32.0, 44.0]),
    (ChargeLow, [120.0, 74.0, 103.0]),
    (ChargeGone, [126.0, 51.0, 83.0]),
    (ChargeContaminated, [12.0, 9.0, 12.0]),
    (EvaporatorFanStopped, [0.0, 70.0, 59.0]),
    (NeverDefrosts, [0.0, 42.0, 44.0]),
    (DefrostHeaterOpen, [0.0, 70.0, 49.0]),
    (IcedUp, [25.0, 14.0, 12.0]),
    (CondenserMatted, [18.0, 37.0, 24.0]),
    (CondenserFanStopped, [5.0, 32.0, 34.0]),
    (SealLeaks, [30.0, 17.0, 10.0]),
    (DamperStuck, [0.0, 23.0, 39.0]),
    (HeatStaysOn, [3.0, 6.0, 5.0]),
    (TooMuchAsked, [25.0, 14.0, 15.0]),
];

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

/// One row per fault, with the reason for its size.
#[rustfmt::skip]
pub(super) const ROWS: [Row; 41] = [
    // An owner tries another outlet before selling; an open cord remains where nobody did.
    (CordOpen, [8.0, 7.0, 8.0]),
    // Chest freezers live in garages at the end of long, thin cords.
    (VoltageFalls, [15.0, 9.0, 4.0]),
    // Old ground-fault outlets trip on motors that are sound.
    (TripsByItself, [8.0, 6.0, 5.0]),
    // The more buttons a machine has, the more modes it can be left in.
    (SetNotToCool, [20.0, 23.0, 39.0]),
    // The only control of most manual machines, with contacts that wear and a charge that leaks.
    (ThermostatOpen, [72.0, 22.0, 0.0]),
    // Too cold or never stopping is seldom sold as not getting cold.
    (ControlStaysOn, [3.0, 3.0, 3.0]),
    // Rare by itself; damp gets into connectors of frost-free machines.
    (ThermistorOff, [8.0, 19.0, 34.0]),
    // Boards grew with the years; a relay or a joint is what fails.
    (BoardDoesNotCall, [20.0, 44.0, 65.0]),
    // A mechanical timer stops where it likes; boards rarely do.
    (StuckInDefrost, [0.0, 19.0, 8.0]),
    // Only machines with one control for two compartments, in winter.
    (RoomTooCold, [5.0, 14.0, 8.0]),
    // Opens for good after years of trips; often a symptom of something else.
    (OverloadOpen, [30.0, 23.0, 0.0]),
    // Aged bimetal; a third as common as the open one.
    (OverloadWeak, [12.0, 9.0, 0.0]),
    // Heat at the pins, mice, and repairs by hand.
    (WiringBurnt, [20.0, 14.0, 19.0]),
    // Most inside protectors that read open are hot, not broken.
    (InnerProtectorOpen, [8.0, 6.0, 2.0]),
    // Windings seldom break: one in a hundred.
    (WindingOpen, [10.0, 7.0, 0.0]),
    // Rarer still, and mostly after long overheating.
    (TurnsShorted, [8.0, 6.0, 0.0]),
    // Three windings and bearings behind an electronic drive that protects them.
    (InverterMotorFailed, [0.0, 0.0, 29.0]),
    // Burnt insulation: after overheating or acid.
    (WindingLeaks, [15.0, 11.0, 8.0]),
    // Defrost heaters leak first; machines without one have little else.
    (AnotherPartLeaks, [4.0, 11.0, 10.0]),
    // The commonest single cheap fault of machines with a start device.
    (StartDeviceOpen, [110.0, 88.0, 0.0]),
    // Drifts before it dies; a fifth as common.
    (StartDeviceWeak, [20.0, 14.0, 0.0]),
    // Welded relay, shorted disc.
    (StartDeviceStaysIn, [12.0, 7.0, 0.0]),
    // Only some machines have a capacitor; more of the larger ones.
    (CapacitorFailed, [8.0, 14.0, 0.0]),
    // Half as common as seized: a stage on the way.
    (RotorTight, [25.0, 17.0, 0.0]),
    // Long standing and lost oil; chest freezers stand longest.
    (RotorSeized, [50.0, 37.0, 0.0]),
    // The board that fails most on inverter machines: surges and heat.
    (DriveWithoutOutput, [0.0, 0.0, 127.0]),
    // Reed valves tire after years of short runs.
    (ValvesWorn, [50.0, 37.0, 54.0]),
    // Wax, debris or moisture; a third as common as a lost charge.
    (CapillaryRestricted, [45.0, 32.0, 44.0]),
    // Slow leaks at joints, in walls, in rusted frames.
    (ChargeLow, [120.0, 74.0, 103.0]),
    // The same, later; and plates pierced while defrosting by blade.
    (ChargeGone, [126.0, 51.0, 83.0]),
    // Needs earlier work on the sealed system.
    (ChargeContaminated, [12.0, 9.0, 12.0]),
    // One fan does all the work and sits in the frost.
    (EvaporatorFanStopped, [0.0, 70.0, 59.0]),
    // Timer, board or sensor: a little rarer than the heater that they switch.
    (NeverDefrosts, [0.0, 42.0, 44.0]),
    // Heater, bimetal and fuse in one line: any of them is enough.
    (DefrostHeaterOpen, [0.0, 70.0, 49.0]),
    // Frost by hand is left to grow; drains block.
    (IcedUp, [25.0, 14.0, 12.0]),
    // Lint at the floor; walls that warm need none.
    (CondenserMatted, [18.0, 37.0, 24.0]),
    // Few manual machines have one.
    (CondenserFanStopped, [5.0, 32.0, 34.0]),
    // Lids warp and seals stiffen in cold sheds.
    (SealLeaks, [30.0, 17.0, 10.0]),
    // Only machines that share one cold between compartments.
    (DamperStuck, [0.0, 23.0, 39.0]),
    // A lamp switch that sticks; rare.
    (HeatStaysOn, [3.0, 6.0, 5.0]),
    // Asked too much or not given a day: common where nobody measured.
    (TooMuchAsked, [25.0, 14.0, 15.0]),
];

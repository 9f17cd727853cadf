//! Why a fault is as common as it is taken to be.
//!
//! The figures stand in the table of shares; standing of all reasons: judgement from trade practice.

use diagnosis::Fault;

/// Why a share is what it is; `None` for nothing wrong.
#[must_use]
pub const fn usual(fault: Option<Fault>) -> &'static str {
    let Some(fault) = fault else {
        return "A start delay, a rest or a day not given, or nothing but the outlet.";
    };
    match fault {
        Fault::CordOpen => {
            "An owner tries another outlet before selling; an open cord remains where nobody did."
        }
        Fault::VoltageFalls => "Chest freezers live in garages at the end of long, thin cords.",
        Fault::TripsByItself => "Old ground-fault outlets trip on motors that are sound.",
        Fault::SetNotToCool => "The more buttons a machine has, the more modes it can be left in.",
        Fault::ThermostatOpen => {
            "The only control of most manual machines, with contacts that wear and a charge that leaks."
        }
        Fault::ControlStaysOn => "Too cold or never stopping is seldom sold as not getting cold.",
        Fault::ThermistorOff => "Rare by itself; damp gets into connectors of frost-free machines.",
        Fault::BoardDoesNotCall => "Boards grew with the years; a relay or a joint is what fails.",
        Fault::StuckInDefrost => "A mechanical timer stops where it likes; boards rarely do.",
        Fault::RoomTooCold => "Only machines with one control for two compartments, in winter.",
        Fault::OverloadOpen => {
            "Opens for good after years of trips; often a symptom of something else."
        }
        Fault::OverloadWeak => "Aged bimetal; a third as common as the open one.",
        Fault::WiringBurnt => "Heat at the pins, mice, and repairs by hand.",
        Fault::InnerProtectorOpen => "Most inside protectors that read open are hot, not broken.",
        Fault::WindingOpen => "Windings seldom break: one in a hundred.",
        Fault::TurnsShorted => "Rarer still, and mostly after long overheating.",
        Fault::InverterMotorFailed => {
            "Three windings and bearings behind an electronic drive that protects them."
        }
        Fault::WindingLeaks => "Burnt insulation: after overheating or acid.",
        Fault::AnotherPartLeaks => {
            "Defrost heaters leak first; machines without one have little else."
        }
        Fault::StartDeviceOpen => {
            "The commonest single cheap fault of machines with a start device."
        }
        Fault::StartDeviceWeak => "Drifts before it dies; a fifth as common.",
        Fault::StartDeviceStaysIn => "Welded relay, shorted disc.",
        Fault::CapacitorFailed => "Only some machines have a capacitor; more of the larger ones.",
        Fault::RotorTight => "Half as common as seized: a stage on the way.",
        Fault::RotorSeized => "Long standing and lost oil; chest freezers stand longest.",
        Fault::DriveWithoutOutput => {
            "The board that fails most on inverter machines: surges and heat."
        }
        Fault::ValvesWorn => "Reed valves tire after years of short runs.",
        Fault::CapillaryRestricted => {
            "Wax, debris or moisture; a third as common as a lost charge."
        }
        Fault::ChargeLow => "Slow leaks at joints, in walls, in rusted frames.",
        Fault::ChargeGone => "The same, later; and plates pierced while defrosting by blade.",
        Fault::ChargeContaminated => "Needs earlier work on the sealed system.",
        Fault::EvaporatorFanStopped => "One fan does all the work and sits in the frost.",
        Fault::NeverDefrosts => {
            "Timer, board or sensor: a little rarer than the heater that they switch."
        }
        Fault::DefrostHeaterOpen => "Heater, bimetal and fuse in one line: any of them is enough.",
        Fault::IcedUp => "Frost by hand is left to grow; drains block.",
        Fault::CondenserMatted => "Lint at the floor; walls that warm need none.",
        Fault::CondenserFanStopped => "Few manual machines have one.",
        Fault::SealLeaks => "Lids warp and seals stiffen in cold sheds.",
        Fault::DamperStuck => "Only machines that share one cold between compartments.",
        Fault::HeatStaysOn => "A lamp switch that sticks; rare.",
        Fault::TooMuchAsked => "Asked too much or not given a day: common where nobody measured.",
    }
}

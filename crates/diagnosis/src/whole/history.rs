//! What is known before the visit: by how much it makes faults commoner.

use crate::choice::choices;

use super::fault::Fault::{self, *};
use crate::Complaint;

/// A factor on the odds of a fault; of nothing being wrong where there is no fault.
pub(super) type Factor = (Option<Fault>, f64);

choices! {
    /// Something known of the machine's past.
    pub enum History {
        /// "A technician said it's the compressor, or gas."
        CalledSealed = "technician-said-sealed",
        /// The start device was replaced already, without change.
        StartDeviceReplaced = "start-device-replaced",
        /// It stopped after a storm or a power cut.
        StoppedAfterStorm = "stopped-after-storm",
        /// It stopped after moving, or was laid down.
        StoppedAfterMoving = "stopped-after-moving",
        /// It was defrosted with a blade.
        DefrostedByBlade = "defrosted-by-blade",
        /// It works for some days after each thaw.
        WorksAfterThaw = "works-after-thaw",
        /// The freezer is cold, the fresh food warm.
        FreezerColdRestWarm = "freezer-cold-rest-warm",
        /// Not used for over a year.
        UnusedForAYear = "unused-for-a-year",
        /// Kept in an outbuilding, damp or sea air.
        Outbuilding = "outbuilding",
        /// Older than fifteen years.
        Old = "over-fifteen-years",
        /// Younger than three years.
        Young = "under-three-years",
        /// It stood in a shop.
        ExDisplay = "ex-display",
        /// Frost over a centimetre on all plates.
        ThickFrost = "thick-frost",
    }
}

impl History {
    /// Factors on the odds of faults, judgement; `None` is nothing wrong.
    pub(super) const fn factors(self) -> &'static [Factor] {
        match self {
            Self::CalledSealed => &[
                (Some(ValvesWorn), 2.5),
                (Some(ChargeLow), 2.5),
                (Some(ChargeGone), 2.5),
                (Some(CapillaryRestricted), 2.5),
                (Some(RotorSeized), 2.0),
                (Some(EvaporatorFanStopped), 0.5),
                (Some(DefrostHeaterOpen), 0.5),
                (Some(NeverDefrosts), 0.5),
                (Some(IcedUp), 0.5),
                (Some(CondenserMatted), 0.5),
                (Some(CondenserFanStopped), 0.5),
                (Some(SealLeaks), 0.5),
                (Some(StartDeviceOpen), 0.6),
            ],
            Self::StartDeviceReplaced => &[
                (Some(StartDeviceOpen), 0.15),
                (Some(RotorTight), 1.8),
                (Some(RotorSeized), 1.8),
                (Some(VoltageFalls), 1.5),
                (Some(CapillaryRestricted), 1.5),
                (Some(WiringBurnt), 2.0),
            ],
            Self::StoppedAfterStorm => &[
                (Some(DriveWithoutOutput), 3.0),
                (Some(TripsByItself), 3.0),
                (Some(BoardDoesNotCall), 2.5),
                (Some(StartDeviceOpen), 1.5),
                (Some(TurnsShorted), 1.5),
            ],
            Self::StoppedAfterMoving => &[
                (None, 3.0),
                (Some(WiringBurnt), 1.5),
                (Some(ChargeLow), 1.3),
                (Some(ChargeGone), 1.3),
                (Some(RotorSeized), 1.3),
            ],
            Self::DefrostedByBlade => &[(Some(ChargeGone), 8.0), (Some(ChargeLow), 4.0)],
            Self::WorksAfterThaw => &[
                (Some(DefrostHeaterOpen), 8.0),
                (Some(NeverDefrosts), 8.0),
                (Some(IcedUp), 8.0),
                (Some(ChargeContaminated), 2.0),
            ],
            Self::FreezerColdRestWarm => &[
                (Some(EvaporatorFanStopped), 4.0),
                (Some(DefrostHeaterOpen), 4.0),
                (Some(NeverDefrosts), 4.0),
                (Some(IcedUp), 4.0),
                (Some(DamperStuck), 4.0),
                (Some(ChargeLow), 0.4),
                (Some(CapillaryRestricted), 0.4),
                (Some(StartDeviceOpen), 0.05),
                (Some(RotorSeized), 0.05),
                (Some(RotorTight), 0.05),
                (Some(OverloadOpen), 0.05),
                (Some(InnerProtectorOpen), 0.05),
                (Some(WindingOpen), 0.05),
                (Some(DriveWithoutOutput), 0.05),
            ],
            Self::UnusedForAYear => &[
                (Some(RotorTight), 2.0),
                (Some(RotorSeized), 2.0),
                (Some(WiringBurnt), 2.0),
                (Some(SealLeaks), 1.5),
            ],
            Self::Outbuilding => &[
                (Some(ChargeGone), 2.0),
                (Some(ChargeLow), 1.5),
                (Some(WiringBurnt), 1.5),
                (Some(BoardDoesNotCall), 1.5),
                (Some(RoomTooCold), 2.0),
                (Some(VoltageFalls), 2.0),
            ],
            Self::Old => &[
                (Some(ChargeLow), 1.3),
                (Some(ChargeGone), 1.3),
                (Some(RotorSeized), 1.3),
                (Some(ThermostatOpen), 1.3),
                (Some(WindingLeaks), 1.3),
                (Some(SealLeaks), 1.5),
            ],
            Self::Young => &[
                (Some(SetNotToCool), 2.0),
                (None, 2.0),
                (Some(RotorSeized), 0.5),
                (Some(ChargeLow), 1.2),
                (Some(CapillaryRestricted), 1.2),
                (Some(DriveWithoutOutput), 1.2),
            ],
            Self::ExDisplay => &[(Some(SetNotToCool), 8.0)],
            Self::ThickFrost => &[
                (Some(IcedUp), 4.0),
                (Some(ChargeLow), 0.4),
                (Some(ChargeGone), 0.4),
            ],
        }
    }
}

/// What an opening says beyond what the compressor does: factors on odds, judgement.
pub(super) const fn beyond_the_motor(complaint: Complaint) -> &'static [Factor] {
    match complaint {
        Complaint::OneSideWarm => History::FreezerColdRestWarm.factors(),
        // Cold enough and more: nothing that keeps it from getting cold.
        Complaint::TooCold => &[
            (Some(ControlStaysOn), 120.0),
            (Some(ThermistorOff), 20.0),
            (Some(SetNotToCool), 15.0),
            (Some(DamperStuck), 3.0),
            // Where the bulb sits on the last turns, which run dry, it calls for ever and the first
            // ones freeze all, as long as enough goes round: common practice for refrigerators with
            // one door, no source. One leak in a hundred is met like that (judgement), against
            // nine in ten controls that never open.
            (Some(ChargeLow), 1.3),
            (Some(ChargeGone), 0.005),
            (Some(ChargeContaminated), 0.05),
            (Some(CapillaryRestricted), 1.3),
            (Some(ValvesWorn), 0.02),
            (Some(IcedUp), 0.1),
            (Some(NeverDefrosts), 0.1),
            (Some(DefrostHeaterOpen), 0.1),
            (Some(EvaporatorFanStopped), 0.15),
            (Some(CondenserMatted), 0.2),
            (Some(CondenserFanStopped), 0.1),
            (Some(SealLeaks), 0.3),
            (Some(HeatStaysOn), 0.2),
            (Some(TooMuchAsked), 0.1),
        ],
        // Whatever is weak runs without end; so does what nothing tells to stop.
        Complaint::NeverStops => &[
            (Some(ControlStaysOn), 12.0),
            (Some(SealLeaks), 2.5),
            (Some(TooMuchAsked), 2.0),
            (Some(CondenserMatted), 1.5),
            (Some(CondenserFanStopped), 1.3),
            (Some(ChargeGone), 0.5),
            (Some(ValvesWorn), 0.8),
        ],
        Complaint::Noisy => &[
            (Some(ValvesWorn), 3.0),
            (Some(ChargeLow), 0.7),
            (Some(ChargeGone), 0.7),
            (Some(EvaporatorFanStopped), 2.0),
            (Some(CondenserFanStopped), 2.0),
            (None, 2.5),
        ],
        Complaint::RunsStaysWarm => &[(Some(ControlStaysOn), 0.1)],
        _ => &[],
    }
}

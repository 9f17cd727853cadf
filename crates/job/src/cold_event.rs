//! What happened while a machine was proved.

use crate::Moment;

/// What happened.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum ColdEventKind {
    /// The machine was switched on with a warm cabinet: the cool-down begins.
    SwitchedOn,
    /// The compressor was heard or seen to start.
    CompressorOn,
    /// The compressor stopped by its control.
    CompressorOff,
    /// The compressor's protector or the outlet's protective device tripped.
    Tripped,
    /// The door was opened.
    DoorOpened,
    /// Something warm was put in.
    Loaded,
    /// The control was set to another temperature.
    SetPointChanged,
    /// A defrost began: the heater's watts, or its warmth, were seen.
    DefrostBegan,
    /// The defrost ended by itself.
    DefrostEnded,
    /// Water of a defrost was seen in the pan.
    DefrostWater,
    /// The thermometer was put somewhere else, or fell.
    ProbeMoved,
    /// The machine was switched off.
    SwitchedOff,
}

impl ColdEventKind {
    /// All of them, in the order in which they are offered.
    pub const ALL: [Self; 12] = [
        Self::SwitchedOn,
        Self::CompressorOn,
        Self::CompressorOff,
        Self::Tripped,
        Self::DoorOpened,
        Self::Loaded,
        Self::SetPointChanged,
        Self::DefrostBegan,
        Self::DefrostEnded,
        Self::DefrostWater,
        Self::ProbeMoved,
        Self::SwitchedOff,
    ];
}

/// Something that happened at a moment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ColdEvent {
    /// When.
    pub at: Moment,
    /// What.
    pub kind: ColdEventKind,
}

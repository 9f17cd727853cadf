//! What is noticed of a start and of a stretch of time.

use quantity::{Amps, Hertz, Seconds, Watts};

use super::Energy;

/// One moment of a start.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sample {
    /// Since the current came on.
    pub time: Seconds,
    /// A clamp around one wire of the cord.
    pub line: Amps,
    /// In the main winding.
    pub main: Amps,
    /// In the start winding.
    pub start: Amps,
    /// A power meter at the plug.
    pub watts: Watts,
    /// Turns a second; negative backwards.
    pub speed: Hertz,
}

impl Sample {
    /// The moment between two where a straight line puts it.
    pub(super) fn on_the_way_to(&self, later: &Self, time: Seconds) -> Self {
        let share = (time - self.time) / (later.time - self.time);
        let between = |one: f64, other: f64| one + (other - one) * share.get();
        Self {
            time,
            line: Amps::new(between(self.line.get(), later.line.get())),
            main: Amps::new(between(self.main.get(), later.main.get())),
            start: Amps::new(between(self.start.get(), later.start.get())),
            watts: Watts::new(between(self.watts.get(), later.watts.get())),
            speed: Hertz::new(between(self.speed.get(), later.speed.get())),
        }
    }
}

/// What came of a try to start.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct StartRecord {
    /// Every 10 ms while the shaft may turn; while it is held, every 5 ms with the start winding in
    /// and every 50 ms without.
    pub trace: Vec<Sample>,
    /// Whether it turned when the record ended.
    pub came_up: bool,
    /// When it had three quarters of the field's speed.
    pub time_to_speed: Option<Seconds>,
    /// When the start winding was out: pellets hot, contacts open.
    pub let_go: Option<Seconds>,
    /// When the protector opened.
    pub tripped: Option<Seconds>,
    /// When the ground-fault device cut off.
    pub guard_tripped: Option<Seconds>,
    /// The largest current in the line.
    pub peak_line: Amps,
    /// How long it all took.
    pub lasted: Seconds,
    /// Where the energy went.
    pub energy: Energy,
}

/// What happened over a time.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Period {
    /// How long it was, a start's overhang counted where it began.
    pub lasted: Seconds,
    /// How long the pump turned.
    pub turned: Seconds,
    /// How long current flowed through the windings.
    pub energised: Seconds,
    /// Mean of a power meter at the plug.
    pub watts: Watts,
    /// The last current in the line.
    pub line: Amps,
    /// Tries to start.
    pub tries: u32,
    /// Times that the protector opened.
    pub trips: u32,
    /// The last try, if there was one.
    pub last_try: Option<StartRecord>,
    /// Where the energy went.
    pub energy: Energy,
}

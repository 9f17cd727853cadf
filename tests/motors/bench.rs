//! The person with the meter: what is typed, what was noted, what is said of leads and start gear.

use measure::MeterKind;
use measure::windings::{
    Assignment, Inspection, Leads, Pair, PairReading, Pin, Role, StartGear, WiringAsFound,
};
use quantity::{Accuracy, Observed, Ohms, Typed};

use super::{Kind, Machine, Random};

/// Whether and how well the wiring was noted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Noting {
    /// Nothing was noted.
    Nothing,
    /// The overload lead's pin, the start device's pair and the mains wire's pin are noted;
    /// letters beside all pins in four of ten machines. Each item is wrong with this
    /// probability, on its own; besides, in one of 200 machines the picture was turned, and all
    /// notes are one pin further round.
    Everything {
        /// The chance that one item is wrong.
        wrong: f64,
    },
}

/// Everything but the machine: the meter and the habits of the person who holds it.
#[derive(Debug, Clone, Copy)]
pub struct Bench {
    /// What was noted of the wiring.
    pub noting: Noting,
}

/// The largest number that a 4,000-count display shows in its lowest range, in ohms.
const LOWEST_RANGE: f64 = 400.0;

impl Bench {
    /// Measures all three pairs of a machine.
    #[must_use]
    pub fn measure(self, machine: &Machine, random: &mut Random) -> Inspection {
        let kind = random.pick(MeterKind::ALL);
        let meter = kind.automatic();
        let mut inspection = Inspection::default();
        inspection.mains = (!random.chance(0.05)).then_some(machine.mains);
        inspection.start_gear = start_gear(machine.kind, random);
        inspection.wiring = self.wiring(machine, random);
        let lead_ohms = leads(&mut inspection, meter.accuracy, random);
        for (pair, between) in Pair::ALL.into_iter().zip(touched(machine, random)) {
            let typed = match between {
                Some(ohms) => displayed(ohms + lead_ohms, meter.accuracy, random),
                None => over_range(meter.top),
            };
            inspection.set(PairReading {
                pair,
                typed,
                accuracy: meter.accuracy,
            });
        }
        inspection
    }

    fn wiring(self, machine: &Machine, random: &mut Random) -> WiringAsFound {
        let Noting::Everything { wrong } = self.noting else {
            return WiringAsFound::default();
        };
        if matches!(machine.kind, Kind::EqualWindings | Kind::SingleCoil) {
            // An inverter or a linear drive has no start device, overload or line pin to note.
            return WiringAsFound::default();
        }
        let turned = random.chance(0.005);
        let turn = |pin: Pin| if turned { pin.next() } else { pin };
        let mut note = |pin: Pin| {
            let pin = turn(pin);
            if random.chance(wrong) {
                random.pick([pin.next(), pin.next().next()])
            } else {
                pin
            }
        };
        let of = |role| machine.assignment.pin(role);
        let overload_on = Some(note(of(Role::Common)));
        let start_device_on = Some(Pair::without(note(of(Role::Common))));
        let line_on = Some(note(of(Role::Run)));
        // Who misreads one letter misreads them all.
        let read = if random.chance(wrong) {
            random.pick(Assignment::ALL)
        } else {
            machine.assignment
        };
        let letters = Role::ALL.map(|role| Some(turn(read.pin(role))));
        WiringAsFound {
            overload_on,
            start_device_on,
            line_on,
            marked: if random.chance(0.4) {
                letters
            } else {
                [None; 3]
            },
        }
    }
}

/// Bare pins are said to be bare in four of five; a device left on is never mentioned.
fn start_gear(kind: Kind, random: &mut Random) -> StartGear {
    let said = random.chance(0.8);
    match kind {
        Kind::StartDeviceOn => StartGear::Unknown,
        _ if said => StartGear::Off,
        _ => StartGear::Unknown,
    }
}

/// Half zero the leads: 0 to 0.06 Ω is left at the contacts. The others have 0.2 to 0.5 Ω in every
/// reading (common practice, no source). Returns what the leads really add.
fn leads(inspection: &mut Inspection, accuracy: Accuracy, random: &mut Random) -> f64 {
    let word = random.unit();
    if random.chance(0.5) {
        if word < 0.6 {
            inspection.leads = Leads::Zeroed;
        }
        return random.uniform(0.0, 0.06);
    }
    let ohms = random.uniform(0.2, 0.5);
    if word < 0.4 {
        inspection.leads = Leads::NotZeroed;
    } else if word < 0.7 {
        inspection.leads = Leads::Measured(displayed(ohms, accuracy, random), accuracy);
    }
    ohms
}

/// What the probes really have between them.
fn touched(machine: &Machine, random: &mut Random) -> [Option<f64>; 3] {
    let mut pairs = machine.pairs;
    if machine.kind == Kind::ProbeMissed {
        let missed = random.pick([0, 1, 2]);
        let how = random.unit();
        if how < 0.55 {
            pairs[missed] = None;
        } else if how < 0.85 {
            // Through paint or rust: from 2 Ω to 100 kΩ more (judgement).
            pairs[missed] = pairs[missed].map(|ohms| ohms + random.log_uniform(2.0, 1e5));
        } else {
            // On a wrong pin: the reading of another pair.
            pairs[missed] = pairs[(missed + 1) % 3];
        }
    }
    pairs
}

/// The display: percent and counts off by independent, rectangular errors within the data
/// sheet, rounded to the last digit that a 4,000-count meter shows.
fn displayed(ohms: f64, accuracy: Accuracy, random: &mut Random) -> Typed<Ohms> {
    let mut steps_per_ohm = 10.0;
    let mut range = LOWEST_RANGE;
    while ohms >= range {
        steps_per_ohm /= 10.0;
        range *= 10.0;
    }
    let percent = random.uniform(-1.0, 1.0) * accuracy.percent() / 100.0;
    let counts = random.uniform(-1.0, 1.0) * accuracy.counts();
    let steps = (ohms * (1.0 + percent) * steps_per_ohm + counts).round();
    Typed {
        // An ohmmeter shows nothing below zero.
        observed: Observed::Value(Ohms::new(steps.max(0.0) / steps_per_ohm)),
        count: Ohms::new(1.0 / steps_per_ohm),
    }
}

fn over_range(above: Ohms) -> Typed<Ohms> {
    Typed {
        observed: Observed::OverRange { above },
        count: Ohms::new(0.0),
    }
}

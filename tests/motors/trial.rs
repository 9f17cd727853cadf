//! One machine measured and judged.

use measure::windings::{Assignment, Label, Pin, PinBelief, Role, WindingPriors, Windings};

use super::{Bench, Kind, Machine, Noting, Random, RatioSpread};

/// What kind of machines are measured, and by whom.
#[derive(Debug, Clone, Copy)]
pub struct Trial {
    /// What is true of the machines.
    pub kind: Kind,
    /// How start over run is spread.
    pub spread: RatioSpread,
    /// What is noted of the wiring.
    pub noting: Noting,
}

/// What was said of one machine, beside what is true.
#[derive(Debug, Clone)]
pub struct Outcome {
    /// The truth.
    pub truth: Assignment,
    /// What was said of each pin.
    pub pins: [PinBelief; 3],
    /// The kind of the likeliest explanation, with the probabilities of one kind added up.
    pub kind: Kind,
}

impl Trial {
    /// Draws a machine, measures it, and asks what the readings say.
    #[must_use]
    pub fn run(self, random: &mut Random) -> Outcome {
        let machine = Machine::draw(self.kind, self.spread, random);
        let bench = Bench {
            noting: self.noting,
        };
        let inspection = bench.measure(&machine, random);
        let windings = Windings::of(&inspection, &WindingPriors::default());
        Outcome {
            truth: machine.assignment,
            pins: windings.pins,
            kind: likeliest_kind(&windings),
        }
    }
}

fn likeliest_kind(windings: &Windings) -> Kind {
    let mass = |kind: Kind| -> f64 {
        windings
            .explanations
            .iter()
            .filter(|scored| Kind::of(scored.explanation) == kind)
            .map(|scored| scored.probability)
            .sum()
    };
    let mut best = Kind::Sound;
    for kind in Kind::ALL {
        if mass(kind) > mass(best) {
            best = kind;
        }
    }
    best
}

impl Outcome {
    /// Whether the pin likeliest to be common is.
    #[must_use]
    pub fn common_is_right(&self) -> bool {
        self.likeliest_common() == self.truth.pin(Role::Common)
    }

    /// Whether the likeliest part of every pin is its true one.
    #[must_use]
    pub fn all_are_right(&self) -> bool {
        let common = self.likeliest_common();
        let (one, other) = (common.next(), common.next().next());
        let run = if self.belief(one, Role::Run) >= self.belief(other, Role::Run) {
            one
        } else {
            other
        };
        self.common_is_right() && run == self.truth.pin(Role::Run)
    }

    /// Whether every pin is labelled, surely.
    #[must_use]
    pub fn all_are_sure(&self) -> bool {
        let sure = |pin: &PinBelief| matches!(pin.label(), Label::Is { surely: true, .. });
        self.pins.iter().all(sure)
    }

    /// Whether the common pin is labelled, surely, and is another.
    #[must_use]
    pub fn wrong_while_sure(&self) -> bool {
        let differs = |pin: Pin| match self.pins[pin.index()].label() {
            Label::Is { role, .. } => role != self.truth.role(pin),
            _ => true,
        };
        self.all_are_sure() && Pin::ALL.into_iter().any(differs)
    }

    /// The nine statements "this pin plays that part": stated probability, and whether it does.
    pub fn statements(&self) -> impl Iterator<Item = (f64, bool)> {
        Pin::ALL.into_iter().flat_map(move |pin| {
            Role::ALL.map(|role| (self.belief(pin, role), self.truth.role(pin) == role))
        })
    }

    fn belief(&self, pin: Pin, role: Role) -> f64 {
        self.pins[pin.index()].of(role)
    }

    fn likeliest_common(&self) -> Pin {
        let mut best = Pin::One;
        for pin in Pin::ALL {
            if self.belief(pin, Role::Common) > self.belief(best, Role::Common) {
                best = pin;
            }
        }
        best
    }
}

//! Which explanations fit what was read, and how well.

use quantity::Observed;

use super::circuits::{self, dead_short, single, star, two_unknowns};
use super::motor::Motor;
use super::priors::{MainsPriors, Normal, WindingPriors};
use super::readings::{Inspection, Number};
use super::{Assignment, Mains, Pair, PinBelief};

/// What can be behind the three readings.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Explanation {
    /// Two whole windings, the leads taken out.
    Sound,
    /// Two whole windings, the leads still in every reading.
    LeadsNotZeroed,
    /// The protector inside, in the common lead, is open: from heat, or for good.
    ProtectorOpen,
    /// The common lead or pin is open. Ohms can't tell this from the protector.
    CommonLeadOpen,
    /// The start winding, its lead or pin is open.
    StartOpen,
    /// The run winding, its lead or pin is open.
    RunOpen,
    /// Turns of a winding, or of both against each other, are shorted.
    ShortedTurns,
    /// The start device still bridges start and run.
    StartDeviceOn,
    /// One probe didn't touch bare metal, or touched another pin.
    ProbeMissed,
    /// Three equal windings: driven by an inverter.
    EqualWindings,
    /// One coil on two of the pins: a linear drive.
    SingleCoil,
}

impl Explanation {
    /// All of them; ties are told in this order.
    pub const ALL: [Self; 11] = [
        Self::Sound,
        Self::LeadsNotZeroed,
        Self::ProtectorOpen,
        Self::CommonLeadOpen,
        Self::StartOpen,
        Self::RunOpen,
        Self::ShortedTurns,
        Self::StartDeviceOn,
        Self::ProbeMissed,
        Self::EqualWindings,
        Self::SingleCoil,
    ];

    /// Whether all three pairs read two whole windings, give or take the leads.
    #[must_use]
    pub const fn is_whole_pair_of_windings(self) -> bool {
        matches!(self, Self::Sound | Self::LeadsNotZeroed)
    }

    /// Whether a motor with a run and a start winding is part of it.
    #[must_use]
    pub const fn has_two_windings(self) -> bool {
        !matches!(self, Self::EqualWindings | Self::SingleCoil)
    }
}

/// An explanation with its standing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scored {
    /// The explanation.
    pub explanation: Explanation,
    /// Natural logarithm of the density of the readings under it.
    pub log_likelihood: f64,
    /// Its probability under the stated priors.
    pub probability: f64,
}

/// A finite reading that could be anything, in ohms: from contact to insulation.
const WIDEST: Normal = Normal::new(2.3, 5.0);
/// Chance that an open pair shows a number all the same.
const FALSE_NUMBER: f64 = 0.01;
/// Chance that a sound pair shows over range although no explanation says so.
const FALSE_OVER_RANGE: f64 = 1e-4;
/// Chance that more than one reading is off: wrong range, wrong mode, fingers on the tips.
const SEVERAL_MISSED: f64 = 1e-3;
/// Keeps every density above zero, so that nothing is ever impossible.
const FLOOR: f64 = 1e-9;

/// Everything weighed: explanations in the order of [`Explanation::ALL`], and the pins.
pub(super) struct Weighed {
    pub(super) scored: Vec<Scored>,
    pub(super) pins: [PinBelief; 3],
    pub(super) best: Assignment,
}

impl Weighed {
    /// The likeliest first; a stable sort keeps ties in their order.
    pub(super) fn ranked(self) -> Vec<Scored> {
        let mut ranked = self.scored;
        ranked.sort_by(|one, other| other.probability.total_cmp(&one.probability));
        ranked
    }
}

/// Weighs all explanations with all ways of giving parts to pins.
pub(super) fn weigh(inspection: &Inspection, priors: &WindingPriors) -> Weighed {
    let wiring = wiring_factors(inspection, priors);
    let scene = Scene::of(inspection, priors);
    let mut totals = [0.0; 6];
    let mut scored: Vec<Scored> = Vec::with_capacity(Explanation::ALL.len());
    for explanation in Explanation::ALL {
        let weight = priors.weight(
            explanation,
            inspection.start_gear,
            inspection.leads,
            &inspection.wiring,
        );
        let mut likelihood = 0.0;
        for (place, assignment) in Assignment::ALL.into_iter().enumerate() {
            let part = wiring[place] * scene.density(explanation, assignment) / 6.0;
            likelihood += part;
            if explanation.has_two_windings() {
                totals[place] += weight * part;
            }
        }
        scored.push(Scored {
            explanation,
            log_likelihood: libm::log(likelihood),
            probability: weight * likelihood,
        });
    }
    let whole: f64 = scored.iter().map(|scored| scored.probability).sum();
    for entry in &mut scored {
        entry.probability /= whole;
    }
    let totals = totals.map(|total| total / whole);
    Weighed {
        scored,
        pins: PinBelief::from_assignments(&totals),
        best: likeliest(&totals),
    }
}

fn likeliest(totals: &[f64; 6]) -> Assignment {
    let mut best = (Assignment::ALL[0], totals[0]);
    for (assignment, &total) in Assignment::ALL.into_iter().zip(totals) {
        if total > best.1 {
            best = (assignment, total);
        }
    }
    best.0
}

/// How well the wiring fits each assignment; the mean over all is 1. Notes that are off together
/// fit every assignment alike, which bounds how far a turned picture can mislead.
fn wiring_factors(inspection: &Inspection, priors: &WindingPriors) -> [f64; 6] {
    let factors = Assignment::ALL.map(|assignment| {
        let (agree, differ) = inspection.wiring.agreement(assignment);
        priors.wiring_factor(agree, differ)
    });
    let sum: f64 = factors.iter().sum();
    let astray = priors.noted_astray;
    factors.map(|factor| (1.0 - astray) * 6.0 * factor / sum + astray)
}

/// What motors for one mains are like, whole and with shorted turns.
struct Motors {
    whole: Motor,
    run_shorted: Motor,
    start_shorted: Motor,
}

impl Motors {
    /// Those that are possible: for the mains where it is known, else for both.
    fn for_mains(mains: Option<Mains>, priors: &WindingPriors) -> Vec<Self> {
        let of = |priors_of_mains: &MainsPriors| {
            let (share, nothing) = (priors.shorted_share, Normal::new(0.0, 0.0));
            Self {
                whole: Motor::whole(priors_of_mains),
                run_shorted: Motor::shorted(priors_of_mains, share, nothing),
                start_shorted: Motor::shorted(priors_of_mains, nothing, share),
            }
        };
        match mains {
            Some(Mains::V120F60) => vec![of(&priors.v120)],
            Some(Mains::V230F50) => vec![of(&priors.v230)],
            None => vec![of(&priors.v120), of(&priors.v230)],
        }
    }
}

/// The readings, ready to be held against an explanation.
struct Scene<'a> {
    inspection: &'a Inspection,
    priors: &'a WindingPriors,
    numbers: Vec<Number>,
    motors: Vec<Motors>,
}

impl<'a> Scene<'a> {
    fn of(inspection: &'a Inspection, priors: &'a WindingPriors) -> Self {
        Self {
            inspection,
            priors,
            numbers: inspection.numbers(),
            motors: Motors::for_mains(inspection.mains, priors),
        }
    }

    /// The density of all readings, never quite zero.
    fn density(&self, explanation: Explanation, assignment: Assignment) -> f64 {
        let leads = self.priors.any_leads(self.inspection.leads);
        let whole = |numbers: &[Number], leads| self.two_windings(numbers, assignment, leads);
        let found = match explanation {
            Explanation::Sound => self.all_closed(whole(&self.numbers, self.priors.zeroed_leads)),
            Explanation::LeadsNotZeroed => {
                let inside = self.priors.leads_in(self.inspection.leads);
                self.all_closed(whole(&self.numbers, inside))
            }
            Explanation::ProtectorOpen | Explanation::CommonLeadOpen => {
                self.only(assignment.series_pair(), |n| whole(n, leads))
            }
            Explanation::StartOpen => self.only(assignment.run_pair(), |n| whole(n, leads)),
            Explanation::RunOpen => self.only(assignment.start_pair(), |n| whole(n, leads)),
            Explanation::ShortedTurns => self.all_closed(self.shorted(assignment, leads)),
            Explanation::StartDeviceOn => self.all_closed(self.bridged(assignment, leads)),
            Explanation::ProbeMissed => self.one_missed(assignment, leads),
            Explanation::EqualWindings => self.all_closed(self.equal(leads)),
            Explanation::SingleCoil => {
                let coil = self.priors.single_coil;
                self.only(assignment.series_pair(), |numbers| {
                    single(numbers, leads, |ohms| coil.log_density(ohms))
                })
            }
        };
        (1.0 - FLOOR) * found + FLOOR * self.anything()
    }

    /// Two windings that meet at the common pin.
    fn two_windings(&self, numbers: &[Number], assignment: Assignment, leads: Normal) -> f64 {
        self.mean_over_motors(|motors| two_unknowns(numbers, assignment, leads, &motors.whole))
    }

    fn mean_over_motors(&self, density: impl Fn(&Motors) -> f64) -> f64 {
        let count = f64::from(u8::try_from(self.motors.len()).unwrap_or(u8::MAX));
        self.motors.iter().map(density).sum::<f64>() / count
    }

    /// Shorted turns in the run winding, in the start winding, of one against the other, or all.
    fn shorted(&self, assignment: Assignment, leads: Normal) -> f64 {
        let numbers = &self.numbers;
        self.mean_over_motors(|motors| {
            let in_run = two_unknowns(numbers, assignment, leads, &motors.run_shorted);
            let in_start = two_unknowns(numbers, assignment, leads, &motors.start_shorted);
            let both = star(numbers, assignment, leads, &motors.whole).unwrap_or(in_run);
            let all = dead_short(numbers, assignment, leads).unwrap_or(in_run);
            0.30 * in_run + 0.30 * in_start + 0.25 * both + 0.15 * all
        })
    }

    /// A start device across start and run. Fewer than three numbers fit any such circuit:
    /// then it is as likely as without.
    fn bridged(&self, assignment: Assignment, leads: Normal) -> f64 {
        let device = self.priors.start_device;
        self.mean_over_motors(|motors| {
            circuits::bridged(&self.numbers, assignment, leads, &motors.whole, device)
                .unwrap_or_else(|| two_unknowns(&self.numbers, assignment, leads, &motors.whole))
        })
    }

    /// One pair shows over range, its contact's resistance, or something else altogether.
    fn one_missed(&self, assignment: Assignment, leads: Normal) -> f64 {
        let over = self.inspection.readings().count() - self.numbers.len();
        if over == 3 {
            // Nothing reads at all: the meter, its leads or its range.
            return 0.05;
        }
        let each = |missed: Pair| -> f64 {
            let others: Vec<Number> = self
                .numbers
                .iter()
                .filter(|number| number.pair != missed)
                .copied()
                .collect();
            let elsewhere_over = self
                .inspection
                .readings()
                .filter(|reading| reading.pair != missed && is_over_range(reading.typed.observed))
                .count();
            let rest = self.two_windings(&others, assignment, leads)
                * power(FALSE_OVER_RANGE, elsewhere_over);
            let own = match self.inspection.reading(missed) {
                None => 1.0,
                Some(reading) => match reading.typed.observed {
                    Observed::OverRange { .. } => 0.5,
                    Observed::Value(value) => 0.5 * WIDEST.log_density(value.get().max(0.05)),
                },
            };
            rest * own / 3.0
        };
        let one: f64 = Pair::ALL.into_iter().map(each).sum();
        one + SEVERAL_MISSED * self.anything()
    }

    /// Three windings in a star or a triangle: any two pins read the same.
    fn equal(&self, leads: Normal) -> f64 {
        let winding = self.priors.equal_windings;
        single(&self.numbers, leads, |ohms| winding.log_density(ohms))
    }

    /// The density where every pair should read a number.
    fn all_closed(&self, numbers: f64) -> f64 {
        let over = self.inspection.readings().count() - self.numbers.len();
        numbers * power(FALSE_OVER_RANGE, over)
    }

    /// The density where one pair alone should read a number.
    fn only(&self, closed: Pair, density: impl Fn(&[Number]) -> f64) -> f64 {
        let mut product = 1.0;
        let mut inside = Vec::new();
        for reading in self.inspection.readings() {
            product *= match (reading.pair == closed, reading.typed.observed) {
                (true, Observed::OverRange { .. }) => FALSE_OVER_RANGE,
                (true, Observed::Value(_)) => {
                    inside.extend(self.numbers.iter().filter(|n| n.pair == closed));
                    1.0
                }
                (false, Observed::OverRange { .. }) => 1.0 - FALSE_NUMBER,
                (false, Observed::Value(value)) => {
                    FALSE_NUMBER * WIDEST.log_density(value.get().max(0.05))
                }
            };
        }
        product * density(&inside)
    }

    /// The density of a meter that shows anything at all.
    fn anything(&self) -> f64 {
        self.inspection
            .readings()
            .map(|reading| match reading.typed.observed {
                Observed::OverRange { .. } => 0.1,
                Observed::Value(value) => WIDEST.log_density(value.get().max(0.05)),
            })
            .product()
    }
}

fn is_over_range<Q>(observed: Observed<Q>) -> bool {
    matches!(observed, Observed::OverRange { .. })
}

fn power(base: f64, exponent: usize) -> f64 {
    (0..exponent).fold(1.0, |product, _| product * base)
}

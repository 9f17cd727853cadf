//! The readings, ready to be held against one explanation after another.

use core::cmp::Ordering;

use quantity::Observed;

use super::circuits::{self, Motors};
use super::evidence::{Seen, Shown};
use super::log_normal::LogNormal;
use super::priors::{Normal, WindingPriors};
use super::readings::{Inspection, Number};
use super::{Assignment, Explanation, Mains, Pair};

/// A finite reading that could be anything, in ohms, as a natural logarithm: a bad contact or a
/// wrong range mostly adds, from an ohm or two to megohms (judgement).
const WIDEST: Normal = Normal::new(4.6, 3.0);
/// Nothing that is measured badly reads less than this, in ohms.
const SMALLEST: f64 = 0.05;
/// Chance that a pair which conducts shows over range although no explanation says so. Where
/// another pair is open, a missed probe comes on top: that is no explanation of its own.
const FALSE_OVER_RANGE: f64 = 1e-4;
const OPEN_AND_MISSED: f64 = 5e-3;
/// Chance that an open pair shows a number all the same.
const FALSE_NUMBER: f64 = 0.01;
/// Chance that a pair whose probe missed shows over range, not a number.
const MISSED_IS_OPEN: f64 = 0.5;
/// Chance that all three are over range where probes missed: meter, leads or range.
const NOTHING_READS: f64 = 0.05;
/// Chance that more than one reading is off: wrong range, wrong mode, fingers on the tips.
const SEVERAL_MISSED: f64 = 1e-3;
/// Keeps every density above zero, so that nothing is ever impossible.
const FLOOR: f64 = 1e-9;

/// The pairs by part, common–run, common–start, start–run, that conduct.
const ALL_CLOSED: [bool; 3] = [true; 3];
const ONLY_RUN: [bool; 3] = [true, false, false];
const ONLY_START: [bool; 3] = [false, true, false];
const ONLY_SERIES: [bool; 3] = [false, false, true];

/// The readings with all that is assumed about motors and leads.
pub(super) struct Scene<'a> {
    inspection: &'a Inspection,
    priors: &'a WindingPriors,
    shown: [Shown; 3],
    motors: Vec<Motors>,
    any_leads: Normal,
    /// Logarithm of the density of a meter that shows anything at all.
    log_anything: f64,
    /// Below this no density goes.
    floor: f64,
}

impl<'a> Scene<'a> {
    pub(super) fn of(inspection: &'a Inspection, priors: &'a WindingPriors) -> Self {
        let shown = Pair::ALL.map(|pair| shown(inspection, pair));
        let motors = match inspection.mains {
            Some(Mains::V120F60) => vec![priors.v120],
            Some(Mains::V230F50) => vec![priors.v230],
            None => vec![priors.v120, priors.v230],
        };
        let log_anything: f64 = shown.iter().map(log_anything).sum();
        Self {
            inspection,
            priors,
            motors: motors.iter().map(|one| Motors::of(one, priors)).collect(),
            any_leads: priors.any_leads(inspection.leads),
            shown,
            log_anything,
            floor: log_anything + libm::log(FLOOR),
        }
    }

    /// Logarithms of the density of all readings under an explanation, by assignment in the order
    /// of [`Assignment::ALL`]. Always finite.
    pub(super) fn log_densities(&self, explanation: Explanation) -> [f64; 6] {
        let leads = self.any_leads;
        let whole = |closed, leads| Assignment::ALL.map(|one| self.whole(one, closed, leads));
        let found = match explanation {
            Explanation::Sound => whole(ALL_CLOSED, self.priors.zeroed_leads),
            Explanation::LeadsNotZeroed => {
                whole(ALL_CLOSED, self.priors.leads_in(self.inspection.leads))
            }
            Explanation::ProtectorOpen | Explanation::CommonLeadOpen => whole(ONLY_SERIES, leads),
            Explanation::StartOpen => whole(ONLY_RUN, leads),
            Explanation::RunOpen => whole(ONLY_START, leads),
            Explanation::ShortedTurns => {
                let lump = self.lump();
                Assignment::ALL.map(|one| log_sum(&[self.shorted(one), lump]))
            }
            Explanation::StartDeviceOn => Assignment::ALL.map(|one| self.bridged(one)),
            Explanation::ProbeMissed => Assignment::ALL.map(|one| self.missed(one)),
            Explanation::EqualWindings => [self.equal(); 6],
            Explanation::SingleCoil => Assignment::ALL.map(|one| self.coil(one)),
        };
        found.map(|found| log_sum(&[found, self.floor]))
    }

    /// Two windings that meet at the common pin, of which only some pairs conduct.
    fn whole(&self, assignment: Assignment, closed: [bool; 3], leads: Normal) -> f64 {
        let (seen, log_open) = self.seen(assignment, closed, leads);
        log_open + self.two_windings(&seen)
    }

    fn two_windings(&self, seen: &Seen) -> f64 {
        self.mean_over_motors(|motors| {
            log_sum(&motors.whole.each_ref().map(|(share, windings)| {
                libm::log(*share) + seen.log_evidence(circuits::two_windings, windings, self.floor)
            }))
        })
    }

    /// A start device across start and run.
    fn bridged(&self, assignment: Assignment) -> f64 {
        let (seen, _) = self.seen(assignment, ALL_CLOSED, self.any_leads);
        self.mean_over_motors(|motors| {
            seen.log_evidence(circuits::triangle, &motors.bridged, self.floor)
        })
    }

    /// One coil between the two pins that are not common; the third is no winding's.
    fn coil(&self, assignment: Assignment) -> f64 {
        let (seen, log_open) = self.seen(assignment, ONLY_SERIES, self.any_leads);
        let coil = LogNormal::of([([1.0], self.priors.single_coil)]);
        log_open + seen.log_evidence(circuits::equal, &coil, self.floor)
    }

    /// Shorted turns in a winding, or of one winding against the other.
    fn shorted(&self, assignment: Assignment) -> f64 {
        let (seen, _) = self.seen(assignment, ALL_CLOSED, self.any_leads);
        self.mean_over_motors(|motors| {
            let in_one = motors.shorted.each_ref().map(|(share, left)| {
                libm::log(*share) + seen.log_evidence(circuits::two_windings, left, self.floor)
            });
            let (share, legs) = &motors.touching;
            let touching = libm::log(*share) + seen.log_evidence(circuits::star, legs, self.floor);
            log_sum(&[log_sum(&in_one), touching])
        })
    }

    /// Windings burnt to one lump, with the share of that among shorted ones.
    fn lump(&self) -> f64 {
        let legs = circuits::lump(self.priors);
        let seen = Seen::new(in_order(self.shown), self.any_leads, FALSE_OVER_RANGE);
        libm::log(circuits::LUMP) + seen.log_evidence(circuits::star, &legs, self.floor)
    }

    /// One pair shows over range, its contact's resistance, or something else altogether.
    fn missed(&self, assignment: Assignment) -> f64 {
        let over = |shown: &&Shown| matches!(shown, Shown::Above(_));
        if self.shown.iter().filter(over).count() == self.shown.len() {
            return libm::log(NOTHING_READS);
        }
        let one = Pair::ALL.map(|pair| {
            let mut others = self.shown;
            others[pair.index()] = Shown::Nothing;
            let seen = Seen::new(
                by_part(&others, assignment),
                self.any_leads,
                FALSE_OVER_RANGE,
            );
            let own = match self.shown[pair.index()] {
                Shown::Nothing => 0.0,
                Shown::Above(_) => libm::log(MISSED_IS_OPEN),
                number => libm::log(1.0 - MISSED_IS_OPEN) + log_anything(&number),
            };
            own - libm::log(3.0) + self.two_windings(&seen)
        });
        log_sum(&[log_sum(&one), libm::log(SEVERAL_MISSED) + self.log_anything])
    }

    /// Three windings in a star or a triangle: any two pins read the same.
    fn equal(&self) -> f64 {
        let winding = LogNormal::of([([1.0], self.priors.equal_windings)]);
        let seen = Seen::new(in_order(self.shown), self.any_leads, FALSE_OVER_RANGE);
        seen.log_evidence(circuits::equal, &winding, self.floor)
    }

    /// Either mains where it is not known, both being as likely.
    fn mean_over_motors(&self, log_density: impl Fn(&Motors) -> f64) -> f64 {
        match self.motors.as_slice() {
            [one] => log_density(one),
            motors => {
                let each: Vec<f64> = motors.iter().map(log_density).collect();
                log_sum(&each) - libm::log(2.0)
            }
        }
    }

    /// What was shown by part, the pairs that don't conduct taken out, with the logarithm of the
    /// density of what those showed.
    fn seen(&self, assignment: Assignment, closed: [bool; 3], leads: Normal) -> (Seen, f64) {
        let mut log_open = 0.0;
        let mut by_part = by_part(&self.shown, assignment);
        for (place, shown) in by_part.iter_mut().enumerate() {
            if closed[place] {
                continue;
            }
            log_open += match core::mem::replace(shown, Shown::Nothing) {
                Shown::Nothing => 0.0,
                Shown::Above(_) => libm::log(1.0 - FALSE_NUMBER),
                number => libm::log(FALSE_NUMBER) + log_anything(&number),
            };
        }
        let slip = if closed == ALL_CLOSED {
            FALSE_OVER_RANGE
        } else {
            OPEN_AND_MISSED
        };
        (Seen::new(by_part, leads, slip), log_open)
    }
}

fn shown(inspection: &Inspection, pair: Pair) -> Shown {
    let Some(reading) = inspection.reading(pair) else {
        return Shown::Nothing;
    };
    match reading.typed.observed {
        Observed::OverRange { above } => Shown::Above(above.get()),
        Observed::Value(_) => Number::of(reading).map_or(Shown::Nothing, |number| Shown::Number {
            value: number.value,
            standard: number.standard,
        }),
    }
}

/// Between common and run, common and start, start and run.
fn by_part(shown: &[Shown; 3], assignment: Assignment) -> [Shown; 3] {
    [
        assignment.run_pair(),
        assignment.start_pair(),
        assignment.series_pair(),
    ]
    .map(|pair| shown[pair.index()])
}

/// The same whatever the pins are called: for circuits that look alike from all sides.
fn in_order(mut shown: [Shown; 3]) -> [Shown; 3] {
    let key = |shown: &Shown| match *shown {
        Shown::Nothing => [0.0, 0.0, 0.0],
        Shown::Above(bound) => [1.0, bound, 0.0],
        Shown::Number { value, standard } => [2.0, value, standard],
    };
    let is_above = |one: &Shown, other: &Shown| {
        let pairs = key(one).into_iter().zip(key(other));
        let order = pairs.fold(Ordering::Equal, |so_far, (a, b)| {
            so_far.then(a.total_cmp(&b))
        });
        order == Ordering::Greater
    };
    for (one, other) in [(0, 1), (1, 2), (0, 1)] {
        if is_above(&shown[one], &shown[other]) {
            shown.swap(one, other);
        }
    }
    shown
}

/// Logarithm of the density of a meter that shows anything at all.
fn log_anything(shown: &Shown) -> f64 {
    match *shown {
        Shown::Nothing => 0.0,
        Shown::Above(_) => libm::log(0.1),
        Shown::Number { value, .. } => WIDEST.ln_density_of_exponential(value.max(SMALLEST)),
    }
}

/// The logarithm of a sum of numbers that are given by their logarithms.
pub(super) fn log_sum(logs: &[f64]) -> f64 {
    let largest = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    if largest == f64::NEG_INFINITY {
        return largest;
    }
    let sum: f64 = logs.iter().map(|log| libm::exp(log - largest)).sum();
    largest + libm::log(sum)
}

//! The windings and the leads in ohms, and what the third pair should read.

use quantity::{Observed, Ohms, Quantity, Sources, Uncertain};

use super::priors::{Normal, WindingPriors};
use super::readings::Inspection;
use super::weighing::Weighed;
use super::{Leads, Pair, PairReading, Pin};

/// Windings and leads with their uncertainty, correlated through the leads.
#[derive(Debug, Clone, PartialEq)]
pub struct Resistances {
    /// The run winding.
    pub run: Uncertain<Ohms>,
    /// The start winding.
    pub start: Uncertain<Ohms>,
    /// Leads and contacts: what the two smaller pairs have over the largest.
    pub leads: Uncertain<Ohms>,
}

/// What the third pair should read after two.
#[derive(Debug, Clone, PartialEq)]
pub struct Forecast {
    /// The pair not read yet.
    pub pair: Pair,
    /// If the pin that both readings share is the common one: their sum.
    pub sum: Uncertain<Ohms>,
    /// The pin that is common then.
    pub sum_common: Pin,
    /// If it is not: their difference; none where the two are too alike for it.
    pub difference: Option<Uncertain<Ohms>>,
    /// The pin that is common then.
    pub difference_common: Pin,
    /// Whether the two are so alike that three equal windings are possible.
    pub alike: bool,
}

/// Which forecast the three numbers meet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Foreseen {
    /// The largest pair is the sum of the two others.
    Sum,
    /// All three are the same.
    Alike,
    /// Neither.
    Neither,
}

/// A misfit beyond this many standard uncertainties is a misfit: 99.7 of 100 are within.
const WITHIN: f64 = 3.0;

/// Readings as uncertain values: the meter's part is their own, the leads are one source.
struct Circuit {
    leads: Uncertain<Ohms>,
    values: [Option<Uncertain<Ohms>>; 3],
}

impl Circuit {
    fn of(inspection: &Inspection, priors: &WindingPriors) -> Self {
        let mut sources = Sources::default();
        let believed = leads_estimate(inspection.leads, priors);
        let leads = Uncertain::exact(Ohms::new(believed.mean))
            .with(sources.fresh(), Ohms::new(believed.deviation));
        let mut measured = |reading: &PairReading| match reading.typed.observed {
            Observed::Value(value) => Some(reading.accuracy.measured(
                value,
                reading.typed.count,
                &mut sources,
            )),
            Observed::OverRange { .. } => None,
        };
        let values = Pair::ALL.map(|pair| inspection.reading(pair).and_then(&mut measured));
        Self { leads, values }
    }

    fn value(&self, pair: Pair) -> Option<&Uncertain<Ohms>> {
        self.values[pair.index()].as_ref()
    }
}

/// The leads before their excess is seen. Where nobody said, anything from zeroed to worn.
fn leads_estimate(leads: Leads, priors: &WindingPriors) -> Normal {
    match leads {
        Leads::Zeroed => priors.zeroed_leads,
        Leads::Measured(..) => priors.leads_in(leads),
        Leads::Unknown | Leads::NotZeroed => Normal::new(0.3, 0.3),
    }
}

/// Windings and leads, where three numbers and a likely two-winding motor allow it.
///
/// The excess of the two smaller pairs over the largest is the leads' resistance. Where it differs
/// from what was thought of the leads, the leads and all three readings take the difference on
/// themselves in proportion to their variances: generalised least squares with one condition.
pub(super) fn estimate(
    inspection: &Inspection,
    priors: &WindingPriors,
    weighed: &Weighed,
) -> Option<Resistances> {
    let whole: f64 = weighed
        .scored
        .iter()
        .filter(|scored| scored.explanation.is_whole_pair_of_windings())
        .map(|scored| scored.probability)
        .sum();
    if whole < 0.5 {
        return None;
    }
    let circuit = Circuit::of(inspection, priors);
    let run = circuit.value(weighed.best.run_pair())?;
    let start = circuit.value(weighed.best.start_pair())?;
    let series = circuit.value(weighed.best.series_pair())?;
    let excess = &(run + start) - series;
    let known = &circuit.leads;
    let misfit = &excess - known;
    let share = |of: &Uncertain<Ohms>| variance(of) / variance(&misfit);
    let leads = known + &(&misfit * share(known));
    Some(Resistances {
        run: &(run - &(&misfit * share(run))) - &leads,
        start: &(start - &(&misfit * share(start))) - &leads,
        leads,
    })
}

/// What the third pair should read, after exactly two numbers and nothing on the third.
pub(super) fn forecast(inspection: &Inspection, priors: &WindingPriors) -> Option<Forecast> {
    let circuit = Circuit::of(inspection, priors);
    let mut missing = Pair::ALL
        .into_iter()
        .filter(|pair| inspection.reading(*pair).is_none());
    let (pair, None) = (missing.next()?, missing.next()) else {
        return None;
    };
    let mut read = Pair::ALL.into_iter().filter(|read| *read != pair);
    let (one, other) = (read.next()?, read.next()?);
    let (first, second) = (circuit.value(one)?, circuit.value(other)?);
    let gap = first - second;
    let first_is_larger = gap.value() > Ohms::new(0.0);
    let apart = if first_is_larger { gap.clone() } else { -&gap };
    let alike = apart.value().get() <= WITHIN * apart.standard().get();
    let smaller = if first_is_larger { other } else { one };
    let sum_common = one.shared_with(other)?;
    Some(Forecast {
        pair,
        sum: &(first + second) - &circuit.leads,
        sum_common,
        difference: (!alike).then(|| &apart + &circuit.leads),
        // The other end of the smaller winding, which the missing pair touches too.
        difference_common: smaller.shared_with(pair)?,
        alike,
    })
}

/// Whether three numbers add up. `None` also where they are too small to tell a sum from three
/// alike.
pub(super) fn sum_rule(inspection: &Inspection, priors: &WindingPriors) -> Option<Foreseen> {
    let circuit = Circuit::of(inspection, priors);
    let [one, two, three] = &circuit.values;
    let (one, two, three) = (one.as_ref()?, two.as_ref()?, three.as_ref()?);
    let [small, middle, large] = sorted(one, two, three);
    let excess = &(&(small + middle) - large) - &circuit.leads;
    let spread = large - small;
    match (is_nothing(&excess), is_nothing(&spread)) {
        (true, true) => None,
        (true, false) => Some(Foreseen::Sum),
        (false, true) => Some(Foreseen::Alike),
        (false, false) => Some(Foreseen::Neither),
    }
}

/// The smallest first.
fn sorted<'a>(
    one: &'a Uncertain<Ohms>,
    two: &'a Uncertain<Ohms>,
    three: &'a Uncertain<Ohms>,
) -> [&'a Uncertain<Ohms>; 3] {
    let above = |a: &Uncertain<Ohms>, b: &Uncertain<Ohms>| a.value().get() > b.value().get();
    let (small, large) = if above(one, two) {
        (two, one)
    } else {
        (one, two)
    };
    if above(small, three) {
        [three, small, large]
    } else if above(large, three) {
        [small, three, large]
    } else {
        [small, large, three]
    }
}

fn is_nothing(value: &Uncertain<Ohms>) -> bool {
    value.value().get().abs() <= WITHIN * value.standard().get()
}

fn variance<Q: Quantity>(value: &Uncertain<Q>) -> f64 {
    value.covariance(value)
}

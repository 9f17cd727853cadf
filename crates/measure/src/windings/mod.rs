//! A compressor's windings from ohms between its three pins.
//!
//! Answers: which pin is common, start and run; what both windings and the leads have; and
//! which explanations fit what the meter showed, each with its likelihood and its probability.
//!
//! The physics is Kirchhoff's: run and start winding meet at the common pin, so the pair that
//! leaves the common pin out reads both in series. (The highest pair leaves out common:
//! *Heating and Cooling Essentials*, 2022, §25.8; *Electrical Theory & Applications for HVACR*,
//! 2012, ch. 3.) The ohms decide the common pin; start and run come from the ohms together with
//! the wiring as it was found, because the start winding is not the larger one in every machine.

mod circuits;
mod evidence;
mod explanation;
mod integral;
mod labels;
mod limits;
mod log_normal;
mod pins;
mod priors;
mod readings;
mod resistances;
mod scene;
mod weighing;

pub use explanation::{Explanation, Scored};
pub use labels::{Label, PinBelief};
pub use limits::{PAIR_LIMITS, doubt_about_pair};
pub use pins::{Assignment, Pair, Pin, Role};
pub use priors::{MainsPriors, Normal, WindingPriors};
pub use readings::{Inspection, Leads, Mains, Number, PairReading, StartGear, WiringAsFound};
pub use resistances::{Forecast, Foreseen, Resistances};

use weighing::Weighed;

/// What the three pairs say.
#[derive(Debug, Clone, PartialEq)]
pub struct Windings {
    /// What is believed about each pin, in the order of [`Pin::ALL`].
    pub pins: [PinBelief; 3],
    /// Every explanation, the likeliest first; ties in the order of [`Explanation::ALL`].
    pub explanations: Vec<Scored>,
    /// The windings and the leads, once three pairs read and a motor with two windings is
    /// likelier than not.
    pub resistances: Option<Resistances>,
    /// After exactly two numbers: what the third pair should read.
    pub forecast: Option<Forecast>,
    /// After three numbers: whether they add up, are alike, or neither. `None` where they are too
    /// small for this meter to tell.
    pub sum_rule: Option<Foreseen>,
}

impl Windings {
    /// Weighs what was read under stated priors.
    ///
    /// ```
    /// use measure::MeterKind;
    /// use measure::windings::{Inspection, Pair, PairReading, Pin, Windings, WindingPriors};
    /// use quantity::{Ohms, parse_reading};
    ///
    /// let meter = MeterKind::Good.automatic();
    /// let mut inspection = Inspection::default();
    /// for (pair, typed) in [(Pair::OneTwo, "4.7"), (Pair::TwoThree, "7,6"), (Pair::OneThree, "12.0")] {
    ///     let typed = parse_reading(typed, meter.top).unwrap();
    ///     inspection.set(PairReading { pair, typed, accuracy: meter.accuracy });
    /// }
    /// let windings = Windings::of(&inspection, &WindingPriors::default());
    /// assert!(windings.pins[Pin::Two.index()].common > 0.99);
    /// ```
    #[must_use]
    pub fn of(inspection: &Inspection, priors: &WindingPriors) -> Self {
        let weighed = Weighed::of(inspection, priors);
        Self {
            pins: weighed.pins,
            resistances: resistances::estimate(inspection, priors, &weighed),
            explanations: weighed.ranked(),
            forecast: resistances::forecast(inspection, priors),
            sum_rule: resistances::sum_rule(inspection, priors),
        }
    }

    /// The probability of one explanation.
    #[must_use]
    pub fn probability(&self, explanation: Explanation) -> f64 {
        self.explanations
            .iter()
            .find(|scored| scored.explanation == explanation)
            .map_or(0.0, |scored| scored.probability)
    }

    /// The likeliest explanation, once anything was read.
    #[must_use]
    pub fn likeliest(&self) -> Option<Scored> {
        self.explanations.first().copied()
    }
}

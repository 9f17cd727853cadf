//! What has to be known of a machine to say how its energy stands.
//!
//! Answers: which class of product it is in the American rule, its volumes, its year of make, and
//! what a kilowatt hour costs. Must never know: what was metered, what follows from it.
//!
//! It is asked on a page of its own and is none of the checks by which faults are found.

mod classes;
mod typed;

pub use classes::EnergyClass;
pub use typed::{FigureError, typed_price, typed_volume, typed_year};

use job::{Answer, Job};
use measure::energy::{Class, Compartments, Era, Extras, Product};

use crate::choice::{Choice, answered, choices};

/// The name under which all of it is kept.
pub const ENERGY: &str = "energy";

choices! {
    /// What the colder compartment of a refrigerator is, where a class has both kinds.
    pub enum ColdCompartment answers "energy" / "cold-compartment" {
        /// A freezer of its own, for -18 °C.
        Freezer = "freezer",
        /// A box for ice, not that cold.
        IceBox = "ice-box",
    }
}

choices! {
    /// Whether it makes ice by itself.
    pub enum Icemaker answers "energy" / "icemaker" {
        /// It does.
        Has = "has",
        /// It doesn't.
        HasNot = "has-not",
    }
}

choices! {
    /// A figure that is typed as it stands on a plate or a bill.
    pub enum EnergyFigure {
        /// The volume for fresh food, with its unit; zero for a freezer.
        FreshVolume = "fresh-volume",
        /// The volume for frozen food, with its unit.
        FrozenVolume = "frozen-volume",
        /// The year of make, four digits.
        YearMade = "year-made",
        /// The price of a kilowatt hour.
        Price = "price",
    }
}

impl EnergyFigure {
    /// What was typed for it.
    #[must_use]
    pub fn text(self, job: &Job) -> Option<&str> {
        match job.answer(ENERGY, self.name()) {
            Some(Answer::Text(text)) => Some(text.as_str()),
            _ => None,
        }
    }

    /// Why what is about to be typed for it isn't understood.
    ///
    /// # Errors
    /// [`FigureError`].
    pub fn check(self, text: &str) -> Result<(), FigureError> {
        match self {
            Self::FreshVolume | Self::FrozenVolume => typed_volume(text).map(|_| ()),
            Self::YearMade => typed_year(text).map(|_| ()),
            Self::Price => typed_price(text).map(|_| ()),
        }
    }
}

/// Something that is still to be asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EnergyNeed {
    /// Energy over some hours, by a meter in the outlet.
    Metering,
    /// Its class.
    Class,
    /// What its colder compartment is.
    ColdCompartment,
    /// Whether it makes ice by itself, where that raises its limit.
    Icemaker,
    /// A figure, as nothing or nothing understood was typed for it.
    Figure(EnergyFigure),
    /// How warm the room was.
    Room,
}

/// What was answered.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Asked {
    pub(crate) class: Option<EnergyClass>,
    /// The machine as the rule sees it, once class and volumes are known.
    pub(crate) product: Option<Product>,
    pub(crate) year: Option<u16>,
    pub(crate) price: Option<f64>,
    /// What of the machine is still to be asked.
    pub(crate) missing: Vec<EnergyNeed>,
}

impl Asked {
    pub(crate) fn of(job: &Job) -> Self {
        let class = answered::<EnergyClass>(job);
        let volume =
            |figure: EnergyFigure| figure.text(job).and_then(|text| typed_volume(text).ok());
        let year = EnergyFigure::YearMade
            .text(job)
            .and_then(|text| typed_year(text).ok());
        let price = EnergyFigure::Price
            .text(job)
            .and_then(|text| typed_price(text).ok());
        let of_rule = class.and_then(EnergyClass::class);
        let compartments = of_rule.and_then(|class| match answered(job) {
            _ if !class.may_be_basic() => Some(class.compartments()),
            Some(ColdCompartment::Freezer) => Some(Compartments::RefrigeratorFreezer),
            Some(ColdCompartment::IceBox) => Some(Compartments::BasicRefrigerator),
            None => None,
        });
        let fresh = match of_rule {
            Some(class) if class.is_freezer() => Some(quantity::CubicMetres::new(0.0)),
            _ => volume(EnergyFigure::FreshVolume),
        };
        let frozen = volume(EnergyFigure::FrozenVolume);
        let icemaker = of_rule.and_then(|class| icemaker(job, class, year));
        let is_other = class == Some(EnergyClass::OtherRules);
        let missing = [
            class.is_none().then_some(EnergyNeed::Class),
            (of_rule.is_some() && compartments.is_none()).then_some(EnergyNeed::ColdCompartment),
            (of_rule.is_some() && icemaker.is_none()).then_some(EnergyNeed::Icemaker),
            fresh
                .is_none()
                .then_some(EnergyNeed::Figure(EnergyFigure::FreshVolume)),
            frozen
                .is_none()
                .then_some(EnergyNeed::Figure(EnergyFigure::FrozenVolume)),
            year.is_none()
                .then_some(EnergyNeed::Figure(EnergyFigure::YearMade)),
        ];
        let product = match (of_rule, compartments, icemaker, (fresh, frozen)) {
            (Some(class), Some(compartments), Some(icemaker), (Some(fresh), Some(frozen))) => {
                Some(Product {
                    class,
                    compartments,
                    fresh,
                    frozen,
                    extras: Extras {
                        icemaker,
                        doors: None,
                    },
                })
            }
            _ => None,
        };
        Self {
            class,
            product,
            year,
            price,
            // Elsewhere nothing is compared, and nothing more is asked.
            missing: missing
                .into_iter()
                .flatten()
                .filter(|_| !is_other)
                .collect(),
        }
    }

    /// Whether anything was answered at all.
    pub(crate) fn anything(job: &Job) -> bool {
        job.answered()
            .iter()
            .any(|question| question.check.as_str() == ENERGY)
    }
}

/// Whether an icemaker raises a machine's limit; `None` where that has to be asked. Only some classes
/// have one of their own with an icemaker, and those only since 2014.
fn icemaker(job: &Job, class: Class, year: Option<u16>) -> Option<bool> {
    let counts = |year| {
        let mut eras = Era::of_year(class, year).into_iter();
        eras.any(|era| era >= Era::Of2014)
    };
    if class.may_have_icemaker() && year.is_none_or(counts) {
        answered::<Icemaker>(job).map(|answer| answer == Icemaker::Has)
    } else {
        Some(false)
    }
}

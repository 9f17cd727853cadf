//! Whether a start kit would help this machine, and which capacitance it would take.
//!
//! Answers: is a kit the wrong answer here, and why; what has to be known before it can be told
//! what one would do; and, where both are settled, how starting torque goes with capacitance for
//! the motors that fit the readings, which capacitances are worth having, and whether tries with
//! a kit bear that out.
//!
//! Must never know: which kits are sold, how it is said. What a capacitor does to a motor is
//! [`measure::start_kit`].

mod curve;
mod declared;
mod readings;
mod reasons;

pub use curve::{KitAdvice, KitCurve, KitTries};
pub use declared::KitDeclared;
pub use readings::{KitCurrent, KitNeed, KitReadings};
pub use reasons::NoKit;

use job::Job;

use crate::Assessment;
use crate::whole::present;

/// What is to be said of a start kit for one machine.
///
/// ```
/// use diagnosis::{KitNeed, Model, StartKit, assess};
/// use job::{Id, Job, Moment, Origin};
///
/// let now = Moment::new(0, 0).unwrap();
/// let job = Job::new(Id::new("j").unwrap(), now, Origin::Invented);
/// let known = assess(&Model::default(), &job, now);
/// let StartKit::Missing(needs) = StartKit::of(&job, &known) else {
///     panic!("nothing is known of it yet");
/// };
/// assert!(needs.contains(&KitNeed::Refrigerant) && needs.contains(&KitNeed::Windings));
/// ```
#[derive(Debug, Clone, PartialEq)]
pub enum StartKit {
    /// A kit is the wrong answer, for these reasons; at least one, the gravest first.
    NotThisMachine(Vec<NoKit>),
    /// It can't be told before this is known; at least one thing.
    Missing(Vec<KitNeed>),
    /// What a kit would do.
    Curve(Box<KitCurve>),
}

impl StartKit {
    /// The name of its screen beside those of the checks; `start-kit` is the check that tries one.
    pub const NAME: &'static str = "would-a-kit-help";

    /// Of a job and what is known of it. Suspects count where [`Assessment::whole`] is there, and
    /// tries where [`Assessment::start_trials`] is: both as [`crate::assess`] leaves them. It takes
    /// as long as that does, and so is worked out where it is shown, not with every answer.
    #[must_use]
    pub fn of(job: &Job, known: &Assessment) -> Self {
        let present = present(job);
        let job = present.as_ref().unwrap_or(job);
        let against = reasons::against(job, known);
        if !against.is_empty() {
            return Self::NotThisMachine(against);
        }
        match KitReadings::of(job, known) {
            Err(needs) => Self::Missing(needs),
            Ok(readings) => match KitCurve::of(readings, job, known) {
                Ok(curve) => Self::Curve(Box::new(curve)),
                Err(need) => Self::Missing(vec![need]),
            },
        }
    }

    /// What a kit would do, where that can be told.
    #[must_use]
    pub fn curve(&self) -> Option<&KitCurve> {
        match self {
            Self::Curve(curve) => Some(curve),
            Self::NotThisMachine(_) | Self::Missing(_) => None,
        }
    }
}

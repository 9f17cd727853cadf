//! Whether a machine that was switched on gets cold enough, by what a job holds of it.
//!
//! Answers: since when does it cool, how did each compartment go and where does it end, what
//! happened meanwhile, are these degrees what they are said to be? Must never know: which fault
//! lets it end there (that is weighed with everything else), how it is said.
//!
//! Only what came since it was last switched on counts, and nothing from before the last change:
//! that was another machine. All times are moments, so that no clock that was set forward or back
//! moves a reading. The order of the entries doesn't matter.
//!
//! Targets: 4 °C for fresh food and −18 °C for a freezer (USDA FSIS and FDA, 40 °F and 0 °F). Time
//! for an empty cabinet: a day (from memory).

mod compartment;
mod course;
mod happened;
mod scale;
mod support;

pub use compartment::Compartment;
pub use course::{Course, Forecast};
pub use happened::ColdSign;
pub use scale::ScaleDoubt;

pub(crate) use course::shown;
pub(crate) use happened::{Happened, LONGEST_DEFROST};

use job::{ColdEventKind, Content, Job, Moment};
use quantity::{Celsius, Seconds};

use crate::whole::Change;
use crate::{Kind, answered};
use course::Watched;

/// What was watched of a machine since it was switched on.
#[derive(Debug, Clone, PartialEq)]
pub struct CoolDown {
    /// When it was switched on.
    pub began: Moment,
    /// When it was switched off again, where it was.
    pub ended: Option<Moment>,
    /// Each compartment of which there are readings.
    pub courses: Vec<Course>,
    /// The room's temperature, the middle of its readings.
    pub room: Option<Celsius>,
    /// What happened meanwhile that says something.
    pub signs: Vec<ColdSign>,
    /// Why these may be degrees of another scale. Nothing is foretold from such, or weighed.
    pub doubt: Option<ScaleDoubt>,
    pub(crate) happened: Happened,
}

impl CoolDown {
    /// So long an empty cabinet is given (from memory).
    pub const DAY: Seconds = Seconds::new(86_400.0);

    /// Of a job, as of a moment; `None` where it wasn't switched on since the last change.
    ///
    /// ```
    /// use diagnosis::CoolDown;
    /// use job::{ColdEvent, ColdEventKind, Content, Entry, Id, Job, Moment, Origin};
    ///
    /// let now = Moment::new(0, 0).unwrap();
    /// let mut job = Job::new(Id::new("j").unwrap(), now, Origin::Invented);
    /// assert_eq!(CoolDown::of(&job, now), None);
    /// let kind = ColdEventKind::SwitchedOn;
    /// let content = Content::Event(ColdEvent { at: now, kind });
    /// job.add(Entry { id: Id::new("e").unwrap(), at: now, content }).unwrap();
    /// assert_eq!(CoolDown::of(&job, now).unwrap().began, now);
    /// ```
    #[must_use]
    pub fn of(job: &Job, now: Moment) -> Option<Self> {
        Self::read(job, now, true)
    }

    /// The same without what takes a second fit and without a coil and watts, for what only weighs where
    /// it ends: those are weighed by themselves.
    pub(crate) fn of_ends(job: &Job, now: Moment) -> Option<Self> {
        Self::read(job, now, false)
    }

    fn read(job: &Job, now: Moment, is_shown: bool) -> Option<Self> {
        let began = began(job, now)?;
        let happened = Happened::since(job, began, now);
        let ended = happened.first(ColdEventKind::SwitchedOff);
        let watched = Watched {
            began,
            until: ended.unwrap_or(now),
            // What was read before a thermometer was moved was read elsewhere.
            comparable: happened.last(ColdEventKind::ProbeMoved).unwrap_or(began),
        };
        let kind = answered::<Kind>(job);
        let readings = Compartment::of_kind(kind)
            .iter()
            .map(|one| (*one, watched.readings(job, one.place())));
        let readings: Vec<_> = readings.filter(|(_, found)| !found.is_empty()).collect();
        let room = watched.readings(job, job::Place::Room);
        let doubt = ScaleDoubt::of(&readings, &room, &watched);
        let support = is_shown.then(|| support::support(job, &watched, course::middle(&room)));
        let courses: Vec<Course> = readings
            .into_iter()
            .map(|(one, points)| {
                let prior = one.prior(kind);
                Course::of(
                    (one, prior),
                    points,
                    &watched,
                    doubt.is_none(),
                    support.as_ref(),
                )
            })
            .collect();
        Some(Self {
            began,
            ended,
            room: course::middle(&room),
            signs: happened.signs(&courses, ended.unwrap_or(now)),
            courses,
            doubt,
            happened,
        })
    }

    /// The course of a compartment.
    #[must_use]
    pub fn course(&self, of: Compartment) -> Option<&Course> {
        self.courses.iter().find(|one| one.compartment == of)
    }

    /// How long it has been on, as of a moment.
    #[must_use]
    pub fn lasted(&self, now: Moment) -> Seconds {
        self.began.until(self.ended.unwrap_or(now))
    }
}

/// The room's temperature by all that was read of it, whenever.
pub(crate) fn room(job: &Job) -> Option<Celsius> {
    let (began, until) = (
        Moment::new(0, 0).ok()?,
        Moment::new(Moment::LATEST, 0).ok()?,
    );
    let comparable = began;
    let watched = Watched {
        began,
        until,
        comparable,
    };
    let points = watched.readings(job, job::Place::Room);
    // Of another scale it says nothing.
    ScaleDoubt::of(&[], &points, &watched).map_or_else(|| course::middle(&points), |_| None)
}

/// When the machine last became another one.
pub(crate) fn changed(job: &Job) -> Option<Moment> {
    let standing = job.standing();
    let changes = standing
        .iter()
        .filter(|entry| Change::told_by(entry).is_some());
    changes
        .map(|entry| entry.at)
        .max_by_key(|at| at.unix_milliseconds())
}

/// When it was last switched on, if nothing was changed on the machine since.
fn began(job: &Job, now: Moment) -> Option<Moment> {
    let standing = job.standing();
    let changed = changed(job).map(Moment::unix_milliseconds);
    let on = standing.iter().filter_map(|entry| match &entry.content {
        Content::Event(event) if event.kind == ColdEventKind::SwitchedOn => Some(event.at),
        _ => None,
    });
    on.filter(|at| at.unix_milliseconds() <= now.unix_milliseconds())
        .max()
        .filter(|at| changed.is_none_or(|changed| changed <= at.unix_milliseconds()))
}

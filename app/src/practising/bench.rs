//! The simulated machine of the job on the screen: made once, for that takes a while.

use std::cell::RefCell;

use job::{Answer, Id, Job};
use measure::MeterKind;
use practice::{Made, NotMade, Sheet};
use wording::page::practice as words;

use super::Probe;

/// A machine with the job and the meter that it was made for.
struct Kept {
    job: Id,
    meter: MeterKind,
    made: Made,
    sheet: Sheet,
}

thread_local! {
    static KEPT: RefCell<Option<Kept>> = const { RefCell::new(None) };
}

/// Puts a machine that was just made on the bench.
pub(super) fn put(job: Id, meter: MeterKind, made: Made, sheet: Sheet) {
    KEPT.set(Some(Kept {
        job,
        meter,
        made,
        sheet,
    }));
}

/// Works on a job's machine.
pub(super) fn with<T>(
    job: &Job,
    meter: MeterKind,
    work: impl FnOnce(Made, &mut Sheet) -> T,
) -> Result<T, NotMade> {
    let is_there = KEPT.with_borrow(|kept| {
        let is_it = |kept: &Kept| kept.job == *job.id() && kept.meter == meter;
        kept.as_ref().is_some_and(is_it)
    });
    if !is_there {
        let (made, sheet) = Made::again(job, meter)?;
        put(job.id().clone(), meter, made, sheet);
    }
    KEPT.with_borrow_mut(|kept| {
        let kept = kept.as_mut().ok_or(NotMade::Unknown)?;
        Ok(work(kept.made, &mut kept.sheet))
    })
}

/// What one question shows; nothing where it shows nothing.
pub(super) fn ask(job: &Job, meter: MeterKind, probe: Probe) -> Result<Option<Answer>, NotMade> {
    with(job, meter, |_, sheet| {
        sheet.asked(probe.task, probe.names.1, probe.unit.is_some())
    })
}

/// Why nothing can be found out.
pub(super) const fn stopped(why: NotMade) -> &'static str {
    match why {
        NotMade::Untold => words::UNTOLD,
        NotMade::Unknown => words::UNKNOWN,
        NotMade::Another => words::ANOTHER,
    }
}

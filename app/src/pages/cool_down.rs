//! The cool-down: switched on, temperatures and events as they come, and where it will end.

mod entering;
mod entries;
mod happened;
mod picture;

use diagnosis::{CoolDown, Course, Gate};
use job::{ColdEvent, ColdEventKind, Content, Moment, Place as At};
use leptos::prelude::*;
use quantity::Seconds;
use wording::{cold_page as words, cool_down, gates, page};

use self::entering::reading;
use self::entries::{entries, log_begins};
use self::happened::happened;
use self::picture::picture;
use crate::device;
use crate::frame::Heading;
use crate::open_job::OpenJob;
use crate::parts::clock_digits::clock_digits;
use crate::parts::live::live;
use crate::parts::plain::{button, link, paragraph, section_heading};
use crate::parts::when_form::when_form;
use crate::route::{Place, Route};

/// What the page holds beside the job.
#[derive(Clone, Copy)]
struct Bench {
    open: OpenJob,
    /// Where the next temperature is read.
    place: RwSignal<At>,
    /// Now, to the second.
    now: RwSignal<Moment>,
    cool_down: Memo<Option<CoolDown>>,
    /// When it was switched on; changes less often than what was read since.
    began: Memo<Option<Moment>>,
}

impl Bench {
    fn new(open: OpenJob) -> Self {
        let now = RwSignal::new(device::now());
        device::while_here_each_second(move || now.set(device::now()));
        let cool_down = Memo::new(move |_| {
            let minute = open.session().now();
            open.with_job(|job| CoolDown::of(job, minute))
        });
        let began = Memo::new(move |_| cool_down.with(|cool_down| Some(cool_down.as_ref()?.began)));
        let place = open.with_job(|job| {
            let kind = diagnosis::answered(job);
            let first = diagnosis::Compartment::of_kind(kind).first();
            first.map_or(At::Freezer, |one| one.place())
        });
        Self {
            open,
            place: RwSignal::new(place),
            now,
            cool_down,
            began,
        }
    }

    /// Why it may not be powered, where it may not.
    fn closed(self) -> Option<Vec<String>> {
        let known = self.open.assessment();
        known.with(|known| {
            matches!(known.gates.trials, Gate::Closed(_)).then(|| gates(&known.gates))
        })
    }

    fn happened(self, kind: ColdEventKind, at: Moment) -> bool {
        self.open.proved(Content::Event(ColdEvent { at, kind }))
    }

    /// The course of where the next temperature is read, if it is a compartment.
    fn course(self) -> Option<Course> {
        let place = self.place.get();
        self.cool_down.with(|cool_down| {
            let mut courses = cool_down.as_ref()?.courses.iter();
            courses
                .find(|one| one.compartment.place() == place)
                .cloned()
        })
    }
}

/// The cool-down.
#[component]
pub fn CoolDownScreen() -> impl IntoView {
    let bench = Bench::new(OpenJob::here());
    let open = bench.open;
    let is_on = Memo::new(move |_| bench.began.get().is_some());
    view! {
        <div class="screen cool-down">
            <Heading text=words::TITLE/>
            {live(move || match is_on.get() {
                false => not_yet(bench),
                true => going(bench),
            })}
            {link("door", Route::Job(open.id(), Place::Log).link(), words::FROM_FILE)}
            {link("button quiet wide", Route::Job(open.id(), Place::Do).link(), page::BACK_TO_JOB)}
        </div>
    }
}

/// Before it is switched on: whether it may be, and the ways to say that it is. While the gate is
/// closed there is none, not even for an earlier time: nothing was to be plugged in then either.
fn not_yet(bench: Bench) -> AnyView {
    let way = move || match bench.closed() {
        Some(reasons) => closed(wording::start_trials::CLOSED, reasons),
        None => view! {
            {paragraph("remark", words::MIND)}
            {button("button wide", words::SWITCHED_ON, move |_| {
                bench.happened(ColdEventKind::SwitchedOn, device::now());
            })}
            {with_the_log(bench)}
            {earlier(bench)}
        }
        .into_any(),
    };
    view! {
        {paragraph("", words::WHY)}
        {live(way)}
    }
    .into_any()
}

/// That it may not be powered, and why.
fn closed(heading: &'static str, reasons: Vec<String>) -> AnyView {
    let reasons = reasons.into_iter().map(|reason| paragraph("", reason));
    view! {
        <section class="notice">
            {section_heading(heading)}
            {reasons.collect::<Vec<_>>()}
        </section>
    }
    .into_any()
}

/// A course that was taken in counts from when it was switched on, which may be when it begins.
fn with_the_log(bench: Bench) -> AnyView {
    let locale = bench.open.session().locale();
    let Some(begins) = bench.open.with_job(log_begins) else {
        return ().into_any();
    };
    let said = words::on_with_log(&locale.moment(begins));
    view! {
        <section>
            {paragraph("", words::LOG_WAITS)}
            {button("button quiet wide", said, move |_| {
                bench.happened(ColdEventKind::SwitchedOn, begins);
            })}
            {entries(bench, &locale)}
        </section>
    }
    .into_any()
}

/// It was switched on before this page was opened.
fn earlier(bench: Bench) -> AnyView {
    let enter = move |at| {
        bench.happened(ColdEventKind::SwitchedOn, at);
    };
    view! {
        <details class="fold">
            <summary><span>{words::SWITCHED_ON_BEFORE}</span></summary>
            {when_form("switched-on-at", words::SWITCHED_ON_AT, enter)}
        </details>
    }
    .into_any()
}

/// Since it is on: the verdict, the field, the events, the picture, what was entered.
fn going(bench: Bench) -> AnyView {
    let locale = bench.open.session().locale();
    let verdicts = move || {
        bench.cool_down.with(|cool_down| {
            let courses = cool_down.iter().flat_map(|found| &found.courses);
            let said =
                courses.map(|course| paragraph("kit-answer", words::verdict(course, &locale)));
            said.collect::<Vec<_>>()
        })
    };
    // Once it is switched off no reading teaches anything.
    let is_over = move || {
        bench
            .cool_down
            .with(|found| found.as_ref()?.ended)
            .is_some()
    };
    let next = move || {
        let course = bench.course();
        let now = bench.open.session().now();
        let on_for = bench
            .began
            .get()
            .map_or(Seconds::new(0.0), |began| began.until(now));
        paragraph(
            "soft",
            words::next_reading(course.as_ref(), on_for, now, &locale),
        )
    };
    let signs = move || {
        bench.cool_down.with(|cool_down| {
            let signs = cool_down.iter().flat_map(|found| &found.signs);
            let said = signs.map(|sign| paragraph("remark", cool_down::sign(sign, &locale)));
            said.collect::<Vec<_>>()
        })
    };
    let doubt = move || {
        bench.cool_down.with(|cool_down| {
            let doubt = cool_down.as_ref()?.doubt?;
            Some(view! {
                <section class="notice" role="alert">
                    {section_heading(words::DOUBT)}
                    {paragraph("", cool_down::scale_doubt(&doubt, &locale))}
                </section>
            })
        })
    };
    // Something that was found since closes the gate again.
    let may_not = move || {
        let reasons = bench.closed()?;
        let heading = if is_over() {
            wording::start_trials::CLOSED
        } else {
            words::UNPLUG
        };
        Some(closed(heading, reasons))
    };
    view! {
        {face(bench)}
        {live(may_not)}
        {live(doubt)}
        {live(verdicts)}
        {live(signs)}
        {live(move || (!is_over()).then(next))}
        {reading(bench)}
        {happened(bench)}
        {live(move || picture(bench, &locale))}
        {live(move || entries(bench, &locale))}
        {paragraph("soft", words::LIMITS)}
    }
    .into_any()
}

/// How long it has been on. Read out on demand, not each second.
fn face(bench: Bench) -> AnyView {
    let digits = move || {
        let (began, now) = (bench.began.get(), bench.now.get());
        let ended = bench.cool_down.with(|found| found.as_ref()?.ended);
        began.map(|began| clock_digits(began.until(ended.unwrap_or(now))))
    };
    view! {
        <p class="rest-face rest-clock">
            <span class="soft">{words::ON_FOR}</span>
            <span class="rest-digits" role="timer" aria-live="off">{live(digits)}</span>
        </p>
    }
    .into_any()
}

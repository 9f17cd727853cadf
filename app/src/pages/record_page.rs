//! The record as a page that goes with the machine: shown, printed, shared.

use leptos::prelude::*;
use record::{Audience, Made, Record};
use wording::record as words;

use crate::device::{self, Shareable};
use crate::forms::file_name::{record_name, titled};
use crate::frame::Heading;
use crate::open_job::OpenJob;
use crate::parts::hand_over;
use crate::parts::live::{live, tap};
use crate::parts::plain::{button, chip, paragraph, section_heading};

/// The record, with the ways to pass it on above it. In print there is nothing but the record.
#[component]
pub fn RecordPageScreen() -> impl IntoView {
    let job = OpenJob::here();
    let audience = RwSignal::new(Audience::default());
    let written = RwSignal::new_local(None::<Written>);
    Effect::new(move |_| {
        let audience = audience.get();
        // It rests on everything that is known, so it waits until that was weighed.
        written.set(Written::of(job, audience));
    });
    let body = move || {
        let body = written.with(|ready| ready.as_ref().map(|ready| ready.body.clone()));
        body.map(|body| view! { <div class="record-page" inner_html=body></div> })
    };
    view! {
        <div class="screen">
            <div class="beside-record">
                <Heading text=words::PAGE/>
                {paragraph("", words::PAGE_HOW)}
                <section>
                    {section_heading(words::WHOSE)}
                    <div class="chips">
                        {choice(words::FOR_BUYER, Audience::Buyer, audience)}
                        {choice(words::FOR_OWNER, Audience::Owner, audience)}
                    </div>
                </section>
                {hand_on(job, written)}
            </div>
            {live(body)}
        </div>
    }
}

fn choice(words: &'static str, which: Audience, chosen: RwSignal<Audience>) -> AnyView {
    chip(
        words,
        move || chosen.get() == which,
        move || {
            chosen.set(which);
        },
    )
}

/// The ways to pass it on. A share sheet opens only inside the tap, so the file is made before.
fn hand_on(job: OpenJob, written: RwSignal<Option<Written>, LocalStorage>) -> AnyView {
    let session = job.session();
    let can_share = Memo::new(move |_| {
        written.with(|ready| {
            ready
                .as_ref()
                .is_some_and(|ready| ready.shareable.is_some())
        })
    });
    let share = move |_| {
        let ready = written.with_untracked(|ready| ready.as_ref()?.shareable.clone());
        if let Some(shareable) = ready {
            hand_over::share(session, shareable, || ());
        }
    };
    let save = move |_| {
        written.with_untracked(|ready| {
            if let Some(ready) = ready {
                hand_over::save(session, &ready.name, &ready.file, || ());
            }
        });
    };
    view! {
        <div class="actions">
            <button class="button" on:click=tap(move |_| device::print())>{words::PRINT}</button>
            {live(move || can_share.get().then(|| button("button quiet", words::SHARE_PAGE, share)))}
            {button("button quiet", words::SAVE_PAGE, save)}
        </div>
    }
    .into_any()
}

/// A record written out, with everything that a tap will need.
struct Written {
    body: String,
    name: String,
    file: String,
    shareable: Option<Shareable>,
}

impl Written {
    /// `None` until everything is weighed.
    fn of(job: OpenJob, audience: Audience) -> Option<Self> {
        let known = job.weighing().now()?;
        let locale = job.session().locale();
        let made = Made {
            now: device::now(),
            version: env!("CARGO_PKG_VERSION"),
        };
        let record = job.with_job(|job| Record::of(job, &known, &locale, audience, made));
        let name = record_name(&titled(job.origin(), &known));
        let file = record.html();
        let shareable = device::shareable(&name, &file);
        Some(Self {
            body: record.body(false),
            name,
            file,
            shareable,
        })
    }
}

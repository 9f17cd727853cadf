//! The ways to send a job. Everything is worked out before the tap: a share sheet opens only
//! inside it.

use leptos::prelude::*;
use leptos::task::spawn_local;
use wording::{page, report};

use crate::device::{self, Shareable};
use crate::forms::file_name::{file_name, titled};
use crate::open_job::OpenJob;
use crate::parts::hand_over;
use crate::parts::live::{live, tap};
use crate::parts::plain::{button, paragraph, section_heading};

/// Share sheet, file, clipboard.
#[component]
pub fn Send() -> impl IntoView {
    let job = OpenJob::here();
    let session = job.session();
    let locale = session.locale();
    let prepared = RwSignal::new_local(None::<Prepared>);
    Effect::new(move |_| {
        let text = job.file_text();
        let weighed = job.weighing().now();
        let (name, report) = job.assessment().with(|checks| {
            let known = weighed.as_deref().unwrap_or(checks);
            let report = job.with_job(|job| report(known, job, &locale));
            (file_name(&titled(job.origin(), known)), report.text())
        });
        let shareable = device::shareable(&name, &text);
        prepared.set(Some(Prepared {
            name,
            text,
            report,
            shareable,
        }));
    });
    let sent = RwSignal::new(session.store().exported(&job.id()));
    let note_sent = move || {
        let now = device::now();
        session.store().note_export(&job.id(), now);
        sent.try_set(Some(now));
    };
    let can_share = Memo::new(move |_| {
        prepared.with(|ready| {
            ready
                .as_ref()
                .is_some_and(|ready| ready.shareable.is_some())
        })
    });
    let share = move |_| {
        let Some(shareable) = prepared.get_untracked().and_then(|ready| ready.shareable) else {
            return;
        };
        hand_over::share(session, shareable, note_sent);
    };
    let save = move |_| {
        let Some(ready) = prepared.get_untracked() else {
            return;
        };
        hand_over::save(session, &ready.name, &ready.text, note_sent);
    };
    let copy = move |what: fn(Prepared) -> String| {
        let Some(ready) = prepared.get_untracked() else {
            return;
        };
        let copying = device::copy(&what(ready));
        spawn_local(async move {
            session.say(if copying.await {
                page::COPIED
            } else {
                page::NOT_COPIED
            });
        });
    };
    let last = move || match sent.get() {
        Some(when) => page::last_sent(&locale.moment(when)),
        None => page::NEVER_SENT.to_owned(),
    };
    view! {
        <section class="send">
            {section_heading(page::SEND)}
            {paragraph("", page::SEND_HOW)}
            <p class="soft" id="last-sent">{live(last)}</p>
            <div class="actions">
                {live(move || can_share.get().then(|| button("button", page::SHARE, share)))}
                <button class="button" class:quiet=can_share on:click=tap(save)>{page::SAVE_FILE}</button>
                {button("button quiet", page::COPY_REPORT, move |_| copy(|ready| ready.report))}
                {button("plain", page::COPY_FILE, move |_| copy(|ready| ready.text))}
            </div>
        </section>
    }
}

/// What a tap will need.
#[derive(Clone)]
struct Prepared {
    name: String,
    text: String,
    report: String,
    shareable: Option<Shareable>,
}

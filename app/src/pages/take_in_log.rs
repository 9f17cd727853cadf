//! Taking in a logger's file: what was found, what can't be told, and only then whether to add it.

mod asked;
mod shown;

use leptos::prelude::*;
use leptos::task::spawn_local;
use logfile::{LogError, check_size};
use wording::log_page as words;

use self::asked::asked;
use self::shown::{found, read};
use crate::cold::Cold;
use crate::device;
use crate::forms::log_import::{LogImport, Stage};
use crate::frame::Heading;
use crate::open_job::OpenJob;
use crate::parts::live::live;
use crate::parts::plain::{button, link, paragraph, section_heading};
use crate::route::{Place, Route};

/// What came of a file.
#[allow(clippy::large_enum_variant)] // One at a time, on the screen.
#[derive(Clone, PartialEq)]
enum Outcome {
    Nothing,
    NotRead,
    Refused(LogError),
    Looked(LogImport),
}

/// What the page holds beside the job.
#[derive(Clone, Copy)]
struct Bench {
    open: OpenJob,
    outcome: RwSignal<Outcome>,
}

impl Bench {
    /// Changes what was said to the file, where there is one.
    fn say(self, change: impl FnOnce(&mut LogImport)) {
        self.outcome.update(|outcome| {
            if let Outcome::Looked(import) = outcome {
                change(import);
            }
        });
        device::focus(OUTCOME);
    }
}

/// The identifier of what came of a file.
const OUTCOME: &str = "log-outcome";

/// Takes in a logger's file.
#[component]
pub fn TakeInLogScreen() -> impl IntoView {
    let open = OpenJob::here();
    let bench = Bench {
        open,
        outcome: RwSignal::new(Outcome::Nothing),
    };
    let choose = move |event: leptos::ev::Event| {
        spawn_local(async move {
            let most = logfile::MOST_BYTES as f64;
            let Some(file) = device::open_named_file(event, most).await else {
                return;
            };
            let found = match (check_size(file.size as u64), file.bytes) {
                (Err(why), _) => Outcome::Refused(why),
                (Ok(()), None) => Outcome::NotRead,
                (Ok(()), Some(bytes)) => match LogImport::of_file(&file.name, &bytes) {
                    Err(why) => Outcome::Refused(why),
                    Ok(import) => Outcome::Looked(import),
                },
            };
            // The screen may have been left while the file was read.
            if bench.outcome.try_set(found).is_none() {
                device::focus(OUTCOME);
            }
        });
    };
    let cool_down = Route::Job(open.id(), Place::Check(Cold::COOL_DOWN.to_owned()));
    view! {
        <div class="screen cool-down">
            <Heading text=words::TITLE/>
            {paragraph("lead", words::WHY)}
            <label class="button wide file">
                {words::CHOOSE}
                <input type="file" accept=".csv,.tsv,.txt,.log,text/csv,text/plain" on:change=choose/>
            </label>
            <div id=OUTCOME tabindex="-1" class="outcome">
                {live(move || outcome(bench))}
            </div>
            {link("button quiet wide", cool_down.link(), wording::cold_page::TITLE)}
        </div>
    }
}

fn outcome(bench: Bench) -> AnyView {
    match bench.outcome.get() {
        Outcome::Nothing => ().into_any(),
        Outcome::NotRead => refused(words::NOT_READ.to_owned()),
        Outcome::Refused(why) => refused(words::error(&why)),
        Outcome::Looked(import) => {
            let stage = match import.stage() {
                Stage::Asks(question) => asked(bench, &import, question),
                Stage::Failed(why) => refused(words::error(why)),
                Stage::Read(logged) => read(bench, &import, logged),
            };
            let back = import.has_answers().then(|| {
                button("plain", words::BACK, move |_| {
                    bench.say(LogImport::take_back)
                })
            });
            view! {
                {found(&import, &bench.open.session().locale())}
                {stage}
                {back}
            }
            .into_any()
        }
    }
}

fn refused(why: String) -> AnyView {
    view! {
        <section class="notice" role="alert">
            {section_heading(words::REFUSED)}
            {paragraph("", why)}
        </section>
    }
    .into_any()
}

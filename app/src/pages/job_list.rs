//! The jobs kept on this device: found by name, put away, brought back.

use job::{Id, Moment};
use leptos::prelude::*;
use leptos::task::spawn_local;
use wording::page::keeping as words;
use wording::{Words, page, title};

use super::jobs::Doors;
use crate::device;
use crate::later::{self, Later, later_quietly};
use crate::pages::job_at_a_glance::Glance;
use crate::parts::live::live;
use crate::parts::plain::{button, link, paragraph, section_heading};
use crate::route::{Place, Route};
use crate::session::Session;
use crate::store::Listed;

/// So many rows are drawn at first: four screens of a phone.
const ROWS_AT_FIRST: usize = 20;

/// From so many jobs on there is a field to find one.
const WORTH_SEARCHING: usize = 7;

/// The jobs, the one that was deleted last, and the doors to more.
#[component]
pub fn JobList() -> impl IntoView {
    let session = Session::here();
    let listed = Memo::new(move |_| {
        session.track_jobs();
        session.store().listed()
    });
    let sought = RwSignal::new(String::new());
    let found = move |is_away| {
        Memo::new(move |_| {
            let sought = device::lower_case(sought.read().trim());
            let is_meant = |job: &&Listed| {
                job.is_away == is_away && (sought.is_empty() || sought_in(job).contains(&sought))
            };
            listed.with(|listed| listed.iter().filter(is_meant).cloned().collect::<Vec<_>>())
        })
    };
    let (here, away) = (found(false), found(true));
    let is_long = Memo::new(move |_| listed.read().len() >= WORTH_SEARCHING);
    view! {
        <NearlyFull/>
        {live(move || is_long.get().then(|| search(sought)))}
        <Rows jobs=here/>
        {live(move || (here.read().is_empty() && away.read().is_empty() && !listed.read().is_empty())
            .then(|| paragraph("soft", words::NOT_FOUND)))}
        {later_quietly(Later::Deleted)}
        {live(move || (!away.read().is_empty()).then(|| view! {
            <details class="others">
                <summary class="door">{live(move || words::away(away.read().len()))}</summary>
                <Rows jobs=away/>
            </details>
        }))}
        <BackupLine/>
        <Doors/>
    }
}

fn search(sought: RwSignal<String>) -> impl IntoView {
    view! {
        <div class="text-entry search">
            <label for="search">{words::SEARCH}</label>
            <input
                id="search"
                type="search"
                autocomplete="off"
                prop:value=sought
                on:input=move |event| sought.set(event_target_value(&event))
            />
        </div>
    }
}

/// One job in the list, the one touched last on top; what can't be read stands at the end.
#[derive(Debug, Clone, PartialEq)]
struct Row {
    id: Id,
    title: String,
    lines: Vec<String>,
    touched: Option<Moment>,
    /// Whether its title is known already.
    is_read: bool,
}

/// What a search looks at, in small letters.
fn sought_in(job: &Listed) -> String {
    let Some(summary) = &job.summary else {
        return job.id.to_string();
    };
    let machine = summary.machine();
    let kind = machine.kind.map(Words::words).unwrap_or_default();
    device::lower_case(&[title(&machine).as_str(), kind].join(" "))
}

impl Row {
    /// What makes it another row.
    fn key(&self) -> String {
        let touched = self.touched.map_or(0, Moment::unix_milliseconds);
        [self.id.as_str(), &touched.to_string(), &self.title].join(" ")
    }

    fn of(listed: &Listed, session: Session) -> Self {
        let id = listed.id.clone();
        let Some(summary) = &listed.summary else {
            return Self {
                title: id.to_string(),
                lines: Vec::new(),
                touched: None,
                is_read: false,
                id,
            };
        };
        let machine = summary.machine();
        let invented = page::not_of_a_machine(summary.origin);
        // The kind is in the title already where the machine has no name.
        let kind = machine.kind.filter(|_| machine.name.is_some());
        let about: Vec<&str> = [invented, kind.map(Words::words)]
            .into_iter()
            .flatten()
            .collect();
        let touched = session.locale().moment(summary.touched);
        Self {
            title: title(&machine),
            lines: [about.join(", "), page::touched(&touched)].into(),
            touched: Some(summary.touched),
            is_read: true,
            id,
        }
    }
}

#[component]
fn Rows(jobs: Memo<Vec<Listed>>) -> impl IntoView {
    let session = Session::here();
    let all = RwSignal::new(false);
    let glances = Glances::new(session);
    let shown = move || {
        let most = if all.get() { usize::MAX } else { ROWS_AT_FIRST };
        jobs.with(|jobs| {
            let shown = jobs.iter().take(most);
            shown.map(|job| Row::of(job, session)).collect::<Vec<_>>()
        })
    };
    view! {
        <ul class="rows">
            <For each=shown key=Row::key children=move |row| row_view(row, glances)/>
        </ul>
        {live(move || (!all.get() && jobs.read().len() > ROWS_AT_FIRST).then(|| button("button quiet wide", words::show_all(jobs.read().len()), move |_| all.set(true))))}
    }
}

/// A row's job, and where what is told of it goes.
type Asked = (Id, RwSignal<Option<Glance>>);

/// The rows' jobs, to be read one after another. Reading and weighing a job takes longer than drawing its row: the rows are
/// there first, and a finger is heeded between any two.
#[derive(Clone, Copy)]
struct Glances {
    session: Session,
    waiting: StoredValue<Vec<Asked>>,
    is_reading: StoredValue<bool>,
}

impl Glances {
    fn new(session: Session) -> Self {
        Self {
            session,
            waiting: StoredValue::new(Vec::new()),
            is_reading: StoredValue::new(false),
        }
    }

    fn ask(self, id: Id, glance: RwSignal<Option<Glance>>) {
        self.waiting
            .update_value(|waiting| waiting.push((id, glance)));
        if !self.is_reading.get_value() {
            self.is_reading.set_value(true);
            device::soon(move || self.read_next());
        }
    }

    /// Ends with the list, or when all was read.
    fn read_next(self) {
        let next = self
            .waiting
            .try_update_value(|waiting| (!waiting.is_empty()).then(|| waiting.remove(0)));
        let Some(Some((id, glance))) = next else {
            let _ = self
                .is_reading
                .try_update_value(|is_reading| *is_reading = false);
            return;
        };
        spawn_local(async move {
            // Where the second part doesn't come, the row stays without.
            if let Ok(found) = later::at_a_glance(self.session, id).await {
                let _ = glance.try_set(Some(found));
            }
            device::next(move || self.read_next());
        });
    }
}

fn row_view(row: Row, glances: Glances) -> impl IntoView {
    let lines = row.lines.into_iter().filter(|line| !line.is_empty());
    let lines = lines.map(|line| view! { <span class="line">{line}</span> });
    let glance = RwSignal::new(None::<Glance>);
    glances.ask(row.id.clone(), glance);
    let name = row.title;
    let title = move || {
        let of_glance = |glance: Glance| glance.title.filter(|_| !row.is_read);
        glance
            .get()
            .and_then(of_glance)
            .unwrap_or_else(|| name.clone())
    };
    let line = move || {
        glance
            .get()
            .map_or("\u{a0}".to_owned(), |glance| glance.line)
    };
    view! {
        <li>
            <a class="row" href=Route::Job(row.id, Place::Do).link()>
                <span class="title">{live(title)}</span>
                <span class="line">{live(line)}</span>
                {lines.collect::<Vec<_>>()}
            </a>
        </li>
    }
}

/// Says that room runs out before it has.
#[component]
fn NearlyFull() -> impl IntoView {
    let session = Session::here();
    let is_nearly_full = RwSignal::new(false);
    Effect::new(move |_| {
        session.track_jobs();
        device::soon(move || {
            let _ = is_nearly_full.try_set(session.store().is_nearly_full());
        });
    });
    view! {
        {live(move || is_nearly_full.get().then(|| view! {
            <section class="notice" role="status">
                {section_heading(words::NEARLY_FULL)}
                {paragraph("", words::NEARLY_FULL_HOW)}
                {link("button quiet", Route::Settings.link(), words::TO_BACKUP)}
            </section>
        }))}
    }
}

#[component]
fn BackupLine() -> impl IntoView {
    let session = Session::here();
    let last = move || {
        session.track_jobs();
        session.store().backed_up().map_or_else(
            || words::NEVER_BACKED_UP.to_owned(),
            |when| words::backed_up(&session.locale().moment(when)),
        )
    };
    view! {
        <p class="deleted">
            <span class="soft">{live(last)}</span>
            {link("plain", Route::Settings.link(), words::TO_BACKUP)}
        </p>
    }
}

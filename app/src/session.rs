//! What the page holds while it is open: the store, the reader's habits, what is said aloud, and
//! which screen is shown.

use std::rc::Rc;

use job::{Answer, Content, Entry, Id, Job, Moment, Origin, Question};
use jobfile::Document;
use leptos::prelude::*;
use wording::{Degrees, Locale};

use crate::device::{self, PageStatus};
use crate::route::Route;
use crate::store::{JobStore, Revision, Trouble, on_change_elsewhere};

/// What all pages share.
#[derive(Clone, Copy)]
pub struct Session {
    store: StoredValue<Rc<JobStore>, LocalStorage>,
    locale: StoredValue<Locale>,
    route: RwSignal<Route>,
    said: RwSignal<Said>,
    /// To be said on the next screen.
    said_there: StoredValue<Option<String>>,
    trouble: RwSignal<Option<Trouble>>,
    page_status: RwSignal<PageStatus>,
    jobs: RwSignal<u32>,
    open_job: RwSignal<Option<Id>>,
    now: RwSignal<Moment>,
}

/// What the page's one status region says.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Said {
    /// The words.
    pub text: String,
    /// Whether they are shown too, and not only read aloud because they stand elsewhere already.
    pub is_shown: bool,
}

impl Session {
    /// Takes up work with a store.
    #[must_use]
    pub fn new(store: JobStore) -> Self {
        let session = Self {
            trouble: RwSignal::new(store.trouble()),
            store: StoredValue::new_local(Rc::new(store)),
            locale: StoredValue::new(Locale::default()),
            route: RwSignal::new(Route::at(&device::hash())),
            said: RwSignal::new(Said::default()),
            said_there: StoredValue::new(None),
            page_status: RwSignal::new(device::page_status()),
            jobs: RwSignal::new(0),
            open_job: RwSignal::new(None),
            now: RwSignal::new(device::now()),
        };
        session.read_habits();
        device::every_minute(move || session.now.set(device::now()));
        device::on_status(move || session.page_status.set(device::page_status()));
        device::on_hash_change(move || session.arrive());
        on_change_elsewhere(move |_| {
            session.store().look_again();
            session.jobs_changed();
        });
        session
    }

    /// The session of this page.
    ///
    /// # Panics
    /// Outside of the page's frame, which provides it before anything else is drawn.
    #[must_use]
    pub fn here() -> Self {
        expect_context()
    }

    /// The jobs kept on this device.
    #[must_use]
    pub fn store(self) -> Rc<JobStore> {
        self.store.get_value()
    }

    /// What the person chose once for all jobs, by the setting's name.
    #[must_use]
    pub fn setting(self, setting: &str) -> Option<String> {
        self.store().setting(setting)
    }

    /// Keeps a setting.
    pub fn keep_setting(self, setting: &str, text: &str) {
        self.store().keep_setting(setting, text);
    }

    /// How numbers and dates are written.
    #[must_use]
    pub fn locale(self) -> Locale {
        self.locale.get_value()
    }

    /// The setting for the scale of temperatures.
    pub const DEGREES: &str = "degrees";

    /// The name of a scale in that setting.
    #[must_use]
    pub const fn degrees_name(degrees: Degrees) -> &'static str {
        match degrees {
            Degrees::Celsius => "celsius",
            Degrees::Fahrenheit => "fahrenheit",
        }
    }

    /// Takes the reader's habits from the browser, and from what was set here.
    pub fn read_habits(self) {
        let mut locale = device::locale();
        let set = self.setting(Self::DEGREES);
        let scales = [Degrees::Celsius, Degrees::Fahrenheit].into_iter();
        let mut chosen = scales.filter(|scale| set.as_deref() == Some(Self::degrees_name(*scale)));
        locale.degrees = chosen.next().unwrap_or(locale.degrees);
        self.locale.set_value(locale);
    }

    /// The screen that is shown.
    #[must_use]
    pub fn route(self) -> RwSignal<Route> {
        self.route
    }

    /// Goes to another screen.
    pub fn go(self, route: &Route) {
        device::go_to(&route.address());
    }

    /// Goes to another screen and says something there.
    pub fn go_saying(self, route: &Route, text: impl Into<String>) {
        self.said_there.set_value(Some(text.into()));
        self.go(route);
    }

    /// The moment up to which waiting times are counted: now, to the minute. Tracked.
    #[must_use]
    pub fn now(self) -> Moment {
        self.now.get()
    }

    /// Takes the present moment as the one up to which waiting times are counted.
    pub fn look_at_the_clock(self) {
        self.now.set(device::now());
    }

    /// Says something in the page's one status region, for eyes and screen readers.
    pub fn say(self, text: impl Into<String>) {
        self.speak(text.into(), true);
    }

    /// Has something read aloud that already stands on the screen, in the same words.
    pub fn announce(self, text: impl Into<String>) {
        self.speak(text.into(), false);
    }

    /// What is being said. Tracked.
    #[must_use]
    pub fn said(self) -> Said {
        self.said.get()
    }

    /// Whether the page is ready to work offline, and whether a newer version waits. Tracked.
    #[must_use]
    pub fn page_status(self) -> PageStatus {
        self.page_status.get()
    }

    /// Why work is lost when the page is closed, if it is. Tracked.
    #[must_use]
    pub fn trouble(self) -> Option<Trouble> {
        self.trouble.get()
    }

    /// Notes how keeping something went.
    pub fn set_trouble(self, trouble: Option<Trouble>) {
        if self.trouble.get_untracked() != trouble {
            self.trouble.set(trouble);
        }
    }

    /// Becomes something else whenever another tab, or this one, changes the list of jobs. Tracked.
    pub fn track_jobs(self) {
        self.jobs.track();
    }

    /// The list of jobs is another one now.
    pub fn jobs_changed(self) {
        self.jobs.update(|count| *count = count.wrapping_add(1));
    }

    /// The job that is open to be added to, if any: it has three places.
    #[must_use]
    pub fn open_job(self) -> RwSignal<Option<Id>> {
        self.open_job
    }

    /// Makes a job of first answers and keeps it.
    #[must_use]
    pub fn start_job(self, answers: Vec<(Question, Answer)>) -> Id {
        let answers = answers.into_iter();
        let answers = answers.map(|(question, answer)| Content::Answer { question, answer });
        self.start(Origin::Person, answers.collect())
    }

    /// Makes a job of what it begins with and keeps it.
    #[must_use]
    pub fn start(self, origin: Origin, contents: Vec<Content>) -> Id {
        let (id, now) = (device::new_id(), device::now());
        let mut job = Job::new(id.clone(), now, origin);
        for content in contents {
            // New identifiers, and nothing is struck: no entry is refused.
            let _ = job.add(Entry {
                id: device::new_id(),
                at: now,
                content,
            });
        }
        if let Ok(document) = Document::new(job) {
            let saved = self.store().save(&id, &document, Revision::default());
            self.set_trouble(saved.trouble);
            self.jobs_changed();
            device::ask_to_keep();
        }
        id
    }

    /// The address has changed: shows its screen from the top and begins to read it there.
    fn arrive(self) {
        let route = Route::at(&device::hash());
        if self.route.get_untracked() != route {
            self.said.set(Said::default());
            self.route.set(route);
            device::show_from_top(HEADING);
            if let Some(text) = self.said_there.try_update_value(Option::take).flatten() {
                self.say(text);
            }
        }
    }

    fn speak(self, mut text: String, is_shown: bool) {
        // The same words again would not be read aloud: a trailing space makes them new.
        if self.said.with_untracked(|said| said.text == text) {
            text.push('\u{a0}');
        }
        self.said.set(Said { text, is_shown });
    }
}

/// The identifier of each screen's heading, which takes the focus when the screen is shown.
pub const HEADING: &str = "heading";

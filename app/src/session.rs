//! What the page holds while it is open: the store, the reader's habits, what is said aloud, and
//! the job on the screen.
//!
//! Every change of a job passes through [`OpenJob`], which keeps it at once. Pages and parts read
//! from it and call it; none of them knows where a job is kept.

use std::rc::Rc;

use diagnosis::{Assessment, Model, assess};
use job::{Answer, Content, Drafts, Entry, Id, Job, Moment, Origin, Question, Text};
use jobfile::Document;
use leptos::prelude::*;
use wording::{Locale, page};

use crate::device::{self, PageStatus};
use crate::history::History;
use crate::route::Route;
use crate::store::{JobStore, Kept, Revision, Trouble, on_change_elsewhere};

/// What all pages share.
#[derive(Clone, Copy)]
pub struct Session {
    store: StoredValue<Rc<JobStore>, LocalStorage>,
    locale: StoredValue<Locale>,
    route: RwSignal<Route>,
    said: RwSignal<Said>,
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
            locale: StoredValue::new(device::locale()),
            route: RwSignal::new(Route::at(&device::hash())),
            said: RwSignal::new(Said::default()),
            page_status: RwSignal::new(device::page_status()),
            jobs: RwSignal::new(0),
            open_job: RwSignal::new(None),
            now: RwSignal::new(device::now()),
        };
        device::every_minute(move || session.now.set(device::now()));
        device::on_status(move || session.page_status.set(device::page_status()));
        device::on_hash_change(move || session.arrive());
        on_change_elsewhere(move |_| session.jobs_changed());
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

    /// The screen that is shown.
    #[must_use]
    pub fn route(self) -> RwSignal<Route> {
        self.route
    }

    /// Goes to another screen.
    pub fn go(self, route: &Route) {
        device::go_to(&route.address());
    }

    /// The moment up to which waiting times are counted: now, to the minute. Tracked.
    #[must_use]
    pub fn now(self) -> Moment {
        self.now.get()
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
        let (id, now) = (device::new_id(), device::now());
        let mut job = Job::new(id.clone(), now, Origin::Person);
        for (question, answer) in answers {
            // New identifiers, and nothing is struck: no entry is refused.
            let _ = job.add(Entry {
                id: device::new_id(),
                at: now,
                content: Content::Answer { question, answer },
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

/// The job on the screen. A handle: cheap to copy, valid as long as the job's page.
#[derive(Clone, Copy)]
pub struct OpenJob {
    session: Session,
    id: StoredValue<Id>,
    document: RwSignal<Document>,
    revision: StoredValue<Revision>,
    drafts: StoredValue<Drafts>,
    assessment: Memo<Assessment>,
}

impl OpenJob {
    /// Puts a kept job on the screen.
    #[must_use]
    pub fn new(session: Session, id: Id, document: Document, revision: Revision) -> Self {
        let drafts = session.store().drafts(&id);
        let document = RwSignal::new(document);
        let assessment = Memo::new(move |_| {
            let now = session.now();
            document.with(|document| assess(&Model::default(), document.job(), now))
        });
        Self {
            session,
            id: StoredValue::new(id),
            document,
            revision: StoredValue::new(revision),
            drafts: StoredValue::new(drafts),
            assessment,
        }
    }

    /// The job on this page.
    ///
    /// # Panics
    /// Outside of a job's pages, which provide it before anything else of theirs is drawn.
    #[must_use]
    pub fn here() -> Self {
        expect_context()
    }

    /// The session that it belongs to.
    #[must_use]
    pub fn session(self) -> Session {
        self.session
    }

    /// The identifier under which the job is kept.
    #[must_use]
    pub fn id(self) -> Id {
        self.id.get_value()
    }

    /// Reads from the job without copying it. Tracked.
    pub fn with_job<T>(self, read: impl FnOnce(&Job) -> T) -> T {
        self.document.with(|document| read(document.job()))
    }

    /// A copy of the job. Tracked.
    #[must_use]
    pub fn job(self) -> Job {
        self.with_job(Job::clone)
    }

    /// The job as text for a file. Tracked.
    #[must_use]
    pub fn file_text(self) -> String {
        self.document.with(jobfile::save)
    }

    /// What is known now, worked out anew after each change and each minute.
    #[must_use]
    pub fn assessment(self) -> Memo<Assessment> {
        self.assessment
    }

    /// Enters an answer and forgets the draft of its question. False where it was not taken; then
    /// the reason has been said, and the draft is kept.
    pub fn answer(self, check: &str, item: &str, answer: Answer) -> bool {
        let Ok(question) = Question::new(check, item) else {
            return false;
        };
        let taken = self.enter(Content::Answer {
            question: question.clone(),
            answer,
        });
        if taken {
            self.change_drafts(|drafts| drafts.forget(&question));
        }
        taken
    }

    /// Enters a note. False where it was not taken; then the reason has been said.
    pub fn note(self, text: Text) -> bool {
        self.enter(Content::Note(text))
    }

    /// Strikes an entry, which stays readable; struck again, a strike brings its entry back.
    pub fn strike(self, entry: &Id) -> bool {
        self.enter(Content::Strike(entry.clone()))
    }

    /// Takes the last thing back.
    pub fn undo(self) {
        if let Some(target) = self.history_untracked().undo
            && self.strike(&target)
        {
            self.session.say(page::UNDONE);
        }
    }

    /// Does again what was taken back last.
    pub fn redo(self) {
        if let Some(target) = self.history_untracked().redo
            && self.strike(&target)
        {
            self.session.say(page::REDONE);
        }
    }

    /// Whether there is something to take back. Tracked.
    #[must_use]
    pub fn can_undo(self) -> bool {
        self.with_job(History::of).undo.is_some()
    }

    /// Whether there is something to do again. Tracked.
    #[must_use]
    pub fn can_redo(self) -> bool {
        self.with_job(History::of).redo.is_some()
    }

    /// What was typed for a question and not entered yet. Not tracked: a field reads it once.
    #[must_use]
    pub fn draft(self, check: &str, item: &str) -> Option<String> {
        let question = Question::new(check, item).ok()?;
        self.drafts
            .with_value(|drafts| Some(drafts.typed(&question)?.as_str().to_owned()))
    }

    /// Keeps what is being typed, at each keystroke. An empty text is no draft. What is too long
    /// to be kept stays in its field only.
    pub fn keep_draft(self, check: &str, item: &str, typed: &str) {
        if let (Ok(question), Ok(typed)) = (Question::new(check, item), Text::new(typed)) {
            self.change_drafts(|drafts| drafts.keep(question, typed));
        }
    }

    /// Forgets what was typed for a question.
    pub fn clear_draft(self, check: &str, item: &str) {
        if let Ok(question) = Question::new(check, item) {
            self.change_drafts(|drafts| drafts.forget(&question));
        }
    }

    /// Takes in what another tab has entered.
    pub fn catch_up(self) {
        let known = self.revision.get_value();
        let Some(Kept::Document { revision, .. }) = self.session.store().load(&self.id()) else {
            return;
        };
        if revision != known {
            // Keeping finds the other tab's entries and hands back both.
            self.keep(self.document.get_untracked());
        }
    }

    fn history_untracked(self) -> History {
        self.document
            .with_untracked(|document| History::of(document.job()))
    }

    fn enter(self, content: Content) -> bool {
        let mut document = self.document.get_untracked();
        let entry = Entry {
            id: device::new_id(),
            at: device::now(),
            content,
        };
        if document.add(entry).is_err() {
            self.session.say(page::JOB_FULL);
            return false;
        }
        self.session.now.set(device::now());
        self.keep(document);
        true
    }

    fn keep(self, document: Document) {
        let saved = self
            .session
            .store()
            .save(&self.id(), &document, self.revision.get_value());
        self.revision.set_value(saved.revision);
        self.session.set_trouble(saved.trouble);
        self.document.set(saved.merged.unwrap_or(document));
    }

    fn change_drafts(self, change: impl FnOnce(&mut Drafts)) {
        self.drafts.update_value(change);
        self.drafts
            .with_value(|drafts| self.session.store().keep_drafts(&self.id(), drafts));
    }
}

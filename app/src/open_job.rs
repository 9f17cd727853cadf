//! The job on the screen: what it holds, what is known of it, and every way to change it.
//!
//! Every change passes through here and is kept at once. Pages and parts read from it and call
//! it; none of them knows where a job is kept.

use diagnosis::{Assessment, Figures, Machine, Model, assess_checks};
use job::{Answer, Content, Drafts, Entry, Id, Job, Origin, Question, StartTrial, Stop, Text};
use jobfile::Document;
use leptos::prelude::*;
use wording::page::{self, keeping};
use wording::title;

use crate::device;
use crate::forms::assumptions;
use crate::history::History;
use crate::session::Session;
use crate::store::{Kept, Revision};
use crate::weighing::Weighing;

/// The job on the screen. A handle: cheap to copy, valid as long as the job's page.
#[derive(Clone, Copy)]
pub struct OpenJob {
    session: Session,
    id: StoredValue<Id>,
    document: RwSignal<Document>,
    revision: StoredValue<Revision>,
    drafts: StoredValue<Drafts>,
    assessment: Memo<Assessment>,
    weighing: Weighing,
}

impl OpenJob {
    /// Puts a kept job on the screen.
    #[must_use]
    pub fn new(session: Session, id: Id, document: Document, revision: Revision) -> Self {
        let drafts = session.store().drafts(&id);
        let document = RwSignal::new(document);
        let assessment = Memo::new(move |_| {
            let now = session.now();
            document.with(|document| assess_checks(&Model::default(), document.job(), now))
        });
        let weighing = Weighing::new(session, document);
        Self {
            session,
            id: StoredValue::new(id),
            document,
            revision: StoredValue::new(revision),
            drafts: StoredValue::new(drafts),
            assessment,
            weighing,
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

    /// Where the job comes from. Not tracked.
    #[must_use]
    pub fn origin(self) -> Origin {
        self.document
            .with_untracked(|document| document.job().origin())
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

    /// The job as text for a file, with the figures that it was weighed with. Tracked.
    #[must_use]
    pub fn file_text(self) -> String {
        self.document.with(|document| {
            let kept = self.session.setting(assumptions::SETTING);
            let own = Figures::read(&kept.unwrap_or_default());
            if Figures::of_job(document.job()).is_some() {
                return jobfile::save(document);
            }
            let mut sent = document.clone();
            for content in own.entries() {
                // A job too full for them goes without.
                let _ = sent.add(Entry {
                    id: device::new_id(),
                    at: device::now(),
                    content,
                });
            }
            jobfile::save(&sent)
        })
    }

    /// Keeps a copy of the job as one of its own, named as a copy. Its identifier.
    #[must_use]
    pub fn copied(self) -> Id {
        let id = device::new_id();
        let name = self
            .assessment
            .with_untracked(|known| keeping::copy_of(&title(&known.machine)));
        let mut copy = self
            .document
            .with_untracked(|document| document.copied_as(id.clone()));
        let (check, item) = Machine::NAME;
        if let (Ok(question), Ok(text)) = (Question::new(check, item), Text::new(&name)) {
            // A job too full for its name is copied without.
            let _ = copy.add(Entry {
                id: device::new_id(),
                at: device::now(),
                content: Content::Answer {
                    question,
                    answer: Answer::Text(text),
                },
            });
        }
        let saved = self.session.store().save(&id, &copy, Revision::default());
        self.session.set_trouble(saved.trouble);
        id
    }

    /// What is known now, worked out anew after each change and each minute.
    #[must_use]
    pub fn assessment(self) -> Memo<Assessment> {
        self.assessment
    }

    /// The whole machine, weighed.
    #[must_use]
    pub fn weighing(self) -> Weighing {
        self.weighing
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

    /// Enters a try to start. False where it was not taken; then the reason has been said.
    pub fn tried(self, trial: StartTrial) -> bool {
        self.enter(Content::Trial(trial))
    }

    /// Enters that the compressor stopped. False where it was not taken; then the reason has been
    /// said.
    pub fn stopped(self, stop: Stop) -> bool {
        self.enter(Content::Stop(stop))
    }

    /// Enters a temperature, a course, an event or counted energy. False where it was not taken;
    /// then the reason has been said.
    pub fn proved(self, content: Content) -> bool {
        self.enter(content)
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
        self.session.look_at_the_clock();
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
        if saved.was_gone {
            self.session.say(keeping::WAS_GONE);
        }
        self.document.set(saved.merged.unwrap_or(document));
    }

    fn change_drafts(self, change: impl FnOnce(&mut Drafts)) {
        self.drafts.update_value(change);
        self.drafts
            .with_value(|drafts| self.session.store().keep_drafts(&self.id(), drafts));
    }
}

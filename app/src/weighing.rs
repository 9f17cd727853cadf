//! The whole machine, weighed anew after each answer.
//!
//! That takes a phone longer than a finger should wait, so that what a check says by itself is
//! shown first, and the weighing follows once that has been painted.

use std::sync::Arc;

use diagnosis::{Assessment, Figures, Model, assess};
use jobfile::Document;
use leptos::prelude::*;

use crate::device;
use crate::forms::assumptions;
use crate::session::Session;

/// What the whole machine comes to now, and what it came to before the last answer.
#[derive(Clone, Copy)]
pub struct Weighing {
    now: RwSignal<Option<Arc<Assessment>>>,
    before: RwSignal<Option<Arc<Assessment>>>,
}

impl Weighing {
    /// Weighs a job, and again whenever it changes.
    #[must_use]
    pub fn new(session: Session, document: RwSignal<Document>) -> Self {
        let weighing = Self {
            now: RwSignal::new(None),
            before: RwSignal::new(None),
        };
        let kept = session.setting(assumptions::SETTING).unwrap_or_default();
        let own = Figures::read(&kept);
        // Kept for the next time: its networks are compiled once.
        let model = StoredValue::new(Model::default());
        let asked = StoredValue::new(0_u32);
        Effect::new(move |_| {
            document.track();
            asked.update_value(|count| *count = count.wrapping_add(1));
            let (this, own) = (asked.get_value(), own.clone());
            let weigh = move || {
                // A later answer asks again, and the job may have been left.
                if asked.try_get_value() == Some(this) {
                    let known = document.with_untracked(|document| {
                        let job = document.job();
                        model.update_value(|model| {
                            *model = std::mem::take(model).for_job(job, &own)
                        });
                        model.with_value(|model| assess(model, job, device::now()))
                    });
                    weighing.take(known);
                }
            };
            // What leads on to another screen, as a logger's file does, has that drawn a frame later.
            device::soon(move || device::soon(weigh));
        });
        weighing
    }

    /// What is known now, the whole machine weighed. None until it has been weighed. Tracked.
    #[must_use]
    pub fn now(self) -> Option<Arc<Assessment>> {
        self.now.get()
    }

    /// What was known before the last change. Tracked.
    #[must_use]
    pub fn before(self) -> Option<Arc<Assessment>> {
        self.before.get()
    }

    fn take(self, known: Assessment) {
        self.before.set(self.now.get_untracked());
        self.now.set(Some(Arc::new(known)));
    }
}

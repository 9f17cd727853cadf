//! An examiner with a watch, a plug-in meter and thermometers: what a sheet answers in one word is
//! timed, read and watched as far as the app's pages ask for that.
//!
//! Answers: which tries, numbers and courses does a task bring, each at its moment? Must never
//! know: what is wrong with the machine, or what the app makes of an entry. When the next try may
//! come and when a course is clear is what the app shows to whoever works with it.

mod cooled;
mod numbers;
mod timed;

use diagnosis::{Clue, Task};
use job::{Content, Job, Moment, SetUp};
use quantity::Seconds;

use super::Sheet;
use crate::walk::{Begun, Examined, Watched, add};

/// Who examines a machine by the clock.
#[derive(Debug)]
pub struct Examiner<'a> {
    sheet: &'a mut Sheet,
}

impl<'a> Examiner<'a> {
    /// In front of a machine.
    pub const fn of(sheet: &'a mut Sheet) -> Self {
        Self { sheet }
    }
}

impl Examined for Examiner<'_> {
    fn opening(&mut self) -> Vec<Content> {
        self.sheet.opening()
    }

    fn answer(&mut self, task: Task) -> Vec<Content> {
        numbers::read(self.sheet, task, false).unwrap_or_else(|| self.sheet.answer(task))
    }

    fn answer_again(&mut self, task: Task) -> Vec<Content> {
        numbers::read(self.sheet, task, true).unwrap_or_else(|| self.sheet.answer_again(task))
    }

    fn watch(&mut self, begun: &Begun<'_>) -> Option<Watched> {
        let mut notes = Notes::of(begun);
        let set_up = match begun.task {
            Task::Clue(Clue::Restart) => SetUp::Original,
            Task::Clue(Clue::GoodDevice) => SetUp::Substitute,
            Task::Clue(Clue::StartKit) => SetUp::Kit,
            Task::Clue(Clue::Temperatures) => {
                cooled::watch(self.sheet, &mut notes)?;
                return Some(notes.watched());
            }
            _ => return None,
        };
        timed::tries(self.sheet, set_up, &mut notes)?;
        Some(notes.watched())
    }
}

/// What is written down while time goes by, beside the job that it goes into.
struct Notes {
    job: Job,
    entries: Vec<(Moment, Content)>,
    now: Moment,
}

impl Notes {
    fn of(begun: &Begun<'_>) -> Self {
        Self {
            job: begun.job.clone(),
            entries: Vec::new(),
            now: begun.at,
        }
    }

    fn write(&mut self, content: Content) {
        add(&mut self.job, content.clone(), self.now);
        self.entries.push((self.now, content));
    }

    /// Lets time go by. Nothing beyond the years that a clock shows.
    fn wait(&mut self, time: Seconds) -> Option<()> {
        self.now = self.now.after(time)?;
        Some(())
    }

    fn watched(self) -> Watched {
        Watched {
            entries: self.entries,
            ends: self.now,
        }
    }
}

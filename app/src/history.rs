//! What "undo" and "redo" would do next, read from the job alone, so that both survive a reload.

use job::{Content, Id, Job};

/// The entries that undo and redo would strike.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct History {
    /// Undo strikes this entry.
    pub undo: Option<Id>,
    /// Redo strikes this strike.
    pub redo: Option<Id>,
}

impl History {
    /// Replays a job. A strike of the last thing done is an undo; a strike of the last undo is a
    /// redo; everything else is something done, after which there is nothing left to redo.
    #[must_use]
    pub fn of(job: &Job) -> Self {
        let mut done: Vec<&Id> = Vec::new();
        let mut undone: Vec<&Id> = Vec::new();
        for entry in job.entries() {
            match &entry.content {
                Content::Strike(target) if done.last() == Some(&target) => {
                    done.pop();
                    undone.push(&entry.id);
                }
                Content::Strike(target) if undone.last() == Some(&target) => {
                    undone.pop();
                    done.push(&entry.id);
                }
                _ => {
                    done.push(&entry.id);
                    undone.clear();
                }
            }
        }
        Self {
            undo: done.last().map(|id| (*id).clone()),
            redo: undone.last().map(|id| (*id).clone()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use job::{Entry, Moment, Origin, Text};

    struct Notebook(Job, usize);

    impl Notebook {
        fn new() -> Self {
            let now = Moment::new(0, 0).unwrap();
            Self(Job::new(Id::new("j").unwrap(), now, Origin::Person), 0)
        }

        fn add(&mut self, content: Content) -> Id {
            self.1 += 1;
            let id = Id::new(&format!("e{}", self.1)).unwrap();
            let at = Moment::new(0, 0).unwrap();
            let entry = Entry {
                id: id.clone(),
                at,
                content,
            };
            self.0.add(entry).unwrap();
            id
        }

        fn note(&mut self) -> Id {
            self.add(Content::Note(Text::new("It hums.").unwrap()))
        }

        fn undo(&mut self) {
            let target = History::of(&self.0).undo.unwrap();
            self.add(Content::Strike(target));
        }

        fn redo(&mut self) {
            let target = History::of(&self.0).redo.unwrap();
            self.add(Content::Strike(target));
        }

        fn standing_notes(&self) -> usize {
            let standing = self.0.standing();
            let is_note = |entry: &&&Entry| matches!(entry.content, Content::Note(_));
            standing.iter().filter(is_note).count()
        }
    }

    #[test]
    fn undo_goes_back_step_by_step_and_redo_forward_again() {
        let mut book = Notebook::new();
        for _ in 0..3 {
            book.note();
        }
        let mut seen = Vec::new();
        for _ in 0..3 {
            book.undo();
            seen.push(book.standing_notes());
        }
        assert_eq!(History::of(&book.0).undo, None);
        for _ in 0..3 {
            book.redo();
            seen.push(book.standing_notes());
        }
        assert_eq!(seen, [2, 1, 0, 1, 2, 3]);
        assert_eq!(History::of(&book.0).redo, None);
        book.undo();
        assert_eq!(book.standing_notes(), 2);
    }

    #[test]
    fn a_new_entry_leaves_nothing_to_redo() {
        let mut book = Notebook::new();
        book.note();
        book.undo();
        book.note();
        assert_eq!(History::of(&book.0).redo, None);
    }

    #[test]
    fn undoing_a_strike_out_brings_the_entry_back_and_touches_no_other() {
        let mut book = Notebook::new();
        let first = book.note();
        book.note();
        book.add(Content::Strike(first));
        assert_eq!(book.standing_notes(), 1);
        book.undo();
        assert_eq!(book.standing_notes(), 2);
    }

    #[test]
    fn an_empty_job_has_neither() {
        assert_eq!(History::of(&Notebook::new().0), History::default());
    }
}

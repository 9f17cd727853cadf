//! The plain strings of the pages: headings, buttons, hints.

/// Said after undo.
pub const UNDONE: &str = "Taken back.";
/// Said after redo.
pub const REDONE: &str = "Done again.";
/// Said where a job has no room for another entry.
pub const JOB_FULL: &str = "This job is full: nothing more can be entered. Start another job for \
                            this machine, or send this one as a file first.";

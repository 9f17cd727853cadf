//! The words for finding, putting away, backing up and taking in jobs.

/// Asks for words to find a job by.
pub const SEARCH: &str = "Find a job";
/// Nothing has those words.
pub const NOT_FOUND: &str = "No job has that in its name or kind.";
/// Opens the list of what was put away.
pub const AWAY: &str = "Put away";
/// Puts a job away from the list.
pub const PUT_AWAY: &str = "Put it away";
/// Puts it back.
pub const TAKE_BACK: &str = "Take it back to the list";
/// What that means.
pub const PUT_AWAY_HOW: &str =
    "Out of the list, and kept: it lies under the jobs that are put away.";
/// Said once it is.
pub const IS_AWAY: &str = "Put away. It lies at the end of the list.";
/// Said once it is back.
pub const IS_BACK: &str = "Back in the list.";
/// Makes a second job of the same content.
pub const DUPLICATE: &str = "Make a copy";
/// What it is good for.
pub const DUPLICATE_HOW: &str = "A job of its own with everything entered so far: to try another \
                                 way of thinking, or for a second machine like it.";

/// Above the way to save all jobs.
pub const BACKUP: &str = "Back-up";
/// What it is.
pub const BACKUP_HOW: &str = "All jobs in one file, those put away too. A browser can lose what it \
                              keeps: some clear it after a week without a visit, others when the \
                              device runs out of room. Open the file here, or on another device, \
                              to have them back.";
/// Saves it.
pub const SAVE_BACKUP: &str = "Save all jobs as a file";
/// Hands it to another program.
pub const SHARE_BACKUP: &str = "Share all jobs";
/// Where none was made.
pub const NEVER_BACKED_UP: &str = "Never backed up.";
/// Where there is nothing to save.
pub const NOTHING_TO_BACK_UP: &str = "There is no job here yet.";
/// Leads to it.
pub const TO_BACKUP: &str = "Back up";

/// Little room is left.
pub const NEARLY_FULL: &str = "Little room is left on this device";
/// What to do then.
pub const NEARLY_FULL_HOW: &str = "Save all jobs as a file, then delete those you no longer need. \
                                   Nothing is lost so far.";
/// A job was gone while it was open.
pub const WAS_GONE: &str = "This job was no longer on this device: deleted in another tab, or by the \
                            browser. It is kept again, with everything on this screen.";

/// Above what a file would change in a job that is here.
pub const CHANGES: &str = "What it changes";
/// In front of what would be found then and isn't now.
pub const FOUND_THEN: &str = "Found then";
/// In front of what is found now and wouldn't be then.
pub const NO_LONGER_FOUND: &str = "No longer said";
/// Entries that strike others.
#[must_use]
pub fn strikes(count: usize) -> String {
    match count {
        1 => "1 entry is struck out or brought back.".to_owned(),
        more => format!("{more} entries are struck out or brought back."),
    }
}

/// The name of a copy.
#[must_use]
pub fn copy_of(title: &str) -> String {
    format!("{title}, copy")
}

/// Shows all rows of a long list.
#[must_use]
pub fn show_all(count: usize) -> String {
    format!("Show all {count}")
}

/// Opens the list of what was put away.
#[must_use]
pub fn away(count: usize) -> String {
    format!("{AWAY}: {count}")
}

/// When the last back-up was made.
#[must_use]
pub fn backed_up(when: &str) -> String {
    format!("Last backed up {when}.")
}

/// What a back-up is.
#[must_use]
pub fn backup_of(jobs: usize, when: &str) -> String {
    let jobs = match jobs {
        1 => "1 job".to_owned(),
        more => format!("{more} jobs"),
    };
    format!("A back-up of {jobs}, made {when}.")
}

/// How many of its jobs are new here, bring entries, are here already, can't be read.
#[must_use]
pub fn backup_brings(new: usize, growing: usize, same: usize, unread: usize) -> Vec<String> {
    let jobs = |count: usize, one: &str, more: &str| match count {
        0 => None,
        1 => Some(format!("1 job {one}.")),
        count => Some(format!("{count} jobs {more}.")),
    };
    [
        jobs(new, "is new here", "are new here"),
        jobs(
            growing,
            "is here already and gains entries",
            "are here already and gain entries",
        ),
        jobs(
            same,
            "is here already with all of its entries",
            "are here already with all of their entries",
        ),
        jobs(
            unread,
            "can't be read here and is kept as it is",
            "can't be read here and are kept as they are",
        ),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// Takes all of it in.
pub const TAKE_ALL_IN: &str = "Take them in";
/// Said once it is done.
pub const TAKEN_IN: &str = "Taken in. Nothing that was here is lost.";

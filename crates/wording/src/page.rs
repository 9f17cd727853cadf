//! The plain strings of the pages: headings, buttons, hints.

mod about;
pub mod assumptions;
mod entry;
pub mod keeping;
pub mod practice;
pub mod settings;
pub mod weighing;

use diagnosis::{Link, LinkState};
use job::Origin;

use crate::Words;

pub use about::{ABOUT, ABOUT_HEADING, AboutSection};
pub(crate) use entry::asked;
pub use entry::{EntryWords, entry, says};

/// The program's name.
pub const NAME: &str = "Coldcase";
/// For who steps through the page by keyboard.
pub const SKIP: &str = "Skip to the main part";
/// Leads back to the list of jobs.
pub const JOBS: &str = "Jobs";
/// Leads to the page about safety and limits.
pub const SAFETY: &str = "Safety";
/// The screen of a cool-down, where it leads back to.
pub const COOL_DOWN: &str = "Cool-down";
/// What the links at the top of every screen are called together.
pub const ALWAYS: &str = "On every screen";
/// What the three places of a job are called together.
pub const PLACES: &str = "This job";
/// The place where the next check is.
pub const DO: &str = "Do";
/// The place where everything known is.
pub const KNOWN: &str = "Known";
/// The place where the record is.
pub const RECORD: &str = "Record";

/// The first line of the first screen.
pub const QUESTION: &str = "Why won't it get cold?";
/// Under it.
pub const PROMISE: &str = "Works without a network once loaded. Nothing leaves this phone.";
/// Shown once every file of this version is on the device.
pub const OFFLINE_READY: &str = "Ready to work offline";
/// A newer version waits.
pub const UPDATE_READY: &str = "A new version is ready.";
/// Brings it in.
pub const UPDATE_NOW: &str = "Use it now";

/// The second part of the program is being fetched, and it takes a while.
pub const ON_ITS_WAY: &str = "The rest of the program is on its way.";
/// The second part of the program is not there.
pub const NOT_ARRIVED: &str = "The rest of the program hasn't arrived";
/// What to do then.
pub const NOT_ARRIVED_HOW: &str = "It is fetched once, and the network is gone. Try again with a \
                                   network; nothing that you entered is lost.";

/// Begins a job.
pub const START_JOB: &str = "Start a job";
/// Opens a file.
pub const OPEN_FILE: &str = "Open a file";
/// Opens the list of examples.
pub const EXAMPLES: &str = "Look at an example";
/// Above the examples.
pub const EXAMPLES_HOW: &str = "Invented machines, measured on paper only.";
/// Above the list.
pub const YOUR_JOBS: &str = "Your jobs";
/// What an example is.
pub const INVENTED: &str = "Invented example";
/// What a job on a simulated machine is.
pub const PRACTICE: &str = "Practice";
/// Beside a job of no real machine.
#[must_use]
pub const fn not_of_a_machine(origin: Origin) -> Option<&'static str> {
    match origin {
        Origin::Person => None,
        Origin::Invented => Some(INVENTED),
        Origin::Practice => Some(PRACTICE),
    }
}
/// Beside a job that can't be read.
pub const CANNOT_READ: &str = "Can't be read";
/// Beside a job from a newer program.
pub const READ_ONLY: &str = "From a newer version: read only";
/// Where nothing is interrupted as far as known.
pub const NO_BREAK: &str = "No break found yet";
/// Brings a deleted job back.
pub const BRING_BACK: &str = "Bring it back";
/// Said once it is.
pub const BROUGHT_BACK: &str = "It is back.";
/// At an address that no screen has.
pub const NO_SUCH_PAGE: &str = "There is no page at that address. Here are your jobs.";
/// At the address of a job that isn't here.
pub const NO_SUCH_JOB: &str = "That job isn't on this device";
/// What to do then.
pub const NO_SUCH_JOB_HOW: &str = "It was deleted, or the link is from another device. Jobs don't \
                                   travel with a link: send them as a file.";

/// The first question of a new job.
pub const WHAT_IS_IT: &str = "What is it?";
/// The second.
pub const WHICH_MAINS: &str = "Which mains do you have?";
/// How to find out.
pub const MAINS_HOW: &str = "What its plate says is asked later.";
/// The third.
pub const WHAT_DID_IT_DO: &str = "What did it do when it was last plugged in?";
/// Who says so.
pub const WHO_SAYS_SO: &str = "Who says so?";
/// Why that counts.
pub const WITNESS_HOW: &str = "What you saw and heard yourself counts for more.";
/// Below the third.
pub const LEAVE_UNPLUGGED: &str = "Leave it unplugged for now.";

/// Above the next step.
pub const NEXT: &str = "Next";
/// Leads to it.
pub const DO_THIS: &str = "Do this";
/// Opens the list of all checks.
pub const SOMETHING_ELSE: &str = "Something else";
/// Beside a check that has answers.
pub const HAS_ANSWERS: &str = "answered";
/// Beside a check that has none.
pub const NO_ANSWERS: &str = "open";
/// Where nothing is left to do.
pub const NOTHING_NEXT: &str = "All that this version measures with the plug out is done.";
/// Above the latest findings.
pub const FOUND: &str = "Found so far";
/// Takes the last thing back.
pub const UNDO: &str = "Undo";
/// Does it again.
pub const REDO: &str = "Redo";
/// Said after undo.
pub const UNDONE: &str = "Taken back.";
/// Said after redo.
pub const REDONE: &str = "Done again.";
/// Said where a job has no room for another entry.
pub const JOB_FULL: &str = "This job is full: nothing more can be entered. Send it as a file, and \
                            start another job for this machine.";
/// At the address of a check that this version doesn't have.
pub const NO_SUCH_CHECK: &str = "This version has no such check";

/// The heading of the refrigerant's check.
pub const WHICH_REFRIGERANT: &str = "What does the plate say is in it?";
/// Where to find it.
pub const REFRIGERANT_HOW: &str = "Look inside the cabinet, at the back, or on the compressor, for R and \
                                   a number. Some burn: that decides what is safe.";
/// Changes an answer.
pub const CHANGE: &str = "Change it";
/// The heading of the machine's check.
pub const MACHINE: &str = "The machine";
/// Asks for words off the plate.
pub const PLATE: &str = "Words off the plate";
/// What they are good for.
pub const PLATE_HINT: &str = "Only if you like: voltage, current, model, year. As it stands there.";
/// Keeps the words.
pub const KEEP_PLATE: &str = "Keep these words";
/// Said once an answer stands in the job.
pub const NOTED: &str = "Noted.";
/// Leads back to the next step.
pub const BACK_TO_JOB: &str = "Back to the job";
/// A text too long or with characters that can't be shown.
pub const TEXT_TOO_LONG: &str =
    "That is longer than 2,000 characters. Shorten it, or make two of it.";
/// A text with characters that can't be shown.
pub const TEXT_GARBLED: &str = "There is a character in it that can't be shown. Type it anew \
                                instead of pasting it.";
/// Nothing but spaces.
pub const TEXT_EMPTY: &str = "Nothing typed yet. Write a word or more first.";

/// Opens what each link takes to hold.
pub const PATH_IN_FULL: &str = "What the eight links mean";
/// Above all that was entered.
pub const ENTRIES: &str = "Everything entered, the latest first";
/// Where nothing was.
pub const NO_ENTRIES: &str = "Nothing entered yet.";
/// Leads to where an answer is given anew.
pub const CORRECT: &str = "Correct";
/// Strikes an entry.
pub const STRIKE_OUT: &str = "Strike out";
/// Brings a struck entry back.
pub const UNSTRIKE: &str = "Count it again";
/// Beside a struck entry.
pub const STRUCK: &str = "struck out";
/// Said once it is.
pub const STRUCK_OUT: &str = "Struck out. It stays readable and no longer counts.";
/// Said once it counts again.
pub const COUNTS_AGAIN: &str = "It counts again.";

/// Above the ways to send a job.
pub const SEND: &str = "Send it";
/// What goes out.
pub const SEND_HOW: &str = "As a file that opens here and on the command line. It holds everything \
                            you entered, and nothing else.";
/// Opens the share sheet.
pub const SHARE: &str = "Share the file";
/// Saves the file.
pub const SAVE_FILE: &str = "Save as a file";
/// Copies the report.
pub const COPY_REPORT: &str = "Copy as text";
/// Copies the file's text, where neither sharing nor saving works.
pub const COPY_FILE: &str = "Copy the file's text";
/// Said after sharing.
pub const SHARED: &str = "Handed over.";
/// Said after saving.
pub const SAVED: &str = "Saved. Look among your downloads.";
/// Said after copying.
pub const COPIED: &str = "Copied.";
/// Said where copying is refused.
pub const NOT_COPIED: &str = "This browser doesn't let the page copy. Save it as a file instead.";
/// Said where sharing is refused.
pub const NOT_SHARED: &str = "This browser didn't share it. Save it as a file instead.";
/// Said where saving fails.
pub const NOT_SAVED: &str = "This browser didn't save it. Copy the file's text instead.";
/// A job that never left this device.
pub const NEVER_SENT: &str = "Not sent or saved as a file yet. It is only on this device.";
/// Above what was tested.
pub const TESTED: &str = "What was looked at";
/// Beside a check that wasn't done.
pub const NOT_TESTED: &str = "not looked at";
/// Above the notes.
pub const NOTES: &str = "Notes";
/// Asks for one.
pub const NEW_NOTE: &str = "A note in your own words";
/// What it is good for.
pub const NEW_NOTE_HINT: &str =
    "What no field asks for: smells, oil, earlier work, what the seller said.";
/// Adds it.
pub const ADD_NOTE: &str = "Add the note";
/// Said once it is.
pub const NOTE_ADDED: &str = "Note added.";
/// Asks for the machine's name.
pub const MACHINE_NAME: &str = "What you call this machine";
/// What it is good for.
pub const MACHINE_NAME_HINT: &str =
    "So that you know it in the list: where it stands, or whose it is.";
/// Keeps the name.
pub const RENAME: &str = "Keep this name";
/// Said once it is.
pub const RENAMED: &str = "Renamed.";
/// Above the way to delete.
pub const THIS_JOB: &str = "This job on this device";
/// Deletes it.
pub const DELETE: &str = "Delete this job";
/// What that means.
pub const DELETE_HOW: &str = "It can be brought back from the list until you delete another.";

/// The heading of the page that opens a file.
pub const IMPORT: &str = "Open a file";
/// What a job's file is.
pub const IMPORT_HOW: &str = "A job that was shared or saved. Nothing is added before you say so.";
/// Chooses a file.
pub const CHOOSE_FILE: &str = "Choose a file";
/// The other way.
pub const PASTE: &str = "Or paste its text";
/// Looks into the text.
pub const LOOK_INTO: &str = "Look into it";
/// Above what a file would bring.
pub const IN_IT: &str = "In this file";
/// Adds the job.
pub const ADD_JOB: &str = "Add to my jobs";
/// Adds a job that can't be changed here.
pub const ADD_READ_ONLY: &str = "Keep it, read only";
/// Opens the job that is here already.
pub const OPEN_JOB: &str = "Open the job";
/// It is here already, and nothing in it is new.
pub const NOTHING_NEW: &str = "This job is here already, with all of these entries.";
/// A job of its identifier is here that can't be added to.
pub const BESIDE: &str = "A job of the same identifier is here that this version can't add to. This \
                          one is kept beside it.";
/// Above what a person should know about a file.
pub const NOTICES: &str = "Worth knowing";
/// A file that the browser can't read.
pub const FILE_NOT_READ: &str = "The browser couldn't read that file. Choose it again.";
/// Above an error.
pub const NOT_OPENED: &str = "It can't be opened";
/// About a job that can't be read.
pub const UNREADABLE_HOW: &str = "It stays here as it is and is never overwritten. Save it as a \
                                  file: a later version, or someone with a text editor, may read it.";

/// The browser keeps nothing.
pub const BLOCKED: &str = "This browser keeps nothing for this page";
/// What to do then.
pub const BLOCKED_HOW: &str = "Work goes on until the page is closed. Before that, send each job as \
                               a file from its Record.";
/// There is no room left.
pub const FULL: &str = "There is no room left on this device";
/// What to do then.
pub const FULL_HOW: &str = "The latest entries last until the page is closed. Send this job as a \
                            file from its Record, or delete a job you no longer need.";
/// Another job stands in the way.
pub const OCCUPIED: &str = "Another copy of this job is here that this version can't read";
/// What to do then.
pub const OCCUPIED_HOW: &str = "That copy is not overwritten, so yours lasts until the page is \
                                closed. Send yours as a file from its Record.";

/// The title of the window on a screen with this heading.
#[must_use]
pub fn window_title(heading: &str) -> String {
    [heading, " – ", NAME].concat()
}

/// Above a question of a new job.
#[must_use]
pub fn question_of_three(number: u8) -> String {
    format!("{number} of 3")
}

/// Where the Path is, or may be, interrupted.
#[must_use]
pub fn interrupted(link: Link, state: LinkState) -> String {
    match state {
        LinkState::Broken(_) => format!("Broken at {}", link.words()),
        _ => format!("In doubt at {}", link.words()),
    }
}

/// A few words as a sentence of their own.
#[must_use]
pub fn sentence(words: &str) -> String {
    let mut letters = words.chars();
    let first = letters.next().map(|letter| letter.to_ascii_uppercase());
    first.into_iter().chain(letters).chain(['.']).collect()
}

/// When something was last touched.
#[must_use]
pub fn touched(when: &str) -> String {
    format!("Last touched {when}")
}

/// The job that was deleted last.
#[must_use]
pub fn deleted(title: &str) -> String {
    format!("Deleted: {title}.")
}

/// When a job was last sent or saved as a file.
#[must_use]
pub fn last_sent(when: &str) -> String {
    format!("Last sent or saved as a file {when}.")
}

/// How many entries there are.
#[must_use]
pub fn entries(count: usize) -> String {
    match count {
        1 => "1 entry".to_owned(),
        more => format!("{more} entries"),
    }
}

/// Entries of a file that are new to a job that is here already.
#[must_use]
pub fn new_entries(count: usize) -> String {
    match count {
        1 => "This job is here already. 1 entry is new.".to_owned(),
        more => format!("This job is here already. {more} entries are new."),
    }
}

/// Adds them.
#[must_use]
pub fn add_entries(count: usize) -> String {
    match count {
        1 => "Add the new entry".to_owned(),
        more => format!("Add the {more} new entries"),
    }
}

/// Entries of a file that can't be added.
#[must_use]
pub fn clashing_entries(count: usize) -> String {
    match count {
        1 => "1 entry says something else than the one of the same identifier here. Yours stays."
            .to_owned(),
        more => format!(
            "{more} entries say something else than those of the same identifier here. Yours stay."
        ),
    }
}

/// What an entry's button does, for a screen reader.
#[must_use]
pub fn about(action: &str, what: &str) -> String {
    format!("{action}: {what}")
}

/// Enters that nothing on the list was seen.
pub const NOTHING_TO_TICK: &str = "I see none of these";
/// Said where nothing on the list was ticked.
pub const NONE_OF_THESE: &str = "None of these";
/// Enters what was ticked.
pub const ENTER_TICKS: &str = "Enter what I ticked";

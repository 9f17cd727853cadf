//! Words around the weighing of the whole machine: suspects, the next check, the verdict.

/// Heads the suspects.
pub const SUSPECTS: &str = "What could be at fault";
/// Under that heading: they are no shares of one whole.
pub const EACH_COULD_BE: &str = "Each could be at fault, more than one at a time.";
/// The same before anything was read.
pub const BY_JUDGEMENT: &str = "What usually fails in such machines, by our judgement:";
/// Leads to all of them with their reasons.
pub const ALL_AND_WHY: &str = "All of them, and why";
/// While the first weighing is under way.
pub const WEIGHING: &str = "Weighing what is known…";
/// Heads what an answer has changed.
pub const CHANGED: &str = "What that changed";
/// Nothing moved by as much as is told.
pub const CHANGED_LITTLE: &str = "It moved no suspect by much.";
/// Heads a verdict that nothing more needs to be known for.
pub const ENOUGH: &str = "Enough is known";
/// Heads a verdict where nothing more can be found out now.
pub const AS_FAR_AS_IT_GOES: &str = "As far as it can be told now";
/// Heads a verdict beside a check that is worth its time.
pub const BEST_SO_FAR: &str = "Best bet so far";
/// Leads to a check though enough is known.
pub const ANOTHER_CHECK: &str = "Another check, to be surer";
/// Leads to what was done to the machine.
pub const SOMETHING_DONE: &str = "Something was done to it";
/// Heads what can have been done.
pub const WHAT_WAS_DONE: &str = "What was done?";
/// What becomes of the readings.
pub const WHAT_DONE_MEANS: &str = "What was read before counts for the machine as it was then; what \
                                   is read from now on, for the machine as it is. Strike the \
                                   entry out if it is undone.";
/// It is noted.
pub const DONE_NOTED: &str = "Noted. Now repeat what showed the trouble.";
/// Opens the figures behind the words.
pub const IN_NUMBERS: &str = "In numbers";
/// Opens the reasons of a suspect.
pub const WHY: &str = "Why";
/// No reading says anything of it.
pub const NO_REASON: &str = "No reading points to it or away from it: it is what is usual.";
/// Asks how a machine is built.
pub const WHICH_BUILD: &str = "How is it built?";
/// That nobody has to know.
pub const BUILD_HINT: &str = "Leave it open if you can't tell: it is weighed.";

/// "about 7 in 10, was about 4 in 10".
#[must_use]
pub fn now_and_before(now: &str, was: &str) -> String {
    format!("{now}, was {was}")
}

/// Opens the checks that have to wait.
#[must_use]
pub fn have_to_wait(count: usize) -> String {
    format!("Not now: {count}")
}

/// "Without it: about 2 in 10."
#[must_use]
pub fn without(odds: &str) -> String {
    format!("Without it: {odds}.")
}

//! What is assumed before anything is known, as a person reads and changes it.

use diagnosis::{PriorError, Priors};

use crate::Locale;

/// Heads the screen, and leads to it.
pub const ASSUMPTIONS: &str = "What we assume";
/// What the figures are, and what they are worth.
pub const LEAD: &str = "Of a hundred machines that are offered cheaply as not getting cold, how many \
                        have which fault as their main one. It is judgement from trade practice, \
                        no survey: each figure is worth about thirty machines seen. What you \
                        measure soon outweighs it.";
/// What a change does.
pub const CHANGING: &str = "Where you know better, put your own figure; the others share what is \
                            left. It counts for all jobs on this device.";
/// Asks for which machines.
pub const FOR_WHICH: &str = "For which machines?";
/// Labels the field.
pub const OF_A_HUNDRED: &str = "Of a hundred machines";
/// Names the field of one fault for who doesn't see what it stands under.
#[must_use]
pub fn labelled(what: &str) -> String {
    format!("{what}: {}", OF_A_HUNDRED.to_lowercase())
}

/// Keeps a figure.
pub const KEEP: &str = "Keep this figure";
/// Takes back all figures.
pub const RESET_ALL: &str = "Go back to all stated figures";
/// They were taken back.
pub const ALL_RESET: &str = "The stated figures hold again.";
/// One of them was.
pub const ONE_RESET: &str = "The stated figure holds again.";
/// Saves the own figures.
pub const SAVE: &str = "Save your figures as a file";
/// Not a number.
pub const NO_NUMBER: &str = "Give a number, such as 12 or 0.5.";

/// "11 of 100".
#[must_use]
pub fn of_a_hundred(share: f64, is_own: bool, locale: &Locale) -> String {
    let percent = share * 100.0;
    let decimals = usize::from(percent < 9.95);
    let own = if is_own { ", yours" } else { "" };
    format!("{}\u{a0}of\u{a0}100{own}", locale.number(percent, decimals))
}

/// Goes back to one stated figure.
#[must_use]
pub fn reset_to(share: f64, locale: &Locale) -> String {
    format!("Back to {}", of_a_hundred(share, false, locale))
}

/// Says that a figure was kept.
#[must_use]
pub fn kept(what: &str) -> String {
    format!("{what}: kept. The others share what is left.")
}

/// Why a figure is not taken.
#[must_use]
pub fn refused(error: &PriorError, locale: &Locale) -> String {
    let number = |value: f64| locale.number(value, 1);
    match error {
        PriorError::NotANumber => NO_NUMBER.to_owned(),
        PriorError::TooRare => format!(
            "At least {}: else nothing that you measure could ever bring it back.",
            number(Priors::LEAST)
        ),
        PriorError::TooCommon => format!(
            "At most {}: else nothing that you measure could ever speak against it.",
            number(Priors::MOST)
        ),
        PriorError::NoSuchPart => "Machines built so don't have the part.".to_owned(),
        PriorError::LeavesTooLittle { needed } => format!(
            "Your figures leave nothing for the others, which need at least {} together. Lower one \
             of yours first.",
            number(*needed)
        ),
    }
}

//! What stands round a record on the screen.

/// The heading of the screen.
pub const PAGE: &str = "Page for the next owner";
/// The way to it.
pub const TO_PAGE: &str = "Make the page that goes with it";
/// What it is good for.
pub const PAGE_HOW: &str = "One page says what was wrong, what was done and what is proved; every \
                            reading stands behind it. Print it, or send it as a file that any \
                            browser shows.";
/// Above the choice of a reader.
pub const WHOSE: &str = "For whom?";
/// Without money and notes.
pub const FOR_BUYER: &str = "Buyer";
/// With both.
pub const FOR_OWNER: &str = "Myself";
/// Opens the print dialogue.
pub const PRINT: &str = "Print, or save as PDF";
/// Opens the share sheet.
pub const SHARE_PAGE: &str = "Share the page";
/// Saves it as a file.
pub const SAVE_PAGE: &str = "Save the page as a file";

//! The words of the settings.

/// The heading, and what leads to it.
pub const SETTINGS: &str = "Settings";
/// Above the meter.
pub const METER: &str = "Your meter";
/// What it is good for.
pub const METER_HOW: &str = "It decides how sure a reading is, and what over range proves.";
/// A meter by its own data sheet.
pub const OWN_METER: &str = "Mine, by its data sheet";
/// Where to find it.
pub const OWN_METER_HOW: &str =
    "From its manual, under resistance: ±(percent of reading + digits).";
/// Asks for the percentage.
pub const PERCENT: &str = "Percent of reading";
/// Asks for the counts.
pub const COUNTS: &str = "Digits";
/// Asks for the end of the highest range.
pub const HIGHEST: &str = "Highest ohms range, such as 40M";
/// Keeps it.
pub const KEEP_METER: &str = "Use these figures";
/// Said once it is.
pub const METER_KEPT: &str = "Your meter is kept.";
/// A percentage that can't be.
pub const PERCENT_WRONG: &str = "The percentage is a number from 0 to 20, such as 0.8.";
/// Counts that can't be.
pub const COUNTS_WRONG: &str = "The digits are a number from 0 to 100, such as 3.";
/// A range that can't be.
pub const HIGHEST_WRONG: &str =
    "The highest range ends between 200 ohms and 1,000 megohms, such as 40M.";
/// Above the mains.
pub const MAINS: &str = "Your mains";
/// What it is good for.
pub const MAINS_HOW: &str = "It stands first in a new job.";
/// By the browser's language.
pub const BY_LANGUAGE: &str = "As the browser's language says";
/// Above the degrees.
pub const DEGREES: &str = "Degrees";
/// Above the look.
pub const LOOK: &str = "Look";
/// The system's own.
pub const LOOK_SYSTEM: &str = "As the device is set";
/// By day.
pub const LOOK_LIGHT: &str = "Light";
/// By night.
pub const LOOK_DARK: &str = "Dark";
/// Above the keypad.
pub const KEYPAD: &str = "Keys for readings";
/// The keypad of the page.
pub const KEYPAD_OWN: &str = "Large keys on the page, with OL";
/// The phone's keyboard.
pub const KEYPAD_PHONE: &str = "The phone's keyboard";
/// Leads to describing one's own meter.
pub const DESCRIBE_METER: &str = "Describe your own meter";

/// What stands beside one's own meter: its accuracy and its highest range.
#[must_use]
pub fn own_meter(percent: &str, counts: &str, top: &str) -> String {
    format!("±({percent} % + {counts} digits), up to {top}")
}

/// Takes over what the leads read in an earlier job.
#[must_use]
pub fn leads_as_before(reading: &str) -> String {
    format!("They read {reading}, as last time")
}

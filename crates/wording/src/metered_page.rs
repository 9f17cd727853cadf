//! The words of entering what a plug-in meter counted.

use job::{MeteredError, Moment};

use crate::Locale;

/// Above the meter.
pub const METER: &str = "A meter at the plug";
/// It was put in and set to nothing.
pub const BEGINS: &str = "The meter counts from now";
/// It counts since another time.
pub const OTHER_TIME: &str = "It counts since another time";
/// For how long it has counted.
pub const HOURS: &str = "Hours it has counted";
/// What it shows.
pub const COUNTED: &str = "Kilowatt hours it shows";
/// Its own hours of load.
pub const RAN: &str = "Hours under load, where it shows them";
/// Above what is asked of the machine.
pub const MACHINE: &str = "What it is held against";
/// Opens the classes.
pub const CLASS: &str = "Its class in the energy rule";
/// Opens the classes that machines of its kind don't have.
pub const OTHER_CLASSES: &str = "All other classes";
/// Asks for the colder compartment.
pub const COMPARTMENT: &str = "What is its colder compartment?";
/// Asks for an icemaker.
pub const ICEMAKER: &str = "Does it make ice by itself?";
/// The energy isn't understood.
pub const NOT_ENERGY: &str = "Kilowatt hours are a number like 1.25.";
/// The hours aren't understood.
pub const NOT_HOURS: &str = "For how long has it counted? Hours like 23.5 or 23:30.";
/// The hours of load aren't understood.
pub const NOT_RAN: &str = "Hours under load are a number like 8.5, or 8:30.";

/// Since when it counts.
#[must_use]
pub fn since(began: Moment, locale: &Locale) -> String {
    format!("It counts since {}.", locale.moment(began))
}

/// Why a count can't be so.
#[must_use]
pub const fn error(why: MeteredError) -> &'static str {
    match why {
        MeteredError::EndsBeforeItBegins => "It has counted for no time at all.",
        MeteredError::NotEnergy => NOT_ENERGY,
        MeteredError::Negative => "A meter can't count less than nothing.",
        MeteredError::RanTooLong => "It can't have run for longer than was metered.",
    }
}

//! What a refrigerating machine uses, and what it was allowed to.
//!
//! Answers: which share of the time it runs, by times of switching, by a course that goes up and down,
//! or by counted hours; energy a day and a year with what the length of metering leaves open; the
//! greatest energy that American rules allowed for its class, volumes and year of make; whether
//! both may be compared at all; what it costs.
//!
//! Must never know: which fault makes a machine use more, what a job is, currencies, words.

mod class;
mod consumption;
mod limit;
mod limit_table;
mod metering;
mod run_share;

pub use class::{CUBIC_FOOT, Class, Compartments};
pub use consumption::{
    Comparison, Consumption, NoConsumption, TEST_ROOM, against_limit, consumption, cost,
    duty_from_label, field_from_label,
};
pub use limit::{Doors, EnergyLimit, Era, Extras, NoLimit, Product, frozen_counts};
pub use limit_table::Standing;
pub use metering::{SHORTEST, WITHIN_A_TENTH, metering_error};
pub use run_share::{NoRunShare, RunShare, Shows, Switch, run_share, run_share_of_hours, switches};

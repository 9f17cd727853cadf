//! Every sentence that a person reads, in one place for the page and the command line alike.
//!
//! Answers: how is this finding, caution, step, value or error said in plain words?
//!
//! Must never know: how a conclusion was reached, where a job is stored, what a screen looks
//! like. An enum without words for one of its variants does not compile.

#![forbid(unsafe_code)]

mod bench_choices;
mod bench_finding;
mod caution;
mod choices;
pub mod circuit;
mod cold;
pub mod cold_page;
pub mod cool_down;
mod document_error;
pub mod energy;
mod finding;
pub mod gas_page;
mod gate;
mod item;
mod locale;
pub mod log_page;
pub mod metered_page;
mod odds;
pub mod page;
mod path;
mod powered_choices;
mod powered_finding;
pub mod proof;
mod reading_error;
pub mod record;
mod report;
mod running_finding;
pub mod start_kit;
pub mod start_trials;
mod step;
mod supply_finding;
mod value;
pub mod whole;
mod windings_finding;
pub mod windings_page;

pub use caution::{CautionWords, caution};
pub use choices::Words;
pub use document_error::{is_backup, newer, notice, open_error};
pub use finding::{explanation, finding, label, pair, pin};
pub use gate::{closed_gates, gates};
pub use item::{ItemWords, item};
pub use locale::{DateOrder, DecimalMark, Degrees, Locale};
pub use odds::{Odds, odds};
pub use path::{LinkWords, basis, link, link_state, links_together};
pub use reading_error::{ErrorWords, doubt, parse_error};
pub use report::{Part, Report, Section, limits, report, title, told_explanations};
pub use step::{StepWords, step};
pub use value::{data_sheet, expanded, measured, measured_briefly, observed, ohms, uncertain_ohms};

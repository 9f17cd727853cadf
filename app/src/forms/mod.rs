//! What is being filled in, as plain structs: no screen, no browser, tested on the host.

pub mod assumptions;
pub mod cold_entry;
pub mod file_name;
pub mod gas;
pub mod import;
pub mod import_backup;
pub mod log_import;
pub mod metered;
pub mod new_job;
pub mod pair_reading;
pub mod questions;
pub mod start_trial;
pub mod when;
pub mod windings_diagram;
pub mod windings_keys;
pub mod windings_meter;
pub mod windings_stage;
pub mod windings_wiring;

//! The checks. Each is one file here and one line in this list.

pub(crate) mod machine;
pub(crate) mod windings;

use crate::choice::choices;

choices! {
    /// A check: something to look at or measure, with what its answers mean.
    pub enum Check {
        /// What machine it is and what it did.
        Machine = "machine",
        /// Which refrigerant is in it, for safety.
        Refrigerant = "refrigerant",
        /// Ohms between the compressor's three pins.
        Windings = "windings",
    }
}

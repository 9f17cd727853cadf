//! The checks. Each is one file here and one line in this list.

pub(crate) mod ground;
pub(crate) mod look_over;
pub(crate) mod machine;
pub(crate) mod protector;
pub(crate) mod shell;
pub(crate) mod start_device;
pub(crate) mod stored_charge;
pub(crate) mod winding_temperature;
pub(crate) mod windings;

use crate::choice::choices;

choices! {
    /// A check: something to look at or measure, with what its answers mean. In the order in
    /// which they are safe to do.
    pub enum Check {
        /// What machine it is and what it did.
        Machine = "machine",
        /// Which refrigerant is in it, for safety.
        Refrigerant = "refrigerant",
        /// Plate, cord, marks, missing parts.
        LookOver = "look-over",
        /// From the plug to earth and to bare metal.
        Ground = "ground",
        /// What may still hold a charge.
        StoredCharge = "stored-charge",
        /// Ohms between the compressor's three pins.
        Windings = "windings",
        /// From each pin to the compressor's shell.
        Shell = "shell",
        /// The overload protector, off and cold.
        Protector = "protector",
        /// The start device, off and cold.
        StartDevice = "start-device",
        /// How hot the windings are, by their resistance.
        WindingTemperature = "winding-temperature",
    }
}

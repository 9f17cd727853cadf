//! The checks. Each is one file here and one line in this list.

pub(crate) mod capacitor_in_circuit;
pub(crate) mod energy;
pub(crate) mod ground;
pub(crate) mod leakage;
pub(crate) mod look_over;
pub(crate) mod machine;
mod meter_readings;
pub(crate) mod protector;
pub(crate) mod running;
pub(crate) mod shell;
pub(crate) mod start_device;
pub(crate) mod stored_charge;
pub(crate) mod supply;
pub(crate) mod winding_temperature;
pub(crate) mod windings;

use job::Job;

use capacitor_in_circuit::CapacitorInCircuit;
use ground::Ground;
use leakage::Leaking;
use look_over::LookedOver;
use protector::ProtectorKnown;
use running::Running;
use shell::Shell;
use start_device::StartDeviceKnown;
use stored_charge::StoredCharge;
use supply::Supply;
use winding_temperature::WindingTemperature;

use crate::Item;
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
        /// The outlet, the way to the machine, and what is left of the volts as it starts.
        Supply = "supply",
        /// Watts, volts and amperes of a running machine.
        Running = "running",
        /// A capacitor by its current and volts while it works.
        CapacitorInCircuit = "capacitor-in-circuit",
        /// Current that goes astray, and what is known of trips.
        Leakage = "leakage",
    }
}

impl Check {
    /// Whether the machine is live while it is done.
    #[must_use]
    pub const fn is_powered(self) -> bool {
        matches!(
            self,
            Self::Supply | Self::Running | Self::CapacitorInCircuit | Self::Leakage
        )
    }

    /// What it asks item by item, given what was answered. Machine, refrigerant and windings
    /// have pages of their own and list nothing here.
    #[must_use]
    pub fn items(self, job: &Job) -> Vec<Item> {
        match self {
            Self::Machine | Self::Refrigerant | Self::Windings => Vec::new(),
            Self::LookOver => LookedOver::ITEMS.into(),
            Self::Ground => Ground::items(job),
            Self::StoredCharge => StoredCharge::items(job),
            Self::Shell => Shell::ITEMS.into(),
            Self::Protector => ProtectorKnown::items(job),
            Self::StartDevice => StartDeviceKnown::items(job),
            Self::WindingTemperature => WindingTemperature::ITEMS.into(),
            Self::Supply => Supply::items(job),
            Self::Running => Running::items(job),
            Self::CapacitorInCircuit => CapacitorInCircuit::items(job),
            Self::Leakage => Leaking::items(job),
        }
    }
}

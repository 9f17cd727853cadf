//! How a check is done, in one line.

use diagnosis::{Check, Task};

use super::guide::lesson;

/// The steps of a check in a row.
pub(super) fn how(task: Task) -> String {
    lesson(task).steps.join(" ")
}

/// How an unplugged check is done, in a sentence; its own page says more.
pub(super) const fn of_check(check: Check) -> &'static [&'static str] {
    match check {
        Check::Machine => &["Say what it is, its mains, and what it did."],
        Check::Refrigerant => &["Read on the plate what is inside."],
        Check::LookOver => &["Look at cord, plug, tubes and wiring for damage and missing parts."],
        Check::Ground => {
            &["Highest ohms range, from the plug's flat pins to earth and bare metal."]
        }
        Check::StoredCharge => &["Wait ten minutes, then prove capacitor or board below 50 V."],
        Check::Windings => &["Ohms between the compressor's three bare pins."],
        Check::Shell => &["Highest ohms range, from each pin to bare metal of the shell."],
        Check::Protector => &["Off the compressor and rested, lowest ohms range."],
        Check::StartDevice => &["Off the pins and cold: look, shake, measure."],
        Check::WindingTemperature => &["The same winding by ohms, now and when it was cold."],
        Check::Supply => &["Try the test button; then volts at rest and as it starts."],
        Check::Running => &["Plug-in meter: watts early and late, volts and amperes, the label."],
        Check::CapacitorInCircuit => &["Amperes through it and volts across it, set up unplugged."],
        Check::Leakage => &["Leakage clamp round live and neutral; when it trips, and what."],
    }
}

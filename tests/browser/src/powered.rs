//! The checks of a machine that is powered: outlet and volts, watts and amperes, a capacitor as it works, leakage and
//! trips; each question answered as a person would who has the meters.

use anyhow::Result;

use crate::bench::Asked::{Again, Choice, Number};
use crate::bench::{Asked, Look, go_through};
use crate::visit::Visit;

const PROTECTION: &str = "What protects the outlet?";

/// The checks in the order in which they are safe. The capacitor's marking was read where its charge was looked for.
const CHECKS: &[(&str, &[Asked])] = &[
    (
        "Outlet and volts",
        &[
            Choice(PROTECTION, "There is one, its button does nothing"),
            Again(PROTECTION),
            Choice(PROTECTION, "A device that trips by its test button"),
            Choice(
                "What does a plug-in tester show of the outlet?",
                "Earth is there, poles are right",
            ),
            Choice("What feeds the machine?", "An extension cord or a strip"),
            Number("How long is the cord?", "50 ft"),
            Choice("What size is printed on the cord?", "1.5 mm²"),
            Number("Volts while the machine is off", "233.5"),
            Number("Lowest volts while it tries to start", "226.0"),
            Choice(
                "Was that surely the lowest?",
                "It hummed for three seconds or more",
            ),
            Number("Amperes during that start", "9.8"),
        ],
    ),
    (
        "Watts and amperes",
        &[
            Number("Watts five minutes after it started", "118"),
            Number("Watts after half an hour of running", "96"),
            Number("Volts in the same minute", "230"),
            Number("Amperes in the same minute", "900m"),
            Choice("Whose label can you read?", "The compressor's own"),
            Number("Amperes on that label", "1.1"),
            Number("Watts taken, on that label, if any", "130"),
        ],
    ),
    (
        "Capacitor as it works",
        &[
            Choice(
                "What is it for, and how is it marked?",
                "Run capacitor, printed on it",
            ),
            Number("Amperes through it while it works", "1.06"),
            Number("Alternating volts across it at that moment", "280"),
        ],
    ),
    (
        "Leakage and trips",
        &[
            Number("The machine's leakage current", "0.4"),
            Choice("What tripped?", "A residual-current device, 30 mA"),
            Choice("When does it trip?", "As a defrost begins"),
            Choice("What else hangs on that device?", "Other things too"),
            Number("The leakage of everything else behind it, together", "2.1"),
        ],
    ),
];

/// Goes through all of them, from a job's first screen and back to it.
pub(crate) fn work(visit: &Visit, look: &mut Look<'_>) -> Result<()> {
    go_through(visit, CHECKS, look)
}

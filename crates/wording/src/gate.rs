//! What may be powered, in words.

use diagnosis::{Gate, Gates};

use crate::Words;

/// Says what may be powered, a line each.
#[must_use]
pub fn gates(gates: &Gates) -> Vec<String> {
    vec![
        said(
            "Plug it in, look and listen",
            &gates.look_and_listen,
            "only on a protected outlet whose test button works",
        ),
        said(
            "Trials with start gear, clamp or meter",
            &gates.trials,
            "protected outlet, cover on the pins, unplugged between tries",
        ),
    ]
}

/// What may not be powered, a line each.
#[must_use]
pub fn closed_gates(all: &Gates) -> Vec<String> {
    let each = [&all.look_and_listen, &all.trials];
    let lines = gates(all).into_iter().zip(each);
    lines
        .filter(|(_, gate)| !matches!(gate, Gate::Open))
        .map(|(line, _)| line)
        .collect()
}

fn said(what: &str, gate: &Gate, how: &str) -> String {
    match gate {
        Gate::Open => format!("{what}: it may, {how}."),
        Gate::Closed(reasons) => {
            let reasons: Vec<&str> = reasons.iter().map(|reason| reason.words()).collect();
            format!("{what}: not yet; {}.", reasons.join("; "))
        }
    }
}

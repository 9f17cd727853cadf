//! Marginals against programs that we did not write: `tests/reference/belief.py` reads the
//! exported networks with pyAgrum and pgmpy and stores what they answer. This test exports the
//! same networks again, compares the text, and compares its own answers with theirs.
//!
//! `BLESS=1` writes the exported networks; then run the script.

// What prepares a test may stop it, as the test itself may.
#![allow(clippy::unwrap_used)]

mod support;

use belief::{Evidence, JunctionTree, Network, export_bif};
use serde_json::Value;
use std::path::PathBuf;
use support::textbook::{alarm, chest_clinic, sprinkler};
use support::{Random, assert_close, random_evidence, random_network};

/// Marginals have to agree this well.
const TOLERANCE: f64 = 1e-9;

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../tests/reference/belief")
}

/// Each network with its evidence, the same ones every time.
fn cases() -> Vec<(String, Network, Evidence)> {
    let mut cases = Vec::new();
    let textbooks = [
        (
            "alarm",
            alarm().unwrap(),
            vec![("john_calls", 1), ("mary_calls", 1)],
        ),
        ("sprinkler", sprinkler().unwrap(), vec![("wet", 1)]),
        (
            "chest_clinic",
            chest_clinic().unwrap(),
            vec![("asia", 1), ("dyspnoea", 1)],
        ),
    ];
    for (name, network, seen) in textbooks {
        let mut evidence = Evidence::new();
        for (variable, state) in seen {
            let variable = network.find(variable).unwrap();
            evidence.observe(&network, variable, state).unwrap();
        }
        cases.push((name.to_owned(), network, evidence));
    }
    for seed in 1..=8 {
        let network = random_network(seed, 18, if seed % 2 == 0 { 3 } else { 5 });
        let evidence = random_evidence(&network, &mut Random::new(100 + seed), 8);
        cases.push((format!("random_{seed}"), network, evidence));
    }
    cases
}

#[test]
fn exported_networks_are_the_ones_that_others_have_read() {
    for (name, network, evidence) in cases() {
        let text = export_bif(&name, &network, &evidence).text;
        let file = folder().join(format!("{name}.bif"));
        if std::env::var_os("BLESS").is_some() {
            std::fs::create_dir_all(folder()).unwrap();
            std::fs::write(&file, &text).unwrap();
        }
        let stored = std::fs::read_to_string(&file).unwrap();
        assert!(
            stored == text,
            "{name}: the export has changed; see the top of this file"
        );
    }
}

#[test]
fn marginals_equal_those_of_pyagrum_and_pgmpy() {
    let stored = std::fs::read_to_string(folder().join("expected.json")).unwrap();
    let stored: Value = serde_json::from_str(&stored).unwrap();
    let mut compared = 0;
    for (name, network, evidence) in cases() {
        let exported = export_bif(&name, &network, &evidence);
        let expected = &stored["networks"][&name];
        let tree = JunctionTree::compile(network).unwrap();
        let mut workspace = tree.workspace();
        let posterior = tree.propagate(&evidence, &mut workspace).unwrap();
        for variable in tree.network().variables() {
            let theirs = &expected["marginals"][tree.network().name(variable)];
            let theirs: Vec<f64> = theirs
                .as_array()
                .unwrap()
                .iter()
                .map(|one| one.as_f64().unwrap())
                .collect();
            assert_close(posterior.marginal(variable), &theirs, TOLERANCE);
            compared += 1;
        }
        let ln = expected["ln_evidence"].as_f64().unwrap();
        assert!(
            (posterior.ln_evidence() - exported.ln_scale - ln).abs() < TOLERANCE,
            "{name}"
        );
    }
    assert_eq!(compared, 5 + 4 + 8 + 8 * 18);
}

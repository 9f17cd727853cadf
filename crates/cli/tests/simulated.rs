//! The commands about simulated machines, run as a person or a script would.

// A test is allowed to fall over, and so is what helps it.
#![allow(clippy::unwrap_used)]

use std::process::{Command, Output};

use serde_json::Value;

fn coldcase(arguments: &[&str]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_coldcase"));
    command.args(arguments).output().unwrap()
}

fn text(bytes: &[u8]) -> &str {
    std::str::from_utf8(bytes).unwrap()
}

#[test]
fn evaluating_prints_the_published_figures_and_the_same_ones_again() {
    let run = || coldcase(&["evaluate", "--machines", "4", "--seed", "5", "--json"]);
    let first = run();
    assert_eq!(first.status.code(), Some(0));
    let figures: Value = serde_json::from_slice(&first.stdout).unwrap();
    for share in [
        "right_action",
        "right_first",
        "condemned_sound",
        "calibration_error",
    ] {
        let value = figures[share].as_f64().unwrap();
        assert!((0.0..=1.0).contains(&value), "{share}: {value}");
    }
    assert!(figures["minutes"].as_f64() < figures["checklist_minutes"].as_f64());
    assert_eq!(figures["unsafe_steps"], 0);
    assert_eq!(figures["seed"], 5);
    let machines = |table: &str| -> u64 {
        let rows = figures[table].as_object().unwrap().values();
        rows.map(|row| row["machines"].as_u64().unwrap()).sum()
    };
    assert_eq!(
        machines("by_machine"),
        figures["machines"].as_u64().unwrap()
    );
    assert_eq!(machines("by_meter"), figures["machines"].as_u64().unwrap());
    // So few machines teach nothing.
    assert!(figures["best_possible_action"].is_null());
    assert_eq!(text(&run().stdout), text(&first.stdout));

    let words = coldcase(&["evaluate", "--machines", "4", "--seed", "5"]);
    let words = text(&words.stdout);
    let share = 100.0 * figures["right_action"].as_f64().unwrap();
    assert!(words.contains("seed 5, basic meter"));
    assert!(words.contains(&format!("{share:.1}")), "{words}");
}

#[test]
fn a_simulated_machine_s_job_is_a_job_and_its_truth_is_told() {
    let folder = std::env::temp_dir().join(format!("coldcase-simulated-{}", std::process::id()));
    std::fs::create_dir_all(&folder).unwrap();
    let file = folder.join("job.json");
    let file = file.to_str().unwrap();
    let simulated = coldcase(&["simulate", file, "--seed", "5", "--number", "1"]);
    assert_eq!(simulated.status.code(), Some(0), "{simulated:?}");
    assert!(text(&simulated.stdout).starts_with("truth: "));
    assert_eq!(coldcase(&["check", file]).status.code(), Some(0));
    let assessed = coldcase(&["assess", "--json", file]);
    let assessed: Value = serde_json::from_slice(&assessed.stdout).unwrap();
    assert!(!assessed[0]["suspects"].as_array().unwrap().is_empty());
    assert_eq!(assessed[0]["origin"], "invented");
    assert_eq!(assessed[0]["invented"], true);

    let nowhere = folder.join("no/such/folder/job.json");
    let refused = coldcase(&["simulate", nowhere.to_str().unwrap()]);
    assert_eq!(refused.status.code(), Some(2));
    assert!(text(&refused.stderr).contains("can't be written"));
    std::fs::remove_dir_all(&folder).unwrap();
}

/// Nobody who counts real machines counts those of practice among them.
#[test]
fn a_job_of_practice_is_told_from_one_of_a_real_machine() {
    let folder = std::env::temp_dir().join(format!("coldcase-practice-{}", std::process::id()));
    std::fs::create_dir_all(&folder).unwrap();
    let example = concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo-data/open-ptc.json");
    let example = std::fs::read_to_string(example).unwrap();
    for (origin, is_invented) in [("person", false), ("invented", true), ("practice", true)] {
        let file = folder.join(format!("{origin}.json"));
        let told = format!("\"origin\": \"{origin}\"");
        std::fs::write(&file, example.replace("\"origin\": \"invented\"", &told)).unwrap();
        let assessed = coldcase(&["assess", "--json", file.to_str().unwrap()]);
        let assessed: Value = serde_json::from_slice(&assessed.stdout).unwrap();
        assert_eq!(assessed[0]["origin"], origin);
        assert_eq!(assessed[0]["invented"], is_invented, "{origin}");
    }
    std::fs::remove_dir_all(&folder).unwrap();
}

#[test]
fn every_other_machine_is_measured_with_the_other_meter() {
    let arguments = [
        "evaluate",
        "--machines",
        "4",
        "--seed",
        "5",
        "--both-meters",
    ];
    let words = coldcase(&arguments);
    let words = text(&words.stdout);
    assert!(words.contains("by meter"), "{words}");
    assert!(words.contains("good (2)"), "{words}");
    let json = coldcase(&[&arguments[..], &["--json"]].concat());
    let figures: Value = serde_json::from_slice(&json.stdout).unwrap();
    assert_eq!(figures["meter"], "both");
    assert_eq!(figures["by_meter"]["good"]["machines"], 2);
}

#[test]
fn numbers_that_are_none_are_refused_in_words() {
    for arguments in [
        ["evaluate", "--machines", "many"],
        ["evaluate", "--machines", "-3"],
        ["evaluate", "--seed", "1.5"],
    ] {
        let refused = coldcase(&arguments);
        assert_eq!(refused.status.code(), Some(2));
        assert!(text(&refused.stderr).contains("needs a whole number"));
    }
}

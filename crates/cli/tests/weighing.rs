//! What the built program says of a whole machine, weighed together.

// A test is allowed to fall over, and so is what helps it.
#![allow(clippy::unwrap_used, clippy::panic)]

use std::path::Path;
use std::process::{Command, Output};

use serde_json::Value;

const OPEN_PTC: &str = "demo-data/open-ptc.json";
const LEAK: &str = "demo-data/leak-to-shell.json";

fn coldcase(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_coldcase"))
        .current_dir(Path::new(env!("CARGO_MANIFEST_DIR")).join("../.."))
        .args(arguments)
        .output()
        .unwrap()
}

fn text(arguments: &[&str]) -> String {
    String::from_utf8(coldcase(arguments).stdout).unwrap()
}

fn json(arguments: &[&str]) -> Value {
    let value: Value = serde_json::from_slice(&coldcase(arguments).stdout).unwrap();
    value[0].clone()
}

/// The lines under a heading.
fn section<'a>(text: &'a str, heading: &str) -> Vec<&'a str> {
    let (_, behind) = text.split_once(&format!("\n{heading}\n")).unwrap();
    behind.lines().take_while(|line| !line.is_empty()).collect()
}

#[test]
fn the_likeliest_fault_stands_first_and_nothing_wrong_has_a_row_of_its_own() {
    let said = text(&["assess", OPEN_PTC]);
    let lines = section(&said, "What may be at fault");
    assert!(lines[1].starts_with("- Start device open: nearly certain"));
    assert!(lines[1].contains("Points strongly to it: start device"));
    assert!(lines.last().unwrap().starts_with("- Nothing wrong: hardly"));
}

#[test]
fn what_to_do_is_a_bet_and_what_is_fitted_suits_gas_that_burns() {
    let said = text(&["assess", OPEN_PTC]);
    let lines = section(&said, "What to do");
    assert_eq!(
        lines[0],
        "- Replace the start device; right in over 19 of 20 such cases."
    );
    assert!(lines.iter().any(|line| line.contains("gas that burns")));
}

#[test]
fn a_machine_whose_metal_may_be_live_is_not_to_be_powered_for_any_check() {
    let said = text(&["assess", LEAK]);
    let to_do = section(&said, "What to do");
    assert!(to_do.contains(&"- Don't power it: its metal may be live."));
    let checks = section(&said, "Worth checking next").join("\n");
    assert!(checks.contains("Not now, something above says stop"));
    assert!(!checks.contains("protected outlet, its test button"));
}

#[test]
fn json_gives_suspects_verdict_and_checks_by_their_published_names() {
    let value = json(&["assess", "--json", OPEN_PTC]);
    let first = &value["suspects"][0];
    assert_eq!(first["fault"], "start-device-open");
    assert_eq!(first["part"], "start-device");
    assert_eq!(first["pointing-to"][0]["check"], "start-device");
    assert!(first["probability"].as_f64().unwrap() > first["before"].as_f64().unwrap());
    assert!(value["nothing-wrong"]["fault"].is_null());
    assert_eq!(value["links"].as_array().unwrap().len(), 8);
    assert_eq!(value["verdict"]["best"]["action"], "replace");
    assert_eq!(value["verdict"]["decided"], "nearly-sure");
    assert_eq!(value["verdict"]["hold"][0]["name"], "do-not-fit-start-kit");
    let withheld = value["withheld"].as_array().unwrap();
    let kit = withheld.iter().find(|one| one["check"] == "start-kit");
    assert_eq!(kit.unwrap()["why"][0], "not-with-gas-that-burns");
}

/// The names under a key, of a list of things that have some.
fn names(list: &Value) -> Vec<&str> {
    let list = list.as_array().unwrap().iter();
    list.map(|one| one["name"].as_str().unwrap()).collect()
}

#[test]
fn json_gives_why_no_start_kit_and_what_is_missing_for_one() {
    let value = json(&["assess", "--json", OPEN_PTC]);
    let kit = &value["start-kit"];
    assert_eq!(kit["answer"], "not-this-machine");
    assert_eq!(names(&kit["against"])[0], "gas-burns");
    assert!(kit["curve"].is_null());
    let value = json(&["assess", "--json", "demo-data/leads-not-zeroed.json"]);
    let kit = &value["start-kit"];
    assert_eq!(kit["answer"], "missing");
    assert!(names(&kit["missing"]).contains(&"start-device"));
    assert_eq!(kit["against"].as_array().unwrap().len(), 0);
}

/// The example with a whole relay as its start device, and a gas that doesn't burn.
#[test]
fn json_gives_a_start_kits_curve_with_its_band_and_useful_range() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo-data/open-ptc.json");
    let told = std::fs::read_to_string(path).unwrap();
    let told = told
        .replace("\"r600a\"", "\"r134a\"")
        .replace("\"ptc\"", "\"current-relay\"")
        .replace("\"rattles\"", "\"whole\"");
    let folder = std::env::temp_dir().join(format!("coldcase-kit-{}", std::process::id()));
    std::fs::create_dir_all(&folder).unwrap();
    let file = folder.join("relay.json");
    std::fs::write(&file, told).unwrap();
    let value = json(&["assess", "--json", file.to_str().unwrap()]);
    std::fs::remove_dir_all(&folder).unwrap();
    let kit = &value["start-kit"];
    assert_eq!(kit["answer"], "curve", "{kit}");
    let number = |value: &Value| value.as_f64().unwrap();
    let curve = &kit["curve"];
    let points = curve["points"].as_array().unwrap();
    for point in points {
        let torque: Vec<f64> = point["torque"]
            .as_array()
            .unwrap()
            .iter()
            .map(number)
            .collect();
        assert!(torque.is_sorted(), "{torque:?}");
    }
    let (least, most) = (&points[0]["farads"], &points[points.len() - 1]["farads"]);
    assert!(number(least) < number(&curve["useful-from"][0]));
    assert!(number(most) > number(&curve["useful-to"][2]));
    assert!(number(&curve["useful-from"][1]) < number(&curve["useful-to"][1]));
    assert_eq!(names(&curve["narrower"]), ["current", "volts"]);
    assert!(curve["readings"]["amperes"].is_null());
    assert_eq!(curve["declared-only"], false);
}

#[test]
fn the_networks_are_printed_with_what_was_seen_one_for_each_build() {
    let said = coldcase(&["network", OPEN_PTC]);
    assert_eq!(said.status.code(), Some(0));
    let said = String::from_utf8(said.stdout).unwrap();
    let networks = said.lines().filter(|line| line.starts_with("network "));
    // An upright with a start device of its own: by hand or frost-free, never an inverter.
    let names: Vec<&str> = networks.collect();
    assert!(names.contains(&"network manual_defrost {"), "{names:?}");
    assert!(said.contains("// observed: clue_opening_seen = hums_then_clicks"));
    let weights = said
        .lines()
        .filter_map(|line| line.strip_prefix("// probability of the build: "));
    let sum: f64 = weights.map(|weight| weight.parse::<f64>().unwrap()).sum();
    assert!((sum - 1.0).abs() < 1e-9, "{sum}");
}

#[test]
fn a_file_without_a_job_has_no_networks() {
    let said = coldcase(&["network", "nowhere.json"]);
    assert_eq!(said.status.code(), Some(2));
    assert!(said.stdout.is_empty());
    assert!(String::from_utf8_lossy(&said.stderr).starts_with("nowhere.json: "));
}

//! The built program, run as a person or a script would.

// A test is allowed to fall over, and so is what helps it.
#![allow(clippy::unwrap_used, clippy::panic)]

use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};

use diagnosis::{Model, assess};
use jobfile::{Opened, open, parse_timestamp};
use serde_json::Value;
use wording::{DecimalMark, Locale};

const AT: &str = "2026-12-01T12:00:00+01:00";

fn repository() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

fn coldcase(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_coldcase"))
        .current_dir(repository())
        .args(arguments)
        .stdin(Stdio::null())
        .output()
        .unwrap()
}

fn coldcase_reading(arguments: &[&str], input: &[u8]) -> Output {
    let mut child = Command::new(env!("CARGO_BIN_EXE_coldcase"))
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    child.stdin.take().unwrap().write_all(input).unwrap();
    child.wait_with_output().unwrap()
}

fn text(bytes: &[u8]) -> &str {
    std::str::from_utf8(bytes).unwrap()
}

fn code(output: &Output) -> i32 {
    output.status.code().unwrap()
}

/// The files of a folder, as named from the repository's top.
fn files(folder: &str) -> Vec<String> {
    let mut names: Vec<_> = fs::read_dir(repository().join(folder))
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .filter(|name| name.ends_with(".json"))
        .map(|name| format!("{folder}/{name}"))
        .collect();
    names.sort();
    names
}

/// What the page shows of a job: the same report from the same words.
fn report(file: &str, locale: &Locale) -> String {
    let content = fs::read_to_string(repository().join(file)).unwrap();
    let Opened::Document { document, .. } = open(&content).unwrap() else {
        panic!("{file} is from a newer program");
    };
    let at = parse_timestamp(AT).unwrap();
    let assessment = assess(&Model::default(), document.job(), at);
    wording::report(&assessment, document.job(), locale).text()
}

fn job_saying(complaint: &str) -> String {
    format!(
        r#"{{"type": "coldcase-job", "version": 1, "id": "j", "created": "{AT}",
        "origin": "person", "entries": [{{"id": "a", "at": "{AT}", "answer":
        {{"check": "machine", "item": "complaint", "choice": "{complaint}"}}}}]}}"#
    )
}

#[test]
fn the_text_is_the_report_and_nothing_else() {
    for file in files("demo-data") {
        let said = coldcase(&["assess", "--at", AT, &file]);
        assert_eq!(text(&said.stdout), report(&file, &Locale::default()));
        assert_eq!(text(&said.stderr), "");
        assert!(
            text(&said.stdout).contains("What may be at fault"),
            "{file}"
        );
        let is_live = file.ends_with("leak-to-shell.json");
        assert_eq!(code(&said), i32::from(is_live), "{file}");
    }
}

#[test]
fn a_back_up_is_told_to_be_one_and_what_to_open_it_with() {
    let backup = format!(
        r#"{{"type": "coldcase-backup", "version": 1, "made": "{AT}",
        "jobs": [{{"id": "a", "text": "b"}}]}}"#
    );
    let said = coldcase_reading(&["assess", "-"], backup.as_bytes());
    assert_eq!(code(&said), 2);
    assert!(text(&said.stderr).contains("a back-up of 1 job"));
}

#[test]
fn several_files_each_stand_under_their_name() {
    let examples = files("demo-data");
    let mut arguments = vec!["assess", "--at", AT];
    arguments.extend(examples.iter().map(String::as_str));
    let said = coldcase(&arguments);
    let mut rest = text(&said.stdout);
    for file in &examples {
        let (head, tail) = rest.split_once(&report(file, &Locale::default())).unwrap();
        assert_eq!(head.trim().lines().next(), Some(file.as_str()));
        rest = tail;
    }
    assert_eq!(rest, "");
}

#[test]
fn numbers_are_written_with_a_comma_when_asked() {
    let comma = Locale {
        decimal: DecimalMark::Comma,
        ..Locale::default()
    };
    let file = "demo-data/leads-not-zeroed.json";
    let said = coldcase(&["assess", "--decimal", "comma", "--at", AT, file]);
    assert_eq!(text(&said.stdout), report(file, &comma));
    assert_ne!(report(file, &comma), report(file, &Locale::default()));
}

#[test]
fn standard_input_is_a_file_like_any_other() {
    let file = "demo-data/sound-compressor.json";
    let content = fs::read(repository().join(file)).unwrap();
    let said = coldcase_reading(&["assess", "--at", AT, "-"], &content);
    assert_eq!(text(&said.stdout), report(file, &Locale::default()));
    assert_eq!(code(&said), 0);
}

#[test]
fn a_stop_caution_is_exit_code_1_from_assess_alone() {
    let stop = job_saying("trips-the-outlet");
    let said = coldcase_reading(&["assess", "-"], stop.as_bytes());
    assert_eq!(code(&said), 1);
    assert!(text(&said.stdout).contains("Safety first\n- Stop"));
    assert_eq!(code(&coldcase_reading(&["check", "-"], stop.as_bytes())), 0);
    let other = job_saying("silent");
    assert_eq!(
        code(&coldcase_reading(&["assess", "-"], other.as_bytes())),
        0
    );
}

#[test]
fn what_cannot_be_read_is_exit_code_2_with_file_place_and_mend() {
    let file = "tests/documents/bad/entry-on-30-february.json";
    for command in ["assess", "check"] {
        let said = coldcase(&[command, file]);
        assert_eq!(code(&said), 2);
        assert_eq!(text(&said.stdout), "");
        let error = text(&said.stderr);
        assert!(
            error.starts_with(&format!("{file}: entries[0].at: ")),
            "{error}"
        );
        assert!(error.contains("Mend that place"), "{error}");
    }
    for file in files("tests/documents/bad")
        .iter()
        .chain(&files("tests/documents/newer"))
    {
        let said = coldcase(&["check", file]);
        assert_eq!(code(&said), 2, "{file}");
        let error = text(&said.stderr);
        assert!(error.starts_with(&format!("{file}: ")), "{error}");
        assert_eq!(error.lines().count(), 1, "{error}");
    }
}

#[test]
fn a_file_that_is_not_there_or_is_a_folder_is_told_in_plain_words() {
    let said = coldcase(&["check", "demo-data/nowhere.json", "demo-data"]);
    assert_eq!(code(&said), 2);
    assert_eq!(
        text(&said.stderr),
        "demo-data/nowhere.json: There is no such file. Check its name and its folder.\n\
         demo-data: It is a folder, not a file. Name the files in it.\n"
    );
}

#[test]
fn one_unreadable_file_neither_stops_nor_hides_the_others() {
    let good = "demo-data/sound-compressor.json";
    let said = coldcase(&["assess", "--at", AT, "nowhere.json", good]);
    assert_eq!(code(&said), 2);
    assert!(text(&said.stdout).contains(&report(good, &Locale::default())));
    let checked = coldcase(&["check", "nowhere.json", good]);
    assert_eq!(code(&checked), 2);
    assert!(text(&checked.stdout).starts_with(&format!("{good}: a job with ")));
}

#[test]
fn every_good_document_checks_and_tells_what_it_could_not_read() {
    for file in files("tests/documents/good")
        .iter()
        .chain(&files("demo-data"))
    {
        assert_eq!(code(&coldcase(&["check", file])), 0, "{file}");
    }
    let file = "tests/documents/good/from-a-newer-program.json";
    let said = coldcase(&["check", file]);
    assert_eq!(text(&said.stdout).lines().count(), 8);
    assert!(text(&said.stdout).contains(&format!("{file}: entries[3]: ")));
    let assessed = coldcase(&["assess", file]);
    assert_eq!(text(&assessed.stderr).lines().count(), 7);
}

#[test]
fn json_is_always_a_list_with_an_object_a_file_that_holds_to_the_published_schema() {
    let schema = fs::read_to_string(repository().join("public/assessment.schema.json")).unwrap();
    let schema: Value = serde_json::from_str(&schema).unwrap();
    assert!(jsonschema::meta::is_valid(&schema));
    let validator = jsonschema::draft202012::new(&schema).unwrap();
    let folders = ["demo-data", "tests/documents/good", "tests/documents/bad"];
    for file in folders.into_iter().flat_map(files) {
        let said = coldcase(&["assess", "--json", &file]);
        let value: Value = serde_json::from_slice(&said.stdout).unwrap();
        assert_eq!(value.as_array().unwrap().len(), 1, "{file}");
        assert_eq!(value[0]["file"], file.as_str());
        let errors: Vec<_> = validator
            .iter_errors(&value)
            .map(|error| format!("{}: {error}", error.instance_path()))
            .collect();
        assert!(errors.is_empty(), "{file}: {errors:#?}");
        assert_eq!(value[0].get("error").is_some(), code(&said) == 2, "{file}");
    }
    let damaged = serde_json::json!([{"file": "x", "windings": null}]);
    assert!(!validator.is_valid(&damaged), "the schema takes anything");
}

#[test]
fn json_names_the_pins_the_windings_and_the_explanations() {
    let said = coldcase(&["assess", "--json", "demo-data/sound-compressor.json"]);
    let value: Value = serde_json::from_slice(&said.stdout).unwrap();
    let windings = &value[0]["windings"];
    let labels: Vec<_> = (0..3).map(|pin| &windings["pins"][pin]["label"]).collect();
    assert_eq!(labels, ["start", "common", "run"]);
    let ohms = |name: &str| windings[name]["ohms"].as_f64().unwrap();
    assert!(ohms("run") > 0.0 && ohms("start") > 0.0 && ohms("leads") >= 0.0);
    assert!(windings["run"]["standard-uncertainty"].as_f64().unwrap() > 0.0);
    let explanations = windings["explanations"].as_array().unwrap();
    assert_eq!(explanations[0]["name"], "sound");
    let sum: f64 = explanations
        .iter()
        .map(|explained| explained["probability"].as_f64().unwrap())
        .sum();
    assert!((sum - 1.0).abs() < 1e-9, "{sum}");
    assert!(!value[0]["steps"].as_array().unwrap().is_empty());
    assert!(value[0]["cautions"][0]["level"].is_string());
}

#[test]
fn json_of_numbers_at_the_edge_of_what_a_document_takes_is_still_json_of_that_form() {
    let schema = fs::read_to_string(repository().join("public/assessment.schema.json")).unwrap();
    let validator = jsonschema::draft202012::new(&serde_json::from_str(&schema).unwrap()).unwrap();
    let reading = |item: &str, value: f64, count: f64| {
        format!(
            r#"{{"id": "{item}", "at": "{AT}", "answer": {{"check": "windings", "item": "{item}",
            "reading": {{"typed": "x", "unit": "ohm", "value": {value}, "count": {count},
            "accuracy": {{"percent": 0.0, "counts": 0.0}}}}}}}}"#
        )
    };
    for (one, two, three, count) in [
        (1e30, 1e30, 1e30, 1e30),
        (1e30, -1e30, 1e-300, 1e-300),
        (0.0, 0.0, 0.0, 1e-300),
        (-1.0, -2.0, -3.0, 0.1),
        (4.7, 7.6, 12.0, 1e-300),
    ] {
        let entries = [("pair-1-2", one), ("pair-1-3", two), ("pair-2-3", three)]
            .map(|(item, value)| reading(item, value, count))
            .join(",");
        let job = format!(
            r#"{{"type": "coldcase-job", "version": 1, "id": "j", "created": "{AT}",
            "origin": "person", "entries": [{entries}]}}"#
        );
        let said = coldcase_reading(&["assess", "--json", "-"], job.as_bytes());
        assert_eq!(code(&said), 0, "{}", text(&said.stderr));
        let value: Value = serde_json::from_slice(&said.stdout).unwrap();
        let errors: Vec<_> = validator
            .iter_errors(&value)
            .map(|error| format!("{}: {error}", error.instance_path()))
            .collect();
        assert!(
            errors.is_empty(),
            "{one} {two} {three} {count}: {errors:#?}"
        );
    }
}

#[test]
fn the_same_job_at_the_same_time_gives_the_same_bytes() {
    let arguments = [
        "assess",
        "--json",
        "--at",
        AT,
        "demo-data/leads-not-zeroed.json",
    ];
    assert_eq!(coldcase(&arguments).stdout, coldcase(&arguments).stdout);
}

#[test]
fn help_and_version_are_told_on_standard_output() {
    let help = coldcase(&["--help"]);
    assert_eq!(code(&help), 0);
    assert!(text(&help.stdout).contains("coldcase assess FILE..."));
    let assess = coldcase(&["assess", "--help"]);
    assert!(text(&assess.stdout).contains("public/assessment.schema.json"));
    let version = coldcase(&["--version"]);
    assert_eq!(
        text(&version.stdout),
        concat!("coldcase ", env!("CARGO_PKG_VERSION"), "\n")
    );
}

#[test]
fn a_command_that_cannot_be_read_is_exit_code_2_and_says_what_to_write() {
    for arguments in [
        &[][..],
        &["mend", "x"],
        &["assess"],
        &["assess", "--yaml", "x"],
        &["assess", "--decimal", "dot", "x"],
        &["check", "--json", "x"],
        &["network"],
        &["network", "x", "y"],
    ] {
        let said = coldcase(arguments);
        assert_eq!(code(&said), 2, "{arguments:?}");
        assert_eq!(text(&said.stdout), "", "{arguments:?}");
        assert!(
            text(&said.stderr).starts_with("coldcase: "),
            "{arguments:?}"
        );
    }
}

#[test]
fn a_reader_that_goes_away_is_no_reason_to_fall_over() {
    let mut child = Command::new(env!("CARGO_BIN_EXE_coldcase"))
        .current_dir(repository())
        .args(["assess", "demo-data/sound-compressor.json"])
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    drop(child.stdout.take());
    let ended = child.wait_with_output().unwrap();
    assert_eq!(code(&ended), 0);
    assert_eq!(text(&ended.stderr), "");
}

const MENDED: &str = "crates/record/tests/jobs/mended-freezer.json";

#[test]
fn a_report_is_text_unless_a_page_is_asked_for_and_ends_well_whatever_it_says() {
    let plain = coldcase(&["report", "--at", AT, MENDED]);
    assert_eq!(code(&plain), 0);
    assert!(text(&plain.stdout).contains("Limits of what was tested"));
    assert!(!text(&plain.stdout).contains("corner shop"));
    let page = coldcase(&["report", "--html", "--owner", "--at", AT, MENDED]);
    assert!(text(&page.stdout).starts_with("<!DOCTYPE html>"));
    assert!(text(&page.stdout).contains("corner shop"));
    // A machine that must not be powered is told so, and the record is written all the same.
    let leaks = coldcase(&["report", "--at", AT, "demo-data/leak-to-shell.json"]);
    assert_eq!(code(&leaks), 0);
    assert!(text(&leaks.stdout).contains("Stop: "));
    let missing = coldcase(&["report", "nowhere.json"]);
    assert_eq!(code(&missing), 2);
    assert!(missing.stdout.is_empty() && text(&missing.stderr).contains("nowhere.json"));
}

//! Which of the project's packages may know which, and which outside packages stay outside the core.

use serde_json::Value;

/// What a package may depend on within the project. What tests it and nothing else is left out on purpose.
const ARROWS: &[(&str, &[&str])] = &[
    ("quantity", &[]),
    // Knows no freezers and nothing else of this project.
    ("belief", &[]),
    // Knows no freezers either: temperatures and times of any logger.
    ("logfile", &["quantity"]),
    ("job", &["quantity"]),
    ("measure", &["quantity"]),
    ("simulator", &["quantity"]),
    ("diagnosis", &["belief", "job", "measure", "quantity"]),
    // The one that knows both what is reasoned and what is simulated.
    (
        "practice",
        &["diagnosis", "job", "measure", "quantity", "simulator"],
    ),
    ("jobfile", &["job", "quantity"]),
    // A file that can't be opened is told in words too, and sentences stand in wording alone.
    (
        "wording",
        &[
            "diagnosis",
            "job",
            "jobfile",
            "logfile",
            "measure",
            "quantity",
        ],
    ),
    // What is handed over with a machine: laid out here, its sentences stand in wording.
    (
        "record",
        &["diagnosis", "job", "measure", "quantity", "wording"],
    ),
    (
        "cli",
        &[
            "diagnosis",
            "job",
            "jobfile",
            "measure",
            "practice",
            "quantity",
            "record",
            "simulator",
            "wording",
        ],
    ),
    (
        "app",
        &[
            "diagnosis",
            "job",
            "jobfile",
            "logfile",
            "measure",
            "practice",
            "quantity",
            "record",
            "wording",
        ],
    ),
    ("xtask", &[]),
];

/// Packages that only test: what they know harms nothing.
const TESTING: &[&str] = &["coldcase-tests", "browser-tests"];

/// What reads and writes documents.
const DOCUMENT_PACKAGES: &[&str] = &["serde", "schemars"];
const DOCUMENT_PLACES: &[&str] = &["jobfile", "cli", "app", "xtask"];

/// What touches the browser.
const BROWSER_PACKAGES: &[&str] = &["web-sys", "js-sys", "gloo", "leptos", "wasm-bindgen"];
const BROWSER_PLACES: &[&str] = &["app"];

/// Returns every dependency that points the wrong way.
pub(super) fn check(metadata: &Value) -> Vec<String> {
    let packages = metadata["packages"].as_array().into_iter().flatten();
    packages
        .filter(|package| package["source"].is_null())
        .flat_map(check_package)
        .collect()
}

fn check_package(package: &Value) -> Vec<String> {
    let name = package["name"].as_str().unwrap_or_default();
    if TESTING.contains(&name) {
        return Vec::new();
    }
    let Some((_, allowed)) = ARROWS.iter().find(|(from, _)| *from == name) else {
        return vec![format!(
            "{name}: has no line in the table of allowed dependencies"
        )];
    };
    let dependencies = package["dependencies"].as_array().into_iter().flatten();
    let mut problems = Vec::new();
    for dependency in dependencies.filter(|one| one["kind"] != "dev") {
        let other = dependency["name"].as_str().unwrap_or_default();
        if dependency["path"].is_string() && !allowed.contains(&other) {
            problems.push(format!("{name}: must not depend on {other}"));
        }
        if belongs_to(other, DOCUMENT_PACKAGES) && !DOCUMENT_PLACES.contains(&name) {
            problems.push(format!(
                "{name}: must not know how documents are written ({other})"
            ));
        }
        if belongs_to(other, BROWSER_PACKAGES) && !BROWSER_PLACES.contains(&name) {
            problems.push(format!("{name}: must not know the browser ({other})"));
        }
    }
    problems
}

/// Whether the package is one of the families: `serde` takes in `serde_json`, `gloo` takes in `gloo-storage`.
fn belongs_to(package: &str, families: &[&str]) -> bool {
    families.iter().any(|family| {
        package
            .strip_prefix(family)
            .is_some_and(|rest| rest.is_empty() || rest.starts_with(['-', '_']))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn problems(name: &str, dependency: Value) -> Vec<String> {
        check(&json!({"packages": [{"name": name, "source": null, "dependencies": [dependency]}]}))
    }

    #[test]
    fn arrows_point_one_way() {
        let own = |name: &str| json!({"name": name, "kind": null, "path": "x"});
        assert!(problems("measure", own("quantity")).is_empty());
        assert_eq!(
            problems("quantity", own("measure")),
            ["quantity: must not depend on measure"]
        );
        assert_eq!(
            problems("xtask", own("quantity")),
            ["xtask: must not depend on quantity"]
        );
    }

    #[test]
    fn a_package_without_a_line_in_the_table_is_reported() {
        assert_eq!(
            problems("extra", json!({"name": "libm", "kind": null})).len(),
            1
        );
    }

    #[test]
    fn the_core_knows_neither_documents_nor_the_browser_except_in_its_tests() {
        assert_eq!(
            problems("job", json!({"name": "serde_json", "kind": null})).len(),
            1
        );
        assert_eq!(
            problems("wording", json!({"name": "web-sys", "kind": null})).len(),
            1
        );
        assert!(problems("job", json!({"name": "serde_json", "kind": "dev"})).is_empty());
        assert!(problems("jobfile", json!({"name": "serde", "kind": null})).is_empty());
    }

    #[test]
    fn a_name_that_merely_begins_alike_is_another_family() {
        assert!(!belongs_to("serdeless", &["serde"]));
        assert!(belongs_to("gloo-storage", &["gloo"]));
    }
}

//! The steps themselves, in the order in which they run: quick ones first.

use std::fs;
use std::path::PathBuf;
use std::process::Command;

use anyhow::{Context as _, Result, ensure};
use serde_json::{Value, json};

use super::{Context, Need, Step, outside};
use crate::counts::Counts;
use crate::process;
use crate::{page, size, tidy};

/// The step that builds the release page.
pub(super) const PAGE: &str = "page";

const WASM: &str = "--target=wasm32-unknown-unknown";

pub(super) const ALL: &[Step] = &[
    step("format", &[Need::Lints], |context| {
        quiet_cargo(context, &["fmt", "--all", "--check"])
    }),
    step("tidy", &[], |context| {
        Ok(Counts::one(tidy::check(&context.project)?))
    }),
    step("lints-host", &[Need::Lints], |context| {
        quiet_cargo(
            context,
            &[
                "clippy",
                "--workspace",
                "--all-targets",
                "--",
                "-D",
                "warnings",
            ],
        )
    }),
    step("lints-wasm", &[Need::Lints], lints_wasm),
    step("docs", &[], docs),
    step("host", &[], |context| {
        counted_cargo(
            context,
            &[
                "test",
                "--workspace",
                "--exclude",
                "app",
                "--exclude",
                "browser-tests",
                "--no-fail-fast",
            ],
        )
    }),
    step("host-app", &[], |context| {
        counted_cargo(context, &["test", "--package", "app", "--no-fail-fast"])
    }),
    step("reference", &[Need::References], outside::references),
    step("networks", &[Need::References], outside::networks),
    step(
        "wasm-chromium",
        &[Need::PageTools, Need::Browsers],
        |context| wasm_tests(context, Engine::Chromium),
    ),
    step(
        "wasm-webkit",
        &[Need::PageTools, Need::Browsers],
        |context| wasm_tests(context, Engine::WebKit),
    ),
    step(PAGE, &[Need::PageTools], |context| {
        page::build(&context.project, &context.tools).map(|_| Counts::one(true))
    }),
    page_step("size", |context| {
        size::check(&context.project.dist()).map(|()| Counts::one(true))
    }),
    page_step("journeys-chromium", |context| {
        journeys(context, Engine::Chromium)
    }),
    page_step("journeys-webkit", |context| {
        journeys(context, Engine::WebKit)
    }),
];

#[derive(Clone, Copy)]
enum Engine {
    Chromium,
    WebKit,
}

const fn step(
    name: &'static str,
    needs: &'static [Need],
    run: fn(&Context) -> Result<Counts>,
) -> Step {
    Step {
        name,
        needs,
        uses_page: false,
        run,
    }
}

const fn page_step(name: &'static str, run: fn(&Context) -> Result<Counts>) -> Step {
    Step {
        name,
        needs: &[Need::PageTools, Need::Browsers],
        uses_page: true,
        run,
    }
}

/// A command that is one test by itself.
fn quiet_cargo(context: &Context, arguments: &[&str]) -> Result<Counts> {
    process::run(&mut context.project.cargo(arguments)).map(|()| Counts::one(true))
}

/// A command that runs tests and says how many held.
fn counted_cargo(context: &Context, arguments: &[&str]) -> Result<Counts> {
    counted(&mut context.project.cargo(arguments))
}

fn counted(command: &mut Command) -> Result<Counts> {
    let captured = process::run_and_capture(command)?;
    let counts = Counts::read(&captured.text, captured.success);
    ensure!(counts != Counts::default(), "no test ran");
    Ok(counts)
}

/// The app and, through it, every crate that goes into the page.
fn lints_wasm(context: &Context) -> Result<Counts> {
    let mut arguments = vec!["clippy".to_owned(), WASM.to_owned()];
    arguments.extend(
        packages_in_page(&context.project.metadata()?)
            .into_iter()
            .map(|name| format!("--package={name}")),
    );
    arguments.extend(["--", "-D", "warnings"].map(str::to_owned));
    quiet_cargo(
        context,
        &arguments.iter().map(String::as_str).collect::<Vec<_>>(),
    )
}

/// The libraries of the project, without their dependencies.
fn docs(context: &Context) -> Result<Counts> {
    let mut cargo = context.project.cargo(&[
        "doc",
        "--no-deps",
        "--workspace",
        "--lib",
        "--document-private-items",
    ]);
    cargo.env("RUSTDOCFLAGS", "-D warnings");
    process::run(&mut cargo).map(|()| Counts::one(true))
}

/// Tests that run as wasm inside a browser: those of every package that asks for wasm-bindgen's harness.
fn wasm_tests(context: &Context, engine: Engine) -> Result<Counts> {
    let metadata = context.project.metadata()?;
    let packages = packages_with_wasm_tests(&metadata);
    ensure!(!packages.is_empty(), "no package has tests for the browser");
    let target = metadata["target_directory"]
        .as_str()
        .context("cargo names no target folder")?;
    let settings = PathBuf::from(target).join("webdriver.json");
    fs::write(&settings, capabilities(engine).to_string())?;

    let mut command = in_display(context, engine, "cargo");
    // `--tests` leaves documentation examples out: they have run on the host.
    command.args(["test", WASM, "--tests", "--no-fail-fast"]);
    command.args(packages.iter().map(|name| format!("--package={name}")));
    command
        .env("PATH", context.tools.search_path()?)
        .env(
            "CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUNNER",
            "wasm-bindgen-test-runner",
        )
        .env("WASM_BINDGEN_TEST_WEBDRIVER_JSON", &settings);
    let (variable, driver) = match engine {
        Engine::Chromium => ("CHROMEDRIVER", "chromedriver"),
        Engine::WebKit => ("SAFARIDRIVER", "WebKitWebDriver"),
    };
    let driver = process::find(driver, &context.tools.search_path()?)
        .context("the browser's driver is missing")?;
    counted(command.env(variable, driver))
}

/// Whole journeys through the release page in a real browser.
fn journeys(context: &Context, engine: Engine) -> Result<Counts> {
    let artifacts = context.project.root().join("tests/browser/artifacts");
    let mut command = in_display(context, engine, "cargo");
    let name = match engine {
        Engine::Chromium => "chromium",
        Engine::WebKit => "webkit",
    };
    command.args([
        "run",
        "--quiet",
        "--package",
        "browser-tests",
        "--",
        "--engine",
        name,
        "--dist",
    ]);
    command
        .arg(context.project.dist())
        .arg("--axe")
        .arg(context.tools.axe())
        .arg("--artifacts")
        .arg(artifacts);
    counted(command.env("PATH", context.tools.search_path()?))
}

/// Chromium runs without a display; WebKit is given a virtual one.
fn in_display(context: &Context, engine: Engine, program: &str) -> Command {
    let mut command = match engine {
        Engine::Chromium => Command::new(program),
        Engine::WebKit => {
            let mut command = Command::new("xvfb-run");
            command.args(["--auto-servernum", program]);
            command
        }
    };
    command.current_dir(context.project.root());
    command
}

/// What the browser is asked for when it is started for the wasm tests.
fn capabilities(engine: Engine) -> Value {
    match engine {
        Engine::Chromium => json!({
            "goog:chromeOptions": {
                "args": ["--headless", "--no-sandbox", "--disable-gpu", "--disable-background-networking",
                         "--disable-component-update", "--disable-quic", "--no-first-run"]
            }
        }),
        Engine::WebKit => json!({}),
    }
}

/// The app and those of our packages that it depends on, directly or not.
fn packages_in_page(metadata: &Value) -> Vec<String> {
    let mut found = vec!["app".to_owned()];
    let mut next = 0;
    while let Some(name) = found.get(next) {
        let package = packages(metadata).find(|package| package["name"] == name.as_str());
        let dependencies = package
            .and_then(|package| package["dependencies"].as_array())
            .into_iter()
            .flatten();
        for dependency in
            dependencies.filter(|one| one["kind"].is_null() && one["path"].is_string())
        {
            let name = dependency["name"].as_str().unwrap_or_default();
            if !found.iter().any(|known| known == name) {
                found.push(name.to_owned());
            }
        }
        next += 1;
    }
    found
}

fn packages_with_wasm_tests(metadata: &Value) -> Vec<String> {
    packages(metadata)
        .filter(|package| package["source"].is_null())
        .filter(|package| {
            let mut dependencies = package["dependencies"].as_array().into_iter().flatten();
            dependencies.any(|one| one["name"] == "wasm-bindgen-test")
        })
        .filter_map(|package| package["name"].as_str().map(str::to_owned))
        .collect()
}

fn packages(metadata: &Value) -> impl Iterator<Item = &Value> {
    metadata["packages"].as_array().into_iter().flatten()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_page_takes_in_what_the_app_reaches_and_no_test_only_package() {
        let metadata = json!({"packages": [
            {"name": "app", "dependencies": [
                {"name": "wording", "kind": null, "path": "crates/wording"},
                {"name": "leptos", "kind": null},
                {"name": "oracle", "kind": "dev", "path": "crates/oracle"}]},
            {"name": "wording", "dependencies": [{"name": "quantity", "kind": null, "path": "crates/quantity"}]},
        ]});
        assert_eq!(packages_in_page(&metadata), ["app", "wording", "quantity"]);
    }

    #[test]
    fn only_our_own_packages_with_the_browser_harness_are_tested_in_a_browser() {
        let harness = json!([{"name": "wasm-bindgen-test", "kind": "dev"}]);
        let metadata = json!({"packages": [
            {"name": "app", "source": null, "dependencies": harness},
            {"name": "job", "source": null, "dependencies": []},
            {"name": "js-sys", "source": "registry", "dependencies": harness},
        ]});
        assert_eq!(packages_with_wasm_tests(&metadata), ["app"]);
    }
}

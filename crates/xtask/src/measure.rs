//! The figures that the README gives: each is printed by one of these programs.

use std::ffi::OsStr;
use std::path::Path;

use anyhow::{Result, bail};

use crate::page;
use crate::process;
use crate::project::Project;
use crate::test::outside;
use crate::tools::Toolbox;

type Measure = fn(&Project, &Toolbox) -> Result<()>;

/// What is measured, by topic.
const TOPICS: &[(&str, &str, Measure)] = &[
    (
        "windings",
        "how often the answer is right on random motors, and how long weighing takes",
        |project, _| {
            example(project, "coldcase-tests", "motors", &[])?;
            example(project, "coldcase-tests", "speed", &[])
        },
    ),
    (
        "inference",
        "how long weighing a whole machine takes, against other programs",
        inference,
    ),
    (
        "policies",
        "what looking and acting cost against the best policy",
        |project, _| example(project, "coldcase-tests", "policies", &[]),
    ),
    (
        "minutes",
        "minutes of work until enough is known, over the worked cases",
        |project, _| example(project, "coldcase-tests", "minutes", &[]),
    ),
    (
        "starts",
        "how well tries to start bound the rest that a compressor needs",
        |project, _| {
            let test = [
                "test",
                "--profile",
                "host",
                "--quiet",
                "--package",
                "measure",
            ];
            let which = ["--test", "start_trials_coverage", "--", "--nocapture"];
            process::run(&mut project.cargo(&[&test[..], &which].concat()))
        },
    ),
    (
        "cooling",
        "how well a cool-down is judged from its first hours, on simulated cabinets",
        |project, _| example(project, "practice", "cooling", &[]),
    ),
    (
        "simulator",
        "how long a start and a day of a simulated machine take",
        |project, _| {
            example(project, "simulator", "start_time", &[])?;
            example(project, "simulator", "day_time", &[])
        },
    ),
    (
        "logs",
        "how long reading a logger's file takes, against a plain pass over its cells",
        |project, _| example(project, "logfile", "read_time", &[]),
    ),
    (
        "evaluation",
        "how the app's way of working fares on simulated machines",
        |project, _| {
            let run = [
                "run",
                "--profile",
                "host",
                "--quiet",
                "--package",
                "cli",
                "--",
            ];
            let evaluate = ["evaluate", "--machines", "2000", "--seed", "1"];
            process::run(&mut project.cargo(&[&run[..], &evaluate].concat()))
        },
    ),
    ("browser", "how long the page takes", browser),
];

/// Runs every program that measures, or those of the named topics, and passes on what they print.
pub(crate) fn run(project: &Project, tools: &Toolbox, names: &[String]) -> Result<()> {
    let known = |name: &String| TOPICS.iter().any(|(topic, ..)| topic == name);
    if let Some(unknown) = names.iter().find(|name| !known(name)) {
        let topics: Vec<&str> = TOPICS.iter().map(|(topic, ..)| *topic).collect();
        bail!(
            "there is nothing to measure called {unknown:?}. There are: {}",
            topics.join(", ")
        );
    }
    for (topic, what, measure) in TOPICS {
        if names.is_empty() || names.iter().any(|name| name == topic) {
            println!("\n== {topic}: {what}");
            measure(project, tools)?;
        }
    }
    Ok(())
}

/// Our times on evidence that pyAgrum and pgmpy are then timed on, in one run.
fn inference(project: &Project, tools: &Toolbox) -> Result<()> {
    tools.set_up_for_references(&outside::requirements(project))?;
    let folder = project.target()?.join("times");
    example(
        project,
        "coldcase-tests",
        "inference",
        &[folder.as_os_str()],
    )?;
    let mut python = outside::python(project, tools, Path::new("networks/time.py"));
    process::run(python.arg(folder))
}

fn example(project: &Project, package: &str, name: &str, arguments: &[&OsStr]) -> Result<()> {
    let mut cargo = project.cargo(&[
        "run",
        "--profile",
        "host",
        "--quiet",
        "--package",
        package,
        "--example",
        name,
        "--",
    ]);
    process::run(cargo.args(arguments))
}

fn browser(project: &Project, tools: &Toolbox) -> Result<()> {
    tools.set_up_for_page()?;
    tools.set_up_for_browsers()?;
    let dist = page::build(project, tools)?;
    let mut browser = project.cargo(&[
        "run",
        "--quiet",
        "--package",
        "browser-tests",
        "--",
        "--measure",
        "--dist",
    ]);
    process::run(browser.arg(dist).env("PATH", tools.search_path()?))
}

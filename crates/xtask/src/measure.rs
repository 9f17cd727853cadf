//! The figures that the README gives: each is printed by one of these programs.

use anyhow::Result;

use crate::page;
use crate::process;
use crate::project::Project;
use crate::tools::Toolbox;

/// Runs every program that measures, and passes on what it prints.
pub(crate) fn run(project: &Project, tools: &Toolbox) -> Result<()> {
    println!("\n== windings: how often the answer is right, on random motors");
    example(project, "motors")?;
    println!("\n== windings: how long weighing three readings takes");
    example(project, "speed")?;

    tools.set_up_for_page()?;
    tools.set_up_for_browsers()?;
    let dist = page::build(project, tools)?;
    println!("\n== browser: how long the page takes");
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

fn example(project: &Project, name: &str) -> Result<()> {
    process::run(&mut project.cargo(&[
        "run",
        "--release",
        "--quiet",
        "--package",
        "coldcase-tests",
        "--example",
        name,
    ]))
}

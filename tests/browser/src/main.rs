//! Whole journeys through the release page, in real browser engines.
//!
//! Answers: does the built page do, from the first tap to the file, what it promises?
//!
//! Must never know: how the page is made. It depends on none of the other crates, and finds things by the names that a
//! person or a screen reader finds them by.

mod bench;
mod engine;
mod journeys;
mod keyboard;
mod measure;
mod powered;
mod screens;

mod server;
mod stage;
mod steps;

mod visit;
mod webdriver;

use std::path::PathBuf;
use std::process::ExitCode;

use anyhow::{Context, Result, bail};
use lexopt::prelude::*;

use crate::engine::Engine;
use crate::stage::{Given, Programs};

const USAGE: &str = "\
usage: browser-tests --engine chromium|webkit --dist FOLDER --axe FILE
                     [--artifacts FOLDER] [--only NAME] [--screenshots]
       browser-tests --measure --dist FOLDER [--only NAME]

  --engine       the browser to go through the journeys with; webkit wants a display: xvfb-run -a …
  --dist         the release page
  --axe          axe-core, as a script that runs in a page
  --artifacts    where a failed journey leaves a picture and the page's source
  --only         only journeys, or figures, whose name holds this; can be given several times
  --screenshots  also take the pictures that the README shows
  --measure      print how long the page takes, with a processor slowed four times";

/// What the command line asks for.
#[derive(Default)]
struct Wanted {
    engine: Option<Engine>,
    dist: Option<PathBuf>,
    artifacts: Option<PathBuf>,
    axe: Option<PathBuf>,
    only: Vec<String>,
    screenshots: bool,
    measure: bool,
}

fn main() -> ExitCode {
    match run() {
        Ok(true) => ExitCode::SUCCESS,
        Ok(false) => ExitCode::FAILURE,
        Err(problem) => {
            eprintln!("{problem:#}");
            ExitCode::from(2)
        }
    }
}

fn run() -> Result<bool> {
    let wanted = read_command_line()?;
    let dist = wanted.dist.context(USAGE)?;
    let dist = dist
        .canonicalize()
        .with_context(|| format!("{} is not there: build the page first", dist.display()))?;
    let given = Given {
        dist,
        artifacts: wanted
            .artifacts
            .unwrap_or_else(|| PathBuf::from("tests/browser/artifacts")),
        axe: wanted.axe,
        programs: Programs::build()?,
    };
    if wanted.measure {
        return measure::run(&given, &wanted.only);
    }
    let engine = wanted.engine.context(USAGE)?;
    let mut chosen = journeys::chosen(engine, &wanted.only)?;
    if wanted.screenshots {
        chosen.push(journeys::README_PICTURES);
    }
    journeys::run(&chosen, engine, &given)
}

fn read_command_line() -> Result<Wanted> {
    let mut wanted = Wanted::default();
    let mut parser = lexopt::Parser::from_env();
    while let Some(argument) = parser.next()? {
        match argument {
            Long("engine") => wanted.engine = Some(parser.value()?.parse()?),
            Long("dist") => wanted.dist = Some(parser.value()?.into()),
            Long("artifacts") => wanted.artifacts = Some(parser.value()?.into()),
            Long("axe") => wanted.axe = Some(parser.value()?.into()),
            Long("only") => wanted.only.push(parser.value()?.string()?),
            Long("screenshots") => wanted.screenshots = true,
            Long("measure") => wanted.measure = true,
            Long("help") => bail!(USAGE),
            _ => return Err(argument.unexpected().into()),
        }
    }
    Ok(wanted)
}

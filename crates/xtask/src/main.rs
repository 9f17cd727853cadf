//! The project's own tasks: set-up, page, tests, budgets. `cargo xtask help` lists them.
//!
//! Depends on none of the project's crates, so that a broken core can still be tested.

mod browser;
mod counts;
mod measure;
mod page;
mod parts;
mod planted;
mod process;
mod project;
mod server;
mod size;
mod stage;
mod test;
mod tidy;
mod tools;

use std::path::PathBuf;
use std::process::ExitCode;

use anyhow::{Context, Result, bail, ensure};
use lexopt::{Arg, Parser, ValueExt};

use page::Serving;
use project::Project;
use server::Site;
use tools::Toolbox;

const HELP: &str = "\
cargo xtask TASK

  serve [--dev] [--port N] [--prefix /sub/]
                 set up what is missing, build the release page and serve it;
                 --dev builds it again on each change
  serve-folder FOLDER [--port N] [--prefix /sub/]
                 serve a folder as it is and print the port, until the standard input ends
  build          set up what is missing and build the release page
  test [STEP…]   set up what is missing and run all tests, or the named steps;
                 --list names them
  size           what a browser requests up to the first usable screen, and the budget for it
  measure [TOPIC…]
                 the figures of the README: how often right, how many milliseconds
  tidy           the rules of the house: arrows, file lengths, licences, leftovers
  planted        plant known mistakes one by one and see that the tests catch them
";

fn main() -> ExitCode {
    match run(Parser::from_env()) {
        Ok(true) => ExitCode::SUCCESS,
        // What failed has been said by the task itself.
        Ok(false) => ExitCode::FAILURE,
        Err(problem) => {
            eprintln!("\nStopped: {problem:#}");
            ExitCode::FAILURE
        }
    }
}

/// Returns whether all that the task checks holds.
fn run(mut arguments: Parser) -> Result<bool> {
    let task = match arguments.next()? {
        Some(Arg::Value(task)) => task.string()?,
        _ => "help".to_owned(),
    };
    match task.as_str() {
        "serve" => return serve(arguments).map(|()| true),
        "serve-folder" => return serve_folder(arguments).map(|()| true),
        "test" => return test(arguments),
        "measure" => return measure(arguments).map(|()| true),
        _ => nothing_more(arguments)?,
    }
    match task.as_str() {
        "build" => build().map(|_| true),
        "stage" => stage::run().map(|()| true),
        "size" => size().map(|()| true),
        "tidy" => tidy::check(&Project::find()?),
        "planted" => planted::run(&Project::find()?),
        "help" => {
            print!("{HELP}");
            Ok(true)
        }
        other => bail!("there is no task {other:?}\n\n{HELP}"),
    }
}

fn serve(mut arguments: Parser) -> Result<()> {
    let mut serving = Serving {
        while_developing: false,
        port: None,
        prefix: "/".to_owned(),
    };
    while let Some(argument) = arguments.next()? {
        match argument {
            Arg::Long("dev") => serving.while_developing = true,
            Arg::Long("port") => {
                serving.port = Some(
                    arguments
                        .value()?
                        .parse()
                        .context("--port takes a number")?,
                )
            }
            Arg::Long("prefix") => serving.prefix = arguments.value()?.string()?,
            other => return Err(other.unexpected().into()),
        }
    }
    let prefix = &serving.prefix;
    ensure!(
        prefix.starts_with('/') && prefix.ends_with('/'),
        "--prefix starts and ends with a slash, as in /sub/"
    );
    let tools = Toolbox::open()?;
    tools.set_up_for_page()?;
    page::serve(&Project::find()?, &tools, serving)
}

fn serve_folder(mut arguments: Parser) -> Result<()> {
    let mut folder = None;
    let mut prefix = "/".to_owned();
    let mut port = 0;
    while let Some(argument) = arguments.next()? {
        match argument {
            Arg::Long("port") => port = arguments.value()?.parse()?,
            Arg::Long("prefix") => prefix = arguments.value()?.string()?,
            Arg::Value(value) => folder = Some(PathBuf::from(value)),
            other => return Err(other.unexpected().into()),
        }
    }
    let folder = folder.context("name the folder to be served")?;
    server::serve_until_input_ends(Site { folder, prefix }, port)
}

fn test(mut arguments: Parser) -> Result<bool> {
    let mut names = Vec::new();
    while let Some(argument) = arguments.next()? {
        match argument {
            Arg::Long("list") => {
                println!("{}", test::names().join("\n"));
                return Ok(true);
            }
            Arg::Value(name) => names.push(name.string()?),
            other => return Err(other.unexpected().into()),
        }
    }
    test::run(Project::find()?, &names)
}

fn measure(mut arguments: Parser) -> Result<()> {
    let mut names = Vec::new();
    while let Some(argument) = arguments.next()? {
        match argument {
            Arg::Value(name) => names.push(name.string()?),
            other => return Err(other.unexpected().into()),
        }
    }
    measure::run(&Project::find()?, &Toolbox::open()?, &names)
}

fn build() -> Result<PathBuf> {
    let tools = Toolbox::open()?;
    tools.set_up_for_page()?;
    let folder = page::build(&Project::find()?, &tools)?;
    println!("The page lies in {}", folder.display());
    Ok(folder)
}

fn size() -> Result<()> {
    Toolbox::open()?.set_up_for_browsers()?;
    size::check(&build()?)
}

fn nothing_more(mut arguments: Parser) -> Result<()> {
    match arguments.next()? {
        None => Ok(()),
        Some(argument) => Err(argument.unexpected().into()),
    }
}

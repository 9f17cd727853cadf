//! The project's own tasks: set-up, page, tests, budgets. `cargo xtask help` lists them.
//!
//! Depends on none of the project's crates, so that a broken core can still be tested.

mod page;
mod process;
mod project;
mod server;
mod stage;
mod tools;

use std::process::ExitCode;

use anyhow::{Context, Result, bail, ensure};
use lexopt::{Arg, Parser, ValueExt};

use page::Serving;
use project::Project;
use tools::Toolbox;

const HELP: &str = "\
cargo xtask TASK

  serve [--dev] [--port N] [--prefix /sub/]
                 set up what is missing, build the release page and serve it;
                 --dev builds it again on each change
  build          set up what is missing and build the release page
";

fn main() -> ExitCode {
    match run(Parser::from_env()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(problem) => {
            eprintln!("\nStopped: {problem:#}");
            ExitCode::FAILURE
        }
    }
}

fn run(mut arguments: Parser) -> Result<()> {
    let task = match arguments.next()? {
        Some(Arg::Value(task)) => task.string()?,
        _ => "help".to_owned(),
    };
    match task.as_str() {
        "serve" => serve(arguments),
        "build" => nothing_more(arguments).and_then(|()| build()),
        "stage" => stage::run(),
        "help" => {
            print!("{HELP}");
            Ok(())
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

fn build() -> Result<()> {
    let tools = Toolbox::open()?;
    tools.set_up_for_page()?;
    let folder = page::build(&Project::find()?, &tools)?;
    println!("The page lies in {}", folder.display());
    Ok(())
}

fn nothing_more(mut arguments: Parser) -> Result<()> {
    match arguments.next()? {
        None => Ok(()),
        Some(argument) => Err(argument.unexpected().into()),
    }
}

//! `coldcase`: reads job files on the command line and says what the page would say.
//!
//! Answers: what do these jobs show, in words or as JSON, in which networks are they weighed, and
//! are these files jobs at all? And how does this way of working fare on simulated machines?
//!
//! Must never know: how a conclusion is reached or a job is written; it joins the crates that
//! do, and adds the clock, the files and the exit code. It changes no file but the one that
//! `simulate` is told to write.

#![forbid(unsafe_code)]

mod arguments;
mod assess;
mod check;
mod evaluate;
mod help;
mod input;
mod network;
mod output;
mod report;
mod simulate;
mod trial;

use std::io::{self, Write};
use std::process::ExitCode;

use arguments::Command;

/// How it went, in the order in which one outweighs another.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Outcome {
    /// Everything asked for was done.
    Done = 0,
    /// A machine must not be powered.
    Stop = 1,
    /// A file, or the command itself, could not be read.
    Unreadable = 2,
}

/// What is printed where, and how it went.
struct Printed {
    output: String,
    errors: String,
    outcome: Outcome,
}

fn main() -> ExitCode {
    let printed = match arguments::parse(lexopt::Parser::from_env()) {
        Ok(command) => run(command),
        Err(error) => Printed {
            output: String::new(),
            errors: format!("coldcase: {error}\n"),
            outcome: Outcome::Unreadable,
        },
    };
    // Standard output may be a closed pipe, as behind `head`: then nobody wants the rest.
    let _ = io::stdout().write_all(printed.output.as_bytes());
    let _ = io::stderr().write_all(printed.errors.as_bytes());
    ExitCode::from(printed.outcome as u8)
}

fn run(command: Command) -> Printed {
    let said = |output: String| Printed {
        output,
        errors: String::new(),
        outcome: Outcome::Done,
    };
    match command {
        Command::Help(topic) => said(help::text(topic).to_owned()),
        Command::Version => said(format!("coldcase {}\n", env!("CARGO_PKG_VERSION"))),
        Command::Assess(request) => assess::run(&request),
        Command::Report(request) => report::run(&request),
        Command::Check { files } => check::run(&files),
        Command::Simulate { trial, file } => simulate::run(&trial, &file),
        Command::Evaluate(trial) => evaluate::run(&trial),
        Command::Network { file, at } => network::run(&file, at.unwrap_or_else(assess::clock)),
    }
}

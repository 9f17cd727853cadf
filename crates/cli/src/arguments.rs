//! What was asked for.

use std::ffi::OsString;
use std::fmt;

use job::Moment;
use jobfile::parse_timestamp;
use lexopt::{Arg, Parser};
use measure::MeterKind;
use wording::{DecimalMark, Locale};

use crate::help::Topic;
use crate::trial::Trial;

/// What was asked for.
#[derive(Debug, PartialEq, Eq)]
pub(crate) enum Command {
    Help(Topic),
    Version,
    Assess(Request),
    Report(ReportRequest),
    Check {
        files: Vec<OsString>,
    },
    /// The networks of one job, as of when; none for now.
    Network {
        file: OsString,
        at: Option<Moment>,
    },
    /// A simulated machine's job into a file.
    Simulate {
        trial: Trial,
        file: OsString,
    },
    /// Many simulated machines.
    Evaluate(Trial),
}

/// What to assess, and how to say it.
#[derive(Debug, Default, PartialEq, Eq)]
pub(crate) struct Request {
    pub(crate) files: Vec<OsString>,
    pub(crate) json: bool,
    pub(crate) locale: Locale,
    /// As of when; none for now.
    pub(crate) at: Option<Moment>,
}

/// Of which job to write the record, for whom, and how.
#[derive(Debug, Default, PartialEq, Eq)]
pub(crate) struct ReportRequest {
    pub(crate) file: OsString,
    pub(crate) html: bool,
    pub(crate) owner: bool,
    pub(crate) locale: Locale,
    /// As of when; none for now.
    pub(crate) at: Option<Moment>,
}

/// Why the command can't be read.
#[derive(Debug, PartialEq, Eq)]
pub(crate) enum ArgumentError {
    NoCommand,
    UnknownCommand(String),
    UnknownOption(String),
    NoFile(&'static str),
    SeveralFiles,
    MissingValue(String),
    UnexpectedValue(String),
    DecimalMark(String),
    Time(String),
    Number(String, u64),
    Meter(String),
}

impl fmt::Display for ArgumentError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let help = "See `coldcase --help`.";
        match self {
            Self::NoCommand => write!(f, "say what to do: {COMMANDS}. {help}"),
            Self::UnknownCommand(found) => {
                write!(f, "there is no command “{found}”; say {COMMANDS}. {help}")
            }
            Self::UnknownOption(found) => write!(f, "there is no option {found} here. {help}"),
            Self::NoFile(command) => {
                write!(
                    f,
                    "no file is named. Say `coldcase {command} FILE`, or - for standard input."
                )
            }
            Self::SeveralFiles => write!(f, "name one file only: this is about one job."),
            Self::MissingValue(option) => write!(f, "{option} needs a value behind it. {help}"),
            Self::UnexpectedValue(option) => write!(f, "{option} takes no value. {help}"),
            Self::DecimalMark(found) => {
                write!(
                    f,
                    "“{found}” is no decimal mark. Say --decimal point or --decimal comma."
                )
            }
            Self::Number(option, most) => {
                write!(f, "{option} needs a whole number behind it, up to {most}.")
            }
            Self::Meter(found) => write!(
                f,
                "“{found}” is no kind of meter. Say --meter basic or --meter good."
            ),
            Self::Time(found) => write!(
                f,
                "“{found}” is no time. Write it like 2026-11-25T13:05:00+01:00."
            ),
        }
    }
}

const COMMANDS: &str = "assess, report, check, network, simulate or evaluate";

/// Reads the arguments.
pub(crate) fn parse(mut parser: Parser) -> Result<Command, ArgumentError> {
    match next(&mut parser)? {
        None => Err(ArgumentError::NoCommand),
        Some(Asked::Help) => Ok(Command::Help(Topic::Everything)),
        Some(Asked::Option(name)) if name == "--version" || name == "-V" => Ok(Command::Version),
        Some(Asked::Option(name)) => Err(ArgumentError::UnknownOption(name)),
        Some(Asked::Value(command)) => match command.to_str() {
            Some("assess") => assess(parser),
            Some("report") => report(parser),
            Some("check") => check(parser),
            Some("network") => network(parser),
            Some("simulate") => simulate(parser),
            Some("evaluate") => evaluate(parser),
            _ => Err(ArgumentError::UnknownCommand(shown(&command))),
        },
    }
}

fn assess(mut parser: Parser) -> Result<Command, ArgumentError> {
    let mut request = Request::default();
    while let Some(asked) = next(&mut parser)? {
        match asked {
            Asked::Help => return Ok(Command::Help(Topic::Assess)),
            Asked::Value(file) => request.files.push(file),
            Asked::Option(name) => match name.as_str() {
                "--json" => request.json = true,
                "--decimal" => request.locale.decimal = decimal_mark(&value(&mut parser, name)?)?,
                "--at" => request.at = Some(time(&value(&mut parser, name)?)?),
                _ => return Err(ArgumentError::UnknownOption(name)),
            },
        }
    }
    if request.files.is_empty() {
        return Err(ArgumentError::NoFile("assess"));
    }
    Ok(Command::Assess(request))
}

fn report(mut parser: Parser) -> Result<Command, ArgumentError> {
    let (mut request, mut file) = (ReportRequest::default(), None);
    while let Some(asked) = next(&mut parser)? {
        match asked {
            Asked::Help => return Ok(Command::Help(Topic::Report)),
            Asked::Value(_) if file.is_some() => return Err(ArgumentError::SeveralFiles),
            Asked::Value(named) => file = Some(named),
            Asked::Option(name) => match name.as_str() {
                "--html" => request.html = true,
                "--owner" => request.owner = true,
                "--decimal" => request.locale.decimal = decimal_mark(&value(&mut parser, name)?)?,
                "--at" => request.at = Some(time(&value(&mut parser, name)?)?),
                _ => return Err(ArgumentError::UnknownOption(name)),
            },
        }
    }
    request.file = file.ok_or(ArgumentError::NoFile("report"))?;
    Ok(Command::Report(request))
}

fn check(mut parser: Parser) -> Result<Command, ArgumentError> {
    let mut files = Vec::new();
    while let Some(asked) = next(&mut parser)? {
        match asked {
            Asked::Help => return Ok(Command::Help(Topic::Check)),
            Asked::Value(file) => files.push(file),
            Asked::Option(name) => return Err(ArgumentError::UnknownOption(name)),
        }
    }
    if files.is_empty() {
        return Err(ArgumentError::NoFile("check"));
    }
    Ok(Command::Check { files })
}

fn network(mut parser: Parser) -> Result<Command, ArgumentError> {
    let (mut file, mut at) = (None, None);
    while let Some(asked) = next(&mut parser)? {
        match asked {
            Asked::Help => return Ok(Command::Help(Topic::Network)),
            Asked::Value(_) if file.is_some() => return Err(ArgumentError::SeveralFiles),
            Asked::Value(named) => file = Some(named),
            Asked::Option(name) if name == "--at" => at = Some(time(&value(&mut parser, name)?)?),
            Asked::Option(name) => return Err(ArgumentError::UnknownOption(name)),
        }
    }
    let file = file.ok_or(ArgumentError::NoFile("network"))?;
    Ok(Command::Network { file, at })
}

fn simulate(mut parser: Parser) -> Result<Command, ArgumentError> {
    let (mut trial, mut file) = (Trial::default(), None);
    while let Some(asked) = next(&mut parser)? {
        match asked {
            Asked::Help => return Ok(Command::Help(Topic::Simulate)),
            Asked::Value(_) if file.is_some() => return Err(ArgumentError::SeveralFiles),
            Asked::Value(named) => file = Some(named),
            Asked::Option(name) if name == "--number" => {
                trial.machines = number(&mut parser, name, u64::MAX - 1)?;
            }
            Asked::Option(name) => drawn_by(&mut trial, &mut parser, name)?,
        }
    }
    let file = file.ok_or(ArgumentError::NoFile("simulate"))?;
    Ok(Command::Simulate { trial, file })
}

fn evaluate(mut parser: Parser) -> Result<Command, ArgumentError> {
    let mut trial = Trial {
        machines: 2_000,
        ..Trial::default()
    };
    while let Some(asked) = next(&mut parser)? {
        match asked {
            Asked::Help => return Ok(Command::Help(Topic::Evaluate)),
            Asked::Value(value) => return Err(ArgumentError::UnknownOption(shown(&value))),
            Asked::Option(name) => match name.as_str() {
                "--json" => trial.json = true,
                "--both-meters" => trial.both_meters = true,
                "--machines" => trial.machines = number(&mut parser, name, Trial::MOST)?,
                _ => drawn_by(&mut trial, &mut parser, name)?,
            },
        }
    }
    Ok(Command::Evaluate(trial))
}

/// What simulated machines are drawn by and examined with.
fn drawn_by(trial: &mut Trial, parser: &mut Parser, name: String) -> Result<(), ArgumentError> {
    match name.as_str() {
        "--seed" => trial.seed = number(parser, name, u64::MAX)?,
        "--meter" => {
            trial.meter = match value(parser, name)?.as_str() {
                "basic" => MeterKind::Basic,
                "good" => MeterKind::Good,
                other => return Err(ArgumentError::Meter(other.to_owned())),
            }
        }
        _ => return Err(ArgumentError::UnknownOption(name)),
    }
    Ok(())
}

fn number(parser: &mut Parser, option: String, most: u64) -> Result<u64, ArgumentError> {
    let text = value(parser, option.clone())?;
    let number = text.parse().ok().filter(|number| *number <= most);
    number.ok_or(ArgumentError::Number(option, most))
}

/// One argument.
enum Asked {
    Help,
    /// An option with its dashes.
    Option(String),
    Value(OsString),
}

fn next(parser: &mut Parser) -> Result<Option<Asked>, ArgumentError> {
    let argument = parser.next().map_err(|error| match error {
        lexopt::Error::UnexpectedValue { option, .. } => ArgumentError::UnexpectedValue(option),
        // What the library says of anything else is about a form of option not used here.
        other => ArgumentError::UnknownOption(other.to_string()),
    })?;
    Ok(argument.map(|argument| match argument {
        Arg::Short('h') | Arg::Long("help") => Asked::Help,
        Arg::Short(letter) => Asked::Option(format!("-{letter}")),
        Arg::Long(name) => Asked::Option(format!("--{name}")),
        Arg::Value(value) => Asked::Value(value),
    }))
}

fn value(parser: &mut Parser, option: String) -> Result<String, ArgumentError> {
    let value = parser
        .value()
        .map_err(|_| ArgumentError::MissingValue(option))?;
    Ok(shown(&value))
}

fn decimal_mark(text: &str) -> Result<DecimalMark, ArgumentError> {
    match text {
        "point" => Ok(DecimalMark::Point),
        "comma" => Ok(DecimalMark::Comma),
        other => Err(ArgumentError::DecimalMark(other.to_owned())),
    }
}

fn time(text: &str) -> Result<Moment, ArgumentError> {
    parse_timestamp(text).map_err(|_| ArgumentError::Time(text.to_owned()))
}

fn shown(text: &OsString) -> String {
    text.to_string_lossy().into_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parsed(arguments: &[&str]) -> Result<Command, ArgumentError> {
        parse(Parser::from_args(arguments))
    }

    #[test]
    fn options_and_files_come_in_any_order() {
        let expected = Request {
            files: vec!["a.json".into(), "-".into(), "--b.json".into()],
            json: true,
            locale: Locale {
                decimal: DecimalMark::Comma,
                ..Locale::default()
            },
            at: Some(Moment::new(0, 0).unwrap()),
        };
        assert_eq!(
            parsed(&[
                "assess",
                "a.json",
                "--decimal=comma",
                "-",
                "--json",
                "--at",
                "1970-01-01T00:00:00Z",
                "--",
                "--b.json",
            ]),
            Ok(Command::Assess(expected))
        );
    }

    #[test]
    fn help_is_given_wherever_it_is_asked_for() {
        assert_eq!(parsed(&["--help"]), Ok(Command::Help(Topic::Everything)));
        assert_eq!(parsed(&["assess", "-h"]), Ok(Command::Help(Topic::Assess)));
        assert_eq!(
            parsed(&["check", "x", "--help"]),
            Ok(Command::Help(Topic::Check))
        );
    }

    #[test]
    fn what_does_not_fit_is_named() {
        let option = |name: &str| Err(ArgumentError::UnknownOption(name.into()));
        assert_eq!(parsed(&[]), Err(ArgumentError::NoCommand));
        assert_eq!(
            parsed(&["mend"]),
            Err(ArgumentError::UnknownCommand("mend".into()))
        );
        assert_eq!(parsed(&["--json"]), option("--json"));
        assert_eq!(parsed(&["assess", "--yaml", "a"]), option("--yaml"));
        assert_eq!(parsed(&["check", "-x", "a"]), option("-x"));
        assert_eq!(parsed(&["check"]), Err(ArgumentError::NoFile("check")));
        assert_eq!(
            parsed(&["network", "a", "b"]),
            Err(ArgumentError::SeveralFiles)
        );
        assert_eq!(
            parsed(&["assess", "--decimal"]),
            Err(ArgumentError::MissingValue("--decimal".into()))
        );
        assert_eq!(
            parsed(&["assess", "--json=yes", "a"]),
            Err(ArgumentError::UnexpectedValue("--json".into()))
        );
        assert_eq!(
            parsed(&["assess", "--decimal", "dot"]),
            Err(ArgumentError::DecimalMark("dot".into()))
        );
        assert_eq!(
            parsed(&["evaluate", "--machines", "many"]),
            Err(ArgumentError::Number("--machines".into(), 100_000))
        );
        assert_eq!(
            parsed(&["simulate", "a.json", "--meter", "gold"]),
            Err(ArgumentError::Meter("gold".into()))
        );
        assert_eq!(
            parsed(&["assess", "--at", "noon"]),
            Err(ArgumentError::Time("noon".into()))
        );
    }
}

//! `coldcase assess`: what do these jobs show?

use std::ffi::OsString;
use std::time::{SystemTime, UNIX_EPOCH};

use diagnosis::{Assessment, Figures, Model, assess};
use job::{Job, Moment};
use wording::{ErrorWords, Locale};

use crate::arguments::Request;
use crate::input::{load, shown};
use crate::output::{Assessed, FileReport, Refused};
use crate::{Outcome, Printed};

/// What became of one file.
struct Examined {
    name: String,
    found: Result<Found, ErrorWords>,
}

/// A job and what it shows.
struct Found {
    job: Job,
    assessment: Assessment,
    notices: Vec<String>,
}

pub(crate) fn run(request: &Request) -> Printed {
    let now = request.at.unwrap_or_else(clock);
    let results: Vec<Examined> = request
        .files
        .iter()
        .map(|file| examine(file, now, request))
        .collect();
    Printed {
        output: if request.json {
            json(&results, &request.locale)
        } else {
            text(&results, &request.locale)
        },
        errors: results.iter().flat_map(Examined::errors).collect(),
        outcome: results
            .iter()
            .map(Examined::outcome)
            .max()
            .unwrap_or(Outcome::Done),
    }
}

fn examine(file: &OsString, now: Moment, request: &Request) -> Examined {
    let locale = &request.locale;
    let found = load(file).map_err(|why| why.words()).map(|loaded| {
        let job = loaded.document.job().clone();
        let model = Model::default().for_job(&job, &Figures::default());
        Found {
            assessment: assess(&model, &job, now),
            notices: loaded
                .notices
                .iter()
                .map(|notice| wording::notice(notice, locale))
                .collect(),
            job,
        }
    });
    let name = shown(file);
    Examined { name, found }
}

impl Examined {
    fn outcome(&self) -> Outcome {
        match &self.found {
            Err(_) => Outcome::Unreadable,
            Ok(found) if found.assessment.must_stop() => Outcome::Stop,
            Ok(_) => Outcome::Done,
        }
    }

    /// What is told beside the assessment: why there is none, or what was not read.
    fn errors(&self) -> Vec<String> {
        let lines = match &self.found {
            Err(words) => vec![words.line()],
            Ok(found) => found.notices.clone(),
        };
        let name = &self.name;
        lines
            .into_iter()
            .map(|line| format!("{name}: {line}\n"))
            .collect()
    }
}

/// The text of the page. Only several files need a heading each to be told apart.
fn text(results: &[Examined], locale: &Locale) -> String {
    let reports: Vec<String> = results
        .iter()
        .filter_map(|result| {
            let found = result.found.as_ref().ok()?;
            let report = wording::report(&found.assessment, &found.job, locale).text();
            Some(match results {
                [_] => report,
                _ => format!("{}\n{}\n\n{report}", result.name, "=".repeat(72)),
            })
        })
        .collect();
    reports.join("\n")
}

fn json(results: &[Examined], locale: &Locale) -> String {
    let reports: Vec<FileReport> = results
        .iter()
        .map(|result| {
            let file = result.name.clone();
            match &result.found {
                Err(words) => FileReport::Refused(Refused {
                    file,
                    error: words.what.clone(),
                    mend: words.mend.to_owned(),
                }),
                Ok(found) => FileReport::Assessed(Box::new(Assessed::new(
                    file,
                    &found.job,
                    &found.assessment,
                    found.notices.clone(),
                    locale,
                ))),
            }
        })
        .collect();
    // Writing to memory fails only for a map whose keys are no texts; there is none in these.
    #[allow(clippy::expect_used)]
    let text = serde_json::to_string_pretty(&reports).expect("derived serialisation");
    text + "\n"
}

/// The clock's time, in UTC: only how long ago something was is asked of it.
pub(crate) fn clock() -> Moment {
    let since = SystemTime::now().duration_since(UNIX_EPOCH);
    let milliseconds = since.map_or(0, |since| {
        i64::try_from(since.as_millis()).unwrap_or(Moment::LATEST)
    });
    // Zero is a moment, and so is everything up to the latest.
    #[allow(clippy::expect_used)]
    Moment::new(milliseconds.min(Moment::LATEST), 0).expect("a moment by its bounds")
}

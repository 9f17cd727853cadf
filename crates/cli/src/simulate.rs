//! `coldcase simulate`: a job about a simulated machine, and what is truly wrong with it.

use std::ffi::OsString;
use std::fs;

use diagnosis::{Choice, Model, Priors};
use jobfile::{Document, save};
use practice::{Order, drawn, fault_of, walk};

use crate::input::shown;
use crate::trial::Trial;
use crate::{Outcome, Printed};

pub(crate) fn run(trial: &Trial, file: &OsString) -> Printed {
    match written(trial, file) {
        Ok(output) => Printed {
            output,
            errors: String::new(),
            outcome: Outcome::Done,
        },
        Err(why) => Printed {
            output: String::new(),
            errors: format!("coldcase: {why}\n"),
            outcome: Outcome::Unreadable,
        },
    }
}

fn written(trial: &Trial, file: &OsString) -> Result<String, String> {
    let number = trial.machines;
    let machine = drawn(&Priors::default(), trial.meter, trial.seed, number);
    let mut sheet = machine
        .map_err(|why| format!("the machine can't be simulated: {why}"))?
        .ok_or("no machine of this number would have been offered: take another number.")?;
    let walked = walk(&mut sheet, &Model::default(), Order::Ours)
        .ok_or("nothing is known of the machine: take another number.")?;
    let document = Document::new(walked.job).map_err(|why| format!("{why:?}"))?;
    fs::write(file, save(&document)).map_err(|why| {
        format!(
            "{} can't be written: {why}. Name a file in a folder that is yours.",
            shown(file)
        )
    })?;
    let mut output = String::from("truth:");
    let troubles = sheet.machine().troubles();
    if troubles.is_empty() {
        output.push_str(" nothing is wrong");
    }
    for trouble in troubles {
        let (name, severity) = (fault_of(trouble.ailment).name(), trouble.severity.get());
        output.push_str(&format!(" {name} (severity {severity:.2})"));
    }
    output.push('\n');
    Ok(output)
}

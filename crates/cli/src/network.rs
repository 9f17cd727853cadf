//! `coldcase network`: the networks in which a job is weighed, for other programs to check.

use std::ffi::OsString;

use diagnosis::{Choice, ExportedNetwork, Figures, Model, export_networks};
use job::Moment;

use crate::input::{load, shown};
use crate::{Outcome, Printed};

pub(crate) fn run(file: &OsString, now: Moment) -> Printed {
    match load(file) {
        Err(why) => Printed {
            output: String::new(),
            errors: format!("{}: {}\n", shown(file), why.words().line()),
            outcome: Outcome::Unreadable,
        },
        Ok(loaded) => {
            let job = loaded.document.job();
            let model = Model::default().for_job(job, &Figures::default());
            let networks = export_networks(&model, job, now);
            let texts: Vec<String> = networks.iter().map(text).collect();
            Printed {
                output: texts.join("\n"),
                errors: String::new(),
                outcome: Outcome::Done,
            }
        }
    }
}

/// One network with what was seen. The format has no place for that but comments.
fn text(network: &ExportedNetwork) -> String {
    let (build, weight) = (network.build.name(), network.weight);
    let text = &network.text;
    format!("// build: {build}\n// probability of the build: {weight}\n{text}")
}

//! `coldcase check`: are these files jobs?

use std::ffi::OsString;
use std::fmt::Write as _;

use wording::Locale;

use crate::input::{load, shown};
use crate::{Outcome, Printed};

pub(crate) fn run(files: &[OsString]) -> Printed {
    let mut printed = Printed {
        output: String::new(),
        errors: String::new(),
        outcome: Outcome::Done,
    };
    for file in files {
        let name = shown(file);
        // Writing to a text can't fail.
        let _ = match load(file) {
            Ok(loaded) => {
                let count = loaded.document.job().entries().len();
                let entries = if count == 1 { "entry" } else { "entries" };
                let mut said = format!("{name}: a job with {count} {entries}\n");
                for notice in &loaded.notices {
                    let words = wording::notice(notice, &Locale::default());
                    let _ = writeln!(said, "{name}: {words}");
                }
                printed.output.write_str(&said)
            }
            Err(why) => {
                printed.outcome = Outcome::Unreadable;
                writeln!(printed.errors, "{name}: {}", why.words().line())
            }
        };
    }
    printed
}

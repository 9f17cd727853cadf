//! `coldcase report`: the record that goes with a machine.

use diagnosis::{Figures, Model, assess};
use record::{Audience, Made, Record};

use crate::arguments::ReportRequest;
use crate::assess::clock;
use crate::input::{load, shown};
use crate::{Outcome, Printed};

pub(crate) fn run(request: &ReportRequest) -> Printed {
    let name = shown(&request.file);
    let loaded = match load(&request.file) {
        Ok(loaded) => loaded,
        Err(why) => {
            return Printed {
                output: String::new(),
                errors: format!("{name}: {}\n", why.words().line()),
                outcome: Outcome::Unreadable,
            };
        }
    };
    let (job, locale) = (loaded.document.job(), &request.locale);
    let now = request.at.unwrap_or_else(clock);
    let model = Model::default().for_job(job, &Figures::default());
    let assessment = assess(&model, job, now);
    let audience = if request.owner {
        Audience::Owner
    } else {
        Audience::Buyer
    };
    let version = env!("CARGO_PKG_VERSION");
    let record = Record::of(job, &assessment, locale, audience, Made { now, version });
    let notices = loaded.notices.iter();
    let notices = notices.map(|one| format!("{name}: {}\n", wording::notice(one, locale)));
    Printed {
        output: if request.html {
            record.html()
        } else {
            record.text()
        },
        errors: notices.collect(),
        outcome: Outcome::Done,
    }
}

//! The person's own assumptions as the browser keeps them: one line a figure, "build fault
//! percent", with `none` for nothing wrong.

use diagnosis::{Assumptions, Build, Choice, Fault, Priors};

/// The setting that holds them.
pub const SETTING: &str = "assumptions";

const NOTHING_WRONG: &str = "none";

/// Reads what was kept. A line that can't be taken is passed over: the stated figure holds.
#[must_use]
pub fn read(kept: &str) -> Assumptions {
    Assumptions::new(priors(kept))
}

/// The figures that were kept.
#[must_use]
pub fn priors(kept: &str) -> Priors {
    let mut priors = Priors::default();
    for line in kept.lines() {
        if let Some((build, fault, percent)) = figure(line) {
            let _ = priors.set(build, fault, percent);
        }
    }
    priors
}

/// The figures as they are kept, and as a person may pass them on.
#[must_use]
pub fn text(priors: &Priors) -> String {
    let mut text = String::new();
    for edit in priors.edits() {
        let fault = edit.fault.map_or(NOTHING_WRONG, Choice::name);
        text.push_str(&format!("{} {fault} {}\n", edit.build.name(), edit.percent));
    }
    text
}

fn figure(line: &str) -> Option<(Build, Option<Fault>, f64)> {
    let mut words = line.split_whitespace();
    let build = Build::from_name(words.next()?)?;
    let fault = match words.next()? {
        NOTHING_WRONG => None,
        name => Some(Fault::from_name(name)?),
    };
    let percent = words.next()?.parse().ok()?;
    Some((build, fault, percent))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_kept_is_read_back_as_it_was() {
        let mut own = Priors::default();
        own.set(Build::FrostFree, Some(Fault::ChargeGone), 12.5)
            .unwrap();
        own.set(Build::ManualDefrost, None, 30.0).unwrap();
        assert_eq!(priors(&text(&own)), own);
    }

    #[test]
    fn lines_that_make_no_sense_change_nothing() {
        let damaged = "frost-free charge-gone\nfrost-free gremlins 5\n\nsteam none 3\n";
        assert_eq!(priors(damaged), Priors::default());
        assert_eq!(
            priors("frost-free charge-gone 100"),
            Priors::default(),
            "beyond what is taken"
        );
    }
}

//! Everything that has to hold, as named steps. A failed step doesn't keep the later ones from running; the last line
//! of the output says how many tests passed and failed in all.

pub(crate) mod outside;
mod steps;

use std::collections::BTreeSet;
use std::time::{Duration, Instant};

use anyhow::{Result, bail};

use crate::counts::Counts;
use crate::project::Project;
use crate::tools::Toolbox;

/// What a step may count on.
struct Context {
    project: Project,
    tools: Toolbox,
}

/// What has to be set up before a step can run.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Need {
    Lints,
    PageTools,
    Browsers,
    References,
}

/// One named part of the tests.
struct Step {
    /// Name of the kind `topic` or `topic-variant`; the topic alone names all its variants.
    name: &'static str,
    needs: &'static [Need],
    /// Looks into the release page, so that `page` has to run first.
    uses_page: bool,
    run: fn(&Context) -> Result<Counts>,
}

/// How a step ended.
struct Ended {
    name: &'static str,
    counts: Counts,
    time: Duration,
}

/// Runs the named steps, or all when none is named. Returns whether all held.
pub(crate) fn run(project: Project, names: &[String]) -> Result<bool> {
    let chosen = choose(names)?;
    let context = Context {
        project,
        tools: Toolbox::open()?,
    };
    let mut ended = vec![timed("set-up", || set_up(&context, &chosen))];
    ended.extend(
        chosen
            .iter()
            .map(|step| timed(step.name, || (step.run)(&context))),
    );
    Ok(summarise(&ended))
}

/// The names of all steps in their order.
pub(crate) fn names() -> Vec<&'static str> {
    steps::ALL.iter().map(|step| step.name).collect()
}

fn choose(names: &[String]) -> Result<Vec<&'static Step>> {
    let is_named = |step: &Step, name: &String| {
        step.name == name
            || step
                .name
                .strip_prefix(name.as_str())
                .is_some_and(|rest| rest.starts_with('-'))
    };
    if let Some(unknown) = names
        .iter()
        .find(|name| !steps::ALL.iter().any(|step| is_named(step, name)))
    {
        bail!(
            "there is no step {unknown:?}. The steps are: {}",
            self::names().join(", ")
        );
    }
    let is_chosen = |step: &Step| names.is_empty() || names.iter().any(|name| is_named(step, name));
    let page_is_used = steps::ALL
        .iter()
        .any(|step| step.uses_page && is_chosen(step));
    Ok(steps::ALL
        .iter()
        .filter(|step| is_chosen(step) || (page_is_used && step.name == steps::PAGE))
        .collect())
}

/// Tries every need, so that one that can't be met keeps no step from running that can do without it.
fn set_up(context: &Context, chosen: &[&Step]) -> Result<Counts> {
    let needs: BTreeSet<Need> = chosen.iter().flat_map(|step| step.needs).copied().collect();
    let tools = &context.tools;
    let problems: Vec<String> = needs
        .into_iter()
        .filter_map(|need| {
            let met = match need {
                Need::Lints => tools.set_up_for_lints(),
                Need::PageTools => tools.set_up_for_page(),
                Need::Browsers => tools.set_up_for_browsers(),
                Need::References => {
                    tools.set_up_for_references(&outside::requirements(&context.project))
                }
            };
            met.err().map(|problem| format!("{problem:#}"))
        })
        .collect();
    if !problems.is_empty() {
        bail!("{}", problems.join("\n"));
    }
    // Having tools proves nothing about the project: success counts for nothing, failure does.
    Ok(Counts::default())
}

fn timed(name: &'static str, run: impl FnOnce() -> Result<Counts>) -> Ended {
    println!("\n== {name}");
    let start = Instant::now();
    let counts = run().unwrap_or_else(|problem| {
        eprintln!("{name} could not be done: {problem:#}");
        Counts::one(false)
    });
    Ended {
        name,
        counts,
        time: start.elapsed(),
    }
}

fn summarise(ended: &[Ended]) -> bool {
    println!(
        "\n{:<20} {:>7} {:>7} {:>9}",
        "step", "passed", "failed", "time"
    );
    for step in ended {
        let Counts { passed, failed } = step.counts;
        let mark = if failed > 0 { "  FAILED" } else { "" };
        println!(
            "{:<20} {passed:>7} {failed:>7} {:>7.1} s{mark}",
            step.name,
            step.time.as_secs_f64()
        );
    }
    let time: Duration = ended.iter().map(|step| step.time).sum();
    println!(
        "{:<20} {:>7} {:>7} {:>7.1} s",
        "all",
        "",
        "",
        time.as_secs_f64()
    );
    let Counts { passed, failed } = ended.iter().map(|step| step.counts).sum();
    println!("{passed} passed, {failed} failed");
    failed == 0
}

#[cfg(test)]
mod tests {
    use super::*;

    fn chosen(names: &[&str]) -> Vec<&'static str> {
        let names: Vec<String> = names.iter().map(|name| (*name).to_owned()).collect();
        choose(&names)
            .unwrap()
            .iter()
            .map(|step| step.name)
            .collect()
    }

    #[test]
    fn without_names_every_step_runs() {
        assert_eq!(chosen(&[]), names());
    }

    #[test]
    fn a_topic_names_all_its_variants() {
        assert_eq!(chosen(&["lints"]), ["lints-host", "lints-wasm"]);
        assert_eq!(chosen(&["lints-wasm"]), ["lints-wasm"]);
    }

    #[test]
    fn a_step_that_looks_into_the_page_has_it_built_first() {
        assert_eq!(chosen(&["size"]), ["page", "size"]);
    }

    #[test]
    fn an_unknown_step_is_refused_with_the_list() {
        let problem = choose(&["everything".to_owned()])
            .err()
            .unwrap()
            .to_string();
        assert!(problem.contains("tidy"), "{problem}");
    }
}

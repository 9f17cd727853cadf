//! axe-core finds nothing wrong on any screen, in the light and in the dark look, with the strict contrast of 7 to 1.

use std::collections::BTreeMap;

use anyhow::{Context, Result, ensure};
use serde_json::Value;

use super::none_of;
use crate::engine::Habits;
use crate::screens;
use crate::stage::Stage;
use crate::visit::Visit;

/// Runs inside of the page, so that `axe` is defined before it. What lies below a bar that stays in place can be
/// scrolled from under it, which axe doesn't know: meanwhile the bar stands where it would without staying.
const EXAMINE: &str = r#"
    const answer = arguments[arguments.length - 1];
    const stays = (it) => ["fixed", "sticky"].includes(getComputedStyle(it).position);
    const bars = Array.from(document.body.querySelectorAll("*")).filter(stays);
    bars.forEach((bar) => { bar.style.position = "static"; });
    const done = (found) => {
      bars.forEach((bar) => { bar.style.position = ""; });
      answer(found);
    };
    const rules = { "color-contrast-enhanced": { enabled: true }, "target-size": { enabled: true } };
    axe.run(document, { rules, resultTypes: ["violations"] }).then(
      ({ violations }) => done(violations.flatMap(({ id, help, nodes }) =>
        nodes.map(({ html, any }) => `${id}: ${help}: ${html.slice(0, 100)} ${any.map((check) => check.message).join(" ")}`))),
      (error) => done(["axe could not look: " + error]),
    );
"#;

pub(super) fn run(stage: &Stage) -> Result<()> {
    let axe = std::fs::read_to_string(stage.axe()?).context("axe-core can't be read")?;
    // Many screens share a part: each problem is told once, with the screens that have it.
    let mut problems: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for dark in [false, true] {
        let habits = Habits {
            dark,
            ..Habits::default()
        };
        let look = if dark { "dark" } else { "light" };
        screens::walk(stage, &habits, &mut |visit, screen| {
            ensure!(is_dark(visit)? == dark, "the look is not {look}");
            for problem in violations(visit, &axe)? {
                problems
                    .entry(problem)
                    .or_default()
                    .push(format!("{screen}, {look}"));
            }
            Ok(())
        })?;
    }
    let told: Vec<String> = problems
        .iter()
        .map(|(problem, screens)| {
            format!(
                "{problem}\n    on {} screens: {}",
                screens.len(),
                screens.join("; ")
            )
        })
        .collect();
    none_of("violations", &told)
}

fn is_dark(visit: &Visit) -> Result<bool> {
    Ok(visit.run("return matchMedia('(prefers-color-scheme: dark)').matches")? == true)
}

fn violations(visit: &Visit, axe: &str) -> Result<Vec<String>> {
    if visit.run("return typeof axe === 'undefined'")? == true {
        // Through the driver, whose scripts the page's own security policy doesn't bind.
        visit.run(&format!("{axe}; window.axe = axe"))?;
    }
    let found = visit.window().run_async(EXAMINE, &[])?;
    let found = found.as_array().into_iter().flatten();
    Ok(found.filter_map(Value::as_str).map(str::to_owned).collect())
}

//! How long a phone is busy after a try to start, where two hundred were entered before: reading all of them anew,
//! weighing the whole machine with them and drawing the picture.

use std::thread::sleep;
use std::time::Duration;

use anyhow::{Result, ensure};
use serde_json::{Value, json};

use super::{figures, print_figures, slow_down};
use crate::stage::Stage;
use crate::visit::{Kind, Visit};

/// An example whose pins are measured, so that it may be tried.
const EXAMPLE: &str = "Upright freezer from the bakery cellar";
const KEPT: &str = "coldcase/job/example-open-ptc";
const TRIES: usize = 200;
const TIMES: usize = 5;

/// Adds tries to a kept job, an hour apart, the last one some hours ago, each after another rest.
const ADD: &str = "
    const [name, count] = arguments;
    const kept = localStorage.getItem(name);
    if (!kept) return 0;
    const line = kept.indexOf('\\n') + 1;
    const job = JSON.parse(kept.slice(line));
    const at = (hours) => new Date(Date.now() - hours * 3600000).toISOString().slice(0, 19) + 'Z';
    for (let number = 0; number < count; number += 1) {
        const rest = 60 * 1.02 ** number;
        const outcome = rest > 600 ? 'started' : 'hummed-and-tripped';
        const trial = { 'set-up': 'original', at: at(count + 3 - number), rest, cold: false, outcome };
        job.entries.push({ id: `try-${number}`, at: at(count + 3 - number), trial });
    }
    job.entries.push({ id: 'stop', at: at(2), stop: { at: at(2) } });
    localStorage.setItem(name, kept.slice(0, line) + JSON.stringify(job));
    return job.entries.length;";

const WATCH: &str = "
    window.longest = 0;
    new PerformanceObserver((list) => {
        for (const { duration } of list.getEntries()) window.longest = Math.max(window.longest, duration);
    }).observe({ type: 'longtask' });";

/// Measures and prints.
pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = stage.start()?;
    visit.press("Look at an example")?;
    visit.press(EXAMPLE)?;
    visit.find(Kind::Control, "Something else")?;
    visit.wait_for_mark("offline", "ready")?;
    visit.press("Jobs")?;
    let entries = visit.window().run(ADD, &[json!(KEPT), json!(TRIES)])?;
    ensure!(
        entries.as_u64() > Some(TRIES as u64),
        "no tries were added: {entries}"
    );
    visit.go_to("#/job/example-open-ptc/do/start-trials")?;
    visit.see("Tries so far")?;
    visit.run(WATCH)?;
    slow_down(&visit)?;
    let busy: Vec<Value> = (0..TIMES)
        .map(|_| busy_after_a_try(&visit))
        .collect::<Result<_>>()?;
    stage.close(visit);
    let busy = figures(&busy, "longest")?;
    print_figures(
        "longest task after a try, 200 before it: reading, weighing and drawing",
        &busy,
    );
    Ok(())
}

fn busy_after_a_try(visit: &Visit) -> Result<Value> {
    visit.press("I plug it in now")?;
    visit.see("What did it do?")?;
    sleep(Duration::from_millis(500));
    visit.run("window.longest = 0")?;
    visit.press("Silent")?;
    visit.find(Kind::Control, "I plug it in now")?;
    sleep(Duration::from_millis(1_500));
    visit.run("return { longest: window.longest }")
}

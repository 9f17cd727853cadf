//! How long a phone is busy after a try to start, where two hundred were entered before: reading all of them anew,
//! weighing the whole machine with them and drawing the picture.

use std::thread::sleep;
use std::time::Duration;

use anyhow::{Result, ensure};
use serde_json::{Value, json};

use super::{figures, percentile, print_figures, slow_down};
use crate::stage::Stage;
use crate::visit::{Kind, Visit};

/// An example whose pins are measured, so that it may be tried.
const EXAMPLE: &str = "Upright freezer from the bakery cellar";
const KEPT: &str = "coldcase/job/example-open-ptc";
const TRIES: usize = 200;
const TIMES: usize = 15;

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

/// How much longer the page may be busy with two hundred tries than with none, in milliseconds: all that reading them
/// anew costs, as often as it is done, and drawing them.
const WANTED: f64 = 16.0;

/// How long after a try it is looked at: until all has come to rest, with the clock's own second in it.
const WITHIN: Duration = Duration::from_millis(1_500);

/// Messages that the page sends itself: what lies between two of them is a task. The longest, and the sum of all that
/// is longer than sending one takes.
const WATCH: &str = "
    const IDLE = 2;
    window.busy = { longest: 0, sum: 0 };
    let last = performance.now();
    const channel = new MessageChannel();
    channel.port1.onmessage = () => {
        const now = performance.now();
        window.busy.longest = Math.max(window.busy.longest, now - last);
        if (now - last > IDLE) window.busy.sum += now - last;
        last = now;
        channel.port2.postMessage(0);
    };
    channel.port2.postMessage(0);";

/// Measures and prints. Returns whether it kept within what is wanted.
pub(super) fn run(stage: &Stage) -> Result<bool> {
    let without = busy_with(stage, 0)?;
    let with = busy_with(stage, TRIES)?;
    print_figures(
        "longest task after a try, none before it",
        &figures(&without, "longest")?,
    );
    print_figures(
        &format!("longest task after a try, {TRIES} before it"),
        &figures(&with, "longest")?,
    );
    // What else goes on here only adds to it: the least of each tells most of the page.
    let least = |all: &[Value]| Ok::<_, anyhow::Error>(percentile(&figures(all, "sum")?, 1));
    let (alone, among) = (least(&without)?, least(&with)?);
    let more = among - alone;
    let kept = more <= WANTED;
    println!(
        "all that is done within {} ms after a try, the least of {TIMES}: {alone:.1} with none before it, {among:.1} with {TRIES}: \
         {more:.1} more; wanted: {WANTED} at most: {}",
        WITHIN.as_millis(),
        if kept { "reached" } else { "MISSED" }
    );
    Ok(kept)
}

fn busy_with(stage: &Stage, tries: usize) -> Result<Vec<Value>> {
    let visit = stage.start()?;
    visit.press("Look at an example")?;
    visit.press(EXAMPLE)?;
    visit.find(Kind::Control, "Something else")?;
    visit.wait_for_mark("offline", "ready")?;
    visit.press("Jobs")?;
    let entries = visit.window().run(ADD, &[json!(KEPT), json!(tries)])?;
    ensure!(
        entries.as_u64() > Some(tries as u64),
        "no tries were added: {entries}"
    );
    visit.go_to("#/job/example-open-ptc/do/start-trials")?;
    visit.find(Kind::Control, "I plug it in now")?;
    visit.run(WATCH)?;
    slow_down(&visit)?;
    let busy = (0..TIMES).map(|_| busy_after_a_try(&visit)).collect();
    stage.close(visit);
    busy
}

fn busy_after_a_try(visit: &Visit) -> Result<Value> {
    visit.press("I plug it in now")?;
    visit.see("What did it do?")?;
    sleep(Duration::from_millis(500));
    let silent = visit.find(Kind::Control, "Silent")?;
    // The driver's own looking for things is no work of the page: from here on it only waits.
    visit
        .window()
        .run("arguments[0].addEventListener('click', () => { window.busy.longest = window.busy.sum = 0; }, { once: true, capture: true })", &[silent.argument()])?;
    visit.touch(&silent)?;
    sleep(WITHIN);
    visit.run("return { ...window.busy }")
}

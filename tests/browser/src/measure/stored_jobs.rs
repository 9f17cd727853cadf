//! How long the list of jobs takes with four hundred jobs in it.
//!
//! Timed is, inside of the page, from the moment at which the address becomes that of the list until the last change to
//! the page that follows was painted. On a fresh start it is timed from the moment at which the second part of the
//! program had arrived.

use std::thread::sleep;
use std::time::Duration;

use anyhow::{Context, Result, ensure};
use serde_json::{Value, json};

use super::{figures, percentile, print_figures, slow_down};
use crate::stage::Stage;
use crate::visit::{Kind, Visit};

const JOBS: usize = 400;
const TIMES: usize = 20;
const STARTS: usize = 5;

/// The longest that 95 of 100 openings may take, in milliseconds.
const LIMIT: f64 = 200.0;

/// The example of which the jobs are copies: seventeen entries, as an ordinary job has after its windings.
const EXAMPLE: &str = "Chest freezer from the closed bakery";
const KEPT: &str = "coldcase/job/example-sound-compressor";

/// Copies a kept job, each copy with an identifier and a name of its own.
const COPY: &str = "
    const [name, title, count] = arguments;
    const kept = localStorage.getItem(name);
    const id = name.split('/').pop();
    for (let number = 0; number < count; number += 1) {
        const copy = kept.split(id).join(`stored-${number}`).split(title).join(`Freezer ${number} of the bakery`);
        localStorage.setItem(`coldcase/job/stored-${number}`, copy);
    }
    return kept.length;";

/// Notes when the last change to the page was painted. What runs after a frame's callbacks runs once it is painted.
const WATCH: &str = "
    window.painted = 0;
    const note = () => requestAnimationFrame(() => {
        const channel = new MessageChannel();
        channel.port1.onmessage = () => { window.painted = performance.now(); };
        channel.port2.postMessage(0);
    });
    const isPicture = ({ target }) => target.closest && !target.closest('[role=status]');
    const watch = () => new MutationObserver((changes) => { if (changes.some(isPicture)) note(); })
        .observe(document, { subtree: true, childList: true, characterData: true, attributes: true });
    watch();";

const OPEN: &str = "window.painted = 0; window.began = performance.now(); location.hash = '#/';";

const ARRIVED: &str = "
    const parts = performance.getEntriesByType('resource').filter(({ name }) => /split/.test(name));
    return { painted: window.painted - Math.max(...parts.map(({ responseEnd }) => responseEnd)), parts: parts.length };";

/// Measures and prints. Returns whether the list opened within its limit.
pub(super) fn run(stage: &Stage) -> Result<bool> {
    let visit = stage.start()?;
    visit.press("Look at an example")?;
    visit.press(EXAMPLE)?;
    visit.find(Kind::Control, "Something else")?;
    let copy = [json!(KEPT), json!(EXAMPLE), json!(JOBS)];
    let size = visit.window().run(COPY, &copy)?;
    visit.wait_for_mark("offline", "ready")?;
    println!("{JOBS} jobs of {size} characters each are kept");
    visit.go_to("#/")?;
    visit.reload()?;
    is_listed(&visit)?;

    slow_down(&visit)?;
    let opened = opened(&visit)?;
    let started = started(&visit)?;
    stage.close(visit);
    print_figures("from a job's screen to the painted list", &opened);
    print_figures(
        "on a fresh start, from the second part's arrival to the painted list",
        &started,
    );
    let kept = percentile(&opened, 95) <= LIMIT;
    println!(
        "  limit: {LIMIT} at the 95th percentile of the first: {}",
        if kept { "kept" } else { "EXCEEDED" }
    );
    Ok(kept)
}

fn opened(visit: &Visit) -> Result<Vec<f64>> {
    visit.run(WATCH)?;
    let mut opened = Vec::new();
    for time in 0..TIMES {
        visit.run(&format!("location.hash = '#/job/stored-{time}'"))?;
        visit.find(Kind::Control, "Something else")?;
        sleep(Duration::from_millis(300));
        visit.run(OPEN)?;
        is_listed(visit)?;
        settled(visit)?;
        opened.push(visit.run("return { painted: window.painted - window.began }")?);
    }
    figures(&opened, "painted")
}

fn started(visit: &Visit) -> Result<Vec<f64>> {
    let script = json!({"source": WATCH});
    visit
        .window()
        .chromium("Page.addScriptToEvaluateOnNewDocument", &script)?;
    let mut started = Vec::new();
    for _ in 0..STARTS {
        visit.reload()?;
        is_listed(visit)?;
        settled(visit)?;
        let arrived = visit.run(ARRIVED)?;
        ensure!(
            arrived["parts"].as_u64() > Some(0),
            "no second part was seen"
        );
        started.push(arrived);
    }
    figures(&started, "painted")
}

/// The list is longer than a screen: its first row and its number of rows, or what stands for the rest, are there.
fn is_listed(visit: &Visit) -> Result<()> {
    visit.find(Kind::Control, "Freezer ").map(drop)
}

/// Waits until nothing was painted for a while, and longer than a slow frame takes.
fn settled(visit: &Visit) -> Result<()> {
    let mut last = Value::Null;
    visit
        .wait_until("the list to rest", || {
            sleep(Duration::from_millis(500));
            let now = visit.run("return window.painted")?;
            let rests = now == last && now != 0;
            last = now;
            Ok(rests)
        })
        .context("the list goes on changing")
}

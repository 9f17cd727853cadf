//! How long the list of jobs takes with four hundred jobs in it.
//!
//! Timed is, inside of the page, from the moment at which the address becomes that of the list until its rows are
//! painted, with their names, kinds and dates; and, apart from that, until the last change that follows: where each job is
//! interrupted is worked out after its row is there. On a fresh start it is timed from the moment at which the second part
//! of the program had arrived.

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
    window.listed = 0;
    const note = () => requestAnimationFrame(() => {
        const channel = new MessageChannel();
        channel.port1.onmessage = () => {
            window.painted = performance.now();
            if (!window.listed && document.querySelector('.rows .row')) window.listed = window.painted;
        };
        channel.port2.postMessage(0);
    });
    const isPicture = ({ target }) => target.closest && !target.closest('[role=status]');
    const watch = () => new MutationObserver((changes) => { if (changes.some(isPicture)) note(); })
        .observe(document, { subtree: true, childList: true, characterData: true, attributes: true });
    watch();";

const OPEN: &str =
    "window.painted = window.listed = 0; window.began = performance.now(); location.hash = '#/';";

const OPENED: &str =
    "return { listed: window.listed - window.began, complete: window.painted - window.began };";

const ARRIVED: &str = "
    const parts = performance.getEntriesByType('resource').filter(({ name }) => /split/.test(name));
    const arrived = Math.max(...parts.map(({ responseEnd }) => responseEnd));
    return { listed: window.listed - arrived, complete: window.painted - arrived, parts: parts.length };";

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
    let listed = figures(&opened, "listed")?;
    print_figures("from a job's screen to the painted list", &listed);
    print_figures(
        "  until each row says where its job is interrupted",
        &figures(&opened, "complete")?,
    );
    print_figures(
        "on a fresh start, from the second part's arrival to the painted list",
        &figures(&started, "listed")?,
    );
    let kept = percentile(&listed, 95) <= LIMIT;
    println!(
        "  limit: {LIMIT} at the 95th percentile of the first: {}",
        if kept { "kept" } else { "EXCEEDED" }
    );
    Ok(kept)
}

fn opened(visit: &Visit) -> Result<Vec<Value>> {
    visit.run(WATCH)?;
    let mut opened = Vec::new();
    for time in 0..TIMES {
        visit.run(&format!("location.hash = '#/job/stored-{time}'"))?;
        visit.find(Kind::Control, "Something else")?;
        sleep(Duration::from_millis(300));
        visit.run(OPEN)?;
        is_listed(visit)?;
        settled(visit)?;
        opened.push(visit.run(OPENED)?);
    }
    Ok(opened)
}

fn started(visit: &Visit) -> Result<Vec<Value>> {
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
    Ok(started)
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

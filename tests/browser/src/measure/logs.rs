//! How long a phone takes over a logger's file of 100,000 rows: from choosing it to what was found in it, painted, and
//! from taking it in to its course with the forecast, painted.
//!
//! The file leaves nothing to be asked, so that it is looked at, read, thinned and fitted without a pause. Each time
//! begins with a fresh job, so that no row of the time before is there.

use std::thread::sleep;
use std::time::Duration;

use anyhow::{Context, Result, ensure};
use serde_json::{Value, json};

use super::{figures, percentile, print_figures, slow_down};
use crate::stage::Stage;
use crate::steps::open_in_example;
use crate::visit::{Kind, Visit};

const ROWS: u32 = 100_000;
const TIMES: usize = 5;
const SETTLES: Duration = Duration::from_millis(2_500);

/// How long looking, reading, thinning and fitting may take in all, in milliseconds.
const WANTED: f64 = 500.0;

/// An example that may be powered.
const JOB: &str = "#/job/example-open-ptc";
const KEPT: &str = "coldcase/job/example-open-ptc";

/// A freezer from 21 to −24 °C with a time constant of two and a half hours and the swing of its thermostat, a reading
/// each second with the steps of a thermometer, up to a minute ago by the page's clock. Returns when it began, too.
const WRITE: &str = "
    const [rows] = arguments;
    const began = Math.floor(Date.now() / 1000) - rows - 60;
    const lines = ['Time;Freezer °C'];
    for (let row = 0; row < rows; row += 1) {
        const hours = row / 3600;
        const left = Math.exp(-hours / 2.5);
        const shown = -24 + 45 * left + 1.5 * Math.sin(9 * hours) * (1 - left);
        lines.push(`${new Date((began + row) * 1000).toISOString().slice(0, 19)}Z;${shown.toFixed(1)}`);
    }
    return [began, lines.join('\\n')];";

/// Says of a kept job that the machine was switched on then.
const SWITCH_ON: &str = "
    const [name, at] = arguments;
    const kept = localStorage.getItem(name);
    if (!kept) return 0;
    const line = kept.indexOf('\\n') + 1;
    const job = JSON.parse(kept.slice(line));
    const when = new Date(at * 1000).toISOString().slice(0, 19) + 'Z';
    job.entries.push({ id: 'on', at: when, event: { at: when, what: 'switched-on' } });
    localStorage.setItem(name, kept.slice(0, line) + JSON.stringify(job));
    return job.entries.length;";

/// Times from a choice or a press to the first frame that shows what is waited for, and the longest task meanwhile.
/// What runs after a frame's callbacks runs once it is painted; before anything else that waits, where it is urgent.
/// Chromium tells of tasks from 50 ms on.
const WATCH: &str = "
    window.log = { longest: 0, began: 0, confirmed: 0, drawn: 0 };
    const isThere = {
        confirmed: () => Array.from(document.querySelectorAll('#log-outcome button'))
            .some((it) => it.textContent.trim() === 'Take these in'),
        drawn: () => document.querySelector('svg.cooling .rest-band'),
    };
    const begin = () => Object.assign(window.log, { longest: 0, began: performance.now(), confirmed: 0, drawn: 0 });
    document.addEventListener('change', begin, true);
    document.addEventListener('click', begin, true);
    new MutationObserver(() => {
        for (const what of ['confirmed', 'drawn']) {
            const note = () => { window.log[what] = window.log[what] || performance.now(); };
            if (!window.log[what] && isThere[what]()) {
                requestAnimationFrame(() => scheduler.postTask(note, { priority: 'user-blocking' }));
            }
        }
    }).observe(document, { subtree: true, childList: true });
    new PerformanceObserver((list) => {
        for (const { duration } of list.getEntries()) window.log.longest = Math.max(window.log.longest, duration);
    }).observe({ type: 'longtask' });";

const TOLD: &str = "
    const { longest, began, confirmed, drawn } = window.log;
    return { longest, confirmed: confirmed - began, drawn: drawn - began };";

/// Measures and prints. Returns whether it kept within what is wanted.
pub(super) fn run(stage: &Stage) -> Result<bool> {
    let mut confirmed = Vec::new();
    let mut drawn = Vec::new();
    for _ in 0..TIMES {
        let (one, other) = once(stage)?;
        confirmed.push(one);
        drawn.push(other);
    }
    let of = |what, name| -> Result<Vec<f64>> {
        figures(
            if what == "confirmed" {
                &confirmed
            } else {
                &drawn
            },
            name,
        )
    };
    for (what, told) in [
        (
            "confirmed",
            "from choosing a log of 100,000 rows to what was found, painted",
        ),
        ("drawn", "from taking it in to its course, painted"),
    ] {
        print_figures(told, &of(what, what)?);
        print_figures(
            "  its longest task (0 stands for all below 50)",
            &of(what, "longest")?,
        );
        print_figures(
            "  the processor at work, until all has come to rest",
            &of(what, "work")?,
        );
    }
    // What else goes on here makes it longer: the least of each tells most of the page.
    let least = |what| Ok::<_, anyhow::Error>(percentile(&of(what, what)?, 1));
    let both = least("confirmed")? + least("drawn")?;
    let kept = both <= WANTED;
    println!(
        "  both, the least of {TIMES}: {both:.0}; wanted: {WANTED} at most: {}",
        if kept { "reached" } else { "MISSED" }
    );
    Ok(kept)
}

fn once(stage: &Stage) -> Result<(Value, Value)> {
    let visit = stage.start()?;
    open_in_example(&visit, "cool-down")?;
    visit.see("Does it get cold?")?;
    visit.wait_for_mark("offline", "ready")?;
    visit.go_to("#/")?;
    let written = visit.window().run(WRITE, &[json!(ROWS)])?;
    let text = written[1].as_str().context("a log")?;
    let file = stage.file("logger.csv", text)?;
    let switched_on = visit
        .window()
        .run(SWITCH_ON, &[json!(KEPT), written[0].clone()])?;
    ensure!(switched_on.as_u64() > Some(1), "it was not switched on");
    visit.go_to(&format!("{JOB}/do/cool-down/log"))?;
    visit.see("Take in a logger's file")?;
    visit.run(WATCH)?;
    let own_time = json!({"timeDomain": "threadTicks"});
    visit.window().chromium("Performance.enable", &own_time)?;
    slow_down(&visit)?;
    let confirmed = timed(&visit, "confirmed", || {
        visit.hand_over("Choose a file", &file)
    })?;
    visit.see(&format!("{ROWS} readings from"))?;
    let take_in = visit.find(Kind::Control, "Take these in")?;
    let drawn = timed(&visit, "drawn", || visit.touch(&take_in))?;
    stage.close(visit);
    Ok((confirmed, drawn))
}

/// Does something and waits until what follows is painted and nothing more comes. Beside what the page tells: how long
/// its processor was at work, which other programs make no longer.
fn timed(visit: &Visit, what: &str, begin: impl FnOnce() -> Result<()>) -> Result<Value> {
    let before = at_work(visit)?;
    begin()?;
    // Whoever asks the page meanwhile gives it work.
    sleep(SETTLES);
    let mut told = Value::Null;
    visit.wait_until(what, || {
        told = visit.run(TOLD)?;
        Ok(told[what].as_f64() > Some(0.0))
    })?;
    told["work"] = json!(at_work(visit)? - before);
    Ok(told)
}

/// How many milliseconds the page's own thread was at work since it was asked to count.
fn at_work(visit: &Visit) -> Result<f64> {
    let metrics = visit
        .window()
        .chromium("Performance.getMetrics", &json!({}))?;
    let metrics = metrics["metrics"]
        .as_array()
        .context("the page's metrics")?;
    let tasks = metrics.iter().find(|one| one["name"] == "TaskDuration");
    let seconds = tasks.and_then(|one| one["value"].as_f64());
    Ok(seconds.context("how long its tasks took")? * 1_000.0)
}

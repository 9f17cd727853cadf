//! How long the page takes, in Chromium with the processor slowed four times: from a key press to the painted diagram,
//! to the list of many jobs, from an answer to the whole machine weighed, from a logger's file to its course, and from
//! the first request to the first usable screen.

mod logs;
mod start_trials;
mod stored_jobs;
mod weighing;

use std::path::Path;
use std::process::Command;
use std::thread::sleep;
use std::time::Duration;

use anyhow::{Context, Result, ensure};
use serde_json::{Value, json};

use crate::engine::{Engine, Habits};
use crate::stage::{Given, Stage};
use crate::steps::{bare_the_pins, choose_pair, make_job};
use crate::visit::{Kind, Visit};
use crate::webdriver::Key;

/// How much slower than here the processor is made.
const SLOWER: u32 = 4;

/// How many presses are timed.
const PRESSES: usize = 200;
const ENTRIES: usize = 30;
const LOADS: usize = 5;

/// The longest that 95 of 100 presses may take, in milliseconds.
const LIMIT: f64 = 50.0;

/// A phone's network as Lighthouse takes it for its mobile figures: 1.6 Mbit/s and 150 ms.
const BITS_PER_SECOND: f64 = 1.6e6;
const LATENCY: u32 = 150;

const STOPWATCH: &str = include_str!("stopwatch.js");

/// Notes when the page painted first, painted most, moved, and could be used.
const WATCH_LOAD: &str = "
    window.load = { first: null, largest: null, moved: 0, usable: null };
    const watch = (type, note) => new PerformanceObserver((list) => list.getEntries().forEach(note))
        .observe({ type, buffered: true });
    watch('paint', (entry) => { if (entry.name === 'first-contentful-paint') load.first = entry.startTime; });
    watch('largest-contentful-paint', (entry) => { load.largest = entry.startTime; });
    watch('layout-shift', (entry) => { if (!entry.hadRecentInput) load.moved += entry.value; });
    addEventListener('coldcase:status', () => {
        if (load.usable === null) requestAnimationFrame(() => { load.usable = performance.now(); });
    });";

/// Measures something, prints it, and returns whether it kept within its limit.
type Figure = fn(&Stage) -> Result<bool>;

/// What is measured, by name.
const FIGURES: &[(&str, Figure)] = &[
    ("keys", time_keys),
    ("list", stored_jobs::run),
    ("weighing", weighing::run),
    ("starts", start_trials::run),
    ("logs", logs::run),
    ("loads", time_loads),
];

/// Measures and prints everything, or what has one of these words in its name. Returns whether what has a limit kept
/// within it.
pub(crate) fn run(given: &Given, words: &[String]) -> Result<bool> {
    let stage = Stage::new(Engine::Chromium, given)?;
    println!("Chromium, processor slowed {SLOWER} times; milliseconds");
    warn_of_company();
    let is_named =
        |name: &str| words.is_empty() || words.iter().any(|word| name.contains(word.as_str()));
    let mut kept = true;
    for (_, measure) in FIGURES.iter().filter(|(name, _)| is_named(name)) {
        kept &= measure(&stage)?;
    }
    Ok(kept)
}

/// Other programs at work make every figure larger than it is: then that is said.
fn warn_of_company() {
    let load = std::fs::read_to_string("/proc/loadavg").unwrap_or_default();
    let load: f64 = load
        .split(' ')
        .next()
        .and_then(|text| text.parse().ok())
        .unwrap_or(0.0);
    if load > 1.0 {
        println!("(other programs are at work, load {load:.1}: the figures below are too large)");
    }
}

fn time_keys(stage: &Stage) -> Result<bool> {
    let visit = stage.start()?;
    make_job(&visit)?;
    bare_the_pins(&visit)?;
    visit.wait_for_mark("offline", "ready")?;
    choose_pair(&visit, "1 and 3")?;
    visit.run(STOPWATCH)?;
    slow_down(&visit)?;

    let reading = ["1", "2", ".", "0", "4"];
    for press in 0..PRESSES {
        let step = press % (2 * reading.len());
        match reading.get(step) {
            Some(character) => visit.window().press_text(character)?,
            None => visit.window().press(&[Key::Backspace])?,
        }
        sleep(Duration::from_millis(60));
    }
    let presses = take_times(&visit)?;
    ensure!(
        presses.len() == PRESSES,
        "{} of {PRESSES} presses were seen",
        presses.len()
    );
    // "12" and "12." are the same value: only a digit has to change the picture.
    let is_idle_digit = |press: &&Value| {
        press["changes"] == 0
            && press["key"]
                .as_str()
                .is_some_and(|key| key.parse::<u8>().is_ok())
    };
    let idle = presses.iter().filter(is_idle_digit).count();
    ensure!(
        idle == 0,
        "{idle} digits changed nothing: they were not typed into the field"
    );
    let painted = figures(&presses, "painted")?;
    print_figures("key press to painted diagram", &painted);
    print_figures(
        "  the browser's own figure (15 stands for all below 16)",
        &by_browser(&presses),
    );

    time_entries(&visit)?;
    stage.close(visit);
    let slowest = percentile(&painted, 95);
    let kept = slowest <= LIMIT;
    println!(
        "  limit: {LIMIT} at the 95th percentile: {}",
        if kept { "kept" } else { "EXCEEDED" }
    );
    Ok(kept)
}

/// The press that enters a reading: the whole diagram, the findings and the labels change.
fn time_entries(visit: &Visit) -> Result<()> {
    let readings = [("1 and 3", "12.0"), ("2 and 3", "7.6"), ("1 and 2", "4.7")];
    let mut entered = Vec::new();
    for count in 0..ENTRIES {
        let (pair, reading) = readings[count % readings.len()];
        choose_pair(visit, pair)?;
        visit.fill(&format!("Touch {pair}"), reading)?;
        sleep(Duration::from_millis(100));
        visit.run("window.keyTimes.length = 0")?;
        visit.window().press(&[Key::Enter])?;
        visit.find(Kind::Control, &format!("Between pins {pair}: "))?;
        sleep(Duration::from_millis(200));
        entered.extend(take_times(visit)?);
    }
    print_figures(
        "entering a reading to painted diagram",
        &figures(&entered, "painted")?,
    );
    Ok(())
}

fn take_times(visit: &Visit) -> Result<Vec<Value>> {
    sleep(Duration::from_millis(300));
    let times = visit.run("return window.keyTimes.splice(0)")?;
    Ok(times.as_array().cloned().unwrap_or_default())
}

fn time_loads(stage: &Stage) -> Result<bool> {
    let packed = stage.copy_of_page()?;
    pack(&packed)?;
    let mut loads = Vec::new();
    for _ in 0..LOADS {
        let visit = stage.visit(stage.site_of(&packed, "/")?, &Habits::default())?;
        let script = json!({"source": WATCH_LOAD});
        visit
            .window()
            .chromium("Page.addScriptToEvaluateOnNewDocument", &script)?;
        visit.window().chromium("Network.enable", &json!({}))?;
        let bytes = BITS_PER_SECOND / 8.0;
        let network = json!({"offline": false, "latency": LATENCY, "downloadThroughput": bytes, "uploadThroughput": bytes});
        visit
            .window()
            .chromium("Network.emulateNetworkConditions", &network)?;
        slow_down(&visit)?;
        visit.arrive()?;
        visit.wait_for_mark("offline", "ready")?;
        loads.push(visit.run("return window.load")?);
        stage.close(visit);
    }
    println!(
        "first visit over 1.6 Mbit/s and {LATENCY} ms, files packed, {LOADS} visits; milliseconds"
    );
    print_figures("  first contentful paint", &figures(&loads, "first")?);
    print_figures("  largest contentful paint", &figures(&loads, "largest")?);
    print_figures("  first usable screen", &figures(&loads, "usable")?);
    let moved = figures(&loads, "moved")?;
    println!(
        "  cumulative layout shift: {:.3} at most",
        percentile(&moved, 100)
    );
    Ok(true)
}

fn slow_down(visit: &Visit) -> Result<()> {
    let rate = json!({"rate": SLOWER});
    visit
        .window()
        .chromium("Emulation.setCPUThrottlingRate", &rate)
        .map(drop)
}

/// Puts a packed copy beside every file, as servers do.
fn pack(folder: &Path) -> Result<()> {
    let packed = Command::new("gzip")
        .args(["-9", "--keep", "--recursive"])
        .arg(folder)
        .status()
        .context("gzip can't be started")?;
    ensure!(packed.success(), "gzip can't pack the page");
    Ok(())
}

fn figures(measured: &[Value], name: &str) -> Result<Vec<f64>> {
    let mut figures: Vec<f64> = measured
        .iter()
        .map(|one| {
            one[name]
                .as_f64()
                .with_context(|| format!("{name} was not measured"))
        })
        .collect::<Result<_>>()?;
    figures.sort_by(f64::total_cmp);
    Ok(figures)
}

fn by_browser(presses: &[Value]) -> Vec<f64> {
    let mut figures: Vec<f64> = presses
        .iter()
        .map(|press| press["byBrowser"].as_f64().unwrap_or(15.0))
        .collect();
    figures.sort_by(f64::total_cmp);
    figures
}

/// The smallest figure that this many of a hundred don't exceed.
fn percentile(sorted: &[f64], percent: usize) -> f64 {
    let rank = (sorted.len() * percent).div_ceil(100);
    sorted
        .get(rank.saturating_sub(1))
        .copied()
        .unwrap_or(f64::NAN)
}

fn print_figures(what: &str, sorted: &[f64]) {
    println!(
        "{what}: p50 {:.1}, p95 {:.1}, most {:.1} ({} measured)",
        percentile(sorted, 50),
        percentile(sorted, 95),
        percentile(sorted, 100),
        sorted.len()
    );
}

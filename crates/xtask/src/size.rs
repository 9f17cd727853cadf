//! The page's weight: what a browser with an empty profile really requests, file by file, as `gzip -9` packs it.

use std::collections::BTreeMap;
use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result, ensure};

use crate::browser::Browser;
use crate::server::{RunningServer, Seen, Site};
use crate::stage::{is_for_cold, is_for_practice, is_further};

/// What a phone must load before the first usable screen. This budget never moves.
const FIRST_SCREEN_BUDGET: u64 = 200_000;

/// What the service worker may fetch afterwards, for working offline. What is said of a whole job is one part: with the
/// cool-down, its proof, energy and what probes say of the circuit in it, it no longer goes into 450 kB.
const WORKER_BUDGET: u64 = 550_000;

/// What it fetches after that: the windings, the record, and what is opened now and then.
const FURTHER_BUDGET: u64 = 140_000;

/// What proves the cold: the cool-down, a logger's file, energy, the refrigerant. Fetched beside that.
const COLD_BUDGET: u64 = 150_000;

/// What practising may fetch when it is first used.
const PRACTICE_BUDGET: u64 = 90_000;

/// One file that was requested.
#[derive(Debug, PartialEq, Eq)]
struct Line {
    file: String,
    times: u64,
    bytes: u64,
}

/// Opens the page in a browser, prints what it requested, and fails where a budget is exceeded.
pub(crate) fn check(dist: &Path) -> Result<()> {
    let site = Site {
        folder: dist.to_owned(),
        prefix: "/".to_owned(),
    };
    let server = RunningServer::start(site, "127.0.0.1:0")?;
    let browser = Browser::open()?;
    browser.go_to(&format!("http://127.0.0.1:{}/", server.port()))?;
    browser.wait_for_mark("ready")?;
    // The worker starts after the first screen. What the page itself still asks for in the meantime, its icon for
    // example, is counted with the first screen: rather too much than too little.
    let offline = browser.wait_for_mark("offline")?;
    let seen = server.seen();
    drop(browser);

    ensure!(
        offline == "ready",
        "the service worker did not fetch all files: data-offline is {offline:?}"
    );
    let missing: Vec<&str> = seen
        .iter()
        .filter(|seen| !seen.found)
        .map(|seen| seen.file.as_str())
        .collect();
    ensure!(
        missing.is_empty(),
        "the page asked for files that are not there: {}",
        missing.join(", ")
    );

    let size_of = |file: &str| packed_size(&dist.join(file));
    let first = lines(seen.iter().filter(|seen| !seen.by_worker), size_of)?;
    let by_worker = || seen.iter().filter(|seen| seen.by_worker);
    let worker = lines(by_worker().filter(|seen| !is_further(&seen.file)), size_of)?;
    let is_other = |seen: &&Seen| is_further(&seen.file) && !is_for_cold(&seen.file);
    let further = lines(by_worker().filter(is_other), size_of)?;
    let cold = lines(by_worker().filter(|seen| is_for_cold(&seen.file)), size_of)?;
    let first_total = print("Up to the first usable screen", &first, FIRST_SCREEN_BUDGET);
    let worker_total = print(
        "Fetched by the service worker afterwards",
        &worker,
        WORKER_BUDGET,
    );
    let further_total = print("And by it after that", &further, FURTHER_BUDGET);
    let cold_total = print("And what proves the cold", &cold, COLD_BUDGET);
    let practice = practice_files(dist)?;
    let early = seen.iter().find(|seen| practice.contains(&seen.file));
    ensure!(
        early.is_none(),
        "what practising needs was fetched without practising: {early:?}"
    );
    let practice: Vec<Line> = practice
        .into_iter()
        .map(|file| {
            Ok(Line {
                bytes: size_of(&file)?,
                file,
                times: 1,
            })
        })
        .collect::<Result<_>>()?;
    let practice_total = print(
        "Fetched when practising is first used",
        &practice,
        PRACTICE_BUDGET,
    );
    ensure!(
        [
            first_total,
            worker_total,
            further_total,
            cold_total,
            practice_total
        ]
        .iter()
        .all(|total| *total > 0),
        "the browser requested nothing: the measurement itself is broken"
    );
    ensure!(
        first_total <= FIRST_SCREEN_BUDGET,
        "the first screen is over its budget"
    );
    ensure!(
        worker_total <= WORKER_BUDGET,
        "the service worker is over its budget"
    );
    ensure!(
        further_total <= FURTHER_BUDGET,
        "the screens that are opened now and then are over their budget"
    );
    ensure!(
        cold_total <= COLD_BUDGET,
        "what proves the cold is over its budget"
    );
    ensure!(
        practice_total <= PRACTICE_BUDGET,
        "practising is over its budget"
    );
    Ok(())
}

/// What of the page is fetched for practising only.
fn practice_files(dist: &Path) -> Result<Vec<String>> {
    let mut files = Vec::new();
    for entry in std::fs::read_dir(dist)? {
        let name = entry?.file_name().to_string_lossy().into_owned();
        if is_for_practice(&name) {
            files.push(name);
        }
    }
    Ok(files)
}

fn lines<'a>(
    seen: impl Iterator<Item = &'a Seen>,
    size_of: impl Fn(&str) -> Result<u64>,
) -> Result<Vec<Line>> {
    let mut times: BTreeMap<&str, u64> = BTreeMap::new();
    for request in seen {
        *times.entry(&request.file).or_default() += 1;
    }
    let mut lines = Vec::new();
    for (file, times) in times {
        lines.push(Line {
            file: file.to_owned(),
            times,
            bytes: size_of(file)?,
        });
    }
    lines.sort_by_key(|line| std::cmp::Reverse(line.times * line.bytes));
    Ok(lines)
}

fn total(lines: &[Line]) -> u64 {
    lines.iter().map(|line| line.times * line.bytes).sum()
}

fn print(heading: &str, lines: &[Line], budget: u64) -> u64 {
    println!("\n{heading}, bytes as gzip -9 packs them:");
    for line in lines {
        let times = if line.times > 1 {
            format!("  (requested {} times)", line.times)
        } else {
            String::new()
        };
        println!("{:>9}  {}{times}", line.bytes * line.times, line.file);
    }
    let total = total(lines);
    println!("{total:>9}  in all, of {budget}");
    total
}

/// Packs with the very program that the budget names.
fn packed_size(file: &Path) -> Result<u64> {
    let output = Command::new("gzip")
        .args(["-9", "--no-name", "--stdout"])
        .arg(file)
        .output()
        .context("gzip can't be started")?;
    ensure!(
        output.status.success(),
        "gzip can't read {}",
        file.display()
    );
    Ok(output.stdout.len().try_into()?)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn request(file: &str) -> Seen {
        Seen {
            file: file.to_owned(),
            found: true,
            by_worker: false,
        }
    }

    #[test]
    fn a_file_that_is_requested_twice_weighs_twice() {
        let seen = [request("app.js"), request("app.wasm"), request("app.js")];
        let lines = lines(seen.iter(), |file| {
            Ok(if file == "app.js" { 10 } else { 15 })
        })
        .unwrap();
        assert_eq!(total(&lines), 35);
        assert_eq!(
            lines[0],
            Line {
                file: "app.js".to_owned(),
                times: 2,
                bytes: 10
            }
        );
    }
}

//! The browser is killed at random moments of entering readings, fifty times with the same profile: every entry that
//! was shown as kept is there when it is opened again.
//!
//! A kill ends every process of the browser at once, as the system does when a phone runs out of memory. What the
//! browser had not handed to the system by then is gone.

use std::collections::BTreeSet;
use std::rc::Rc;
use std::time::{Duration, Instant};

use anyhow::{Context, Result, ensure};

use crate::engine::Habits;
use crate::stage::Stage;
use crate::steps::{bare_the_pins, choose_pair, make_job};
use crate::visit::{Kind, Visit};
use crate::webdriver::Key;

const KILLS: u32 = 50;

/// The shortest and the longest time that readings are entered before the next kill, in milliseconds.
const BETWEEN: (u64, u64) = (50, 2_500);

const PAIRS: [&str; 3] = ["1 and 2", "1 and 3", "2 and 3"];

pub(super) fn run(stage: &Stage) -> Result<()> {
    let habits = Habits {
        profile: Some(stage.folder().join("profile")),
        ..Habits::default()
    };
    let mut visit = stage.visit(stage.site("/")?, &habits)?;
    visit.arrive()?;
    make_job(&visit)?;
    bare_the_pins(&visit)?;
    wait_until_kept(&visit)?;
    let job = visit.run("return location.hash")?;
    let job = job.as_str().context("the job has no address")?;
    let known = job.replace("/do/windings", "/known");

    let mut entered = Entered::default();
    let mut lost = Vec::new();
    for kill in 0..KILLS {
        let until = Instant::now() + moment(kill);
        while Instant::now() < until {
            entered.enter_one(&visit)?;
        }
        // Every other time in the middle of an entry that nobody has seen yet.
        if kill % 2 == 1 {
            entered.type_one(&visit)?;
        }
        visit.kill_browser()?;
        visit = reopen(stage, visit, &habits, &known)?;
        lost.extend(
            entered
                .missing(&visit)?
                .into_iter()
                .map(|reading| (kill, reading)),
        );
        visit.go_to(job)?;
        visit.find(Kind::Control, "Between pins 1 and 2")?;
    }
    let count = entered.kept.len();
    println!(
        "  {count} entries shown as kept, {KILLS} kills, {} lost",
        lost.len()
    );
    ensure!(count >= 100, "only {count} entries were made");
    ensure!(
        lost.is_empty(),
        "lost, with the kill that lost them: {lost:?}"
    );
    Ok(())
}

/// The readings that were shown as kept.
#[derive(Default)]
struct Entered {
    next: usize,
    kept: BTreeSet<String>,
}

impl Entered {
    /// Enters a reading and waits until it is shown as kept.
    fn enter_one(&mut self, visit: &Visit) -> Result<()> {
        let (pair, reading) = self.type_one(visit)?;
        visit.find(
            Kind::Control,
            &format!("Between pins {pair}: {reading} ohms"),
        )?;
        wait_until_kept(visit)?;
        self.kept.insert(reading);
        Ok(())
    }

    /// Types a reading that was not typed before, and presses Enter.
    fn type_one(&mut self, visit: &Visit) -> Result<(&'static str, String)> {
        let pair = PAIRS[self.next % PAIRS.len()];
        let reading = format!("{}.{:02}", 10 + self.next / 100, self.next % 100);
        self.next += 1;
        choose_pair(visit, pair)?;
        visit.fill(&format!("Touch {pair}"), &reading)?;
        visit.window().press(&[Key::Enter])?;
        Ok((pair, reading))
    }

    /// The readings that were kept and are not there any more. Each is told once.
    fn missing(&mut self, visit: &Visit) -> Result<Vec<String>> {
        let shown = visit.text()?;
        let is_there = |reading: &str| shown.contains(&format!("{reading} Ω"));
        let gone: Vec<String> = self
            .kept
            .iter()
            .filter(|one| !is_there(one))
            .cloned()
            .collect();
        self.kept.retain(|one| !gone.contains(one));
        Ok(gone)
    }
}

/// Where the page needs a moment to keep something, it says so with `data-keeping`.
fn wait_until_kept(visit: &Visit) -> Result<()> {
    visit.wait_until("what was entered to be kept", || {
        let keeping = visit.run("return document.documentElement.dataset.keeping || ''")?;
        Ok(keeping == "")
    })
}

fn reopen(stage: &Stage, killed: Rc<Visit>, habits: &Habits, address: &str) -> Result<Rc<Visit>> {
    let site = killed.site.gone();
    stage.close(killed);
    site.start()?;
    let visit = stage.visit(site, habits)?;
    visit.go_to(address)?;
    visit.see("Everything entered")?;
    Ok(visit)
}

/// The same moments each time, spread without a pattern.
fn moment(kill: u32) -> Duration {
    let spread = BETWEEN.1 - BETWEEN.0;
    let place = u64::from(kill).wrapping_mul(0x9E37_79B9_7F4A_7C15) >> 33;
    Duration::from_millis(BETWEEN.0 + place % spread)
}

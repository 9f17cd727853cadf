//! The journeys: one file each, whose name says what it proves.

mod a_hostile_file_runs_nothing;
mod a_job_is_read_the_same_on_the_command_line;
mod a_killed_browser_loses_no_entry;
mod a_late_part_loses_nothing;
mod a_new_version_waits_until_told;
mod all_jobs_go_out_and_come_back;
mod bad_input_loses_nothing;
mod drafts_survive_a_reload;
mod everything_can_be_undone;
mod examines_a_machine_before_it_is_plugged_in;
mod examples_show_what_they_should;
mod files_that_are_no_jobs_harm_nothing;
mod fits_small_screens;
mod full_storage_loses_nothing;
mod is_accessible_on_every_screen;
mod old_browsers_are_told;
mod opens_again_without_a_network;
mod practises_without_a_network;
mod prints_the_record;
mod proves_the_cold;
mod proves_the_cold_by_keyboard_alone;
mod runs_at_a_plain_address;
mod runs_below_a_path;
mod runs_without_storage;
mod shows_the_pictures_of_the_readme;
mod shows_the_proof_and_its_gaps;
mod solves_a_practice_machine;
mod takes_in_a_log;
mod tells_what_a_machine_uses;
mod times_starts_after_rests;
mod two_tabs_lose_no_entry;
mod weighs_the_whole_machine;
mod works_by_keyboard_alone;
mod works_with_power_on;

use std::time::Instant;

use anyhow::{Result, ensure};

use crate::engine::Engine;
use crate::stage::{Given, Stage};

/// A journey through the page.
#[derive(Clone, Copy)]
pub(crate) struct Journey {
    /// What it proves.
    name: &'static str,
    engines: Engines,
    run: fn(&Stage) -> Result<()>,
}

/// The engines that a journey can be gone through with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Engines {
    Both,
    /// It needs what only Chromium's driver can do.
    Chromium,
}

/// Makes a list of journeys out of the names of their files.
macro_rules! journeys {
    ($($name:ident: $engines:expr,)*) => {
        &[$(Journey {
            name: stringify!($name),
            engines: $engines,
            run: $name::run,
        }),*]
    };
}

const ALL: &[Journey] = journeys! {
    a_hostile_file_runs_nothing: Engines::Both,
    a_job_is_read_the_same_on_the_command_line: Engines::Both,
    a_killed_browser_loses_no_entry: Engines::Chromium,
    a_late_part_loses_nothing: Engines::Chromium,
    a_new_version_waits_until_told: Engines::Both,
    all_jobs_go_out_and_come_back: Engines::Both,
    bad_input_loses_nothing: Engines::Both,
    drafts_survive_a_reload: Engines::Both,
    everything_can_be_undone: Engines::Both,
    examines_a_machine_before_it_is_plugged_in: Engines::Both,
    examples_show_what_they_should: Engines::Both,
    files_that_are_no_jobs_harm_nothing: Engines::Both,
    fits_small_screens: Engines::Both,
    full_storage_loses_nothing: Engines::Both,
    is_accessible_on_every_screen: Engines::Both,
    old_browsers_are_told: Engines::Chromium,
    opens_again_without_a_network: Engines::Chromium,
    practises_without_a_network: Engines::Chromium,
    prints_the_record: Engines::Both,
    proves_the_cold: Engines::Both,
    proves_the_cold_by_keyboard_alone: Engines::Both,
    runs_at_a_plain_address: Engines::Chromium,
    runs_below_a_path: Engines::Both,
    runs_without_storage: Engines::Chromium,
    shows_the_proof_and_its_gaps: Engines::Both,
    solves_a_practice_machine: Engines::Chromium,
    takes_in_a_log: Engines::Both,
    tells_what_a_machine_uses: Engines::Both,
    times_starts_after_rests: Engines::Both,
    two_tabs_lose_no_entry: Engines::Chromium,
    weighs_the_whole_machine: Engines::Both,
    works_by_keyboard_alone: Engines::Both,
    works_with_power_on: Engines::Both,
};

/// Gone through only when it is asked for, because it changes files of the repository.
pub(crate) const README_PICTURES: Journey = Journey {
    name: "shows_the_pictures_of_the_readme",
    engines: Engines::Chromium,
    run: shows_the_pictures_of_the_readme::run,
};

/// The journeys for an engine whose name holds one of these words; all of them where there is no word.
pub(crate) fn chosen(engine: Engine, words: &[String]) -> Result<Vec<Journey>> {
    let is_for = |journey: &Journey| engine == Engine::Chromium || journey.engines == Engines::Both;
    let is_named = |journey: &Journey| {
        words.is_empty() || words.iter().any(|word| journey.name.contains(word))
    };
    let chosen: Vec<Journey> = ALL
        .iter()
        .filter(|journey| is_for(journey) && is_named(journey))
        .copied()
        .collect();
    let names: Vec<&str> = ALL.iter().map(|journey| journey.name).collect();
    ensure!(
        !chosen.is_empty(),
        "no journey has such a name. They are: {}",
        names.join(", ")
    );
    Ok(chosen)
}

/// Fails where there are problems, and tells the first of them.
fn none_of(what: &str, problems: &[String]) -> Result<()> {
    const TOLD: usize = 30;
    let first = problems.get(..TOLD).unwrap_or(problems).join("\n  ");
    ensure!(
        problems.is_empty(),
        "{} {what}, of which the first:\n  {first}",
        problems.len()
    );
    Ok(())
}

/// Goes through the journeys one after another, and returns whether all of them held.
pub(crate) fn run(chosen: &[Journey], engine: Engine, given: &Given) -> Result<bool> {
    let mut failed = 0;
    for journey in chosen {
        let start = Instant::now();
        let stage = Stage::new(engine, given)?;
        let outcome = (journey.run)(&stage).and_then(|()| stage.check_for_mistakes());
        let seconds = start.elapsed().as_secs_f32();
        match outcome {
            Ok(()) => println!("test {} ... ok ({seconds:.1} s)", journey.name),
            Err(problem) => {
                failed += 1;
                println!(
                    "test {} ... FAILED ({seconds:.1} s)\n  {problem:#}",
                    journey.name
                );
                if let Err(problem) = stage.save_evidence(journey.name) {
                    println!("  what was shown can't be saved: {problem:#}");
                }
            }
        }
    }
    println!("{} passed, {failed} failed", chosen.len() - failed);
    Ok(failed == 0)
}

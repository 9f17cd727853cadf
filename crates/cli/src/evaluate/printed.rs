//! The figures as tables for people and as one object for programs.

use std::collections::BTreeMap;
use std::fmt::Write;

use practice::{Row, Tally, Ways};
use serde::Serialize;

use super::Figures;
use crate::trial::{Trial, meter_name};

const fn name(way: Ways) -> &'static str {
    match way {
        Ways::Ours => "our next check",
        Ways::Checklist => "fixed checklist",
        Ways::Random => "any check",
    }
}

fn percent(share: f64) -> String {
    format!("{:.1}", 100.0 * share)
}

pub(super) fn text(trial: &Trial, figures: &Figures) -> String {
    let mut out = String::new();
    let [ours, ..] = &figures.tallies;
    head(&mut out, trial, figures);
    by_what(&mut out, trial, ours);
    best_possible(&mut out, figures);
    honesty(&mut out, ours);
    let _ = writeln!(
        out,
        "\nfirst: the likeliest is true; three: one of three is; action: what is advised mends it;\n\
         sound: a sound compressor given up; vain: a repair that would not have helped"
    );
    out
}

fn head(out: &mut String, trial: &Trial, figures: &Figures) {
    let [ours, ..] = &figures.tallies;
    // Writing to a string can't fail.
    let _ = writeln!(
        out,
        "{} of {} machines that were offered as faulty, seed {}, {} meter; in percent, and a machine",
        ours.row().machines,
        trial.machines,
        trial.seed,
        trial.meter_name()
    );
    let _ = writeln!(
        out,
        "{:24} {:>6} {:>6} {:>6} {:>6} {:>6} {:>7} {:>7} {:>7} {:>6} {:>6}",
        "",
        "first",
        "three",
        "action",
        "sound",
        "vain",
        "checks",
        "minutes",
        "waiting",
        "Brier",
        "unsafe"
    );
    for (way, tally) in Ways::ALL.into_iter().zip(&figures.tallies) {
        line(out, name(way), &tally.row());
    }
}

/// Our next check by what is wrong, by kind of machine and by meter.
fn by_what(out: &mut String, trial: &Trial, ours: &Tally) {
    let _ = writeln!(out, "\nby what is wrong, our next check");
    for (fault, row) in ours.by_fault() {
        line(out, &format!("{fault} ({})", row.machines), &row);
    }
    let _ = writeln!(out, "\nby kind of machine, our next check");
    for (machine, row) in ours.by_machine() {
        line(out, &format!("{machine} ({})", row.machines), &row);
    }
    if trial.both_meters {
        let _ = writeln!(out, "\nby meter, our next check");
        for (meter, row) in ours.by_meter() {
            let name = meter_name(meter);
            line(out, &format!("{name} ({})", row.machines), &row);
        }
    }
    let _ = writeln!(
        out,
        "\nright action, each fault counting alike: {}",
        percent(ours.right_action_by_fault())
    );
}

fn best_possible(out: &mut String, figures: &Figures) {
    if let Some(best) = &figures.best_possible {
        let _ = writeln!(
            out,
            "best answer to the same readings, as far as learned from these machines: \
             action {}, first {}; the best possible is hardly less",
            percent(best.action),
            percent(best.first)
        );
    }
}

fn honesty(out: &mut String, ours: &Tally) {
    let _ = writeln!(
        out,
        "\nstated odds of the first suspect, and how often it was true"
    );
    for bin in ours.reliability() {
        let (said, found) = (percent(bin.said), percent(bin.found));
        let _ = writeln!(
            out,
            "{:5} machines: said {said:>5}, true {found:>5}",
            bin.machines
        );
    }
    let _ = writeln!(
        out,
        "expected calibration error {:.3}; so many machines with perfect odds would have {:.3}",
        ours.calibration_error(),
        ours.calibration_noise()
    );
}

fn line(out: &mut String, name: &str, row: &Row) {
    let _ = writeln!(
        out,
        "{name:31} {:>6} {:>6} {:>6} {:>6} {:>6} {:7.1} {:7.1} {:7.0} {:6.3} {:6}",
        percent(row.right_first),
        percent(row.right_in_three),
        percent(row.right_action),
        percent(row.condemned_sound),
        percent(row.repair_in_vain),
        row.checks,
        row.minutes,
        row.waiting,
        row.brier,
        row.unsafe_steps
    );
}

/// What `--json` prints.
#[derive(Serialize)]
struct Published {
    machines: usize,
    seed: u64,
    meter: &'static str,
    right_action: f64,
    right_action_by_fault: f64,
    /// Of the best answer that was learned from the same readings, out of fold; null for few
    /// machines.
    best_possible_action: Option<f64>,
    best_possible_first: Option<f64>,
    right_first: f64,
    right_in_three: f64,
    condemned_sound: f64,
    repair_in_vain: f64,
    calibration_error: f64,
    calibration_noise: f64,
    brier: f64,
    checks: f64,
    minutes: f64,
    checklist_minutes: f64,
    checklist_right_action: f64,
    random_minutes: f64,
    random_right_action: f64,
    unsafe_steps: usize,
    by_machine: BTreeMap<&'static str, Part>,
    by_meter: BTreeMap<&'static str, Part>,
}

/// Some of the machines.
#[derive(Serialize)]
struct Part {
    machines: usize,
    right_action: f64,
    right_first: f64,
    right_in_three: f64,
    minutes: f64,
    unsafe_steps: usize,
}

impl Part {
    fn of(row: &Row) -> Self {
        Self {
            machines: row.machines,
            right_action: row.right_action,
            right_first: row.right_first,
            right_in_three: row.right_in_three,
            minutes: row.minutes,
            unsafe_steps: row.unsafe_steps,
        }
    }
}

pub(super) fn json(trial: &Trial, figures: &Figures) -> String {
    let [ours, checklist, random] = &figures.tallies;
    let (row, list, any) = (ours.row(), checklist.row(), random.row());
    let best = figures.best_possible.as_ref();
    let by_machine = ours.by_machine().into_iter();
    let by_meter = ours.by_meter().into_iter();
    let published = Published {
        machines: row.machines,
        seed: trial.seed,
        meter: trial.meter_name(),
        right_action: row.right_action,
        right_action_by_fault: ours.right_action_by_fault(),
        best_possible_action: best.map(|best| best.action),
        best_possible_first: best.map(|best| best.first),
        right_first: row.right_first,
        right_in_three: row.right_in_three,
        condemned_sound: row.condemned_sound,
        repair_in_vain: row.repair_in_vain,
        calibration_error: ours.calibration_error(),
        calibration_noise: ours.calibration_noise(),
        brier: row.brier,
        checks: row.checks,
        minutes: row.minutes,
        checklist_minutes: list.minutes,
        checklist_right_action: list.right_action,
        random_minutes: any.minutes,
        random_right_action: any.right_action,
        unsafe_steps: row.unsafe_steps,
        by_machine: by_machine
            .map(|(name, row)| (name, Part::of(&row)))
            .collect(),
        by_meter: by_meter
            .map(|(meter, row)| (meter_name(meter), Part::of(&row)))
            .collect(),
    };
    // Numbers and words: nothing that JSON can't hold.
    let text = serde_json::to_string_pretty(&published).unwrap_or_default();
    text + "\n"
}

//! `coldcase evaluate`: how the app's way of working fares on simulated machines.

use std::fmt::Write;
use std::thread;

use diagnosis::Model;
use practice::{Evaluation, Row, Tally, Ways};
use serde::Serialize;

use crate::arguments::Trial;
use crate::{Outcome, Printed};

pub(crate) fn run(trial: &Trial) -> Printed {
    match tallies(trial) {
        Err(why) => Printed {
            output: String::new(),
            errors: format!("coldcase: a machine can't be simulated: {why}\n"),
            outcome: Outcome::Unreadable,
        },
        Ok(tallies) => Printed {
            output: if trial.json {
                json(trial, &tallies)
            } else {
                text(trial, &tallies)
            },
            errors: String::new(),
            outcome: Outcome::Done,
        },
    }
}

type Tallies = [Tally; 3];

/// Each core takes every so-manieth machine; they are put together in the order of their numbers.
fn tallies(trial: &Trial) -> Result<Tallies, simulator::ParameterError> {
    let cores = thread::available_parallelism().map_or(1, usize::from) as u64;
    let share = |core: u64| {
        let model = Model::default();
        let numbers = (core..trial.machines).step_by(cores as usize);
        numbers
            .map(|number| Evaluation::of(&model, trial.meter, trial.seed, number))
            .collect::<Result<Vec<_>, _>>()
    };
    let shares: Vec<_> = thread::scope(|scope| {
        let share = &share;
        let threads: Vec<_> = (0..cores)
            .map(|core| scope.spawn(move || share(core)))
            .collect();
        threads
            .into_iter()
            .map(thread::ScopedJoinHandle::join)
            .collect()
    });
    let mut all = Vec::new();
    for share in shares {
        // A thread that fell over has told why already.
        let share = share.unwrap_or_else(|panic| std::panic::resume_unwind(panic))?;
        all.push(share.into_iter());
    }
    let mut tallies = Tallies::default();
    for number in 0..trial.machines {
        let next = all[(number % cores) as usize].next().flatten();
        for (tally, score) in tallies
            .iter_mut()
            .zip(next.into_iter().flat_map(|one| one.scores))
        {
            tally.add(score);
        }
    }
    Ok(tallies)
}

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

fn text(trial: &Trial, tallies: &Tallies) -> String {
    let mut out = String::new();
    let [ours, ..] = tallies;
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
    for (way, tally) in Ways::ALL.into_iter().zip(tallies) {
        line(&mut out, name(way), &tally.row());
    }
    let _ = writeln!(out, "\nby what is wrong, our next check");
    for (fault, row) in ours.by_fault() {
        line(&mut out, &format!("{fault} ({})", row.machines), &row);
    }
    let _ = writeln!(
        out,
        "\nright action, each fault counting alike: {}",
        percent(ours.right_action_by_fault())
    );
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
    let _ = writeln!(
        out,
        "\nfirst: the likeliest is true; three: one of three is; action: what is advised mends it;\n\
         sound: a sound compressor given up; vain: a repair that would not have helped"
    );
    out
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
struct Figures {
    machines: usize,
    seed: u64,
    meter: &'static str,
    right_action: f64,
    right_action_by_fault: f64,
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
}

fn json(trial: &Trial, [ours, checklist, random]: &Tallies) -> String {
    let (row, list, any) = (ours.row(), checklist.row(), random.row());
    let figures = Figures {
        machines: row.machines,
        seed: trial.seed,
        meter: trial.meter_name(),
        right_action: row.right_action,
        right_action_by_fault: ours.right_action_by_fault(),
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
    };
    // Numbers and words: nothing that JSON can't hold.
    let text = serde_json::to_string_pretty(&figures).unwrap_or_default();
    text + "\n"
}

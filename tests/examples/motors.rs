//! How often the windings check is right, on random motors whose windings are known.
//!
//! ```text
//! cargo run --profile host -p coldcase-tests --example motors
//! ```
//!
//! Prints every figure beside its bound, and ends with 1 when one is missed. What the motors,
//! the meters and the people are like is stated in `tests/motors`.

use std::process::ExitCode;

use coldcase_tests::motors::{Calibration, Kind, Noting, RatioSpread, Score, Trial};

/// How often one thing noted of the wiring is wrong (judgement).
const WRONG: f64 = 0.01;
const NOTED: Noting = Noting::Everything { wrong: WRONG };
const MOTORS: u32 = 100_000;
/// Enough that a gap of a decile is known to half a percent.
const CALIBRATION: u32 = 250_000;
const OTHER_WORLDS: u32 = 20_000;
const EACH_KIND: u32 = 10_000;

fn main() -> ExitCode {
    let mut bounds = Bounds::default();
    print_motors(&mut bounds);
    print_calibration(&mut bounds);
    print_other_worlds();
    for (title, noting) in [("nothing noted", Noting::Nothing), ("wiring noted", NOTED)] {
        print_confusion(title, noting);
    }
    bounds.exit_code()
}

fn sound(spread: RatioSpread, noting: Noting) -> Trial {
    Trial {
        kind: Kind::Sound,
        spread,
        noting,
    }
}

fn print_motors(bounds: &mut Bounds) {
    let noted = Score::of(sound(RatioSpread::Stated, NOTED), MOTORS / 2, 1);
    let bare = Score::of(sound(RatioSpread::Stated, Noting::Nothing), MOTORS / 2, 2);
    let mut all = noted;
    all.merge(&bare);
    println!(
        "{} random sound motors, wiring noted in half, each note wrong in {} of 100",
        all.machines,
        100.0 * WRONG
    );
    println!("                 common right   all right    all sure   wrong while sure");
    for (name, score) in [("noted", noted), ("not noted", bare), ("together", all)] {
        println!(
            "  {name:<14}{:>13}{:>12}{:>12}{:>19}",
            percent(score.share(score.common_right)),
            percent(score.share(score.all_right)),
            percent(score.share(score.sure)),
            percent(score.share(score.wrong_while_sure)),
        );
    }
    bounds.at_least("common pin right", all.share(all.common_right), 0.999);
    let all_right = noted.share(noted.all_right);
    bounds.at_least("all three right, wiring noted", all_right, 0.995);
    bounds.at_most("wrong while sure", all.share(all.wrong_while_sure), 0.001);
}

fn print_calibration(bounds: &mut Bounds) {
    let score = Score::of(sound(RatioSpread::Stated, Noting::Nothing), CALIBRATION, 3);
    println!(
        "\n{} motors, nothing noted: nine statements \"this pin plays that part\" each",
        score.machines
    );
    println!("  said to be  statements  motors  mean said  found true      gap  standard error");
    for (place, decile) in score.calibration.deciles.iter().enumerate() {
        println!(
            "  {:.1} to {:.1}{:>12}{:>8}{:>11.4}{:>12.4}{:>+9.4}{:>16.4}",
            place as f64 / 10.0,
            (place + 1) as f64 / 10.0,
            decile.statements,
            decile.machines,
            decile.said(),
            decile.found(),
            decile.gap(),
            decile.standard_error(),
        );
    }
    bounds.at_most("largest gap", largest_gap(&score.calibration), 0.02);
    let deciles = score.calibration.deciles.iter();
    let error = deciles.map(|d| d.standard_error()).fold(0.0, f64::max);
    bounds.at_most("largest standard error of a gap", error, 0.005);
}

/// Nothing has to be reached here: it shows what the answer leans on.
fn print_other_worlds() {
    println!("\n{OTHER_WORLDS} sound motors each, if the world is not as assumed");
    println!("                                common right   all right   wrong while sure");
    let bare = Noting::Nothing;
    let worlds = [
        ("more start below run", RatioSpread::LowerThanStated, bare),
        ("heavier tails of the ratio", RatioSpread::HeavyTails, bare),
        (
            "more start below run, noted",
            RatioSpread::LowerThanStated,
            NOTED,
        ),
        ("heavier tails, noted", RatioSpread::HeavyTails, NOTED),
        (
            "notes wrong in 2 of 100",
            RatioSpread::Stated,
            Noting::Everything { wrong: 0.02 },
        ),
        (
            "notes wrong in 5 of 100",
            RatioSpread::Stated,
            Noting::Everything { wrong: 0.05 },
        ),
    ];
    for (seed, (name, spread, noting)) in (10u64..).zip(worlds) {
        let score = Score::of(sound(spread, noting), OTHER_WORLDS, seed);
        println!(
            "  {name:<29}{:>13}{:>12}{:>19}",
            percent(score.share(score.common_right)),
            percent(score.share(score.all_right)),
            percent(score.share(score.wrong_while_sure)),
        );
    }
}

fn print_confusion(title: &str, noting: Noting) {
    println!("\nwhat {EACH_KIND} of each kind are taken for, in percent; {title}");
    print!("{:<18}", "");
    for kind in Kind::ALL {
        print!("{:>9}", kind.short_name());
    }
    println!();
    for (seed, kind) in (20u64..).zip(Kind::ALL) {
        let trial = Trial {
            kind,
            spread: RatioSpread::Stated,
            noting,
        };
        let score = Score::of(trial, EACH_KIND, seed);
        print!("  {:<16}", kind.name());
        for other in Kind::ALL {
            print!("{:>9.2}", 100.0 * score.taken_for(other));
        }
        println!();
    }
}

fn largest_gap(calibration: &Calibration) -> f64 {
    let gaps = calibration.deciles.iter().map(|decile| decile.gap().abs());
    gaps.fold(0.0, f64::max)
}

fn percent(share: f64) -> String {
    format!("{:.3} %", 100.0 * share)
}

/// Figures with what they have to reach.
#[derive(Default)]
struct Bounds {
    missed: u32,
}

impl Bounds {
    fn at_least(&mut self, name: &str, found: f64, bound: f64) {
        self.tell(name, found, found >= bound, &format!("at least {bound}"));
    }

    fn at_most(&mut self, name: &str, found: f64, bound: f64) {
        self.tell(name, found, found <= bound, &format!("at most {bound}"));
    }

    fn tell(&mut self, name: &str, found: f64, holds: bool, bound: &str) {
        let verdict = if holds { "reached" } else { "MISSED" };
        println!("{verdict}: {name} {found:.5} ({bound})");
        self.missed += u32::from(!holds);
    }

    fn exit_code(&self) -> ExitCode {
        println!("\n{} of the bounds missed", self.missed);
        ExitCode::from(u8::from(self.missed > 0))
    }
}

//! How often the windings check is right, on random motors whose windings are known.
//!
//! ```text
//! cargo run --release -p coldcase-tests --example motors
//! ```
//!
//! Prints every figure beside its bound, and ends with 1 when one is missed.

use std::process::ExitCode;

use coldcase_tests::motors::{Kind, Noting, RatioSpread, Score, Trial};

/// How often one thing noted of the wiring is wrong (judgement).
const WRONG: f64 = 0.01;
const MOTORS: u32 = 20_000;
const CALIBRATION: u32 = 50_000;
const EACH_KIND: u32 = 2_000;

fn main() -> ExitCode {
    let noted = Noting::Everything { wrong: WRONG };
    let bare = sound(RatioSpread::Stated, Noting::Nothing);
    let half = MOTORS / 2;
    let with_wiring = Score::of(sound(RatioSpread::Stated, noted), half, 1);
    let without = Score::of(bare, half, 2);
    let mut all = with_wiring;
    all.merge(&without);

    println!("{} random sound motors, wiring noted in half", all.machines);
    let mut bounds = Bounds::default();
    bounds.at_least("common pin right", all.share(all.common_right), 0.999);
    bounds.at_least(
        "all three right, wiring noted",
        with_wiring.share(with_wiring.all_right),
        0.995,
    );
    bounds.at_most("wrong while sure", all.share(all.wrong_while_sure), 0.001);
    for (name, score) in [("noted", with_wiring), ("not noted", without)] {
        println!(
            "  wiring {name}: common right {}, all right {}, all sure {}, wrong while sure {}",
            percent(score.share(score.common_right)),
            percent(score.share(score.all_right)),
            percent(score.share(score.sure)),
            percent(score.share(score.wrong_while_sure)),
        );
    }
    let calibration = Score::of(bare, CALIBRATION, 3);
    print_deciles(&calibration, &mut bounds);
    print_sensitivity();
    print_confusion();
    bounds.exit_code()
}

fn sound(spread: RatioSpread, noting: Noting) -> Trial {
    Trial {
        kind: Kind::Sound,
        spread,
        noting,
    }
}

fn print_deciles(score: &Score, bounds: &mut Bounds) {
    println!(
        "\n{} motors without wiring: statements \"this pin plays that part\"",
        score.machines
    );
    println!("  stated      statements  motors   mean stated  found true     gap  standard error");
    for (place, decile) in score.calibration.deciles.iter().enumerate() {
        println!(
            "  {:.1} to {:.1}  {:>10}  {:>6}       {:.4}      {:.4}  {:+.4}          {:.4}",
            place as f64 / 10.0,
            (place + 1) as f64 / 10.0,
            decile.statements,
            decile.machines,
            decile.stated(),
            decile.found(),
            decile.gap(),
            decile.standard_error(),
        );
    }
    let worst = score
        .calibration
        .deciles
        .iter()
        .map(|d| d.gap().abs())
        .fold(0.0, f64::max);
    bounds.at_most("largest gap of a decile", worst, 0.02);
    let error = score
        .calibration
        .deciles
        .iter()
        .map(|d| d.standard_error())
        .fold(0.0, f64::max);
    bounds.at_most("largest standard error of a gap", error, 0.005);
}

fn print_sensitivity() {
    println!("\nif the world is not as assumed (20,000 motors each, nothing to be reached)");
    let noted = Noting::Everything { wrong: WRONG };
    let cases = [
        (
            "lower ratios, nothing noted",
            RatioSpread::LowerThanStated,
            Noting::Nothing,
        ),
        (
            "heavier tails, nothing noted",
            RatioSpread::HeavyTails,
            Noting::Nothing,
        ),
        (
            "lower ratios, wiring noted",
            RatioSpread::LowerThanStated,
            noted,
        ),
        (
            "heavier tails, wiring noted",
            RatioSpread::HeavyTails,
            noted,
        ),
        (
            "notes wrong in 2 %",
            RatioSpread::Stated,
            Noting::Everything { wrong: 0.02 },
        ),
        (
            "notes wrong in 5 %",
            RatioSpread::Stated,
            Noting::Everything { wrong: 0.05 },
        ),
    ];
    for (place, (name, spread, noting)) in (10u64..).zip(cases) {
        let score = Score::of(sound(spread, noting), 20_000, place);
        let worst = score
            .calibration
            .deciles
            .iter()
            .map(|d| d.gap().abs())
            .fold(0.0, f64::max);
        println!(
            "  {name:<30} common right {}, all right {}, wrong while sure {}, largest gap {worst:.3}",
            percent(score.share(score.common_right)),
            percent(score.share(score.all_right)),
            percent(score.share(score.wrong_while_sure)),
        );
    }
}

fn print_confusion() {
    println!("\nwhat {EACH_KIND} of each kind are taken for, in percent");
    for (title, noting) in [
        ("wiring not noted", Noting::Nothing),
        ("wiring noted", Noting::Everything { wrong: WRONG }),
    ] {
        print!("{title:<18}");
        for kind in Kind::ALL {
            print!("{:>9}", kind.name().split(' ').next().unwrap_or_default());
        }
        println!();
        for (place, kind) in (20u64..).zip(Kind::ALL) {
            let trial = Trial {
                kind,
                spread: RatioSpread::Stated,
                noting,
            };
            let score = Score::of(trial, EACH_KIND, place);
            print!("  {:<16}", kind.name());
            for other in Kind::ALL {
                print!("{:>9.2}", 100.0 * score.recognised(other));
            }
            println!();
        }
    }
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

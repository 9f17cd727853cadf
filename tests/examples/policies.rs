//! What policies of looking and acting cost against the best one, on a hundred problems cut from
//! the networks of whole machines.
//!
//! ```text
//! cargo run --profile host -p coldcase-tests --example policies
//! ```

use std::process::ExitCode;

use coldcase_tests::policies::{Rule, problems, table};
use diagnosis::Assumptions;

fn main() -> ExitCode {
    let problems = problems(&Assumptions::default());
    let rows = match table(&problems) {
        Ok(rows) => rows,
        Err(error) => {
            eprintln!("{error}");
            return ExitCode::FAILURE;
        }
    };
    println!(
        "{} problems: expected cost over that of the best policy",
        problems.len()
    );
    println!(
        "{:42} {:>6} {:>9} {:>6} {:>10}",
        "policy", "middle", "95 of 100", "worst", "cost"
    );
    for row in rows {
        println!(
            "{:42} {:6.3} {:9.3} {:6.3} {:10.1}",
            name(row.rule),
            row.of_hundred(50),
            row.of_hundred(95),
            row.of_hundred(100),
            row.mean
        );
    }
    ExitCode::SUCCESS
}

const fn name(rule: Rule) -> &'static str {
    match rule {
        Rule::Best => "the best there is",
        Rule::Ours => "ours: most for its cost",
        Rule::OneCheckAhead => "the best if one check were made",
        Rule::ChanceOverCost => "no checks, chance over cost",
        Rule::Checklist => "a fixed checklist along the Path",
    }
}

//! Our policy of looking and acting against the best there is, on problems cut from the networks
//! of whole machines.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use coldcase_tests::policies::{Row, Rule, problems, table};
use diagnosis::Assumptions;

#[test]
fn our_policy_costs_hardly_more_than_the_best_and_less_than_simple_orders() {
    let problems = problems(&Assumptions::default());
    assert_eq!(problems.len(), 100);
    let rows = table(&problems).unwrap();
    let of = |rule: Rule| -> &Row { rows.iter().find(|row| row.rule == rule).unwrap() };
    // Nothing is better than the best, or one of the two is worked out wrongly.
    for row in &rows {
        assert!(row.ratios[0] >= 1.0 - 1e-9, "{row:?}");
    }
    let ours = of(Rule::Ours);
    assert!(ours.of_hundred(50) <= 1.05, "{ours:?}");
    assert!(ours.of_hundred(100) <= 1.2, "{ours:?}");
    for simple in [Rule::ChanceOverCost, Rule::Checklist] {
        assert!(ours.mean < of(simple).mean);
        assert!(of(simple).of_hundred(50) > ours.of_hundred(50));
    }
}

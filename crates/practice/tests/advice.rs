//! Following advice alone comes to the same as weighing everything at each step.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use std::cell::RefCell;

use diagnosis::{Adviser, Model, Priors, assess};
use measure::MeterKind;
use practice::{Order, drawn, walk, walk_with};
use simulator::Chance;

/// To the bit, at each step of each order.
#[test]
fn advice_is_what_weighing_everything_says() {
    let model = Model::default();
    // One for all, so that nothing of one job may be taken for another's.
    let adviser = RefCell::new(Adviser::new(&model));
    for number in 0..3 {
        let Some(mut sheet) = drawn(&Priors::default(), MeterKind::Good, 11, number).unwrap()
        else {
            continue;
        };
        for order in [
            Order::Ours,
            Order::Checklist,
            Order::Random(Chance::new(number)),
        ] {
            let weigh = |job: &job::Job, now: job::Moment| {
                let whole = assess(&model, job, now).whole;
                let advice = adviser.borrow_mut().advise(job, now);
                assert_eq!(advice.is_some(), whole.is_some());
                if let (Some(advice), Some(whole)) = (advice, &whole) {
                    assert_eq!(advice.next, whole.next);
                    assert_eq!(advice.verdict, whole.verdict);
                    assert_eq!(advice.safety_first, whole.safety_first);
                }
                whole
            };
            let slow = walk_with(&mut sheet, &weigh, order.clone()).unwrap();
            let quick = walk(&mut sheet, &model, order).unwrap();
            assert_eq!(slow, quick, "{number}");
        }
    }
}

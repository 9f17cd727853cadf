//! Whatever a document can hold, an assessment of it is made of numbers.

use diagnosis::{Model, assess};
use job::{Answer, Content, Entry, Id, Job, Measured, Moment, Origin, Question, Reading, Text};
use jobfile::Document;
use proptest::prelude::*;
use quantity::{Accuracy, Observed, Ohms, Typed};

/// Ohms from ordinary ones to the largest and smallest that a document takes.
fn ohms() -> impl Strategy<Value = f64> {
    prop_oneof![
        0.0..30.0f64,
        (-30.0..30.0f64).prop_map(|power| libm::pow(10.0, power)),
        (-30.0..30.0f64).prop_map(|power| -libm::pow(10.0, power)),
        Just(0.0),
        Just(1e30),
    ]
}

fn reading() -> impl Strategy<Value = Reading> {
    let step = (-300.0..30.0f64).prop_map(|power| libm::pow(10.0, power));
    let value = (ohms(), step).prop_map(|(value, count)| Typed {
        observed: Observed::Value(Ohms::new(value)),
        count: Ohms::new(count),
    });
    let over_range = ohms().prop_map(|above| Typed {
        observed: Observed::OverRange {
            above: Ohms::new(above),
        },
        count: Ohms::new(0.0),
    });
    let accuracy = prop_oneof![Just((0.0, 0.0)), (0.0..=20.0, 0.0..=100.0)];
    (prop_oneof![4 => value, 1 => over_range], accuracy).prop_map(|(typed, (percent, counts))| {
        Reading {
            typed: Text::new("x").unwrap(),
            measured: Measured::Ohms(typed),
            accuracy: Accuracy::new(percent, counts).unwrap(),
        }
    })
}

fn entry(item: &str, reading: Reading) -> Entry {
    Entry {
        id: Id::new(item).unwrap(),
        at: Moment::new(1_790_000_000_000, 60).unwrap(),
        content: Content::Answer {
            question: Question::new("windings", item).unwrap(),
            answer: Answer::Reading(reading),
        },
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(50))]

    #[test]
    fn every_probability_is_a_number_and_all_explanations_add_up_to_one(
        readings in [reading(), reading(), reading(), reading()],
        count in 1usize..=4,
    ) {
        let now = Moment::new(1_790_000_600_000, 60).unwrap();
        let job = Job::new(Id::new("j").unwrap(), now, Origin::Person);
        let mut document = Document::new(job).unwrap();
        let items = ["pair-1-2", "pair-2-3", "pair-1-3", "leads-reading"];
        for (item, reading) in items.into_iter().zip(readings).take(count) {
            document.add(entry(item, reading)).unwrap();
        }
        let windings = assess(&Model::default(), document.job(), now).windings.unwrap().windings;
        let sum: f64 = windings.explanations.iter().map(|one| one.probability).sum();
        prop_assert!((sum - 1.0).abs() < 1e-9, "{sum}");
        for pin in windings.pins {
            let parts = [pin.common, pin.start, pin.run];
            prop_assert!(parts.into_iter().all(|part| (0.0..=1.0 + 1e-9).contains(&part)));
        }
        if let Some(found) = windings.resistances {
            for value in [&found.run, &found.start, &found.leads] {
                prop_assert!(value.value().get().is_finite());
                prop_assert!(value.standard().get().is_finite());
            }
        }
    }
}

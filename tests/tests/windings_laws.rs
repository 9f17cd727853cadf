//! What has to hold for whatever a meter shows: laws, not examples.
//!
//! Source: probability theory and the symmetry of three pins; nothing is taken from the code.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

mod windings_scene;

use measure::windings::{
    Explanation, Foreseen, Label, Pair, Pin, Role, StartGear, WindingPriors, Windings,
};
use proptest::prelude::*;
use windings_scene::{PERMUTATIONS, Scene, Shown, scene};

fn judged(scene: &Scene) -> Windings {
    Windings::of(&scene.inspection(), &WindingPriors::default())
}

fn close(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-9 * (1.0 + one.abs())
}

proptest! {
    #[test]
    fn relabelling_the_pins_relabels_the_answer_and_changes_nothing_else(scene in scene()) {
        let before = judged(&scene);
        for permutation in PERMUTATIONS {
            let after = judged(&scene.relabelled(permutation));
            for pin in Pin::ALL {
                let there = permutation[pin.index()];
                for role in Role::ALL {
                    let (was, is) = (
                        before.pins[pin.index()].of(role),
                        after.pins[there.index()].of(role),
                    );
                    prop_assert!(close(was, is), "{role:?}: {was} {is}");
                }
            }
            for explanation in Explanation::ALL {
                prop_assert!(close(before.probability(explanation), after.probability(explanation)));
                let (was, is) = (log_likelihood(&before, explanation), log_likelihood(&after, explanation));
                prop_assert!(close(was, is), "{explanation:?}: {was} {is}");
            }
            prop_assert_eq!(before.sum_rule, after.sum_rule);
            prop_assert_eq!(before.forecast.is_some(), after.forecast.is_some());
            if let (Some(was), Some(is)) = (&before.forecast, &after.forecast) {
                let [one, other] = was.pair.pins().map(|pin| permutation[pin.index()]);
                prop_assert!(is.pair.has(one) && is.pair.has(other));
                prop_assert!(close(was.sum.value().get(), is.sum.value().get()));
                prop_assert_eq!(permutation[was.sum_common.index()], is.sum_common);
                prop_assert_eq!(was.alike, is.alike);
                if !was.alike {
                    let moved = permutation[was.difference_common.index()];
                    prop_assert_eq!(moved, is.difference_common);
                }
            }
            resistances_are_the_same(&before, &after)?;
        }
    }

    #[test]
    fn the_order_of_entering_does_not_matter(scene in scene()) {
        let orders = [[0, 1, 2], [0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]];
        let first = judged(&scene);
        for order in orders {
            let found = Windings::of(&scene.entered_in(order), &WindingPriors::default());
            prop_assert_eq!(&found, &first);
        }
    }

    #[test]
    fn probabilities_add_up_to_one_and_no_pin_plays_more_than_one_part(scene in scene()) {
        let windings = judged(&scene);
        probabilities_are_sound(&windings)?;
    }

    #[test]
    fn a_tiny_change_of_a_reading_changes_probabilities_little(
        scene in scene(),
        place in 0usize..3,
    ) {
        let mut moved = scene.clone();
        let Shown::Number { ohms, .. } = &mut moved.shown[place] else { return Ok(()); };
        // A millionth of the least step that any meter shows.
        *ohms += 1e-9 * (1.0 + *ohms);
        let (before, after) = (judged(&scene), judged(&moved));
        for explanation in Explanation::ALL {
            let change = before.probability(explanation) - after.probability(explanation);
            prop_assert!(change.abs() < 1e-4, "{explanation:?} {change}");
        }
        for pin in Pin::ALL {
            for role in Role::ALL {
                let change = before.pins[pin.index()].of(role) - after.pins[pin.index()].of(role);
                prop_assert!(change.abs() < 1e-4, "{pin:?} {role:?} {change}");
            }
        }
    }

    #[test]
    fn readings_that_all_grow_together_leave_the_common_pin_where_it_is(
        run in 3.0..12.0f64,
        ratio in 0.7..4.0f64,
        growth in 1.0..4.0f64,
    ) {
        let read = |scale: f64| {
            let mut scene = Scene::bare();
            scene.mains = None;
            for (shown, ohms) in scene.shown.iter_mut().zip([run, run * ratio, run * (1.0 + ratio)]) {
                *shown = Shown::Number { ohms: (10.0 * scale * ohms).round() / 10.0, count: 0.1 };
            }
            judged(&scene)
        };
        for windings in [read(1.0), read(growth)] {
            // Pairs 1–2, 1–3, 2–3 read run, start and both: pin 1 is common.
            let label = windings.pins[0].label();
            prop_assert_eq!(label, Label::Is { role: Role::Common, surely: true });
            prop_assert_eq!(windings.sum_rule, Some(Foreseen::Sum));
        }
    }
}

#[test]
fn whatever_finite_number_or_over_range_or_nothing_is_read_everything_stays_finite() {
    let number = |count| move |ohms| Shown::Number { ohms, count };
    let shown: Vec<Shown> = [0.0, 1e-300, 0.1, 4.7, 47.0, 1e6, 1e9, 1e300, -3.0]
        .map(number(0.1))
        .into_iter()
        .chain([0.0, 4.7, 1e9].map(number(1e-12)))
        .chain([0.0, 4.7, 1e9].map(number(1e3)))
        .chain([20.0, 200.0, 40e6].map(Shown::Above))
        .chain([Shown::Nothing])
        .collect();
    let mut judged_scenes = 0;
    for one in &shown {
        for two in &shown {
            for three in &shown {
                let mut scene = Scene::bare();
                scene.shown = [*one, *two, *three];
                scene.start_gear = StartGear::Unknown;
                scene.mains = None;
                let windings = judged(&scene);
                probabilities_are_sound(&windings).unwrap();
                numbers_are_finite(&windings);
                judged_scenes += 1;
            }
        }
    }
    assert_eq!(judged_scenes, shown.len() * shown.len() * shown.len());
}

#[test]
fn noting_the_wiring_never_moves_an_answer_about_equal_windings_or_open_pairs_by_itself() {
    // With nothing read, wiring says which pin plays which part, and nothing of its state.
    let bare = judged(&Scene::bare());
    let mut scene = Scene::bare();
    scene.overload_on = Some(Pin::Two);
    scene.line_on = Some(Pin::One);
    let noted = judged(&scene);
    for explanation in Explanation::ALL {
        assert!(close(
            bare.probability(explanation),
            noted.probability(explanation)
        ));
    }
    assert!(noted.pins[1].common > 0.8);
}

fn probabilities_are_sound(windings: &Windings) -> Result<(), TestCaseError> {
    let sum: f64 = windings.explanations.iter().map(|s| s.probability).sum();
    prop_assert!(close(sum, 1.0), "{sum}");
    for scored in &windings.explanations {
        prop_assert!((0.0..=1.0 + 1e-9).contains(&scored.probability));
        prop_assert!(scored.log_likelihood.is_finite());
    }
    prop_assert!(
        windings
            .explanations
            .is_sorted_by(|a, b| a.probability >= b.probability),
        "the likeliest comes first"
    );
    let two_windings: f64 = windings
        .explanations
        .iter()
        .filter(|scored| scored.explanation.has_two_windings())
        .map(|scored| scored.probability)
        .sum();
    for pin in Pin::ALL {
        let belief = windings.pins[pin.index()];
        let parts = Role::ALL.map(|role| belief.of(role));
        prop_assert!(parts.iter().all(|part| (0.0..=1.0 + 1e-9).contains(part)));
        prop_assert!(close(parts.iter().sum(), two_windings));
    }
    for role in Role::ALL {
        let pins: f64 = windings.pins.iter().map(|pin| pin.of(role)).sum();
        prop_assert!(close(pins, two_windings));
    }
    Ok(())
}

fn numbers_are_finite(windings: &Windings) {
    if let Some(known) = &windings.resistances {
        for value in [&known.run, &known.start, &known.leads] {
            assert!(value.value().get().is_finite() && value.standard().get().is_finite());
        }
    }
    if let Some(forecast) = &windings.forecast {
        for value in [Some(&forecast.sum), forecast.difference.as_ref()]
            .into_iter()
            .flatten()
        {
            assert!(value.value().get().is_finite() && value.standard().get().is_finite());
        }
        assert!(Pair::ALL.contains(&forecast.pair));
    }
}

fn resistances_are_the_same(before: &Windings, after: &Windings) -> Result<(), TestCaseError> {
    prop_assert_eq!(before.resistances.is_some(), after.resistances.is_some());
    let (Some(was), Some(is)) = (&before.resistances, &after.resistances) else {
        return Ok(());
    };
    let pairs = [
        (&was.run, &is.run),
        (&was.start, &is.start),
        (&was.leads, &is.leads),
    ];
    for (was, is) in pairs {
        prop_assert!(close(was.value().get(), is.value().get()));
        prop_assert!(close(was.standard().get(), is.standard().get()));
    }
    Ok(())
}

fn log_likelihood(windings: &Windings, explanation: Explanation) -> f64 {
    let found = windings
        .explanations
        .iter()
        .find(|s| s.explanation == explanation);
    found.unwrap().log_likelihood
}

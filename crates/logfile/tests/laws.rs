//! What holds for every file: a course written in any form is read back or asked about, and no
//! bytes make reading fail otherwise than with a reason.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

mod form;

use form::Form;
use logfile::{LogError, look, read};
use proptest::prelude::*;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(600))]

    #[test]
    fn a_course_written_in_any_form_is_read_back_or_asked_about(form in form::any()) {
        let bytes = form.written();
        let text = String::from_utf8_lossy(&bytes).into_owned();
        let looked = look(&bytes).unwrap_or_else(|error| panic!("{error:?}\n{text}"));
        // Who knows the truth answers each question, and the answer is one that is taken.
        let layout = looked.settle(&form.answers(&looked));
        let layout = layout.unwrap_or_else(|open| panic!("{open:?}\n{text}"));
        let logged = read(&bytes, &layout).unwrap_or_else(|error| panic!("{error:?}\n{text}"));
        prop_assert_eq!(logged.series.len(), 1, "{}", text);
        let expected = form.course();
        let found = &logged.series[0].points;
        prop_assert_eq!(found.len(), expected.len(), "{:?}\n{}", logged, text);
        for (point, (at, celsius)) in found.iter().zip(expected) {
            prop_assert!((point.at.get() - at).abs() < form.rounding(), "{} for {at}\n{text}", point.at.get());
            prop_assert!((point.temperature.get() - celsius).abs() < 0.006, "{:?} for {celsius}\n{text}", point.temperature);
        }
    }

    #[test]
    fn no_bytes_make_it_panic(bytes in prop::collection::vec(any::<u8>(), 0..600)) {
        let _ = look(&bytes).map(|looked| looked.settle(&[]).map(|layout| read(&bytes, &layout)));
    }

    #[test]
    fn no_text_of_a_logs_letters_makes_it_panic(text in "([0-9]{1,4}|[-.,:;/ \t\"°CFhTZ|]|\r\n|AM|März|é){0,120}") {
        let read_all = |text: &str| {
            let looked = look(text.as_bytes())?;
            match looked.settle(&[]) {
                Ok(layout) => read(text.as_bytes(), &layout).map(|_| ()),
                Err(_) => Ok(()),
            }
        };
        let _: Result<(), LogError> = read_all(&text);
    }

    #[test]
    fn a_torn_file_never_makes_it_panic(form in form::any(), cut in 0.0..1.0f64, removed in 0usize..40) {
        let mut bytes = form.written();
        let at = (bytes.len() as f64 * cut) as usize;
        bytes.drain(at..(at + removed).min(bytes.len()));
        if let Ok(looked) = look(&bytes)
            && let Ok(layout) = looked.settle(&form.answers(&looked))
        {
            let _ = read(&bytes, &layout);
        }
    }
}

/// Times without a date go back over midnight; a clock of twelve without its half can't be turned round.
#[test]
fn newest_first_is_turned_round_where_that_can_be_done() {
    let file = b"Time,Temp C\n00:10:00,-3\n00:05:00,-2\n00:00:00,-1\n23:55:00,0\n23:50:00,1\n";
    let looked = look(file).unwrap();
    let start = logfile::Answer::Start(quantity::Seconds::new(10_000.0));
    let logged = read(file, &looked.settle(&[start]).unwrap()).unwrap();
    let found: Vec<f64> = logged.series[0]
        .points
        .iter()
        .map(|point| point.at.get())
        .collect();
    assert_eq!(found, [8_800.0, 9_100.0, 9_400.0, 9_700.0, 10_000.0]);
    let file = b"Time,Temp C\n3/13/2024 1:10,-3\n3/13/2024 1:00,-2\n3/13/2024 12:50,-1\n3/13/2024 12:40,0\n";
    let looked = look(file).unwrap();
    let half = logfile::Answer::Clock(logfile::Clock::Twelve(logfile::Half::Afternoon));
    let layout = looked.settle(&[half, logfile::Answer::Zone(0)]).unwrap();
    assert_eq!(
        read(file, &layout).err(),
        Some(LogError::NewestFirstByTwelve)
    );
}

/// So that the forms above are not all alike.
#[test]
fn the_forms_differ() {
    let mut runner = proptest::test_runner::TestRunner::deterministic();
    let drawn = |_: usize| -> Form {
        let tree = form::any().new_tree(&mut runner).unwrap();
        proptest::strategy::ValueTree::current(&tree)
    };
    let questions: Vec<usize> = (0..300)
        .map(drawn)
        .map(|form| look(&form.written()).unwrap().questions.len())
        .collect();
    for count in 0..4 {
        assert!(
            questions.contains(&count),
            "some file leaves {count} questions"
        );
    }
}

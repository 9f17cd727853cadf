//! Laws of a cool-down: whatever a job holds, in whichever order.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use diagnosis::{CHANGE, Change, Choice, CoolDown};
use job::{
    Answer, ColdEvent, ColdEventKind, Content, Entry, Id, Job, Measured, Moment, Name, Origin,
    Place, Question, Reading, Spot, TemperatureLog, Text, Unit,
};
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::select;
use quantity::{Accuracy, Celsius, Observed};

/// Any moment that there is, or one of two days of one time zone or another.
fn moment() -> impl Strategy<Value = Moment> {
    let wild = (0..=Moment::LATEST, -1080i16..=1080);
    let near = (1_795_600_000_000..1_795_772_800_000i64, -1080i16..=1080);
    let any = prop_oneof![1 => wild, 6 => near];
    any.prop_map(|(at, offset)| Moment::new(at, offset).unwrap())
}

fn celsius() -> impl Strategy<Value = f64> {
    prop_oneof![6 => -40.0..30.0f64, 1 => any::<f64>()]
}

fn spot() -> impl Strategy<Value = Content> {
    (select(Place::ALL.to_vec()), moment(), celsius()).prop_map(|(place, at, shown)| {
        let reading = Reading {
            typed: Text::new("?").unwrap(),
            measured: Measured::new(Unit::Celsius, Observed::Value(shown), 0.1),
            accuracy: Accuracy::new(1.0, 2.0).unwrap(),
        };
        Content::Spot(Spot { place, at, reading })
    })
}

fn log() -> impl Strategy<Value = Content> {
    let place = select(vec![Place::Freezer, Place::FreshFood, Place::Room]);
    let steps = vec((1..3_000_000i64, -40.0..30.0f64), 2..40);
    (place, moment(), steps).prop_filter_map("beyond all years", |(place, from, steps)| {
        let mut at = from.unix_milliseconds();
        let points = steps.into_iter().map(|(step, shown)| {
            at += step;
            let at = Moment::new(at, from.offset_minutes()).ok()?;
            Some((at, Celsius::new(shown)))
        });
        let points = points.collect::<Option<Vec<_>>>()?;
        let file = Text::new("a.csv").unwrap();
        TemperatureLog::new(place, file, 99, points)
            .ok()
            .map(Content::Log)
    })
}

fn content() -> impl Strategy<Value = Content> {
    let kinds = select(ColdEventKind::ALL.to_vec());
    let event = (moment(), kinds).prop_map(|(at, kind)| Content::Event(ColdEvent { at, kind }));
    let change = select(vec![Change::Condenser, Change::Frost]).prop_map(|change| {
        let how = Name::new(change.how()).unwrap();
        Content::Answer {
            question: Question::new(CHANGE, change.name()).unwrap(),
            answer: Answer::Choice(how),
        }
    });
    prop_oneof![8 => spot(), 3 => log(), 8 => event, 1 => change]
}

fn switched_on() -> Content {
    let at = Moment::new(1_795_610_000_000, 0).unwrap();
    let kind = ColdEventKind::SwitchedOn;
    Content::Event(ColdEvent { at, kind })
}

fn job(entries: &[(Moment, Content)]) -> Job {
    let begun = Moment::new(0, 0).unwrap();
    let mut job = Job::new(Id::new("law").unwrap(), begun, Origin::Invented);
    for (number, (at, content)) in entries.iter().enumerate() {
        let id = Id::new(&format!("e-{number}")).unwrap();
        let content = content.clone();
        job.add(Entry {
            id,
            at: *at,
            content,
        })
        .unwrap();
    }
    job
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    #[test]
    fn the_order_of_entries_does_not_matter(
        mut entries in vec((moment(), content()), 1..12),
        turns in any::<usize>(),
        now in moment(),
    ) {
        entries.push((Moment::new(1_795_600_000_000, 0).unwrap(), switched_on()));
        let one = CoolDown::of(&job(&entries), now);
        let middle = turns % entries.len();
        entries.rotate_left(middle);
        entries.swap(0, middle);
        let other = CoolDown::of(&job(&entries), now);
        // No number equals itself, so both are held against each other as they are written.
        prop_assert_eq!(format!("{one:?}"), format!("{other:?}"));
    }

    #[test]
    fn struck_entries_count_nothing(
        entries in vec((moment(), content()), 1..8),
        extra in vec((moment(), content()), 1..4),
        now in moment(),
    ) {
        let without = CoolDown::of(&job(&entries), now);
        let mut all = entries.clone();
        all.extend(extra.iter().cloned());
        for place in entries.len()..all.len() {
            let struck = Id::new(&format!("e-{place}")).unwrap();
            all.push((now, Content::Strike(struck)));
        }
        let with = CoolDown::of(&job(&all), now);
        prop_assert_eq!(format!("{without:?}"), format!("{with:?}"));
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]

    #[test]
    fn no_moment_is_too_wild_for_an_assessment(
        mut entries in vec((moment(), content()), 1..8),
        now in moment(),
    ) {
        entries.push((Moment::new(1_795_600_000_000, 0).unwrap(), switched_on()));
        let found = diagnosis::assess(&diagnosis::Model::default(), &job(&entries), now);
        for item in found.proof.into_iter().flat_map(|proof| proof.items) {
            if let diagnosis::ProofState::NotYet { takes, .. } = item.state {
                prop_assert!((0.0..=172_800.0).contains(&takes.get()), "{item:?}");
            }
        }
    }
}

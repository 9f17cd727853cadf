//! Random temperatures, courses, events and counts of energy.

use job::TemperatureLog;
use job::{ColdEvent, ColdEventKind, Content, Measured, Metered, Moment, Place, Spot};
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::select;
use quantity::{Celsius, Observed, Seconds, Typed, WattHours};

use crate::random::{moment, reading, text};

/// Any of the four.
pub(crate) fn cold() -> impl Strategy<Value = Content> {
    prop_oneof![spot(), log(), event(), metered()]
}

fn spot() -> impl Strategy<Value = Content> {
    (select(Place::ALL.to_vec()), moment(), reading())
        .prop_map(|(place, at, reading)| Content::Spot(Spot { place, at, reading }))
}

/// Early enough that what follows within years still is a moment.
fn early() -> impl Strategy<Value = Moment> {
    let latest = 1_800_000_000_000;
    moment().prop_map(move |moment| {
        let at = moment.unix_milliseconds().min(latest);
        Moment::new(at, moment.offset_minutes()).unwrap()
    })
}

fn log() -> impl Strategy<Value = Content> {
    let steps = vec((1..100_000_000i64, -100.0..200.0f64), 2..20);
    let what = (select(Place::ALL.to_vec()), text(), any::<u32>());
    (early(), what, steps).prop_map(|(from, (place, file, rows), steps)| {
        let mut at = from.unix_milliseconds();
        let points = steps.into_iter().map(|(step, celsius)| {
            at += step;
            let at = Moment::new(at, from.offset_minutes()).unwrap();
            (at, Celsius::new(celsius))
        });
        Content::Log(TemperatureLog::new(place, file, rows, points.collect()).unwrap())
    })
}

fn event() -> impl Strategy<Value = Content> {
    (moment(), select(ColdEventKind::ALL.to_vec()))
        .prop_map(|(at, kind)| Content::Event(ColdEvent { at, kind }))
}

fn metered() -> impl Strategy<Value = Content> {
    let energy = (reading(), 0.0..1e6f64, any::<bool>());
    (early(), 1..100_000_000i64, energy).prop_map(|(from, long, (mut reading, energy, told))| {
        let to = from.unix_milliseconds() + long;
        let to = Moment::new(to, from.offset_minutes()).unwrap();
        reading.measured = Measured::WattHours(Typed {
            observed: Observed::Value(WattHours::new(energy)),
            count: WattHours::new(1.0),
        });
        let ran = told.then(|| Seconds::new(long as f64 / 2_000.0));
        Content::Metered(Metered::new(from, to, reading, ran).unwrap())
    })
}

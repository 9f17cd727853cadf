//! Temperatures, events and counts of energy go into a file and come back.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

use job::{Job, MeteredError, TemperatureLogError};
use jobfile::{Document, Limit, Notice, OpenError, Opened, Problem, Unreadable, open, save};

fn with_entry(entry: &str) -> String {
    format!(
        r#"{{"type":"coldcase-job","version":1,"id":"j","created":"2026-11-29T10:00:00Z",
        "origin":"invented","entries":[{{"id":"a","at":"2026-11-29T10:10:00Z",{entry}}}]}}"#
    )
}

const SPOT: &str = r#""spot":{"place":"freezer","at":"2026-11-29T10:10:00Z","reading":{
    "typed":"-18.5","unit":"celsius","value":-18.5,"count":0.1,
    "accuracy":{"percent":1.0,"counts":2.0}}}"#;
const LOG: &str = r#""log":{"place":"fresh-food","file":"fridge.csv","rows":400,
    "from":"2026-11-29T10:10:00.500+01:00","seconds":[0.0,60.0,120.25],
    "celsius":[21.0,19.5,18.0]}"#;
const EVENT: &str = r#""event":{"at":"2026-11-29T10:10:00Z","what":"defrost-ended"}"#;
const METERED: &str = r#""metered":{"from":"2026-11-29T10:10:00Z","to":"2026-11-30T10:10:00Z",
    "energy":{"typed":"0.84k","unit":"watt-hour","value":840.0,"count":10.0,
    "accuracy":{"percent":1.0,"counts":2.0}},"ran":36000.0}"#;

fn refused(entry: &str) -> Option<OpenError> {
    open(&with_entry(entry)).err()
}

#[test]
fn each_comes_back_as_it_was() {
    for entry in [SPOT, LOG, EVENT, METERED] {
        let Ok(Opened::Document { document, notices }) = open(&with_entry(entry)) else {
            panic!("{entry}");
        };
        assert_eq!(notices, []);
        // What came is written as it came: it is told anew, as the page would.
        let job = document.job();
        let bare = Job::new(job.id().clone(), job.created(), job.origin());
        let mut told = Document::new(bare).unwrap();
        for entry in job.entries() {
            told.add(entry.clone()).unwrap();
        }
        let again = save(&told);
        let Ok(Opened::Document { document: same, .. }) = open(&again) else {
            panic!("{again}");
        };
        assert_eq!(same.job(), document.job());
        assert_eq!(same.job().entries().len(), 1);
    }
}

#[test]
fn places_and_events_of_a_newer_program_are_kept_and_told() {
    let newer = [
        (SPOT.replace("freezer", "cellar"), "cellar"),
        (LOG.replace("fresh-food", "cellar"), "cellar"),
        (EVENT.replace("defrost-ended", "sang"), "sang"),
    ];
    for (entry, unknown) in newer {
        let Ok(Opened::Document { document, notices }) = open(&with_entry(&entry)) else {
            panic!("{entry}");
        };
        assert!(document.job().entries().is_empty());
        assert!(matches!(
            &notices[..],
            [Notice::Unreadable { why: Unreadable::Word(word), .. }] if word == unknown
        ));
        assert!(save(&document).contains(unknown));
    }
}

#[test]
fn points_that_are_no_course_are_refused_with_their_place() {
    let wrong = |path: &str, why| {
        let path = format!("entries[0].log.{path}");
        let problem = Problem::Log(why);
        Some(OpenError::Field { path, problem })
    };
    assert_eq!(
        refused(&LOG.replace("120.25", "60.0")),
        wrong(
            "seconds[2]",
            Some(TemperatureLogError::NotInOrder { point: 2 })
        )
    );
    assert_eq!(
        refused(&LOG.replace("19.5", "1950")),
        wrong(
            "celsius[1]",
            Some(TemperatureLogError::Impossible { point: 1 })
        )
    );
    assert_eq!(
        refused(&LOG.replace("120.25", "1e300")),
        wrong("seconds[2]", None)
    );
    let uneven = refused(&LOG.replace("[0.0,60.0,120.25]", "[0.0,60.0]"));
    assert!(matches!(
        uneven,
        Some(OpenError::Field { path, problem: Problem::Log(None) }) if path == "entries[0].log"
    ));
}

#[test]
fn a_course_beyond_its_points_is_told_so() {
    let many = vec!["0.0"; 2_001].join(",");
    let refused = refused(&LOG.replace("0.0,60.0,120.25", &many));
    assert_eq!(
        refused,
        Some(OpenError::Beyond {
            limit: Limit::LogPoints,
            path: "entries[0].log.seconds".to_owned(),
        })
    );
}

#[test]
fn an_impossible_count_of_energy_is_refused() {
    let cases = [
        ("2026-11-30", "2026-11-28", MeteredError::EndsBeforeItBegins),
        ("840.0", "-840.0", MeteredError::Negative),
        ("watt-hour", "watt", MeteredError::NotEnergy),
        ("36000.0", "360000.0", MeteredError::RanTooLong),
    ];
    for (good, bad, why) in cases {
        assert_eq!(
            refused(&METERED.replace(good, bad)),
            Some(OpenError::Field {
                path: "entries[0].metered".to_owned(),
                problem: Problem::Metered(why),
            })
        );
    }
}

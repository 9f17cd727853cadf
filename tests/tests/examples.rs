//! Each invented example shows what it was made to show.
//!
//! What a technician concludes from such readings is common practice, no source; the limits that
//! decide here are checked against theirs where they are defined.

// What a test reads from the repository is right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

use diagnosis::{
    Assessment, Basis, Caution, Finding, Gate, Link, LinkState, Model, StartDevice, Step, assess,
};
use jobfile::{Opened, open};
use measure::Ptc;
use measure::windings::Pair;

fn assessed(name: &str) -> Assessment {
    let file = format!("{}/../demo-data/{name}.json", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(file).unwrap();
    let Ok(Opened::Document { document, .. }) = open(&text) else {
        panic!("{name} doesn't open");
    };
    let job = document.job();
    let now = job.entries().last().unwrap().at;
    assess(&Model::default(), job, now)
}

fn state(known: &Assessment, wanted: Link) -> LinkState {
    let link = known.path.iter().find(|(link, _)| *link == wanted);
    link.unwrap().1
}

#[test]
fn an_open_ptc_breaks_the_start_and_nothing_else() {
    let known = assessed("open-ptc");
    let open = Finding::StartDevice(StartDevice::Ptc(Ptc::Open, true));
    assert!(known.findings.contains(&open), "{:?}", known.findings);
    assert_eq!(
        state(&known, Link::Start),
        LinkState::Broken(Basis::Measured)
    );
    assert_eq!(
        state(&known, Link::Circuit),
        LinkState::SoundSoFar(Basis::Measured)
    );
    assert_eq!(known.gates.look_and_listen, Gate::Open);
    assert_eq!(known.gates.trials, Gate::Open);
}

#[test]
fn a_leak_to_the_shell_stops_everything_that_is_powered_however_whole_the_windings() {
    let known = assessed("leak-to-shell");
    assert!(known.must_stop());
    assert!(known.cautions.contains(&Caution::LiveMetal));
    assert_eq!(
        state(&known, Link::Circuit),
        LinkState::Broken(Basis::Measured)
    );
    assert_ne!(known.gates.look_and_listen, Gate::Open);
    assert_ne!(known.gates.trials, Gate::Open);
}

#[test]
fn a_half_finished_job_goes_on_where_it_was_left() {
    let known = assessed("half-finished");
    assert_eq!(known.next.first(), Some(&Step::Measure(Pair::OneThree)));
    assert_eq!(known.gates.look_and_listen, Gate::Open);
    assert_ne!(known.gates.trials, Gate::Open);
}

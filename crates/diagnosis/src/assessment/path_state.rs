//! Which links of the Path hold, out of all that speaks of them.

use job::{Job, SetUp, Tried};

use super::Assessment;
use crate::cool_down::changed;
use crate::proof::{ProofPoint, ProofState};
use crate::{Basis, Choice, Link, LinkState};

/// One state a link: of several statements the better founded one, of equals the worse one.
pub(super) fn path_of(statements: &[(Link, LinkState)]) -> Vec<(Link, LinkState)> {
    Link::ALL
        .iter()
        .map(|&link| {
            let state = statements
                .iter()
                .filter(|(about, _)| *about == link)
                .map(|(_, state)| *state)
                .max_by_key(|state| (state.basis(), state.severity()))
                .unwrap_or(LinkState::Unknown);
            (link, state)
        })
        .collect()
}

/// What the last try to start and the cool-down show of the machine as it is now.
pub(super) fn shown(job: &Job, assessment: &Assessment) -> Vec<(Link, LinkState)> {
    let mut shown = tried(job, assessment);
    shown.extend(cooled(assessment));
    shown
}

/// The last try since the last change, with the machine's own start gear.
fn tried(job: &Job, assessment: &Assessment) -> Vec<(Link, LinkState)> {
    let trials = assessment.start_trials.as_ref();
    let series = trials.and_then(|trials| trials.series(SetUp::Original));
    let since = changed(job).map(job::Moment::unix_milliseconds);
    let tries = series.map_or(&[][..], |series| &series.tries);
    let last = tries
        .iter()
        .map(|(_, one)| one)
        .filter(|one| since.is_none_or(|since| one.at.unix_milliseconds() >= since))
        .max_by_key(|one| one.at.unix_milliseconds());
    let holds = |links: &[Link]| -> Vec<(Link, LinkState)> {
        let state = LinkState::Holds(Basis::Seen);
        links.iter().map(|link| (*link, state)).collect()
    };
    match last.map(|last| last.outcome) {
        Some(Tried::Started | Tried::HummedThenStarted) => {
            holds(&[Link::Supply, Link::Call, Link::Circuit, Link::Start])
        }
        Some(Tried::HummedAndTripped) => {
            let mut known = holds(&[Link::Supply, Link::Call]);
            known.push((Link::Start, LinkState::Broken(Basis::Seen)));
            known
        }
        Some(Tried::Silent | Tried::OutletTripped) | None => Vec::new(),
    }
}

/// A cabinet that got as cold as it should shows all links before it; one that stays too warm
/// shows the last as broken.
fn cooled(assessment: &Assessment) -> Vec<(Link, LinkState)> {
    let state = |point| {
        assessment
            .proof
            .as_ref()
            .and_then(|proof| proof.state(point))
    };
    let points = [ProofPoint::TargetReached, ProofPoint::HeldForADay];
    if points
        .iter()
        .any(|point| matches!(state(*point), Some(ProofState::Failed(_))))
    {
        return vec![(Link::Hold, LinkState::Broken(Basis::Measured))];
    }
    let is_done = |point| state(point) == Some(ProofState::Done);
    if !is_done(ProofPoint::TargetReached) {
        return Vec::new();
    }
    let holds = LinkState::Holds(Basis::Measured);
    let held = is_done(ProofPoint::HeldForADay);
    let last = if held {
        holds
    } else {
        LinkState::SoundSoFar(Basis::Measured)
    };
    let before = Link::ALL.iter().filter(|link| **link != Link::Hold);
    let before = before.map(|link| (*link, holds));
    before.chain([(Link::Hold, last)]).collect()
}

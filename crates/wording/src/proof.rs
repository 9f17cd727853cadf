//! Proof in words: what is shown, what is owed and how long it takes, what failed.

use diagnosis::{
    Compartment, Failure, HeldBack, Missing, NotNeeded, Proof, ProofItem, ProofPoint, ProofState,
    Proven,
};
use quantity::Seconds;

use crate::Words;
use crate::start_trials::lasting;

/// The heading over all of it.
pub const TITLE: &str = "Proof";

impl Words for ProofPoint {
    fn words(self) -> &'static str {
        match self {
            Self::Restarts => "Starts again after a normal rest",
            Self::SteadyPower => "Takes steady watts",
            Self::FirstTwoHours => "Watched for the first two hours",
            Self::TargetReached => "Gets as cold as it should",
            Self::HeldForADay => "Stays so for 24 hours, with its cycles",
            Self::NoTrips => "Nothing trips meanwhile",
            Self::Seal => "Its seal was looked at",
            Self::Defrost => "One defrost was seen to its end",
        }
    }
}

impl Words for Proven {
    fn words(self) -> &'static str {
        match self {
            Self::All => "Proved: all of this was read or seen.",
            Self::ColdDefrostNotProven => "Cold now, defrost not proven.",
            Self::NotYet => "Not proved yet.",
            Self::Failed => "Not proved: something failed.",
            Self::HeldBack => "Not run for proof.",
        }
    }
}

impl Words for HeldBack {
    fn words(self) -> &'static str {
        match self {
            Self::GasMayBeOut => {
                "Its refrigerant burns or isn't known, and may be out: it isn't run for proof. Air \
                 the room, leave it unplugged, and have it looked at by someone licensed."
            }
            Self::MustStop => "Something says that it must not be powered: that comes first.",
            Self::NotToBeRun => "It isn't to be run as it is: see what to do.",
        }
    }
}

impl Words for NotNeeded {
    fn words(self) -> &'static str {
        match self {
            Self::BoardStarts => "a board starts it, and decides when",
            Self::NoMeter => "no meter was there",
            Self::DefrostedByHand => "its frost is taken off by hand",
        }
    }
}

/// All of it for the report.
pub(crate) fn report(proof: &Proof) -> Vec<String> {
    let mut lines = vec![proof.proven().words().to_owned()];
    lines.extend(proof.held_back.map(|why| why.words().to_owned()));
    let takes = proof.takes();
    if takes > Seconds::new(0.0) {
        lines.push(format!("What is owed takes {} at least.", rounded(takes)));
    }
    let items = proof.items.iter();
    lines.extend(items.map(point));
    lines
}

/// A point with how far it is shown.
#[must_use]
pub fn point(item: &ProofItem) -> String {
    format!("{}: {}.", item.point.words(), state(&item.state))
}

/// How far a point is shown: "done", "not yet: …", "failed: …", "not asked: …".
#[must_use]
pub fn state(state: &ProofState) -> String {
    match state {
        ProofState::Done => "done".to_owned(),
        ProofState::NotNeeded(why) => format!("not asked: {}", why.words()),
        ProofState::Failed(why) => format!("failed: {}", failure(*why)),
        ProofState::NotYet {
            missing: what,
            takes,
        } => {
            let long = if *takes > Seconds::new(0.0) {
                format!(" ({})", rounded(*takes))
            } else {
                String::new()
            };
            format!("not yet: {}{long}", missing(*what))
        }
    }
}

/// What is owed is told in minutes, and from two hours on in half hours, rounded up.
fn rounded(time: Seconds) -> String {
    let step = if time < Seconds::new(7_200.0) {
        60.0
    } else {
        1_800.0
    };
    lasting(Seconds::new(libm::ceil(time.get() / step) * step))
}

/// What is missing.
#[must_use]
pub fn missing(what: Missing) -> String {
    let said = match what {
        Missing::Starts(1) => "one more start after a rest of ten minutes at most",
        Missing::Starts(more) => {
            return format!("{more} starts after a rest of ten minutes at most");
        }
        Missing::LaterWatts => "watts five minutes after a start and after half an hour",
        Missing::SwitchOn => "switch it on and note when",
        Missing::StandBy => "switch it on and stay by it: look, listen and read it every half hour",
        Missing::Time => "more time, with readings",
        Missing::Thermometer(Compartment::Freezer) => "a thermometer in the freezer",
        Missing::Thermometer(Compartment::FreshFood) => "a thermometer among the fresh food",
        Missing::Target(Compartment::Freezer) => "the freezer isn't cold enough yet",
        Missing::Target(Compartment::FreshFood) => "fresh food isn't cold enough yet",
        Missing::Scale => "whether it was read in °C or °F",
        Missing::Gap => "a day of readings with no gap longer than ten hours",
        Missing::Cycles => {
            "its cycles: when the compressor goes on and off twice, or a logger's file"
        }
        Missing::SealLook => "a slip of paper, pulled at its seal all round",
        Missing::DefrostBegin => "a defrost: note when it begins",
        Missing::DefrostEnd => "when the defrost ended by itself",
        Missing::DefrostWater => "the defrost's water in the pan",
        Missing::DefrostAfter => "that it gets colder again after the defrost",
    };
    said.to_owned()
}

/// What readings show to the contrary.
#[must_use]
pub fn failure(why: Failure) -> String {
    let said = match why {
        Failure::NoStart => "it didn't start after a rest of five minutes or more",
        Failure::PowerRises => "its watts rise while it runs",
        Failure::TooWarm(Compartment::Freezer) => "the freezer was too warm after a day",
        Failure::TooWarm(Compartment::FreshFood) => "fresh food was too warm after a day",
        Failure::DidNotHold(Compartment::Freezer) => "the freezer didn't stay cold",
        Failure::DidNotHold(Compartment::FreshFood) => "fresh food didn't stay cold",
        Failure::Tripped(1) => "it tripped",
        Failure::Tripped(times) => return format!("it tripped {times} times"),
        Failure::SealLeaks => "its seal doesn't grip all round",
        Failure::DefrostWithoutEnd => "the defrost went on for more than an hour",
    };
    said.to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_owed_is_told_with_its_time_rounded_up() {
        let owed = |takes: f64| {
            state(&ProofState::NotYet {
                missing: Missing::Time,
                takes: Seconds::new(takes),
            })
            .replace('\u{a0}', " ")
        };
        assert_eq!(owed(0.0), "not yet: more time, with readings");
        assert_eq!(owed(61.0), "not yet: more time, with readings (2 min)");
        assert_eq!(
            owed(7_300.0),
            "not yet: more time, with readings (2 h 30 min)"
        );
        assert_eq!(
            missing(Missing::Starts(2)),
            "2 starts after a rest of ten minutes at most"
        );
    }
}

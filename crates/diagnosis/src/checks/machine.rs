//! What machine it is, what it runs on, what it did, and what is in it.

use job::{Answer, Job};
use measure::windings::Mains;
use quantity::{Hertz, Volts};

use crate::choice::{answered, choices};
use crate::{Basis, Caution, Finding, Link, LinkState};

choices! {
    /// What kind of machine it is.
    pub enum Kind answers "machine" / "kind" {
        /// A freezer with a lid.
        ChestFreezer = "chest-freezer",
        /// A freezer with a door.
        UprightFreezer = "upright-freezer",
        /// A refrigerator with a freezer compartment of its own.
        FridgeFreezer = "fridge-freezer",
        /// A refrigerator without one.
        Refrigerator = "refrigerator",
    }
}

choices! {
    /// The mains that the person has, and the machine is made for unless its plate says otherwise.
    /// No household has others (from memory).
    pub enum MainsChoice answers "machine" / "mains" {
        /// 120 V, 60 Hz.
        V120F60 = "120-v-60-hz",
        /// 230 V, 50 Hz.
        V230F50 = "230-v-50-hz",
        /// 220 V, 60 Hz.
        V220F60 = "220-v-60-hz",
        /// 127 V, 60 Hz.
        V127F60 = "127-v-60-hz",
        /// 100 V, 50 or 60 Hz.
        V100 = "100-v",
    }
}

choices! {
    /// What it did when it was last plugged in.
    pub enum Complaint answers "machine" / "complaint" {
        /// Nobody has plugged it in yet.
        NotPluggedIn = "not-plugged-in",
        /// No sound at all.
        Silent = "silent",
        /// A hum, then a click, again and again.
        HumsThenClicks = "hums-then-clicks",
        /// It runs and stays warm.
        RunsStaysWarm = "runs-stays-warm",
        /// It runs, then stops by itself.
        RunsThenStops = "runs-then-stops",
        /// The freezer is cold, the fresh food isn't.
        OneSideWarm = "one-side-warm",
        /// It gets colder than it is set to.
        TooCold = "too-cold",
        /// It never stops.
        NeverStops = "never-stops",
        /// It is far too loud.
        Noisy = "noisy",
        /// It trips the outlet.
        TripsTheOutlet = "trips-the-outlet",
        /// Nobody knows.
        Unknown = "unknown",
    }
}

choices! {
    /// Who says so.
    pub enum ToldBy answers "machine" / "told-by" {
        /// The person saw and heard it.
        Myself = "myself",
        /// The seller says so: weaker evidence.
        Seller = "seller",
    }
}

choices! {
    /// The refrigerant by its plate.
    pub enum Refrigerant answers "refrigerant" / "plate" {
        /// Isobutane: burns.
        R600a = "r600a",
        /// Propane: burns.
        R290 = "r290",
        /// Does not burn.
        R134a = "r134a",
        /// Does not burn.
        R12 = "r12",
        /// Does not burn.
        R22 = "r22",
        /// Another, or not to be read: treated as one that burns.
        OtherOrUnreadable = "other-or-unreadable",
    }
}

impl Refrigerant {
    /// Whether it must be handled as one that burns. R600a and R290 are class A3, R12, R22 and
    /// R134a class A1 (ASHRAE 34-2022; R12 from memory).
    #[must_use]
    pub const fn burns(self) -> bool {
        matches!(self, Self::R600a | Self::R290 | Self::OtherOrUnreadable)
    }
}

impl From<MainsChoice> for Mains {
    fn from(choice: MainsChoice) -> Self {
        match choice {
            MainsChoice::V120F60 | MainsChoice::V127F60 | MainsChoice::V100 => Self::V120F60,
            MainsChoice::V230F50 | MainsChoice::V220F60 => Self::V230F50,
        }
    }
}

impl MainsChoice {
    /// The nominal voltage.
    #[must_use]
    pub const fn volts(self) -> Volts {
        Volts::new(match self {
            Self::V120F60 => 120.0,
            Self::V230F50 => 230.0,
            Self::V220F60 => 220.0,
            Self::V127F60 => 127.0,
            Self::V100 => 100.0,
        })
    }

    /// The nominal frequency. `None` for 100 V, which comes with both.
    #[must_use]
    pub const fn frequency(self) -> Option<Hertz> {
        match self {
            Self::V120F60 | Self::V220F60 | Self::V127F60 => Some(Hertz::new(60.0)),
            Self::V230F50 => Some(Hertz::new(50.0)),
            Self::V100 => None,
        }
    }
}

/// What is known about the machine before anything is measured.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Machine {
    /// What the person calls it.
    pub name: Option<String>,
    /// What kind it is.
    pub kind: Option<Kind>,
    /// The mains that the person has.
    pub mains: Option<MainsChoice>,
    /// What it did.
    pub complaint: Option<Complaint>,
    /// Who says so.
    pub told_by: Option<ToldBy>,
    /// The refrigerant by its plate.
    pub refrigerant: Option<Refrigerant>,
    /// Other words off its plate.
    pub plate: Option<String>,
}

impl Machine {
    /// The check and item under which the machine's name is kept, as text.
    pub const NAME: (&'static str, &'static str) = ("machine", "name");
    /// The check and item under which words off the plate are kept, as text.
    pub const PLATE: (&'static str, &'static str) = ("machine", "plate");

    /// Reads the answers that a job holds about the machine itself.
    #[must_use]
    pub fn of(job: &Job) -> Self {
        Self {
            name: text(job, Self::NAME),
            kind: answered(job),
            mains: answered(job),
            complaint: answered(job),
            told_by: answered(job),
            refrigerant: answered(job),
            plate: text(job, Self::PLATE),
        }
    }

    pub(crate) fn findings(&self) -> Option<Finding> {
        let complaint = self.complaint?;
        let says_something = !matches!(complaint, Complaint::NotPluggedIn | Complaint::Unknown);
        says_something.then_some(Finding::Complaint {
            complaint,
            seen: self.basis() == Basis::Seen,
        })
    }

    pub(crate) fn cautions(&self) -> Vec<Caution> {
        let tripped = (self.complaint == Some(Complaint::TripsTheOutlet))
            .then_some(Caution::TrippedProtection);
        let gas = match self.refrigerant {
            Some(Refrigerant::OtherOrUnreadable) => Some(Caution::UnknownRefrigerant),
            Some(gas) if gas.burns() => Some(Caution::FlammableRefrigerant),
            _ => None,
        };
        [tripped, gas, Some(Caution::StayUnplugged)]
            .into_iter()
            .flatten()
            .collect()
    }

    /// What the complaint says about the Path. A hum shows that current reached the motor, and
    /// a running motor that it was started: each link needs the one before it.
    pub(crate) fn links(&self) -> Vec<(Link, LinkState)> {
        let basis = self.basis();
        let holds = |links: &[Link]| {
            links
                .iter()
                .map(|&link| (link, LinkState::Holds(basis)))
                .collect()
        };
        match self.complaint {
            Some(Complaint::HumsThenClicks) => {
                let mut known: Vec<_> = holds(&[Link::Supply, Link::Call]);
                known.push((Link::Start, LinkState::Broken(basis)));
                known
            }
            Some(Complaint::RunsThenStops) => {
                let mut known: Vec<_> =
                    holds(&[Link::Supply, Link::Call, Link::Circuit, Link::Start]);
                known.push((Link::Run, LinkState::Doubtful(basis)));
                known
            }
            Some(
                Complaint::RunsStaysWarm
                | Complaint::OneSideWarm
                | Complaint::TooCold
                | Complaint::NeverStops
                | Complaint::Noisy,
            ) => {
                let mut known: Vec<_> = holds(&[
                    Link::Supply,
                    Link::Call,
                    Link::Circuit,
                    Link::Start,
                    Link::Run,
                ]);
                let cold = match self.complaint {
                    Some(Complaint::RunsStaysWarm) => Some(LinkState::Broken(basis)),
                    Some(Complaint::OneSideWarm | Complaint::TooCold) => {
                        Some(LinkState::Doubtful(basis))
                    }
                    _ => None,
                };
                known.extend(cold.map(|state| (Link::Hold, state)));
                known
            }
            Some(Complaint::TripsTheOutlet) => vec![(Link::Circuit, LinkState::Doubtful(basis))],
            // Silence: one of the links that bring current to the motor is interrupted.
            Some(Complaint::Silent) => [Link::Supply, Link::Call, Link::Circuit]
                .map(|link| (link, LinkState::Doubtful(basis)))
                .into(),
            Some(Complaint::NotPluggedIn | Complaint::Unknown) | None => Vec::new(),
        }
    }

    fn basis(&self) -> Basis {
        match self.told_by {
            Some(ToldBy::Myself) => Basis::Seen,
            Some(ToldBy::Seller) | None => Basis::Told,
        }
    }
}

fn text(job: &Job, (check, item): (&str, &str)) -> Option<String> {
    match job.answer(check, item) {
        Some(Answer::Text(text)) if !text.as_str().trim().is_empty() => {
            Some(text.as_str().trim().to_owned())
        }
        _ => None,
    }
}

//! The wiring as it was found, one question at a time, each of them optional.

use diagnosis::{Choice, PairChoice, PinChoice, WindingsKnown};
use job::{Answer, Job, Name};
use measure::windings::Role;
use wording::Words;

/// Something that can be noted before it is pulled off.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Noted {
    /// The pin with the overload protector's lead.
    Overload,
    /// The two pins that the start device sat on.
    StartDevice,
    /// The pin with the other mains wire.
    Line,
    /// The pin that a letter or word beside it names.
    Marked(Role),
}

/// One answer that can be given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Offered {
    /// The name under which a job keeps it.
    pub name: &'static str,
    /// What stands beside it.
    pub words: &'static str,
}

impl Noted {
    /// All of them, in the order in which they are asked.
    pub const ALL: [Self; 6] = [
        Self::Overload,
        Self::StartDevice,
        Self::Line,
        Self::Marked(Role::Common),
        Self::Marked(Role::Start),
        Self::Marked(Role::Run),
    ];

    /// The check and item under which a job keeps it.
    #[must_use]
    pub const fn names(self) -> (&'static str, &'static str) {
        match self {
            Self::Overload => WindingsKnown::OVERLOAD_PIN,
            Self::StartDevice => WindingsKnown::START_DEVICE_PAIR,
            Self::Line => WindingsKnown::LINE_PIN,
            Self::Marked(role) => WindingsKnown::MARKED[role as usize],
        }
    }

    /// What can be answered, "not noted" last.
    #[must_use]
    pub fn offered(self) -> Vec<Offered> {
        match self {
            Self::StartDevice => offered(PairChoice::ALL),
            _ => offered(PinChoice::ALL),
        }
    }

    /// What a job holds; "not noted" as long as nothing was said.
    #[must_use]
    pub fn chosen(self, job: &Job) -> &'static str {
        let (check, item) = self.names();
        let kept = job.choice(check, item).unwrap_or_default();
        let known = self.offered().into_iter().find(|offer| offer.name == kept);
        known.map_or(PinChoice::NotNoted.name(), |offer| offer.name)
    }

    /// An offered answer as it goes into a job.
    #[must_use]
    pub fn answer(name: &str) -> Option<Answer> {
        Name::new(name).ok().map(Answer::Choice)
    }
}

/// How many things were noted.
#[must_use]
pub fn noted(job: &Job) -> usize {
    let is_noted = |noted: &Noted| noted.chosen(job) != PinChoice::NotNoted.name();
    Noted::ALL.iter().filter(|noted| is_noted(noted)).count()
}

fn offered<C: Choice + Words>(choices: &[C]) -> Vec<Offered> {
    choices
        .iter()
        .map(|choice| Offered {
            name: choice.name(),
            words: choice.words(),
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use job::{Content, Entry, Id, Moment, Origin, Question};

    #[test]
    fn both_lists_call_nothing_noted_by_the_same_name() {
        assert_eq!(PinChoice::NotNoted.name(), PairChoice::NotNoted.name());
        for noted in Noted::ALL {
            assert_eq!(
                noted.offered().last().unwrap().name,
                PinChoice::NotNoted.name()
            );
        }
    }

    #[test]
    fn what_was_noted_is_found_again_under_its_own_question() {
        let now = Moment::new(0, 0).unwrap();
        let mut job = Job::new(Id::new("j").unwrap(), now, Origin::Invented);
        assert_eq!(noted(&job), 0);
        for (place, noted) in Noted::ALL.into_iter().enumerate() {
            let (check, item) = noted.names();
            let content = Content::Answer {
                question: Question::new(check, item).unwrap(),
                answer: Noted::answer(noted.offered()[place % 3].name).unwrap(),
            };
            let id = Id::new(&format!("e{place}")).unwrap();
            job.add(Entry {
                id,
                at: now,
                content,
            })
            .unwrap();
        }
        for (place, noted) in Noted::ALL.into_iter().enumerate() {
            assert_eq!(noted.chosen(&job), noted.offered()[place % 3].name);
        }
        assert_eq!(noted(&job), Noted::ALL.len());
    }
}

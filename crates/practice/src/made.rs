//! A machine to practise on, and how a job says which one it is.
//!
//! A job holds no truth about its machine, only by what it was made: a lesson's name, or a seed and
//! a number. Whoever opens the job makes the same machine again. Whether it is the same is seen from
//! what was told in the beginning: a program that simulates otherwise doesn't go on with another
//! machine's readings.

use diagnosis::Priors;
use job::{Answer, Content, Job, Text};
use measure::MeterKind;

use crate::answers::Sheet;
use crate::draw::drawn;
use crate::lesson::Lesson;
use crate::walk::Examined;

/// By what a machine was made.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Made {
    /// As a lesson.
    Lesson(Lesson),
    /// By chance.
    Drawn {
        /// Which row of machines.
        seed: u64,
        /// Its place in the row.
        number: u64,
    },
}

/// Why a job's machine can't be made again.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NotMade {
    /// It doesn't say which it is.
    Untold,
    /// This program has no such machine.
    Unknown,
    /// This program makes another one of it.
    Another,
}

impl Made {
    /// The check under which a job keeps it.
    pub const CHECK: &'static str = "practice";
    const LESSON: &'static str = "lesson";
    const SEED: &'static str = "seed";
    const NUMBER: &'static str = "number";

    /// What a job begins with: by what its machine was made, and what is told of it.
    #[must_use]
    pub fn opening(self, sheet: &mut Sheet) -> Vec<Content> {
        let named = match self {
            Self::Lesson(lesson) => vec![(Self::LESSON, lesson.name().to_owned())],
            Self::Drawn { seed, number } => vec![
                (Self::SEED, seed.to_string()),
                (Self::NUMBER, number.to_string()),
            ],
        };
        let entry = |(item, text): (&str, String)| {
            let text = Answer::Text(Text::new(&text).ok()?);
            crate::answers::answer(Self::CHECK, item, text)
        };
        let mut opening: Vec<Content> = named.into_iter().filter_map(entry).collect();
        opening.extend(sheet.opening());
        opening
    }

    /// By what a job's machine was made; nothing where it doesn't say, or not in full.
    #[must_use]
    pub fn of_job(job: &Job) -> Option<Self> {
        let text = |item: &str| first(job, Self::CHECK, item);
        if let Some(name) = text(Self::LESSON) {
            return Lesson::from_name(name).map(Self::Lesson);
        }
        Some(Self::Drawn {
            seed: text(Self::SEED)?.parse().ok()?,
            number: text(Self::NUMBER)?.parse().ok()?,
        })
    }

    /// Makes the machine.
    #[must_use]
    pub fn sheet(self, meter: MeterKind) -> Option<Sheet> {
        match self {
            Self::Lesson(lesson) => lesson.sheet(meter),
            // The app's own shares, not a person's: else everybody would get another machine.
            Self::Drawn { seed, number } => drawn(&Priors::default(), meter, seed, number).ok()?,
        }
    }

    /// Makes a job's machine again.
    ///
    /// # Errors
    /// [`NotMade`] where that can't be, or where it comes out as another one.
    pub fn again(job: &Job, meter: MeterKind) -> Result<(Self, Sheet), NotMade> {
        let made = Self::of_job(job).ok_or(NotMade::Untold)?;
        let mut sheet = made.sheet(meter).ok_or(NotMade::Unknown)?;
        let told = sheet.opening();
        let is_told = |content: &Content| {
            let mut entries = job.entries().iter().map(|entry| &entry.content);
            entries.any(|entry| entry == content)
        };
        if told.iter().all(is_told) {
            Ok((made, sheet))
        } else {
            Err(NotMade::Another)
        }
    }
}

/// The first text under these names, struck or not: what a job begins with is no finding.
fn first<'a>(job: &'a Job, check: &str, item: &str) -> Option<&'a str> {
    job.entries().iter().find_map(|entry| match &entry.content {
        Content::Answer {
            question,
            answer: Answer::Text(text),
        } if question.is(check, item) => Some(text.as_str()),
        _ => None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use job::{Entry, Id, Moment, Origin};

    fn job_of(contents: Vec<Content>) -> Job {
        let at = Moment::new(0, 0).unwrap();
        let mut job = Job::new(Id::new("j").unwrap(), at, Origin::Practice);
        for (place, content) in contents.into_iter().enumerate() {
            let id = Id::new(&format!("e{place}")).unwrap();
            job.add(Entry { id, at, content }).unwrap();
        }
        job
    }

    #[test]
    fn a_job_says_which_machine_it_is_and_the_same_one_is_made_again() {
        for made in [
            Made::Lesson(Lesson::HumsAndClicks),
            Made::Drawn {
                seed: 3,
                number: 17,
            },
        ] {
            let mut sheet = made.sheet(MeterKind::Basic).unwrap();
            let job = job_of(made.opening(&mut sheet));
            let (again, other) = Made::again(&job, MeterKind::Basic).unwrap();
            assert_eq!(again, made);
            assert_eq!(other.machine().troubles(), sheet.machine().troubles());
            assert_eq!(other.machine().blueprint(), sheet.machine().blueprint());
        }
    }

    #[test]
    fn a_damaged_job_is_told_apart_from_one_of_another_program() {
        let lesson = Made::Lesson(Lesson::HumsAndClicks);
        let mut sheet = lesson.sheet(MeterKind::Basic).unwrap();
        let opening = lesson.opening(&mut sheet);
        let again = |contents| Made::again(&job_of(contents), MeterKind::Basic).unwrap_err();
        assert_eq!(again(opening[1..].to_vec()), NotMade::Untold);
        assert_eq!(again(opening[..2].to_vec()), NotMade::Another);
        let text = |item, text: &str| {
            let text = Answer::Text(Text::new(text).unwrap());
            crate::answers::answer(Made::CHECK, item, text).unwrap()
        };
        assert_eq!(again(vec![text("lesson", "flying")]), NotMade::Untold);
        assert_eq!(
            again(vec![text("seed", "3"), text("number", "-1")]),
            NotMade::Untold
        );
        assert_eq!(again(vec![text("seed", "3")]), NotMade::Untold);
        // The last number that there is makes a machine, another than was told.
        let last = u64::MAX.to_string();
        let opening = vec![text("seed", "3"), text("number", &last)];
        assert_eq!(again(opening), NotMade::Another);
    }
}

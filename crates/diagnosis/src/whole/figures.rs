//! Everything that is assumed and that a person can change: as one value, as lines of text, and
//! as an entry of a job that was weighed with figures of somebody's own.
//!
//! A line is "build fault percent" for a share, with `none` for nothing wrong; "build fault term
//! figure" for what mending it takes; "costs stake figure" for the rest.

use job::{Answer, Content, Job, Question, Text};
use quantity::{parse_decimal, write_decimal};

use super::build::Build;
use super::costs::{Cost, Costs, Stake, Term};
use super::fault::Fault;
use super::priors::Priors;
use crate::choice::Choice;

/// What is assumed before anything is known.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Figures {
    /// How common each fault is.
    pub priors: Priors,
    /// What things cost.
    pub costs: Costs,
}

const NOTHING_WRONG: &str = "none";
const COSTS: &str = "costs";

impl From<Priors> for Figures {
    fn from(priors: Priors) -> Self {
        Self {
            priors,
            costs: Costs::default(),
        }
    }
}

impl Figures {
    /// The check under which a job keeps the figures that it was weighed with.
    pub const CHECK: &'static str = "assumptions";

    /// Reads lines. One that can't be taken is passed over: the stated figure holds.
    ///
    /// ```
    /// use diagnosis::Figures;
    /// let own = Figures::read("frost-free charge-gone 12.5\ncosts hour-of-work 20\nno such line");
    /// assert_eq!(own.count(), 2);
    /// assert_eq!(Figures::read(&own.text()), own);
    /// ```
    #[must_use]
    pub fn read(text: &str) -> Self {
        let mut figures = Self::default();
        for line in text.lines() {
            // What is refused is left as stated.
            let _ = figures.take(line);
        }
        figures
    }

    /// The changed figures, a line each.
    #[must_use]
    pub fn text(&self) -> String {
        let mut lines = Vec::new();
        for edit in self.priors.edits() {
            let fault = edit.fault.map_or(NOTHING_WRONG, Choice::name);
            lines.push(line(&[edit.build.name(), fault], edit.percent));
        }
        for (cost, value) in self.costs.edits() {
            lines.push(match cost {
                Cost::Stake(stake) => line(&[COSTS, stake.name()], *value),
                Cost::Mending(build, fault, term) => {
                    line(&[build.name(), fault.name(), term.name()], *value)
                }
            });
        }
        lines.concat()
    }

    /// How many figures differ from the stated ones.
    #[must_use]
    pub fn count(&self) -> usize {
        self.priors.edits().len() + self.costs.edits().len()
    }

    /// The figures that came with a job, where it was weighed with others than the stated ones.
    #[must_use]
    pub fn of_job(job: &Job) -> Option<Self> {
        let mut text = String::new();
        for item in 0.. {
            let Some(Answer::Text(part)) = job.answer(Self::CHECK, &item_of(item)) else {
                break;
            };
            text.push_str(part.as_str());
            text.push('\n');
        }
        (!text.is_empty()).then(|| Self::read(&text))
    }

    /// The entries that let a job carry these figures; none for the stated ones.
    #[must_use]
    pub fn entries(&self) -> Vec<Content> {
        let text = self.text();
        let mut parts = vec![String::new()];
        for line in text.split_inclusive('\n') {
            if parts
                .last()
                .is_some_and(|part| part.len() + line.len() > Text::LONGEST)
            {
                parts.push(String::new());
            }
            if let Some(part) = parts.last_mut() {
                part.push_str(line);
            }
        }
        parts.retain(|part| !part.is_empty());
        let entries = parts.iter().enumerate().filter_map(|(item, part)| {
            Some(Content::Answer {
                question: Question::new(Self::CHECK, &item_of(item)).ok()?,
                answer: Answer::Text(Text::new(part.trim_end()).ok()?),
            })
        });
        entries.collect()
    }

    /// Takes one line. `None` where it says nothing or what it says is refused.
    fn take(&mut self, line: &str) -> Option<()> {
        let words: Vec<&str> = line.split_whitespace().collect();
        match words[..] {
            [COSTS, stake, value] => {
                let cost = Cost::Stake(Stake::from_name(stake)?);
                self.costs.set(cost, parse_decimal(value)?).ok()
            }
            [build, NOTHING_WRONG, value] => self
                .priors
                .set(Build::from_name(build)?, None, parse_decimal(value)?)
                .ok(),
            [build, fault, value] => {
                let fault = Some(Fault::from_name(fault)?);
                let percent = parse_decimal(value)?;
                self.priors
                    .set(Build::from_name(build)?, fault, percent)
                    .ok()
            }
            [build, fault, term, value] => {
                let (build, fault) = (Build::from_name(build)?, Fault::from_name(fault)?);
                let cost = Cost::Mending(build, fault, Term::from_name(term)?);
                self.costs.set(cost, parse_decimal(value)?).ok()
            }
            _ => None,
        }
    }
}

fn line(words: &[&str], figure: f64) -> String {
    [&words.join(" "), " ", &write_decimal(figure), "\n"].concat()
}

fn item_of(place: usize) -> String {
    format!("figures-{}", place + 1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use job::{Entry, Id, Moment, Origin};

    fn own() -> Figures {
        let mut own = Figures::default();
        let set = &mut own.priors;
        set.set(Build::FrostFree, Some(Fault::ChargeGone), 12.5)
            .unwrap();
        set.set(Build::ManualDefrost, None, 30.0).unwrap();
        let costs = &mut own.costs;
        costs.set(Cost::Stake(Stake::ChestFreezer), 90.0).unwrap();
        let lasts = Cost::Mending(Build::Inverter, Fault::DriveWithoutOutput, Term::Lasts);
        costs.set(lasts, 60.0).unwrap();
        own
    }

    fn job(contents: Vec<Content>) -> Job {
        let at = Moment::new(0, 0).unwrap();
        let mut job = Job::new(Id::new("j").unwrap(), at, Origin::Person);
        for (place, content) in contents.into_iter().enumerate() {
            let id = Id::new(&format!("e{place}")).unwrap();
            job.add(Entry { id, at, content }).unwrap();
        }
        job
    }

    #[test]
    fn what_is_kept_is_read_back_as_it_was() {
        assert_eq!(Figures::read(&own().text()), own());
        assert_eq!(own().count(), 4);
    }

    #[test]
    fn lines_that_make_no_sense_change_nothing() {
        let damaged = "frost-free charge-gone\nfrost-free gremlins 5\n\nsteam none 3\n\
                       frost-free charge-gone 100\ncosts hour-of-work -3\nfrost-free iced-up lasts x";
        assert_eq!(Figures::read(damaged), Figures::default());
    }

    #[test]
    fn a_job_carries_figures_of_any_number_and_none_where_they_are_the_stated_ones() {
        assert_eq!(Figures::of_job(&job(own().entries())), Some(own()));
        assert!(Figures::default().entries().is_empty());
        assert_eq!(Figures::of_job(&job(Vec::new())), None);
        let mut many = own();
        for build in Build::ALL {
            for fault in Fault::ALL.iter().filter(|fault| fault.exists_in(*build)) {
                for term in Term::ALL {
                    let _ = many.costs.set(Cost::Mending(*build, *fault, *term), 42.0);
                }
            }
        }
        assert!(many.entries().len() > 2);
        assert_eq!(Figures::of_job(&job(many.entries())), Some(many));
    }
}

//! A new job, question by question, before it is one.

use diagnosis::{Asked, Choice, Complaint, Kind, MainsChoice, ToldBy};
use job::{Answer, Name, Question};

use crate::route::Step;

/// What was answered so far.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct NewJob {
    /// What it is.
    pub kind: Option<Kind>,
    /// Its mains.
    pub mains: Option<MainsChoice>,
    /// What it did.
    pub complaint: Option<Complaint>,
    /// Who says so.
    pub told_by: Option<ToldBy>,
}

impl NewJob {
    /// The first question that is still open; none once the job can be made.
    #[must_use]
    pub fn open_question(&self) -> Option<Step> {
        if self.kind.is_none() {
            Some(Step::Kind)
        } else if self.mains.is_none() {
            Some(Step::Mains)
        } else if self.complaint.is_none() {
            Some(Step::Complaint)
        } else if self.needs_witness() && self.told_by.is_none() {
            Some(Step::ToldBy)
        } else {
            None
        }
    }

    /// The question to show when this one is asked for: an earlier one where that is still open.
    #[must_use]
    pub fn shown(&self, asked_for: Step) -> Step {
        self.open_question()
            .map_or(asked_for, |open| open.min(asked_for))
    }

    /// With one question answered, by the name of the answer.
    #[must_use]
    pub fn answered(mut self, step: Step, name: &str) -> Self {
        match step {
            Step::Kind => self.kind = Choice::from_name(name),
            Step::Mains => self.mains = Choice::from_name(name),
            Step::Complaint => self.complaint = Choice::from_name(name),
            Step::ToldBy => self.told_by = Choice::from_name(name),
        }
        self
    }

    /// The question to ask after this one: each is asked anew on the way forward, so that an
    /// answer that was changed leads on. None once the job can be made.
    #[must_use]
    pub fn question_after(&self, step: Step) -> Option<Step> {
        let next = match step {
            Step::Kind => Some(Step::Mains),
            Step::Mains => Some(Step::Complaint),
            Step::Complaint if self.needs_witness() => Some(Step::ToldBy),
            Step::Complaint | Step::ToldBy => None,
        };
        next.map(|next| self.shown(next))
            .or_else(|| self.open_question())
    }

    /// What was answered, as a job keeps it.
    #[must_use]
    pub fn answers(&self) -> Vec<(Question, Answer)> {
        let told_by = self.told_by.filter(|_| self.needs_witness());
        [
            self.kind.and_then(answer),
            self.mains.and_then(answer),
            self.complaint.and_then(answer),
            told_by.and_then(answer),
        ]
        .into_iter()
        .flatten()
        .collect()
    }

    /// What was answered, as text to be kept.
    #[must_use]
    pub fn to_text(&self) -> String {
        [
            self.kind.map(Choice::name),
            self.mains.map(Choice::name),
            self.complaint.map(Choice::name),
            self.told_by.map(Choice::name),
        ]
        .map(Option::unwrap_or_default)
        .join(" ")
    }

    /// What was kept; an answer that can't be read is asked for again.
    #[must_use]
    pub fn from_text(text: &str) -> Self {
        let mut names = text.split(' ');
        Self {
            kind: names.next().and_then(Kind::from_name),
            mains: names.next().and_then(MainsChoice::from_name),
            complaint: names.next().and_then(Complaint::from_name),
            told_by: names.next().and_then(ToldBy::from_name),
        }
    }

    fn needs_witness(&self) -> bool {
        needs_witness(self.complaint)
    }
}

/// Whether it was said to have done something that someone must have seen.
#[must_use]
pub fn needs_witness(complaint: Option<Complaint>) -> bool {
    !matches!(
        complaint,
        None | Some(Complaint::NotPluggedIn | Complaint::Unknown)
    )
}

/// The setting for the person's own mains, by name.
pub const MAINS_SETTING: &str = "mains";

/// The mains in the order in which they are offered: the likelier one first.
#[must_use]
pub fn mains_for(region: &str) -> Vec<MainsChoice> {
    let likelier = if region == "JP" {
        MainsChoice::V100
    } else if AROUND_120_V.contains(&region) {
        MainsChoice::V120F60
    } else {
        MainsChoice::V230F50
    };
    mains_after(likelier)
}

/// All mains, this one in front.
#[must_use]
pub fn mains_after(first: MainsChoice) -> Vec<MainsChoice> {
    let others = MainsChoice::ALL.iter().copied();
    core::iter::once(first)
        .chain(others.filter(|mains| *mains != first))
        .collect()
}

/// Where homes have 100 to 127 V (from memory). It decides an order and nothing else.
const AROUND_120_V: [&str; 26] = [
    "US", "CA", "MX", "PR", "VI", "GU", "AS", "TW", "CO", "VE", "EC", "PA", "CR", "NI", "HN", "GT",
    "SV", "CU", "DO", "HT", "JM", "BS", "BZ", "KY", "BM", "SR",
];

fn answer<C: Asked>(choice: C) -> Option<(Question, Answer)> {
    let question = Question::new(C::CHECK, C::ITEM).ok()?;
    let name = Name::new(choice.name()).ok()?;
    Some((question, Answer::Choice(name)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn answered(complaint: Complaint) -> NewJob {
        NewJob {
            kind: Some(Kind::ChestFreezer),
            mains: Some(MainsChoice::V230F50),
            complaint: Some(complaint),
            told_by: None,
        }
    }

    #[test]
    fn a_machine_that_was_never_plugged_in_needs_no_witness() {
        assert_eq!(answered(Complaint::NotPluggedIn).open_question(), None);
        assert_eq!(answered(Complaint::Unknown).open_question(), None);
        assert_eq!(
            answered(Complaint::Silent).open_question(),
            Some(Step::ToldBy)
        );
    }

    #[test]
    fn a_question_is_not_shown_before_the_ones_in_front_of_it_are_answered() {
        let nothing = NewJob::default();
        assert_eq!(nothing.shown(Step::Complaint), Step::Kind);
        let all = answered(Complaint::Silent);
        assert_eq!(all.shown(Step::Mains), Step::Mains);
    }

    #[test]
    fn the_questions_lead_to_a_job_in_three_steps_and_a_witness_where_one_is_needed() {
        let mut job = NewJob::default();
        job = job.answered(Step::Kind, "chest-freezer");
        assert_eq!(job.question_after(Step::Kind), Some(Step::Mains));
        job = job.answered(Step::Mains, "230-v-50-hz");
        assert_eq!(job.question_after(Step::Mains), Some(Step::Complaint));
        let never = job.answered(Step::Complaint, "not-plugged-in");
        assert_eq!(never.question_after(Step::Complaint), None);
        let silent = job.answered(Step::Complaint, "silent");
        assert_eq!(silent.question_after(Step::Complaint), Some(Step::ToldBy));
        let told = silent.answered(Step::ToldBy, "seller");
        assert_eq!(told.question_after(Step::ToldBy), None);
        assert_eq!(told.answers().len(), 4);
    }

    #[test]
    fn every_answer_is_kept_and_comes_back() {
        for kind in Kind::ALL {
            for complaint in Complaint::ALL {
                let job = NewJob {
                    kind: Some(*kind),
                    told_by: Some(ToldBy::Seller),
                    ..answered(*complaint)
                };
                assert_eq!(NewJob::from_text(&job.to_text()), job);
            }
        }
        let half = NewJob {
            mains: Some(MainsChoice::V120F60),
            ..NewJob::default()
        };
        assert_eq!(NewJob::from_text(&half.to_text()), half);
        assert_eq!(NewJob::from_text("?? ??"), NewJob::default());
    }

    #[test]
    fn a_witness_named_before_the_complaint_was_changed_is_left_out() {
        let job = NewJob {
            told_by: Some(ToldBy::Seller),
            ..answered(Complaint::Unknown)
        };
        assert_eq!(job.answers().len(), 3);
    }

    #[test]
    fn the_likelier_mains_comes_first_and_both_are_offered() {
        assert_eq!(mains_for("US")[0], MainsChoice::V120F60);
        assert_eq!(mains_for("DE")[0], MainsChoice::V230F50);
        assert_eq!(mains_for("JP")[0], MainsChoice::V100);
        assert_eq!(mains_for("")[1], MainsChoice::V120F60);
        assert_eq!(mains_for("").len(), MainsChoice::ALL.len());
    }
}

//! Which checks somebody made on a machine, and what they take by the app's own minutes.

use diagnosis::{Build, Task};
use job::{Answer, Content, Job};

use crate::walk::is_told_at_once;

/// Checks in their order, with what they take.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Effort {
    /// Each check once, where it was made first.
    pub tasks: Vec<Task>,
    /// Minutes of work, without what it takes to get at the parts.
    pub minutes: f64,
    /// Minutes of waiting on top.
    pub waiting: f64,
}

impl Effort {
    /// Of the checks of a job. What was taken back was made all the same; what could not be done was
    /// not, and what was told at the beginning is no check.
    #[must_use]
    pub fn of_job(job: &Job, build: Build) -> Self {
        let made = job.entries().iter().filter_map(|entry| {
            let Content::Answer { question, answer } = &entry.content else {
                return None;
            };
            let task = Task::from_name(question.check.as_str())?;
            let is_told = matches!(task, Task::Check(check) if is_told_at_once(check));
            (!is_told && !matches!(answer, Answer::NotDone(_))).then_some(task)
        });
        Self::of_tasks(made, build)
    }

    /// Of these checks.
    #[must_use]
    pub fn of_tasks(tasks: impl IntoIterator<Item = Task>, build: Build) -> Self {
        let mut effort = Self::default();
        for task in tasks {
            if !effort.tasks.contains(&task) {
                effort.minutes += task.minutes(build);
                effort.waiting += task.waiting(build);
                effort.tasks.push(task);
            }
        }
        effort
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use diagnosis::Clue;
    use job::{Entry, Id, Moment, Name, NotDone, Origin, Question};

    #[test]
    fn a_check_counts_once_and_what_was_not_done_or_was_told_does_not_count() {
        let at = Moment::new(0, 0).unwrap();
        let mut job = Job::new(Id::new("j").unwrap(), at, Origin::Practice);
        let mut add = |check: &str, item: &str, answer: Answer| {
            let id = Id::new(&format!("e{}", job.entries().len())).unwrap();
            let question = Question::new(check, item).unwrap();
            let content = Content::Answer { question, answer };
            job.add(Entry { id, at, content }).unwrap();
        };
        let choice = |name: &str| Answer::Choice(Name::new(name).unwrap());
        add("machine", "kind", choice("chest-freezer"));
        add("lint", "answer", choice("matted"));
        add("seal", "answer", Answer::NotDone(NotDone::NoTool));
        add("lint", "answer", choice("clear"));
        add("temperatures", "freezer", choice("any"));
        let build = Build::ManualDefrost;
        let effort = Effort::of_job(&job, build);
        let (lint, hold) = (Task::Clue(Clue::Lint), Task::Clue(Clue::Temperatures));
        assert_eq!(effort.tasks, [lint, hold]);
        assert!((effort.minutes - lint.minutes(build) - hold.minutes(build)).abs() < 1e-9);
        assert!((effort.waiting - lint.waiting(build) - hold.waiting(build)).abs() < 1e-9);
        assert!(effort.waiting > effort.minutes);
    }
}

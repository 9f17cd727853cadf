//! Which part of the windings check is on the screen. What to do next comes from the
//! assessment; this only finds the part of the screen that does it.

use diagnosis::{Assessment, Check, GearChoice, PinShape, Step, answered};
use job::Job;

use super::pair_reading::Target;

/// What is on the screen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stage {
    /// "Are start device and protector off?"
    Before,
    /// They are still on.
    StillOn,
    /// "How do the pins lie?"
    Shape,
    /// The pin diagram.
    Measure,
}

/// The screen's part for a job. `all_the_same`: the person wants to measure with the start
/// device left on; the readings are understood with it on.
#[must_use]
pub fn stage(job: &Job, assessment: &Assessment, all_the_same: bool) -> Stage {
    let known = assessment.windings.as_ref();
    let anything_read = known.is_some_and(|known| !known.inspection.is_empty());
    let gear = answered::<GearChoice>(job);
    if anything_read {
        Stage::Measure
    } else if gear.is_none() {
        Stage::Before
    } else if gear == Some(GearChoice::StillOn) && !all_the_same {
        Stage::StillOn
    } else if answered::<PinShape>(job).is_none() {
        Stage::Shape
    } else {
        Stage::Measure
    }
}

/// What the meter is to be put to next, if the next steps hold a measurement at the pins.
#[must_use]
pub fn suggested(assessment: &Assessment) -> Option<Target> {
    assessment.next.iter().find_map(|step| match step {
        Step::Measure(pair) | Step::Repeat(pair) => Some(Target::Pair(*pair)),
        Step::TouchProbes => Some(Target::Leads),
        _ => None,
    })
}

/// The next step in words below the diagram, unless it only asks for the next pair, as the field
/// itself does.
#[must_use]
pub fn step_to_tell(assessment: &Assessment) -> Option<Step> {
    // What comes before the pins is the job's business; what comes after them is told here.
    let at_the_pins = |step: &&Step| !matches!(step, Step::Do(check) if *check < Check::Windings);
    let first = assessment.next.iter().find(at_the_pins).copied()?;
    (!matches!(first, Step::Measure(_))).then_some(first)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::forms::pair_reading::{Checked, checked};
    use diagnosis::{Choice, Model, assess_checks};
    use job::{Answer, Content, Entry, Id, Moment, Name, Origin, Question};
    use measure::MeterKind;
    use measure::windings::Pair;

    fn job_with(answers: &[(&str, Answer)]) -> (Job, Assessment) {
        let now = Moment::new(0, 0).unwrap();
        let mut job = Job::new(Id::new("j").unwrap(), now, Origin::Invented);
        for (place, (item, answer)) in answers.iter().enumerate() {
            let content = Content::Answer {
                question: Question::new("windings", item).unwrap(),
                answer: answer.clone(),
            };
            let id = Id::new(&format!("e{place}")).unwrap();
            job.add(Entry {
                id,
                at: now,
                content,
            })
            .unwrap();
        }
        let assessment = assess_checks(&Model::default(), &job, now);
        (job, assessment)
    }

    fn choice<C: Choice>(choice: C) -> Answer {
        Answer::Choice(Name::new(choice.name()).unwrap())
    }

    fn read(pair: Pair, typed: &str) -> (&'static str, Answer) {
        let target = Target::Pair(pair);
        match checked(
            typed,
            target,
            MeterKind::Good.automatic(),
            wording::Degrees::Celsius,
        ) {
            Checked::Fine(answer) => (target.names().1, answer),
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn the_start_gear_is_asked_first_and_the_shape_second() {
        let (job, assessment) = job_with(&[]);
        assert_eq!(stage(&job, &assessment, false), Stage::Before);
        let (job, assessment) = job_with(&[("start-gear", choice(GearChoice::Off))]);
        assert_eq!(stage(&job, &assessment, false), Stage::Shape);
    }

    #[test]
    fn with_the_start_gear_on_nobody_measures_without_saying_so() {
        let (job, assessment) = job_with(&[("start-gear", choice(GearChoice::StillOn))]);
        assert_eq!(stage(&job, &assessment, false), Stage::StillOn);
        assert_eq!(stage(&job, &assessment, true), Stage::Shape);
    }

    #[test]
    fn the_pairs_are_suggested_one_after_another_and_then_no_more() {
        let shape = ("shape", choice(PinShape::PointUp));
        let bare = ("start-gear", choice(GearChoice::Off));
        let mut answers = vec![bare, shape];
        for (pair, typed) in [
            (Pair::OneTwo, "4.7"),
            (Pair::OneThree, "12.0"),
            (Pair::TwoThree, "7.6"),
        ] {
            let (job, assessment) = job_with(&answers);
            assert_eq!(stage(&job, &assessment, false), Stage::Measure);
            assert_eq!(suggested(&assessment), Some(Target::Pair(pair)));
            assert_eq!(step_to_tell(&assessment), None);
            answers.push(read(pair, typed));
        }
        let (_, assessment) = job_with(&answers);
        assert_eq!(suggested(&assessment), None);
        assert_eq!(step_to_tell(&assessment), Some(Step::Do(Check::Shell)));
    }

    #[test]
    fn near_zero_the_leads_are_asked_for_before_the_next_pair() {
        let bare = ("start-gear", choice(GearChoice::Off));
        let (_, assessment) = job_with(&[bare, read(Pair::OneTwo, "0.4")]);
        assert_eq!(suggested(&assessment), Some(Target::Leads));
        assert_eq!(step_to_tell(&assessment), Some(Step::TouchProbes));
    }
}

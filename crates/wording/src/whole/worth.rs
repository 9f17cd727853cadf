//! The sections of a report that weigh the whole machine, a line each.

use diagnosis::{
    Action, Assessment, Clue, Decided, Link, Proposal, Refrigerant, Step, Suspect, Task, Weighed,
    Whole, WhyWithheld,
};
use measure::ranked;

use super::hold::why_withheld;
use super::reading::reading;
use super::task::times;
use super::{NOTHING_WRONG, action, heading, next_check, weight, within};
use crate::{Locale, Words, odds, step};

/// How many suspects, readings for one, readings against one and next checks are told.
const SUSPECTS: usize = 5;
const FOR: usize = 3;
const AGAINST: usize = 2;
const CHECKS: usize = 3;
const NAMED: usize = 3;
/// A link is told from here on: a sound machine that isn't cold yet has some doubt at each.
const DOUBTED: f64 = 0.15;
/// A repair stands out from here on.
const STANDS_OUT: f64 = 0.15;
/// What is less likely than that is only counted, unless nothing is likelier.
const WORTH_TELLING: f64 = 0.05;

/// Which parts may be at fault, and that nothing is.
#[must_use]
pub fn at_fault(whole: &Whole) -> Vec<String> {
    let each = "Each could be at fault, more than one at a time.".to_owned();
    [each].into_iter().chain(likely(whole)).collect()
}

/// The same without what goes for all of them.
#[must_use]
pub fn likely(whole: &Whole) -> Vec<String> {
    let (likely, others) = whole.suspects.split_at(told(whole));
    let mut lines: Vec<String> = likely.iter().map(suspect).collect();
    if let Some(most) = others.first() {
        let count = others.len();
        let each = match odds(most.probability).phrase {
            phrase if phrase.starts_with("about") => format!("{phrase} at most"),
            phrase => phrase.to_owned(),
        };
        lines.push(match count {
            1 => format!("1 more: {each}."),
            count => format!("{count} more, each {each}."),
        });
    }
    lines.push(suspect(&whole.nothing_wrong));
    lines
}

/// How many suspects are told one by one; the others are counted.
#[must_use]
pub fn told(whole: &Whole) -> usize {
    let likely = whole.suspects.iter();
    likely
        .take_while(|suspect| suspect.probability >= WORTH_TELLING)
        .take(SUSPECTS)
        .count()
        .max(1)
        .min(whole.suspects.len())
}

/// A suspect with its odds and the strongest readings for and against it.
#[must_use]
pub fn suspect(suspect: &Suspect) -> String {
    let what = suspect.fault.map_or(NOTHING_WRONG, Words::words);
    let (now, before) = (odds(suspect.probability), odds(suspect.before));
    let moved = if now.phrase == before.phrase {
        String::new()
    } else {
        format!(", was {}", before.phrase)
    };
    let mut said = format!("{what}: {}, {}{moved}.", now.word, now.phrase);
    // What is all but excluded needs no reason for it.
    let most = if suspect.probability < WORTH_TELLING {
        0
    } else {
        FOR
    };
    let pointing = suspect.pointing_to.iter().take(most);
    let away = suspect.pointing_away.iter().take(AGAINST);
    for reason in grouped(pointing.chain(away)) {
        said.push(' ');
        said.push_str(&reason);
    }
    said
}

/// "Points strongly to it: start device, windings.", one sentence for each step of weight.
fn grouped<'a>(weighed: impl Iterator<Item = &'a Weighed>) -> Vec<String> {
    let mut groups: Vec<(&'static str, Vec<String>)> = Vec::new();
    for one in weighed {
        let (how, mut what) = (weight(one.factor), within(reading(one.task)));
        if one.before_change {
            what.push_str(" (before the change)");
        }
        match groups.last_mut() {
            Some((last, names)) if *last == how => names.push(what),
            _ => groups.push((how, vec![what])),
        }
    }
    let said = groups.into_iter().map(|(how, names)| {
        format!(
            "{}: {}.",
            crate::windings_finding::capital(how),
            names.join(", ")
        )
    });
    said.collect()
}

/// What to do, as a bet; what would be next best; what must not be done meanwhile.
#[must_use]
pub fn to_do(assessment: &Assessment, whole: &Whole) -> Vec<String> {
    let verdict = &whole.verdict;
    let (best, other) = (&verdict.best, &verdict.runner_up);
    let mut lines = vec![match verdict.decided {
        Decided::GoOn if can_be_tried(whole) => format!("To find out: {}", bet(best)),
        Decided::GoOn => format!("{} {}", Decided::GoOn.words(), so_far(best)),
        Decided::NearlySure => bet_with_cause(best),
        Decided::NothingWorthwhile => {
            let why = Decided::NothingWorthwhile.words();
            format!("{} {why}", bet_with_cause(best))
        }
    }];
    // The scrap yard is no advice while more can be found out.
    let premature = other.action == Action::Scrap && verdict.decided == Decided::GoOn;
    if other.right >= worth_naming(other.action) && !premature {
        lines.push(format!("Next best: {}", bet(other)));
    }
    let burns = assessment
        .machine
        .refrigerant
        .is_none_or(Refrigerant::burns);
    if burns && (is_fitted(best.action) || is_fitted(other.action)) {
        lines.push(
            "What is fitted: only the maker's part or one declared for gas that burns.".to_owned(),
        );
    }
    lines.extend(verdict.hold.iter().map(|hold| hold.words().to_owned()));
    lines
}

/// From which chance on an action is told as the next best. The scrap yard is there anyway.
fn worth_naming(action: Action) -> f64 {
    match action {
        Action::Scrap => 0.15,
        _ => WORTH_TELLING,
    }
}

/// Whether the best is to fit a part to see, and that can be done now.
fn can_be_tried(whole: &Whole) -> bool {
    let fit = Task::Clue(Clue::GoodDevice);
    let is_next = whole.next.first().is_some_and(|one| one.task == fit);
    whole.verdict.best.action == Action::TestFit && is_next
}

fn is_fitted(action: Action) -> bool {
    matches!(
        action,
        Action::Replace | Action::TestFit | Action::MendWiring | Action::FitStartGear
    )
}

/// What it would be with no more checks. Nothing is proposed that is held back at once, or that
/// is hardly ever right.
fn so_far(best: &Proposal) -> String {
    match stands_out(best) {
        true => format!("Best bet so far: {}", bet(best)),
        false => NO_REPAIR.to_owned(),
    }
}

const NO_REPAIR: &str = "So far no repair stands out.";

fn stands_out(best: &Proposal) -> bool {
    best.action != Action::Scrap && best.right >= STANDS_OUT
}

/// The same under a heading that says already that it is the best bet so far.
#[must_use]
pub fn bet_so_far(whole: &Whole) -> String {
    let best = &whole.verdict.best;
    match stands_out(best) {
        true => bet(best),
        false => NO_REPAIR.to_owned(),
    }
}

/// A bet on which more is to be found out: what a machine is scrapped for is not known yet.
fn bet(proposal: &Proposal) -> String {
    match proposal.action {
        Action::Scrap => right(proposal, action(Action::Scrap, None)),
        _ => bet_with_cause(proposal),
    }
}

fn bet_with_cause(proposal: &Proposal) -> String {
    right(proposal, action(proposal.action, proposal.fault))
}

fn right(proposal: &Proposal, what: String) -> String {
    let right = odds(proposal.right).phrase.replace(" in ", " of ");
    format!("{what}; right in {right} such cases.")
}

/// What can be done next, and what has to wait.
pub(crate) fn worth_checking(whole: &Whole, locale: &Locale) -> Vec<String> {
    let mut lines = Vec::new();
    let safety: Vec<String> = whole
        .safety_first
        .iter()
        .map(|first| match first {
            Step::Do(check) => within(heading(Task::Check(*check))),
            other => within(&step(*other, locale).heading),
        })
        .collect();
    if !safety.is_empty() {
        lines.push(format!("First, for safety: {}.", safety.join("; ")));
    }
    let is_first = |task| {
        let mut first = whole.safety_first.iter();
        first.any(|step| Task::Check(step.check()) == task)
    };
    // What the verdict waits for comes first, whatever it is worth by itself.
    let goes_on = whole.verdict.decided == Decided::GoOn;
    let checks = whole.next.iter().enumerate();
    let worthwhile = checks
        .filter(|(place, check)| check.is_worthwhile() || (*place == 0 && goes_on))
        .map(|(_, check)| check);
    let others = worthwhile.filter(|check| !is_first(check.task));
    lines.extend(others.take(CHECKS).map(|check| next_check(check).line()));
    if lines.is_empty() {
        lines.push(Decided::NothingWorthwhile.words().to_owned());
    }
    lines.extend(withheld(whole));
    lines
}

/// One line for each reason; a few by name, the others counted.
fn withheld(whole: &Whole) -> Vec<String> {
    let mut groups: Vec<(&WhyWithheld, Vec<Task>)> = Vec::new();
    for one in &whole.withheld {
        match groups.iter_mut().find(|(why, _)| *why == &one.why) {
            Some((_, tasks)) => tasks.push(one.task),
            None => groups.push((&one.why, vec![one.task])),
        }
    }
    // What it doesn't do isn't of interest by name.
    let (last, first): (Vec<_>, Vec<_>) = groups
        .into_iter()
        .partition(|(why, _)| **why == WhyWithheld::NothingToObserve);
    let said = first.iter().chain(&last).map(|(why, tasks)| {
        let because = why_withheld(why);
        match why {
            WhyWithheld::NothingToObserve => match tasks.len() {
                1 => format!("Not now: 1 check looks at what {because}."),
                more => format!("Not now: {more} checks look at what {because}."),
            },
            _ => format!("Not now, {because}: {}.", listed(tasks)),
        }
    });
    said.collect()
}

fn listed(tasks: &[Task]) -> String {
    let mut names: Vec<String> = tasks
        .iter()
        .take(NAMED)
        .map(|task| within(heading(*task)))
        .collect();
    if tasks.len() > NAMED {
        names.push(format!("{} more", tasks.len() - NAMED));
    }
    names.join("; ")
}

/// Readings that don't fit together.
pub(crate) fn unfitting(whole: &Whole) -> Option<String> {
    let conflict = whole.conflict?;
    let times = times(conflict.factor);
    Some(format!(
        "“{}” fits the others least: {times} less likely beside them than by itself. Repeat it \
         first, before anything rests on it.",
        reading(conflict.repeat)
    ))
}

/// Where the Path is likeliest interrupted. Whatever breaks it, the cabinet doesn't hold its cold:
/// that is told only where nothing before it is in doubt.
pub(crate) fn broken_links(whole: &Whole) -> Option<String> {
    let mut likely: Vec<_> = whole
        .links
        .iter()
        .filter(|one| one.broken >= DOUBTED)
        .collect();
    if likely.iter().any(|one| one.link != Link::Hold) {
        likely.retain(|one| one.link != Link::Hold);
    }
    let said: Vec<String> = ranked(likely, |one| one.broken)
        .iter()
        .take(NAMED)
        .map(|one| {
            let said = odds(one.broken);
            format!("{}, {}, {}", one.link.words(), said.word, said.phrase)
        })
        .collect();
    (!said.is_empty()).then(|| format!("Weighed together, interrupted at: {}.", said.join("; ")))
}

#[cfg(test)]
mod tests {
    use super::*;
    use diagnosis::{Choice, Fault};

    fn suspect_of(probability: f64, before: f64, factor: f64) -> Suspect {
        let one = Weighed {
            task: Task::Clue(Clue::GoodDevice),
            factor,
            without: before,
            before_change: false,
        };
        let (to, away) = if factor > 1.0 {
            (vec![one], Vec::new())
        } else {
            (Vec::new(), vec![one])
        };
        Suspect {
            fault: Some(Fault::StartDeviceOpen),
            probability,
            before,
            pointing_to: to,
            pointing_away: away,
        }
    }

    #[test]
    fn a_suspect_is_told_with_word_number_movement_and_reason() {
        assert_eq!(
            suspect(&suspect_of(0.7, 0.4, 12.0)),
            "Start device open: likely, about 7 in 10, was about 4 in 10. Points strongly to it: \
             known-good start device."
        );
        assert_eq!(
            suspect(&suspect_of(0.11, 0.12, 0.5)),
            "Start device open: unlikely, about 1 in 10. A little against it: known-good start \
             device."
        );
    }

    #[test]
    fn what_is_all_but_excluded_is_given_no_reason_for_it() {
        let said = suspect(&suspect_of(0.01, 0.2, 12.0));
        assert!(!said.contains("Points"), "{said}");
    }

    #[test]
    fn scrap_is_no_bet_while_more_can_be_found_out() {
        let proposal = Proposal {
            action: Action::Scrap,
            fault: Some(Fault::ChargeGone),
            cost: 100.0,
            right: 0.2,
        };
        assert_eq!(so_far(&proposal), "So far no repair stands out.");
        assert!(bet_with_cause(&proposal).contains("refrigerant lost"));
    }

    #[test]
    fn everything_that_can_be_proposed_has_words_and_no_full_stop_within_a_line() {
        for &action_ in Action::ALL {
            for &fault in Fault::ALL {
                let said = action(action_, Some(fault));
                assert!(!said.is_empty() && !said.ends_with('.'), "{said}");
            }
        }
    }
}

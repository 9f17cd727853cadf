//! What is printed of the whole machine weighed together.

use diagnosis::Conflict as Unfitting;
use diagnosis::{Again, Choice, Whole, WhyWithheld};
use serde::Serialize;

use super::fill::at_most_one;

/// A fault that may be there, or that nothing is wrong.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
pub(crate) struct Suspect {
    /// The fault's name; null for nothing wrong.
    fault: Option<&'static str>,
    /// The part that has it; null for nothing wrong.
    part: Option<&'static str>,
    /// How likely it is. Several faults can be there at once: these don't add up to one.
    #[cfg_attr(test, schemars(range(min = 0.0, max = 1.0)))]
    probability: f64,
    /// How likely it was when only the kind of machine was known.
    #[cfg_attr(test, schemars(range(min = 0.0, max = 1.0)))]
    before: f64,
    /// What points to it, the strongest first.
    pointing_to: Vec<Weighed>,
    /// What points away from it, the strongest first.
    pointing_away: Vec<Weighed>,
    /// In words.
    words: String,
}

/// What one check's readings say of one suspect.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct Weighed {
    /// The check.
    check: &'static str,
    /// By which factor it changed the odds, all other readings given.
    #[cfg_attr(test, schemars(range(min = 0.0)))]
    factor: f64,
    /// How likely the suspect would be had the check not been done.
    #[cfg_attr(test, schemars(range(min = 0.0, max = 1.0)))]
    without: f64,
    /// Whether it was read before the machine was changed the last time.
    before_change: bool,
}

/// Something that was done to the machine.
#[derive(Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
pub(crate) struct Change {
    /// To what: the name of the change.
    change: &'static str,
    /// How: the answer under which the job keeps it.
    how: &'static str,
    /// Whether it is so far back that what was read before it counts for each part by itself.
    folded: bool,
}

/// How likely the Path is interrupted at a link.
#[derive(Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
pub(crate) struct LinkOdds {
    /// The link's name.
    link: &'static str,
    /// How likely it doesn't hold.
    #[cfg_attr(test, schemars(range(min = 0.0, max = 1.0)))]
    broken: f64,
}

/// What to do.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
pub(crate) struct Verdict {
    /// The action with the least expected cost.
    best: Proposal,
    /// The best that leaves it out.
    runner_up: Proposal,
    /// What must not be done meanwhile.
    hold: Vec<Hold>,
    /// go-on, nearly-sure or nothing-worthwhile.
    decided: &'static str,
}

/// One action at its expected cost.
#[derive(Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct Proposal {
    /// The action's name.
    action: &'static str,
    /// The fault that it is about; null where it is about the whole machine.
    fault: Option<&'static str>,
    /// What it costs in expectation, in units of money, what is worth trying before and after it
    /// and the scrap yard included.
    cost: f64,
    /// How likely it is right.
    #[cfg_attr(test, schemars(range(min = 0.0, max = 1.0)))]
    right: f64,
    /// In words.
    words: String,
}

/// Something that must not be done meanwhile.
#[derive(Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct Hold {
    /// Its name.
    name: &'static str,
    /// In words.
    words: &'static str,
}

/// A check that can be done now, with what it is worth.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
pub(crate) struct NextCheck {
    /// The check.
    check: &'static str,
    /// Expected drop in expected cost by knowing the answer, in units of money.
    value: f64,
    /// Bits that the answer tells of the faults.
    bits: f64,
    /// Minutes of work, the change of access included.
    minutes: f64,
    /// Minutes of waiting on top.
    waiting: f64,
    /// What the time costs, in units of money.
    price: f64,
    /// Whether knowing is worth more than the time.
    worthwhile: bool,
    /// Whether it is done plugged in, on a protected outlet; null where that doesn't matter.
    plugged: Option<bool>,
    /// Whether only the maker's part or one declared for a gas that burns may be fitted for it.
    declared_parts_only: bool,
    /// Answers after which something else would be done.
    overturns: Vec<Overturn>,
    /// Why it is offered although it was done: does-not-fit, where its readings fit the others
    /// least; rests-on-one, where what can't be undone would rest on one reading; null else.
    again: Option<&'static str>,
    /// The check that it clears the way for, where that is why it is worth its time: then value,
    /// bits and price are those of both together. Null else.
    opens: Option<&'static str>,
    /// In words.
    words: String,
}

/// An answer that would change the verdict.
#[derive(Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
struct Overturn {
    /// What would be seen.
    clue: &'static str,
    /// Its answer.
    answer: &'static str,
    /// What would be done then.
    action: &'static str,
    /// The fault that it is about; null where it is about the whole machine.
    fault: Option<&'static str>,
}

/// A check that is not offered.
#[derive(Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
pub(crate) struct Withheld {
    /// The check.
    check: &'static str,
    /// Why: what stands in front of powering it, as in `power`; or one of gas-may-be-out,
    /// not-with-gas-that-burns, after-good-device, nothing-to-observe, cannot-be-done.
    why: Vec<&'static str>,
}

/// Readings that don't fit together.
#[derive(Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema), schemars(deny_unknown_fields))]
pub(crate) struct Conflict {
    /// How many times less likely its readings are given the others than by themselves.
    #[cfg_attr(test, schemars(range(min = 1.0)))]
    factor: f64,
    /// The check whose readings fit the others least: to be repeated first.
    repeat: &'static str,
}

impl Suspect {
    pub(super) fn of(suspect: &diagnosis::Suspect) -> Self {
        let weighed = |all: &[diagnosis::Weighed]| all.iter().map(Weighed::of).collect();
        Self {
            fault: suspect.fault.map(Choice::name),
            part: suspect.fault.map(|fault| fault.part().name()),
            probability: at_most_one(suspect.probability),
            before: at_most_one(suspect.before),
            pointing_to: weighed(&suspect.pointing_to),
            pointing_away: weighed(&suspect.pointing_away),
            words: wording::whole::suspect(suspect),
        }
    }
}

impl Weighed {
    fn of(weighed: &diagnosis::Weighed) -> Self {
        Self {
            check: weighed.task.name(),
            factor: weighed.factor,
            without: at_most_one(weighed.without),
            before_change: weighed.before_change,
        }
    }
}

impl Change {
    pub(super) fn all(changed: &diagnosis::Changed) -> Vec<Self> {
        let all = changed.changes.iter().enumerate();
        all.map(|(place, change)| Self {
            change: change.name(),
            how: change.how(),
            folded: place < changed.folded,
        })
        .collect()
    }
}

impl LinkOdds {
    pub(super) fn of(odds: &diagnosis::LinkOdds) -> Self {
        Self {
            link: odds.link.name(),
            broken: at_most_one(odds.broken),
        }
    }
}

impl Verdict {
    pub(super) fn of(whole: &Whole) -> Self {
        let verdict = &whole.verdict;
        let hold = verdict.hold.iter().map(|hold| Hold {
            name: hold.name(),
            words: wording::Words::words(*hold),
        });
        Self {
            best: Proposal::of(&verdict.best),
            runner_up: Proposal::of(&verdict.runner_up),
            hold: hold.collect(),
            decided: verdict.decided.name(),
        }
    }
}

impl Proposal {
    fn of(proposal: &diagnosis::Proposal) -> Self {
        Self {
            action: proposal.action.name(),
            fault: proposal.fault.map(Choice::name),
            cost: proposal.cost,
            right: at_most_one(proposal.right),
            words: wording::whole::action(proposal.action, proposal.fault),
        }
    }
}

impl NextCheck {
    pub(super) fn of(check: &diagnosis::NextCheck) -> Self {
        let overturns = check.overturns.iter().map(|overturn| Overturn {
            clue: overturn.clue.name(),
            answer: overturn.answer,
            action: overturn.action.name(),
            fault: overturn.fault.map(Choice::name),
        });
        Self {
            check: check.task.name(),
            value: check.value,
            bits: check.bits,
            minutes: check.minutes,
            waiting: check.waiting,
            price: check.price,
            worthwhile: check.is_worthwhile(),
            plugged: check.setup.plugged,
            declared_parts_only: check.declared_parts_only,
            overturns: overturns.collect(),
            opens: check.opens.map(|opens| opens.task.name()),
            again: check.again.map(|again| match again {
                Again::DoesNotFit(_) => "does-not-fit",
                Again::RestsOnOne => "rests-on-one",
            }),
            words: wording::whole::next_check(check).line(),
        }
    }
}

impl Withheld {
    pub(super) fn of(withheld: &diagnosis::Withheld) -> Self {
        Self {
            check: withheld.task.name(),
            why: match &withheld.why {
                WhyWithheld::Closed(reasons) => reasons.iter().map(|why| why.name()).collect(),
                WhyWithheld::GasMayBeOut => vec!["gas-may-be-out"],
                WhyWithheld::NotWithGasThatBurns => vec!["not-with-gas-that-burns"],
                WhyWithheld::AfterGoodDevice => vec!["after-good-device"],
                WhyWithheld::NothingToObserve => vec!["nothing-to-observe"],
                WhyWithheld::CannotBeDone => vec!["cannot-be-done"],
            },
        }
    }
}

impl Conflict {
    pub(super) fn of(conflict: Unfitting) -> Self {
        Self {
            factor: conflict.factor,
            repeat: conflict.repeat.name(),
        }
    }
}

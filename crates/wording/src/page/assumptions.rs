//! What is assumed before anything is known, as a person reads and changes it.

use diagnosis::{CostError, PriorError, Priors, Stake, Term};

use crate::Locale;

/// Heads the screen, and leads to it.
pub const ASSUMPTIONS: &str = "What we assume";
/// What the figures are, and what they are worth.
pub const LEAD: &str = "Of a hundred machines that are offered cheaply as not getting cold, how many \
                        have which fault as their main one, and what mending it takes. It is \
                        judgement from trade practice, no survey: each share is worth about thirty \
                        machines seen. What you measure soon outweighs it.";
/// What a change does.
pub const CHANGING: &str = "Where you know better, put your own figure; other shares take what is \
                            left. Yours count for all jobs on this device and go along with a job \
                            that you send.";
/// Asks for which machines.
pub const FOR_WHICH: &str = "For which machines?";
/// Heads the faults.
pub const FAULTS: &str = "Faults and repairs";
/// Heads what doesn't hang on the fault.
pub const MONEY: &str = "Time and money";
/// Which money.
pub const MONEY_HOW: &str = "In dollars, euros or the like. What the machine sells for decides \
                             which repair pays.";
/// Labels the field of a share.
pub const OF_A_HUNDRED: &str = "Of a hundred machines";
/// Names a field for who doesn't see what it stands under.
#[must_use]
pub fn labelled(what: &str, label: &str) -> String {
    format!("{what}: {}", label.to_lowercase())
}

/// Keeps figures.
pub const KEEP: &str = "Keep these figures";
/// Goes back to the stated figures of one row.
pub const RESET: &str = "Back to what is stated";
/// Takes back all figures.
pub const RESET_ALL: &str = "Go back to all stated figures";
/// They were taken back.
pub const ALL_RESET: &str = "The stated figures hold again.";
/// Those of one row were.
pub const ONE_RESET: &str = "What is stated holds again.";
/// Saves the own figures.
pub const SAVE: &str = "Save your figures as a file";
/// Not a number.
pub const NO_NUMBER: &str = "Give a number, such as 12 or 0.5.";

/// "11 of 100".
#[must_use]
pub fn of_a_hundred(percent: f64, is_own: bool, locale: &Locale) -> String {
    let decimals = usize::from(percent < 9.95);
    let number = locale.number(percent, decimals);
    format!("{number}\u{a0}of\u{a0}100{}", yours(is_own))
}

/// A sum of money.
#[must_use]
pub fn sum(value: f64, is_own: bool, locale: &Locale) -> String {
    format!("{}{}", plain(value, locale), yours(is_own))
}

/// A figure as it stands in a field: no more decimals than it has.
#[must_use]
pub fn plain(value: f64, locale: &Locale) -> String {
    let tenths = value * 10.0;
    let is_near = |value: f64| (value - libm::round(value)).abs() < 1e-6;
    let decimals = match (is_near(value), is_near(tenths)) {
        (true, _) => 0,
        (false, true) => 1,
        (false, false) => 2,
    };
    locale.number(value, decimals)
}

const fn yours(is_own: bool) -> &'static str {
    if is_own { ", yours" } else { "" }
}

/// Labels the field of what mending a fault takes.
#[must_use]
pub const fn term(term: Term) -> &'static str {
    match term {
        Term::Price => "Price of the part, or of all of someone else's work",
        Term::Minutes => "Minutes of your work",
        Term::Lasts => "Of a hundred such repairs, still good after a year",
    }
}

/// What doesn't hang on the fault.
#[must_use]
pub const fn stake(stake: Stake) -> &'static str {
    match stake {
        Stake::HourOfWork => "An hour of your work",
        Stake::DayOfWaiting => "A day in which it stands and waits",
        Stake::AnotherDay => "Giving it a day and looking again",
        Stake::AnotherTry => "Going on after a repair that didn't help",
        Stake::Salvage => "What scrap brings, less what it costs",
        Stake::ChestFreezer => "A chest freezer sells for",
        Stake::StaticUpright => "An upright freezer thawed by hand sells for",
        Stake::FrostFreeUpright => "A frost-free upright freezer sells for",
        Stake::FridgeFreezer => "A refrigerator with a freezer sells for",
        Stake::Refrigerator => "A refrigerator sells for",
        Stake::InverterMachine => "A machine with an inverter sells for",
    }
}

/// Why a stated sum is what it is. Standing: judgement from trade practice.
#[must_use]
pub const fn why(stake: Stake) -> &'static str {
    match stake {
        Stake::HourOfWork => "Ten to twenty-five is what such work is worth to most.",
        Stake::DayOfWaiting => "Two days of occupied space cost one to three.",
        Stake::AnotherDay => "The space, and the explanation to whoever waits for it.",
        Stake::AnotherTry => "About an hour, and another trip for a part.",
        Stake::Salvage => {
            "From forty to pay up to twenty-five to get; drawers, boards and fans on top."
        }
        Stake::ChestFreezer => "Proven and clean: 60 to 130 when small, 120 to 300 when large.",
        Stake::StaticUpright => "Proven and clean: 100 to 260.",
        Stake::FrostFreeUpright => "Proven and clean: 180 to 420.",
        Stake::FridgeFreezer => "Proven and clean: 130 to 350, with two doors side by side more.",
        Stake::Refrigerator => "Proven and clean; also where the kind isn't told.",
        Stake::InverterMachine => "Proven, clean and under five years old: 250 to 800.",
    }
}

/// Says that figures were kept.
#[must_use]
pub fn kept(what: &str) -> String {
    format!("{what}: kept.")
}

/// Why a share is not taken.
#[must_use]
pub fn refused_share(error: &PriorError, locale: &Locale) -> String {
    let number = |value: f64| locale.number(value, 1);
    match error {
        PriorError::NotANumber => NO_NUMBER.to_owned(),
        PriorError::TooRare => format!(
            "At least {}: else nothing that you measure could ever bring it back.",
            number(Priors::LEAST)
        ),
        PriorError::TooCommon => format!(
            "At most {}: else nothing that you measure could ever speak against it.",
            number(Priors::MOST)
        ),
        PriorError::NoSuchPart => NO_SUCH_PART.to_owned(),
        PriorError::LeavesTooLittle { needed } => format!(
            "Your figures leave nothing for the others, which need at least {} together. Lower one \
             of yours first.",
            number(*needed)
        ),
    }
}

/// Why a cost is not taken.
#[must_use]
pub fn refused_cost(error: &CostError, locale: &Locale) -> String {
    match error {
        CostError::NotANumber => NO_NUMBER.to_owned(),
        CostError::TooLittle { least } => format!("At least {}.", plain(*least, locale)),
        CostError::TooMuch { most } => format!("At most {}.", plain(*most, locale)),
        CostError::NoSuchPart => NO_SUCH_PART.to_owned(),
    }
}

const NO_SUCH_PART: &str = "Machines built so don't have the part.";

/// What the odds of a job rest on, where it isn't the stated figures alone.
#[must_use]
pub fn rests_on(count: usize, came_with_job: bool) -> Option<String> {
    let figures = match count {
        0 => return None,
        1 => "1 figure".to_owned(),
        count => format!("{count} figures"),
    };
    Some(if came_with_job {
        format!(
            "Weighed with {figures} that came with the job in place of the stated ones; struck \
             under “Known”, they no longer count."
        )
    } else {
        format!("Weighed with {figures} of this device's own in place of the stated ones.")
    })
}

//! A person's own figures count, go along with a job, and are said.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used, clippy::panic, clippy::expect_used)]

mod told;

use diagnosis::{Action, Build, Cost, Fault, Figures, Model, Stake, Term, Whole, assess};
use job::{Content, Entry, Id, Job};
use wording::{Locale, report};

/// A fan that is surely at fault, on a machine that is worth its repair as stated.
const FAN: [&str; 12] = [
    "machine/kind: fridge-freezer",
    "machine/build: frost-free",
    "machine/complaint: runs-stays-warm",
    "machine/told-by: myself",
    "look-over/signs: none",
    "ground/earth-pin: has",
    "ground/tester: ohmmeter",
    "ground/blades-to-earth = OL",
    "ground/blades-to-metal = OL",
    "evaporator-fan-air: none",
    "evaporator-fan-motor: open",
    "coil-ice: clear",
];

fn weighed(job: &Job, own: &Figures) -> Whole {
    let now = told::moment(job.entries().len());
    let model = Model::default().for_job(job, own);
    assess(&model, job, now).whole.unwrap()
}

/// The job with more entries at its end.
fn with(mut job: Job, contents: Vec<Content>) -> Job {
    for content in contents {
        let place = job.entries().len();
        let (id, at) = (
            Id::new(&format!("more-{place}")).unwrap(),
            told::moment(place),
        );
        job.add(Entry { id, at, content }).unwrap();
    }
    job
}

fn worthless() -> Figures {
    let mut own = Figures::default();
    own.costs
        .set(Cost::Stake(Stake::FridgeFreezer), 20.0)
        .unwrap();
    own
}

#[test]
fn a_machine_that_sells_for_nothing_is_not_worth_the_repair_that_pays_on_a_good_one() {
    let job = told::job(&FAN);
    let stated = told::assessed(&FAN).whole.unwrap();
    assert_eq!(stated.verdict.best.action, Action::Replace);
    assert_eq!(
        weighed(&job, &worthless()).verdict.best.action,
        Action::Scrap
    );
}

#[test]
fn a_dearer_part_and_an_hour_that_is_worth_more_raise_the_expected_cost() {
    let job = told::job(&FAN);
    let cost = |cost: Cost, value: f64| {
        let mut own = Figures::default();
        own.costs.set(cost, value).unwrap();
        weighed(&job, &own).verdict.best.cost
    };
    let fan = |term| Cost::Mending(Build::FrostFree, Fault::EvaporatorFanStopped, term);
    let stated = weighed(&job, &Figures::default()).verdict.best.cost;
    assert!(cost(fan(Term::Price), 60.0) > stated + 20.0);
    assert!(cost(Cost::Stake(Stake::HourOfWork), 30.0) > stated + 5.0);
    assert!(cost(fan(Term::Lasts), 50.0) > stated + 50.0);
    assert!(
        cost(
            Cost::Mending(Build::FrostFree, Fault::ChargeGone, Term::Price),
            400.0
        ) < stated + 5.0
    );
}

#[test]
fn a_job_is_weighed_with_the_figures_that_came_with_it_until_they_are_struck() {
    let sent = with(told::job(&FAN), worthless().entries());
    // Not with those of whoever opens it.
    let mine = Figures::read("costs fridge-freezer 900");
    let theirs = weighed(&sent, &mine);
    assert_eq!(theirs.verdict.best.action, Action::Scrap);
    assert_eq!(theirs.own_figures, 1);

    let came = sent.entries().last().unwrap().id.clone();
    let struck = with(sent, vec![Content::Strike(came)]);
    assert_eq!(weighed(&struck, &mine).verdict.best.action, Action::Replace);
}

#[test]
fn figures_alone_say_nothing_of_the_machine() {
    let bare = told::job(&FAN);
    let sent = with(told::job(&FAN), worthless().entries());
    let alone = weighed(&sent, &Figures::default()).suspects;
    assert_eq!(alone, weighed(&bare, &worthless()).suspects);
}

#[test]
fn the_report_says_when_odds_rest_on_figures_of_somebody_s_own() {
    let said = |job: &Job, own: &Figures| {
        let model = Model::default().for_job(job, own);
        let known = assess(&model, job, told::moment(20));
        report(&known, job, &Locale::default()).text()
    };
    let bare = told::job(&FAN);
    assert!(!said(&bare, &Figures::default()).contains("in place of the stated"));
    assert!(said(&bare, &worthless()).contains("1 figure of this device's own"));
    let sent = with(bare, worthless().entries());
    assert!(said(&sent, &Figures::default()).contains("1 figure that came with the job"));
}

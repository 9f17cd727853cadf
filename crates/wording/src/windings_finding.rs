//! What the three pins say, in words.

use diagnosis::WindingsFinding;
use measure::windings::{Explanation, Forecast, Pin};

use crate::{Locale, explanation, odds, pair, pin, uncertain_ohms};

pub(crate) fn windings_finding(finding: &WindingsFinding, locale: &Locale) -> String {
    match finding {
        WindingsFinding::Joined(which) => format!(
            "{} are joined. One pair can't tell which is which.",
            capital(pair(*which))
        ),
        WindingsFinding::Foretold(forecast) => foretold(forecast, locale),
        WindingsFinding::AddsUp => {
            "As expected: the largest pair is the sum of the two others.".to_owned()
        }
        WindingsFinding::DoesNotAddUp { repeat } => format!(
            "The three don't add up. Most often a probe sat on paint, or the start device is \
             still on. Repeat {}.",
            pair(*repeat)
        ),
        WindingsFinding::Whole { run, start, .. } => format!(
            "The windings are whole, as far as ohms can tell: run {}, start {}. They can't show \
             whether it turns.",
            uncertain_ohms(run, locale),
            uncertain_ohms(start, locale)
        ),
        WindingsFinding::WholeButAlike { common, .. } => format!(
            "The windings are whole, as far as ohms can tell. {} is common. Start and run are too \
             close for this meter. Don't guess: look where the start device sat, or try a finer \
             meter.",
            capital(pin(*common))
        ),
        WindingsFinding::LeadsTakenOut(leads) => format!(
            "Leads and contacts add {} to every reading; it is taken out.",
            uncertain_ohms(leads, locale)
        ),
        WindingsFinding::Fault {
            explanation,
            probability,
            rival,
            pin,
        } => fault(*explanation, *probability, *rival, *pin),
        WindingsFinding::AlikeButNotBare => {
            "Three alike. That can be a compressor driven by an electronic board, or a start \
             device still on the pins. Take everything off and measure again. Until then: never \
             mains or a start kit on these pins."
                .to_owned()
        }
        WindingsFinding::NothingReads => {
            "No pair reads. Touch the probes together first: a broken lead, an empty battery or \
             the wrong range is commoner than three open ways."
                .to_owned()
        }
        WindingsFinding::NearZero => {
            "Near zero. Touch the probes together and enter that first.".to_owned()
        }
        WindingsFinding::WiringDisagrees { common } => format!(
            "The wiring as noted and the ohms disagree: by the ohms {} is common. Check the photo \
             and which pin is which; an earlier repair may have swapped wires.",
            pin(*common)
        ),
        WindingsFinding::UnusualOrder { start } => format!(
            "The usual order, clockwise start, common, run, would put start elsewhere than {}. \
             Ohms and wiring decide; check that you turned the picture right.",
            pin(*start)
        ),
    }
}

fn foretold(forecast: &Forecast, locale: &Locale) -> String {
    let sum = uncertain_ohms(&forecast.sum, locale);
    let sum_common = pin(forecast.sum_common);
    let between = pair(forecast.pair);
    match &forecast.difference {
        Some(difference) => format!(
            "Between {between} expect {sum} or {}. The first: {sum_common} is common. The second: \
             {} is.",
            uncertain_ohms(difference, locale),
            pin(forecast.difference_common)
        ),
        None => format!(
            "Between {between} expect {sum}: then {sum_common} is common. The same number a third \
             time would mean three equal windings."
        ),
    }
}

fn fault(
    what: Explanation,
    probability: f64,
    rival: Option<Explanation>,
    open: Option<Pin>,
) -> String {
    let said = odds(probability);
    let told = match (what, open) {
        (Explanation::ProtectorOpen | Explanation::CommonLeadOpen, Some(open)) => format!(
            "Both ways through {} are open, the third pair reads. Usually the protector inside, \
             open from heat; ohms can't tell it from a broken lead there. Not a dead compressor \
             yet.",
            pin(open)
        ),
        (Explanation::StartOpen, Some(open)) => format!(
            "Only one pair reads: the start winding, its lead or {} is open. Scrape that pin and \
             repeat before you believe it.",
            pin(open)
        ),
        (Explanation::RunOpen, Some(open)) => format!(
            "Only one pair reads: the run winding, its lead or {} is open. Scrape that pin and \
             repeat before you believe it.",
            pin(open)
        ),
        (Explanation::ShortedTurns, _) => {
            "Too low for whole windings of this kind: turns may be shorted. Repeat with the \
             probes touched together first and the pins scraped."
                .to_owned()
        }
        (Explanation::StartDeviceOn, _) => {
            "The three fit a start device still across two pins. Take everything off and measure \
             again: these numbers say nothing about the windings."
                .to_owned()
        }
        (Explanation::ProbeMissed, _) => {
            "Two pairs fit each other and one doesn't. That can't be a winding: a probe sat on \
             paint or slipped. Scrape the pins and try that pair again."
                .to_owned()
        }
        (Explanation::EqualWindings, _) => {
            "Three equal windings: driven by an electronic board. Never mains or a start kit on \
             these pins."
                .to_owned()
        }
        (Explanation::SingleCoil, Some(open)) => format!(
            "Only one pair reads and nothing is on {}: perhaps one coil, a linear drive with an \
             electronic board. Never mains or a start kit on these pins.",
            pin(open)
        ),
        (other, _) => format!("{}.", capital(explanation(other))),
    };
    let next = rival.map_or_else(String::new, |rival| {
        format!(" Next likeliest: {}.", explanation(rival))
    });
    format!("{told} {} ({}).{next}", capital(said.word), said.phrase)
}

pub(crate) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        std::iter::once(first.to_ascii_uppercase())
            .chain(letters)
            .collect()
    })
}

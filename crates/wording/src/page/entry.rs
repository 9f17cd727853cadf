//! One entry of a job in words: what it is about, and what it says.

use diagnosis::{
    Ask, Asked, Build, Choice, Complaint, Figures, GearChoice, Kind, KitDeclared, LeadsChoice,
    Machine, MainsChoice, PairChoice, PinChoice, PinShape, Refrigerant, ToldBy, WindingsKnown,
    item_of_pair,
};
use job::{Answer, Content, Entry, Question};
use measure::windings::{Pair, Role};

use crate::bench_choices::bench_choice;
use crate::{Locale, Words, cold, energy, measured, start_trials, whole, windings_page};

/// An entry ready to be shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct EntryWords {
    /// What it is about.
    pub about: String,
    /// What it says.
    pub says: String,
}

/// Says an entry. None for a strike, which shows on what it strikes.
#[must_use]
pub fn entry(entry: &Entry, locale: &Locale) -> Option<EntryWords> {
    Some(match &entry.content {
        Content::Answer { question, answer } => EntryWords {
            about: about(question),
            says: says(question, answer, locale),
        },
        Content::Trial(trial) => start_trials::entry(trial, entry.at, locale),
        Content::Stop(stop) => start_trials::stop(stop, entry.at, locale),
        Content::Spot(spot) => cold::spot(spot, entry.at, locale),
        Content::Log(log) => cold::log(log, locale),
        Content::Event(event) => cold::event(*event, entry.at, locale),
        Content::Metered(metered) => cold::metered(metered, locale),
        Content::Note(text) => EntryWords {
            about: "Note".to_owned(),
            says: text.as_str().to_owned(),
        },
        Content::Strike(_) => return None,
    })
}

fn about(question: &Question) -> String {
    if question.check.as_str() == Figures::CHECK {
        return "Figures it was weighed with".to_owned();
    }
    if question.check.as_str() == "practice" {
        return super::practice::MACHINE.to_owned();
    }
    let known = machine_item(question)
        .or_else(|| windings_item(question))
        .or_else(|| energy::about(question))
        .or_else(|| ask(question).map(whole::about))
        .or_else(|| whole::change(question).map(|(about, _)| about))
        .map(str::to_owned);
    known.unwrap_or_else(|| format!("{}, {}", question.check, question.item))
}

fn machine_item(question: &Question) -> Option<&'static str> {
    let named = [
        (Machine::NAME, "Name"),
        ((Kind::CHECK, Kind::ITEM), "What it is"),
        ((MainsChoice::CHECK, MainsChoice::ITEM), "Mains"),
        ((Complaint::CHECK, Complaint::ITEM), "What it did"),
        ((ToldBy::CHECK, ToldBy::ITEM), "Who says so"),
        ((Build::CHECK, Build::ITEM), "How it is built"),
        (Machine::PLATE, "Words off the plate"),
        ((Refrigerant::CHECK, Refrigerant::ITEM), "Refrigerant"),
        (
            (KitDeclared::CHECK, KitDeclared::ITEM),
            "The start kit's packing",
        ),
        ((GearChoice::CHECK, GearChoice::ITEM), "The pins"),
        ((PinShape::CHECK, PinShape::ITEM), "How the pins lie"),
        (
            (LeadsChoice::CHECK, LeadsChoice::ITEM),
            windings_page::WHICH_LEADS,
        ),
        (WindingsKnown::LEADS_READING, windings_page::WHICH_LEADS),
        (WindingsKnown::OVERLOAD_PIN, windings_page::OVERLOAD_PIN),
        (WindingsKnown::LINE_PIN, windings_page::LINE_PIN),
        (
            WindingsKnown::START_DEVICE_PAIR,
            windings_page::START_DEVICE_PINS,
        ),
    ];
    let found = named
        .into_iter()
        .find(|((check, item), _)| question.is(check, item));
    found.map(|(_, words)| words)
}

fn windings_item(question: &Question) -> Option<&'static str> {
    let is = |(check, item): (&str, &str)| question.is(check, item);
    let of_pair = Pair::ALL
        .into_iter()
        .find(|which| is((WindingsKnown::LEADS_READING.0, item_of_pair(*which))))
        .map(|which| match which {
            Pair::OneTwo => "Pins 1 and 2",
            Pair::OneThree => "Pins 1 and 3",
            Pair::TwoThree => "Pins 2 and 3",
        });
    of_pair.or_else(|| {
        let marked = Role::ALL.into_iter().zip(WindingsKnown::MARKED);
        let mut found = marked.filter(|(_, item)| is(*item));
        found.next().map(|(role, _)| windings_page::marked(role))
    })
}

fn ask(question: &Question) -> Option<Ask> {
    Ask::from_names(question.check.as_str(), question.item.as_str())
}

/// An answer in words, as its question offers it.
#[must_use]
pub fn says(question: &Question, answer: &Answer, locale: &Locale) -> String {
    match answer {
        Answer::Reading(reading) => measured(reading.measured, locale),
        Answer::Choice(name) => choice(question, name.as_str())
            .unwrap_or(name.as_str())
            .to_owned(),
        Answer::Choices(names) => {
            let names: Vec<&str> = names
                .iter()
                .map(|name| choice(question, name.as_str()).unwrap_or(name.as_str()))
                .collect();
            names.join(", ")
        }
        Answer::Text(text) => text.as_str().to_owned(),
        Answer::NotDone(why) => format!("Not done: {}", why.words()),
    }
}

fn choice(question: &Question, name: &str) -> Option<&'static str> {
    asked::<Kind>(question, name)
        .or_else(|| asked::<MainsChoice>(question, name))
        .or_else(|| asked::<Complaint>(question, name))
        .or_else(|| asked::<ToldBy>(question, name))
        .or_else(|| asked::<Build>(question, name))
        .or_else(|| asked::<Refrigerant>(question, name))
        .or_else(|| asked::<GearChoice>(question, name))
        .or_else(|| asked::<LeadsChoice>(question, name))
        .or_else(|| asked::<PinShape>(question, name))
        .or_else(|| asked::<KitDeclared>(question, name))
        .or_else(|| bench_choice(question, name))
        .or_else(|| whole::choice(ask(question)?, name))
        .or_else(|| whole::change(question).map(|(_, says)| says))
        // These two answer several questions; their names are their own.
        .or_else(|| PinChoice::from_name(name).map(Words::words))
        .or_else(|| PairChoice::from_name(name).map(Words::words))
}

pub(crate) fn asked<C: Asked + Words>(question: &Question, name: &str) -> Option<&'static str> {
    if !question.is(C::CHECK, C::ITEM) {
        return None;
    }
    C::from_name(name).map(Words::words)
}

#[cfg(test)]
mod tests {
    use super::*;
    use job::{Id, Measured, Moment, Name, NotDone, Reading, Text};
    use measure::MeterKind;
    use quantity::parse_reading;

    fn said(check: &str, item: &str, answer: Answer) -> (String, String) {
        let words = entry(
            &Entry {
                id: Id::new("e").unwrap(),
                at: Moment::new(0, 0).unwrap(),
                content: Content::Answer {
                    question: Question::new(check, item).unwrap(),
                    answer,
                },
            },
            &Locale::default(),
        )
        .unwrap();
        (words.about, words.says)
    }

    fn pair_of(about: &str, says: &str) -> (String, String) {
        (about.to_owned(), says.to_owned())
    }

    #[test]
    fn answers_are_told_in_the_words_in_which_they_were_offered() {
        let seller = Answer::Choice(Name::new("seller").unwrap());
        assert_eq!(
            said("machine", "told-by", seller),
            pair_of("Who says so", "The seller says so")
        );
        let meter = MeterKind::Good.automatic();
        let reading = Answer::Reading(Reading {
            typed: Text::new("4,70").unwrap(),
            measured: Measured::Ohms(parse_reading("4,70", meter.top).unwrap()),
            accuracy: meter.accuracy,
        });
        assert_eq!(
            said("windings", "pair-1-3", reading),
            pair_of("Pins 1 and 3", "4.70\u{a0}Ω")
        );
        assert_eq!(
            said("windings", "pair-1-3", Answer::NotDone(NotDone::NoTool)).1,
            "Not done: I don't have the tool"
        );
    }

    #[test]
    fn an_answer_of_a_newer_program_is_told_by_its_names() {
        let answer = Answer::Choice(Name::new("ammonia").unwrap());
        assert_eq!(
            said("refrigerant", "plate", answer.clone()).1,
            "ammonia".to_owned()
        );
        assert_eq!(said("smell", "strength", answer).0, "smell, strength");
    }
}

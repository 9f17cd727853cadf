//! One question that a file leaves open, with the sample that raises it.

use leptos::prelude::*;
use logfile::{Answer, DegreeUnit, Question};
use quantity::Seconds;
use wording::log_page as words;

use super::Bench;
use crate::device;
use crate::forms::gas::number;
use crate::forms::log_import::LogImport;
use crate::parts::live::live;
use crate::parts::plain::{button, paragraph, refusal, short_input};
use crate::parts::when_form::when_form;

/// The question with its answers.
pub(super) fn asked(bench: Bench, import: &LogImport, question: &Question) -> AnyView {
    let answers = match question {
        Question::DateOrder { candidates, .. } => {
            let all = candidates.iter();
            one_of(
                bench,
                all.map(|one| (words::date_order(*one).to_owned(), Answer::DateOrder(*one))),
            )
        }
        Question::Clock { candidates, .. } => {
            let all = candidates.iter();
            one_of(
                bench,
                all.map(|one| (words::clock(*one).to_owned(), Answer::Clock(*one))),
            )
        }
        Question::ElapsedUnit { candidates, .. } => {
            let all = candidates.iter();
            one_of(
                bench,
                all.map(|one| (words::elapsed(*one).to_owned(), Answer::ElapsedUnit(*one))),
            )
        }
        Question::DecimalMark { .. } => {
            let all = [logfile::DecimalMark::Point, logfile::DecimalMark::Comma].into_iter();
            one_of(
                bench,
                all.map(|one| (words::mark(one).to_owned(), Answer::DecimalMark(one))),
            )
        }
        Question::Unit {
            column, plausible, ..
        } => {
            let mut units = [
                DegreeUnit::Celsius,
                DegreeUnit::Fahrenheit,
                DegreeUnit::Kelvin,
            ];
            let share = |unit: DegreeUnit| {
                let found = plausible.iter().find(|(one, _)| *one == unit);
                found.map_or(0.0, |(_, share)| *share)
            };
            // Three of them: the likeliest first.
            units.sort_by(|one, other| share(*other).total_cmp(&share(*one)));
            let column = *column;
            let all = units.into_iter();
            one_of(
                bench,
                all.map(move |unit| (words::unit(unit).to_owned(), Answer::Unit { column, unit })),
            )
        }
        Question::Zone { .. } => zone(bench, import),
        Question::Start { .. } => start(bench),
        Question::Columns { candidates } => columns(bench, import, candidates),
    };
    view! {
        <section class="asked">
            <h2>{words::question(question, import.looked())}</h2>
            {answers}
        </section>
    }
    .into_any()
}

fn one_of(bench: Bench, answers: impl Iterator<Item = (String, Answer)>) -> AnyView {
    let buttons = answers.map(|(text, answer)| {
        button("button wide", text, move |_| {
            let answer = answer.clone();
            bench.say(|import| import.answer(answer));
        })
    });
    view! { <div class="outcomes">{buttons.collect::<Vec<_>>()}</div> }.into_any()
}

/// This phone's clock, UTC, or any other.
fn zone(bench: Bench, import: &LogImport) -> AnyView {
    let first = import.looked().preview.iter().find_map(|row| row.at);
    let here = first.map_or_else(
        || device::now().offset_minutes(),
        |at| device::offset_minutes_at(at.get() * 1_000.0),
    );
    let mut answers = vec![(words::this_clock(here), Answer::Zone(here))];
    if here != 0 {
        answers.push((words::UTC.to_owned(), Answer::Zone(0)));
    }
    let enter = move |typed: &str| {
        let minutes = number(typed).ok()? * 60.0;
        let is_one = minutes.abs() <= 18.0 * 60.0;
        is_one.then_some(Answer::Zone(minutes as i16))
    };
    view! {
        {one_of(bench, answers.into_iter())}
        {typed(bench, "log-zone", words::HOURS_FROM_UTC, words::NOT_HOURS, enter)}
    }
    .into_any()
}

fn start(bench: Bench) -> AnyView {
    when_form("log-start", words::STARTED, move |at| {
        let seconds = at.unix_milliseconds() as f64 / 1_000.0;
        bench.say(|import| import.answer(Answer::Start(Seconds::new(seconds))));
    })
}

/// A field whose answer is typed. What was typed stays where it isn't one.
fn typed(
    bench: Bench,
    id: &'static str,
    name: &'static str,
    refused: &'static str,
    answer: impl Fn(&str) -> Option<Answer> + Send + 'static,
) -> AnyView {
    let text = RwSignal::new(String::new());
    let is_refused = RwSignal::new(false);
    view! {
        <form
            class="minutes-ago"
            on:submit=move |event| {
                event.prevent_default();
                match answer(&text.get_untracked()) {
                    None => is_refused.set(true),
                    Some(answer) => bench.say(|import| import.answer(answer)),
                }
            }
        >
            {short_input(id, name, ("text", "12"), move |typed| text.set(typed))}
            <button class="button">{words::ENTER}</button>
            {live(move || is_refused.get().then(|| refusal(refused)))}
        </form>
    }
    .into_any()
}

/// Any of several columns.
fn columns(bench: Bench, import: &LogImport, candidates: &[usize]) -> AnyView {
    let chosen = RwSignal::new(candidates.to_vec());
    let is_none = RwSignal::new(false);
    let boxes = candidates.iter().map(|&column| {
        let found = import.looked().columns.get(column);
        let name = found.map_or_else(String::new, |found| words::column_name(found, column));
        let sample = found.map_or_else(String::new, |found| found.sample.clone());
        let toggle = move |_| {
            chosen.update(
                |chosen| match chosen.iter().position(|one| *one == column) {
                    Some(place) => {
                        chosen.remove(place);
                    }
                    None => chosen.push(column),
                },
            );
            is_none.set(false);
        };
        view! {
            <label class="radio">
                <input type="checkbox" checked=true on:change=toggle/>
                <span>{name} " " <span class="soft small">{sample}</span></span>
            </label>
        }
    });
    let enter = move |_| {
        let mut columns = chosen.get_untracked();
        columns.sort_unstable();
        if columns.is_empty() {
            is_none.set(true);
        } else {
            bench.say(|import| import.answer(Answer::Columns(columns)));
        }
    };
    view! {
        <div class="radios">{boxes.collect::<Vec<_>>()}</div>
        {live(move || is_none.get().then(|| paragraph("remark refusal", words::AT_LEAST_ONE)))}
        {button("button wide", words::THESE, enter)}
    }
    .into_any()
}

//! What was found in a file, and what of it enters the job.

use job::{Content, Moment, Place};
use leptos::prelude::*;
use logfile::{Logged, LoggedSeries};
use wording::{Locale, cold_page, log_page as words};

use super::{Bench, Outcome};
use crate::cold::Cold;
use crate::forms::log_import::{LogImport, Stage, usable};
use crate::parts::plain::{button, chip, paragraph, section_heading};
use crate::route::{Place as Screen, Route};

/// Columns, units and marks as found, with the first rows as they stand in the file.
pub(super) fn found(import: &LogImport, _locale: &Locale) -> AnyView {
    let looked = import.looked();
    let lines = words::found(looked).into_iter();
    let lines = lines.map(|line| view! { <li>{line}</li> });
    // One line a row, which wraps: a table would run off a small screen.
    let rows = looked.preview.iter().map(|row| {
        let cells = row.cells.join(" · ");
        view! { <li>{cells}</li> }
    });
    view! {
        <section>
            {section_heading(words::FOUND)}
            {paragraph("own-words", import.name().to_owned())}
            <ul class="lines">{lines.collect::<Vec<_>>()}</ul>
            <h3>{words::FIRST_ROWS}</h3>
            <ul class="lines">{rows.collect::<Vec<_>>()}</ul>
        </section>
    }
    .into_any()
}

/// Each course as it will be taken in, with its place, and the button.
pub(super) fn read(bench: Bench, import: &LogImport, logged: &Logged) -> AnyView {
    let locale = bench.open.session().locale();
    let notes = logged
        .notes
        .iter()
        .map(|note| paragraph("soft", words::note(note)));
    let courses = usable(logged).map(|one| course(bench, import, one, &locale));
    let way = if import.can_be_taken(logged) {
        let import = import.clone();
        button("button wide", words::TAKE_IN, move |_| {
            take_in(bench, &import)
        })
    } else {
        paragraph("remark", words::PLACES_FIRST)
    };
    view! {
        <section>
            {section_heading(words::READ)}
            {notes.collect::<Vec<_>>()}
            {courses.collect::<Vec<_>>()}
            {paragraph("soft", words::SWITCHED_ON)}
            {way}
        </section>
    }
    .into_any()
}

/// Each course enters the job, and the cool-down shows what came of it.
fn take_in(bench: Bench, import: &LogImport) {
    let Stage::Read(logged) = import.stage() else {
        return;
    };
    let mut all = true;
    for log in import.logs(logged) {
        all &= bench.open.proved(Content::Log(log));
    }
    if all {
        bench.outcome.set(Outcome::Nothing);
        let cool_down = Screen::Check(Cold::COOL_DOWN.to_owned());
        let session = bench.open.session();
        session.go_saying(&Route::Job(bench.open.id(), cool_down), words::TAKEN);
    }
}

fn course(bench: Bench, import: &LogImport, one: &LoggedSeries, locale: &Locale) -> AnyView {
    let column = one.column;
    let name = import
        .looked()
        .columns
        .get(column)
        .map_or_else(String::new, |found| words::column_name(found, column));
    let notes = one.notes.iter();
    let notes = notes.map(|note| paragraph("soft", words::series_note(note, locale)));
    let placed = import.place(column);
    let chip = |place: Option<Place>, text: &'static str| {
        let put = move || bench.say(|import| import.put(column, place));
        chip(text, move || placed == Some(place), put)
    };
    let chips = Place::ALL.map(|place| chip(Some(place), cold_page::place(place)));
    let id = format!("probe-{column}");
    view! {
        <h3>{name}</h3>
        {paragraph("", span(import, one, locale))}
        {notes.collect::<Vec<_>>()}
        <p id=id.clone()>{words::WHERE}</p>
        <div class="chips" role="group" aria-labelledby=id>
            {Vec::from(chips)}
            {chip(None, words::LEAVE_OUT)}
        </div>
    }
    .into_any()
}

/// How many readings, from when to when, between which temperatures.
fn span(import: &LogImport, one: &LoggedSeries, locale: &Locale) -> String {
    let offset = import.offset_minutes();
    let moment = |at: quantity::Seconds| Moment::new((at.get() * 1_000.0) as i64, offset).ok();
    let ends = one.points.first().zip(one.points.last());
    let ends = ends.and_then(|(first, last)| moment(first.at).zip(moment(last.at)));
    let Some((from, to)) = ends else {
        return String::new();
    };
    let degrees = one.points.iter().map(|point| point.temperature);
    let coldest = degrees
        .clone()
        .fold(None, |found: Option<quantity::Celsius>, next| {
            Some(found.map_or(next, |found| if next < found { next } else { found }))
        });
    let warmest = degrees.fold(None, |found: Option<quantity::Celsius>, next| {
        Some(found.map_or(next, |found| if next > found { next } else { found }))
    });
    let ends = coldest.zip(warmest);
    words::span(one.points.len(), (from, to), ends, locale)
}

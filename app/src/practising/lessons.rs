//! The lessons, and the machines at random.

use job::{Answer, Content, Question, Text};
use leptos::prelude::*;
use practice::{Difficulty, Lesson, Made, Sheet};
use wording::page::practice::{self as words, Lesson as LessonWords};

use super::{Lessons, bench};
use crate::device;
use crate::frame::Heading;
use crate::parts::live::live;
use crate::parts::plain::{paragraph, section_heading};

/// What is to be made.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Wanted {
    Lesson(Lesson),
    AtRandom(Difficulty),
}

/// The page for practising.
pub(super) fn screen(needs: Lessons) -> AnyView {
    let waits = RwSignal::new(None::<&'static str>);
    let begin = Callback::new(move |wanted| begin(needs.clone(), waits, wanted));
    let lessons = Lesson::ALL.map(|lesson| {
        let said = told(lesson);
        row(said.title, said.note, Wanted::Lesson(lesson), begin)
    });
    let random = Difficulty::ALL.map(|difficulty| {
        let (name, meaning) = match difficulty {
            Difficulty::Easy => words::EASY,
            Difficulty::Ordinary => words::ORDINARY,
            Difficulty::Hard => words::HARD,
        };
        row(name, meaning, Wanted::AtRandom(difficulty), begin)
    });
    view! {
        <div class="screen practice">
            <Heading text=words::PRACTISE/>
            {paragraph("", words::HOW)}
            <p class="soft" role="status">{live(move || waits.get())}</p>
            <section>
                {section_heading(words::LESSONS)}
                {paragraph("soft", words::LESSONS_HOW)}
                <ul class="rows">{lessons.into_iter().collect_view()}</ul>
            </section>
            <section>
                {section_heading(words::AT_RANDOM)}
                {paragraph("soft", words::AT_RANDOM_HOW)}
                <ul class="rows">{random.into_iter().collect_view()}</ul>
            </section>
        </div>
    }
    .into_any()
}

/// What a lesson is called, what its note says, and what it teaches.
pub(super) const fn told(lesson: Lesson) -> LessonWords {
    match lesson {
        Lesson::HumsAndClicks => words::HUMS_AND_CLICKS,
        Lesson::TripsTheOutlet => words::TRIPS_THE_OUTLET,
        Lesson::NeverGetsThere => words::NEVER_GETS_THERE,
        Lesson::ColdOnOneSide => words::COLD_ON_ONE_SIDE,
        Lesson::BroughtBack => words::BROUGHT_BACK,
    }
}

fn row(
    title: &'static str,
    line: &'static str,
    wanted: Wanted,
    begin: Callback<Wanted>,
) -> AnyView {
    let tap = crate::parts::live::tap(move |_| begin.run(wanted));
    view! {
        <li>
            <button type="button" class="row" on:click=tap>
                <span class="title">{title}</span>
                <span class="line">{line}</span>
            </button>
        </li>
    }
    .into_any()
}

/// Makes a machine and a job about it. A second tap meanwhile makes no second one.
fn begin(needs: Lessons, waits: RwSignal<Option<&'static str>>, wanted: Wanted) {
    if waits.get_untracked() == Some(words::MAKING) {
        return;
    }
    waits.set(Some(words::MAKING));
    device::soon(move || {
        let made = match wanted {
            Wanted::Lesson(lesson) => {
                let sheet = lesson.sheet(needs.meter);
                sheet.map(|sheet| (Made::Lesson(lesson), sheet))
            }
            Wanted::AtRandom(difficulty) => {
                let row = Difficulty::row(device::chance());
                difficulty.machine(needs.meter, row)
            }
        };
        let Some((made, mut sheet)) = made else {
            let _ = waits.try_set(Some(words::NOT_FOUND));
            return;
        };
        let id = (needs.start)(entries(made, &mut sheet));
        bench::put(id, needs.meter, made, sheet);
    });
}

/// What its job begins with: a lesson's machine has a name.
fn entries(made: Made, sheet: &mut Sheet) -> Vec<Content> {
    let mut entries = made.opening(sheet);
    let (check, item) = diagnosis::Machine::NAME;
    if let Made::Lesson(lesson) = made
        && let (Ok(question), Ok(title)) =
            (Question::new(check, item), Text::new(told(lesson).title))
    {
        let answer = Answer::Text(title);
        entries.push(Content::Answer { question, answer });
    }
    entries
}

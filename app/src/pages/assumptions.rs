//! What is assumed before anything is known: each figure with its reason, to be changed.

use diagnosis::{Build, Choice, Cost, Fault, Figures, Stake, Term};
use leptos::html;
use leptos::prelude::*;
use wording::page::assumptions as words;
use wording::{Locale, Words, whole};

use crate::forms::assumptions::{Figure, Refused, SETTING};
use crate::frame::Heading;
use crate::parts::hand_over;
use crate::parts::live::{live, tap};
use crate::parts::plain::{button, paragraph, section_heading};
use crate::parts::radio::Radio;
use crate::session::Session;

/// The screen's own state. A handle: cheap to copy.
#[derive(Clone, Copy)]
struct Editing {
    session: Session,
    locale: Locale,
    build: RwSignal<Build>,
    figures: RwSignal<Figures>,
}

/// One line of the list: what it is about, and the figures that it opens to.
struct Row {
    /// The first part of its fields' identifiers.
    id: String,
    title: &'static str,
    why: &'static str,
    fields: Vec<(Figure, &'static str)>,
}

/// One figure on the screen.
#[derive(Clone, Copy)]
struct Field {
    figure: Figure,
    input: NodeRef<html::Input>,
    wrong: RwSignal<String>,
}

impl Editing {
    fn new(session: Session) -> Self {
        let kept = session.setting(SETTING).unwrap_or_default();
        Self {
            session,
            locale: session.locale(),
            build: RwSignal::new(Build::ManualDefrost),
            figures: RwSignal::new(Figures::read(&kept)),
        }
    }

    fn keep(self, figures: Figures, said: String) {
        self.session.keep_setting(SETTING, &figures.text());
        self.figures.set(figures);
        self.session.say(said);
    }

    /// Takes what was typed into a row, where all of it can be taken; else says beside each field
    /// why not.
    fn put(self, title: &str, fields: &[Field]) {
        let mut figures = self.figures.get_untracked();
        let mut is_taken = true;
        for field in fields {
            let Some(input) = field.input.get_untracked() else {
                continue;
            };
            let typed = input.value();
            let why = if typed == self.shown(field.figure) {
                String::new()
            } else {
                let taken = field.figure.put(&typed, &mut figures);
                taken.err().map_or_else(String::new, |why| self.why(&why))
            };
            is_taken &= why.is_empty();
            field.wrong.set(why);
        }
        if is_taken {
            self.keep(figures, words::kept(title));
        }
    }

    fn why(self, refused: &Refused) -> String {
        match refused {
            Refused::NoNumber => words::NO_NUMBER.to_owned(),
            Refused::Share(error) => words::refused_share(error, &self.locale),
            Refused::Cost(error) => words::refused_cost(error, &self.locale),
        }
    }

    /// A figure as it stands in its field.
    fn shown(self, figure: Figure) -> String {
        let value = self.figures.with_untracked(|figures| figure.of(figures));
        match figure {
            Figure::Share(..) => self.locale.number(value, 1),
            Figure::Cost(_) => words::plain(value, &self.locale),
        }
    }
}

/// What is assumed.
#[component]
pub fn AssumptionsScreen() -> impl IntoView {
    let editing = Editing::new(Session::here());
    let builds = Build::ALL.iter().map(|&build| {
        view! {
            <Radio
                group="build"
                text=build.words()
                hint=build.hint().unwrap_or_default()
                chosen=Signal::derive(move || editing.build.get() == build)
                choose=Callback::new(move |()| editing.build.set(build))
            />
        }
    });
    view! {
        <div class="screen settings">
            <Heading text=words::ASSUMPTIONS/>
            {paragraph("", words::LEAD)}
            {paragraph("soft", words::CHANGING)}
            {live(move || own(editing))}
            {section_heading(words::MONEY)}
            {paragraph("soft", words::MONEY_HOW)}
            {live(move || rows(editing, Stake::ALL.iter().map(|stake| at_stake(*stake)).collect()))}
            <fieldset class="radios">
                <legend>{section_heading(words::FOR_WHICH)}</legend>
                {builds.collect::<Vec<_>>()}
            </fieldset>
            {section_heading(words::FAULTS)}
            {live(move || rows(editing, faults(editing.build.get())))}
        </div>
    }
}

fn at_stake(stake: Stake) -> Row {
    Row {
        id: stake.name().to_owned(),
        title: words::stake(stake),
        why: words::why(stake),
        fields: vec![(Figure::Cost(Cost::Stake(stake)), words::stake(stake))],
    }
}

/// Every fault of a build in the order of the Path, nothing wrong at the end.
fn faults(build: Build) -> Vec<Row> {
    let there = Fault::ALL.iter().filter(|fault| fault.exists_in(build));
    let all = there.map(|fault| Some(*fault)).chain([None]);
    all.map(|fault| {
        let share = (Figure::Share(build, fault), words::OF_A_HUNDRED);
        let mending = fault.into_iter().flat_map(|fault| {
            let terms = Term::ALL.iter();
            terms.map(move |term| {
                let cost = Cost::Mending(build, fault, *term);
                (Figure::Cost(cost), words::term(*term))
            })
        });
        Row {
            id: [build.name(), "-", fault.map_or("none", Choice::name)].concat(),
            title: fault.map_or(whole::NOTHING_WRONG, Words::words),
            why: whole::usual(fault),
            fields: [share].into_iter().chain(mending).collect(),
        }
    })
    .collect()
}

fn rows(editing: Editing, rows: Vec<Row>) -> impl IntoView {
    editing.figures.track();
    let rows = rows.into_iter().map(|one| row(editing, one));
    view! { <ul class="suspect-rows">{rows.collect::<Vec<_>>()}</ul> }
}

fn row(editing: Editing, row: Row) -> AnyView {
    let Row {
        id,
        title,
        why,
        fields,
    } = row;
    let summary = editing
        .figures
        .with_untracked(|figures| summary(&fields, figures, &editing.locale));
    let is_own = editing
        .figures
        .with_untracked(|figures| fields.iter().any(|(figure, _)| figure.is_own(figures)));
    let labelled: Vec<(Field, &'static str)> = fields
        .into_iter()
        .map(|(figure, label)| {
            let (input, wrong) = (NodeRef::new(), RwSignal::new(String::new()));
            let field = Field {
                figure,
                input,
                wrong,
            };
            (field, label)
        })
        .collect();
    let fields: Vec<Field> = labelled.iter().map(|(field, _)| *field).collect();
    let (typed, stated) = (fields.clone(), fields);
    let put = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        editing.put(title, &typed);
    };
    let reset = move |_| {
        let mut figures = editing.figures.get_untracked();
        for field in &stated {
            field.figure.reset(&mut figures);
        }
        editing.keep(figures, words::ONE_RESET.to_owned());
    };
    let back = is_own.then(|| button("plain", words::RESET, reset));
    let inputs = labelled.into_iter().enumerate();
    let inputs = inputs.map(|(place, (field, label))| {
        let id = if place == 0 {
            id.clone()
        } else {
            format!("{id}-{place}")
        };
        entry(editing, field, id, title, label)
    });
    view! {
        <li>
            <details class="suspect figure">
                <summary>
                    <strong>{title}</strong>
                    <span>{summary}</span>
                </summary>
                <form class="reasons text-entry" on:submit=put novalidate>
                    {paragraph("", why)}
                    {inputs.collect::<Vec<_>>()}
                    <div class="actions">
                        <button class="button quiet">{words::KEEP}</button>
                        {back}
                    </div>
                </form>
            </details>
        </li>
    }
    .into_any()
}

/// What a closed row tells: its first figure.
fn summary(fields: &[(Figure, &str)], figures: &Figures, locale: &Locale) -> String {
    let is_own = fields.iter().any(|(figure, _)| figure.is_own(figures));
    match fields.first() {
        Some((figure @ Figure::Share(..), _)) => {
            words::of_a_hundred(figure.of(figures), is_own, locale)
        }
        Some((figure, _)) => words::sum(figure.of(figures), is_own, locale),
        None => String::new(),
    }
}

fn entry(
    editing: Editing,
    field: Field,
    id: String,
    title: &'static str,
    label: &'static str,
) -> AnyView {
    let label_for = id.clone();
    let wrong = field.wrong;
    view! {
        <label for=label_for>{label}</label>
        <input
            id=id
            type="text"
            inputmode="decimal"
            autocomplete="off"
            aria-label=words::labelled(title, label)
            node_ref=field.input
            value=editing.shown(field.figure)
        />
        <p class="field-error" role="alert">{live(move || wrong.get())}</p>
    }
    .into_any()
}

/// What can be done with the person's own figures, once there are any.
fn own(editing: Editing) -> Option<AnyView> {
    let own = editing.figures.with(Figures::text);
    (!own.is_empty()).then(|| {
        let session = editing.session;
        let save = move |_| hand_over::save(session, "coldcase-assumptions.txt", &own, || ());
        let reset = move |_| editing.keep(Figures::default(), words::ALL_RESET.to_owned());
        view! {
            <div class="actions">
                <button class="button quiet" on:click=tap(save)>{words::SAVE}</button>
                {button("button quiet", words::RESET_ALL, reset)}
            </div>
        }
        .into_any()
    })
}

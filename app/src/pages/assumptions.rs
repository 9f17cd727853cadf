//! What is assumed before anything is known: each figure with its reason, to be changed.

use diagnosis::{Build, Choice, Fault, Priors};
use leptos::html;
use leptos::prelude::*;
use quantity::parse_decimal;
use wording::page::assumptions as words;
use wording::{Locale, Words, whole};

use crate::forms::assumptions::{SETTING, priors, text};
use crate::frame::Heading;
use crate::parts::hand_over;
use crate::parts::live::live;
use crate::parts::plain::{button, paragraph, section_heading};
use crate::parts::radio::Radio;
use crate::session::Session;

/// The screen's own state. A handle: cheap to copy.
#[derive(Clone, Copy)]
struct Editing {
    session: Session,
    locale: Locale,
    build: RwSignal<Build>,
    priors: RwSignal<Priors>,
}

impl Editing {
    fn new(session: Session) -> Self {
        let kept = session.setting(SETTING).unwrap_or_default();
        Self {
            session,
            locale: session.locale(),
            build: RwSignal::new(Build::ManualDefrost),
            priors: RwSignal::new(priors(&kept)),
        }
    }

    fn keep(self, priors: Priors, said: String) {
        self.session.keep_setting(SETTING, &text(&priors));
        self.priors.set(priors);
        self.session.say(said);
    }

    /// Takes a figure as it was typed; else says why not.
    fn put(self, fault: Option<Fault>, typed: &str) -> Result<(), String> {
        let number = typed.trim().trim_end_matches('%').trim();
        let percent = parse_decimal(number).ok_or_else(|| words::NO_NUMBER.to_owned())?;
        let mut priors = self.priors.get_untracked();
        priors
            .set(self.build.get_untracked(), fault, percent)
            .map_err(|error| words::refused(&error, &self.locale))?;
        self.keep(priors, words::kept(named(fault)));
        Ok(())
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
            <fieldset class="radios">
                <legend>{section_heading(words::FOR_WHICH)}</legend>
                {builds.collect::<Vec<_>>()}
            </fieldset>
            {live(move || figures(editing))}
            {live(move || own(editing))}
        </div>
    }
}

/// Every figure of a build, in the order of the Path, nothing wrong at the end.
fn figures(editing: Editing) -> impl IntoView {
    let build = editing.build.get();
    let there = Fault::ALL.iter().filter(|fault| fault.exists_in(build));
    let all = there.map(|fault| Some(*fault)).chain([None]);
    let rows = all.map(|fault| row(editing, build, fault));
    view! { <ul class="suspect-rows">{rows.collect::<Vec<_>>()}</ul> }
}

fn row(editing: Editing, build: Build, fault: Option<Fault>) -> AnyView {
    let locale = editing.locale;
    let (share, is_own) = editing.priors.with(|priors| {
        let is_own = |edit: &diagnosis::Edit| (edit.build, edit.fault) == (build, fault);
        (
            priors.share(build, fault),
            priors.edits().iter().any(is_own),
        )
    });
    let field = NodeRef::<html::Input>::new();
    let wrong = RwSignal::new(String::new());
    let put = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        if let Some(field) = field.get_untracked()
            && let Err(why) = editing.put(fault, &field.value())
        {
            wrong.set(why);
        }
    };
    let reset = move |_| {
        let mut priors = editing.priors.get_untracked();
        priors.reset(build, fault);
        editing.keep(priors, words::ONE_RESET.to_owned());
    };
    let stated = Priors::default().share(build, fault);
    let back = is_own.then(|| button("plain", words::reset_to(stated, &locale), reset));
    let name = [build.name(), "-", fault.map_or("none", Choice::name)].concat();
    let label_for = name.clone();
    view! {
        <li>
            <details class="suspect figure">
                <summary>
                    <strong>{named(fault)}</strong>
                    <span>{words::of_a_hundred(share, is_own, &locale)}</span>
                </summary>
                <form class="reasons text-entry" on:submit=put novalidate>
                    {paragraph("", whole::usual(fault))}
                    <label for=label_for>{words::OF_A_HUNDRED}</label>
                    <input
                        id=name
                        type="text"
                        inputmode="decimal"
                        autocomplete="off"
                        aria-label=words::labelled(named(fault))
                        node_ref=field
                        value=locale.number(share * 100.0, 1)
                    />
                    <p class="field-error" role="alert">{live(move || wrong.get())}</p>
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

/// What can be done with the person's own figures, once there are any.
fn own(editing: Editing) -> Option<AnyView> {
    let own = editing.priors.with(text);
    (!own.is_empty()).then(|| {
        let session = editing.session;
        let save = move |_| hand_over::save(session, "coldcase-assumptions.txt", &own, || ());
        let reset = move |_| editing.keep(Priors::default(), words::ALL_RESET.to_owned());
        view! {
            <div class="actions">
                {button("button", words::SAVE, save)}
                {button("button quiet", words::RESET_ALL, reset)}
            </div>
        }
        .into_any()
    })
}

fn named(fault: Option<Fault>) -> &'static str {
    fault.map_or(whole::NOTHING_WRONG, Words::words)
}

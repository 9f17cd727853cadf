//! The field for what the meter shows, with the value as understood beside it, the keypad below,
//! and what doesn't fit told in words.
//!
//! The field is never rewritten while someone types in it: only the keypad and a change of what
//! is measured put a text there.

use job::Answer;
use leptos::html;
use leptos::prelude::*;
use measure::Meter;
use wording::{DecimalMark, ErrorWords, Locale, windings_page as words};

use super::keypad::Keypad;
use crate::forms::pair_reading::{Checked, Refusal, Target, checked, understood};
use crate::forms::windings_keys::{Edited, Key, Units, unit_after, units_of};
use crate::parts::live::live;
use crate::parts::plain::{button, paragraph};

/// The identifier of the field, for moving the focus to it.
pub const FIELD: &str = "reading";

/// The identifier of the form around it, for a button elsewhere that enters what stands in it.
pub const FORM: &str = "reading-form";

/// What stands below the field.
#[derive(Debug, Clone, PartialEq)]
enum Remark {
    /// It can't be entered.
    Refused(String),
    /// It can, once the person says that it is right.
    Unusual(ErrorWords, Answer),
}

/// The field with its keypad.
#[component]
pub fn ReadingField(
    /// What is measured.
    #[prop(into)]
    target: Signal<Target>,
    /// The meter as it is set.
    #[prop(into)]
    meter: Signal<Meter>,
    /// What stands in the field.
    #[prop(into)]
    typed: Signal<String>,
    /// What stands there from now on.
    write: Callback<String>,
    /// Whether the keypad here is used, rather than the phone's keyboard.
    #[prop(into)]
    own_keypad: Signal<bool>,
    /// How numbers are written.
    locale: Locale,
    /// What was typed can be entered.
    entered: Callback<Answer>,
    /// What else can be done, beside the field.
    children: Children,
) -> impl IntoView {
    let field = NodeRef::<html::Input>::new();
    let form = NodeRef::<html::Form>::new();
    let remark = RwSignal::new(None::<Remark>);
    let look = move || {
        checked(
            &typed.get_untracked(),
            target.get_untracked(),
            meter.get_untracked(),
            locale.degrees,
        )
    };
    let enter = move || match look() {
        Checked::Fine(answer) => entered.run(answer),
        Checked::Unusual(doubt, answer) => {
            remark.set(Some(Remark::Unusual(wording::doubt(doubt), answer)));
        }
        Checked::Refused(refusal) => remark.set(Some(Remark::Refused(refused(&refusal)))),
    };
    let leave = move |_| {
        // The focus arrives elsewhere only after this event; by then the field may be gone.
        request_animation_frame(move || {
            if remark.is_disposed() {
                return;
            }
            let left = form
                .get_untracked()
                .is_some_and(|form| !form.matches(":focus-within").unwrap_or(true));
            if left
                && !typed.read_untracked().is_empty()
                && let Checked::Refused(refusal) = look()
            {
                remark.set(Some(Remark::Refused(refused(&refusal))));
            }
        });
    };
    Effect::new(move |_| {
        let text = typed.get();
        if remark.read_untracked().is_some() {
            remark.set(None);
        }
        if let Some(field) = field.get()
            && field.value() != text
        {
            field.set_value(&text);
        }
    });
    let press = Callback::new(move |key| {
        if let Some(text) = pressed(field, key, units_of(target.get_untracked())) {
            write.run(text);
        }
    });
    let is_refused = move || matches!(remark.get(), Some(Remark::Refused(_)));
    let next_unit = Memo::new(move |_| unit_after(&typed.read(), units_of(target.get())));
    view! {
        <form
            id=FORM
            class="reading"
            node_ref=form
            on:submit=move |event| {
                event.prevent_default();
                enter();
            }
            on:focusout=leave
        >
            <label class="reading-question" for=FIELD>
                {live(move || question(target.get()))}
            </label>
            <div class="reading-row" class:refused=is_refused>
                <div class="reading-box">
                    <input
                        id=FIELD
                        class="reading-input"
                        type="text"
                        node_ref=field
                        inputmode=move || if own_keypad.get() { "none" } else { "decimal" }
                        autocomplete="off"
                        autocapitalize="off"
                        spellcheck="false"
                        enterkeyhint="next"
                        maxlength="40"
                        aria-describedby="reading-remark reading-echo reading-hint"
                        aria-invalid=move || is_refused().to_string()
                        on:input=move |event| write.run(event_target_value(&event))
                    />
                    <output class="reading-echo" id="reading-echo" for=FIELD>
                        {live(move || echo(&typed.read(), target.get(), meter.get(), &locale))}
                    </output>
                </div>
                <button class="button reading-enter" class:under-keypad=own_keypad>
                    {words::ENTER}
                </button>
                {children()}
            </div>
            <div id="reading-remark" role="alert">
                {live(move || remark.get().map(|remark| remark_view(remark, field, entered)))}
            </div>
            <p class="unseen" id="reading-hint">{words::FIELD_HINT}</p>
            {live(move || {
                own_keypad.get().then(|| view! {
                    <Keypad
                        mark=decimal_mark(&locale)
                        next_unit
                        press=press
                        enter=Callback::new(move |()| enter())
                    />
                })
            })}
        </form>
    }
}

/// What a key makes of the field's text. It writes where the person put the caret.
pub fn pressed(field: NodeRef<html::Input>, key: Key, units: Units) -> Option<String> {
    let field = field.get_untracked()?;
    let text = field.value();
    let end = Edited::at_end(&text);
    let place = |found: Option<u32>, otherwise| found.map_or(otherwise, |place| place as usize);
    let before = Edited {
        start: place(field.selection_start().ok().flatten(), end.start),
        end: place(field.selection_end().ok().flatten(), end.end),
        text,
    };
    let after = before.pressed(key, units);
    field.set_value(&after.text);
    // A text of a few characters: its places fit.
    let caret = u32::try_from(after.start).unwrap_or(u32::MAX);
    let _ = field.set_selection_range(caret, caret);
    Some(after.text)
}

fn question(target: Target) -> String {
    match target {
        Target::Pair(pair) => words::touch(pair),
        Target::Leads => words::TOUCH_LEADS.to_owned(),
        Target::Ask(ask) => wording::whole::ask(ask).ask.to_owned(),
    }
}

fn echo(text: &str, target: Target, meter: Meter, locale: &Locale) -> Option<String> {
    understood(text, target, meter, locale.degrees)
        .map(|measured| wording::measured(measured, locale))
}

fn refused(refusal: &Refusal) -> String {
    match refusal {
        Refusal::Unreadable(error) => wording::parse_error(error).line(),
        Refusal::Impossible(doubt) => wording::doubt(*doubt).line(),
        Refusal::LeadsOpen => words::LEADS_OPEN.to_owned(),
    }
}

const fn decimal_mark(locale: &Locale) -> char {
    match locale.decimal {
        DecimalMark::Point => '.',
        DecimalMark::Comma => ',',
    }
}

fn remark_view(
    remark: Remark,
    field: NodeRef<html::Input>,
    entered: Callback<Answer>,
) -> impl IntoView {
    match remark {
        Remark::Refused(text) => paragraph("remark refusal", text),
        Remark::Unusual(why, answer) => view! {
            <div class="remark doubt">
                <p><strong>{why.what}</strong> " " {why.mend}</p>
                <div class="actions">
                    {button("button", words::YES_ENTER_IT, move |_| entered.run(answer.clone()))}
                    {button("button quiet", words::CHANGE_IT, move |_| {
                            if let Some(field) = field.get_untracked() {
                                let _ = field.focus();
                                field.select();
                            }
                        })}
                </div>
            </div>
        }
        .into_any(),
    }
}

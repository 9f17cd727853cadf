//! A field for a person's own words: kept while typing, checked on entering, never emptied by
//! an error.

use job::{Text, TextError};
use leptos::prelude::*;
use wording::page;

use crate::device;
use crate::open_job::OpenJob;
use crate::parts::live::live;

/// A field with its button.
#[component]
pub fn TextEntry(
    /// The field's identifier; with `-hint` and `-error` behind it those of what describes it.
    id: &'static str,
    /// The check and item under which a draft of it is kept.
    draft: (&'static str, &'static str),
    /// What is asked for.
    label: &'static str,
    /// What helps to answer.
    hint: &'static str,
    /// What the button says.
    button: &'static str,
    /// What stands in it, where nothing was being typed.
    #[prop(optional, into)]
    initial: String,
    /// Whether it may hold several lines.
    #[prop(optional)]
    is_long: bool,
    /// Whether the field is emptied once its text was taken.
    #[prop(optional)]
    empties: bool,
    /// Why a text can't be what is asked for; it is told beside the field, and what was typed stays.
    #[prop(optional, into)]
    refuse: Option<Callback<Text, Option<&'static str>>>,
    /// Takes the text. False where it was not taken.
    #[prop(into)]
    take: Callback<Text, bool>,
) -> impl IntoView {
    let job = OpenJob::here();
    let (check, item) = draft;
    let typed = RwSignal::new(job.draft(check, item).unwrap_or(initial));
    let error = RwSignal::new(None::<&'static str>);
    let input = move |text: String| {
        job.keep_draft(check, item, &text);
        typed.set(text);
        error.set(None);
    };
    let enter = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        let found = checked(&typed.get_untracked()).and_then(|text| {
            let why = refuse.and_then(|refuse| refuse.run(text.clone()));
            why.map_or(Ok(text), Err)
        });
        match found {
            Err(words) => {
                error.set(Some(words));
                device::focus(id);
            }
            Ok(text) => {
                if take.run(text) && empties {
                    typed.set(String::new());
                }
            }
        }
    };
    let described_by = [id, "-hint ", id, "-error"].concat();
    let is_wrong = move || error.get().is_some().then_some("true");
    let field = if is_long {
        view! {
            <textarea
                id=id
                rows="3"
                aria-describedby=described_by
                aria-invalid=is_wrong
                prop:value=typed
                on:input=move |event| input(event_target_value(&event))
            ></textarea>
        }
        .into_any()
    } else {
        view! {
            <input
                id=id
                type="text"
                autocomplete="off"
                aria-describedby=described_by
                aria-invalid=is_wrong
                prop:value=typed
                on:input=move |event| input(event_target_value(&event))
            />
        }
        .into_any()
    };
    view! {
        <form class="text-entry" on:submit=enter novalidate>
            <label for=id>{label}</label>
            <p id=[id, "-hint"].concat() class="soft small">{hint}</p>
            {field}
            <p id=[id, "-error"].concat() class="field-error" role="alert">{live(move || error.get())}</p>
            <button class="button quiet">{button}</button>
        </form>
    }
}

fn checked(typed: &str) -> Result<Text, &'static str> {
    if typed.trim().is_empty() {
        return Err(page::TEXT_EMPTY);
    }
    Text::new(typed).map_err(|error| match error {
        TextError::TooLong => page::TEXT_TOO_LONG,
        TextError::ControlCharacter => page::TEXT_GARBLED,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_are_taken_as_they_are_and_an_error_says_how_to_mend_it() {
        assert_eq!(
            checked("Öl unter dem Verdichter\n").unwrap().as_str(),
            "Öl unter dem Verdichter\n"
        );
        assert_eq!(checked(" \n"), Err(page::TEXT_EMPTY));
        assert_eq!(checked(&"x".repeat(2_001)), Err(page::TEXT_TOO_LONG));
        assert_eq!(checked("a\u{7}b"), Err(page::TEXT_GARBLED));
    }
}

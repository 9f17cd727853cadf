//! Which meter, in a line that opens: its kind, its range, and what its leads read.

use diagnosis::{Choice, LeadsChoice};
use leptos::prelude::*;
use measure::MeterKind;
use wording::{Locale, Words, windings_page as words};

use super::radio::Radio;
use crate::forms::windings_meter::{MeterInUse, Range};

/// The meter in a line, and its questions behind it.
#[component]
pub fn MeterChoice(
    /// The meter as it is described now.
    meter: RwSignal<MeterInUse>,
    /// What was said of the leads.
    #[prop(into)]
    leads: Signal<Option<LeadsChoice>>,
    /// What was read with the probes together.
    #[prop(into)]
    leads_read: Signal<Option<String>>,
    /// Something is said of the leads.
    say_leads: Callback<LeadsChoice>,
    /// The probes are to be touched together and read.
    read_leads: Callback<()>,
    /// How numbers are written.
    locale: Locale,
) -> impl IntoView {
    let line = move || {
        let in_use = meter.get();
        let end = match in_use.range {
            Range::Automatic => None,
            Range::EndsAt(top) => Some(wording::ohms(top, &locale)),
        };
        words::meter_line(in_use.kind.words(), end.as_deref())
    };
    view! {
        <details class="fold">
            <summary>
                <span>{line}</span>
                <span class="fold-action">{words::CHANGE}</span>
            </summary>
            <fieldset class="radios">
                <legend>{words::WHICH_METER}</legend>
                {MeterKind::ALL.map(|kind| kind_radio(kind, meter)).collect_view()}
            </fieldset>
            <fieldset class="radios in-row">
                <legend>{words::WHICH_RANGE}</legend>
                <p class="soft small">{words::RANGE_HINT}</p>
                {Range::all()
                    .into_iter()
                    .map(|range| range_radio(range, meter, locale))
                    .collect_view()}
            </fieldset>
            <fieldset class="radios">
                <legend>{words::WHICH_LEADS}</legend>
                {LeadsChoice::ALL.iter().map(|&choice| leads_radio(choice, leads, say_leads)).collect_view()}
                // Where they read zero there is nothing to enter.
                {move || (leads.get() != Some(LeadsChoice::Zeroed)).then(|| view! {
                    <button type="button" class="plain" on:click=move |_| read_leads.run(())>
                        {words::ENTER_LEADS}
                    </button>
                })}
                {move || leads_read.get().map(|reading| view! { <p>{words::leads_read(&reading)}</p> })}
            </fieldset>
        </details>
    }
}

fn kind_radio(kind: MeterKind, meter: RwSignal<MeterInUse>) -> impl IntoView {
    view! {
        <Radio
            group="meter-kind"
            text=kind.words()
            hint=kind.hint().unwrap_or_default()
            chosen=Signal::derive(move || meter.get().kind == kind)
            choose=Callback::new(move |()| meter.update(|meter| meter.kind = kind))
        />
    }
}

fn range_radio(range: Range, meter: RwSignal<MeterInUse>, locale: Locale) -> impl IntoView {
    let text = match range {
        Range::Automatic => words::PICKS_ITSELF.to_owned(),
        Range::EndsAt(top) => wording::ohms(top, &locale),
    };
    view! {
        <Radio
            group="meter-range"
            text=text
            chosen=Signal::derive(move || meter.get().range == range)
            choose=Callback::new(move |()| meter.update(|meter| meter.range = range))
        />
    }
}

fn leads_radio(
    choice: LeadsChoice,
    leads: Signal<Option<LeadsChoice>>,
    say: Callback<LeadsChoice>,
) -> impl IntoView {
    view! {
        <Radio
            group="leads"
            text=choice.words()
            chosen=Signal::derive(move || leads.get() == Some(choice))
            choose=Callback::new(move |()| say.run(choice))
        />
    }
}

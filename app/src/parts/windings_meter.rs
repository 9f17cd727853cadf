//! Which meter, in a line that opens: its kind, its range, and what its leads read.

use diagnosis::{Choice, LeadsChoice};
use leptos::prelude::*;
use measure::MeterKind;
use wording::page::settings;
use wording::{Locale, Words, windings_page as words};

use super::radio::Radio;
use crate::forms::windings_meter::{MeterInUse, OwnMeter, Profile, Range};
use crate::parts::live::live;
use crate::parts::plain::{button, link, paragraph};
use crate::route::Route;
use crate::session::Session;

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
    /// What they read in an earlier job, where nothing is known of them in this one.
    #[prop(into)]
    leads_before: Signal<Option<String>>,
    /// That reading is to be taken over.
    take_leads: Callback<()>,
    /// How numbers are written.
    locale: Locale,
) -> impl IntoView {
    let own = Session::here().setting(OwnMeter::SETTING);
    let own = own.as_deref().and_then(OwnMeter::recalled);
    let line = move || {
        let in_use = meter.get();
        let end = match in_use.range {
            Range::Automatic => None,
            Range::EndsAt(top) => Some(wording::ohms(top, &locale)),
        };
        let profile = match in_use.profile {
            Profile::Kind(kind) => kind.words(),
            Profile::Own(_) => settings::OWN_METER,
        };
        words::meter_line(profile, end.as_deref())
    };
    view! {
        <details class="fold">
            <summary>
                <span>{live(line)}</span>
                <span class="fold-action">{words::CHANGE}</span>
            </summary>
            <fieldset class="radios">
                <legend>{words::WHICH_METER}</legend>
                {MeterKind::ALL.map(|kind| kind_radio(kind, meter)).collect_view()}
                {own.map(|own| own_radio(own, meter, locale))}
                {link("plain", Route::Settings.link(), settings::DESCRIBE_METER)}
            </fieldset>
            <fieldset class="radios in-row">
                <legend>{words::WHICH_RANGE}</legend>
                {paragraph("soft small", words::RANGE_HINT)}
                {Range::all()
                    .into_iter()
                    .map(|range| range_radio(range, meter, locale))
                    .collect_view()}
            </fieldset>
            <fieldset class="radios">
                <legend>{words::WHICH_LEADS}</legend>
                {LeadsChoice::ALL.iter().map(|&choice| leads_radio(choice, leads, say_leads)).collect_view()}
                // Where they read zero there is nothing to enter.
                {live(move || (leads.get() != Some(LeadsChoice::Zeroed)).then(|| button("plain", words::ENTER_LEADS, move |_| read_leads.run(()))))}
                {live(move || leads_before.get().map(|reading| button("plain", settings::leads_as_before(&reading), move |_| take_leads.run(()))))}
                {live(move || leads_read.get().map(|reading| paragraph("", words::leads_read(&reading))))}
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
            chosen=Signal::derive(move || meter.get().profile == Profile::Kind(kind))
            choose=Callback::new(move |()| meter.update(|meter| meter.profile = Profile::Kind(kind)))
        />
    }
}

fn own_radio(own: OwnMeter, meter: RwSignal<MeterInUse>, locale: Locale) -> impl IntoView {
    let figure = |figure: f64| locale.number(figure, usize::from(figure.fract() != 0.0));
    let (percent, counts) = (own.accuracy.percent(), own.accuracy.counts());
    let top = wording::ohms(own.top, &locale);
    view! {
        <Radio
            group="meter-kind"
            text=settings::OWN_METER
            hint=settings::own_meter(&figure(percent), &figure(counts), &top)
            chosen=Signal::derive(move || meter.get().profile == Profile::Own(own))
            choose=Callback::new(move |()| meter.update(|meter| meter.profile = Profile::Own(own)))
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

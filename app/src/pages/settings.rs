//! What a person sets once for all jobs: meter, mains, degrees, look, keys, and the back-up.

use diagnosis::{Choice, MainsChoice};
use leptos::prelude::*;
use measure::MeterKind;
use wording::page::{assumptions, keeping, settings as words};
use wording::{Degrees, Words, page};

use crate::device;
use crate::forms::new_job::MAINS_SETTING;
use crate::forms::windings_meter::{MeterInUse, NoSuchMeter, OwnMeter, Profile};
use crate::frame::Heading;
use crate::parts::hand_over;
use crate::parts::live::{live, tap};
use crate::parts::plain::{button, link, paragraph, section_heading};
use crate::parts::radio::Radio;
use crate::route::Route;
use crate::session::Session;

/// The settings.
#[component]
pub fn SettingsScreen() -> impl IntoView {
    view! {
        <div class="screen settings">
            <Heading text=words::SETTINGS/>
            <Meter/>
            {one_of(words::MAINS, Some(words::MAINS_HOW), MAINS_SETTING, mains(), |_| ())}
            {one_of(words::DEGREES, None, Session::DEGREES, degrees(), |_| Session::here().read_habits())}
            {one_of(words::LOOK, None, LOOK, looks(), device::set_look)}
            {one_of(words::KEYPAD, None, KEYBOARD, keypads(), |_| ())}
            {link("door", Route::Assumptions.link(), assumptions::ASSUMPTIONS)}
            <Backup/>
        </div>
    }
}

/// The setting for the page's look; the start-up script reads it too.
const LOOK: &str = "look";
/// The setting for the keyboard: `own` or `phone`.
pub const KEYBOARD: &str = "keyboard";

/// The values of a setting with their words, the one that counts without a choice in front.
type Offers = Vec<(&'static str, &'static str)>;

fn mains() -> Offers {
    let all = MainsChoice::ALL.iter();
    core::iter::once(("", words::BY_LANGUAGE))
        .chain(all.map(|mains| (mains.name(), mains.words())))
        .collect()
}

fn degrees() -> Offers {
    let scale = |degrees: Degrees| (Session::degrees_name(degrees), degrees.words());
    vec![
        ("", words::BY_LANGUAGE),
        scale(Degrees::Celsius),
        scale(Degrees::Fahrenheit),
    ]
}

fn looks() -> Offers {
    vec![
        ("", words::LOOK_SYSTEM),
        ("light", words::LOOK_LIGHT),
        ("dark", words::LOOK_DARK),
    ]
}

fn keypads() -> Offers {
    vec![("", words::KEYPAD_OWN), ("phone", words::KEYPAD_PHONE)]
}

/// A setting of a few values, kept as soon as one is chosen.
fn one_of(
    heading: &'static str,
    how: Option<&'static str>,
    setting: &'static str,
    offers: Offers,
    then: fn(&str),
) -> impl IntoView {
    let session = Session::here();
    let chosen = RwSignal::new(session.setting(setting).unwrap_or_default());
    // A value that this version doesn't know counts as none.
    let is_known = untrack(|| offers.iter().any(|(name, _)| *name == chosen.get()));
    if !is_known {
        chosen.set(String::new());
    }
    let radios = offers.into_iter().map(move |(name, text)| {
        let choose = move |()| {
            session.keep_setting(setting, name);
            chosen.set(name.to_owned());
            then(name);
        };
        view! {
            <Radio
                group=setting
                text=text
                chosen=Signal::derive(move || *chosen.read() == name)
                choose=Callback::new(choose)
            />
        }
    });
    view! {
        <fieldset class="radios">
            <legend>{section_heading(heading)}</legend>
            {how.map(|how| paragraph("soft small", how))}
            {radios.collect::<Vec<_>>()}
        </fieldset>
    }
}

#[component]
fn Meter() -> impl IntoView {
    let session = Session::here();
    let recalled = MeterInUse::recalled(&session.setting(MeterInUse::SETTING).unwrap_or_default());
    let meter = RwSignal::new(recalled);
    let own = session.setting(OwnMeter::SETTING);
    let own = RwSignal::new(own.as_deref().and_then(OwnMeter::recalled));
    let is_describing = RwSignal::new(matches!(recalled.profile, Profile::Own(_)));
    let set = move |profile: Profile| {
        meter.update(|meter| meter.profile = profile);
        session.keep_setting(MeterInUse::SETTING, &meter.get_untracked().remembered());
    };
    let kinds = MeterKind::ALL.map(|kind| {
        view! {
            <Radio
                group="meter-kind"
                text=kind.words()
                hint=kind.hint().unwrap_or_default()
                chosen=Signal::derive(move || {
                    !is_describing.get() && meter.get().profile == Profile::Kind(kind)
                })
                choose=Callback::new(move |()| {
                    is_describing.set(false);
                    set(Profile::Kind(kind));
                })
            />
        }
    });
    let describe = move |()| {
        is_describing.set(true);
        if let Some(own) = own.get_untracked() {
            set(Profile::Own(own));
        }
    };
    let kept = move |described: OwnMeter| {
        own.set(Some(described));
        session.keep_setting(OwnMeter::SETTING, &described.remembered());
        set(Profile::Own(described));
        session.say(words::METER_KEPT);
    };
    view! {
        <section>
            <fieldset class="radios">
                <legend>{section_heading(words::METER)}</legend>
                {paragraph("soft small", words::METER_HOW)}
                {kinds.collect_view()}
                <Radio
                    group="meter-kind"
                    text=words::OWN_METER
                    chosen=is_describing
                    choose=Callback::new(describe)
                />
            </fieldset>
            {live(move || is_describing.get().then(|| view! {
                <OwnMeterForm own=own.get_untracked() kept=Callback::new(kept)/>
            }))}
        </section>
    }
}

/// Percent, counts and highest range, as the meter's manual gives them.
#[component]
fn OwnMeterForm(own: Option<OwnMeter>, kept: Callback<OwnMeter>) -> impl IntoView {
    let locale = Session::here().locale();
    let figure = |value: fn(OwnMeter) -> String| RwSignal::new(own.map(value).unwrap_or_default());
    let percent = figure(|own| own.accuracy.percent().to_string());
    let counts = figure(|own| own.accuracy.counts().to_string());
    let top = RwSignal::new(own.map_or_else(String::new, |own| wording::ohms(own.top, &locale)));
    let wrong = RwSignal::new(None::<NoSuchMeter>);
    let enter = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        let described = OwnMeter::parse(
            &percent.get_untracked(),
            &counts.get_untracked(),
            &top.get_untracked().replace('\u{a0}', " "),
        );
        wrong.set(described.err());
        if let Ok(described) = described {
            kept.run(described);
        }
    };
    let field = move |id: &'static str, label: &'static str, typed: RwSignal<String>, which| {
        view! {
            <label for=id>{label}</label>
            <input
                id=id
                type="text"
                inputmode="decimal"
                autocomplete="off"
                aria-describedby="own-meter-wrong"
                aria-invalid=move || (wrong.get() == Some(which)).then_some("true")
                prop:value=typed
                on:input=move |event| typed.set(event_target_value(&event))
            />
        }
    };
    let said = move || {
        wrong.get().map(|wrong| match wrong {
            NoSuchMeter::Percent => words::PERCENT_WRONG,
            NoSuchMeter::Counts => words::COUNTS_WRONG,
            NoSuchMeter::Top => words::HIGHEST_WRONG,
        })
    };
    view! {
        <form class="text-entry" on:submit=enter novalidate>
            {paragraph("soft small", words::OWN_METER_HOW)}
            {field("own-percent", words::PERCENT, percent, NoSuchMeter::Percent)}
            {field("own-counts", words::COUNTS, counts, NoSuchMeter::Counts)}
            {field("own-top", words::HIGHEST, top, NoSuchMeter::Top)}
            <p id="own-meter-wrong" class="field-error" role="alert">{live(said)}</p>
            <button class="button quiet">{words::KEEP_METER}</button>
        </form>
    }
}

/// All jobs in one file, out and in.
#[component]
fn Backup() -> impl IntoView {
    let session = Session::here();
    let store = session.store();
    let now = device::now();
    // Worked out before the tap: a share sheet opens only inside it.
    let backup = store.back_up(now);
    let is_empty = backup.jobs.is_empty();
    let text = StoredValue::new(jobfile::save_backup(&backup));
    let day = jobfile::write_timestamp(now);
    let name = [
        "coldcase-",
        day.split('T').next().unwrap_or_default(),
        ".json",
    ]
    .concat();
    let shareable = StoredValue::new_local(text.with_value(|text| device::shareable(&name, text)));
    let made = RwSignal::new(store.backed_up());
    let note = move || {
        let now = device::now();
        session.store().note_backup(now);
        let _ = made.try_set(Some(now));
    };
    let save = move |_| {
        text.with_value(|text| hand_over::save(session, &name, text, note));
    };
    let share = move |_| {
        if let Some(shareable) = shareable.get_value() {
            hand_over::share(session, shareable, note);
        }
    };
    let last = move || {
        made.get().map_or_else(
            || keeping::NEVER_BACKED_UP.to_owned(),
            |when| keeping::backed_up(&session.locale().moment(when)),
        )
    };
    let can_share = shareable.with_value(Option::is_some);
    let buttons = view! {
        <div class="actions">
            {can_share.then(|| button("button", keeping::SHARE_BACKUP, share))}
            <button class="button" class:quiet=can_share on:click=tap(save)>{keeping::SAVE_BACKUP}</button>
            {link("plain", Route::Import.link(), page::OPEN_FILE)}
        </div>
    };
    view! {
        <section class="send">
            {section_heading(keeping::BACKUP)}
            {paragraph("", keeping::BACKUP_HOW)}
            <p class="soft">{live(last)}</p>
            {if is_empty {
                paragraph("soft", keeping::NOTHING_TO_BACK_UP)
            } else {
                buttons.into_any()
            }}
        </section>
    }
}

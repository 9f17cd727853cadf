//! Facts about a refrigerant: its class, where it boils, what surfaces say of the circuit, and what it
//! would make of a room.

use diagnosis::{Circuit, Refrigerant as OfPlate, answered};
use leptos::prelude::*;
use measure::refrigerant::Refrigerant;
use wording::{Degrees, Locale, circuit, gas_page as words, page};

use crate::forms::gas::{
    CountedFrom, NotTold, PressureUnit, Saturated, at_temperature, in_air, number, under_pressure,
};
use crate::frame::Heading;
use crate::open_job::OpenJob;
use crate::parts::live::live;
use crate::parts::plain::{chip, link, paragraph, section_heading, short_field};
use crate::parts::radio::Radio;
use crate::route::{Place, Route};

/// Facts about a refrigerant.
#[component]
pub fn GasFactsScreen() -> impl IntoView {
    let open = OpenJob::here();
    let of_plate = open.with_job(answered::<OfPlate>);
    let gas = RwSignal::new(of_plate.map_or(Refrigerant::R600a, of));
    let locale = open.session().locale();
    let facts = move || {
        let gas = gas.get();
        let mind = if gas.burns() {
            words::IF_IT_BURNS
        } else {
            words::SAFE_FROM_FIRE
        };
        let facts = words::facts(gas, &locale).into_iter();
        let mut said: Vec<_> = facts.map(|fact| paragraph("", fact)).collect();
        said.push(paragraph("remark", mind));
        said
    };
    view! {
        <div class="screen cool-down">
            <Heading text=words::TITLE/>
            {paragraph("remark", words::SEALED)}
            <section>
                <h2 id="which-gas">{words::WHICH}</h2>
                <div class="chips" role="group" aria-labelledby="which-gas">{chips(gas)}</div>
                {live(facts)}
            </section>
            {surfaces(open, &locale)}
            {saturation(gas, locale)}
            {live(move || gas.get().burns().then(|| room(gas, locale)))}
            {link("button quiet wide", Route::Job(open.id(), Place::Do).link(), page::BACK_TO_JOB)}
        </div>
    }
}

const fn of(plate: OfPlate) -> Refrigerant {
    match plate {
        OfPlate::R600a => Refrigerant::R600a,
        OfPlate::R290 => Refrigerant::R290,
        OfPlate::R134a => Refrigerant::R134a,
        OfPlate::R12 => Refrigerant::R12,
        OfPlate::R22 => Refrigerant::R22,
        OfPlate::OtherOrUnreadable => Refrigerant::Other,
    }
}

fn chips(gas: RwSignal<Refrigerant>) -> Vec<AnyView> {
    let chip = |one: Refrigerant| {
        chip(
            words::name(one),
            move || gas.get() == one,
            move || gas.set(one),
        )
    };
    Refrigerant::ALL.into_iter().map(chip).collect()
}

/// What was read on the circuit's surfaces, and what that says.
fn surfaces(open: OpenJob, locale: &Locale) -> AnyView {
    let lines = match open.with_job(Circuit::of) {
        Some(found) => circuit::report(&found, locale),
        None => vec![circuit::HOW.to_owned()],
    };
    let lines: Vec<_> = lines.into_iter().map(|line| paragraph("", line)).collect();
    view! {
        <section>
            {section_heading(circuit::TITLE)}
            {lines}
        </section>
    }
    .into_any()
}

/// From temperature to pressure and back.
fn saturation(gas: RwSignal<Refrigerant>, locale: Locale) -> AnyView {
    let (degrees, pressure) = (RwSignal::new(String::new()), RwSignal::new(String::new()));
    let from = RwSignal::new(CountedFrom::Air);
    let (unit, symbol, scale) = match locale.degrees {
        Degrees::Celsius => (PressureUnit::Bar, "bar", "°C"),
        Degrees::Fahrenheit => (PressureUnit::Psi, "psi", "°F"),
    };
    let radio = move |one: CountedFrom, text: &'static str| {
        view! {
            <Radio
                group="counted-from"
                text
                chosen=Signal::derive(move || from.get() == one)
                choose=Callback::new(move |()| from.set(one))
            />
        }
    };
    let told = move |found: Result<Saturated, NotTold>| told(found, unit, symbol, &locale);
    view! {
        <section>
            {section_heading(words::SATURATION)}
            {short_field("gas-temperature", format!("{} ({scale})", words::TEMPERATURE), ("text", "16"), move |text| degrees.set(text))}
            <div aria-live="polite">
                {live(move || told(at_temperature(gas.get(), &degrees.read(), locale.degrees)))}
            </div>
            {short_field("gas-pressure", format!("{} ({symbol})", words::PRESSURE), ("text", "16"), move |text| pressure.set(text))}
            <fieldset class="radios">
                <legend>{words::COUNTED}</legend>
                {radio(CountedFrom::Air, words::GAUGE)}
                {radio(CountedFrom::Vacuum, words::ABSOLUTE)}
            </fieldset>
            <div aria-live="polite">
                {live(move || told(under_pressure(gas.get(), &pressure.read(), unit, from.get())))}
            </div>
            {paragraph("soft small", words::SEA_LEVEL)}
        </section>
    }
    .into_any()
}

fn told(
    found: Result<Saturated, NotTold>,
    unit: PressureUnit,
    symbol: &str,
    locale: &Locale,
) -> AnyView {
    match found {
        Err(why) => refused(why, locale),
        Ok(found) => {
            let in_unit = |pascals: f64| {
                let decimals = match unit {
                    PressureUnit::Bar => 2,
                    PressureUnit::Psi => 1,
                };
                locale.number(pascals / unit.pascals(), decimals)
            };
            paragraph(
                "title",
                format!(
                    "{}: {} {symbol} gauge, {} {symbol} absolute",
                    locale.temperature(found.at),
                    in_unit(found.gauge.get()),
                    in_unit(found.absolute.get())
                ),
            )
        }
    }
}

fn refused(why: NotTold, locale: &Locale) -> AnyView {
    match why {
        NotTold::Empty | NotTold::NoMixture => ().into_any(),
        NotTold::NotANumber => paragraph("remark refusal", words::NOT_A_NUMBER),
        NotTold::Beyond(why) => paragraph("remark", words::beyond(why, locale)),
    }
}

/// What a charge makes of the room and of the closed cabinet.
fn room(gas: RwSignal<Refrigerant>, locale: Locale) -> AnyView {
    let [charge, metres, litres] = [(); 3].map(|()| RwSignal::new(String::new()));
    let answer = move |name: &'static str, typed: RwSignal<String>, cubic_metres: f64| {
        let volume = match number(&typed.read()) {
            Ok(volume) => volume * cubic_metres,
            Err(why) => return refused(why, &locale),
        };
        match in_air(gas.get(), &charge.read(), volume) {
            Ok(found) => paragraph(
                "title",
                [name, ": ", &words::in_air(&found, &locale)].concat(),
            ),
            Err(why) => refused(why, &locale),
        }
    };
    let is_too_much = move || {
        let grams = number(&charge.read()).ok();
        grams.is_some_and(|grams| {
            let charge = quantity::Kilograms::new(grams / 1_000.0);
            gas.get().is_beyond_household_limit(charge)
        })
    };
    view! {
        <section>
            {section_heading(words::IN_A_ROOM)}
            {short_field("gas-charge", words::CHARGE, ("text", "16"), move |text| charge.set(text))}
            {live(move || is_too_much().then(|| paragraph("remark", words::BEYOND_LIMIT)))}
            {short_field("gas-room", words::ROOM, ("text", "16"), move |text| metres.set(text))}
            <div aria-live="polite">{live(move || answer(words::ROOM_NAME, metres, 1.0))}</div>
            {short_field("gas-cabinet", words::CABINET, ("text", "16"), move |text| litres.set(text))}
            <div aria-live="polite">{live(move || answer(words::CABINET_NAME, litres, 0.001))}</div>
            {paragraph("soft", words::MIXED)}
        </section>
    }
    .into_any()
}

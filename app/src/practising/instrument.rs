//! The button that does what a hand with probes, an eye or an ear would do on a real machine.

use diagnosis::{Clue, Task};
use job::Answer;
use leptos::prelude::*;
use wording::page::practice as words;

use super::face::{Face, drawn};
use super::{Instrument, Probe, bench};
use crate::device;
use crate::parts::live::live;
use crate::parts::plain::{button, paragraph};
use crate::parts::reading_field::FORM;
use crate::session::Session;

/// By what a question is answered.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Sense {
    Meter,
    Eyes,
    Ears,
    Hands,
    People,
}

/// What was found.
#[derive(Debug, Clone, PartialEq)]
enum Found {
    /// A number, as it stands on the display or the part.
    Number(Face, bool),
    /// An answer, in words too.
    Answer(String, Answer),
    /// Nothing can be found.
    Nothing,
    /// There is no machine.
    Stopped(&'static str),
}

/// The setting for sound.
const SOUND: &str = "sound";
const OFF: &str = "off";

/// The button with what it found.
pub(super) fn panel(needs: Instrument) -> AnyView {
    let session = Session::here();
    let found = RwSignal::new(None::<Found>);
    let waits = RwSignal::new(false);
    let needs = StoredValue::new(needs);
    let asked = needs.with_value(|needs| needs.probe.clone());
    let probe = Memo::new(move |_| asked());
    // Another question: what was found for the one before goes.
    Effect::new(move |_| {
        probe.track();
        found.set(None);
    });
    let ask = move |_| {
        let Some(asked) = probe.get_untracked() else {
            return;
        };
        // Browsers let a page sound only from within a tap.
        device::sound("wake");
        waits.set(true);
        device::soon(move || {
            if waits.try_set(false).is_some() {
                return;
            }
            // The question may be another one by now.
            if probe.try_get_untracked().flatten() == Some(asked) {
                found.set(Some(
                    needs.with_value(|needs| find_out(session, needs, asked)),
                ));
            }
        });
    };
    view! {
        <section class="instrument" aria-label=words::MARK>
            {live(move || probe.get().map(|probe| {
                button("button quiet wide", name(sense(probe)), ask)
            }))}
            <div role="status">
                {live(move || if waits.get() {
                    paragraph("soft", words::WAIT)
                } else {
                    found.get().map(|found| shown(needs, found)).into_any()
                })}
            </div>
            {live(move || probe.get().filter(|probe| sense(*probe) == Sense::Ears).map(|_| sound_switch(session)))}
        </section>
    }
    .into_any()
}

/// Asks the machine, puts a number into the field, and lets be heard what can be heard.
fn find_out(session: Session, needs: &Instrument, probe: Probe) -> Found {
    match bench::ask(&(needs.job)(), needs.meter, probe) {
        Err(why) => Found::Stopped(bench::stopped(why)),
        Ok(None) => Found::Nothing,
        Ok(Some(Answer::Reading(reading))) => {
            let typed = reading.typed.as_str();
            let unit = reading.measured.unit();
            (needs.fill)(Face::typed(typed, unit));
            let face = Face::of(typed, unit);
            Found::Number(face, probe.is_printed)
        }
        Ok(Some(answer)) => {
            if session.setting(SOUND).as_deref() != Some(OFF)
                && let Some(sound) = sound_of(probe, &answer)
            {
                device::sound(sound);
            }
            let said = (needs.say)(probe, &answer);
            let said = if said.is_empty() {
                words::NONE_OF_IT.to_owned()
            } else {
                said
            };
            Found::Answer(said, answer)
        }
    }
}

fn shown(needs: StoredValue<Instrument>, found: Found) -> AnyView {
    match found {
        Found::Number(face, true) => {
            let said = [
                words::PRINTED,
                " ",
                &face.digits,
                "\u{a0}",
                &face.unit,
                ".",
            ]
            .concat();
            view! { {paragraph("", said)} {enter_number()} }.into_any()
        }
        Found::Number(face, false) => view! {
            {drawn(&face)}
            {paragraph("", face.said())}
            {enter_number()}
        }
        .into_any(),
        Found::Answer(said, answer) => view! {
            <p>{words::FOUND} " " <strong>{said}</strong></p>
            {button("button wide", words::ENTER_THIS, move |_| needs.get_value().enter.as_ref()(answer.clone()))}
        }
        .into_any(),
        Found::Nothing => paragraph("", words::NOTHING),
        Found::Stopped(why) => paragraph("remark refusal", why),
    }
}

/// Enters what now stands in the field, as its own button would: doubts are asked about there.
fn enter_number() -> AnyView {
    view! { <button class="button wide" form=FORM>{words::ENTER_THIS}</button> }.into_any()
}

/// Turns sound off and on, where there is any.
fn sound_switch(session: Session) -> Option<AnyView> {
    if !device::has_sound() {
        return None;
    }
    let is_off = RwSignal::new(session.setting(SOUND).as_deref() == Some(OFF));
    let change = move |_| {
        let off = !is_off.get_untracked();
        session.keep_setting(SOUND, if off { OFF } else { "on" });
        is_off.set(off);
        if off {
            device::sound("stop");
        }
    };
    let switch = live(move || {
        let words = if is_off.get() {
            words::SOUND_ON
        } else {
            words::SOUND_OFF
        };
        button("plain", words, change)
    });
    Some(switch.into_any())
}

const fn name(sense: Sense) -> &'static str {
    match sense {
        Sense::Meter => words::MEASURE,
        Sense::Eyes => words::LOOK,
        Sense::Ears => words::LISTEN,
        Sense::Hands => words::FEEL,
        Sense::People => words::ASK,
    }
}

fn sense(probe: Probe) -> Sense {
    if probe.unit.is_some() {
        return if probe.is_printed {
            Sense::Eyes
        } else {
            Sense::Meter
        };
    }
    match probe.task {
        Task::History => Sense::People,
        Task::Clue(
            Clue::PowerUp
            | Clue::Noise
            | Clue::ClickInterval
            | Clue::Restart
            | Clue::InstantRestart
            | Clue::GoodDevice
            | Clue::StartKit
            | Clue::Hiss
            | Clue::ModesCleared
            | Clue::TimerByHand,
        ) => Sense::Ears,
        Task::Clue(
            Clue::EvaporatorFan
            | Clue::CondenserFan
            | Clue::AirOutlet
            | Clue::CondenserWarmth
            | Clue::Drier
            | Clue::SuctionLine
            | Clue::Seal,
        ) => Sense::Hands,
        Task::Clue(
            Clue::Thermostat
            | Clue::ThermostatCold
            | Clue::Thermistor
            | Clue::Capacitor
            | Clue::DefrostParts
            | Clue::PartByPart
            | Clue::PowerMeter
            | Clue::PowerLevel
            | Clue::WattsTrend
            | Clue::SaggingVolts,
        ) => Sense::Meter,
        _ => Sense::Eyes,
    }
}

/// What is to be heard of an answer.
fn sound_of(probe: Probe, answer: &Answer) -> Option<&'static str> {
    let Answer::Choice(name) = answer else {
        return None;
    };
    let Task::Clue(clue) = probe.task else {
        return None;
    };
    match (clue, name.as_str()) {
        (Clue::EvaporatorFan | Clue::CondenserFan | Clue::AirOutlet, "strong" | "blows") => {
            Some("fan")
        }
        (Clue::Hiss, "fades-in-minutes" | "weak" | "long-and-faint") => Some("hiss"),
        (Clue::ClickInterval, "within-seconds" | "after-minutes") => Some("hum-click"),
        (_, "hums-then-clicks") => Some("hum-click"),
        (Clue::PowerUp, "trips") => Some("click"),
        (Clue::PowerUp | Clue::GoodDevice | Clue::StartKit | Clue::InstantRestart, "hums") => {
            Some("hum")
        }
        (
            Clue::PowerUp
            | Clue::GoodDevice
            | Clue::StartKit
            | Clue::InstantRestart
            | Clue::ModesCleared
            | Clue::TimerByHand,
            "runs" | "starts",
        ) => Some("run"),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use job::{Name, Unit};

    fn probe(task: Task, unit: Option<Unit>) -> Probe {
        Probe {
            task,
            names: ("power-up", "answer"),
            unit,
            is_printed: false,
        }
    }

    #[test]
    fn a_number_is_measured_and_what_is_printed_is_read() {
        let number = probe(Task::Clue(Clue::Capacitor), Some(Unit::Farad));
        assert_eq!(sense(number), Sense::Meter);
        let printed = Probe {
            is_printed: true,
            ..number
        };
        assert_eq!(sense(printed), Sense::Eyes);
    }

    #[test]
    fn what_hums_sounds_otherwise_than_what_runs_and_silence_has_no_sound() {
        let heard = |name: &str| {
            let answer = Answer::Choice(Name::new(name).unwrap());
            sound_of(probe(Task::Clue(Clue::PowerUp), None), &answer)
        };
        assert_eq!(heard("hums-then-clicks"), Some("hum-click"));
        assert_eq!(heard("runs"), Some("run"));
        assert_eq!(heard("silent"), None);
        // Every name that is listened for is one that the clue takes.
        for name in ["hums-then-clicks", "runs", "silent", "trips"] {
            assert!(Clue::PowerUp.answers().contains(&name));
        }
        assert!(Clue::GoodDevice.answers().contains(&"starts"));
    }
}

//! The rest clock: since when it hasn't turned, and how long until the next try.

use diagnosis::Clock;
use job::{Moment, Stop};
use leptos::prelude::*;
use quantity::Seconds;
use wording::start_trials as words;

use super::{Bench, not_entered};
use crate::device;
use crate::forms::start_trial::stopped;
use crate::parts::clock_digits::clock_digits;
use crate::parts::live::live;
use crate::parts::plain::{button, paragraph, refusal, short_input};

/// The field of the minutes.
const MINUTES: &str = "minutes-ago";

/// How long it has rested, and the ways to say that it stopped.
pub(super) fn clock_panel(bench: Bench) -> AnyView {
    // Drawn anew when the state changes, and the digits each second.
    let state = Memo::new(move |_| state_of(bench.clock(bench.now.get())));
    view! {
        <section class="rest-clock" aria-label=words::RESTED>
            {live(move || match state.get() {
                State::Unknown => paragraph("", words::NO_STOP),
                State::LongAgo => paragraph("", words::LONG_AGO),
                State::SetBack(latest) => {
                    let locale = bench.open.session().locale();
                    refusal(words::set_back(latest, &locale))
                }
                State::Turning => face(words::TURNS, move || running(bench)),
                State::Resting => resting(bench),
            })}
            {live(move || ways_to_stop(bench, state.get()))}
        </section>
    }
    .into_any()
}

/// What the panel is drawn by.
#[derive(Debug, Clone, Copy, PartialEq)]
enum State {
    Unknown,
    Turning,
    Resting,
    LongAgo,
    SetBack(Moment),
}

fn state_of(clock: Clock) -> State {
    match clock {
        Clock::NotStarted => State::Unknown,
        Clock::Turning { .. } => State::Turning,
        Clock::Resting { .. } => State::Resting,
        Clock::LongAgo => State::LongAgo,
        Clock::SetBack { latest } => State::SetBack(latest),
    }
}

/// The moment up to which is counted: plugging in stops the clock.
fn counted_to(bench: Bench) -> Moment {
    bench.plugged.get().unwrap_or_else(|| bench.now.get())
}

fn running(bench: Bench) -> String {
    let now = bench.now.get();
    match bench.clock(now) {
        Clock::Turning { since } => clock_digits(since.until(now)),
        _ => String::new(),
    }
}

fn resting(bench: Bench) -> AnyView {
    let rests = move || match bench.clock(counted_to(bench)) {
        Clock::Resting { turned, dead, .. } => {
            Some((turned.seconds(), dead.map(job::Rest::seconds)))
        }
        _ => None,
    };
    let turned = move || rests().map_or(String::new(), |(turned, _)| clock_digits(turned));
    let dead = move || {
        let dead = rests()?.1?;
        Some(paragraph(
            "soft",
            [words::DEAD, ": ", &clock_digits(dead)].concat(),
        ))
    };
    let next = Memo::new(move |_| bench.next().map(|next| next.rest));
    let left = move || {
        let (turned, _) = rests()?;
        let rest = next.get()?;
        let left = rest.get() - turned.get();
        Some(if left > 0.0 {
            view! {
                <p class="rest-next">{words::next(rest)} " " <strong>{words::in_time(&clock_digits(Seconds::new(left)))}</strong></p>
            }
            .into_any()
        } else {
            paragraph("rest-next", words::long_enough(rest))
        })
    };
    view! {
        {face(words::RESTED, turned)}
        {live(dead)}
        {live(left)}
    }
    .into_any()
}

fn face(of: &'static str, digits: impl Fn() -> String + Send + 'static) -> AnyView {
    view! {
        <p class="rest-face">
            <span class="soft">{of}</span>
            // Read out on demand, not each second.
            <span class="rest-digits" role="timer" aria-live="off">{live(digits)}</span>
        </p>
    }
    .into_any()
}

fn ways_to_stop(bench: Bench, state: State) -> AnyView {
    let typed = RwSignal::new(String::new());
    let stop_now = move |_| {
        let at = device::now();
        bench.remark.set(None);
        bench.open.stopped(Stop { at, ran: None });
    };
    let enter = move || match stopped(&typed.get_untracked(), device::now()) {
        Err(why) => bench.remark.set(Some(not_entered(why))),
        Ok(stop) => {
            bench.remark.set(None);
            bench.open.stopped(stop);
        }
    };
    let class = if state == State::Turning || state == State::Unknown {
        "button wide"
    } else {
        "button quiet wide"
    };
    view! {
        {button(class, words::STOPPED_NOW, stop_now)}
        <details class="fold">
            <summary><span>{words::STOPPED_BEFORE}</span></summary>
            <form
                class="minutes-ago"
                on:submit=move |event| {
                    event.prevent_default();
                    enter();
                }
            >
                {short_input(MINUTES, words::MINUTES_AGO, ("decimal", "8"), move |text| typed.set(text))}
                <button class="button">{words::ENTER}</button>
            </form>
        </details>
        {keep_awake()}
    }
    .into_any()
}

/// Keeps the screen on while this page is open, where the browser can.
fn keep_awake() -> Option<AnyView> {
    device::can_stay_awake().then(|| {
        view! {
            <label class="radio">
                <input
                    type="checkbox"
                    on:change=move |event| device::stay_awake(event_target_checked(&event))
                />
                <span>{words::STAY_AWAKE}</span>
            </label>
        }
        .into_any()
    })
}

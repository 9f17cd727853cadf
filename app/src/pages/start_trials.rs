//! Tries to start after a rest: the clock, the next try, and what the tries say.

mod clock;
mod earlier;
mod picture;

use diagnosis::{Clock, Gate, KitDeclared, Machine, Refrigerant, StartKit, StartTrials, answered};
use job::{Moment, SetUp, StartTrial, Tried};
use leptos::prelude::*;
use measure::start_trials::NextTrial;
use wording::{Words, gates, page, start_trials as words};

use self::clock::clock_panel;
use self::earlier::earlier_try;
use self::picture::{key, picture};
use crate::device;
use crate::forms::start_trial::{Meters, NotEntered, PLUGGED_IN, Try};
use crate::frame::Heading;
use crate::open_job::OpenJob;
use crate::parts::live::live;
use crate::parts::plain::{button, link, paragraph, refusal, section_heading, short_field};
use crate::parts::radio::Radio;
use crate::route::{Place, Route};

/// What the page holds beside the job.
#[derive(Clone, Copy)]
struct Bench {
    open: OpenJob,
    /// With which start gear the next try is.
    set_up: RwSignal<SetUp>,
    /// Plugged in, and not said yet what happened.
    plugged: RwSignal<Option<Moment>>,
    /// What meters showed at the try that goes on.
    meters: RwSignal<Meters>,
    /// Why the last thing couldn't be entered.
    remark: RwSignal<Option<String>>,
    /// Whether every try is listed, however many there are.
    all: RwSignal<bool>,
    /// Now, to the second.
    now: RwSignal<Moment>,
    trials: Memo<StartTrials>,
}

impl Bench {
    fn new(open: OpenJob) -> Self {
        let now = RwSignal::new(device::now());
        device::while_here_each_second(move || now.set(device::now()));
        let trials = Memo::new(move |_| {
            let minute = open.session().now();
            open.with_job(|job| StartTrials::of(job, minute))
        });
        let last = trials.with_untracked(|trials| {
            let tries = trials.series.iter().flat_map(|series| &series.tries);
            let last = tries.max_by_key(|(_, one)| one.at.unix_milliseconds());
            last.map_or(SetUp::Original, |(_, one)| one.set_up)
        });
        let (check, item) = PLUGGED_IN;
        let kept = open.draft(check, item);
        let plugged = kept.and_then(|text| moment_of(&text));
        Self {
            open,
            set_up: RwSignal::new(last),
            plugged: RwSignal::new(plugged),
            meters: RwSignal::new(Meters::default()),
            remark: RwSignal::new(None),
            all: RwSignal::new(false),
            now,
            trials,
        }
    }

    /// The rest as of a moment.
    fn clock(self, at: Moment) -> Clock {
        self.open.with_job(|job| StartTrials::timed(job, at).0)
    }

    fn plug_in(self) {
        let now = device::now();
        let (check, item) = PLUGGED_IN;
        let text = now.unix_milliseconds().to_string();
        self.open.keep_draft(check, item, &text);
        self.remark.set(None);
        self.plugged.set(Some(now));
        device::focus(OUTCOME);
    }

    fn unplug(self) {
        let (check, item) = PLUGGED_IN;
        self.open.clear_draft(check, item);
        self.plugged.set(None);
    }

    fn tried(self, outcome: Tried) {
        let Some(at) = self.plugged.get_untracked() else {
            return;
        };
        let set_up = self.set_up.get_untracked();
        let one = Try {
            set_up,
            at,
            is_cold: None,
        };
        let meters = self.meters.get_untracked();
        let done = one.done(untrack(|| self.clock(at)), outcome);
        if self.enter(done.and_then(|trial| meters.added_to(trial))) {
            self.meters.set(Meters::default());
            self.unplug();
        }
    }

    /// Enters a try, or says why not.
    fn enter(self, tried: Result<StartTrial, NotEntered>) -> bool {
        match tried {
            Err(why) => {
                self.remark.set(Some(not_entered(why)));
                false
            }
            Ok(trial) => {
                self.remark.set(None);
                self.open.session().announce(trial.outcome.words());
                self.open.tried(trial)
            }
        }
    }

    /// The rest that would teach most with the set-up that is chosen.
    fn next(self) -> Option<NextTrial> {
        let set_up = self.set_up.get();
        self.open
            .with_job(|job| self.trials.with(|trials| trials.next_rest(job, set_up)))
    }
}

/// A moment that was kept as milliseconds.
fn moment_of(text: &str) -> Option<Moment> {
    let offset = device::now().offset_minutes();
    Moment::new(text.parse().ok()?, offset).ok()
}

/// Why something was not entered, in words.
fn not_entered(why: NotEntered) -> String {
    match why {
        NotEntered::NoStop => words::NEEDS_STOP,
        NotEntered::Turns => words::STILL_TURNS,
        NotEntered::SetBack => words::CLOCK_SET_BACK,
        NotEntered::NotMinutes => words::NOT_MINUTES,
        NotEntered::Rest(_) => words::NO_REST,
        NotEntered::NotAReading => words::NOT_A_READING,
        NotEntered::Milliamps => words::MILLIAMPS,
        NotEntered::NotVolts => words::NOT_VOLTS,
    }
    .to_owned()
}

/// Where the outcomes are asked.
const OUTCOME: &str = "try-outcome";

/// Tries to start.
#[component]
pub fn StartTrialsScreen() -> impl IntoView {
    let bench = Bench::new(OpenJob::here());
    let open = bench.open;
    let closed = move || {
        let reasons = open.assessment().with(|known| {
            let closed = matches!(known.gates.trials, Gate::Closed(_));
            closed.then(|| gates(&known.gates))
        });
        reasons.map(|reasons| {
            view! {
                <section class="notice">
                    {section_heading(words::CLOSED)}
                    {reasons.into_iter().map(|reason| paragraph("", reason)).collect::<Vec<_>>()}
                </section>
            }
            .into_any()
        })
    };
    let is_closed = move || {
        let known = open.assessment();
        known.with(|known| matches!(known.gates.trials, Gate::Closed(_)))
    };
    let kit = Route::Job(open.id(), Place::Check(StartKit::NAME.to_owned()));
    view! {
        <div class="screen start-trials">
            <Heading text=words::TITLE/>
            {live(closed)}
            {live(move || (!is_closed()).then(|| paragraph("remark", words::MIND)))}
            {live(move || clock_panel(bench))}
            {live(move || (!is_closed()).then(|| next_try(bench)))}
            {live(move || bench.remark.get().map(refusal))}
            {live(move || so_far(bench))}
            {link("door", kit.link(), wording::start_kit::TITLE)}
            {link("button quiet wide", Route::Job(open.id(), Place::Do).link(), page::BACK_TO_JOB)}
        </div>
    }
}

/// With what, the button that begins a try, and what came of it.
fn next_try(bench: Bench) -> AnyView {
    if bench.plugged.get().is_some() {
        let outcomes = Tried::ALL.map(|outcome| {
            button("button wide", outcome.words(), move |_| {
                bench.tried(outcome);
            })
        });
        return view! {
            <section class="asked">
                <h2 id=OUTCOME tabindex="-1">{words::WHAT_HAPPENED}</h2>
                <div class="outcomes">{outcomes.into_iter().collect_view()}</div>
                {meters(bench)}
                {button("plain", words::NOT_AFTER_ALL, move |_| bench.unplug())}
            </section>
        }
        .into_any();
    }
    let (clock, pause) = bench.trials.with(|trials| (trials.clock, trials.pause));
    if matches!(clock, Clock::Turning { .. }) {
        return paragraph("soft", words::LET_IT_RUN);
    }
    let locale = bench.open.session().locale();
    let has_to_wait = pause.map(|pause| paragraph("remark", words::pause(pause, &locale)));
    let may = has_to_wait.is_none();
    view! {
        <section>
            {set_ups(bench)}
            {has_to_wait}
            {may.then(|| button("button wide", words::PLUG_IN, move |_| bench.plug_in()))}
            {earlier_try(bench)}
        </section>
    }
    .into_any()
}

/// What meters showed, for those who have any.
fn meters(bench: Bench) -> AnyView {
    let highest = move |text| bench.meters.update(|meters| meters.highest = text);
    let lowest = move |text| bench.meters.update(|meters| meters.lowest = text);
    view! {
        <details class="fold">
            <summary><span>{words::METERS}</span></summary>
            {short_field("try-highest", words::HIGHEST, ("decimal", "12"), highest)}
            {short_field("try-lowest", words::LOWEST, ("decimal", "12"), lowest)}
        </details>
    }
    .into_any()
}

/// The start gear of the next try. No kit where gas burns or nobody knows, but one declared for it.
fn set_ups(bench: Bench) -> AnyView {
    let is_refused = bench.open.with_job(|job| {
        let burns = answered::<Refrigerant>(job).is_none_or(Refrigerant::burns);
        burns && !KitDeclared::suits(job, &Machine::of(job))
    });
    let offered = SetUp::ALL
        .into_iter()
        .filter(|set_up| *set_up != SetUp::Kit || !is_refused);
    let radios = offered.map(|set_up| {
        view! {
            <Radio
                group="set-up"
                text=set_up.words()
                hint=set_up.hint().unwrap_or_default()
                chosen=Signal::derive(move || bench.set_up.get() == set_up)
                choose=Callback::new(move |()| bench.set_up.set(set_up))
            />
        }
    });
    view! {
        <fieldset class="radios">
            <legend>{words::WITH}</legend>
            {radios.collect::<Vec<_>>()}
            {is_refused.then(|| paragraph("soft small", words::NO_KIT))}
        </fieldset>
    }
    .into_any()
}

/// So many tries of a set-up are listed at first: the latest, which may have to be taken back. A list of hundreds would be
/// drawn anew after each try.
const LISTED: usize = 12;

/// The picture, the same in words, and each try with the way to take it back.
fn so_far(bench: Bench) -> AnyView {
    let locale = bench.open.session().locale();
    let most = if bench.all.get() { usize::MAX } else { LISTED };
    bench.trials.with(|trials| {
        if trials.series.is_empty() {
            return paragraph("soft", words::WHY);
        }
        let series = trials.series.iter().map(|series| {
            let said = [words::needs(&series.threshold), words::is_ordinary(series)];
            let gains = words::gains(series);
            let said = said.into_iter().chain(gains).filter(|one| !one.is_empty());
            let count = series.tries.len();
            let rest = (count > most).then(|| {
                button("button quiet wide", words::show_all(count), move |_| {
                    bench.all.set(true)
                })
            });
            let tries = series.tries.iter().skip(count.saturating_sub(most));
            let tries = tries.map(|(id, one)| {
                let id = id.clone();
                let entered = bench
                    .open
                    .with_job(|job| job.entry(&id).map(|entry| entry.at));
                let later = entered.is_some_and(|at| words::is_later(one.at, at));
                let later = later.then_some(words::ENTERED_LATER);
                let of = [
                    words::tried(one, &locale),
                    ", ".to_owned(),
                    locale.moment(one.at),
                ]
                .concat();
                view! {
                    <li>
                        <span>{of} {later.map(|later| format!(", {later}"))}</span>
                        {button("plain", words::TAKE_BACK, move |_| { bench.open.strike(&id); })}
                    </li>
                }
            });
            view! {
                <h3>{series.set_up.words()}</h3>
                {said.map(|one| paragraph("", one)).collect::<Vec<_>>()}
                {rest}
                <ul class="tries">{tries.collect::<Vec<_>>()}</ul>
            }
        });
        let series: Vec<_> = series.collect();
        view! {
            <section>
                {section_heading(words::TRIES)}
                {picture(trials)}
                {key()}
                {words::close_together(trials).map(|said| paragraph("remark", said))}
                {series}
                {paragraph("soft", words::HOT_IS_NOT_COLD)}
                {paragraph("soft", words::LIMITS)}
            </section>
        }
        .into_any()
    })
}

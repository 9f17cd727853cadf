//! Bands and verdicts on courses drawn from the stated prior, from a fixed seed; and on courses
//! that the model doesn't know, with a fast and a slow part.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

mod draws;

use draws::Draws;
use measure::cool_down::{
    CabinetKind, CoolDown, CoolDownPrior, Goal, Reach, ReachBand, TemperatureAt, TemperatureBand,
    Verdict,
};
use quantity::{Celsius, Seconds};

const COURSES: usize = 1_000;
/// Of those that are only counted and printed.
const UNSTATED: usize = 200;
const HOURS: [f64; 4] = [0.5, 1.0, 2.0, 4.0];
const GOAL: Goal = Goal {
    target: Celsius::new(-18.0),
    within: Seconds::new(86_400.0),
};
/// Fading times of the noise, as the model states them.
const FADES: [f64; 4] = [60.0, 240.0, 900.0, 3600.0];

/// One cabinet's truth, in the words of the stated model and written down again here.
struct Course {
    start: f64,
    end: f64,
    time_constant: f64,
    delay: f64,
    /// Kelvins of the way that go quickly, and how many times as fast.
    quick: f64,
    quicker: f64,
    noise: f64,
    fade: f64,
}

impl Course {
    fn draw(prior: &CoolDownPrior, draws: &mut Draws) -> Self {
        let mut log_normal = |median: f64, spread: f64| median * libm::exp(spread * draws.normal());
        let time_constant = log_normal(prior.time_constant.get(), prior.time_constant_spread);
        let delay = log_normal(prior.delay.get(), prior.delay_spread);
        let noise = log_normal(prior.noise.get(), prior.noise_spread);
        Self {
            start: prior.start.get() + prior.start_deviation.get() * draws.normal(),
            end: prior.end.get() + prior.end_deviation.get() * draws.normal(),
            time_constant,
            delay,
            quick: prior.quick.get() + prior.quick_deviation.get() * draws.normal(),
            quicker: 6.0,
            noise,
            fade: FADES[(draws.share() * 4.0) as usize],
        }
    }

    /// One part alone.
    fn in_one_part(mut self, _: &mut Draws) -> Self {
        self.quick = 0.0;
        self
    }

    /// Any share up to half of the way, three to twelve times as fast.
    fn in_two_parts(mut self, draws: &mut Draws) -> Self {
        self.quick = 0.5 * draws.share() * (self.start - self.end);
        self.quicker = 3.0 * libm::exp(libm::log(4.0) * draws.share());
        self
    }

    fn at(&self, at: f64) -> f64 {
        let since = (at - self.delay).max(0.0) / self.time_constant;
        let slow = self.start - self.end - self.quick;
        self.end + slow * libm::exp(-since) + self.quick * libm::exp(-since * self.quicker)
    }

    /// One reading a minute.
    fn readings(&self, hours: f64, draws: &mut Draws) -> Vec<TemperatureAt> {
        let keeps = libm::exp(-60.0 / self.fade);
        let fresh = self.noise * libm::sqrt(1.0 - keeps * keeps);
        let mut off = self.noise * draws.normal();
        (0..=(hours * 60.0) as u32)
            .map(|minute| {
                let at = f64::from(minute) * 60.0;
                let reading = TemperatureAt {
                    at: Seconds::new(at),
                    temperature: Celsius::new(self.at(at) + off),
                };
                off = keeps * off + fresh * draws.normal();
                reading
            })
            .collect()
    }

    fn gets_there(&self) -> bool {
        self.at(GOAL.within.get()) <= GOAL.target.get()
    }

    /// When it gets there: infinity if it doesn't in time.
    fn reaches(&self) -> f64 {
        let (mut least, mut most) = (0.0, GOAL.within.get());
        if !self.gets_there() {
            return f64::INFINITY;
        }
        for _ in 0..60 {
            let middle = 0.5 * (least + most);
            if self.at(middle) <= GOAL.target.get() {
                most = middle;
            } else {
                least = middle;
            }
        }
        most
    }
}

/// What was counted at one length of log.
#[derive(Default)]
struct Counts {
    courses: usize,
    ends_held: usize,
    later_held: usize,
    /// Bands of the time to reach the target with both ends within the day.
    times: usize,
    times_held: usize,
    sure: usize,
    sure_and_wrong: usize,
    /// How many of those would be wrong if each probability were right.
    wrong_expected: f64,
    verdicts: usize,
    verdicts_wrong: usize,
    left_out: usize,
}

impl Counts {
    fn take(&mut self, course: &Course, found: &CoolDown) {
        let holds = |band: TemperatureBand, truth: f64| {
            usize::from((band.from.get()..=band.to.get()).contains(&truth))
        };
        self.courses += 1;
        self.ends_held += holds(found.end(), course.end);
        let later = 2.0 * found.last().get();
        let band = found.temperature_at(Seconds::new(later));
        self.later_held += holds(band, course.at(later));
        if let ReachBand {
            from: Reach::After(from),
            to: Reach::After(to),
            ..
        } = found.reach(&GOAL)
            && to.get() > 1.0
        {
            self.times += 1;
            let truth = course.reaches();
            self.times_held += usize::from((from.get()..=to.get()).contains(&truth));
        }
        let chance = found.chance(&GOAL);
        let sure = chance.max(1.0 - chance) > 0.9;
        self.sure += usize::from(sure);
        self.sure_and_wrong += usize::from(sure && (chance > 0.5) != course.gets_there());
        if sure {
            self.wrong_expected += chance.min(1.0 - chance);
        }
        let (said, will) = match found.verdict(&GOAL) {
            Verdict::WillReach { .. } => (true, true),
            Verdict::WillNot { .. } => (true, false),
            Verdict::TooEarly { .. } => (false, false),
        };
        self.verdicts += usize::from(said);
        self.verdicts_wrong += usize::from(said && will != course.gets_there());
        self.left_out += usize::from(found.left_out().get() > 0.0);
    }

    fn share(part: usize, whole: usize) -> f64 {
        part as f64 / whole as f64
    }

    fn print(&self, what: &str, hours: f64) {
        let percent = |part, whole| 100.0 * Self::share(part, whole);
        println!(
            "{what}, {hours} h: end {:.1} %, twice as late {:.1} %, time {:.1} % of {}; over 0.9 \
             sure {:.1} %, of all wrong {:.2} % where {:.2} % are to be expected; verdicts {:.1} %, \
             of all wrong {:.2} %; something left out {:.1} %",
            percent(self.ends_held, self.courses),
            percent(self.later_held, self.courses),
            percent(self.times_held, self.times),
            self.times,
            percent(self.sure, self.courses),
            percent(self.sure_and_wrong, self.courses),
            100.0 * self.wrong_expected / self.courses as f64,
            percent(self.verdicts, self.courses),
            percent(self.verdicts_wrong, self.courses),
            percent(self.left_out, self.courses),
        );
    }
}

fn counted(
    courses: usize,
    hours: f64,
    seed: u64,
    shape: impl Fn(Course, &mut Draws) -> Course,
) -> Counts {
    let prior = CabinetKind::ChestFreezer.prior();
    let mut draws = Draws::new(seed);
    let mut counts = Counts::default();
    for _ in 0..courses {
        let course = Course::draw(&prior, &mut draws);
        let course = shape(course, &mut draws);
        let readings = course.readings(hours, &mut draws);
        counts.take(&course, &CoolDown::of(&readings, &prior).unwrap());
    }
    counts
}

#[test]
fn nine_in_ten_bands_hold_the_truth_and_verdicts_are_right() {
    for hours in HOURS {
        let counts = counted(COURSES, hours, 1876, |course, _| course);
        counts.print("as the model says", hours);
        let held = 0.86..=0.94;
        let ends = Counts::share(counts.ends_held, COURSES);
        assert!(held.contains(&ends), "{hours} h: {ends}");
        let later = Counts::share(counts.later_held, COURSES);
        assert!(held.contains(&later), "{hours} h: {later}");
        if counts.times >= 100 {
            let times = Counts::share(counts.times_held, counts.times);
            assert!(held.contains(&times), "{hours} h: {times}");
        }
        // Of those over 0.9 sure no more are wrong than their own probabilities say, but for chance.
        let expected = counts.wrong_expected;
        let wrong = counts.sure_and_wrong as f64;
        assert!(
            wrong <= expected + 3.0 * libm::sqrt(expected),
            "{hours} h: {wrong}"
        );
        let wrong = Counts::share(counts.verdicts_wrong, COURSES);
        assert!(wrong <= 0.01, "{hours} h: {wrong}");
    }
}

#[test]
fn courses_that_the_model_does_not_state_are_counted_and_printed() {
    for hours in HOURS {
        counted(UNSTATED, hours, 1877, Course::in_one_part).print("in one part", hours);
        counted(UNSTATED, hours, 1877, Course::in_two_parts).print("in two parts", hours);
    }
}

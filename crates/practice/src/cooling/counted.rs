//! What is counted of one length of log.

use measure::cool_down::{CoolDown, Goal, Reach, ReachBand, TemperatureBand, Verdict};
use quantity::Seconds;

use super::outcome::{Fate, Outcome};

/// The lengths of log, in hours.
pub const HOURS: [f64; 5] = [0.5, 1.0, 2.0, 4.0, 8.0];
/// From here on one is said to be sure.
const SURE: f64 = 0.9;

/// Counts over many courses.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Counted {
    /// All courses.
    pub courses: usize,
    /// Bands of temperatures at the hours of [`HOURS`] still to come and at 12 and 24 h: held, all.
    pub later: (usize, usize),
    /// Bands of the temperature at twice the log's length: held of all courses.
    pub twice: usize,
    /// Bands of the end: held.
    pub ends: usize,
    /// Truths below the band of the end: it ends colder than was said.
    pub ends_colder: usize,
    /// Bands of the time to the goal, of courses that weren't there yet: held, all. "Not within a day" is an
    /// end of a band too.
    pub times: (usize, usize),
    /// Those of them with both ends within the day: held, all.
    pub closed_times: (usize, usize),
    /// Over 0.9 sure: wrong, all.
    pub sure: (usize, usize),
    /// Verdicts given: wrong, all.
    pub verdicts: (usize, usize),
    /// By fate, those of which a verdict says what becomes of them, and all.
    pub hopeless: (usize, usize),
    /// The same of good ones.
    pub good: (usize, usize),
    /// Borderline ones of which either verdict was given, and all.
    pub borderline: (usize, usize),
    /// Hopeless ones of which that is over 0.9 sure.
    pub hopeless_sure: usize,
    /// Widths of the ends' bands, in kelvins, added up.
    pub widths: f64,
}

impl Counted {
    /// Adds one course with what is made of its beginning.
    pub fn take(&mut self, truth: &Outcome, found: &CoolDown, goal: &Goal) {
        let holds = |band: TemperatureBand, truth: f64| {
            usize::from((band.from.get()..=band.to.get()).contains(&truth))
        };
        let last = found.last().get();
        self.courses += 1;
        let end = found.end();
        self.ends += holds(end, truth.end);
        self.ends_colder += usize::from(truth.end < end.from.get());
        self.widths += end.to.get() - end.from.get();
        self.twice += holds(
            found.temperature_at(Seconds::new(2.0 * last)),
            truth.at(2.0 * last),
        );
        for hours in HOURS.into_iter().chain([12.0, 24.0]) {
            let at = hours * 3600.0;
            if at > last + 60.0 {
                self.later.0 += holds(found.temperature_at(Seconds::new(at)), truth.at(at));
                self.later.1 += 1;
            }
        }
        self.take_time(truth, found.reach(goal), goal, last);
        self.take_verdict(truth, found, goal);
    }

    fn take_time(&mut self, truth: &Outcome, band: ReachBand, goal: &Goal, last: f64) {
        let seconds = |reach: Reach| match reach {
            Reach::After(at) => at.get(),
            Reach::Beyond => f64::INFINITY,
        };
        let at = truth.reaches(goal).unwrap_or(f64::INFINITY);
        if at <= last {
            return;
        }
        let (from, to) = (seconds(band.from), seconds(band.to));
        let held = usize::from((from..=to).contains(&at));
        self.times.0 += held;
        self.times.1 += 1;
        if to.is_finite() {
            self.closed_times.0 += held;
            self.closed_times.1 += 1;
        }
    }

    fn take_verdict(&mut self, truth: &Outcome, found: &CoolDown, goal: &Goal) {
        let gets_there = truth.gets_there(goal);
        let chance = found.chance(goal);
        if chance.max(1.0 - chance) > SURE {
            self.sure.0 += usize::from((chance > 0.5) != gets_there);
            self.sure.1 += 1;
        }
        let said = match found.verdict(goal) {
            Verdict::WillReach { .. } => Some(true),
            Verdict::WillNot { .. } => Some(false),
            Verdict::TooEarly { .. } => None,
        };
        if let Some(will) = said {
            self.verdicts.0 += usize::from(will != gets_there);
            self.verdicts.1 += 1;
        }
        let (group, counts) = match truth.fate(goal) {
            Fate::Hopeless => {
                self.hopeless_sure += usize::from(1.0 - chance > SURE);
                (&mut self.hopeless, said == Some(false))
            }
            Fate::Good => (&mut self.good, said == Some(true)),
            Fate::Borderline => (&mut self.borderline, said.is_some()),
        };
        group.0 += usize::from(counts);
        group.1 += 1;
    }

    /// One line of a table.
    #[must_use]
    pub fn line(&self) -> String {
        let percent = |(part, whole): (usize, usize)| 100.0 * part as f64 / whole.max(1) as f64;
        let all = self.courses;
        format!(
            "{all:5} | later {:5.1} twice {:5.1} end {:5.1} (colder {:4.1}, {:4.1} K wide) | time {:5.1} of \
             {:4}, closed {:5.1} of {:4} | sure {:5.1} wrong {:4.2} of all | verdicts {:5.1} wrong {:4.2} of \
             all | hopeless {:5.1} (over 0.9 {:5.1}) of {:4} good {:5.1} of {:4} borderline {:5.1} of {:4}",
            percent(self.later),
            percent((self.twice, all)),
            percent((self.ends, all)),
            percent((self.ends_colder, all)),
            self.widths / all.max(1) as f64,
            percent(self.times),
            self.times.1,
            percent(self.closed_times),
            self.closed_times.1,
            percent((self.sure.1, all)),
            percent((self.sure.0, all)),
            percent((self.verdicts.1, all)),
            percent((self.verdicts.0, all)),
            percent(self.hopeless),
            percent((self.hopeless_sure, self.hopeless.1)),
            self.hopeless.1,
            percent(self.good),
            self.good.1,
            percent(self.borderline),
            self.borderline.1,
        )
    }
}

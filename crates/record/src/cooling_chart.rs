//! Where a cool-down lies on its sheet: time across, temperature upwards. Nothing but geometry.

use quantity::Seconds;

/// The sheet, in its own units: about a CSS pixel on a narrow phone.
pub const WIDTH: f64 = 328.0;
/// With room for the times below.
pub const HEIGHT: f64 = 240.0;
const LEFT: f64 = 34.0;
const RIGHT: f64 = WIDTH - 8.0;
const TOP: f64 = 12.0;
/// The foot of the plot.
pub const FOOT: f64 = HEIGHT - 26.0;
/// Numbers along the side: no more than this many.
const MOST_STEPS: f64 = 6.0;
/// Times along the foot: no more than this many.
const MOST_TIMES: f64 = 5.0;
/// What is drawn ahead of the last reading: as long again, at least this long, and no further
/// than a day after it was switched on, unless readings go on.
const AHEAD: f64 = 7_200.0;
const DAY: f64 = 86_400.0;

/// The scales of one picture, in seconds since it was switched on and degrees of the reader's
/// scale.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CoolingChart {
    until: f64,
    bottom: f64,
    top: f64,
    step: f64,
}

impl CoolingChart {
    /// How far ahead a picture goes whose last reading was so long after switching on.
    #[must_use]
    pub fn until(last: Seconds) -> Seconds {
        let last = last.get().max(0.0);
        let ahead = (last + last.max(AHEAD)).min(DAY);
        Seconds::new(ahead.max(last * 1.02))
    }

    /// Room for all these degrees until a time. `None` where there are none, or no time.
    #[must_use]
    pub fn of(until: Seconds, degrees: impl Iterator<Item = f64>) -> Option<Self> {
        let known = degrees.filter(|one| one.is_finite());
        let (least, most) = known.fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), one| {
            (least.min(one), most.max(one))
        });
        if !(least <= most && until.get() > 0.0 && until.get().is_finite()) {
            return None;
        }
        let step = [1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0]
            .into_iter()
            .find(|step| (most - least) / step <= MOST_STEPS - 1.0)
            .unwrap_or(200.0);
        let bottom = libm::floor(least / step) * step;
        let top = (libm::ceil(most / step) * step).max(bottom + step);
        Some(Self {
            until: until.get(),
            bottom,
            top,
            step,
        })
    }

    /// How far from the left a time lies.
    #[must_use]
    pub fn x(&self, after: Seconds) -> f64 {
        LEFT + (after.get() / self.until).clamp(0.0, 1.0) * (RIGHT - LEFT)
    }

    /// How far from the top a temperature lies. What is beyond ends at the edge.
    #[must_use]
    pub fn y(&self, degrees: f64) -> f64 {
        let share = (degrees - self.bottom) / (self.top - self.bottom);
        FOOT - share.clamp(0.0, 1.0) * (FOOT - TOP)
    }

    /// The ends of the plot across.
    #[must_use]
    pub const fn sides(&self) -> (f64, f64) {
        (LEFT, RIGHT)
    }

    /// The top of the plot.
    #[must_use]
    pub const fn head(&self) -> f64 {
        TOP
    }

    /// The numbers along the side, from below.
    #[must_use]
    pub fn degrees(&self) -> Vec<f64> {
        let steps = libm::round((self.top - self.bottom) / self.step) as u32;
        let at = |step: u32| self.bottom + f64::from(step) * self.step;
        (0..=steps).map(at).collect()
    }

    /// The times along the foot, after switching on, that are round on a clock which showed so many
    /// seconds since midnight at that moment.
    #[must_use]
    pub fn times(&self, clock: f64) -> Vec<Seconds> {
        const ROUND: [f64; 9] = [
            900.0, 1_800.0, 3_600.0, 7_200.0, 10_800.0, 14_400.0, 21_600.0, 43_200.0, 86_400.0,
        ];
        let step = ROUND
            .into_iter()
            .find(|step| self.until / step <= MOST_TIMES)
            .unwrap_or_else(|| libm::ceil(self.until / (MOST_TIMES * DAY)) * DAY);
        let first = libm::ceil(clock / step) * step - clock;
        let count = libm::floor((self.until - first) / step) as i32;
        (0..=count)
            .map(|place| Seconds::new(first + f64::from(place) * step))
            .collect()
    }

    /// Moments at which a curve is drawn, so close together that it looks smooth.
    #[must_use]
    pub fn samples(until: Seconds) -> Vec<Seconds> {
        const SAMPLES: u32 = 48;
        let at = |place| until.get() * f64::from(place) / f64::from(SAMPLES);
        (0..=SAMPLES).map(|place| Seconds::new(at(place))).collect()
    }

    /// A line through points, as a path.
    #[must_use]
    pub fn line(&self, points: &[(Seconds, f64)]) -> String {
        let mut path = String::new();
        for (place, (after, degrees)) in points.iter().enumerate() {
            path.push(if place == 0 { 'M' } else { 'L' });
            path.push_str(&format!("{:.1} {:.1}", self.x(*after), self.y(*degrees)));
        }
        path
    }

    /// A band between a lower and an upper edge, as a closed path.
    #[must_use]
    pub fn band(&self, points: &[(Seconds, f64, f64)]) -> String {
        let upper: Vec<_> = points.iter().map(|one| (one.0, one.2)).collect();
        let lower: Vec<_> = points.iter().rev().map(|one| (one.0, one.1)).collect();
        if upper.is_empty() {
            return String::new();
        }
        let back = self.line(&lower).replacen('M', "L", 1);
        [&self.line(&upper), &back, "Z"].concat()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn chart(until: f64, degrees: &[f64]) -> CoolingChart {
        CoolingChart::of(Seconds::new(until), degrees.iter().copied()).unwrap()
    }

    #[test]
    fn every_degree_lies_on_the_sheet_and_colder_lies_lower() {
        for degrees in [
            &[21.3, -18.0][..],
            &[4.0],
            &[0.0, 0.0],
            &[70.0, -4.0],
            &[-17.9, -18.1],
        ] {
            let chart = chart(3_600.0, degrees);
            for one in degrees {
                assert!((TOP..=FOOT).contains(&chart.y(*one)), "{degrees:?}");
            }
            let marks = chart.degrees();
            assert!(marks.len() >= 2 && marks.len() <= 7, "{marks:?}");
            assert!(
                marks
                    .windows(2)
                    .all(|pair| chart.y(pair[1]) < chart.y(pair[0]))
            );
            assert!(marks[0] <= degrees.iter().copied().fold(f64::INFINITY, f64::min));
        }
    }

    #[test]
    fn nothing_is_drawn_of_nothing() {
        assert_eq!(
            CoolingChart::of(Seconds::new(60.0), std::iter::empty()),
            None
        );
        assert_eq!(
            CoolingChart::of(Seconds::new(60.0), [f64::NAN].into_iter()),
            None
        );
        assert_eq!(CoolingChart::of(Seconds::new(0.0), [1.0].into_iter()), None);
        assert_eq!(chart(60.0, &[1.0]).band(&[]), "");
    }

    #[test]
    fn times_are_round_on_the_clock_and_on_the_sheet() {
        for (until, clock) in [
            (7_200.0, 47_100.0),
            (86_400.0, 1.0),
            (1_000.0, 86_399.0),
            (600_000.0, 60.0),
        ] {
            let chart = chart(until, &[1.0]);
            let times = chart.times(clock);
            assert!((1..=6).contains(&times.len()), "{until}: {times:?}");
            for after in &times {
                assert!((0.0..=until).contains(&after.get()), "{until}: {times:?}");
                let shown = clock + after.get();
                assert!((shown / 900.0 - libm::round(shown / 900.0)).abs() < 1e-9);
            }
        }
    }

    #[test]
    fn the_picture_goes_as_far_ahead_as_back_but_not_beyond_a_day() {
        let until = |last: f64| CoolingChart::until(Seconds::new(last)).get();
        assert!((until(0.0) - 7_200.0).abs() < 1e-9);
        assert!((until(3.0 * 3_600.0) - 6.0 * 3_600.0).abs() < 1e-9);
        assert!((until(20.0 * 3_600.0) - DAY).abs() < 1e-9);
        assert!(until(2.0 * DAY) > 2.0 * DAY);
    }

    #[test]
    fn a_band_goes_there_above_and_comes_back_below() {
        let chart = chart(100.0, &[0.0, 10.0]);
        let at = Seconds::new;
        let band = chart.band(&[(at(0.0), 2.0, 4.0), (at(100.0), 6.0, 8.0)]);
        let numbers: Vec<f64> = band
            .trim_end_matches('Z')
            .split(['M', 'L', ' '])
            .filter_map(|one| one.parse().ok())
            .collect();
        let expected = [(0.0, 4.0), (100.0, 8.0), (100.0, 6.0), (0.0, 2.0)];
        let expected = expected.map(|(after, degrees)| [chart.x(at(after)), chart.y(degrees)]);
        for (found, expected) in numbers.iter().zip(expected.as_flattened()) {
            assert!((found - expected).abs() < 0.06, "{band}");
        }
        assert_eq!(numbers.len(), 8);
    }
}

//! Where a start kit's curve lies on its sheet: capacitance across, by its logarithm, torque
//! upwards.

use diagnosis::KitCurve;
use measure::start_kit::KitPoint;
use quantity::Farads;

/// The sheet, in its own units: about a CSS pixel on a narrow phone.
pub(super) const WIDTH: f64 = 328.0;
/// With room for the numbers below.
pub(super) const HEIGHT: f64 = 236.0;
/// The plot within it.
const LEFT: f64 = 22.0;
const RIGHT: f64 = WIDTH - 6.0;
const TOP: f64 = 10.0;
/// The foot of the plot.
pub(super) const FOOT: f64 = HEIGHT - 24.0;
/// Numbers along the foot are at least this far apart.
const APART: f64 = 34.0;
/// Numbers along the side: no more than this many.
const MOST_STEPS: f64 = 6.0;

/// The scales of one curve.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Plot {
    least: f64,
    most: f64,
    top: f64,
    step: f64,
}

impl Plot {
    /// Room for all points of a curve. `None` for one without points.
    pub(super) fn of(curve: &KitCurve) -> Option<Self> {
        let ends = curve.points.first().zip(curve.points.last())?;
        let highest = curve.points.iter().map(|one| one.torque.ninetieth.get());
        let highest = highest.fold(1.0, f64::max);
        let step = [1.0, 2.0, 5.0, 10.0, 20.0, 50.0]
            .into_iter()
            .find(|step| highest / step <= MOST_STEPS)
            .unwrap_or(100.0);
        Some(Self {
            least: ends.0.capacitance.get(),
            most: ends.1.capacitance.get(),
            top: libm::ceil(highest / step) * step,
            step,
        })
    }

    /// How far from the left a capacitance lies.
    pub(super) fn x(&self, capacitance: Farads) -> f64 {
        let within = capacitance.get().clamp(self.least, self.most);
        let share = libm::log(within / self.least) / libm::log(self.most / self.least);
        LEFT + share * (RIGHT - LEFT)
    }

    /// How far from the top a torque lies, in times that of the plain device. A curve that turns
    /// backwards ends at the foot.
    pub(super) fn y(&self, torque: f64) -> f64 {
        FOOT - (torque / self.top).clamp(0.0, 1.0) * (FOOT - TOP)
    }

    /// The numbers along the side.
    pub(super) fn torques(&self) -> Vec<f64> {
        let steps = libm::round(self.top / self.step) as u32;
        (0..=steps)
            .map(|step| f64::from(step) * self.step)
            .collect()
    }

    /// The numbers along the foot, in microfarads: 1, 2, 3 and 5 of each decade, as far as they
    /// don't touch.
    pub(super) fn microfarads(&self) -> Vec<f64> {
        let mut marks: Vec<f64> = Vec::new();
        for decade in -1..5 {
            for digit in [1.0, 2.0, 3.0, 5.0] {
                let micro = digit * libm::pow(10.0, f64::from(decade));
                let farads = micro * 1e-6;
                let place = |micro: f64| self.x(Farads::new(micro * 1e-6));
                let apart = marks
                    .last()
                    .is_none_or(|last| place(micro) - place(*last) >= APART);
                if farads >= self.least && farads <= self.most && apart {
                    marks.push(micro);
                }
            }
        }
        marks
    }

    /// The line through the medians, as a path.
    pub(super) fn middle(&self, curve: &KitCurve) -> String {
        self.line(curve.points.iter(), |one| one.torque.median.get(), 'M')
    }

    /// The band from the 10th to the 90th percentile, as a closed path.
    pub(super) fn band(&self, curve: &KitCurve) -> String {
        let there = self.line(curve.points.iter(), |one| one.torque.ninetieth.get(), 'M');
        let back = self.line(curve.points.iter().rev(), |one| one.torque.tenth.get(), 'L');
        [&there, &back, "Z"].concat()
    }

    fn line<'a>(
        &self,
        points: impl Iterator<Item = &'a KitPoint>,
        torque: impl Fn(&KitPoint) -> f64,
        first: char,
    ) -> String {
        let mut path = String::new();
        for (place, one) in points.enumerate() {
            path.push(if place == 0 { first } else { 'L' });
            let (x, y) = (self.x(one.capacitance), self.y(torque(one)));
            path.push_str(&format!("{x:.1} {y:.1}"));
        }
        path
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn plot(least: f64, most: f64, top: f64) -> Plot {
        let step = 1.0;
        Plot {
            least: least * 1e-6,
            most: most * 1e-6,
            top,
            step,
        }
    }

    #[test]
    fn equal_factors_lie_equally_far_apart_and_what_is_beyond_lies_at_the_edge() {
        let plot = plot(10.0, 1_000.0, 4.0);
        let x = |micro: f64| plot.x(Farads::new(micro * 1e-6));
        assert!((x(100.0) - x(10.0) - (x(1_000.0) - x(100.0))).abs() < 1e-9);
        assert!((x(1.0) - x(10.0)).abs() < 1e-9 && (x(1e4) - RIGHT).abs() < 1e-9);
    }

    #[test]
    fn more_torque_lies_higher_and_torque_backwards_at_the_foot() {
        let plot = plot(10.0, 1_000.0, 4.0);
        assert!(plot.y(3.0) < plot.y(1.0));
        assert!((plot.y(-2.0) - FOOT).abs() < 1e-9 && (plot.y(4.0) - TOP).abs() < 1e-9);
        assert_eq!(plot.torques(), [0.0, 1.0, 2.0, 3.0, 4.0]);
    }

    #[test]
    fn numbers_along_the_foot_never_touch_each_other_nor_the_edge() {
        for (least, most) in [(10.0, 60.0), (30.0, 1_200.0), (70.0, 700.0), (4.0, 3_000.0)] {
            let plot = plot(least, most, 4.0);
            let marks = plot.microfarads();
            assert!(marks.len() >= 2, "{least} to {most}: {marks:?}");
            let at = |micro: f64| plot.x(Farads::new(micro * 1e-6));
            assert!(
                marks
                    .windows(2)
                    .all(|pair| at(pair[1]) - at(pair[0]) >= APART)
            );
            assert!(marks.iter().all(|one| (least..=most).contains(one)));
        }
    }
}

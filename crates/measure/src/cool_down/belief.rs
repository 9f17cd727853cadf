//! What is believed of time constant and delay: a grid that fits itself to them.

use super::evidence::{Ends, Held};
use super::noise::FADES;
use super::prior::Beforehand;
use super::thinned::Thinned;
use crate::ranking::ranked;

/// How a grid is laid out.
#[derive(Debug, Clone, Copy)]
struct Layout {
    /// Points to each side of the middle.
    reach: i32,
    /// How far out they reach, in standard deviations.
    far: f64,
    /// Places of σ to each side of its likeliest.
    noises: i32,
}

/// First widely, then roughly until the grid fits, then finely once.
const WIDE: Layout = Layout {
    reach: 8,
    far: 3.2,
    noises: 0,
};
const ROUGH: Layout = Layout {
    reach: 4,
    far: 3.5,
    noises: 0,
};
const FINE: Layout = Layout {
    reach: 7,
    far: 4.3,
    noises: 3,
};
const MOST_PASSES: usize = 12;
/// So many of the places that stand out on the wide grid are followed up: all of a course may be
/// taken for its quick part, which is a second place far from the first.
const PLACES: usize = 3;
/// A place with less than this share of the most is left out.
const FAINT_PLACE: f64 = 1e-4;
/// Two grids are one where their middles lie within so many standard deviations.
const SAME: f64 = 2.0;
/// The grid fits once a pass finds no less than this share of the spread that it was laid out for.
const FITS: f64 = 0.75;
/// What is less likely than this share of the likeliest is left out.
const FAINT: f64 = 1e-7;

/// One curve out of all that may be true, with how likely it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Part {
    pub(super) weight: f64,
    pub(super) time_constant: f64,
    pub(super) delay: f64,
    pub(super) ends: Ends,
}

/// A place and two axes, in standard deviations of ln τ and ln d beforehand.
#[derive(Debug, Clone, Copy)]
struct Frame {
    middle: [f64; 2],
    /// Each axis is one standard deviation long.
    axes: [[f64; 2]; 2],
}

/// Mean and covariance over a grid.
#[derive(Debug, Clone, Copy)]
struct Moments {
    mean: [f64; 2],
    covariance: [f64; 3],
}

/// What is believed over one grid.
struct Grid {
    frame: Frame,
    points: Vec<([f64; 2], Part)>,
    /// ln of the sum of all weights times a cell's area.
    log_mass: f64,
}

/// What may be true of a log, its weights summing to one.
pub(super) fn parts(log: &Thinned, beforehand: &Beforehand) -> Vec<Part> {
    let mut held = Held::new(log, beforehand);
    let wide = Frame {
        middle: [0.0; 2],
        axes: [[1.0, 0.0], [0.0, 1.0]],
    };
    let wide = Grid::over(wide, WIDE, &mut held, beforehand);
    let mut found: Vec<Grid> = Vec::new();
    for place in wide.peaks() {
        let grid = fitted(place, &mut held, beforehand);
        if found.iter().all(|other| !other.frame.holds(&grid.frame)) {
            found.push(grid);
        }
    }
    let most = |grids: &[Grid]| {
        let masses = grids.iter().map(|grid| grid.log_mass);
        masses.fold(f64::NEG_INFINITY, f64::max)
    };
    let top = most(&found);
    found.retain(|grid| grid.log_mass > top + libm::log(FAINT_PLACE));
    let fine: Vec<Grid> = found
        .iter()
        .map(|grid| Grid::over(grid.frame, FINE, &mut held, beforehand))
        .collect();
    let top = most(&fine);
    let mut parts: Vec<Part> = fine.into_iter().flat_map(|grid| grid.parts(top)).collect();
    parts.retain(|part| part.weight > FAINT);
    let whole: f64 = parts.iter().map(|part| part.weight).sum();
    for part in &mut parts {
        part.weight /= whole;
    }
    parts
}

/// From a place on the wide grid: shrinks, turns and moves until the grid fits what is there.
fn fitted(place: [f64; 2], held: &mut Held<'_>, beforehand: &Beforehand) -> Grid {
    let step = WIDE.step();
    let mut frame = Frame {
        middle: place,
        axes: [[step, 0.0], [0.0, step]],
    };
    let mut grid = Grid::over(frame, ROUGH, held, beforehand);
    for _ in 0..MOST_PASSES {
        let next = Frame::around(&moments(&grid.points), &frame, ROUGH.step());
        let fits = frame.area() * FITS <= next.area();
        frame = next;
        grid = Grid::over(frame, ROUGH, held, beforehand);
        if fits {
            break;
        }
    }
    grid.frame = Frame::around(&moments(&grid.points), &frame, ROUGH.step());
    grid
}

impl Layout {
    fn step(&self) -> f64 {
        self.far / f64::from(self.reach)
    }
}

impl Grid {
    fn over(frame: Frame, layout: Layout, held: &mut Held<'_>, beforehand: &Beforehand) -> Self {
        let (points, top) = frame.points(layout, held, beforehand);
        let whole: f64 = points.iter().map(|(_, part)| part.weight).sum();
        let step = layout.step();
        Self {
            frame,
            points,
            log_mass: top + libm::log(whole * frame.area() * step * step),
        }
    }

    /// Its parts, weighing together as much as its mass against the most.
    fn parts(self, most: f64) -> impl Iterator<Item = Part> {
        let whole: f64 = self.points.iter().map(|(_, part)| part.weight).sum();
        let factor = libm::exp(self.log_mass - most) / whole;
        self.points.into_iter().map(move |(_, part)| Part {
            weight: part.weight * factor,
            ..part
        })
    }

    /// Places of the wide grid with none likelier beside them, the likeliest first.
    fn peaks(&self) -> Vec<[f64; 2]> {
        let side = 2 * WIDE.reach as usize + 1;
        // Weights may all but one vanish, so their logarithms are held against each other.
        let heights: Vec<f64> = self
            .points
            .chunks(FADES.len())
            .map(|fades| {
                fades
                    .iter()
                    .map(|one| one.1.ends.log_evidence)
                    .fold(f64::NEG_INFINITY, f64::max)
            })
            .zip(self.points.chunks(FADES.len()))
            .map(|(height, fades)| height - half_square(fades[0].0))
            .collect();
        let is_peak = |place: &usize| {
            let (row, column) = (place / side, place % side);
            let rows = row.saturating_sub(1)..=(row + 1).min(side - 1);
            rows.flat_map(|row| {
                let columns = column.saturating_sub(1)..=(column + 1).min(side - 1);
                columns.map(move |column| row * side + column)
            })
            .all(|other| heights[other] <= heights[*place])
        };
        let peaks: Vec<usize> = (0..heights.len()).filter(is_peak).collect();
        let peaks = ranked(peaks, |place| heights[*place]);
        let peaks = peaks.into_iter().take(PLACES);
        peaks
            .map(|place| self.points[place * FADES.len()].0)
            .collect()
    }
}

fn half_square(place: [f64; 2]) -> f64 {
    0.5 * (place[0] * place[0] + place[1] * place[1])
}

impl Frame {
    /// All points of the grid with what is believed there; the likeliest weighs one.
    fn points(
        &self,
        layout: Layout,
        held: &mut Held<'_>,
        beforehand: &Beforehand,
    ) -> (Vec<([f64; 2], Part)>, f64) {
        let Layout { reach, noises, .. } = layout;
        let step = layout.step();
        let mut points = Vec::new();
        let mut top = f64::NEG_INFINITY;
        for row in -reach..=reach {
            for column in -reach..=reach {
                let along = [f64::from(row) * step, f64::from(column) * step];
                let place = self.at(along);
                let [t, d] = [
                    (beforehand.log_time_constant, place[0]),
                    (beforehand.log_delay, place[1]),
                ]
                .map(|(normal, away)| libm::exp(normal.mean + normal.deviation * away));
                let known = -half_square(place);
                for ends in held.against(t, d, noises) {
                    let weight = ends.log_evidence + known;
                    top = f64::max(top, weight);
                    let part = Part {
                        weight,
                        time_constant: t,
                        delay: d,
                        ends,
                    };
                    points.push((place, part));
                }
            }
        }
        for (_, part) in &mut points {
            part.weight = libm::exp(part.weight - top);
        }
        (points, top)
    }

    /// Whether another grid's middle lies within this one's reach.
    fn holds(&self, other: &Self) -> bool {
        let [one, two] = self.axes;
        let away = [
            other.middle[0] - self.middle[0],
            other.middle[1] - self.middle[1],
        ];
        let length = |axis: [f64; 2]| axis[0] * axis[0] + axis[1] * axis[1];
        // The axes stand upright on each other.
        let along = |axis: [f64; 2]| (away[0] * axis[0] + away[1] * axis[1]) / length(axis);
        along(one).abs() < SAME && along(two).abs() < SAME
    }

    fn at(&self, along: [f64; 2]) -> [f64; 2] {
        let [one, other] = self.axes;
        [
            self.middle[0] + along[0] * one[0] + along[1] * other[0],
            self.middle[1] + along[0] * one[1] + along[1] * other[1],
        ]
    }

    fn area(&self) -> f64 {
        let [one, other] = self.axes;
        (one[0] * other[1] - one[1] * other[0]).abs()
    }

    /// Laid around what was found, along its own axes. A spread below the grid's step can't be
    /// seen, so half a step along each old axis is added: the grid shrinks a little at a time.
    fn around(found: &Moments, old: &Self, step: f64) -> Self {
        let [mut xx, mut xy, mut yy] = found.covariance;
        for axis in old.axes {
            let [x, y] = axis.map(|one| 0.4 * step * one);
            xx += x * x;
            xy += x * y;
            yy += y * y;
        }
        let half = 0.5 * (xx - yy);
        let root = libm::sqrt(half * half + xy * xy);
        let mean = 0.5 * (xx + yy);
        let (large, small) = (mean + root, (mean - root).max(1e-18));
        // An eigenvector of the larger one; where both are alike any direction is one.
        let (x, y) = if half >= 0.0 {
            (half + root, xy)
        } else {
            (xy, root - half)
        };
        let length = libm::sqrt(x * x + y * y);
        let (x, y) = if length > 0.0 {
            (x / length, y / length)
        } else {
            (1.0, 0.0)
        };
        let (long, short) = (libm::sqrt(large), libm::sqrt(small));
        Self {
            middle: found.mean,
            axes: [[long * x, long * y], [-short * y, short * x]],
        }
    }
}

fn moments(points: &[([f64; 2], Part)]) -> Moments {
    let whole: f64 = points.iter().map(|(_, part)| part.weight).sum();
    let mean_of = |of: &dyn Fn(&[f64; 2]) -> f64| {
        let terms = points.iter().map(|(place, part)| part.weight * of(place));
        terms.sum::<f64>() / whole
    };
    let mean = [mean_of(&|place| place[0]), mean_of(&|place| place[1])];
    let spread = |row: usize, column: usize| {
        mean_of(&|place| (place[row] - mean[row]) * (place[column] - mean[column]))
    };
    Moments {
        mean,
        covariance: [spread(0, 0), spread(0, 1), spread(1, 1)],
    }
}

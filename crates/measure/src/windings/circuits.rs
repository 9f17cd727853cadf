//! The circuits that three pins can hide, as densities of what a meter shows between them.

use super::evidence::{Fit, Row};
use super::motor::Motor;
use super::priors::Normal;
use super::readings::Number;
use super::{Assignment, Pair, Role};

/// One unknown that every number shows.
pub(super) fn single(numbers: &[Number], leads: Normal, prior: impl Fn(f64) -> f64) -> f64 {
    if numbers.is_empty() {
        return 1.0;
    }
    let rows: Vec<Row<1>> = numbers.iter().map(|n| Row::new(n, [1.0])).collect();
    Fit::of(&rows, leads).map_or(0.0, |fit| fit.evidence(|[ohms]| prior(ohms)))
}

/// Run and start winding, from none to three numbers.
pub(super) fn two_unknowns(
    numbers: &[Number],
    assignment: Assignment,
    leads: Normal,
    motor: &Motor,
) -> f64 {
    let parts = |pair: Pair| match assignment.role(pair.opposite()) {
        Role::Start => [1.0, 0.0],
        Role::Run => [0.0, 1.0],
        Role::Common => [1.0, 1.0],
    };
    match numbers {
        [] => 1.0,
        [number] => {
            let [run, start] = parts(number.pair);
            single(numbers, leads, |ohms| marginal(ohms, run, start, motor))
        }
        _ => {
            let rows: Vec<Row<2>> = numbers.iter().map(|n| Row::new(n, parts(n.pair))).collect();
            Fit::of(&rows, leads).map_or(0.0, |fit| {
                fit.evidence(|[run, start]| motor.density(run, start))
            })
        }
    }
}

/// The density of one pair alone, the other winding integrated out by the midpoint rule.
fn marginal(ohms: f64, run: f64, start: f64, motor: &Motor) -> f64 {
    if ohms <= 0.0 {
        return 0.0;
    }
    const STEPS: u32 = 40;
    let both = run + start > 1.5;
    (0..STEPS)
        .map(|step| {
            let place = (f64::from(step) + 0.5) / f64::from(STEPS);
            if both {
                motor.density(ohms * place, ohms * (1.0 - place)) * ohms / f64::from(STEPS)
            } else {
                // The other winding from a twentieth to twenty times this one.
                let log = (2.0 * place - 1.0) * 3.0;
                let other = ohms * libm::exp(log);
                let density = if run > 0.5 {
                    motor.density(ohms, other)
                } else {
                    motor.density(other, ohms)
                };
                density * other * 6.0 / f64::from(STEPS)
            }
        })
        .sum()
}

/// Windings shorted against each other are a star: what both share lies in the common leg.
/// `None` without three numbers.
pub(super) fn star(
    numbers: &[Number],
    assignment: Assignment,
    leads: Normal,
    motor: &Motor,
) -> Option<f64> {
    // What is shared is of the order of the run winding; half of each winding is left on average.
    let share = Normal::new(-1.2, 1.0);
    Some(
        star_fit(numbers, assignment, leads)?.evidence(|[run, start, shared]| {
            let size = Normal::new(share.mean + libm::log(run.max(1e-6)), share.deviation);
            4.0 * motor.density(2.0 * run, 2.0 * start) * size.log_density(shared)
        }),
    )
}

/// Windings burnt into one lump: next to nothing between any two pins, each leg of the star
/// anything up to half an ohm. `None` without three numbers.
pub(super) fn dead_short(numbers: &[Number], assignment: Assignment, leads: Normal) -> Option<f64> {
    const LARGEST_LEG: f64 = 0.5;
    let fit = star_fit(numbers, assignment, leads)?;
    Some(fit.evidence(|legs| {
        let inside = legs.iter().all(|leg| (0.0..=LARGEST_LEG).contains(leg));
        f64::from(u8::from(inside)) / (LARGEST_LEG * LARGEST_LEG * LARGEST_LEG)
    }))
}

fn star_fit(numbers: &[Number], assignment: Assignment, leads: Normal) -> Option<Fit<3>> {
    let parts = |pair: Pair| match assignment.role(pair.opposite()) {
        Role::Start => [1.0, 0.0, 1.0],
        Role::Run => [0.0, 1.0, 1.0],
        Role::Common => [1.0, 1.0, 0.0],
    };
    let rows: Vec<Row<3>> = numbers.iter().map(|n| Row::new(n, parts(n.pair))).collect();
    Fit::of(&rows, leads)
}

/// Run, start and bridge of a triangle whose pairs read (common–run, common–start, start–run),
/// with the Jacobian of that change of variables. `None` where no triangle reads like that.
fn delta([run, start, series]: [f64; 3]) -> Option<(f64, f64, f64, f64)> {
    let common_leg = (run + start - series) / 2.0;
    let run_leg = (run + series - start) / 2.0;
    let start_leg = (start + series - run) / 2.0;
    if common_leg <= 0.0 || run_leg <= 0.0 || start_leg <= 0.0 {
        return None;
    }
    let products = common_leg * run_leg + run_leg * start_leg + start_leg * common_leg;
    // Star to delta: each side is the sum of products over the opposite leg.
    let (r, s, p) = (
        products / start_leg,
        products / run_leg,
        products / common_leg,
    );
    // |d(r, s, p)/d(legs)| is products³ over the square of the legs' product; the legs are half
    // sums of the pairs, which brings in one half.
    let legs = common_leg * run_leg * start_leg;
    let jacobian = 0.5 * products * products * products / (legs * legs);
    Some((r, s, p, jacobian))
}

/// A start device across start and run: three numbers against run, start and the device, whose
/// size over the run winding is distributed as `device`. `None` without three numbers.
pub(super) fn bridged(
    numbers: &[Number],
    assignment: Assignment,
    leads: Normal,
    motor: &Motor,
    device: Normal,
) -> Option<f64> {
    let row = |pair: Pair, parts: [f64; 3]| {
        let number = numbers.iter().find(|number| number.pair == pair)?;
        Some(Row::new(number, parts))
    };
    let rows = [
        row(assignment.run_pair(), [1.0, 0.0, 0.0])?,
        row(assignment.start_pair(), [0.0, 1.0, 0.0])?,
        row(assignment.series_pair(), [0.0, 0.0, 1.0])?,
    ];
    let fit = Fit::of(&rows, leads)?;
    Some(fit.evidence(|pairs| {
        delta(pairs).map_or(0.0, |(run, start, bridge, jacobian)| {
            let size = Normal::new(device.mean + libm::log(run), device.deviation);
            motor.density(run, start) * size.log_density(bridge) * jacobian
        })
    }))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_triangle_is_found_again_from_its_pairs() {
        // 4, 7 and 13 Ω: run, start and a start device across both.
        let parallel = |one: f64, other: f64| one * other / (one + other);
        let pairs = [
            parallel(4.0, 20.0),
            parallel(7.0, 17.0),
            parallel(11.0, 13.0),
        ];
        let (run, start, bridge, _) = delta(pairs).unwrap();
        for (found, expected) in [(run, 4.0), (start, 7.0), (bridge, 13.0)] {
            assert!((found - expected).abs() < 1e-9, "{found}");
        }
    }

    #[test]
    fn the_jacobian_of_a_triangle_is_its_numerical_derivative() {
        let pairs = [3.4, 5.0, 6.1];
        let step = 1e-5;
        let sides = |pairs: [f64; 3]| {
            let (run, start, bridge, _) = delta(pairs).unwrap();
            [run, start, bridge]
        };
        let mut slopes = [[0.0; 3]; 3];
        for (column, slope) in slopes.iter_mut().enumerate() {
            let (mut up, mut down) = (pairs, pairs);
            up[column] += step;
            down[column] -= step;
            let (up, down) = (sides(up), sides(down));
            *slope = core::array::from_fn(|row| (up[row] - down[row]) / (2.0 * step));
        }
        let [a, b, c] = slopes;
        let determinant = a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0])
            + a[2] * (b[0] * c[1] - b[1] * c[0]);
        let (_, _, _, jacobian) = delta(pairs).unwrap();
        assert!(
            (jacobian / determinant.abs() - 1.0).abs() < 1e-6,
            "{jacobian} {determinant}"
        );
    }
}

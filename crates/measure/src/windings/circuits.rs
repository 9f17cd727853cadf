//! The circuits that three pins can hide, and what is thought of their resistances.

use super::evidence::Between;
use super::log_normal::LogNormal;
use super::priors::{MainsPriors, Normal, WindingPriors};

/// Run and start winding that meet at the common pin.
pub(super) fn two_windings(&[run, start]: &[f64; 2]) -> [Between<2>; 3] {
    [
        (run, [1.0, 0.0]),
        (start, [0.0, 1.0]),
        (run + start, [1.0, 1.0]),
    ]
}

/// A star: what both windings share since they touch lies in the common leg.
pub(super) fn star(&[run, start, shared]: &[f64; 3]) -> [Between<3>; 3] {
    [
        (run + shared, [1.0, 0.0, 1.0]),
        (start + shared, [0.0, 1.0, 1.0]),
        (run + start, [1.0, 1.0, 0.0]),
    ]
}

/// A triangle: a start device across run and start.
pub(super) fn triangle(&[run, start, device]: &[f64; 3]) -> [Between<3>; 3] {
    let whole = run + start + device;
    // Each side lies beside the two others in series.
    let beside = |one: f64, others: f64| {
        let own = others / whole;
        let other = one / whole;
        (one * own, own * own, other * other)
    };
    let (common_run, r_own, r_other) = beside(run, start + device);
    let (common_start, s_own, s_other) = beside(start, run + device);
    let (start_run, d_own, d_other) = beside(device, run + start);
    [
        (common_run, [r_own, r_other, r_other]),
        (common_start, [s_other, s_own, s_other]),
        (start_run, [d_other, d_other, d_own]),
    ]
}

/// Three equal windings: any two pins have the same between them.
pub(super) fn equal(&[pair]: &[f64; 1]) -> [Between<1>; 3] {
    [(pair, [1.0]); 3]
}

/// What is thought of motors for one mains, whole and damaged.
#[derive(Debug, Clone, Copy)]
pub(super) struct Motors {
    /// Run and start winding of usual and of unusual motors, with the share of each.
    pub(super) whole: [(f64, LogNormal<2>); 2],
    /// Run and start winding where one of them lost turns, with the share of each way.
    pub(super) shorted: [(f64, LogNormal<2>); 4],
    /// Run leg, start leg and common leg where both windings touch, with the share of that.
    pub(super) touching: (f64, LogNormal<3>),
    /// Run winding, start winding and start device.
    pub(super) bridged: LogNormal<3>,
}

/// How often shorted windings are burnt to one lump (judgement).
pub(super) const LUMP: f64 = 0.05;

/// The three legs of windings burnt to one lump: the same for every motor.
pub(super) fn lump(priors: &WindingPriors) -> LogNormal<3> {
    LogNormal::of([
        ([1.0, 0.0, 0.0], priors.lump_leg),
        ([0.0, 1.0, 0.0], priors.lump_leg),
        ([0.0, 0.0, 1.0], priors.lump_leg),
    ])
}

impl Motors {
    pub(super) fn of(motors: &MainsPriors, priors: &WindingPriors) -> Self {
        let (run, ratio) = (motors.run, motors.ratio);
        let windings = |run, ratio| LogNormal::of([([1.0, 1.0], run), ([0.0, 1.0], ratio)]);
        let shorted = |direction, left| {
            LogNormal::of([([1.0, 1.0], run), ([0.0, 1.0], ratio), (direction, left)])
        };
        let touching = LogNormal::of([
            ([1.0, 1.0, 1.0], run),
            ([0.0, 1.0, 0.0], ratio),
            ([1.0, 0.0, 0.0], priors.untouched_share),
            ([0.0, 1.0, 0.0], priors.untouched_share),
            ([0.0, 0.0, 1.0], priors.shared_part),
        ]);
        Self {
            whole: [
                (1.0 - priors.unusual, windings(run, ratio)),
                (
                    priors.unusual,
                    windings(
                        Normal::new(run.mean, priors.unusual_run_deviation),
                        priors.unusual_ratio,
                    ),
                ),
            ],
            // How often it is which way is judgement; what is left to 1 is [`LUMP`].
            shorted: [
                (0.30, shorted([1.0, 0.0], priors.shorted_share)),
                (0.30, shorted([0.0, 1.0], priors.shorted_share)),
                (0.05, shorted([1.0, 0.0], priors.dead_share)),
                (0.05, shorted([0.0, 1.0], priors.dead_share)),
            ],
            touching: (0.25, touching),
            bridged: LogNormal::of([
                ([1.0, 1.0, 1.0], run),
                ([0.0, 1.0, 0.0], ratio),
                ([0.0, 0.0, 1.0], priors.start_device),
            ]),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn slopes_match_differences<const K: usize>(
        circuit: fn(&[f64; K]) -> [Between<K>; 3],
        ohms: [f64; K],
    ) {
        let step = 1e-6;
        for k in 0..K {
            let (mut up, mut down) = (ohms, ohms);
            up[k] += step;
            down[k] -= step;
            let (up, down) = (circuit(&up), circuit(&down));
            for (pair, (_, slopes)) in circuit(&ohms).iter().enumerate() {
                let slope = (up[pair].0 - down[pair].0) / (2.0 * step);
                assert!((slope - slopes[k]).abs() < 1e-7, "{k} {pair} {slope}");
            }
        }
    }

    #[test]
    fn the_slopes_of_every_circuit_are_its_numerical_derivatives() {
        slopes_match_differences(two_windings, [4.0, 7.0]);
        slopes_match_differences(star, [2.0, 3.0, 1.5]);
        slopes_match_differences(triangle, [4.0, 7.0, 13.0]);
        slopes_match_differences(equal, [5.0]);
    }

    #[test]
    fn a_triangle_reads_what_parallel_circuits_give() {
        // 4 and 7 Ω with a 13 Ω start device left on: by hand 4∥20, 7∥17, 11∥13.
        let [common_run, common_start, start_run] = triangle(&[4.0, 7.0, 13.0]);
        for (found, expected) in [
            (common_run.0, 80.0 / 24.0),
            (common_start.0, 119.0 / 24.0),
            (start_run.0, 143.0 / 24.0),
        ] {
            assert!((found - expected).abs() < 1e-12, "{found} {expected}");
        }
    }
}

//! Steps of stiff equations in time: a Rosenbrock method that keeps what is conserved.
//!
//! Answers: what is the state a while later? The second-order method of two stages with
//! γ = 1 − 1/√2 (J. G. Verwer et al., SIAM J. Sci. Comput. 20 (1999) 1456, from memory): stable
//! however stiff, and of second order whatever stands for the Jacobian, so that one may serve
//! several steps.
//!
//! Must never know: what the numbers mean.

/// γ = 1 − 1/√2.
const GAMMA: f64 = 1.0 - core::f64::consts::FRAC_1_SQRT_2;

/// Equations in two halves, so that sums which must not change don't: what flows, from the state,
/// and what flows do to it, which is linear. Each flow leaves one place and enters another, so
/// whatever the Jacobian's error, no step makes or loses anything.
pub(crate) trait Balance<const N: usize> {
    /// What flows.
    type Flows;
    /// The flows in a state.
    fn flows(&self, state: &[f64; N]) -> Self::Flows;
    /// How much faster one flows than another, divided by a step.
    fn slope(&self, more: &Self::Flows, less: &Self::Flows, step: f64) -> Self::Flows;
    /// What flows do to each number a second; linear.
    fn change(&self, flows: &Self::Flows) -> [f64; N];
    /// A small and a tolerable difference of each number; 0 leaves it to explicit steps.
    fn scale(&self) -> &[f64; N];
}

/// A set of named flows, with the slope between two of them.
macro_rules! flows {
    ($(#[$doc:meta])* $name:ident { $($(#[$one:meta])* $field:ident),* ; $($(#[$many:meta])* $list:ident),* }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Default)]
        pub(crate) struct $name {
            $($(#[$one])* pub(crate) $field: f64,)*
            $($(#[$many])* pub(crate) $list: [f64; 3],)*
        }

        impl $name {
            /// How much faster these flow than others, divided by a step.
            pub(crate) fn slope(&self, less: &Self, step: f64) -> Self {
                let over = |more: f64, less: f64| (more - less) / step;
                Self {
                    $($field: over(self.$field, less.$field),)*
                    $($list: [0, 1, 2].map(|k: usize| over(self.$list[k], less.$list[k])),)*
                }
            }
        }
    };
}
pub(crate) use flows;

/// The inverse of I − γhJ in triangles, for one step length.
#[derive(Debug, Clone)]
struct Triangles<const N: usize> {
    rows: [[f64; N]; N],
    order: [usize; N],
    step: f64,
}

/// What an integration remembers from step to step. Copies behave alike.
#[derive(Debug, Clone)]
pub(crate) struct Steps<const N: usize> {
    jacobian: Option<Box<[[f64; N]; N]>>,
    triangles: Option<Box<Triangles<N>>>,
    age: u32,
    next: f64,
}

/// After so many steps a Jacobian is made anew.
const OLDEST: u32 = 24;
/// No step is shorter than this share of what is asked for at once: there the error is taken as it
/// is, so that nothing ever hangs. The method stays stable whatever the step.
const SHORTEST: f64 = 0.01;

impl<const N: usize> Steps<N> {
    pub(crate) const fn new() -> Self {
        Self {
            jacobian: None,
            triangles: None,
            age: 0,
            next: 0.1,
        }
    }

    /// Something jumped: look anew.
    pub(crate) fn forget(&mut self) {
        self.jacobian = None;
        self.triangles = None;
        self.next = self.next.min(0.5);
    }

    /// Carries a state over `seconds`.
    pub(crate) fn advance<B: Balance<N>>(&mut self, of: &B, state: &mut [f64; N], seconds: f64) {
        let shortest = seconds * SHORTEST;
        let mut left = seconds;
        while left > 0.0 {
            // Two even steps rather than a long and a tiny one.
            let step = if self.next >= left {
                left
            } else {
                self.next.min((left * 0.5).max(shortest))
            };
            let fresh = self.jacobian.is_none();
            let (after, error) = self.attempt(of, state, step);
            let factor = (0.85 / libm::sqrt(error.max(1e-4))).clamp(0.2, 3.0);
            if error.is_infinite() && step <= shortest {
                // Nothing sensible can be said of what comes: it stays as it was.
                return;
            }
            if error <= 1.0 || step <= shortest {
                *state = after;
                left -= step;
                self.age += 1;
                if self.age >= OLDEST {
                    self.jacobian = None;
                }
                // A step cut short by the end says nothing against longer ones.
                self.next = if step < self.next && factor >= 1.0 {
                    self.next
                } else if (1.0..1.4).contains(&factor) {
                    step
                } else {
                    step * factor
                };
            } else {
                if !fresh {
                    self.jacobian = None;
                }
                self.next = (step * factor.min(0.7)).max(shortest);
            }
        }
    }

    fn attempt<B: Balance<N>>(&mut self, of: &B, state: &[f64; N], step: f64) -> ([f64; N], f64) {
        let start = of.flows(state);
        self.prepare(of, state, &start, step);
        let scale = of.scale();
        let Some(triangles) = &self.triangles else {
            return (*state, 0.0);
        };
        let first = triangles.solved(of.change(&start));
        let mut middle = *state;
        for (value, slope) in middle.iter_mut().zip(&first) {
            *value += step * slope;
        }
        let mut second = of.change(&of.flows(&middle));
        for (value, slope) in second.iter_mut().zip(&first) {
            *value -= 2.0 * slope;
        }
        let second = triangles.solved(second);
        let mut after = *state;
        let mut error: f64 = 0.0;
        for place in 0..N {
            after[place] += step * (1.5 * first[place] + 0.5 * second[place]);
            if scale[place] > 0.0 {
                let off = 0.5 * step * (first[place] + second[place]);
                error = error.max(off.abs() / scale[place]);
            }
        }
        // What is no number must shorten the step, not pass for exact.
        let sensible = after.iter().all(|value| value.is_finite());
        (after, if sensible { error } else { f64::INFINITY })
    }

    fn prepare<B: Balance<N>>(&mut self, of: &B, state: &[f64; N], start: &B::Flows, step: f64) {
        if self.jacobian.is_none() {
            self.jacobian = Some(Box::new(jacobian(of, state, start)));
            self.triangles = None;
            self.age = 0;
        }
        let fits = |kept: &Triangles<N>| (kept.step - step).abs() <= 1e-12 * step;
        if !self.triangles.as_deref().is_some_and(fits)
            && let Some(jacobian) = &self.jacobian
        {
            self.triangles = Some(Box::new(Triangles::new(jacobian, step)));
        }
    }
}

fn jacobian<const N: usize, B: Balance<N>>(
    of: &B,
    state: &[f64; N],
    start: &B::Flows,
) -> [[f64; N]; N] {
    let mut jacobian = [[0.0; N]; N];
    for (column, scale) in of.scale().iter().enumerate() {
        if *scale > 0.0 {
            let difference = scale * 1e-3;
            let mut moved = *state;
            moved[column] += difference;
            let slope = of.slope(&of.flows(&moved), start, difference);
            for (row, change) in of.change(&slope).iter().enumerate() {
                jacobian[row][column] = *change;
            }
        }
    }
    jacobian
}

impl<const N: usize> Triangles<N> {
    /// Gauss's elimination with the largest pivot of each column.
    fn new(jacobian: &[[f64; N]; N], step: f64) -> Self {
        let mut rows = *jacobian;
        let mut order = [0; N];
        for (place, row) in rows.iter_mut().enumerate() {
            for value in row.iter_mut() {
                *value *= -GAMMA * step;
            }
            row[place] += 1.0;
            order[place] = place;
        }
        for pivot in 0..N {
            let largest = (pivot..N)
                .max_by(|&a, &b| rows[a][pivot].abs().total_cmp(&rows[b][pivot].abs()))
                .unwrap_or(pivot);
            rows.swap(pivot, largest);
            order.swap(pivot, largest);
            let top = rows[pivot];
            let head = if top[pivot].abs() > 1e-300 {
                top[pivot]
            } else {
                1e-300
            };
            for row in rows.iter_mut().skip(pivot + 1) {
                if row[pivot] != 0.0 {
                    let factor = row[pivot] / head;
                    row[pivot] = factor;
                    for column in pivot + 1..N {
                        row[column] -= factor * top[column];
                    }
                }
            }
        }
        Self { rows, order, step }
    }

    fn solved(&self, right: [f64; N]) -> [f64; N] {
        let mut x = [0.0; N];
        for row in 0..N {
            let mut value = right[self.order[row]];
            for (column, known) in x.iter().enumerate().take(row) {
                value -= self.rows[row][column] * known;
            }
            x[row] = value;
        }
        for row in (0..N).rev() {
            let mut value = x[row];
            for (column, known) in x.iter().enumerate().skip(row + 1) {
                value -= self.rows[row][column] * known;
            }
            x[row] = value / self.rows[row][row];
        }
        x
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// H. H. Robertson's chemistry, the common test of stiff integrators. Solution at t = 40:
    /// 0.7158, 9.185e−6, 0.2842 (E. Hairer & G. Wanner, Solving Ordinary Differential Equations
    /// II; digits by SciPy's BDF at a tolerance of 1e−12).
    struct Robertson([f64; 3]);

    impl Balance<3> for Robertson {
        type Flows = [f64; 3];
        fn flows(&self, y: &[f64; 3]) -> [f64; 3] {
            [0.04 * y[0], 1e4 * y[1] * y[2], 3e7 * y[1] * y[1]]
        }
        fn slope(&self, more: &[f64; 3], less: &[f64; 3], step: f64) -> [f64; 3] {
            [0, 1, 2].map(|k| (more[k] - less[k]) / step)
        }
        fn change(&self, flows: &[f64; 3]) -> [f64; 3] {
            [
                flows[1] - flows[0],
                flows[0] - flows[1] - flows[2],
                flows[2],
            ]
        }
        fn scale(&self) -> &[f64; 3] {
            &self.0
        }
    }

    fn robertson(tolerance: f64) -> [f64; 3] {
        let of = Robertson([tolerance, tolerance * 1e-4, tolerance]);
        let mut state = [1.0, 0.0, 0.0];
        let mut steps = Steps::new();
        for _ in 0..1000 {
            steps.advance(&of, &mut state, 0.04);
        }
        state
    }

    #[test]
    fn robertsons_chemistry_comes_out_and_nothing_is_lost() {
        let exact = [0.715_827_069, 9.185_534_8e-6, 0.284_163_745];
        for (tolerance, allowed) in [(1e-3, 2e-3), (1e-5, 1e-4)] {
            let state = robertson(tolerance);
            for place in 0..3 {
                let off = (state[place] - exact[place]).abs() / exact[place];
                assert!(off < allowed, "{tolerance}: {state:?}");
            }
            assert!((state.iter().sum::<f64>() - 1.0).abs() < 1e-12);
        }
    }

    #[test]
    fn a_state_that_is_no_number_does_not_hang() {
        let of = Robertson([1e-3; 3]);
        let mut state = [f64::NAN, 0.0, 0.0];
        Steps::new().advance(&of, &mut state, 1.0);
        assert!(state[0].is_nan());
    }
}

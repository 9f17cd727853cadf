//! Which share of the time a compressor runs.

use quantity::{Ratio, Seconds};

/// From here on it ran, or stood.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Switch {
    /// When, from any beginning.
    pub at: Seconds,
    /// Whether it runs from here on.
    pub runs: bool,
}

/// The share of the time that it ran.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RunShare {
    /// From 0 to 1.
    pub share: Ratio,
    /// How far it may be off, as a standard error by the scatter from cycle to cycle; none of a
    /// single cycle, and none where only hours were counted.
    pub standard: Option<Ratio>,
    /// Whole cycles, from one start to the next.
    pub cycles: usize,
    /// The time that was looked at.
    pub span: Seconds,
    /// How long a run lasts in the mean.
    pub run: Seconds,
    /// How long a rest lasts in the mean.
    pub rest: Seconds,
}

/// Why there is no share.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoRunShare {
    /// Not one whole cycle, from a start to the next: it may run without end or rest for long.
    NoWholeCycle,
    /// A time lies before that of the one in front of it, or is no number.
    NotInOrder,
    /// It ran for longer than the time that was looked at, or for less than nothing.
    MoreThanAll,
    /// Nothing goes up and down clearly enough.
    NoSwitching,
}

/// By the times of starts and stops, in rising order; the same state twice is one. Only whole cycles
/// count, from the first start to the last: a part of one would lean to what it has more of.
///
/// # Errors
/// [`NoRunShare`].
///
/// ```
/// use measure::energy::{Switch, run_share};
/// use quantity::Seconds;
/// let switches: Vec<Switch> = [(0.0, true), (12.0, false), (40.0, true), (53.0, false), (80.0, true)]
///     .map(|(minute, runs)| Switch { at: Seconds::new(minute * 60.0), runs })
///     .into();
/// let found = run_share(&switches).unwrap();
/// assert!((found.share.get() - 25.0 / 80.0).abs() < 1e-12);
/// ```
pub fn run_share(switches: &[Switch]) -> Result<RunShare, NoRunShare> {
    let mut turns: Vec<Switch> = switches.to_vec();
    let is_late = |pair: &[Switch]| pair[0].at > pair[1].at;
    if turns.windows(2).any(is_late) || turns.iter().any(|one| !one.at.get().is_finite()) {
        return Err(NoRunShare::NotInOrder);
    }
    turns.dedup_by(|later, kept| later.runs == kept.runs);
    let from_first_start = &turns[usize::from(turns.first().is_some_and(|first| !first.runs))..];
    let cycles: Vec<[f64; 2]> = from_first_start
        .windows(3)
        .step_by(2)
        .map(|turn| {
            [
                (turn[1].at - turn[0].at).get(),
                (turn[2].at - turn[0].at).get(),
            ]
        })
        .collect();
    let count = cycles.len() as f64;
    let ran: f64 = cycles.iter().map(|cycle| cycle[0]).sum();
    let all: f64 = cycles.iter().map(|cycle| cycle[1]).sum();
    if all <= 0.0 {
        return Err(NoRunShare::NoWholeCycle);
    }
    let share = ran / all;
    // The standard error of a ratio of two sums, by its residuals (Cochran, Sampling Techniques, 6.4,
    // from memory).
    let off = |cycle: &[f64; 2]| (cycle[0] - share * cycle[1]) * (cycle[0] - share * cycle[1]);
    let squares: f64 = cycles.iter().map(off).sum();
    let standard = (cycles.len() > 1).then(|| libm::sqrt(count / (count - 1.0) * squares) / all);
    Ok(RunShare {
        share: Ratio::new(share),
        standard: standard.map(Ratio::new),
        cycles: cycles.len(),
        span: Seconds::new(all),
        run: Seconds::new(ran / count),
        rest: Seconds::new((all - ran) / count),
    })
}

/// By a plug-in meter that counts hours of load.
///
/// # Errors
/// [`NoRunShare::MoreThanAll`] where it counted more than there were.
pub fn run_share_of_hours(ran: Seconds, all: Seconds) -> Result<RunShare, NoRunShare> {
    // A meter that counts in whole minutes may be one off.
    let is_possible = ran.get() >= 0.0 && all.get() > 0.0 && ran <= all + Seconds::new(60.0);
    if !(is_possible && all.get().is_finite()) {
        return Err(NoRunShare::MoreThanAll);
    }
    let share = (ran / all).get().min(1.0);
    Ok(RunShare {
        share: Ratio::new(share),
        standard: None,
        cycles: 0,
        span: all,
        run: Seconds::new(share * all.get()),
        rest: Seconds::new((1.0 - share) * all.get()),
    })
}

/// What a course shows while the compressor runs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shows {
    /// It is high: amperes, watts.
    High,
    /// It falls: the air of the cabinet, the evaporator.
    Falling,
    /// It rises: the compressor's shell, the condenser.
    Rising,
}

/// The starts and stops that a course shows, in rising order of time: (when, how much).
///
/// Levels are told apart halfway between the tenth and the ninetieth percentile; of what rises and
/// falls a turn counts once the course has come back from it by a third of that range, so that the
/// steps of a thermometer and a door are none, as a rule (judgement).
///
/// # Errors
/// [`NoRunShare::NotInOrder`], and [`NoRunShare::NoSwitching`] where the range is below `least`.
pub fn switches(
    course: &[(Seconds, f64)],
    shows: Shows,
    least: f64,
) -> Result<Vec<Switch>, NoRunShare> {
    let is_late = |pair: &[(Seconds, f64)]| pair[0].0 > pair[1].0;
    let is_number = |point: &(Seconds, f64)| point.0.get().is_finite() && point.1.is_finite();
    if course.windows(2).any(is_late) || !course.iter().all(is_number) {
        return Err(NoRunShare::NotInOrder);
    }
    let mut sorted: Vec<f64> = course.iter().map(|point| point.1).collect();
    sorted.sort_unstable_by(f64::total_cmp);
    let at = |share: f64| sorted.get((sorted.len() as f64 * share) as usize).copied();
    let (Some(low), Some(high)) = (at(0.1), at(0.9)) else {
        return Err(NoRunShare::NoSwitching);
    };
    let range = high - low;
    if range.is_nan() || range < least || range <= 0.0 {
        return Err(NoRunShare::NoSwitching);
    }
    Ok(match shows {
        Shows::High => levels(course, 0.5 * (low + high)),
        Shows::Falling => turns(course, range / 3.0, false),
        Shows::Rising => turns(course, range / 3.0, true),
    })
}

/// A switch lies between the two readings that differ.
fn levels(course: &[(Seconds, f64)], threshold: f64) -> Vec<Switch> {
    let crossing = |pair: &[(Seconds, f64)]| {
        let runs = pair[1].1 > threshold;
        let at = Seconds::new(0.5 * (pair[0].0.get() + pair[1].0.get()));
        (runs != (pair[0].1 > threshold)).then_some(Switch { at, runs })
    };
    course.windows(2).filter_map(crossing).collect()
}

/// The turning points that the course comes back from by so much.
fn turns(course: &[(Seconds, f64)], back: f64, rises_running: bool) -> Vec<Switch> {
    let mut found = Vec::new();
    let Some(mut extreme) = course.first().copied() else {
        return found;
    };
    let mut lowest = extreme;
    let mut rising: Option<bool> = None;
    for point in course.iter().copied() {
        match rising {
            // Both ends are followed until the first way shows.
            None => {
                extreme = if point.1 > extreme.1 { point } else { extreme };
                lowest = if point.1 < lowest.1 { point } else { lowest };
                if point.1 - lowest.1 >= back {
                    (rising, extreme) = (Some(true), point);
                } else if extreme.1 - point.1 >= back {
                    (rising, extreme) = (Some(false), point);
                }
            }
            Some(up) => {
                let goes_on = if up {
                    point.1 >= extreme.1
                } else {
                    point.1 <= extreme.1
                };
                if goes_on {
                    extreme = point;
                } else if (point.1 - extreme.1).abs() >= back {
                    let runs = rises_running != up;
                    found.push(Switch {
                        at: extreme.0,
                        runs,
                    });
                    (rising, extreme) = (Some(!up), point);
                }
            }
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Forty minutes a cycle, a quarter of it running, a reading a minute, from minute 7 on.
    fn course(of: impl Fn(f64, bool) -> f64) -> Vec<(Seconds, f64)> {
        (7..607)
            .map(|minute| {
                let phase = f64::from(minute % 40);
                (
                    Seconds::new(f64::from(minute) * 60.0),
                    of(phase, phase < 10.0),
                )
            })
            .collect()
    }

    fn share(course: &[(Seconds, f64)], shows: Shows) -> RunShare {
        run_share(&switches(course, shows, 0.5).unwrap()).unwrap()
    }

    #[test]
    fn amperes_and_temperatures_tell_the_same_share() {
        let amps = share(
            &course(|_, runs| if runs { 1.1 } else { 0.02 }),
            Shows::High,
        );
        assert_eq!(amps.cycles, 14);
        assert!((amps.share.get() - 0.25).abs() < 1e-9, "{amps:?}");
        assert!(amps.standard.unwrap().get() < 1e-9);
        let saw = |phase: f64, runs: bool| {
            if runs {
                4.0 - 0.3 * phase
            } else {
                1.0 + 0.1 * (phase - 10.0)
            }
        };
        let air = share(&course(saw), Shows::Falling);
        assert!((air.share.get() - 0.25).abs() < 1e-9, "{air:?}");
        let shell = share(
            &course(|phase, runs| 50.0 - 5.0 * saw(phase, runs)),
            Shows::Rising,
        );
        assert!((shell.share.get() - 0.25).abs() < 1e-9, "{shell:?}");
        assert!((shell.run.get() - 600.0).abs() < 1e-6 && (shell.rest.get() - 1800.0).abs() < 1e-6);
    }

    #[test]
    fn parts_of_cycles_count_for_nothing() {
        let at = |minute: f64, runs| Switch {
            at: Seconds::new(minute * 60.0),
            runs,
        };
        // It stood for two hours before, and runs on after.
        let found = run_share(&[
            at(-120.0, false),
            at(0.0, true),
            at(10.0, false),
            at(40.0, true),
        ])
        .unwrap();
        assert!((found.share.get() - 0.25).abs() < 1e-12);
        assert_eq!((found.cycles, found.standard), (1, None));
        assert_eq!(
            run_share(&[at(0.0, true), at(10.0, false)]),
            Err(NoRunShare::NoWholeCycle)
        );
        assert_eq!(run_share(&[]), Err(NoRunShare::NoWholeCycle));
        assert_eq!(
            run_share(&[at(1.0, true), at(0.0, false)]),
            Err(NoRunShare::NotInOrder)
        );
    }

    #[test]
    fn what_does_not_switch_is_told() {
        let flat = course(|_, _| 1.1);
        assert_eq!(
            switches(&flat, Shows::High, 0.1),
            Err(NoRunShare::NoSwitching)
        );
        assert_eq!(
            switches(&[], Shows::Falling, 0.1),
            Err(NoRunShare::NoSwitching)
        );
    }

    #[test]
    fn hours_of_load_are_a_share_of_all_hours() {
        let hours = |ran: f64, all: f64| {
            run_share_of_hours(Seconds::new(ran * 3600.0), Seconds::new(all * 3600.0))
        };
        assert!((hours(9.0, 24.0).unwrap().share.get() - 0.375).abs() < 1e-12);
        assert_eq!(hours(25.0, 24.0), Err(NoRunShare::MoreThanAll));
        assert_eq!(hours(1.0, 0.0), Err(NoRunShare::MoreThanAll));
    }
}

//! How many tests passed and failed, read from what the test programs print.

use std::iter::Sum;
use std::ops::Add;

/// Passed and failed tests.
#[derive(Debug, Default, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Counts {
    /// Tests that held.
    pub(crate) passed: u64,
    /// Tests that did not, or could not run.
    pub(crate) failed: u64,
}

impl Counts {
    /// A step that is one test by itself.
    pub(crate) fn one(success: bool) -> Counts {
        Counts {
            passed: u64::from(success),
            failed: u64::from(!success),
        }
    }

    /// Sums the result lines of cargo's test harness, of wasm-bindgen's, and of the browser journeys. A program that
    /// ended badly without naming a failed test (it did not compile, it crashed) counts as one failure.
    pub(crate) fn read(printed: &str, success: bool) -> Counts {
        let mut counts: Counts = printed.lines().filter_map(read_line).sum();
        if !success && counts.failed == 0 {
            counts.failed = 1;
        }
        counts
    }
}

impl Add for Counts {
    type Output = Counts;

    fn add(self, other: Counts) -> Counts {
        Counts {
            passed: self.passed + other.passed,
            failed: self.failed + other.failed,
        }
    }
}

impl Sum for Counts {
    fn sum<I: Iterator<Item = Counts>>(counts: I) -> Counts {
        counts.fold(Counts::default(), Add::add)
    }
}

/// Reads "test result: ok. 3 passed; 1 failed; …" and "3 passed, 1 failed".
fn read_line(line: &str) -> Option<Counts> {
    let line = line.trim();
    let (rest, separator) = match line.strip_prefix("test result: ") {
        Some(rest) => (rest.split_once(". ")?.1, "; "),
        None => (line, ", "),
    };
    let mut parts = rest.split(separator);
    let passed = parts.next()?.strip_suffix(" passed")?.parse().ok()?;
    let failed = parts.next()?.strip_suffix(" failed")?.parse().ok()?;
    Some(Counts { passed, failed })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_harness_lines_of_several_programs_are_summed() {
        let printed = "running 3 tests\n\
            test result: ok. 3 passed; 0 failed; 0 ignored; 0 measured; 0 filtered out; finished in 0.00s\n\
            noise\n\
            test result: FAILED. 1 passed; 2 failed; 0 ignored; 0 measured; 0 filtered out; finished in 0.10s\n";
        assert_eq!(
            Counts::read(printed, false),
            Counts {
                passed: 4,
                failed: 2
            }
        );
    }

    #[test]
    fn the_line_of_the_journeys_is_read() {
        assert_eq!(
            Counts::read("journey: fine\n12 passed, 1 failed\n", false),
            Counts {
                passed: 12,
                failed: 1
            }
        );
    }

    #[test]
    fn a_program_that_did_not_compile_is_one_failure() {
        assert_eq!(
            Counts::read("error: could not compile", false),
            Counts {
                passed: 0,
                failed: 1
            }
        );
    }

    #[test]
    fn prose_about_passing_is_not_a_result() {
        assert_eq!(
            Counts::read("all passed, none failed\n3 passed\n", true),
            Counts::default()
        );
    }
}

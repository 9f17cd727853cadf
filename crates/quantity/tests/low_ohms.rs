//! How well a common meter reads the few ohms of a winding.
//!
//! Source: derived by hand from ±(0.8 % + 3 digits of 0.1 Ω), with the rectangular limits of JCGM
//! 100:2008, 4.3.7, and k = 2 (6.2.1). No published table of these rows is known.

// What a test builds for itself is right by construction.
#![allow(clippy::unwrap_used)]

use quantity::{Accuracy, Ohms, Sources};

/// Ohms, limit of error, the same in percent, expanded uncertainty, the same in percent.
const ROWS: [[f64; 5]; 3] = [
    [2.0, 0.316, 15.8, 0.365, 18.2],
    [4.0, 0.332, 8.3, 0.383, 9.6],
    [15.0, 0.42, 2.8, 0.485, 3.2],
];

const COUNT: Ohms = Ohms::new(0.1);

fn meter() -> Accuracy {
    Accuracy::new(0.8, 3.0).unwrap()
}

#[test]
fn limits_and_expanded_uncertainties_of_low_ohms_are_those_worked_out_by_hand() {
    for [ohms, limit, limit_percent, expanded, expanded_percent] in ROWS {
        let value = Ohms::new(ohms);
        let found_limit = meter().limit(value, COUNT).get();
        let mut sources = Sources::default();
        let found_expanded = meter()
            .measured(value, COUNT, &mut sources)
            .expanded()
            .get();
        assert!((found_limit - limit).abs() < 5e-4, "{ohms}: {found_limit}");
        assert!((100.0 * found_limit / ohms - limit_percent).abs() < 0.05);
        assert!(
            (found_expanded - expanded).abs() < 5e-4,
            "{ohms}: {found_expanded}"
        );
        assert!((100.0 * found_expanded / ohms - expanded_percent).abs() < 0.06);
    }
}

#[test]
fn two_low_readings_differ_meaningfully_from_about_half_an_ohm() {
    // √2·U at 2 and at 4 Ω: 0.52 to 0.54 Ω.
    for (ohms, least) in [(2.0, 0.52), (4.0, 0.54)] {
        let mut sources = Sources::default();
        let one = meter().measured(Ohms::new(ohms), COUNT, &mut sources);
        let other = meter().measured(Ohms::new(ohms), COUNT, &mut sources);
        let difference = (&one - &other).expanded().get();
        assert!((difference - least).abs() < 0.005, "{ohms}: {difference}");
    }
}

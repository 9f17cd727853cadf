//! The greatest energy allowed, as lines over adjusted volume.
//!
//! Source: 10 CFR 430.32(a) as in force at each date; the last column by 89 FR 3026 (17 January
//! 2024), corrected by 89 FR 50205 (13 June 2024). Of the rule excerpts have been seen; figures
//! that were not in them are from memory and say so. The remembered ones of 2014 were held against
//! those of 2029: where no ice comes through the door slope and intercept fell in one proportion,
//! where it does the intercept without 56 kWh did. Class 18 doesn't fit that by its intercept of
//! 2029, 107.8 where 116.3 would: see [`Line::standing`].

use super::class::Class;
use super::limit::Era;

/// How well a figure is founded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    /// In an excerpt of the rule that was seen.
    Excerpt,
    /// From memory.
    Memory,
    /// In an excerpt, but it doesn't fit the pattern of all others: look it up before it is used.
    Doubtful,
}

/// kWh a year = slope·AV + intercept, AV in cubic feet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Line {
    pub(super) slope: f64,
    pub(super) intercept: f64,
    pub(super) standing: Standing,
}

const fn seen(slope: f64, intercept: f64) -> Option<Line> {
    let standing = Standing::Excerpt;
    Some(Line {
        slope,
        intercept,
        standing,
    })
}

const fn memory(slope: f64, intercept: f64) -> Option<Line> {
    let standing = Standing::Memory;
    Some(Line {
        slope,
        intercept,
        standing,
    })
}

/// Of 1993, 2001, 2014 and 2029 or 2030.
type Row = [Option<Line>; 4];

/// The line of a class at a date; `None` where the class had no limit of its own yet.
pub(super) const fn line(class: Class, era: Era) -> Option<Line> {
    row(class)[era as usize]
}

const fn row(class: Class) -> Row {
    match class {
        Class::Manual => [
            seen(13.50, 299.0),
            seen(8.82, 248.4),
            seen(7.99, 225.0),
            seen(6.79, 191.3),
        ],
        Class::ManualAllRefrigerator => [None, None, seen(6.79, 193.6), seen(5.77, 164.6)],
        Class::PartialAutomatic => [
            seen(10.40, 398.0),
            seen(8.82, 248.4),
            seen(7.99, 225.0),
            seen(6.79, 191.3),
        ],
        Class::TopFreezer => [
            seen(16.00, 355.0),
            seen(9.80, 276.0),
            seen(8.07, 233.7),
            seen(6.86, 198.6),
        ],
        // In class 3 until 2014.
        Class::AutomaticAllRefrigerator => [
            memory(16.00, 355.0),
            memory(9.80, 276.0),
            seen(7.07, 201.6),
            seen(6.01, 171.4),
        ],
        Class::SideFreezer => [
            seen(11.80, 501.0),
            seen(4.91, 507.5),
            seen(8.51, 297.8),
            seen(7.28, 254.9),
        ],
        Class::BottomFreezer => [
            seen(16.50, 367.0),
            seen(4.60, 459.0),
            seen(8.85, 317.0),
            seen(7.61, 272.6),
        ],
        Class::BottomFreezerIceThroughDoor => [None, None, memory(9.25, 475.4), seen(7.76, 351.9)],
        Class::TopFreezerIceThroughDoor => [
            seen(17.60, 391.0),
            seen(10.20, 356.0),
            memory(8.40, 385.4),
            seen(7.14, 280.0),
        ],
        Class::SideFreezerIceThroughDoor => [
            seen(16.30, 527.0),
            seen(10.10, 406.0),
            memory(8.54, 432.8),
            seen(7.31, 322.5),
        ],
        Class::UprightFreezerManual => [
            seen(10.30, 264.0),
            seen(7.55, 258.3),
            memory(5.57, 193.7),
            seen(5.57, 193.7),
        ],
        Class::UprightFreezerAutomatic => [
            seen(14.90, 391.0),
            seen(12.43, 326.1),
            memory(8.62, 228.3),
            seen(7.33, 194.1),
        ],
        Class::ChestFreezer => [
            seen(11.00, 160.0),
            seen(9.88, 143.7),
            memory(7.29, 107.8),
            seen(7.29, 107.8),
        ],
        Class::ChestFreezerAutomatic => [None, None, memory(10.24, 148.1), seen(10.24, 148.1)],
        _ => compact_or_built_in(class),
    }
}

const fn compact_or_built_in(class: Class) -> Row {
    match class {
        Class::CompactManual => [
            None,
            memory(10.70, 299.0),
            memory(9.03, 252.3),
            seen(7.68, 214.5),
        ],
        Class::CompactManualAllRefrigerator => [None, None, memory(7.84, 219.1), seen(6.66, 186.2)],
        Class::CompactPartialAutomatic => [
            None,
            memory(7.00, 398.0),
            memory(5.91, 335.8),
            seen(5.32, 302.2),
        ],
        Class::CompactTopFreezer => [
            None,
            memory(12.70, 355.0),
            memory(11.80, 339.2),
            seen(10.62, 305.3),
        ],
        Class::CompactAutomaticAllRefrigerator => {
            [None, None, memory(9.17, 259.3), seen(8.25, 233.4)]
        }
        Class::CompactSideFreezer => [
            None,
            memory(7.60, 501.0),
            memory(6.82, 456.9),
            seen(6.14, 411.2),
        ],
        Class::CompactBottomFreezer => [
            None,
            memory(13.10, 367.0),
            memory(11.80, 339.2),
            seen(10.62, 305.3),
        ],
        Class::CompactUprightFreezerManual => [
            None,
            memory(9.78, 250.8),
            memory(8.65, 225.7),
            seen(7.35, 191.8),
        ],
        Class::CompactUprightFreezerAutomatic => [
            None,
            memory(11.40, 391.0),
            memory(10.17, 351.9),
            seen(9.15, 316.7),
        ],
        Class::CompactChestFreezer => [
            None,
            memory(10.45, 152.0),
            memory(9.25, 136.8),
            Some(Line {
                slope: 7.86,
                intercept: 107.8,
                standing: Standing::Doubtful,
            }),
        ],
        Class::BuiltInTopFreezer => [None, None, seen(9.15, 264.9), seen(8.24, 238.4)],
        Class::BuiltInAllRefrigerator => [None, None, seen(8.02, 228.5), seen(7.22, 205.7)],
        Class::BuiltInSideFreezer => [None, None, memory(10.22, 357.4), seen(8.79, 307.4)],
        Class::BuiltInBottomFreezer => [None, None, memory(9.40, 336.9), seen(8.65, 309.9)],
        Class::BuiltInBottomFreezerIceThroughDoor => {
            [None, None, memory(9.83, 499.9), seen(8.21, 370.7)]
        }
        Class::BuiltInSideFreezerIceThroughDoor => {
            [None, None, memory(10.25, 502.6), seen(8.82, 384.1)]
        }
        Class::BuiltInUprightFreezer => [None, None, memory(9.86, 260.9), seen(9.37, 247.9)],
        Class::BuiltInUprightFreezerIceThroughDoor => [None, None, None, seen(9.86, 288.9)],
        _ => [None; 4],
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By the derivation above: what was remembered of 2014 hangs together with what was seen of 2029.
    #[test]
    fn remembered_figures_fit_those_that_were_seen() {
        let thermal_ice = [
            Class::BottomFreezerIceThroughDoor,
            Class::TopFreezerIceThroughDoor,
            Class::SideFreezerIceThroughDoor,
            Class::BuiltInBottomFreezerIceThroughDoor,
            Class::BuiltInSideFreezerIceThroughDoor,
        ];
        for class in Class::ALL {
            let (Some(old), Some(new)) = (line(class, Era::Of2014), line(class, Era::Of2029))
            else {
                continue;
            };
            let slope = new.slope / old.slope;
            if new.standing == Standing::Doubtful {
                assert!((new.intercept - slope * old.intercept).abs() > 8.0);
                continue;
            }
            // 56 kWh: 84 for an icemaker in 2014 less 28 in 2029.
            let ice = if thermal_ice.contains(&class) {
                56.0
            } else {
                0.0
            };
            let off = new.intercept - slope * (old.intercept - ice);
            assert!(off.abs() < 0.5, "{class:?}: {off}");
        }
    }

    #[test]
    fn every_class_has_the_limits_that_it_had() {
        let count = |era| {
            Class::ALL
                .iter()
                .filter(|class| line(**class, era).is_some())
                .count()
        };
        assert_eq!(
            [Era::Of1993, Era::Of2001, Era::Of2014, Era::Of2029].map(count),
            [11, 19, 31, 32]
        );
    }
}

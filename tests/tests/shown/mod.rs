//! Prints what is believed of a machine, for who works on the figures.

use diagnosis::{Choice, Weighed, Whole};

/// What is believed of a machine, and what would be done.
pub(crate) fn show(name: &str, whole: &Whole) {
    println!("== {name}  builds {:.2?}", whole.builds);
    for suspect in whole.suspects.iter().take(7) {
        println!(
            "   {:28} {:.3} (was {:.3}) for {:?} against {:?}",
            suspect.fault.map_or("-", Choice::name),
            suspect.probability,
            suspect.before,
            strongest(&suspect.pointing_to),
            strongest(&suspect.pointing_away),
        );
    }
    println!("   nothing wrong {:.3}", whole.nothing_wrong.probability);
    println!("   {:?}", whole.verdict);
    for next in whole.next.iter().take(5) {
        println!(
            "   next {:22} value {:.2} bits {:.2} min {:.1}+{:.0} price {:.2} per min {:.3}",
            next.task.name(),
            next.value,
            next.bits,
            next.minutes,
            next.waiting,
            next.price,
            next.per_minute()
        );
    }
    println!("   conflict {:?}, {:?}", whole.conflict, whole.changed);
}

fn strongest(weighed: &[Weighed]) -> Vec<String> {
    let each = weighed.iter().take(4);
    each.map(|one| {
        let before = if one.before_change { " before" } else { "" };
        format!("{}{before} x{:.2}", one.task.name(), one.factor)
    })
    .collect()
}

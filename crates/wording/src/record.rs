//! The record that goes with a machine: its headings, and what the next owner is told.

mod on_screen;
mod sentences;

use diagnosis::Refrigerant;
use job::{Moment, Origin};

use crate::Locale;

pub use on_screen::{
    FOR_BUYER, FOR_OWNER, PAGE, PAGE_HOW, PRINT, SAVE_PAGE, SHARE_PAGE, TO_PAGE, WHOSE,
};
pub use sentences::{
    about, course, course_of, happened, hours_after, key_of_curve, leads, letter, meters,
    never_looked, pin_is, shapes, switched_on,
};

/// Above what the machine is.
pub const MACHINE: &str = "The machine";
/// Above what was found wrong.
pub const WRONG: &str = "What was wrong";
/// Before it was changed.
pub const WRONG_BEFORE: &str = "Found before anything was changed";
/// As it is now.
pub const WRONG_NOW: &str = "As it is now";
/// Nobody has found anything.
pub const NOTHING_FOUND: &str = "Nothing was found yet.";
/// Above the readings.
pub const MEASURED: &str = "What was measured";
/// Every reading.
pub const READINGS: &str = "Readings";
/// Above what stands behind the first page.
pub const DETAILS: &str = "Reading by reading";
/// Above what each check says, sound or not.
pub const CHECKS: &str = "What each check says of it now";
/// Above the tries, one by one.
pub const TRIES: &str = "Each try to start it";
/// Above what was counted, and what its figures rest on.
pub const METERING: &str = "What was metered";
/// Above how likely the Path is broken at each link.
pub const ODDS: &str = "The Path, all weighed together";
/// Readings from before the last change.
pub const READINGS_BEFORE: &str = "Readings from before the last change: the machine as it was";
/// Readings since.
pub const READINGS_SINCE: &str = "Readings since the last change: the machine as it is";
/// What stands in no meter.
pub const SEEN: &str = "Seen, heard and looked up";
/// Nobody has measured anything.
pub const NOTHING_MEASURED: &str = "Nothing was measured.";
/// What the figures behind a reading are.
pub const HOW_SURE: &str = "What stands behind ± holds 19 times in 20 by the meter's own data \
                            sheet (k = 2); the pins' contact and a person's slips come on top.";
/// Above what was done.
pub const DONE: &str = "What was done";
/// Nothing was done.
pub const NOTHING_DONE: &str = "Nothing was changed on the machine.";
/// Above the pins.
pub const PINS: &str = "The compressor's pins";
/// Above the Path.
pub const PATH: &str = "The Path, link by link";
/// What the Path is.
pub const PATH_IS: &str = "Eight things must hold in this order for a cabinet to get cold. A \
                           state comes from checks of that link, from tries to start and from \
                           the cool-down; “not known yet” means that there were none.";
/// Above the tries to start.
pub const STARTS: &str = "Starting after a rest";
/// Above the cool-down.
pub const COOL_DOWN: &str = "Cooling down";
/// Above energy.
pub const ENERGY: &str = "Energy";
/// Above what was proved.
pub const PROOF: &str = "What was proved, and what wasn't";
/// Above the advice to who takes it.
pub const NEXT_OWNER: &str = "For the next owner";
/// Above what none of it shows.
pub const LIMITS: &str = "Limits of what was tested";
/// Above notes, on the owner's page.
pub const NOTES: &str = "Private notes";
/// Above the owner's figures.
pub const FIGURES: &str = "Costs and figures of your own";
/// The table of what could not be done.
pub const NOT_DONE: &str = "Not done";

/// Heads of tables.
pub const WHAT: &str = "What";
/// The reading.
pub const READ: &str = "Read";
/// How far it may be off.
pub const OFF_BY: &str = "May be off by";
/// The meter's data sheet.
pub const METER: &str = "Meter";
/// When.
pub const WHEN: &str = "When";
/// What was answered.
pub const FOUND: &str = "Found";
/// A link of the Path.
pub const LINK: &str = "Link";
/// How likely the Path is interrupted at a link.
pub const BROKEN_HERE: &str = "Broken here, all weighed together";
/// With which start gear.
pub const WITH: &str = "Start gear";
/// What came of it.
pub const OUTCOME: &str = "What it did";
/// Of several things to look for none was there.
pub const NONE_OF_THEM: &str = "Nothing of what was asked for";
/// A number off a part or a label, in the place of a meter.
pub const PRINTED: &str = "printed on it";
/// That nothing was owed or shown yet.
pub const NOTHING_PROVED: &str = "Nothing was proved: it was not switched on and watched.";
/// Why it was not done.
pub const WHY: &str = "Why";

/// A pin that nothing tells apart yet.
pub const NOT_TOLD: &str = "not told yet";
/// The table of loggers' files.
pub const FILES: &str = "Temperatures out of loggers' files";

/// What stands in big letters on a record about no real machine.
#[must_use]
pub const fn unreal(origin: Origin) -> Option<&'static str> {
    match origin {
        Origin::Person => None,
        Origin::Invented => Some("INVENTED EXAMPLE: no such machine was measured"),
        Origin::Practice => Some("PRACTICE: a simulated machine, no such machine was measured"),
    }
}

/// For whom a record is: the buyer, or the owner.
#[must_use]
pub const fn audience(is_owner: bool) -> &'static str {
    if is_owner {
        "Owner's copy, with private notes and costs"
    } else {
        "Buyer's copy, without private notes and costs"
    }
}

/// When and by what it was made.
#[must_use]
pub fn made(now: Moment, version: &str, locale: &Locale) -> String {
    format!(
        "Made by Coldcase {version} on {}, worked out from the readings entered by then.",
        locale.moment(now)
    )
}

/// What the next owner is told, whatever was found. Rules on moving and on the first hours are
/// common practice, no source; the temperatures are those of USDA FSIS and FDA.
#[must_use]
pub fn handing_over(refrigerant: Option<Refrigerant>, kit: bool) -> Vec<String> {
    let gas = match refrigerant {
        Some(gas) if gas.burns() => {
            "Its refrigerant burns. No flame, spark or blade near its tubes, no hair dryer inside, \
             air round it. After a knock to a tube: doors open, fresh air, and don't plug it in."
        }
        Some(_) => {
            "Its refrigerant doesn't burn, by the plate. Its tubes stay closed all the same: \
             opening them is licensed work."
        }
        None => {
            "Nobody has read which refrigerant it holds: treat it as one that burns. No flame, \
             spark, blade or hair dryer near its tubes, air round it."
        }
    };
    let kit = kit.then_some(
        "A start kit or its maker's gear for hard starts is on the compressor. Tell whoever works \
         on it: such gear can hide a compressor that is wearing out.",
    );
    let rest = [
        "Carry it upright. If it was laid down, leave it standing upright before it is switched \
         on, for as long as it lay and up to a day (common practice, no source).",
        "Plug it into an earthed outlet with ground-fault protection whose test button works; no \
         extension cord.",
        "Stay near it for the first two hours (common practice, no source). Unplug it if it trips \
         the outlet, smells of burning, or hums for ten seconds without starting.",
        "Put food in once a thermometer of your own shows 4 °C (40 °F) or less in the fresh-food \
         part, or −18 °C (0 °F) or less in the freezer (USDA FSIS and FDA).",
    ];
    let all = [gas].into_iter().chain(kit).chain(rest);
    all.map(str::to_owned).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_unread_plate_is_taken_for_gas_that_burns() {
        let unread = handing_over(None, false);
        assert!(unread[0].contains("treat it as one that burns"));
        let sound = handing_over(Some(Refrigerant::R134a), false);
        assert!(sound[0].contains("doesn't burn"));
    }

    #[test]
    fn a_kit_that_is_fitted_is_told_and_none_where_none_is() {
        let told = |kit| handing_over(None, kit).concat().contains("start kit");
        assert!(told(true) && !told(false));
    }
}

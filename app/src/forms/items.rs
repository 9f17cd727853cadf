//! The items of a check as a page asks them: which one is next, and what can be answered.

use diagnosis::{
    Check, Choice, Contact, EarthPin, Inverted, Item, Looks, PlateMains, ProtectorKind,
    StartDeviceKind, Stores, TesterChoice, Upright, Warmth,
};
use job::Job;

use crate::pages::choice_list::Offer;

/// How an item is answered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Asked {
    /// By a number off the meter.
    Number,
    /// By ticking what is seen.
    Ticks,
    /// By one of these.
    OneOf(Vec<Offer>),
}

/// How an item is answered.
#[must_use]
pub fn asked(item: Item) -> Asked {
    Asked::OneOf(match item {
        Item::Signs => return Asked::Ticks,
        Item::PlateMains => Offer::all::<PlateMains>(),
        Item::EarthPin => Offer::all::<EarthPin>(),
        Item::Tester => Offer::all::<TesterChoice>(),
        Item::Stores => Offer::all::<Stores>(),
        Item::ProtectorKind => Offer::all::<ProtectorKind>(),
        Item::ProtectorWarmth => Offer::all::<Warmth>(),
        Item::StartDeviceKind => Offer::all::<StartDeviceKind>(),
        Item::StartDeviceLooks => Offer::all::<Looks>(),
        Item::RelayUpright => Offer::all::<Upright>(),
        Item::RelayInverted => Offer::all::<Inverted>(),
        Item::RelayContact => Offer::all::<Contact>(),
        Item::BladesToEarth
        | Item::BladesToMetal
        | Item::EarthToMetal
        | Item::BladeToBlade
        | Item::CapacitorMarking
        | Item::ChargeLeft
        | Item::PinOneToShell
        | Item::PinTwoToShell
        | Item::PinThreeToShell
        | Item::ProtectorReading
        | Item::PtcMarking
        | Item::PtcReading
        | Item::RelayCoil
        | Item::ColdWinding
        | Item::ColdTemperature
        | Item::HotWinding => return Asked::Number,
    })
}

/// The first item that nobody has answered yet.
#[must_use]
pub fn first_open(check: Check, job: &Job) -> Option<Item> {
    check
        .items(job)
        .into_iter()
        .find(|item| !item.is_answered(job))
}

/// The items that were answered, in their order.
#[must_use]
pub fn answered(check: Check, job: &Job) -> Vec<Item> {
    let mut items = check.items(job);
    items.retain(|item| item.is_answered(job));
    items
}

/// The name of the choice that counts for an item, among those that are offered.
#[must_use]
pub fn chosen(item: Item, offers: &[Offer], job: &Job) -> Option<&'static str> {
    let name = job.choice(item.check().name(), item.name())?;
    offers
        .iter()
        .map(|offer| offer.name)
        .find(|offer| *offer == name)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_item_with_a_unit_is_asked_as_a_number_and_no_other() {
        for item in Item::ALL {
            let is_number = asked(*item) == Asked::Number;
            assert_eq!(is_number, item.unit().is_some(), "{item:?}");
        }
    }

    #[test]
    fn every_offer_is_one_that_the_assessment_reads() {
        for item in Item::ALL {
            if let Asked::OneOf(offers) = asked(*item) {
                assert!(offers.len() > 1, "{item:?}");
            }
        }
    }
}

//! The questions of a task as a page asks them: which one is next, and what can be answered.

use diagnosis::{
    Ask, CapacitorKind, Caught, Contact, CordConductors, EarthPin, Inverted, Item, LabelOf, Looks,
    OutletWiring, PlateMains, PowerSource, Protection, ProtectorKind, Sign, StartDeviceKind,
    Stores, Task, TesterChoice, TripCompany, TripDevice, TripWhen, Upright, Warmth,
};
use job::Job;

use crate::pages::choice_list::Offer;

/// How a question is answered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Asked {
    /// By a number off the meter.
    Number,
    /// By ticking what is so.
    Ticks(Vec<Offer>),
    /// By one of these.
    OneOf(Vec<Offer>),
}

/// How a question is answered.
#[must_use]
pub fn asked(ask: Ask) -> Asked {
    let offers = || {
        let offered = wording::whole::offered(ask).into_iter();
        offered
            .map(|(name, words)| Offer::named(name, words))
            .collect()
    };
    match ask {
        Ask::Item(item) => of_item(item),
        Ask::Number(..) => Asked::Number,
        Ask::Answer(_) => Asked::OneOf(offers()),
        Ask::Past => Asked::Ticks(offers()),
    }
}

fn of_item(item: Item) -> Asked {
    Asked::OneOf(match item {
        Item::Signs => return Asked::Ticks(Offer::all::<Sign>()),
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
        Item::OutletProtection => Offer::all::<Protection>(),
        Item::OutletWiring => Offer::all::<OutletWiring>(),
        Item::PowerSource => Offer::all::<PowerSource>(),
        Item::CordConductors => Offer::all::<CordConductors>(),
        Item::LowestCaught => Offer::all::<Caught>(),
        Item::LabelOf => Offer::all::<LabelOf>(),
        Item::CapacitorKind => Offer::all::<CapacitorKind>(),
        Item::TripDevice => Offer::all::<TripDevice>(),
        Item::TripWhen => Offer::all::<TripWhen>(),
        Item::TripCompany => Offer::all::<TripCompany>(),
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
        | Item::HotWinding
        | Item::CordLength
        | Item::IdleVolts
        | Item::LowestVolts
        | Item::StartingAmps
        | Item::EarlyWatts
        | Item::LateWatts
        | Item::RunningVolts
        | Item::RunningAmps
        | Item::LabelAmps
        | Item::LabelWatts
        | Item::CapacitorLeast
        | Item::CapacitorAmps
        | Item::CapacitorVolts
        | Item::LeakageCurrent
        | Item::LeakageOfOthers => return Asked::Number,
    })
}

/// The first question that nobody has answered yet.
#[must_use]
pub fn first_open(task: Task, job: &Job) -> Option<Ask> {
    let mut asks = task.asks(job).into_iter();
    asks.find(|ask| !ask.is_answered(job))
}

/// The questions that were answered, in their order.
#[must_use]
pub fn answered(task: Task, job: &Job) -> Vec<Ask> {
    let mut asks = task.asks(job);
    asks.retain(|ask| ask.is_answered(job));
    asks
}

/// The name of the choice that counts for a question, among those that are offered.
#[must_use]
pub fn chosen(ask: Ask, offers: &[Offer], job: &Job) -> Option<&'static str> {
    let (check, item) = ask.names();
    let name = job.choice(check, item)?;
    offers
        .iter()
        .map(|offer| offer.name)
        .find(|offer| *offer == name)
}

#[cfg(test)]
mod tests {
    use super::*;
    use diagnosis::Choice;

    #[test]
    fn an_item_with_a_unit_is_asked_as_a_number_and_no_other() {
        for item in Item::ALL {
            let is_number = asked(Ask::Item(*item)) == Asked::Number;
            assert_eq!(is_number, item.unit().is_some(), "{item:?}");
        }
    }

    #[test]
    fn every_offer_is_one_that_the_assessment_reads() {
        for item in Item::ALL {
            if let Asked::OneOf(offers) = asked(Ask::Item(*item)) {
                assert!(offers.len() > 1, "{item:?}");
            }
        }
    }
}

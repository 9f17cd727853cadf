//! How hot a winding is, from its ohms now and when it was cold.

use job::Job;
use measure::Conductor;
use quantity::{Celsius, Observed, Sources, Uncertain};

use crate::{Finding, Item};

/// What is known of a winding's temperature.
#[derive(Debug, Clone, PartialEq)]
pub struct WindingTemperature {
    /// The winding's temperature, copper assumed.
    pub now: Option<Uncertain<Celsius>>,
}

impl WindingTemperature {
    /// What is asked, in order.
    pub(crate) const ITEMS: [Item; 3] =
        [Item::ColdWinding, Item::ColdTemperature, Item::HotWinding];

    pub(crate) fn of(job: &Job) -> Self {
        Self { now: now(job) }
    }

    pub(crate) fn findings(&self) -> Option<Finding> {
        self.now.clone().map(Finding::WindingTemperature)
    }
}

fn now(job: &Job) -> Option<Uncertain<Celsius>> {
    let mut sources = Sources::default();
    let mut winding = |item: Item| {
        let (typed, reading) = item.ohms(job)?;
        match typed.observed {
            Observed::Value(value) => {
                Some(reading.accuracy.measured(value, typed.count, &mut sources))
            }
            Observed::OverRange { .. } => None,
        }
    };
    let (cold, hot) = (winding(Item::ColdWinding)?, winding(Item::HotWinding)?);
    let Observed::Value(room) = Item::ColdTemperature.celsius(job)?.observed else {
        return None;
    };
    measure::winding_temperature(&cold, room, &hot, Conductor::Copper)
}

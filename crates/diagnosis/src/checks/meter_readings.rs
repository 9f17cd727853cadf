//! Numbers of one job, each with the uncertainty of the meter that showed it.
//!
//! Answers: what was read, as a value to go on computing with? Must never know: what it means.

use job::Job;
use quantity::{Amps, Farads, Observed, Quantity, Sources, Typed, Uncertain, Volts, Watts};

use crate::Item;

/// Reads numbers whose errors are independent of each other. Over range is no number.
pub(super) struct MeterReadings<'a> {
    job: &'a Job,
    sources: Sources,
}

impl<'a> MeterReadings<'a> {
    pub(super) fn of(job: &'a Job) -> Self {
        Self {
            job,
            sources: Sources::default(),
        }
    }

    pub(super) fn volts(&mut self, item: Item) -> Option<Uncertain<Volts>> {
        self.known(item, item.volts(self.job))
    }

    pub(super) fn amps(&mut self, item: Item) -> Option<Uncertain<Amps>> {
        self.known(item, item.amps(self.job))
    }

    pub(super) fn watts(&mut self, item: Item) -> Option<Uncertain<Watts>> {
        self.known(item, item.watts(self.job))
    }

    /// What is printed on a part, which no meter has read.
    pub(super) fn printed_farads(&self, item: Item) -> Option<Farads> {
        printed(item.farads(self.job))
    }

    pub(super) fn printed_amps(&self, item: Item) -> Option<Amps> {
        printed(item.amps(self.job))
    }

    pub(super) fn printed_watts(&self, item: Item) -> Option<Watts> {
        printed(item.watts(self.job))
    }

    fn known<Q: Quantity>(&mut self, item: Item, typed: Option<Typed<Q>>) -> Option<Uncertain<Q>> {
        let accuracy = item.reading(self.job)?.accuracy;
        let typed = typed?;
        match typed.observed {
            Observed::Value(value) => {
                Some(accuracy.measured(value, typed.count, &mut self.sources))
            }
            Observed::OverRange { .. } => None,
        }
    }
}

/// A marking is above zero or says nothing.
fn printed<Q: Quantity>(typed: Option<Typed<Q>>) -> Option<Q> {
    match typed?.observed {
        Observed::Value(value) if value.get() > 0.0 => Some(value),
        _ => None,
    }
}

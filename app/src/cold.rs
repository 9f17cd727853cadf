//! The fifth part of the program: what proves that a machine gets cold, and what goes with that.
//!
//! The service worker fetches it together with the fourth. It holds the fit of a cool-down and the
//! reader of loggers' files, which nothing else needs.

use leptos::prelude::*;

use crate::later::{NotArrived, arriving};
use crate::pages::cool_down::CoolDownScreen;
use crate::pages::energy::EnergyScreen;
use crate::pages::gas_facts::GasFactsScreen;
use crate::pages::record_page::RecordPageScreen;
use crate::pages::take_in_log::TakeInLogScreen;

/// What the fifth part shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Cold {
    /// A cool-down: switched on, read, foretold.
    CoolDown,
    /// Taking in a logger's file.
    Log,
    /// What it uses.
    Energy,
    /// Facts about a refrigerant.
    GasFacts,
    /// The record that goes with the machine.
    Record,
}

impl Cold {
    /// The name under which the cool-down has its address.
    pub const COOL_DOWN: &str = "cool-down";
    /// The name under which energy has its address.
    pub const ENERGY: &str = diagnosis::ENERGY;
    /// The name under which facts about a refrigerant have theirs.
    pub const GAS_FACTS: &str = "refrigerant-facts";

    /// The screen with this name in its address.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        match name {
            Self::COOL_DOWN => Some(Self::CoolDown),
            Self::ENERGY => Some(Self::Energy),
            Self::GAS_FACTS => Some(Self::GasFacts),
            _ => None,
        }
    }
}

/// Shows something of the fifth part as soon as that is there.
pub fn cold(what: Cold) -> AnyView {
    arriving(Box::pin(parts::screen(what)))
}

/// Where the part is cut off. The attribute writes a call across, which needs `unsafe`.
#[cfg(feature = "split")]
#[allow(unsafe_code)]
mod parts {
    use leptos::wasm_split::wasm_split;

    use super::{AnyView, Cold, NotArrived};

    #[wasm_split(cold, wasm_split_path = ::leptos::wasm_split, fallible)]
    pub(super) fn screen(what: Cold) -> Result<AnyView, NotArrived> {
        Ok(super::screen_now(what))
    }
}

#[cfg(not(feature = "split"))]
mod parts {
    use super::{AnyView, Cold, NotArrived};

    pub(super) async fn screen(what: Cold) -> Result<AnyView, NotArrived> {
        Ok(super::screen_now(what))
    }
}

fn screen_now(what: Cold) -> AnyView {
    // The heading was not there when the address changed.
    crate::device::focus_from_nowhere(crate::session::HEADING);
    match what {
        Cold::CoolDown => view! { <CoolDownScreen/> }.into_any(),
        Cold::Log => view! { <TakeInLogScreen/> }.into_any(),
        Cold::Energy => view! { <EnergyScreen/> }.into_any(),
        Cold::GasFacts => view! { <GasFactsScreen/> }.into_any(),
        Cold::Record => view! { <RecordPageScreen/> }.into_any(),
    }
}

//! The fourth part of the program: screens that are opened later than others, or now and then.
//!
//! The service worker fetches it once the rest is there, so that it works without a network all
//! the same; until it is opened nothing of it is read.

use leptos::prelude::*;

use crate::later::{NotArrived, arriving};
use crate::pages::assumptions::AssumptionsScreen;
use crate::pages::import::ImportScreen;
use crate::pages::record::RecordScreen;
use crate::pages::settings::SettingsScreen;
use crate::pages::start_kit::StartKitScreen;
use crate::pages::start_trials::StartTrialsScreen;
use crate::pages::windings::WindingsScreen;

/// What the fourth part shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Further {
    /// Tries to start after a rest.
    StartTrials,
    /// Whether a start kit would help.
    StartKit,
    /// What was done, to be kept and passed on.
    Record,
    /// Readings between a compressor's pins.
    Windings,
    /// Opening a file.
    Import,
    /// What the person sets once for all jobs.
    Settings,
    /// What is assumed before anything is known.
    Assumptions,
}

/// Shows something of the fourth part as soon as that is there.
pub fn further(what: Further) -> AnyView {
    arriving(Box::pin(parts::screen(what)))
}

/// Where the part is cut off. The attribute writes a call across, which needs `unsafe`.
#[cfg(feature = "split")]
#[allow(unsafe_code)]
mod parts {
    use leptos::wasm_split::wasm_split;

    use super::{AnyView, Further, NotArrived};

    #[wasm_split(further, wasm_split_path = ::leptos::wasm_split, fallible)]
    pub(super) fn screen(what: Further) -> Result<AnyView, NotArrived> {
        Ok(super::screen_now(what))
    }
}

#[cfg(not(feature = "split"))]
mod parts {
    use super::{AnyView, Further, NotArrived};

    pub(super) async fn screen(what: Further) -> Result<AnyView, NotArrived> {
        Ok(super::screen_now(what))
    }
}

fn screen_now(what: Further) -> AnyView {
    // The heading was not there when the address changed.
    crate::device::focus_from_nowhere(crate::session::HEADING);
    match what {
        Further::StartTrials => view! { <StartTrialsScreen/> }.into_any(),
        Further::StartKit => view! { <StartKitScreen/> }.into_any(),
        Further::Record => view! { <RecordScreen/> }.into_any(),
        Further::Windings => view! { <WindingsScreen/> }.into_any(),
        Further::Import => view! { <ImportScreen/> }.into_any(),
        Further::Settings => view! { <SettingsScreen/> }.into_any(),
        Further::Assumptions => view! { <AssumptionsScreen/> }.into_any(),
    }
}

//! The browser's own storage.
//!
//! Other pages of the same address share it. Every name of ours has a prefix, and nothing else
//! is read, listed or cleared.

use std::collections::BTreeSet;

use gloo_storage::{LocalStorage, Storage};
use leptos::prelude::window_event_listener_untyped;
use wasm_bindgen::JsCast;
use web_sys::{CustomEvent, CustomEventInit, StorageEvent};

use super::{Shelf, Trouble};

const PREFIX: &str = "coldcase/";

/// The browser's storage, known to work.
#[derive(Debug)]
pub struct BrowserShelf {
    // Only `probe` builds one: the library's accessor ends the program where storage is blocked.
    probed: (),
}

impl BrowserShelf {
    /// Tries the browser's storage once. None where it keeps nothing for this page.
    ///
    /// A storage without any room left counts as working: what it holds can still be read.
    #[must_use]
    pub fn probe() -> Option<Self> {
        let storage = web_sys::window()?.local_storage().ok()??;
        storage.length().ok()?;
        Some(Self { probed: () })
    }
}

impl Shelf for BrowserShelf {
    fn read(&self, name: &str) -> Option<String> {
        let () = self.probed;
        LocalStorage::raw().get_item(&full(name)).ok()?
    }

    fn write(&self, name: &str, text: &str) -> Result<(), Trouble> {
        LocalStorage::raw()
            .set_item(&full(name), text)
            .map_err(|_| Trouble::Full)?;
        tell(name);
        Ok(())
    }

    fn remove(&self, name: &str) {
        LocalStorage::delete(full(name));
        tell(name);
    }

    fn names(&self) -> Vec<String> {
        let storage = LocalStorage::raw();
        let names = (0..LocalStorage::length())
            .filter_map(|index| storage.key(index).ok()?)
            .filter_map(|name| Some(name.strip_prefix(PREFIX)?.to_owned()));
        let mut in_order = BTreeSet::new();
        in_order.extend(names);
        in_order.into_iter().collect()
    }
}

/// Calls back with the name of each text of ours that another tab changes.
pub fn on_change_elsewhere(then: impl Fn(&str) + 'static) {
    let listener = window_event_listener_untyped("storage", move |event| {
        let name = event
            .dyn_ref::<StorageEvent>()
            .and_then(StorageEvent::key)
            .and_then(|name| Some(name.strip_prefix(PREFIX)?.to_owned()));
        if let Some(name) = name {
            then(&name);
        }
    });
    // It listens as long as the page is open.
    std::mem::forget(listener);
}

/// Tells the script that keeps a second copy, because a killed browser loses what it took last.
fn tell(name: &str) {
    let init = CustomEventInit::new();
    init.set_detail(&full(name).into());
    let event = CustomEvent::new_with_event_init_dict("coldcase:stored", &init);
    if let (Some(window), Ok(event)) = (web_sys::window(), event) {
        let _ = window.dispatch_event(&event);
    }
}

fn full(name: &str) -> String {
    [PREFIX, name].concat()
}

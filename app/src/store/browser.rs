//! The browser's own storage.
//!
//! Other pages of the same address share it. Every name of ours has a prefix, and nothing else
//! is read, listed or cleared.

use gloo_storage::{LocalStorage, Storage};
use js_sys::JsString;
use leptos::prelude::window_event_listener_untyped;
use wasm_bindgen::JsCast;
use web_sys::{CustomEvent, CustomEventInit, StorageEvent};

use super::jobs::JOB;
use super::{Shelf, Trouble};

const PREFIX: &str = "coldcase/";
/// The name of a text that is written only to see whether there is room for it.
const TRIAL: &str = "trial";
/// Half of the least that engines were found to keep: 4.9 million characters, in one engine half
/// of that where a text has any beyond Latin-1.
const SURE_ROOM: usize = 1_200_000;

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

    fn start_of(&self, name: &str, characters: usize) -> Option<String> {
        // Cut before it is copied out of the browser.
        let whole = stored(&full(name))?;
        let end = u32::try_from(characters).unwrap_or(u32::MAX);
        whole.slice(0, end).as_string()
    }

    /// Every engine keeps at least twice `SURE_ROOM` characters: below, nothing is tried. Beyond,
    /// only a trial tells: engines count differently, and other pages share the room.
    fn has_room(&self, characters: usize) -> bool {
        if used() + characters < SURE_ROOM {
            return true;
        }
        let fits = self.write(TRIAL, &"x".repeat(characters)).is_ok();
        self.remove(TRIAL);
        fits
    }

    fn write(&self, name: &str, text: &str) -> Result<(), Trouble> {
        LocalStorage::raw()
            .set_item(&full(name), text)
            .map_err(|_| Trouble::Full)?;
        if name.starts_with(JOB) {
            tell(name);
        }
        Ok(())
    }

    fn remove(&self, name: &str) {
        LocalStorage::delete(full(name));
        if name.starts_with(JOB) {
            tell(name);
        }
    }

    fn names(&self) -> Vec<String> {
        let storage = LocalStorage::raw();
        let names = (0..LocalStorage::length())
            .filter_map(|index| storage.key(index).ok()?)
            .filter_map(|name| Some(name.strip_prefix(PREFIX)?.to_owned()));
        names.collect()
    }

    fn has_any(&self, beginning: &str) -> bool {
        let storage = LocalStorage::raw();
        let beginning = full(beginning);
        (0..LocalStorage::length())
            .filter_map(|index| storage.key(index).ok()?)
            .any(|name| name.starts_with(&beginning))
    }
}

/// Calls back with the name of each text of ours that another tab changes, or with none where all is cleared. A trial for room is
/// none: two tabs that answered each other's trials with trials of their own would never end.
pub fn on_change_elsewhere(then: impl Fn(&str) + 'static) {
    let listener = window_event_listener_untyped("storage", move |event| {
        let name = match event.dyn_ref::<StorageEvent>().map(StorageEvent::key) {
            Some(None) => Some(String::new()),
            Some(Some(name)) => name.strip_prefix(PREFIX).map(str::to_owned),
            None => None,
        };
        if let Some(name) = name.filter(|name| name != TRIAL) {
            then(&name);
        }
    });
    // It listens as long as the page is open.
    std::mem::forget(listener);
}

/// The characters that this page and its neighbours keep, names included.
fn used() -> usize {
    let storage = LocalStorage::raw();
    (0..LocalStorage::length())
        .filter_map(|index| storage.key(index).ok()?)
        .map(|name| name.len() + stored(&name).map_or(0, |text| text.length() as usize))
        .sum()
}

/// A text as the browser holds it.
fn stored(full_name: &str) -> Option<JsString> {
    let text = js_sys::Reflect::get(&LocalStorage::raw(), &full_name.into());
    text.ok()?.dyn_into().ok()
}

/// Tells the script that keeps a second copy of each job, because a killed browser loses what it
/// took last.
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

//! The part of the address behind "#".

use leptos::prelude::{window, window_event_listener_untyped};

/// What stands behind "#" now.
#[must_use]
pub fn hash() -> String {
    let hash = window().location().hash().unwrap_or_default();
    hash.trim_start_matches('#').to_owned()
}

/// Goes to another address within the page, so that "back" leads here again.
pub fn go_to(hash: &str) {
    let _ = window().location().set_hash(hash);
}

/// Goes to another address within the page in the place of this one.
pub fn replace_hash(hash: &str) {
    let _ = window().location().replace(&["#", hash].concat());
}

/// Calls back whenever what stands behind "#" has changed.
pub fn on_hash_change(then: impl Fn() + 'static) {
    let listener = window_event_listener_untyped("hashchange", move |_| then());
    // It listens as long as the page is open.
    std::mem::forget(listener);
}

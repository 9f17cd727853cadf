//! The page itself: its title, its focus, and what its start-up script says about it.

use leptos::prelude::{document, request_animation_frame, window, window_event_listener_untyped};
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Event, FocusOptions, HtmlElement};

/// What the start-up script knows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct PageStatus {
    /// Every file of this version is on the device.
    pub is_offline_ready: bool,
    /// A newer version is on the device and waits.
    pub has_update: bool,
}

/// What the start-up script says now.
#[must_use]
pub fn page_status() -> PageStatus {
    let says = |name: &str, value: &str| {
        let root = document().document_element();
        let said = root.and_then(|root| root.get_attribute(name));
        said.as_deref() == Some(value)
    };
    PageStatus {
        is_offline_ready: says("data-offline", "ready"),
        has_update: says("data-update", "waiting"),
    }
}

/// Calls back whenever the start-up script has something new to say.
pub fn on_status(then: impl Fn() + 'static) {
    listen("coldcase:status", then);
}

/// Asks the start-up script to bring in the newer version that waits.
pub fn apply_update() {
    if let Ok(event) = Event::new("coldcase:apply-update") {
        let _ = window().dispatch_event(&event);
    }
}

/// Calls back when the page is left, perhaps for good.
pub fn on_leaving(then: impl Fn() + 'static) {
    listen("pagehide", then);
}

/// Sets the title of the page.
pub fn set_title(title: &str) {
    document().set_title(title);
}

/// Sets the look of the page: `light`, `dark`, or the device's own. The start-up script sets it
/// before the program is there.
pub fn set_look(look: &str) {
    if let Some(root) = document().document_element() {
        let _ = match look {
            "light" | "dark" => root.set_attribute("data-look", look),
            _ => root.remove_attribute("data-look"),
        };
    }
}

/// Opens the browser's print dialogue, which also saves as PDF.
pub fn print() {
    // A browser without one says nothing, and nothing else can be done.
    let _ = window().print();
}

/// Moves the focus to the element of this identifier once it has been drawn.
pub fn focus(id: &'static str) {
    request_animation_frame(move || {
        if let Some(element) = element(id) {
            let _ = element.focus();
        }
    });
}

/// Moves the focus like [`focus`], without scrolling: what is on the screen stays where it is.
pub fn focus_in_place(id: &'static str) {
    request_animation_frame(move || focus_unscrolled(id));
}

/// Moves the focus like [`focus_in_place`] where nothing has it: what was to take it wasn't there yet.
pub fn focus_from_nowhere(id: &'static str) {
    request_animation_frame(move || {
        let focused = document().active_element();
        if focused.is_none_or(|element| element.tag_name() == "BODY") {
            focus_unscrolled(id);
        }
    });
}

/// Shows the page from its top and moves the focus to the element of this identifier.
pub fn show_from_top(id: &'static str) {
    request_animation_frame(move || {
        window().scroll_to_with_x_and_y(0.0, 0.0);
        focus_unscrolled(id);
    });
}

/// Asks the browser not to throw away what is kept for this page. It may say no.
pub fn ask_to_keep() {
    let navigator = window().navigator();
    let storage = js_sys::Reflect::get(&navigator, &JsValue::from_str("storage"));
    if storage.is_ok_and(|storage| super::has(&storage, "persist")) {
        // The answer changes nothing here, and a refusal is no error.
        let _ = navigator.storage().persist();
    }
}

fn focus_unscrolled(id: &str) {
    if let Some(element) = element(id) {
        let options = FocusOptions::new();
        options.set_prevent_scroll(true);
        let _ = element.focus_with_options(&options);
    }
}

fn element(id: &str) -> Option<HtmlElement> {
    document().get_element_by_id(id)?.dyn_into().ok()
}

fn listen(event: &'static str, then: impl Fn() + 'static) {
    let listener = window_event_listener_untyped(event, move |_| then());
    // It listens as long as the page is open.
    std::mem::forget(listener);
}

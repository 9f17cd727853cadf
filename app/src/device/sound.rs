//! What practising needs of the browser beside the program: a small script that makes sounds and
//! has the service worker keep the part that simulates.

use leptos::prelude::{document, window};
use wasm_bindgen::JsValue;
use web_sys::{CustomEvent, CustomEventInit};

const ID: &str = "practice-script";

/// Loads the script, once.
pub fn prepare_practice() {
    let document = document();
    if document.get_element_by_id(ID).is_some() {
        return;
    }
    if let (Ok(script), Some(head)) = (document.create_element("script"), document.head()) {
        script.set_id(ID);
        let _ = script.set_attribute("type", "module");
        let _ = script.set_attribute("src", "./practice.js");
        let _ = head.append_child(&script);
    }
}

/// Whether this browser can make sounds.
#[must_use]
pub fn has_sound() -> bool {
    super::has(&window(), "AudioContext")
}

/// Makes a sound by its name; `wake` from within a tap, or browsers stay silent.
pub fn sound(name: &str) {
    let init = CustomEventInit::new();
    init.set_detail(&JsValue::from_str(name));
    if let Ok(event) = CustomEvent::new_with_event_init_dict("coldcase:sound", &init) {
        let _ = window().dispatch_event(&event);
    }
}

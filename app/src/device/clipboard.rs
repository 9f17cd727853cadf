//! The clipboard.

use leptos::prelude::window;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;

/// Copies a text, at once: browsers allow it only while a tap is being handled. False where
/// there is no clipboard for this page, or it refuses.
pub fn copy(text: &str) -> impl Future<Output = bool> + use<> {
    let navigator = window().navigator();
    let clipboard = js_sys::Reflect::get(&navigator, &JsValue::from_str("clipboard"));
    let can_write = clipboard.is_ok_and(|clipboard| super::has(&clipboard, "writeText"));
    let copying = can_write.then(|| navigator.clipboard().write_text(text));
    async {
        match copying {
            Some(copying) => JsFuture::from(copying).await.is_ok(),
            None => false,
        }
    }
}

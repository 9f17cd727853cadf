//! The clipboard.

use leptos::prelude::window;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;

/// Copies a text. False where the browser has no clipboard for this page, or refuses.
pub async fn copy(text: String) -> bool {
    let navigator = window().navigator();
    let clipboard = js_sys::Reflect::get(&navigator, &JsValue::from_str("clipboard"));
    if !clipboard.is_ok_and(|clipboard| super::has(&clipboard, "writeText")) {
        return false;
    }
    let copied = navigator.clipboard().write_text(&text);
    JsFuture::from(copied).await.is_ok()
}

//! The share sheet.

use leptos::prelude::window;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;
use web_sys::{FilePropertyBag, ShareData};

/// A file that this device can share. Made before the tap, because the share sheet opens only
/// inside it.
#[derive(Debug, Clone)]
pub struct Shareable(ShareData);

/// How sharing ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shared {
    /// It was handed over.
    Done,
    /// The person closed the sheet.
    Closed,
    /// The browser refused.
    Refused,
}

/// A text as a file to be shared, where this device shares such files.
#[must_use]
pub fn shareable(name: &str, text: &str) -> Option<Shareable> {
    let navigator = window().navigator();
    let object = JsValue::as_ref(&navigator);
    if !super::has(object, "canShare") || !super::has(object, "share") {
        return None;
    }
    // Chromium says that it can share such a file and then refuses by its ending, which must be
    // one of a short list without .json (from memory). Only Chromium has this property.
    let is_chromium = js_sys::Reflect::has(object, &"userAgentData".into()).unwrap_or(false);
    let name = if is_chromium && super::files::media_type(name) == "application/json" {
        [name, ".txt"].concat()
    } else {
        name.to_owned()
    };
    let kind = super::files::media_type(&name);
    let options = FilePropertyBag::new();
    options.set_type(kind);
    let parts = js_sys::Array::of1(&text.into());
    let file = web_sys::File::new_with_str_sequence_and_options(&parts, &name, &options).ok()?;
    let data = ShareData::new();
    data.set_files(&js_sys::Array::of1(&file));
    data.set_title(&name);
    navigator
        .can_share_with_data(&data)
        .then_some(Shareable(data))
}

impl Shareable {
    /// Opens the share sheet, at once. To be called while a tap is being handled.
    pub fn share(self) -> impl Future<Output = Shared> {
        let sheet = window().navigator().share_with_data(&self.0);
        async {
            match JsFuture::from(sheet).await {
                Ok(_) => Shared::Done,
                Err(error) if named(&error) == "AbortError" => Shared::Closed,
                Err(_) => Shared::Refused,
            }
        }
    }
}

fn named(error: &JsValue) -> String {
    js_sys::Reflect::get(error, &"name".into())
        .ok()
        .and_then(|name| name.as_string())
        .unwrap_or_default()
}

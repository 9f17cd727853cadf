//! Files in and out.

use leptos::prelude::document;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;
use web_sys::{BlobPropertyBag, Event, HtmlAnchorElement, HtmlInputElement, Url};

/// Reads the file that was chosen in a file field, no further than just beyond `most` bytes, so
/// that no file can use up the memory. None where there is none, or where it can't be read. The
/// field is emptied, so that the same file can be chosen again.
pub async fn open_file(event: Event, most: f64) -> Option<Vec<u8>> {
    let input: HtmlInputElement = event.target()?.dyn_into().ok()?;
    let file = input.files()?.get(0)?;
    let start = file.slice_with_f64_and_f64(0.0, most + 1.0).ok()?;
    let buffer = JsFuture::from(start.array_buffer()).await;
    input.set_value("");
    Some(js_sys::Uint8Array::new(&buffer.ok()?).to_vec())
}

/// A file that was chosen.
pub struct ChosenFile {
    /// Its name, as the device has it.
    pub name: String,
    /// How many bytes it has.
    pub size: f64,
    /// They themselves; `None` where there are more than asked for, or where they can't be read.
    pub bytes: Option<Vec<u8>>,
}

/// Reads the file that was chosen in a file field, if it has at most `most` bytes. None where there
/// is none. The field is emptied, so that the same file can be chosen again.
pub async fn open_named_file(event: Event, most: f64) -> Option<ChosenFile> {
    let input: HtmlInputElement = event.target()?.dyn_into().ok()?;
    let file = input.files()?.get(0)?;
    let (name, size) = (file.name(), file.size());
    let bytes = if size <= most {
        open_file(event, most).await
    } else {
        input.set_value("");
        None
    };
    Some(ChosenFile { name, size, bytes })
}

/// The media type of a file of ours, by its name.
#[must_use]
pub(super) fn media_type(name: &str) -> &'static str {
    match name.rsplit_once('.') {
        Some((_, "html")) => "text/html",
        Some((_, "txt")) => "text/plain",
        _ => "application/json",
    }
}

/// Saves a text as a file. On an iPhone's home screen this does nothing, and the browser doesn't say so.
pub fn download(name: &str, text: &str) -> bool {
    try_download(name, text).is_some()
}

fn try_download(name: &str, text: &str) -> Option<()> {
    let options = BlobPropertyBag::new();
    options.set_type(media_type(name));
    let parts = js_sys::Array::of1(&text.into());
    let blob = web_sys::Blob::new_with_str_sequence_and_options(&parts, &options).ok()?;
    let address = Url::create_object_url_with_blob(&blob).ok()?;
    let link: HtmlAnchorElement = document().create_element("a").ok()?.dyn_into().ok()?;
    link.set_href(&address);
    link.set_download(name);
    link.click();
    // The browser holds the blob until it is saved; the address itself is not needed any more.
    let _ = Url::revoke_object_url(&address);
    Some(())
}

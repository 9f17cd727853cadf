//! What the device gives: the clock, identifiers, the address bar, files, the share sheet, the
//! clipboard, the language and the state of the page itself.
//!
//! Nothing outside this folder and `store` touches the browser. Each method that a browser may
//! lack is looked for before it is called: a missing one would end the program.

mod address;
mod awake;
mod clipboard;
mod clock;
mod files;
mod language;
mod page;
mod random;
mod share;
mod sound;

pub use address::{go_to, hash, on_hash_change, replace_hash};
pub use awake::{can_stay_awake, stay_awake};
pub use clipboard::copy;
pub use clock::{every_minute, next, now, offset_minutes_at, soon, while_here_each_second};
pub use files::{ChosenFile, download, open_file, open_named_file};
pub use language::{locale, lower_case, region};
pub use page::{
    PageStatus, apply_update, ask_to_keep, focus, focus_from_nowhere, focus_in_place, on_leaving,
    on_status, page_status, print, set_look, set_title, show_from_top,
};
pub use random::{chance, new_id};
pub use share::{Shareable, Shared, shareable};
pub use sound::{has_sound, prepare_practice, sound};

use wasm_bindgen::JsValue;

/// Whether an object of the browser has a method of this name.
fn has(object: &JsValue, method: &str) -> bool {
    js_sys::Reflect::get(object, &JsValue::from_str(method)).is_ok_and(|found| found.is_function())
}

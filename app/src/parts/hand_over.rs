//! Handing a file to the device: shared or saved, with how that went said aloud.

use leptos::task::spawn_local;
use wording::page;

use crate::device::{self, Shareable, Shared};
use crate::session::Session;

/// Opens the share sheet. To be called inside the tap; `note` is called once it was handed over.
pub fn share(session: Session, shareable: Shareable, note: impl FnOnce() + 'static) {
    let sheet = shareable.share();
    spawn_local(async move {
        match sheet.await {
            Shared::Done => {
                note();
                session.say(page::SHARED);
            }
            Shared::Closed => {}
            Shared::Refused => session.say(page::NOT_SHARED),
        }
    });
}

/// Saves a text as a file; `note` is called where the browser took it.
pub fn save(session: Session, name: &str, text: &str, note: impl FnOnce()) {
    if device::download(name, text) {
        note();
        session.say(page::SAVED);
    } else {
        session.say(page::NOT_SAVED);
    }
}

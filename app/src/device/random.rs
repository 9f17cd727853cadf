//! Identifiers that no other device makes, and chance.

use job::Id;
use wasm_bindgen::JsValue;

/// A new identifier. From `randomUUID` where the page was loaded over a secure connection,
/// otherwise from sixteen random bytes.
#[must_use]
pub fn new_id() -> Id {
    let id = random_uuid().unwrap_or_else(from_bytes);
    // Hexadecimal digits and hyphens, never empty and far below the limit.
    #[allow(clippy::expect_used)]
    Id::new(&id).expect("hexadecimal digits make an identifier")
}

/// Bits of chance.
#[must_use]
pub fn chance() -> u64 {
    // Any number up to 2^53: an f64 holds them all.
    (js_sys::Math::random() * 9_007_199_254_740_992.0) as u64
}

fn random_uuid() -> Option<String> {
    let crypto = web_sys::window()?.crypto().ok()?;
    let there = super::has(JsValue::as_ref(&crypto), "randomUUID");
    there.then(|| crypto.random_uuid())
}

fn from_bytes() -> String {
    let mut bytes = [0u8; 16];
    let filled = web_sys::window()
        .and_then(|window| window.crypto().ok())
        .is_some_and(|crypto| crypto.get_random_values_with_u8_array(&mut bytes).is_ok());
    if !filled {
        // No browser that can run this lacks it; time and chance are better than one identifier for all.
        let seed = js_sys::Date::now() * 1e3 + js_sys::Math::random() * 1e3;
        bytes[..8].copy_from_slice(&(seed as u64).to_be_bytes());
        bytes[8..].copy_from_slice(&((js_sys::Math::random() * 1e18) as u64).to_be_bytes());
    }
    bytes
        .iter()
        .flat_map(|byte| [byte >> 4, byte & 15])
        .map(hex)
        .collect()
}

fn hex(digit: u8) -> char {
    char::from_digit(u32::from(digit), 16).unwrap_or('0')
}

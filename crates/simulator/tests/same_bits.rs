//! The bits of many machines' first quarter of an hour, as one number: the same on every computer,
//! in the browser too (`app/tests/simulated_machines.rs`), and changed by nothing but a change of
//! the arithmetic.

// What prepares a test may stop it, as the test itself may.
#![allow(clippy::unwrap_used)]

#[path = "same_bits/fingerprint.rs"]
mod fingerprint;

#[test]
fn machines_have_the_bits_that_they_have_everywhere() {
    assert_eq!(
        fingerprint::of_machines(),
        fingerprint::KNOWN,
        "the arithmetic has changed"
    );
}

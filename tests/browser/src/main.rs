//! Whole journeys in real browser engines.
fn main() {}

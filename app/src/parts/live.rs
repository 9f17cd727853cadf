//! A piece of screen that follows what it reads.

use leptos::ev::MouseEvent;
use leptos::prelude::*;

/// A piece of screen that is drawn anew whenever something that it reads changes.
///
/// All of them have one type: else the program would hold what it takes to follow once for each.
pub fn live<V: IntoView + 'static>(
    piece: impl Fn() -> V + Send + 'static,
) -> Box<dyn FnMut() -> AnyView + Send> {
    Box::new(move || piece().into_any())
}

/// What a tap does. Boxed for the same reason.
pub fn tap(then: impl FnMut(MouseEvent) + 'static) -> Box<dyn FnMut(MouseEvent)> {
    Box::new(then)
}

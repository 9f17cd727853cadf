//! The clock on the wall.

use std::time::Duration;

use job::Moment;
use leptos::prelude::{
    on_cleanup, request_animation_frame, set_interval, set_interval_with_handle, set_timeout,
};

const MINUTE: Duration = Duration::from_secs(60);

/// Now, as the clock of this device shows it.
#[must_use]
pub fn now() -> Moment {
    let date = js_sys::Date::new_0();
    // Both are whole numbers by definition of the browser's clock.
    let milliseconds = date.get_time() as i64;
    let offset = -date.get_timezone_offset() as i16;
    Moment::new(milliseconds, offset).unwrap_or(EPOCH)
}

/// How many minutes east of UTC this device's clock was, or will be, at a moment.
#[must_use]
pub fn offset_minutes_at(unix_milliseconds: f64) -> i16 {
    let date = js_sys::Date::new(&unix_milliseconds.into());
    -date.get_timezone_offset() as i16
}

/// Calls back once a minute for as long as the page is open.
pub fn every_minute(then: impl Fn() + 'static) {
    set_interval(then, MINUTE);
}

/// Calls back each second until the part of the page that asks for it is gone.
pub fn while_here_each_second(then: impl Fn() + 'static) {
    if let Ok(handle) = set_interval_with_handle(then, Duration::from_secs(1)) {
        on_cleanup(move || handle.clear());
    }
}

/// Calls back once what is on its way to the screen has been painted.
pub fn soon(then: impl FnOnce() + 'static) {
    request_animation_frame(move || set_timeout(then, Duration::ZERO));
}

/// Calls back when what has happened meanwhile was heeded.
pub fn next(then: impl FnOnce() + 'static) {
    set_timeout(then, Duration::ZERO);
}

/// What a clock outside the years that can be written is taken for: a job can still be made.
const EPOCH: Moment = match Moment::new(0, 0) {
    Ok(moment) => moment,
    // Zero lies inside both ranges; this is worked out while compiling.
    Err(_) => unreachable!(),
};

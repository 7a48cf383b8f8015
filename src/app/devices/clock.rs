//! The phone's clock: now, and a tick a second while the page is seen.

use leptos::prelude::*;
use slantlight::units::Instant;

use super::visibility;

/// What the phone's clock says.
pub fn now() -> Instant {
    Instant::from_unix_millis(js_sys::Date::now() as i64)
}

/// Now, anew each second while the page is seen, and at once when it is seen again (after a sleep too).
pub fn ticking() -> ReadSignal<Instant> {
    let (time, set_time) = signal(now());
    let waiting = StoredValue::new(false);
    tick(set_time, waiting);
    visibility::on_change(move |seen| {
        if seen {
            tick(set_time, waiting);
        }
    });
    time
}

/// Says the time and waits for the next full second. A hidden page lets the chain end.
fn tick(set_time: WriteSignal<Instant>, waiting: StoredValue<bool>) {
    let time = now();
    set_time.set(time);
    if waiting.get_value() || !visibility::is_seen() {
        return;
    }
    waiting.set_value(true);
    let rest = 1000 - time.unix_millis().rem_euclid(1000);
    set_timeout(
        move || {
            waiting.set_value(false);
            tick(set_time, waiting);
        },
        core::time::Duration::from_millis(rest.unsigned_abs()),
    );
}

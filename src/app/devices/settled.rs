//! Work that waits until nothing has moved for a moment, so that a drag stays smooth.

use std::time::Duration as Pause;

use leptos::prelude::*;

/// How long nothing must move. Our own choice: longer than between two moves of a hand.
const STILL: Pause = Pause::from_millis(250);

/// What `work` says once nothing that `follow` reads has changed for a moment; empty before the first time.
pub fn settled(follow: impl Fn() + 'static, work: impl Fn() -> String + Copy + 'static) -> RwSignal<String> {
    let said = RwSignal::new(String::new());
    let waits = StoredValue::new(None::<TimeoutHandle>);
    let stop = move || {
        if let Some(handle) = waits.try_get_value().flatten() {
            handle.clear();
        }
    };
    // A page may be left before its time has come: then nothing it would read is there any more.
    let say = move || {
        if said.try_get_untracked().is_some() {
            said.set(untrack(work));
        }
    };
    Effect::new(move |_| {
        follow();
        stop();
        waits.set_value(set_timeout_with_handle(say, STILL).ok());
    });
    on_cleanup(stop);
    said
}

//! Now: the instant that all rooms show, and the way back to now.

use leptos::prelude::*;
use slantlight::units::{Duration, Instant};
use slantlight::words;

use crate::app::devices::zone;
use crate::app::parts::Frame;
use crate::app::store::Store;

/// The room of the present.
#[component]
pub fn Now() -> impl IntoView {
    let store = Store::here();
    let phone_zone = zone::of_the_phone();
    let local = move |instant: Instant| {
        let offset =
            phone_zone.as_deref().and_then(|name| zone::offset(name, instant)).unwrap_or(Duration::ZERO);
        ((instant + offset).to_utc(), words::offset(offset))
    };
    let subtitle = Signal::derive(move || {
        let (local, offset) = local(store.moment.to_the_minute());
        let time = words::clock(local.time(), store.settings.get().clock);
        format!("{}, {time} {offset}", words::date(local.date()))
    });
    view! {
        <Frame title="Now" subtitle=subtitle>
            <Elsewhen />
        </Frame>
    }
}

/// Says that the rooms stand at another instant, and leads back.
#[component]
pub fn Elsewhen() -> impl IntoView {
    let moment = Store::here().moment;
    view! {
        <Show when=move || !moment.is_now()>
            <div class="elsewhen" role="status">
                <span>"Not now: a chosen time"</span>
                <button type="button" class="button small" on:click=move |_| moment.back_to_now()>"Back to now"</button>
            </div>
        </Show>
    }
}

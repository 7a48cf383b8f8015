//! Now: where the sun stands at the instant that all rooms show, at the current location.

use leptos::prelude::*;
use slantlight::project::route::Route;
use slantlight::sky::sun::Sun;
use slantlight::units::Degrees;
use slantlight::words;

use crate::app::parts::{EmptyState, Fact, Facts, Frame};
use crate::app::store::Store;

/// The room of the present.
#[component]
pub fn Now() -> impl IntoView {
    let store = Store::here();
    let location = Memo::new(move |_| store.current_location());
    let title = Signal::derive(move || location.get().map_or("Now".to_owned(), |place| place.name.clone()));
    let subtitle = Signal::derive(move || stamp(store));
    view! {
        <Frame title=title subtitle=subtitle>
            <Show
                when=move || location.with(Option::is_some)
                fallback=|| {
                    view! {
                        <EmptyState says="The sun needs a place: with one, this page says where it stands.">
                            <a class="button" href=Route::Places.href()>"Add a place"</a>
                        </EmptyState>
                    }
                }
            >
                <Facts facts=Signal::derive(move || sun_facts(store)) />
            </Show>
        </Frame>
    }
}

/// "Thu 11 Mar 2027, 17:28 UTC".
fn stamp(store: Store) -> String {
    let (zone, at) = (store.current_zone(), store.moment.to_the_minute());
    let local = zone.local(at);
    let time = words::clock(local.time(), store.settings.get().clock);
    format!("{}, {time} {}", words::date(local.date()), words::offset(zone.offset_at(at)))
}

/// Where the sun stands.
fn sun_facts(store: Store) -> Vec<Fact> {
    let at = store.moment.to_the_minute();
    let Some(location) = store.current_location() else { return Vec::new() };
    let sun = Sun::new(location.site).apparent(at);
    vec![
        Fact::new(words::degrees_fine(Degrees::from_degrees(sun.height().degrees())), "sun\u{2019}s height"),
        Fact::new(words::bearing(sun.bearing()), "bearing, true"),
    ]
}

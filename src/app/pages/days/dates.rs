//! The dates of the shoot: chosen one by one, or suggested by their light.

use leptos::prelude::*;
use slantlight::project::shoot::{Shoot, suggest};
use slantlight::words;

use super::{put, zones};
use crate::app::devices::clock;
use crate::app::store::Store;

/// The chosen dates, a field for one more, and a suggestion.
pub fn dates(store: Store) -> AnyView {
    let chosen = move || {
        let days = store.desk.with(|project| project.shoot.days.clone());
        let one = move |date| {
            let name = words::date(date);
            let label = format!("Remove {name}");
            let remove = move |_| change(store, move |shoot| shoot.days.retain(|day| *day != date));
            view! { <button type="button" class="button" aria-label=label on:click=remove>{name}" ×"</button> }
                .into_any()
        };
        days.into_iter().map(one).collect::<Vec<AnyView>>()
    };
    let add = move |event| {
        if let Ok(date) = event_target_value(&event).parse() {
            change(store, move |shoot| {
                shoot.days.retain(|day| *day != date);
                shoot.days.push(date);
                shoot.days.sort_unstable();
            });
        }
    };
    let suggested = move |_| {
        let project = store.desk.latest();
        let today = store.zones.of_the_phone().date(clock::now());
        let days = suggest::suggested(&project, &zones(store), today);
        change(store, move |shoot| shoot.days = days);
    };
    view! {
        <div class="chips" role="group" aria-label="Shoot days">{chosen}</div>
        <div class="field">
            <label for="day-to-add">"Add a shoot day"</label>
            <input type="date" id="day-to-add" on:change=add />
        </div>
        <p class="spaced"><button type="button" class="button wide" on:click=suggested>"Suggest days by their light"</button></p>
    }
    .into_any()
}

fn change(store: Store, act: impl FnOnce(&mut Shoot)) {
    let mut shoot = store.desk.latest().shoot.clone();
    act(&mut shoot);
    put(store, "choose the shoot days", shoot);
}

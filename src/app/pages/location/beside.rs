//! On a desk: another location beside this one.

use leptos::prelude::*;

use super::shown::Shown;
use super::{Around, marks, position, rooms};

/// Which location stands beside the one with the id `own`; an empty id is none. Only a wide screen shows the choice.
pub fn choice(shown: Shown, own: &str, beside: RwSignal<String>) -> AnyView {
    let others: Vec<(String, String)> = shown.store.desk.with(|project| {
        let others = project.locations.iter().filter(|place| place.id != own);
        others.map(|place| (place.id.clone(), place.name.clone())).collect()
    });
    let option = |(id, name)| view! { <option value=id>{name}</option> }.into_any();
    view! {
        <label class="field on-desk">"Another place beside this one"
            <select on:change=move |event| beside.set(event_target_value(&event))>
                <option value="">"none"</option>
                {others.into_iter().map(option).collect::<Vec<AnyView>>()}
            </select>
        </label>
    }
    .into_any()
}

/// The other location, all of it.
pub fn other(id: String) -> AnyView {
    let shown = Shown::of(id);
    let name = move || shown.with(|place| place.name.clone());
    view! {
        <section aria-label="Beside">
            <h2>{name}</h2>
            <p class="soft">{move || shown.subtitle()}</p>
            <rooms::Rooms shown=shown />
            <marks::Marks shown=shown />
            <position::Position shown=shown />
            <Around shown=shown />
        </section>
    }
    .into_any()
}

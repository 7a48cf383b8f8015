//! Lights that are at the place already: what a meter said of each, where it is, its colour, mains and hours.

use leptos::prelude::*;
use slantlight::light::exposure::flicker::Mains;
use slantlight::plan::kit::There;
use slantlight::plan::levels::rows;
use slantlight::plan::wish::ClockRange;
use slantlight::units::{Bearing, Lux};

use super::colour::ColourFields;
use super::reading::{change, with};
use super::shown::Lit;
use crate::app::parts::{Entry, NumberField, Segmented, TextField};

const MAINS: [Option<Mains>; 3] = [None, Some(Mains::Hertz50), Some(Mains::Hertz60)];

/// The list, and one more.
#[component]
pub fn Lights(lit: Lit) -> impl IntoView {
    let ids = Memo::new(move |_| {
        with(lit, |location| location.lights.iter().map(|one| one.id.clone()).collect::<Vec<_>>())
            .unwrap_or_default()
    });
    let add = move |_| {
        let id = lit.shown.store.fresh_id();
        change(lit, |location| location.lights.push(There::usual(&id)));
    };
    view! {
        <div class="section-head ruled"><h2>"Lights that are there"</h2><span>"street lamps, the room's own"</span></div>
        <For each=move || ids.get() key=String::clone let:id><Light lit=lit id=id /></For>
        <p class="spaced"><button type="button" class="button wide" on:click=add>"Add a light that is there"</button></p>
    }
}

/// One of them.
#[component]
fn Light(lit: Lit, id: String) -> impl IntoView {
    let id = StoredValue::new(id);
    let light = Memo::new(move |_| {
        let found = with(lit, |location| {
            id.with_value(|id| location.lights.iter().find(|one| one.id == *id).cloned())
        });
        found.flatten().unwrap_or_else(|| There::usual(""))
    });
    let change = move |to: &dyn Fn(&mut There)| {
        change(lit, |location| {
            if let Some(one) = id.with_value(|id| location.lights.iter_mut().find(|one| one.id == *id)) {
                to(one);
            }
        });
    };
    let remove = move |_| {
        super::reading::change(lit, |location| {
            id.with_value(|id| location.lights.retain(|one| one.id != *id))
        })
    };
    let clock = move || lit.shown.store.settings.get().clock;
    let name = Signal::derive(move || light.with(|one| one.name.clone()));
    let number = move |read: fn(&There) -> f64| Signal::derive(move || light.with(read));
    let place = move |read: fn(&There) -> usize| Signal::derive(move || light.with(read));
    let is_aside = move || light.with(|one| one.bearing.is_some());
    let hours = move |text: String, is_end: bool| {
        let (from, to) = if is_end { (None, Some(text)) } else { (Some(text), None) };
        change(&|one| one.hours = ClockRange::typed(one.hours, from.as_deref(), to.as_deref()));
    };
    let time = move |label: &'static str, is_end: bool| {
        let value = move || light.with(|one| rows::hour_typed(one.hours, is_end));
        view! {
            <label class="field">
                {label}
                <input type="time" prop:value=value on:change=move |event| hours(event_target_value(&event), is_end) />
            </label>
        }
    };
    view! {
        <Entry title=name sub=Signal::derive(move || light.with(|one| rows::there(one, clock())))>
            <TextField label="Its name" value=name on_change=move |text: String| change(&|one| one.name.clone_from(&text)) />
            <NumberField label="Light at the mark, the meter facing it" unit="lx" limits=(0.0, 1e6) decimals=1
                value=number(|one| one.lux.lux()) on_change=move |to| change(&|one| one.lux = Lux::from_lux(to)) />
            <Segmented label="It comes from" names=["all around", "one side"].map(str::to_owned).to_vec()
                chosen=place(|one| usize::from(one.bearing.is_some()))
                on_choose=move |at: usize| change(&|one| one.bearing = (at == 1).then(|| one.bearing.unwrap_or_default())) />
            <Show when=is_aside>
                <NumberField label="It stands to" unit="°" limits=(0.0, 360.0) decimals=0
                    value=number(|one| one.bearing.unwrap_or_default().degrees())
                    on_change=move |to| change(&|one| one.bearing = Some(Bearing::from_degrees(to))) />
            </Show>
            <ColourFields colour=Signal::derive(move || light.with(|one| one.colour)) on_change=move |to| change(&|one| one.colour = to) />
            <Segmented label="Mains" names=["not known", "50 Hz", "60 Hz"].map(str::to_owned).to_vec()
                chosen=place(|one| MAINS.iter().position(|mains| *mains == one.mains).unwrap_or_default())
                on_choose=move |at: usize| change(&|one| one.mains = MAINS[at]) />
            {time("On from (empty: always)", false)}
            {time("until", true)}
            <button type="button" class="button" on:click=remove>"Remove this light"</button>
        </Entry>
    }
}

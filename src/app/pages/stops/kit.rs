//! The kit: what stands at this set-up, what is in the van, and generic examples to begin with.

use leptos::prelude::*;
use slantlight::plan::kit::{Gear, Placed, Side, generic};
use slantlight::plan::levels::rows;
use slantlight::project::edit::Edit;
use slantlight::units::{Metres, Share};

use super::piece::Piece;
use super::shown::Lit;
use crate::app::parts::{Entry, LengthField, NumberField, Segmented};

/// What is brought.
#[component]
pub fn Kit(lit: Lit) -> impl IntoView {
    let store = lit.shown.store;
    let count = Memo::new(move |_| lit.shown.with(|set_up| set_up.rig.placed.len()).unwrap_or_default());
    let ids = Memo::new(move |_| {
        store.desk.with(|project| project.kit.iter().map(|gear| gear.id.clone()).collect::<Vec<_>>())
    });
    view! {
        <section class="levels-kit">
            <div class="section-head ruled"><h2>"Standing here"</h2><span>"at this set-up"</span></div>
            {move || (0..count.get()).map(|at| view! { <Standing lit=lit at=at /> }).collect_view()}
            <Show when=move || count.get() == 0>
                <p class="soft">"Nothing yet: only daylight and what is there."</p>
            </Show>
            <div class="section-head ruled"><h2>"Kit"</h2><span>"what is in the van"</span></div>
            <For each=move || ids.get() key=String::clone let:id><Piece lit=lit id=id /></For>
            <AddExample lit=lit />
        </section>
    }
}

/// One piece that stands here.
#[component]
fn Standing(lit: Lit, at: usize) -> impl IntoView {
    let store = lit.shown.store;
    let placed = move || lit.shown.with(|set_up| set_up.rig.placed.get(at).cloned()).flatten();
    let gear = move || {
        let id = placed()?.gear;
        store.desk.with(|project| project.kit.iter().find(|gear| gear.id == id).map(|gear| Gear::clone(gear)))
    };
    let change = move |change: &dyn Fn(&mut Placed)| {
        lit.shown.change(|set_up| {
            if let Some(placed) = set_up.rig.placed.get_mut(at) {
                change(placed);
            }
        });
    };
    let remove = move |_| {
        lit.shown.change(|set_up| {
            if at < set_up.rig.placed.len() {
                set_up.rig.placed.remove(at);
            }
        });
    };
    let title = Signal::derive(move || gear().map(|gear| gear.name).unwrap_or_default());
    let sub = Signal::derive(move || {
        let units = store.settings.get().units;
        placed().map(|placed| rows::placed(&placed, gear().as_ref(), units)).unwrap_or_default()
    });
    let side = Signal::derive(move || {
        placed().and_then(|placed| Side::ALL.iter().position(|side| *side == placed.side)).unwrap_or_default()
    });
    let distance = Signal::derive(move || placed().map(|placed| placed.distance).unwrap_or_default());
    let level = Signal::derive(move || placed().map_or(100.0, |placed| placed.level.percent()));
    let units = Signal::derive(move || store.settings.get().units);
    view! {
        <Entry title=title sub=sub>
            <Segmented label="Works from" names=Side::ALL.map(|side| side.word().to_owned()).to_vec() chosen=side
                on_choose=move |at: usize| change(&|placed| placed.side = Side::ALL[at]) />
            <LengthField label="Distance" value=distance units=units limits=(0.1, 200.0)
                on_change=move |to: Metres| change(&|placed| placed.distance = to) />
            <NumberField label="Dimmed to" unit="%" value=level limits=(1.0, 100.0) decimals=0
                on_change=move |to| change(&|placed| placed.level = Share::clamped(to / 100.0)) />
            <button type="button" class="button" on:click=remove>"Take it away"</button>
        </Entry>
    }
}

/// Adds an example to the kit.
#[component]
fn AddExample(lit: Lit) -> impl IntoView {
    let store = lit.shown.store;
    let add = move |event| {
        let value = event_target_value(&event);
        if let Some(one) = generic::examples().into_iter().find(|one| one.0 == value) {
            store.edit(Edit::PutGear(Box::new(generic::gear(&store.fresh_id(), one))));
        }
    };
    let option = |(name, _): (&'static str, _)| view! { <option value=name>{name}</option> };
    view! {
        <div class="field">
            <label for="add-gear">"Add a generic example (its numbers are invented)"</label>
            <select id="add-gear" on:change=add prop:value="">
                <option value="">"Choose"</option>
                {generic::examples().into_iter().map(option).collect_view()}
            </select>
        </div>
    }
}

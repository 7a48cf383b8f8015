//! One set-up of the plan, by hand: when, which day, pinned or not, in another's place, or out.

use leptos::prelude::*;
use slantlight::project::shoot::hand::{self, Choice};

use super::{put, zones};
use crate::app::parts::{Notes, Sheet, TextField};
use crate::app::store::Store;
use slantlight::project::route::Route;

/// The sheet over the page, there while a set-up is chosen.
pub fn sheet(store: Store, chosen: RwSignal<Option<String>>) -> AnyView {
    let open = RwSignal::new(false);
    // Each follows the other, and only where it differs: a signal tells of every set, even of the same value.
    Effect::new(move |_| {
        let is_chosen = chosen.with(Option::is_some);
        if open.get_untracked() != is_chosen {
            open.set(is_chosen);
        }
    });
    Effect::new(move |_| {
        if !open.get() && chosen.with_untracked(Option::is_some) {
            chosen.set(None);
        }
    });
    view! {
        <Sheet open=open title="This set-up">
            {move || chosen.get().map(|id| inside(store, id, open))}
        </Sheet>
    }
    .into_any()
}

fn inside(store: Store, id: String, open: RwSignal<bool>) -> AnyView {
    let notes = Notes::here();
    let choice = hand::choice(&store.desk.latest(), &id, &zones(store));
    let Some(Choice { title, clock, day, days, others, pinned, matters }) = choice else {
        return ().into_any();
    };
    let date = RwSignal::new(day);
    let place = {
        let (id, days) = (id.clone(), days.clone());
        move |time: String| {
            let project = store.desk.latest();
            match hand::at(&project, &id, (&days, date.get_untracked()), &time, &zones(store)) {
                Ok(shoot) => drop(put(store, "move a set-up", shoot)),
                Err(why) => notes.say(why),
            }
        }
    };
    let typed = RwSignal::new(clock);
    let move_it = {
        let place = place.clone();
        move |_| place(typed.get_untracked())
    };
    let act = move |label: &'static str, shoot| {
        put(store, label, shoot);
        open.set(false);
    };
    let shoot = move || store.desk.latest().shoot.clone();
    let (a, b, c, d) = (id.clone(), id.clone(), id.clone(), id.clone());
    let dates = days.iter().enumerate().map(|(n, (_, words))| {
        view! { <option value=n.to_string() selected=n == day>{words.clone()}</option> }.into_any()
    });
    let with = others.into_iter().map(|(id, words)| view! { <option value=id>{words}</option> }.into_any());
    view! {
        <p class="row-title">{title}</p>
        <label class="field">"Day"
            <select on:change=move |event| date.set(event_target_value(&event).parse().unwrap_or(0))>
                {dates.collect::<Vec<AnyView>>()}
            </select>
        </label>
        <TextField label="Begins at" value=typed on_change=move |time: String| typed.set(time) />
        <button type="button" class="button wide primary" on:click=move_it>"Put it there"</button>
        <button type="button" class="button wide" aria-pressed=pinned.to_string()
            on:click=move |_| act("pin a set-up", shoot().pinned(&a, !pinned))>
            {if pinned { "Pinned: let go" } else { "Pin: planning leaves it there" }}
        </button>
        <button type="button" class="button wide" aria-pressed=matters.to_string()
            on:click=move |_| act("weigh a set-up", shoot().weighted(&b, if matters { 1 } else { 3 }))>
            {if matters { "Matters more: as others again" } else { "Matters more than others" }}
        </button>
        <label class="field">"Swap places with"
            <select on:change=move |event| act("swap two set-ups", shoot().swapped(&c, &event_target_value(&event)))>
                <option value="">"–"</option>
                {with.collect::<Vec<AnyView>>()}
            </select>
        </label>
        <button type="button" class="button wide" on:click=move |_| act("take a set-up out", shoot().removed(&d))>
            "Take it out of the plan"
        </button>
        <p><a href=Route::SetUp(id).href()>"Its light"</a></p>
    }
    .into_any()
}

//! The lighting plan of a set-up: the overhead to scale, sent as a picture with a short text, or printed.

use leptos::prelude::*;
use slantlight::draw::overhead::{Overhead, Style, of_set_up};
use slantlight::draw::{Drawing, ink};
use slantlight::project::document::SavedSlot;
use slantlight::project::route::Route;
use slantlight::project::send::{Candidate, file_stem};
use slantlight::units::Span;
use slantlight::words;

use crate::app::devices::share::{self, Shared};
use crate::app::devices::{download, png};
use crate::app::parts::{Chips, EmptyState, Frame, Notes, Picture};
use crate::app::sending;
use crate::app::store::Store;

/// The page for the set-up with this id. On a desk the plan of a second slot stands beside the first one's.
pub fn lighting_plan(id: String) -> AnyView {
    let store = Store::here();
    store.stand_by(&id);
    let back = (String::from("Set-up"), Route::SetUp(id.clone()).href());
    let (first, second) = (plan(store, id.clone(), 0), StoredValue::new(id.clone()));
    let has_two = move || 1 < second.with_value(|id| saved(store, id).len());
    view! {
        <Frame title="Lighting plan" subtitle="from above, to scale" back=back
            more=move || view! { <div class="second-plan"><Show when=has_two>{plan(store, second.get_value(), 1)}</Show></div> }>
            {first}
        </Frame>
    }
    .into_any()
}

/// The plan of a slot that can be chosen, to begin with that of a place in the list.
fn plan(store: Store, id: String, place: usize) -> AnyView {
    let chosen = RwSignal::new(place);
    let names = {
        let id = id.clone();
        Signal::derive(move || saved(store, &id).iter().map(|slot| name(store, slot)).collect::<Vec<_>>())
    };
    let inside = move || match drawn(store, &id, chosen.get()) {
        Some((drawing, text)) => sheet(store, drawing, text),
        None => nothing(&id),
    };
    view! {
        <Show when=move || names.with(|names| 1 < names.len())>
            <Chips label="Slot" names=names chosen=Signal::derive(move || Some(chosen.get())) on_choose=move |place| chosen.set(place) />
        </Show>
        {inside}
    }
    .into_any()
}

fn saved(store: Store, id: &str) -> Vec<SavedSlot> {
    store.desk.with(|project| project.set_up(id).map(|(_, set_up)| set_up.saved.clone())).unwrap_or_default()
}

/// "Thu 11 Mar, 17:38".
fn name(store: Store, slot: &SavedSlot) -> String {
    let local = words::to_the_minute(store.current_zone().local(slot.start));
    format!("{}, {}", words::date_short(local.date()), words::clock(local.time(), store.settings.get().clock))
}

/// The plan of the chosen slot, and the text that goes with it; tracked.
fn drawn(store: Store, id: &str, chosen: usize) -> Option<(Drawing, String)> {
    let settings = store.settings.get();
    let style = Style { clock: settings.clock, units: settings.units };
    let zone = store.current_zone();
    store.desk.with(|project| {
        let found = project.set_up(id)?;
        let slot = found.1.saved.get(chosen).or(found.1.saved.first())?;
        let plan = of_set_up(project, found, Span::new(slot.start, slot.end)?, &zone, style)?;
        let Overhead { title, lines, .. } = &plan;
        Some((plan.drawing(), format!("{title}\n{}", lines.join("\n"))))
    })
}

/// The plan with the ways it goes out.
fn sheet(store: Store, drawing: Drawing, text: String) -> AnyView {
    let notes = Notes::here();
    let (view, svg) = (drawing.view, ink::svg(&drawing));
    let stem = file_stem(&format!("{} plan", store.desk.latest().title));
    let file = RwSignal::new(None::<Candidate>);
    // Made before the tap: the share sheet must be asked inside it.
    png::of_svg(&svg, view, move |bytes| {
        file.set(bytes.map(|bytes| Candidate {
            name: format!("{stem}.png"),
            media_type: "image/png",
            bytes,
        }));
    });
    let send = move |_| {
        let Some(file) = file.get_untracked() else { return };
        share::share_picture("Lighting plan", &text, &file.clone(), move |shared| {
            if shared == Shared::Unable {
                notes.say(match download::download(&file.name, file.media_type, &file.bytes) {
                    true => format!("{} is in the downloads.", file.name),
                    false => "This browser neither sends nor downloads files. Print it instead.".to_owned(),
                });
            }
        });
    };
    let send_project = move |_| sending::send(store, notes, &store.desk.latest());
    view! {
        <div class="plan-paper"><Picture drawing=Signal::stored(drawing) /></div>
        <div class="row unprinted plan-ways">
            <button type="button" class="button primary grow" disabled=move || file.with(Option::is_none) on:click=send>"To the crew"</button>
            <button type="button" class="button grow" on:click=move |_| drop(window().print())>"Print"</button>
            <button type="button" class="button grow" on:click=send_project>"Project file"</button>
        </div>
    }
    .into_any()
}

fn nothing(id: &str) -> AnyView {
    let href = Route::SetUp(id.to_owned()).href();
    view! {
        <EmptyState says="A plan shows one slot. Give the set-up a place and save a slot first.">
            <a class="button" href=href>"To the set-up"</a>
        </EmptyState>
    }
    .into_any()
}

//! Marks in the open: metres east and north of the location, the height of the face, and openings sighted from there.

use leptos::prelude::*;
use slantlight::place::mark::Mark;
use slantlight::project::edit::Edit;
use slantlight::project::start;
use slantlight::units::Metres;

use super::shown::Shown;
use crate::app::pages::mark_fold::{Axes, MarkFold};
use crate::app::pages::sight;
use crate::app::parts::{EmptyState, SectionHead};

/// Of the open.
const AXES: Axes = Axes { x: "east", y: "north", limits: (-5000.0, 5000.0) };

/// The list.
#[component]
pub fn Marks(shown: Shown) -> impl IntoView {
    let ids = Memo::new(move |_| {
        shown
            .with(|place| place.marks.iter().map(|mark| mark.id.clone()).collect::<Vec<_>>())
            .unwrap_or_default()
    });
    view! {
        <section>
            <SectionHead title="Marks in the open" ruled=true />
            <Show when=move || ids.with(Vec::is_empty)>
                <EmptyState says="No mark in the open yet. Add one where the subject will stand, or sight a window from there.">""</EmptyState>
            </Show>
            <For each=move || ids.get() key=String::clone let:id>
                <One shown=shown id=id />
            </For>
            <div class="row spaced">
                <button type="button" class="button grow" on:click=move |_| add(shown)>"Add a mark"</button>
                <button type="button" class="button grow" on:click=|_| sight::go()>"Sight a window"</button>
            </div>
        </section>
    }
}

#[component]
fn One(shown: Shown, id: String) -> impl IntoView {
    let mark = Memo::new(move |_| {
        shown.with(|place| place.marks.iter().find(|mark| mark.id == id).cloned()).flatten()
    });
    let put = move |mark: Mark| {
        if let Some(location) = shown.with(|place| place.id.clone()) {
            shown.store.edit(Edit::PutMark { location, room: None, mark });
        }
    };
    view! { <MarkFold mark=mark axes=AXES on_change=put /> }
}

/// Adds a mark at the location itself.
fn add(shown: Shown) {
    let id = shown.store.fresh_id();
    shown.change(|place| {
        let zero = Metres::default();
        let mark = start::mark(&id, &place.marks, [zero, zero]);
        place.marks.push(mark);
    });
}

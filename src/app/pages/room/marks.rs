//! Marks of the room: which one is shown, where each is, add, remove with undo.

use leptos::prelude::*;
use slantlight::place::mark::Mark;
use slantlight::project::start;

use super::shown::Shown;
use crate::app::pages::mark_fold::{Axes, MarkFold};
use crate::app::parts::{Chips, EmptyState, SectionHead};

/// Of a room.
const AXES: Axes = Axes { x: "along wall 1", y: "into the room", limits: (-200.0, 200.0) };

/// The list.
#[component]
pub fn Marks(shown: Shown) -> impl IntoView {
    let marks = Memo::new(move |_| {
        shown
            .with(|room| {
                room.marks.iter().map(|mark| (mark.id.clone(), mark.name.clone())).collect::<Vec<_>>()
            })
            .unwrap_or_default()
    });
    let names = Signal::derive(move || {
        marks.with(|marks| marks.iter().map(|(_, name)| name.clone()).collect::<Vec<_>>())
    });
    let chosen = Signal::derive(move || {
        let shown = shown.mark();
        marks.with(|marks| marks.iter().position(|(id, _)| Some(id) == shown.as_ref()))
    });
    let choose = move |place: usize| {
        if let Some((id, _)) = marks.with_untracked(|marks| marks.get(place).cloned()) {
            shown.choose_mark(&id);
        }
    };
    view! {
        <section>
            <SectionHead title="Marks" beside=Signal::stored("where a face is".to_owned()) ruled=true />
            <Show when=move || marks.with(Vec::is_empty)>
                <EmptyState says="No mark yet. Add one where the subject will be; then the times of its sun stand under the drawing.">""</EmptyState>
            </Show>
            <Show when=move || { marks.with(Vec::len) > 1 }>
                <p class="soft spaced-small">"Sun is shown for:"</p>
                <Chips label="Mark that is shown" names=names chosen=chosen on_choose=choose />
            </Show>
            <For each=move || marks.get() key=|(id, _)| id.clone() let:one>
                <One shown=shown id=one.0 />
            </For>
            <p class="spaced"><button type="button" class="button wide" on:click=move |_| add(shown)>"Add a mark"</button></p>
        </section>
    }
}

#[component]
fn One(shown: Shown, id: String) -> impl IntoView {
    let by_id = id.clone();
    let mark = Memo::new(move |_| shown.with_mark(&by_id, Mark::clone));
    let put = move |mark: Mark| {
        let id = mark.id.clone();
        shown.change_mark(&id, |old| *old = mark);
    };
    view! { <MarkFold mark=mark axes=AXES on_change=put /> }
}

/// Adds a mark in the middle of the floor, and shows it.
fn add(shown: Shown) {
    let id = shown.store.fresh_id();
    let new = id.clone();
    shown.change(move |room| {
        let mark = start::mark(&new, &room.marks, room.middle());
        room.marks.push(mark);
    });
    shown.choose_mark(&id);
}

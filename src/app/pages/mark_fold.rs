//! A mark of a room or in the open: its name and measures, the openings sighted from it, remove with undo.

use leptos::prelude::*;
use slantlight::place::mark::Mark;
use slantlight::project::edit::Edit;
use slantlight::project::find;
use slantlight::units::Metres;
use slantlight::words;

use crate::app::parts::{Entry, LengthField, TextField};
use crate::app::store::Store;

/// What a mark's two axes are called, and how far they go, metres.
#[derive(Clone, Copy, Debug)]
pub struct Axes {
    /// "east", "along wall 1".
    pub x: &'static str,
    /// "north", "into the room".
    pub y: &'static str,
    /// Smallest and largest place.
    pub limits: (f64, f64),
}

/// One mark, folded.
#[component]
pub fn MarkFold(
    /// The mark.
    #[prop(into)]
    mark: Signal<Option<Mark>>,
    /// Names of its axes.
    axes: Axes,
    /// Called with the mark as it shall be.
    #[prop(into)]
    on_change: Callback<Mark>,
    /// Buttons of the page's own, above the last one.
    #[prop(optional, into)]
    children: Option<ChildrenFn>,
) -> impl IntoView {
    let store = Store::here();
    let units = Signal::derive(move || store.settings.get().units);
    let name = Signal::derive(move || {
        mark.with(|mark| mark.as_ref().map(|mark| mark.name.clone())).unwrap_or_default()
    });
    let sub = Signal::derive(move || {
        mark.with(|mark| mark.as_ref().map(|mark| summary(mark, axes, units.get()))).unwrap_or_default()
    });
    let change = move |change: &dyn Fn(&mut Mark)| {
        if let Some(mut mark) = latest(store, mark) {
            change(&mut mark);
            on_change.run(mark);
        }
    };
    let length = move |read: fn(&Mark) -> Metres| {
        Signal::derive(move || mark.with(|mark| mark.as_ref().map(read)).unwrap_or_default())
    };
    let remove = move |_| {
        if let Some(mark) = mark.get_untracked() {
            store.edit_with_undo(Edit::RemoveMark(mark.id), format!("{} removed", mark.name));
        }
    };
    view! {
        <Entry title=name sub=sub>
            <TextField label="Name" value=name on_change=move |text: String| change(&|mark| mark.name.clone_from(&text)) />
            <LengthField label=words::capital(axes.x) value=length(|mark| mark.x) units=units limits=axes.limits
                on_change=move |to| change(&|mark| mark.x = to) />
            <LengthField label=words::capital(axes.y) value=length(|mark| mark.y) units=units limits=axes.limits
                on_change=move |to| change(&|mark| mark.y = to) />
            <LengthField label="Face above the floor" value=length(|mark| mark.face_height) units=units limits=(0.0, 60.0)
                on_change=move |to| change(&|mark| mark.face_height = to) />
            <Sighted mark=mark on_change=on_change />
            {children.as_ref().map(|inside| inside())}
            <button type="button" class="button" on:click=remove>"Remove this mark"</button>
        </Entry>
    }
}

/// The mark with the last edit in it, not as the screen shows it: two changes may come within one frame.
fn latest(store: Store, mark: Signal<Option<Mark>>) -> Option<Mark> {
    let (id, project) =
        (mark.with_untracked(|mark| mark.as_ref().map(|mark| mark.id.clone()))?, store.desk.latest());
    project.locations.iter().flat_map(|place| find::marks(place)).find(|one| one.id == id).cloned()
}

/// "3.60 m along wall 1 · 2.60 m into the room · face at 1.25 m".
fn summary(mark: &Mark, axes: Axes, units: words::Units) -> String {
    let say = |length| words::measure(length, units);
    let place = format!(
        "{} {} · {} {} · face at {}",
        say(mark.x),
        axes.x,
        say(mark.y),
        axes.y,
        say(mark.face_height)
    );
    match mark.sighted.len() {
        0 => place,
        1 => format!("{place} · 1 opening sighted"),
        many => format!("{place} · {many} openings sighted"),
    }
}

/// The openings sighted from a mark.
#[component]
fn Sighted(mark: Signal<Option<Mark>>, on_change: Callback<Mark>) -> impl IntoView {
    let store = Store::here();
    let sighted = Memo::new(move |_| {
        mark.with(|mark| mark.as_ref().map(|mark| mark.sighted.clone())).unwrap_or_default()
    });
    let remove = move |id: &str| {
        if let Some(mut mark) = latest(store, mark) {
            mark.sighted.retain(|sighting| sighting.id != id);
            on_change.run(mark);
        }
    };
    let row = move |sighting: slantlight::place::opening::Sighting| {
        let wall = sighting.wall_bearing.map_or_else(
            || "wall not known".to_owned(),
            |wall| format!("wall faces {}", words::bearing(wall)),
        );
        let says = format!("{}: {} corners sighted, {wall}", sighting.name, sighting.corners.len());
        let id = sighting.id;
        view! {
            <li class="row-and-button">
                <span>{says}</span>
                <button type="button" class="button small" aria-label=format!("Remove {}", sighting.name) on:click=move |_| remove(&id)>"Remove"</button>
            </li>
        }
    };
    view! {
        <Show when=move || !sighted.with(Vec::is_empty)>
            <ul class="rows whole-row">{move || sighted.get().into_iter().map(row).collect_view()}</ul>
        </Show>
    }
}

//! Houses, walls, roof edges and trees near by: each mark sees them elsewhere, so that their sizes are asked.

use leptos::prelude::*;
use slantlight::place::blocker::{Blocker, Kind, Leaves};
use slantlight::project::start::{self, BLOCKER_SIZES};
use slantlight::units::{Bearing, Degrees, Metres};
use slantlight::words;

use super::shown::Shown;
use crate::app::parts::{Entries, Entry, LengthField, Listed, NumberField, TextField};

/// Sizes and heights that can be typed, metres. Our own choice; a roof edge may lie below the location's ground.
const SIZES: (f64, f64) = (0.1, 5000.0);
const DEPTHS: (f64, f64) = (0.0, 5000.0);
const HEIGHTS: (f64, f64) = (-500.0, 2000.0);

/// What the list says.
const WORDS: Listed = Listed {
    title: "Near by",
    empty: "Nothing near by yet. Add the house, wall or tree that hides the sun, with its distance and sizes.",
    add: "Add what stands near by:",
};

/// The list.
#[component]
pub fn Blockers(shown: Shown) -> impl IntoView {
    let ids = Memo::new(move |_| {
        shown
            .with(|place| place.blockers.iter().map(|blocker| blocker.id.clone()).collect::<Vec<_>>())
            .unwrap_or_default()
    });
    view! {
        <Entries
            words=WORDS
            beside=Signal::stored("seen anew from each mark".to_owned())
            ids=ids
            entry=move |id| view! { <BlockerFold shown=shown id=id /> }.into_any()
            kinds=BLOCKER_SIZES.map(|size| format!("+ {}", size.name)).to_vec()
            on_add=move |place| add(shown, place)
        />
    }
}

fn add(shown: Shown, place: usize) {
    let (Some(size), id) = (BLOCKER_SIZES.get(place), shown.store.fresh_id()) else { return };
    shown.change(|location| {
        let new = start::blocker(&id, &location.blockers, *size);
        location.blockers.push(new);
    });
}

/// "House, 20.0 m to 180° S, 12.0 m wide, 8.0 m high".
fn summary(blocker: &Blocker, units: words::Units) -> String {
    let say = |length| words::length(length, units);
    let (far, wide, high) = (say(blocker.distance), say(blocker.width), say(blocker.height));
    let leaves = blocker.leaves.map(|leaves| format!(" · in leaf {}", words::leaves(leaves)));
    format!(
        "{far} to {} · {wide} wide · top at {high}{}",
        words::bearing(blocker.bearing),
        leaves.unwrap_or_default()
    )
}

#[component]
fn BlockerFold(shown: Shown, id: String) -> impl IntoView {
    let id = StoredValue::new(id);
    let blocker = Memo::new(move |_| {
        let read = |place: &slantlight::project::document::Location| {
            id.with_value(|id| place.blockers.iter().find(|blocker| blocker.id == *id).cloned())
        };
        shown.with(read).flatten()
    });
    let title = Signal::derive(move || {
        blocker.with(|blocker| blocker.as_ref().map(|blocker| blocker.name.clone())).unwrap_or_default()
    });
    let sub = Signal::derive(move || {
        blocker.with(|blocker| blocker.as_ref().map(|one| summary(one, shown.units()))).unwrap_or_default()
    });
    view! {
        <Entry title=title sub=sub>
            <Fields shown=shown id=id blocker=blocker />
        </Entry>
    }
}

/// How a field reads and writes one length of a blocker.
type Length = (fn(&Blocker) -> Metres, fn(&mut Blocker, Metres));

#[component]
fn Fields(shown: Shown, id: StoredValue<String>, blocker: Memo<Option<Blocker>>) -> impl IntoView {
    let units = Signal::derive(move || shown.units());
    let change = move |change: &dyn Fn(&mut Blocker)| {
        shown.change(|place| {
            if let Some(found) = place.blockers.iter_mut().find(|one| id.with_value(|id| one.id == *id)) {
                change(found);
            }
        });
    };
    let length = move |label: &'static str, limits, (read, write): Length| {
        let value =
            Signal::derive(move || blocker.with(|blocker| blocker.as_ref().map(read)).unwrap_or_default());
        view! {
            <LengthField label=label value=value units=units limits=limits on_change=move |to| change(&|blocker| write(blocker, to)) />
        }
    };
    let degrees = move |read: fn(&Blocker) -> f64| {
        Signal::derive(move || blocker.with(|blocker| blocker.as_ref().map(read)).unwrap_or_default())
    };
    let name = Signal::derive(move || {
        blocker.with(|blocker| blocker.as_ref().map(|blocker| blocker.name.clone())).unwrap_or_default()
    });
    let is = move |kinds: &'static [Kind]| {
        blocker.with(|blocker| blocker.as_ref().is_some_and(|one| kinds.contains(&one.kind)))
    };
    let remove = move |_| {
        shown.change_with_undo(
            |place| place.blockers.retain(|one| id.with_value(|id| one.id != *id)),
            format!("{} removed", name.get_untracked()),
        );
    };
    view! {
        <TextField label="Name" value=name on_change=move |text: String| change(&|blocker| blocker.name.clone_from(&text)) />
        <NumberField label="Bearing of its near face" unit="°" decimals=1 limits=(0.0, 360.0)
            value=degrees(|blocker| blocker.bearing.degrees())
            on_change=move |to| change(&|blocker| blocker.bearing = Bearing::from_degrees(to)) />
        {length("Distance", SIZES, (|b| b.distance, |b, to| b.distance = to))}
        {length("Width", SIZES, (|b| b.width, |b, to| b.width = to))}
        {length("Top above your ground", HEIGHTS, (|b| b.height, |b, to| b.height = to))}
        <Show when=move || is(&[Kind::House])>
            {length("Depth away from you", DEPTHS, (|b| b.depth, |b, to| b.depth = to))}
        </Show>
        <Show when=move || is(&[Kind::House, Kind::Wall, Kind::Parapet])>
            <NumberField label="Face turned clockwise" unit="°" decimals=1 limits=(-90.0, 90.0)
                value=degrees(|blocker| blocker.turned.degrees())
                on_change=move |to| change(&|blocker| blocker.turned = Degrees::from_degrees(to)) />
        </Show>
        <Show when=move || is(&[Kind::Tree])>
            <InLeaf blocker=blocker on_change=move |to| change(&|blocker| blocker.leaves = to) />
        </Show>
        <button type="button" class="button" on:click=remove>"Remove it"</button>
    }
}

/// When a tree has leaves; bare, it hides nothing.
#[component]
fn InLeaf(
    blocker: Memo<Option<Blocker>>,
    #[prop(into)] on_change: Callback<Option<Leaves>>,
) -> impl IntoView {
    let error = RwSignal::new(String::new());
    let value =
        move || blocker.with(|blocker| blocker.as_ref()?.leaves.map(words::leaves)).unwrap_or_default();
    let take = move |text: String| {
        let read = words::read_leaves(&text);
        if read.is_some() || text.trim().is_empty() {
            error.set(String::new());
            on_change.run(read);
        } else {
            error.set(format!(
                "“{text}” is not two days. Type them like 15 Apr–1 Nov, or nothing for all year."
            ));
        }
    };
    view! { <TextField label="In leaf (15 Apr–1 Nov; empty: all year)" value=Signal::derive(value) error=error on_change=take /> }
}

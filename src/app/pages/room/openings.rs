//! Openings of the room: a list, each unfolding into its measures; add from a preset, remove with undo.

use leptos::prelude::*;
use slantlight::place::opening::Opening;
use slantlight::project::edit::Edit;
use slantlight::project::start::{self, OPENING_SIZES};
use slantlight::units::Metres;
use slantlight::words;

use super::shown::Shown;
use crate::app::parts::{Entries, Entry, LengthField, Listed, NumberField, TextField};

/// Offsets, sills and sizes that can be typed, metres. Our own choice: a hall and a window over its whole length.
const SIZES: (f64, f64) = (0.01, 100.0);
const PLACES: (f64, f64) = (0.0, 100.0);

/// What the lengths of an opening are called: offset, sill, width, height, reveal; in a wall and in the ceiling.
const LABELS: [&str; 5] =
    ["From the left, seen outside", "Sill above the floor", "Width", "Height", "Reveal, wall thickness"];
const ROOF_LABELS: [&str; 5] = [
    "Nearer edge, along wall 1",
    "Nearer edge, into the room",
    "Width, along wall 1",
    "Length, into the room",
    "Depth of its shaft",
];

/// What the list says.
const WORDS: Listed = Listed {
    title: "Openings",
    empty: "No opening yet: the room is dark. Add the window the sun shall come through.",
    add: "Add to wall 1, or to the ceiling:",
};

/// The list.
#[component]
pub fn Openings(shown: Shown) -> impl IntoView {
    let ids = Memo::new(move |_| {
        shown
            .with(|room| room.openings.iter().map(|opening| opening.id.clone()).collect::<Vec<_>>())
            .unwrap_or_default()
    });
    let beside = Signal::derive(move || match ids.with(Vec::len) {
        0 => String::new(),
        1 => "1 in this room".to_owned(),
        many => format!("{many} in this room"),
    });
    view! {
        <Entries
            words=WORDS
            beside=beside
            ids=ids
            entry=move |id| view! { <OpeningFold shown=shown id=id /> }.into_any()
            kinds=OPENING_SIZES.map(|size| format!("+ {}", size.name)).to_vec()
            on_add=move |place| add(shown, place)
        />
    }
}

fn add(shown: Shown, place: usize) {
    let (Some(size), id) = (OPENING_SIZES.get(place), shown.store.fresh_id()) else { return };
    shown.change(|room| room.openings.extend(start::opening(&id, room, 0, *size)));
}

/// One opening: its name and measures; unfolded, each of them to be typed.
#[component]
fn OpeningFold(shown: Shown, id: String) -> impl IntoView {
    let id = StoredValue::new(id);
    let opening = Memo::new(move |_| id.with_value(|id| shown.with_opening(id, Opening::clone)));
    let title = Signal::derive(move || {
        opening.with(|opening| opening.as_ref().map(|opening| opening.name.clone())).unwrap_or_default()
    });
    let sub = Signal::derive(move || {
        opening.with(|opening| opening.as_ref().map(|one| summary(one, shown.units()))).unwrap_or_default()
    });
    view! {
        <Entry title=title sub=sub>
            <Fields shown=shown id=id opening=opening />
        </Entry>
    }
}

/// "1.20 × 1.70 m · sill 0.90 m · reveal 0.35 m · covered".
fn summary(opening: &Opening, units: words::Units) -> String {
    let place = if opening.in_ceiling {
        "in the ceiling".to_owned()
    } else {
        format!("sill {}", words::measure(opening.sill, units))
    };
    let mut parts = vec![words::sizes(&[opening.width, opening.height], units, words::measure), place];
    if opening.reveal != Metres::default() {
        parts.push(format!("reveal {}", words::measure(opening.reveal, units)));
    }
    if opening.wall > 0 && !opening.in_ceiling {
        parts.push(format!("wall {}", opening.wall + 1));
    }
    if let Some(bars) = opening.bars {
        parts.push(format!("{} panes", u16::from(bars.rows) * u16::from(bars.columns)));
    }
    if opening.covered {
        parts.push("covered".to_owned());
    }
    parts.join(" · ")
}

/// How a field reads and writes one length of an opening.
type Length = (fn(&Opening) -> Metres, fn(&mut Opening, Metres));

#[component]
fn Fields(shown: Shown, id: StoredValue<String>, opening: Memo<Option<Opening>>) -> impl IntoView {
    let units = Signal::derive(move || shown.units());
    let change = move |change: &dyn Fn(&mut Opening)| {
        id.with_value(|id| shown.change_opening(id, |opening| change(opening)));
    };
    let length = move |label: &'static str, limits, (read, write): Length| {
        let value =
            Signal::derive(move || opening.with(|opening| opening.as_ref().map(read)).unwrap_or_default());
        view! {
            <LengthField label=label value=value units=units limits=limits
                on_change=move |to| change(&|opening| write(opening, to)) />
        }
    };
    let name = Signal::derive(move || {
        opening.with(|opening| opening.as_ref().map(|opening| opening.name.clone())).unwrap_or_default()
    });
    let glass = Signal::derive(move || {
        opening.with(|opening| opening.as_ref().map(Opening::glass_percent)).unwrap_or(100.0)
    });
    let is_roof =
        Memo::new(move |_| opening.with(|opening| opening.as_ref().is_some_and(|one| one.in_ceiling)));
    let covered = move || opening.with(|opening| opening.as_ref().is_some_and(|opening| opening.covered));
    let remove = move |_| {
        let says = format!("{} removed", name.get_untracked());
        shown.store.edit_with_undo(Edit::RemoveOpening(id.get_value()), says);
    };
    view! {
        <TextField label="Name" value=name on_change=move |text: String| change(&|opening| opening.name.clone_from(&text)) />
        <WallChoice shown=shown id=id opening=opening />
        {move || {
            let [offset, sill, width, height, reveal] = if is_roof.get() { ROOF_LABELS } else { LABELS };
            [
                length(offset, PLACES, (|o| o.offset, |o, to| o.offset = to)),
                length(sill, PLACES, (|o| o.sill, |o, to| o.sill = to)),
                length(width, SIZES, (|o| o.width, |o, to| o.width = to)),
                length(height, SIZES, (|o| o.height, |o, to| o.height = to)),
                length(reveal, (0.0, 5.0), (|o| o.reveal, |o, to| o.reveal = to)),
            ].into_iter().collect_view()
        }}
        <NumberField label="Glass lets through" unit="%" decimals=0 limits=(0.0, 100.0) value=glass
            on_change=move |percent| change(&|opening| opening.set_glass_percent(percent)) />
        <OverhangAndBars shown=shown id=id opening=opening />
        <label class="check">
            <input type="checkbox" prop:checked=covered
                on:change=move |event| { let to = event_target_checked(&event); change(&|opening| opening.covered = to) } />
            "Covered: no light comes through"
        </label>
        <button type="button" class="button" on:click=remove>"Remove this opening"</button>
    }
}

/// The wall, with the bearing it faces.
#[component]
fn WallChoice(shown: Shown, id: StoredValue<String>, opening: Memo<Option<Opening>>) -> impl IntoView {
    let walls = Memo::new(move |_| {
        shown
            .with(|room| {
                room.walls().filter_map(|(wall, _)| Some((wall, room.bearing_of(wall)?))).collect::<Vec<_>>()
            })
            .unwrap_or_default()
    });
    let chosen = move || {
        opening.with(|opening| opening.as_ref().filter(|one| !one.in_ceiling).map(|opening| opening.wall))
    };
    let choose = move |event| {
        let wall = event_target_value(&event).parse().ok();
        id.with_value(|id| {
            shown.change_opening(id, |opening| {
                opening.in_ceiling = wall.is_none();
                opening.wall = wall.unwrap_or_default();
            });
        });
    };
    let numbers = Memo::new(move |_| walls.with(|walls| walls.iter().map(|one| one.0).collect::<Vec<_>>()));
    let options = move || {
        let option = |wall: usize| {
            let faces = move || {
                walls.with(|walls| walls.iter().find(|one| one.0 == wall).map(|one| words::bearing(one.1)))
            };
            let words = move || format!("wall {}, faces {}", wall + 1, faces().unwrap_or_default());
            view! { <option value=wall.to_string() selected=move || chosen() == Some(wall)>{words}</option> }
        };
        numbers.get().into_iter().map(option).collect_view()
    };
    let in_ceiling = move || opening.with(|opening| opening.as_ref().is_some_and(|one| one.in_ceiling));
    view! {
        <label class="field">
            <span>"Wall"</span>
            <select on:change=choose>
                {options}
                <option value="ceiling" selected=in_ceiling>"the ceiling"</option>
            </select>
        </label>
    }
}

/// What juts out above, and the panes. What only matters with them comes with them.
#[component]
fn OverhangAndBars(shown: Shown, id: StoredValue<String>, opening: Memo<Option<Opening>>) -> impl IntoView {
    let units = Signal::derive(move || shown.units());
    let change = move |change: &dyn Fn(&mut Opening)| {
        id.with_value(|id| shown.change_opening(id, |opening| change(opening)));
    };
    let read = move |read: fn(&Opening) -> f64| {
        Signal::derive(move || opening.with(|opening| opening.as_ref().map(read)).unwrap_or_default())
    };
    let metres = move |of: fn(&Opening) -> f64| {
        let number = read(of);
        Signal::derive(move || Metres::from_metres(number.get()))
    };
    let depth = metres(|o| o.overhang.map_or(0.0, |slab| slab.depth.metres()));
    let above = metres(|o| o.overhang.map_or(0.0, |slab| slab.above.metres()));
    let thickness = metres(|o| o.bars.map_or(0.0, |bars| bars.thickness.metres()));
    let (rows, columns) = (read(|o| f64::from(o.panes().0)), read(|o| f64::from(o.panes().1)));
    let has_overhang = move || {
        opening.with(|opening| opening.as_ref().is_some_and(|o| o.overhang.is_some() && !o.in_ceiling))
    };
    let in_wall = move || opening.with(|opening| opening.as_ref().is_some_and(|o| !o.in_ceiling));
    let has_bars = move || opening.with(|opening| opening.as_ref().is_some_and(|o| o.bars.is_some()));
    view! {
        <Show when=in_wall>
        <LengthField label="Overhang juts out" value=depth units=units limits=(0.0, 20.0)
            on_change=move |to| change(&|o| o.set_overhang(to, above.get_untracked())) />
        </Show>
        <Show when=has_overhang>
            <LengthField label="Overhang above the head" value=above units=units limits=(0.0, 20.0)
                on_change=move |to| change(&|o| o.set_overhang(depth.get_untracked(), to)) />
        </Show>
        <NumberField label="Panes above each other" decimals=0 limits=(1.0, 40.0) value=rows
            on_change=move |to| change(&|o| o.set_panes(to as u8, o.panes().1)) />
        <NumberField label="Panes beside each other" decimals=0 limits=(1.0, 40.0) value=columns
            on_change=move |to| change(&|o| o.set_panes(o.panes().0, to as u8)) />
        <Show when=has_bars>
            <LengthField label="Width of a bar" value=thickness units=units limits=(0.001, 1.0)
                on_change=move |to| change(&|o| if let Some(bars) = &mut o.bars { bars.thickness = to }) />
        </Show>
    }
}

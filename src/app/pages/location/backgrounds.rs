//! Backgrounds: arcs of bearings that may be seen behind the subject, or must not, and why.

use leptos::prelude::*;
use slantlight::place::background::Background;
use slantlight::units::Bearing;
use slantlight::words;

use super::shown::Shown;
use crate::app::parts::{EmptyState, NumberField, SectionHead, Segmented, TextField};

/// The list, and one to add.
#[component]
pub fn Backgrounds(shown: Shown) -> impl IntoView {
    let arcs = Memo::new(move |_| shown.with(|place| place.backgrounds.clone()).unwrap_or_default());
    let row = move |(place, arc): (usize, Background)| {
        let says = sentence(&arc);
        let remove = move |_| {
            shown.change(|location| {
                if place < location.backgrounds.len() {
                    location.backgrounds.remove(place);
                }
            });
        };
        view! {
            <li class="row-and-button">
                <span class="row-text">
                    <span class="row-title">{if arc.good { "good" } else { "not to be seen" }} {if arc.why.is_empty() { String::new() } else { format!(": {}", arc.why) }}</span>
                    <span class="row-sub">{says.clone()}</span>
                </span>
                <button type="button" class="button small" aria-label=format!("Remove {says}") on:click=remove>"Remove"</button>
            </li>
        }
    };
    view! {
        <section>
            <SectionHead title="Backgrounds" ruled=true />
            <Show when=move || arcs.with(Vec::is_empty)>
                <EmptyState says="No background yet. Say which bearings look good behind the subject and which must not be seen; a free lens keeps to them.">""</EmptyState>
            </Show>
            <ul class="rows">{move || arcs.get().into_iter().enumerate().map(row).collect_view()}</ul>
            <AddArc shown=shown />
        </section>
    }
}

/// "the lens looks from 240° WSW to 300° WNW".
fn sentence(arc: &Background) -> String {
    format!("the lens looks from {} to {}", words::bearing(arc.from), words::bearing(arc.to))
}

#[component]
fn AddArc(shown: Shown) -> impl IntoView {
    let (from, to, good, why) =
        (RwSignal::new(240.0), RwSignal::new(300.0), RwSignal::new(true), RwSignal::new(String::new()));
    let add = move |_| {
        let arc = Background {
            from: Bearing::from_degrees(from.get_untracked()),
            to: Bearing::from_degrees(to.get_untracked()),
            good: good.get_untracked(),
            why: why.get_untracked(),
        };
        shown.change(|place| place.backgrounds.push(arc));
        why.set(String::new());
    };
    view! {
        <details class="fold">
            <summary>"Add a background"</summary>
            <div class="fields">
                <NumberField label="From the bearing" unit="°" decimals=0 limits=(0.0, 360.0) value=from on_change=move |degrees| from.set(degrees) />
                <NumberField label="Clockwise to" unit="°" decimals=0 limits=(0.0, 360.0) value=to on_change=move |degrees| to.set(degrees) />
                <Segmented label="It is" names=["good", "not to be seen"].map(String::from).to_vec()
                    chosen=Signal::derive(move || usize::from(!good.get())) on_choose=move |place| good.set(place == 0) />
                <TextField label="Why: the boats, a car park" value=why on_change=move |text| why.set(text) />
                <button type="button" class="button wide" on:click=add>"Add this background"</button>
            </div>
        </details>
    }
}

//! Backgrounds: arcs of bearings that may be seen behind the subject, or must not, and why.

use leptos::prelude::*;
use slantlight::place::background::Background;
use slantlight::units::Bearing;
use slantlight::words;

use super::shown::Shown;
use crate::app::parts::{EmptyState, Entry, NumberField, SectionHead, Segmented, TextField};

/// The list.
#[component]
pub fn Backgrounds(shown: Shown) -> impl IntoView {
    let count = Memo::new(move |_| shown.with(|place| place.backgrounds.len()).unwrap_or_default());
    let fold = move |place: usize| view! { <ArcFold shown=shown place=place /> };
    view! {
        <section>
            <SectionHead title="Backgrounds" ruled=true />
            <Show when=move || count.get() == 0>
                <EmptyState says="No background yet. Say which bearings look good behind the subject and which must not be seen; a free lens keeps to them.">""</EmptyState>
            </Show>
            {move || (0..count.get()).map(fold).collect_view()}
            <p class="spaced"><button type="button" class="button wide" on:click=move |_| add(shown)>"Add a background"</button></p>
        </section>
    }
}

/// Adds an arc to the west, to be changed.
fn add(shown: Shown) {
    let [from, to] = [240.0, 300.0].map(Bearing::from_degrees);
    shown.change(|place| place.backgrounds.push(Background { from, to, good: true, why: String::new() }));
}

/// "Good: the boats" or "Not to be seen".
fn title(arc: &Background) -> String {
    let word = if arc.good { "Good" } else { "Not to be seen" };
    if arc.why.is_empty() { word.to_owned() } else { format!("{word}: {}", arc.why) }
}

/// "the lens looks from 240° WSW to 300° WNW".
fn summary(arc: &Background) -> String {
    format!("the lens looks from {} to {}", words::bearing(arc.from), words::bearing(arc.to))
}

/// One arc; they have no ids, so their place in the list stands for them.
#[component]
fn ArcFold(shown: Shown, place: usize) -> impl IntoView {
    let arc = Memo::new(move |_| shown.with(|location| location.backgrounds.get(place).cloned()).flatten());
    let change = move |change: &dyn Fn(&mut Background)| {
        shown.change(|location| {
            if let Some(arc) = location.backgrounds.get_mut(place) {
                change(arc);
            }
        });
    };
    let bearing = move |read: fn(&Background) -> Bearing| {
        Signal::derive(move || {
            arc.with(|arc| arc.as_ref().map(|arc| read(arc).degrees())).unwrap_or_default()
        })
    };
    let words = move |say: fn(&Background) -> String| {
        Signal::derive(move || arc.with(|arc| arc.as_ref().map(say)).unwrap_or_default())
    };
    let remove = move |_| {
        let take = move |location: &mut slantlight::project::document::Location| {
            if place < location.backgrounds.len() {
                location.backgrounds.remove(place);
            }
        };
        shown.change_with_undo(take, "Background removed".to_owned());
    };
    view! {
        <Entry title=words(title) sub=words(summary)>
            <NumberField label="From the bearing" unit="°" decimals=0 limits=(0.0, 360.0) value=bearing(|arc| arc.from)
                on_change=move |to| change(&|arc| arc.from = Bearing::from_degrees(to)) />
            <NumberField label="Clockwise to" unit="°" decimals=0 limits=(0.0, 360.0) value=bearing(|arc| arc.to)
                on_change=move |to| change(&|arc| arc.to = Bearing::from_degrees(to)) />
            <Segmented label="It is" names=["good", "not to be seen"].map(String::from).to_vec()
                chosen=Signal::derive(move || usize::from(arc.with(|arc| arc.as_ref().is_some_and(|arc| !arc.good))))
                on_choose=move |place| change(&|arc| arc.good = place == 0) />
            <TextField label="Why: the boats, a car park"
                value=Signal::derive(move || arc.with(|arc| arc.as_ref().map(|arc| arc.why.clone())).unwrap_or_default())
                on_change=move |text: String| change(&|arc| arc.why.clone_from(&text)) />
            <button type="button" class="button" on:click=remove>"Remove this background"</button>
        </Entry>
    }
}

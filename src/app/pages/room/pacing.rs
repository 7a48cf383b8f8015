//! The floor from walking round it with a tape, or in steps.

use leptos::prelude::*;
use slantlight::place::pacing::paced;
use slantlight::units::Metres;
use slantlight::words;

use super::shown::Shown;
use crate::app::parts::{LengthField, TextField};

/// The fold.
#[component]
pub fn Pacing(shown: Shown) -> impl IntoView {
    let units = Signal::derive(move || shown.units());
    let one = match units.get_untracked() {
        words::Units::Metric => Metres::from_metres(1.0),
        words::Units::FeetInches => Metres::from_feet(1.0),
    };
    let (sides, step) = (RwSignal::new(String::new()), RwSignal::new(one));
    let says = RwSignal::new(String::new());
    let take = move |_| {
        let factor = step.get_untracked().metres();
        let read = words::read_lengths(&sides.get_untracked(), words::Units::Metric);
        let walked = read
            .map(|all| all.iter().map(|one| Metres::from_metres(one.metres() * factor)).collect::<Vec<_>>());
        let answer = match walked.map(|walked| paced(&walked)) {
            Ok(Some(found)) => {
                let gap = words::measure(found.gap, units.get_untracked());
                shown.change(|room| *room = room.with_floor(found.floor));
                format!("Taken. The walk missed its start by {gap}; that is spread over all corners.")
            }
            Ok(None) => "That is no floor: 3 to 12 walls, the first one positive.".to_owned(),
            Err(_) => "Write numbers with semicolons between them, like 6.2; 4.1; 6.2; 4.1.".to_owned(),
        };
        says.set(answer);
    };
    view! {
        <details class="fold">
            <summary>"Measure by pacing"</summary>
            <div class="stack">
                <p class="soft">"Walk round with the wall at your right hand, from the first corner of wall 1, and note each wall's length. Corners are square; where you turn right, as at the inner corner of an L, the wall after that corner gets a minus. The bearing of wall 1 does the rest."</p>
                <div class="fields">
                    <TextField label="Walls in order: 6.2; 4.1; 6.2; 4.1" value=sides on_change=move |text: String| sides.set(text) />
                    <LengthField label="One unit typed above is" value=step units=units limits=(0.2, 2.0) on_change=move |to| step.set(to) />
                    <button type="button" class="button" on:click=take>"Take this floor"</button>
                </div>
                <p role="status">{says}</p>
            </div>
        </details>
    }
}

//! Days: what there is and what is not yet.

use leptos::prelude::*;

use crate::app::parts::Frame;

/// The room of the schedule.
#[component]
pub fn Days() -> impl IntoView {
    view! {
        <Frame title="Days">
            <p>
                "Slots that you save stand with their set-ups in Scenes; putting them in order, day by day with calls and moves, is not in this version."
            </p>
        </Frame>
    }
}

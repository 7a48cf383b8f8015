//! Stops: what there is and what is not yet.

use leptos::prelude::*;

use crate::app::parts::Frame;

/// The room of light levels.
#[component]
pub fn Stops() -> impl IntoView {
    view! {
        <Frame title="Stops">
            <p>
                "Where the light comes from is in Now and in Scenes; how bright it is, side by side in stops, is not in this version. Meter it on the day."
            </p>
        </Frame>
    }
}

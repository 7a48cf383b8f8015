//! Match a still: a reference picture beside a ball that is turned until both look alike.

use leptos::prelude::*;
use slantlight::draw::ball;
use slantlight::draw::scale::Scale;
use slantlight::light::class;
use slantlight::plan::wish::still::Still;
use slantlight::units::{Degrees, Height};
use slantlight::words;

use super::shown::Shown;
use crate::app::devices::look;
use crate::app::parts::{Fold, Picture, Slider};

/// From the lens all round it, and from the horizon to the zenith.
const ROUND: Scale = Scale::line(-180.0, 180.0, 1.0);
const UP: Scale = Scale::line(0.0, 90.0, 1.0);

/// What is said once the ball's light is the wish.
const MADE: &str = "It is the wish now, within 10° to each side. Its dates here stand above: the best slots, and the whole year.";

/// Picture, ball and the button that makes the ball's light the wish.
#[component]
pub fn MatchStill(shown: Shown) -> impl IntoView {
    let first = shown.with(|set_up| Still::of(&set_up.wish));
    let still = RwSignal::new(first.unwrap_or(Still { off: Degrees::default(), height: Height::default() }));
    let picture = RwSignal::new(None::<String>);
    let wished = RwSignal::new(false);
    let make = move |_| {
        shown.change(|set_up| set_up.wish = still.get_untracked().fill(&set_up.wish));
        wished.set(true);
    };
    let made = move || if wished.get() { MADE } else { "" };
    let said = move || {
        let light = still.get();
        format!(
            "{}, {} high",
            class::words(light.off, light.height),
            words::degrees(Degrees::from_degrees(light.height.degrees()))
        )
    };
    let round = move |degrees: f64| still.update(|still| still.off = Degrees::from_degrees(degrees));
    let up = move |degrees: f64| still.update(|still| still.height = Height::clamped(degrees));
    let say = |degrees: f64| words::degrees(Degrees::from_degrees(degrees));
    view! {
        <Fold label="Match a still">
            <div class="still">
                {move || picture.get().map(|address| view! { <img src=address alt="The still to match" /> })}
                <Picture drawing=Signal::derive(move || ball::ball(Some(still.get().seen()))) />
            </div>
            <p class="soft">{said}</p>
            <Slider label="Light round the face, + is camera right" scale=Signal::stored(ROUND)
                value=Signal::derive(move || still.get().off.degrees()) say=say on_move=round on_change=round />
            <Slider label="Light above the horizon" scale=Signal::stored(UP)
                value=Signal::derive(move || still.get().height.degrees()) say=say on_move=up on_change=up />
            <div class="fields two">
                <button type="button" class="button" on:click=move |_| look::choose(move |address| picture.set(Some(address)))>
                    "Choose a picture"
                </button>
                <button type="button" class="button" on:click=make>"Make it the wish"</button>
            </div>
            <p role="status">{made}</p>
            <p class="soft">"Turn the ball until it is lit like the face in the picture. The picture stays on this phone and is only looked at."</p>
        </Fold>
    }
}

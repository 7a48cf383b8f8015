//! The wish: where the light comes from, how high it stands, whether the sun reaches the mark.

use leptos::prelude::*;
use slantlight::draw::ring;
use slantlight::draw::scale::Scale;
use slantlight::plan::wish::presets::PRESETS;
use slantlight::plan::wish::{Arc, Heights, SunOnMark};
use slantlight::units::{Degrees, Height};
use slantlight::words;

use super::shown::Shown;
use crate::app::parts::{Chips, Segmented, Slider, WishRing};

/// Heights that can be asked for, degrees: from the end of the last twilight to the zenith.
const HEIGHTS: Scale = Scale::line(-18.0, 90.0, 1.0);

/// An empty wish while the set-up goes.
const NO_ARC: Arc =
    Arc { from: Degrees::from_degrees(0.0), to: Degrees::from_degrees(360.0), either_side: true };

/// Everything that is wished.
#[component]
pub fn WishPanel(shown: Shown) -> impl IntoView {
    let arc = Memo::new(move |_| shown.with(|set_up| set_up.wish.arc).unwrap_or(NO_ARC));
    let light = Memo::new(move |_| shown.light());
    let on_move = move |arc| shown.drag(move |set_up| set_up.wish.arc = arc);
    view! {
        <section class="wish">
            <WishRing arc=arc light=light on_move=on_move on_take=move |()| shown.drop_it() />
            <Words shown=shown arc=arc />
        </section>
        <section><Presets shown=shown /></section>
    }
}

/// The wish in words, and the two choices beside the ring.
#[component]
fn Words(shown: Shown, arc: Memo<Arc>) -> impl IntoView {
    let heights = move || {
        let range = shown.with(|set_up| {
            let Heights { from, to } = set_up.wish.heights;
            words::degrees_from_to(Degrees::from_degrees(from.degrees()), Degrees::from_degrees(to.degrees()))
        });
        range.unwrap_or_default()
    };
    let on_mark = Signal::derive(move || shown.with(|set_up| place_of(set_up.wish.sun_on_mark)).unwrap_or(0));
    let sides = Signal::derive(move || usize::from(!arc.get().either_side));
    view! {
        <div class="wish-words"><dl>
            <div>
                <dt>"Light from"</dt>
                <dd><strong>{move || ring::class_of(arc.get())}</strong><br />{move || ring::words_of(arc.get())}</dd>
            </div>
            <div>
                <dt>"Height"</dt>
                <dd><strong>{heights}</strong></dd>
            </div>
            </dl>
            <Segmented
                label="Sides"
                names=["both", "one"].map(String::from).to_vec()
                chosen=sides
                on_choose=move |place| shown.change(|set_up| set_up.wish.arc.either_side = place == 0)
            />
            <Segmented
                label="Sun on mark"
                names=["any", "yes", "no"].map(String::from).to_vec()
                chosen=on_mark
                on_choose=move |place: usize| shown.change(|set_up| set_up.wish.sun_on_mark = ON_MARK[place.min(2)])
            />
        </div>
    }
}

/// In the order of the screen.
const ON_MARK: [SunOnMark; 3] = [SunOnMark::Any, SunOnMark::Yes, SunOnMark::No];

fn place_of(choice: SunOnMark) -> usize {
    ON_MARK.iter().position(|one| *one == choice).unwrap_or_default()
}

/// Presets fill the wish; the one that it equals is pressed.
#[component]
fn Presets(shown: Shown) -> impl IntoView {
    let chosen = Memo::new(move |_| {
        shown.with(|set_up| PRESETS.iter().position(|preset| preset.matches(&set_up.wish))).flatten()
    });
    let names = PRESETS.map(|preset| preset.name.to_owned()).to_vec();
    let choose = move |place: usize| {
        if let Some(preset) = PRESETS.get(place) {
            shown.change(|set_up| set_up.wish = preset.fill(&set_up.wish));
        }
    };
    let looks = move || chosen.get().map(|place| PRESETS[place].looks);
    view! {
        <Chips label="Looks" names=Signal::stored(names) chosen=chosen on_choose=choose />
        <p class="soft">{looks}</p>
    }
}

/// Lowest and highest sun; neither passes the other.
#[component]
pub fn HeightSliders(shown: Shown) -> impl IntoView {
    let end = move |read: fn(&Heights) -> Height| {
        Signal::derive(move || shown.with(|set_up| read(&set_up.wish.heights).degrees()).unwrap_or_default())
    };
    let lowest = move |degrees: f64| {
        shown.drag(move |set_up| {
            set_up.wish.heights = set_up.wish.heights.with_lowest(Height::clamped(degrees))
        });
    };
    let highest = move |degrees: f64| {
        shown.drag(move |set_up| {
            set_up.wish.heights = set_up.wish.heights.with_highest(Height::clamped(degrees))
        });
    };
    let say = |degrees: f64| words::degrees(Degrees::from_degrees(degrees));
    view! {
        <Slider
            label="Lowest sun"
            scale=Signal::stored(HEIGHTS)
            value=end(|heights| heights.from)
            say=say
            on_move=lowest
            on_change=move |degrees| { lowest(degrees); shown.drop_it(); }
        />
        <Slider
            label="Highest sun"
            scale=Signal::stored(HEIGHTS)
            value=end(|heights| heights.to)
            say=say
            on_move=highest
            on_change=move |degrees| { highest(degrees); shown.drop_it(); }
        />
    }
}

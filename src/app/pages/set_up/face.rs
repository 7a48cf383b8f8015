//! The face: where the nose points, what the light makes of it, and the light wished on it.

use leptos::prelude::*;
use slantlight::draw::scale::Scale;
use slantlight::draw::{Drawing, face};
use slantlight::light::face::{Cheek, Facing, Pattern};
use slantlight::plan::shot::words as shot_words;
use slantlight::plan::wish::face::FaceWish;
use slantlight::project::document::SetUp;
use slantlight::units::{Bearing, Height};
use slantlight::words;

use super::day::Day;
use super::shown::Shown;
use crate::app::parts::{BearingSlider, Caution, Chips, Fold, Picture, Segmented, Slider};

/// How far a head is turned up or down.
const PITCHES: Scale = Scale::line(-45.0, 45.0, 1.0);

/// Facing and the wish for the face.
#[component]
pub fn Face(shown: Shown) -> impl IntoView {
    view! {
        <Fold label="Face">
            <div class="face"><Picture drawing=Signal::derive(move || drawing(shown)) /></div>
            <p class="soft">{move || says(shown)}</p>
            <Head shown=shown />
            <Wished shown=shown />
        </Fold>
    }
}

#[component]
fn Head(shown: Shown) -> impl IntoView {
    let turn = move |degrees: f64| {
        shown.drag(move |set_up| turned(set_up).bearing = Bearing::from_degrees(degrees));
    };
    let nod = move |degrees: f64| shown.drag(move |set_up| turned(set_up).pitch = Height::clamped(degrees));
    view! {
        <BearingSlider
            label="Nose points"
            value=Signal::derive(move || facing(shown).bearing.degrees())
            say=|degrees: f64| words::bearing(Bearing::from_degrees(degrees))
            on_move=turn
            on_change=move |degrees| { turn(degrees); shown.drop_it(); }
        />
        <Slider
            label="Nose up or down"
            scale=Signal::stored(PITCHES)
            value=Signal::derive(move || facing(shown).pitch.degrees())
            say=|degrees: f64| words::degrees(slantlight::units::Degrees::from_degrees(degrees))
            on_move=nod
            on_change=move |degrees| { nod(degrees); shown.drop_it(); }
        />
    }
}

#[component]
fn Wished(shown: Shown) -> impl IntoView {
    let wish = Memo::new(move |_| shown.with(|set_up| set_up.wish.face).unwrap_or_default());
    let ask = move |change: &dyn Fn(&mut FaceWish)| {
        shown.change(|set_up| {
            turned(set_up);
            change(&mut set_up.wish.face);
        });
    };
    let names = Pattern::ALL.map(|pattern| pattern.words().to_owned()).to_vec();
    let pattern =
        Signal::derive(move || Pattern::ALL.iter().position(|one| Some(*one) == wish.get().pattern));
    let choose = move |place: usize| {
        let chosen = Pattern::ALL.get(place).copied();
        ask(&|wish| wish.pattern = chosen.filter(|_| wish.pattern != chosen));
    };
    let cheek = Signal::derive(move || CHEEKS.iter().position(|one| *one == wish.get().cheek).unwrap_or(0));
    let eyes =
        Signal::derive(move || EYES.iter().position(|one| *one == wish.get().sun_in_eyes).unwrap_or(0));
    view! {
        <Chips label="Light on the face" names=Signal::stored(names) chosen=pattern on_choose=choose />
        <div class="fields two">
            <Segmented label="Lit cheek" names=["any", "short", "broad"].map(String::from).to_vec() chosen=cheek
                on_choose=move |place: usize| ask(&|wish| wish.cheek = CHEEKS[place.min(2)]) />
            <Segmented label="Sun in the eyes" names=["any", "yes", "no"].map(String::from).to_vec() chosen=eyes
                on_choose=move |place: usize| ask(&|wish| wish.sun_in_eyes = EYES[place.min(2)]) />
        </div>
        <Show when=move || wish.get().sun_in_eyes == Some(true)>
            <Caution>"Nobody looks into the sun: eyes on the lens or a point beside it, closed between the takes."</Caution>
        </Show>
    }
}

/// In the order of the screen.
const CHEEKS: [Option<Cheek>; 3] = [None, Some(Cheek::Short), Some(Cheek::Broad)];
const EYES: [Option<bool>; 3] = [None, Some(true), Some(false)];

/// Where the nose points; to the lens until somebody has said.
fn facing(shown: Shown) -> Facing {
    shown
        .with(|set_up| set_up.facing.unwrap_or_else(|| Facing::to_lens(set_up.lens.bearing)))
        .unwrap_or_else(|| Facing::to_lens(Bearing::default()))
}

/// The head of a set-up, to be turned.
fn turned(set_up: &mut SetUp) -> &mut Facing {
    let lens = set_up.lens.bearing;
    set_up.facing.get_or_insert_with(|| Facing::to_lens(lens))
}

fn drawing(shown: Shown) -> Drawing {
    let lens = shown.with(|set_up| set_up.lens.bearing);
    let nose = lens.and_then(|lens| shown.lens_sees(facing(shown).nose(), lens));
    nose.map_or_else(|| slantlight::draw::ball::ball(None), |nose| face::face(shown.light(), nose))
}

/// Where the nose points for the lens, and what the light of the instant shown makes of the face.
fn says(shown: Shown) -> String {
    let lens = shown.with(|set_up| set_up.lens.bearing).unwrap_or_default();
    let turned = face::turned_words(facing(shown).yaw(lens));
    let lit = Day::of(shown).and_then(|day| {
        let light = day.sun.apparent(day.at);
        (light.z > 0.0).then(|| shot_words::face(light, facing(shown), day.stage.lens))
    });
    let lit = lit
        .unwrap_or_else(|| "No sun at this instant: tap a slot, and its light falls on the face.".to_owned());
    format!("Nose {turned}. {lit}")
}

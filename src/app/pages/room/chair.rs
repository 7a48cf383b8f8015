//! The best place for a chair on this day, and where to move it to keep the light. Worked out when asked for.

use leptos::prelude::*;
use slantlight::draw::Drawing;
use slantlight::draw::hold::hold_map;
use slantlight::plan::in_room::follow::{Followed, follow};
use slantlight::plan::in_room::hold_map::HoldMap;
use slantlight::plan::in_room::{RoomStage, story};
use slantlight::project::document::At;
use slantlight::project::stage;
use slantlight::sky::sun::Sun;
use slantlight::units::{Duration, Share};

use super::shown::Shown;
use crate::app::parts::{NumberField, Picture};

/// The fold.
#[component]
pub fn Chair(shown: Shown) -> impl IntoView {
    let every = RwSignal::new(15.0);
    let (picture, text) = (RwSignal::new(Drawing::sized(1.0, 1.0)), RwSignal::new(String::new()));
    let ask = move |_| {
        if let Some((drawing, said)) = untrack(move || found(shown, every.get())) {
            picture.set(drawing);
            text.set(said);
        }
    };
    view! {
        <details class="fold">
            <summary>"Best chair, and following the patch"</summary>
            <div class="stack">
                <p class="soft">"For a face as high as the shown mark's, on the date above: where the wished light holds longest, and where to move a chair to keep it."</p>
                <div class="fields">
                    <NumberField label="Move it every" unit="min" decimals=0 limits=(5.0, 120.0) value=every on_change=move |to| every.set(to) />
                    <button type="button" class="button" on:click=ask>"Work it out"</button>
                </div>
                <Show when=move || text.with(|text| !text.is_empty())>
                    <div class="room-paper"><Picture drawing=picture /></div>
                    <p class="told" role="status">{text}</p>
                </Show>
            </div>
        </details>
    }
}

/// The drawing and the sentences.
fn found(shown: Shown, every: f64) -> Option<(Drawing, String)> {
    let (place, mark) = (shown.place()?, shown.whole_mark()?);
    let (place, wished) = as_wished(shown, place);
    let (zone, every) = (shown.zone(), Duration::from_minutes(every as i64));
    let day = zone.day(shown.date())?;
    let map = HoldMap::of(&Sun::new(place.stage.site), &place, mark.face_height, day);
    let way = follow(&map, every, day);
    let style = shown.style(&zone);
    let mut said = vec![format!("{wished}."), story::chair(&map, style)];
    match &way {
        Some(way) => {
            said.push(story::follow(way, every, style));
            said.extend(story::stays(way, style));
        }
        None => said.push("Moving the chair gains nothing.".to_owned()),
    }
    Some((drawing(&place, &map, way.as_ref()), said.join("\n")))
}

fn drawing(place: &RoomStage, map: &HoldMap, way: Option<&Followed>) -> Drawing {
    let longest = map.longest().minutes().max(1.0);
    let share = |hold: Duration| Share::clamped(hold.minutes() / longest);
    let spots: Vec<_> = map.spots.iter().map(|spot| ([spot.x, spot.y], share(spot.hold()))).collect();
    let stays: Vec<_> = way.into_iter().flat_map(|way| &way.stays).map(|stay| [stay.x, stay.y]).collect();
    hold_map(&place.room, &spots, map.step, map.best().map(|best| [best.x, best.y]), &stays)
}

/// The light of the set-up that all rooms show, if it is shot in this room; else any sun on the face.
fn as_wished(shown: Shown, place: RoomStage) -> (RoomStage, String) {
    let project = shown.store.desk.latest();
    let wished = shown.store.current_set_up().and_then(|id| {
        let (_, set_up) = project.set_up(&id)?;
        let here = |at: &At| at.room.as_deref() == Some(place.room.id.as_str());
        set_up.at.as_ref().filter(|at| here(at))?;
        let stage = stage::of_set_up(&project, &id, place.stage.zone.clone()).ok()?;
        Some((stage, format!("The light wished for set-up {}", set_up.name)))
    });
    match wished {
        Some((stage, words)) => (RoomStage { stage, ..place }, words),
        None => (place, "Any sun on the face".to_owned()),
    }
}

//! The room with the sun in it, from a raised corner or from above; marks and openings are dragged on it.

use leptos::prelude::*;
use slantlight::draw::axonometric::{View, axonometric, wall_to_see};
use slantlight::draw::plan::{Plan, Scene, plan};
use slantlight::draw::{Drawing, Hit, Point, Target, ViewBox};
use slantlight::place::reshape::to_centimetre;
use slantlight::place::room::Room;
use slantlight::units::{Metres, Vector, World};
use wasm_bindgen::JsCast;
use web_sys::{Element, PointerEvent};

use super::shown::Shown;
use crate::app::parts::Picture;

/// How far an arrow key moves what is held, metres. Our own choice.
const KEY_STEP: f64 = 0.1;

/// The drawing and the choice of view.
#[component]
pub fn RoomDrawing(shown: Shown) -> impl IntoView {
    let from_above = RwSignal::new(false);
    let sun = Memo::new(move |_| shown.sun_at(shown.store.moment.to_the_minute()));
    let drawing = Memo::new(move |_| drawn(shown, sun.get(), from_above.get()));
    // What is touched stays where it is while the sun moves: only the drawing follows that.
    let hits = Memo::new(move |_| drawing.with(|drawing| (drawing.view, drawing.hits.clone())));
    let count = Memo::new(move |_| hits.with(|(_, hits)| hits.len()));
    let paper = NodeRef::<leptos::html::Div>::new();
    let held = StoredValue::new(None::<Target>);
    let follow = move |event: PointerEvent| {
        let (Some(target), Some(paper)) = (held.get_value(), paper.get_untracked()) else { return };
        let place = paper.get_bounding_client_rect();
        let view = drawing.with_untracked(|drawing| drawing.view);
        let at = Point::new(
            (f64::from(event.client_x()) - place.left()) / place.width() * view.width,
            (f64::from(event.client_y()) - place.top()) / place.height() * view.height,
        );
        let raised = sun.get_untracked();
        shown.drag(|room| move_to(room, target, at, (!from_above.get_untracked()).then_some(raised)));
    };
    let let_go = move |_: PointerEvent| {
        held.set_value(None);
        shown.let_go();
    };
    let handle = move |place: usize| {
        let target = move || hits.with_untracked(|(_, hits)| hits.get(place).map(|hit| hit.target));
        let name = move || {
            let say = |hit: &Hit| format!("{}: drag, or move with the arrow keys", hit.name);
            hits.with(|(_, hits)| hits.get(place).map(say))
        };
        let share = move |of: fn(&Hit, ViewBox) -> f64| {
            let share = hits.with(|(view, hits)| hits.get(place).map_or(0.0, |hit| of(hit, *view)));
            format!("{}%", share * 100.0)
        };
        view! {
            <button
                type="button"
                class="room-handle"
                aria-label=name
                style:left=move || share(|hit, view| hit.at.x / view.width)
                style:top=move || share(|hit, view| hit.at.y / view.height)
                on:pointerdown=move |event| {
                    take(&event);
                    held.set_value(target());
                    if let Some(Target::Mark(index)) = target() {
                        choose(shown, index);
                    }
                }
                on:pointermove=follow
                on:pointerup=let_go
                on:pointercancel=let_go
                on:keydown=move |event| {
                    if let (Some(target), Some(by)) = (target(), step(&event.key())) {
                        event.prevent_default();
                        shown.change(|room| move_by(room, target, by));
                    }
                }
            ></button>
        }
    };
    view! {
        <div class="room-paper" node_ref=paper>
            <Picture drawing=drawing />
            {move || (0..count.get()).map(handle).collect_view()}
        </div>
        // Under the drawing, not on it: there it would lie over windows that are to be dragged.
        <p class="room-view">
            <button
                type="button"
                class="button small"
                aria-pressed=move || if from_above.get() { "true" } else { "false" }
                on:click=move |_| from_above.update(|above| *above = !*above)
            >
                "From above"
            </button>
        </p>
    }
}

fn drawn(shown: Shown, sun: Option<Vector<World>>, from_above: bool) -> Drawing {
    let units = shown.units();
    let drawing = shown.with_live(|room| {
        if from_above {
            plan(room, Scene { sun, lens: None, units })
        } else {
            axonometric(room, sun.map(|sun| room.room_from_world(sun)))
        }
    });
    drawing.unwrap_or_else(|| Drawing::sized(1.0, 1.0))
}

/// Moves a mark or an opening to a point of the paper; `raised` holds the sun of the view from a corner.
fn move_to(room: &mut Room, target: Target, at: Point, raised: Option<Option<Vector<World>>>) {
    let view = raised.and_then(|sun| {
        let sun = sun.map(|sun| room.room_from_world(sun));
        wall_to_see(room, sun).map(|wall| View::of(room, &wall))
    });
    match target {
        Target::Mark(index) => {
            let spot = view.map_or_else(|| Plan::of(room).floor_at(at), |view| view.floor_at(at));
            put_mark(room, index, spot);
        }
        Target::Opening(index) => {
            let Some(opening) = room.openings.get(index) else { return };
            if opening.in_ceiling {
                let spot =
                    view.map_or_else(|| Plan::of(room).floor_at(at), |view| view.roof_at(at, room.ceiling));
                room.openings[index] = opening.put_over(spot, room);
                return;
            }
            let Some(wall) = room.wall(opening.wall) else { return };
            let along =
                view.map_or_else(|| Plan::of(room).along_at(at, &wall), |view| view.wall_at(at, &wall)[0]);
            room.openings[index] = opening.slid_to(along, room);
        }
        Target::ArcEdge { .. } => {}
    }
}

/// Moves a mark or an opening by steps right and up on the plan.
fn move_by(room: &mut Room, target: Target, (right, up): (f64, f64)) {
    let moved = |from: Metres, steps: f64| Metres::from_metres(from.metres() + steps * KEY_STEP);
    match target {
        Target::Mark(index) => {
            if let Some(mark) = room.marks.get(index) {
                put_mark(room, index, [moved(mark.x, right), moved(mark.y, up)]);
            }
        }
        Target::Opening(index) => {
            if let Some(opening) = room.openings.get(index) {
                let middle = Metres::from_metres(opening.offset.metres() + opening.width.metres() / 2.0);
                if opening.in_ceiling {
                    let up_middle =
                        Metres::from_metres(opening.sill.metres() + opening.height.metres() / 2.0);
                    room.openings[index] =
                        opening.put_over([moved(middle, right), moved(up_middle, up)], room);
                    return;
                }
                room.openings[index] = opening.slid_to(moved(middle, right + up), room);
            }
        }
        Target::ArcEdge { .. } => {}
    }
}

/// Puts a mark down, if that is on the floor.
fn put_mark(room: &mut Room, index: usize, spot: [Metres; 2]) {
    let [x, y] = spot.map(|size| to_centimetre(size.metres()));
    let on_floor = room.holds(x, y);
    if let Some(mark) = room.marks.get_mut(index).filter(|_| on_floor) {
        (mark.x, mark.y) = (x, y);
    }
}

/// The touched mark is the one that is shown.
fn choose(shown: Shown, index: usize) {
    let id = untrack(move || shown.with(|room| room.marks.get(index).map(|mark| mark.id.clone()))).flatten();
    if let Some(id) = id {
        shown.choose_mark(&id);
    }
}

fn take(event: &PointerEvent) {
    let handle = event.current_target().and_then(|target| target.dyn_into::<Element>().ok());
    if let Some(handle) = handle {
        // Refused only for a pointer that is gone already; then no move follows either.
        drop(handle.set_pointer_capture(event.pointer_id()));
    }
}

/// Steps right and up of an arrow key.
fn step(key: &str) -> Option<(f64, f64)> {
    match key {
        "ArrowRight" => Some((1.0, 0.0)),
        "ArrowLeft" => Some((-1.0, 0.0)),
        "ArrowUp" => Some((0.0, 1.0)),
        "ArrowDown" => Some((0.0, -1.0)),
        _ => None,
    }
}

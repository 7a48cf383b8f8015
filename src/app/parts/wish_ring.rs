//! The wish ring: drag the brackets, or take them with the arrow keys, to say where light may come from.

use leptos::prelude::*;
use slantlight::draw::arc::{self, Edge};
use slantlight::draw::ring::{self, SIDE};
use slantlight::draw::{Hit, Point, Target};
use slantlight::light::relative::InLens;
use slantlight::plan::wish::Arc;
use slantlight::units::{Degrees, Vector};
use slantlight::words;
use wasm_bindgen::JsCast;
use web_sys::{Element, PointerEvent};

use super::Picture;

/// Degrees of a page key. Our own choice.
const PAGE: f64 = 15.0;

/// The ring of an arc, with the ball in its middle.
#[component]
pub fn WishRing(
    /// The arc.
    #[prop(into)]
    arc: Signal<Arc>,
    /// Where the light stands as the lens sees it, for the ball.
    #[prop(into)]
    light: Signal<Option<Vector<InLens>>>,
    /// Called with the arc as it is dragged.
    #[prop(into)]
    on_move: Callback<Arc>,
    /// Called when a bracket is taken.
    #[prop(into)]
    on_take: Callback<()>,
) -> impl IntoView {
    let paper = NodeRef::<leptos::html::Div>::new();
    let held = StoredValue::new(None::<(Edge, bool)>);
    let drawing = Memo::new(move |_| ring::ring(arc.get(), light.get()));
    // The brackets move; which of them there are changes only with the sides.
    let count = Memo::new(move |_| drawing.with(|drawing| drawing.hits.len()));
    let follow = move |event: PointerEvent| {
        let (Some((edge, mirrored)), Some(paper)) = (held.get_value(), paper.get_untracked()) else { return };
        let place = paper.get_bounding_client_rect();
        let at = Point::new(
            (f64::from(event.client_x()) - place.left()) / place.width() * SIDE,
            (f64::from(event.client_y()) - place.top()) / place.height() * SIDE,
        );
        on_move.run(arc::moved(arc.get_untracked(), edge, mirrored, ring::angle_at(at)));
    };
    let take = move |event: PointerEvent, bracket: (Edge, bool)| {
        let handle = event.current_target().and_then(|target| target.dyn_into::<Element>().ok());
        if let Some(handle) = handle {
            // Refused only for a pointer that is gone already; then no move follows either.
            drop(handle.set_pointer_capture(event.pointer_id()));
        }
        held.set_value(Some(bracket));
        on_take.run(());
    };
    let bracket = move |place: usize| {
        let hit = Memo::new(move |_| drawing.with(|drawing| drawing.hits.get(place).cloned()));
        let which = move || hit.get_untracked().and_then(|hit| edge_of(&hit));
        let angle = move || hit.get().and_then(|hit| edge_of(&hit)).map(|(edge, _)| edge.of(arc.get()));
        view! {
            <div
                class="ring-bracket"
                role="slider"
                tabindex="0"
                aria-label=move || hit.get().map(|hit| hit.name)
                aria-valuemin="0"
                aria-valuemax="360"
                aria-valuenow=move || angle().map(|angle| angle.positive().degrees())
                aria-valuetext=move || angle().map(|angle| format!("{} off the lens", words::degrees(angle.positive())))
                style:left=move || percent(hit.get().map(|hit| hit.at.x))
                style:top=move || percent(hit.get().map(|hit| hit.at.y))
                on:pointerdown=move |event| if let Some(bracket) = which() { take(event, bracket) }
                on:pointermove=follow
                on:pointerup=move |_| held.set_value(None)
                on:pointercancel=move |_| held.set_value(None)
                on:keydown=move |event| {
                    if let (Some((edge, mirrored)), Some(by)) = (which(), step(&event.key())) {
                        event.prevent_default();
                        on_take.run(());
                        let by = Degrees::from_degrees(if mirrored { -by } else { by });
                        on_move.run(arc::moved_by(arc.get_untracked(), edge, by));
                    }
                }
            ></div>
        }
    };
    view! {
        <div class="ring" node_ref=paper>
            <Picture drawing=drawing />
            {move || (0..count.get()).map(bracket).collect_view()}
        </div>
    }
}

/// Which edge an area to touch moves.
fn edge_of(hit: &Hit) -> Option<(Edge, bool)> {
    match hit.target {
        Target::ArcEdge { edge, mirrored } => Some((edge, mirrored)),
        _ => None,
    }
}

/// A place on the paper as a share of its side.
fn percent(at: Option<f64>) -> String {
    format!("{}%", at.unwrap_or_default() / SIDE * 100.0)
}

/// Degrees by which a key moves a bracket.
fn step(key: &str) -> Option<f64> {
    match key {
        "ArrowRight" | "ArrowUp" => Some(1.0),
        "ArrowLeft" | "ArrowDown" => Some(-1.0),
        "PageUp" => Some(PAGE),
        "PageDown" => Some(-PAGE),
        _ => None,
    }
}

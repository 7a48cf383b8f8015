//! What does not fit in the room, each fault as a sentence with what to do.

use leptos::prelude::*;
use slantlight::place::fault::Fault;
use slantlight::words::{self, Units};

use super::shown::Shown;

/// The faults, if there are any.
#[component]
pub fn Faults(shown: Shown) -> impl IntoView {
    let found = Memo::new(move |_| shown.with(slantlight::place::room::Room::check).unwrap_or_default());
    let sentences = move || {
        let units = shown.units();
        found
            .get()
            .iter()
            .map(|fault| view! { <li class="field-error">{sentence(fault, units)}</li> })
            .collect_view()
    };
    view! {
        <Show when=move || !found.with(Vec::is_empty)>
            <section class="stack">
                <h2>"What does not fit"</h2>
                <div role="alert"><ul class="stack">{sentences}</ul></div>
            </section>
        </Show>
    }
}

fn sentence(fault: &Fault, units: Units) -> String {
    let say = |length| words::measure(length, units);
    match fault {
        Fault::Corners { count } => {
            format!("The floor has {count} corners. It needs 3 to 12: add or remove some.")
        }
        Fault::NotANumber => "A size is not a number. Type it again.".to_owned(),
        Fault::NoLength { wall } => {
            format!("Wall {} has no length. Move or remove one of its corners.", wall + 1)
        }
        Fault::Crossing { wall, other } => {
            format!("Walls {} and {} cross. Move a corner until they do not.", wall + 1, other + 1)
        }
        Fault::Clockwise => {
            "The corners run the wrong way round. Seen from above they go anticlockwise.".to_owned()
        }
        Fault::Axes => "Wall 1 must run from corner 1 along the room's first axis.".to_owned(),
        Fault::Ceiling { .. } => "The ceiling must be above the floor.".to_owned(),
        Fault::NoSuchWall { opening, wall } => {
            format!("{opening}: there is no wall {} any more. Choose another wall.", wall + 1)
        }
        Fault::Size { opening } => format!("{opening}: width and height must be more than nought."),
        Fault::PastWall { opening, end, length } => {
            format!(
                "{opening} ends at {}, but its wall at {}. Move it or make it narrower.",
                say(*end),
                say(*length)
            )
        }
        Fault::PastCeiling { opening, head, ceiling } => {
            format!("{opening} reaches {}, but the ceiling is at {}. Lower it.", say(*head), say(*ceiling))
        }
        Fault::PastRoof { opening } => {
            format!("Part of {opening} lies beyond the floor. Move it or make it smaller.")
        }
        Fault::Transmittance { opening, .. } => {
            format!("{opening}: glass lets 0 to 100 % of the light through.")
        }
        Fault::MarkOutside { mark } => {
            format!("{mark} stands outside of the floor. Drag it back, or change its numbers.")
        }
        Fault::FaceOutside { mark, height } => {
            format!("{mark}: a face at {} is not in the room.", say(*height))
        }
    }
}

//! The scout sheet: what is known of the place, what has to be asked, and the list for the recce.

use leptos::prelude::*;
use slantlight::project::route::Route;
use slantlight::project::scout::{self, Answer, ROWS, ScoutRow};
use slantlight::project::scout_reply::Reply;

use super::shown::Shown;
use crate::app::parts::{Area, Notes, SectionHead};
use crate::app::{router, sending};

/// Every row of the sheet, folded, with how many are open.
#[component]
pub fn ScoutSheet(shown: Shown) -> impl IntoView {
    let open = Signal::derive(move || {
        let (asked, empty) = shown
            .with(|place| {
                let rows: Vec<bool> = scout::to_ask(place).map(|(_, asked)| asked).collect();
                (rows.iter().filter(|asked| **asked).count(), rows.iter().filter(|asked| !**asked).count())
            })
            .unwrap_or_default();
        format!("{asked} not known, {empty} empty")
    });
    let rows: Vec<AnyView> = ROWS.iter().map(|row| fields(shown, row)).collect();
    let notes = Notes::here();
    let list = move |_| {
        if let Some(text) = shown.with(scout::recce) {
            sending::words(notes, "Recce list", text);
        }
    };
    let ask = move |_| {
        let asked = shown.with(|place| (place.id.clone(), place.name.clone()));
        if let Some((location, name)) = asked {
            let text = format!(
                "Please look at {name} for us: {}",
                router::link(&Route::Recce { location, name: name.clone() })
            );
            sending::words(notes, "Scout for me", text);
        }
    };
    view! {
        <section>
            <SectionHead title="Scout sheet" beside=open />
            <details class="fold">
                <summary>"What is known, and what to ask"</summary>
                <div class="stack scout">{rows}</div>
            </details>
            <details class="fold">
                <summary>"Somebody has answered"</summary>
                {answered(shown)}
            </details>
            <p class="spaced"><button type="button" class="button wide" on:click=list>"Send the recce list"</button></p>
            <p class="spaced"><button type="button" class="button wide" on:click=ask>"Ask somebody to scout for me"</button></p>
        </section>
    }
}

/// A field for the answer of somebody who was asked.
fn answered(shown: Shown) -> AnyView {
    let (text, trouble) = (RwSignal::new(String::new()), RwSignal::new(String::new()));
    let take = move |_| {
        let here = shown.with(|place| (place.id.clone(), place.name.clone())).unwrap_or_default();
        match Reply::parse(&text.get_untracked()) {
            None => trouble
                .set("There is no answer in it. Copy the whole message, from “Recce for” on.".to_owned()),
            Some(reply) if reply.location != here.0 => {
                trouble
                    .set(format!("This answer is about another place than {}. Open that one first.", here.1));
            }
            Some(reply) => {
                shown.change_with_undo(
                    |place| reply.write_into(place),
                    "The answer is in the scout sheet".to_owned(),
                );
                text.set(String::new());
                trouble.set(String::new());
            }
        }
    };
    view! {
        <div class="stack">
            <Area label="Paste the message here" value=text on_input=move |typed| text.set(typed) />
            <p class="field-error" role="alert">{trouble}</p>
            <button type="button" class="button wide" on:click=take>"Put it into the sheet"</button>
        </div>
    }
    .into_any()
}

/// One row: what was found, or that it is not known.
fn fields(shown: Shown, row: &'static ScoutRow) -> AnyView {
    let answer = move || shown.with(|place| place.scouted(row.key) == Answer::NotKnown).unwrap_or(false);
    let value = Signal::derive(move || {
        shown
            .with(|place| match place.scouted(row.key) {
                Answer::Found(text) => text.to_owned(),
                Answer::Empty | Answer::NotKnown => String::new(),
            })
            .unwrap_or_default()
    });
    let found = move |text: String| shown.drag(|place| place.scout_row(row.key, Answer::Found(&text)));
    let toggle = move |event| {
        let to = if event_target_checked(&event) { Answer::NotKnown } else { Answer::Empty };
        shown.change(|place| place.scout_row(row.key, to));
    };
    view! {
        <Area label=format!("{}: {}", row.name, row.asks) value=value on_input=found />
        <label class="check"><input type="checkbox" prop:checked=answer on:change=toggle />" Not known: ask"</label>
    }
    .into_any()
}

//! What goes out of the plan: print, message, calendar, table, map, page. Each in the tap itself.

use leptos::prelude::*;
use slantlight::project::document::Project;
use slantlight::project::send::Candidate;
use slantlight::project::shoot::out::{calendar, csv, geojson, message, page};
use slantlight::project::shoot::sheet::Sheet;

use super::sheets;
use crate::app::devices::{clock, download};
use crate::app::parts::{Notes, SectionHead};
use crate::app::sending;
use crate::app::store::Store;

/// Makes a file of the plan.
type Make = fn(&Project, &[Sheet]) -> Candidate;

/// Files that can be had.
const FILES: [(&str, Make); 4] = [
    ("Calendar file, with alarms", |project, sheets| calendar::calendar(project, sheets, clock::now())),
    ("Table", csv::csv),
    ("Map of places and bearings", |project, _| geojson::geojson(project)),
    ("Page file", page::page),
];

/// One button for each way out.
pub fn buttons(store: Store) -> AnyView {
    let notes = Notes::here();
    let file = move |(name, make): (&'static str, Make)| {
        let tap = move |_| {
            let project = store.desk.latest();
            let file = make(&project, &untracked_sheets(store, &project));
            notes.say(match download::download(&file.name, file.media_type, &file.bytes) {
                true => format!("{} is in the downloads.", file.name),
                false => "This browser does not download files. Send it, or print it.".to_owned(),
            });
        };
        view! { <button type="button" class="button" on:click=tap>{name}</button> }.into_any()
    };
    let send = move |_| {
        let project = store.desk.latest();
        sending::words(notes, &project.title, message::message(&project, &untracked_sheets(store, &project)));
    };
    // Fails only where there is no printer's window.
    let print = move |_| drop(window().print());
    view! {
        <SectionHead title="Out" ruled=true />
        <div class="ways" role="group" aria-label="Out">
            <button type="button" class="button" on:click=send>"Send all as message"</button>
            <button type="button" class="button" on:click=print>"Print"</button>
            {FILES.into_iter().map(file).collect::<Vec<AnyView>>()}
        </div>
        <p class="soft">"A page cannot ring on a locked phone; a calendar can. Put the calendar file there."</p>
    }
    .into_any()
}

/// Sends one day as a message. Call it in the tap itself.
pub fn send_day(store: Store, notes: Notes, day: usize) {
    let project = store.desk.latest();
    if let Some(sheet) = untracked_sheets(store, &project).get(day) {
        sending::words(notes, &project.title, message::of_day(&project, sheet));
    }
}

fn untracked_sheets(store: Store, project: &Project) -> Vec<Sheet> {
    untrack(|| sheets(store, project))
}

//! Days: which dates, the plan of each, and what goes out of it.
//!
//! The sheets are marks made by the library (`project::shoot::out::page`), the same on the screen and on paper; a tap on
//! a set-up opens it to be moved by hand.

mod dates;
mod hand;
mod out;
mod rules;
mod solve;

use std::sync::Arc;

use leptos::prelude::*;
use slantlight::place::zone::Zone;
use slantlight::project::document::Project;
use slantlight::project::shoot::Shoot;
use slantlight::project::shoot::out::page;
use slantlight::project::shoot::sheet::{self, Sheet};
use wasm_bindgen::JsCast;
use web_sys::{Element, MouseEvent};

use crate::app::parts::{EmptyState, Frame, Notes, SectionHead};
use crate::app::store::Store;
use slantlight::project::edit::Edit;

/// The room of the schedule.
#[component]
pub fn Days() -> impl IntoView {
    let store = Store::here();
    let chosen = RwSignal::new(None::<String>);
    let solving = solve::Solving::idle();
    let html = Signal::derive(move || store.desk.with(|project| days(store, project)));
    let idle = Signal::derive(move || store.desk.with(|project| unplaced(store, project)));
    let subtitle = Signal::derive(move || store.desk.with(|project| summary(store, project)));
    let notes = Notes::here();
    let tap = move |event: MouseEvent| {
        if let Some(day) = tapped(&event, "data-day") {
            out::send_day(store, notes, day.parse().unwrap_or_default());
        } else if let Some(set_up) = tapped(&event, "data-set-up") {
            chosen.set(Some(set_up));
        }
    };
    let empty = move || store.desk.with(|project| project.set_ups().count() == 0);
    view! {
        <Frame title="Days" subtitle=subtitle>
            <Show when=empty>
                <EmptyState says="No set-up yet: days are made of set-ups. Add scenes first.">""</EmptyState>
            </Show>
            <div class="off-paper">{dates::dates(store)} {solve::button(store, solving)}</div>
            <div class="days" inner_html=html on:click=tap></div>
            <div class="off-paper days" inner_html=idle on:click=tap></div>
            {hand::sheet(store, chosen)}
            <div class="off-paper">
                {out::buttons(store)}
                <SectionHead title="What the plan must keep to" ruled=true />
                {rules::folds(store)}
            </div>
        </Frame>
    }
}

/// Gives the zone of a name.
fn zones(store: Store) -> impl Fn(&str) -> Arc<Zone> {
    move |name: &str| store.zones.named(name)
}

/// The sheets of the plan.
fn sheets(store: Store, project: &Project) -> Vec<Sheet> {
    sheet::sheets(project, &zones(store), store.settings.get().clock)
}

/// Every day, as marks.
fn days(store: Store, project: &Project) -> String {
    let sheets = sheets(store, project);
    sheets.iter().enumerate().map(|(n, sheet)| page::section(sheet, Some(n))).collect()
}

/// Set-ups that stand on no day, as marks.
fn unplaced(store: Store, project: &Project) -> String {
    page::unplaced(&sheet::unplaced(project, &zones(store)))
}

fn summary(store: Store, project: &Project) -> String {
    sheet::summary(project, &zones(store))
}

/// What the button that was tapped stands for.
fn tapped(event: &MouseEvent, what: &str) -> Option<String> {
    let target: Element = event.target()?.dyn_into().ok()?;
    target.closest(&format!("[{what}]")).ok()??.get_attribute(what)
}

/// Makes the shoot what it shall be: one step of undo.
fn put(store: Store, label: &'static str, shoot: Shoot) -> bool {
    store.edit(Edit::SetShoot { label, shoot: Box::new(shoot) })
}

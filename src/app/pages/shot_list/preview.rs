//! The list as it would be taken in: what each column holds, and every row with what had to be decided.

use leptos::prelude::*;
use slantlight::project::route::Route;
use slantlight::project::shot_list::{COLUMNS, Entry, entries, take_in};

use super::{List, sentences};
use crate::app::parts::SectionHead;
use crate::app::router;
use crate::app::store::Store;

/// Columns, rows, and the button that takes them in.
pub(super) fn preview(shown: List, list: RwSignal<Option<List>>) -> AnyView {
    let store = Store::here();
    let project = store.desk.latest();
    let read = entries(&shown.table, &shown.layout, &project);
    let plan = take_in(&project, &read, || store.fresh_id());
    let doubtful = read.iter().filter(|entry| !entry.doubts.is_empty()).count();
    let says = sentences::summary(&plan, doubtful);
    let renamed = plan
        .renamed
        .iter()
        .map(|names| view! { <p>{sentences::renamed(names)}</p> }.into_any())
        .collect_view();
    let take = move |_| {
        if store.edit_with_undo(plan.edit.clone(), sentences::taken_in(plan.set_ups)) {
            router::go(&Route::Scenes);
        }
    };
    let rows: Vec<AnyView> = read.iter().map(row).collect();
    view! {
        <section><SectionHead title="What each column holds" />{columns(shown, list)}</section>
        <section>
            <SectionHead title="What would be added" />
            <p>{says}</p>
            {renamed}
            <button type="button" class="button wide primary" on:click=take>"Take it in"</button>
            <ul class="rows">{rows}</ul>
        </section>
    }
    .into_any()
}

/// One choice for each column, and whether the first row names them.
fn columns(shown: List, list: RwSignal<Option<List>>) -> AnyView {
    let width = shown.table.width();
    let sample = |at: usize| {
        let cells = shown.table.rows.iter().filter_map(|row| row.cells.get(at));
        cells.filter(|cell| !cell.is_empty()).take(2).cloned().collect::<Vec<_>>().join(", ")
    };
    let has_names = shown.layout.has_names;
    let choices: Vec<AnyView> =
        (0..width).map(|at| choice(at, &sample(at), shown.layout.columns[at], list)).collect();
    let name =
        move |_| list.update(|list| list.iter_mut().for_each(|list| list.layout.has_names = !has_names));
    view! {
        <div class="fields">{choices}</div>
        <label class="check"><input type="checkbox" prop:checked=has_names on:change=name />" The first row names the columns"</label>
    }
    .into_any()
}

fn choice(
    at: usize,
    sample: &str,
    held: slantlight::project::shot_list::Column,
    list: RwSignal<Option<List>>,
) -> AnyView {
    let id = format!("column-{at}");
    let label = format!("Column {}: {}", at + 1, sentences::shortened(sample));
    let options: Vec<AnyView> = (0..COLUMNS.len())
        .map(|place| view! { <option value=place.to_string() selected=COLUMNS[place].0 == held>{COLUMNS[place].1}</option> }.into_any())
        .collect();
    let choose = move |event| {
        let chosen = event_target_value(&event).parse::<usize>().ok().and_then(|place| COLUMNS.get(place));
        let Some((column, _)) = chosen else { return };
        list.update(|list| list.iter_mut().for_each(|list| list.layout.columns[at] = *column));
    };
    view! {
        <div class="field">
            <label for=id.clone()>{label}</label>
            <select id=id on:change=choose>{options}</select>
        </div>
    }
    .into_any()
}

fn row(entry: &Entry) -> AnyView {
    let doubts: Vec<AnyView> = entry
        .doubts
        .iter()
        .map(|doubt| view! { <p class="field-error">{sentences::doubt(doubt)}</p> }.into_any())
        .collect();
    view! {
        <li class="list-entry">
            <p class="row-title">{sentences::title(entry)}</p>
            <p class="row-sub">{sentences::details(entry)}</p>
            {doubts}
        </li>
    }
    .into_any()
}

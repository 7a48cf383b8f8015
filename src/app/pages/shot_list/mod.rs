//! A shot list from a spreadsheet or a message: pasted or opened, shown row by row, then taken in as one step.

mod preview;
mod sentences;

use std::sync::Arc;

use leptos::prelude::*;
use slantlight::project::route::Route;
use slantlight::project::shot_list::{self, Layout, Table};

use crate::app::devices::file::{self, Opened};
use crate::app::parts::{Area, Frame};
use crate::app::pasting::{Forwarded, on_forwarded};

/// A list that was read, and what its columns hold.
#[derive(Clone, PartialEq)]
struct List {
    table: Arc<Table>,
    layout: Layout,
}

/// The page.
#[component]
pub fn ShotListPage() -> impl IntoView {
    let text = RwSignal::new(String::new());
    let list = RwSignal::new(None::<List>);
    let trouble = RwSignal::new(String::new());
    let read = move |text: &str| match shot_list::read(text) {
        Ok(table) => {
            trouble.set(String::new());
            list.set(Some(List { layout: Layout::of(&table), table: Arc::new(table) }));
        }
        Err(why) => {
            list.set(None);
            trouble.set(sentences::unread(why));
        }
    };
    on_forwarded(expect_context::<Forwarded>().list, move |words| {
        read(&words);
        text.set(words);
    });
    let open = move |_| {
        file::open(".csv,.tsv,.txt,text/csv,text/plain", move |opened| match as_text(opened) {
            Ok(words) => {
                read(&words);
                text.set(words);
            }
            Err(why) => trouble.set(why.to_owned()),
        })
    };
    view! {
        <Frame title="Shot list" subtitle="from a spreadsheet or a message" back=(String::from("Scenes"), Route::Scenes.href())>
            <div class="stack">
                <Area label="Paste the list: rows of a table, or lines like 4A INT. SAIL LOFT - DAY - 25 min - low sun"
                    value=text on_input=move |typed| text.set(typed) />
                <p class="field-error" role="alert">{trouble}</p>
                <button type="button" class="button wide primary" on:click=move |_| text.with_untracked(|text| read(text))>"Read the list"</button>
                <button type="button" class="button wide" on:click=open>"Open a file instead"</button>
            </div>
            {move || list.get().map(|shown| preview::preview(shown, list))}
        </Frame>
    }
}

fn as_text(opened: Opened) -> Result<String, &'static str> {
    match opened {
        Opened::Bytes(bytes) => String::from_utf8(bytes)
            .map_err(|_| "This file is no plain text. In the spreadsheet, save it as CSV with UTF-8."),
        Opened::TooLarge => Err("This file is far larger than any shot list. Nothing was changed."),
        Opened::Unreadable => Err("The browser could not read this file. Nothing was changed."),
    }
}

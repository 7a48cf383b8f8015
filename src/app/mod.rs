//! The screens. The only room that knows the browser; it holds no formula.
//!
//! | room | what it does |
//! |---|---|
//! | `router` | the address of a screen ↔ a [`Route`](slantlight::project::route::Route); focus and scroll when it changes |
//! | `second` | what a first visit need not wait for, and the only way there |
//! | `shell`, `banners` | the frame of all pages, and what is said over every page |
//! | `sending`, `pasting` | what goes out, and what is pasted anywhere |
//! | `tabs` | the five rooms at the foot or the side |
//! | `store` | one context: settings, the moment shown, the open project, what is kept |
//! | `devices` | one browser API per file |
//! | `parts` | what pages are put together from; they know no project |
//! | `pages` | one file per page |
//!
//! # How a page is added
//! 1. Give it an address (a variant of the route) and a line in `pages::page_of_second`; in `pages::page` if a
//!    first visit is to wait for it.
//! 2. Write `pages/NAME.rs` with a component that returns a [`Frame`](parts::Frame): title, subtitle, back link,
//!    and where it helps `list` (left column from 900 px) and `more` (right column from 1200 px).
//! 3. Ask [`Store::here`](store::Store::here) and [`Notes::here`](parts::Notes::here) at the top of the component,
//!    never inside a tap. Read memos over library calls; send edits; draw what comes back.
//! 4. Its looks, if the parts do not have them yet, go into `style/NAME.css`, with tokens for every colour.
//! 5. Nothing that ticks each second should rebuild a page: read `store.moment.to_the_minute()`.

mod banners;
mod devices;
mod pages;
mod panic;
mod parts;
mod pasting;
mod router;
mod second;
mod sending;
mod shell;
mod store;
mod tabs;
mod undoing;

use leptos::prelude::mount_to_body;
use wasm_bindgen_futures::spawn_local;

/// Starts the app, as soon as it knows what this browser keeps.
pub fn start() {
    panic::install();
    spawn_local(async {
        match store::cabinet::look().await {
            Ok(found) => {
                mount_to_body(move || shell::shell(found));
                devices::bridge::arrived();
            }
            Err(second::Missing) => devices::bridge::fail_to_load(second::MISSING),
        }
    });
}

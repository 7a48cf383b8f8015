//! A project or a set-up as a link and as a picture of squares, ready before the tap that sends it.

use leptos::prelude::*;
use leptos::task::spawn_local;
use slantlight::draw::code::code;
use slantlight::project::canonical::to_line;
use slantlight::project::document::Project;
use slantlight::project::link::{self, MARK};

use crate::app::devices::share::{self, Shared};
use crate::app::devices::{address, clipboard, squeeze};
use crate::app::parts::{Area, Notes, Picture, Sheet};

/// The link that is shown, on a sheet of its own.
#[derive(Clone, Copy)]
pub struct AsLink {
    open: RwSignal<bool>,
    address: RwSignal<String>,
    notes: Notes,
}

impl AsLink {
    /// Makes the sheet possible for all pages. Call once, at the app's root.
    pub fn provide(notes: Notes) {
        provide_context(Self { open: RwSignal::new(false), address: RwSignal::new(String::new()), notes });
    }

    /// The way to the sheet; ask while a component is made, not in a tap.
    pub fn here() -> Self {
        expect_context()
    }

    /// Makes the link of a project and shows it.
    pub fn show(self, project: &Project) {
        let text = to_line(project);
        spawn_local(async move {
            let deflated = squeeze::deflated(text.as_bytes()).await;
            match link::payload(&text, deflated.as_deref()) {
                Ok(payload) => {
                    self.address.set(format!("{}#{MARK}{payload}", address::base()));
                    self.open.set(true);
                }
                Err(_) => self.notes.say("This is too much for a link. Send the project as a file instead."),
            }
        });
    }

    fn send(self) {
        let address = self.address.get_untracked();
        share::share("Slantlight", &address, &[], move |shared| {
            if shared == Shared::Unable {
                self.notes.say("This browser has no way to send. Copy the link instead.");
            }
        });
    }

    fn copy(self) {
        clipboard::copy(&self.address.get_untracked(), move |copied| {
            self.notes.say(if copied {
                "Copied. Paste it into a message."
            } else {
                "Copy it from the field."
            });
        });
    }
}

/// The sheet. Put once into the shell.
#[component]
pub fn LinkSheet() -> impl IntoView {
    let link = AsLink::here();
    view! {
        <Sheet open=link.open title="As a link">
            <Inside />
        </Sheet>
    }
}

#[component]
fn Inside() -> impl IntoView {
    let link = AsLink::here();
    let address = link.address.get_untracked();
    let picture = code(&address);
    view! {
        <div class="stack">
            <p class="soft">
                "All of it stands in the address itself, behind the #, which browsers send nowhere. Whoever opens it sees it before it is taken in."
            </p>
            {match picture {
                Some(picture) => view! { <div class="code"><Picture drawing=picture /></div> }.into_any(),
                None => view! { <p>"It is too long for a picture that another phone could read."</p> }.into_any(),
            }}
            <Area label="Link" value=link.address on_input=move |_| {} />
            <div class="row">
                <button type="button" class="button grow" on:click=move |_| link.copy()>"Copy the link"</button>
                <button type="button" class="button primary grow" on:click=move |_| link.send()>"Send the link"</button>
            </div>
        </div>
    }
}

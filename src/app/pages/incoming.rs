//! What comes in from outside: a file, a message, a link, a share. It is shown before it is taken in, and it never
//! overwrites anything: a project that is here already is laid beside it (`merging`).

use std::sync::Arc;

use leptos::prelude::*;
use leptos::task::spawn_local;
use slantlight::project::document::Project;
use slantlight::project::link::{self, LinkError, MARK};
use slantlight::project::merge::distance;
use slantlight::project::message::parse_message;
use slantlight::project::photograph::{self, Pictures};
use slantlight::project::restore::{RestoreError, Restored, restore};
use slantlight::project::route::Route;

use super::called::{contents, title};
use super::merging::{Merging, SideBySide};
use crate::app::devices::file::{self, Opened};
use crate::app::devices::{address, clipboard, id, squeeze};
use crate::app::parts::{Area, Notes, Sheet};
use crate::app::router;
use crate::app::second::Second;
use crate::app::store::Store;

/// Where texts from outside go.
#[derive(Clone, Copy)]
pub struct Incoming {
    /// The project that waits for a yes or a no.
    preview: RwSignal<Option<Arc<Restored>>>,
    /// The same beside the project with its id that is here, if there is one.
    beside: RwSignal<Option<(Merging, Arc<Project>)>>,
    /// The pictures that came with it; kept only if it is taken in.
    pictures: StoredValue<Pictures>,
    open: RwSignal<bool>,
    /// Whether the sheet to paste into is there.
    pasting: RwSignal<bool>,
    store: Store,
    notes: Notes,
    second: Second,
}

impl Incoming {
    /// Makes the sheets possible for all pages. Call once, at the app's root.
    pub fn provide(notes: Notes) -> Self {
        let incoming = Self {
            preview: RwSignal::new(None),
            beside: RwSignal::new(None),
            pictures: StoredValue::new(Pictures::new()),
            open: RwSignal::new(false),
            pasting: RwSignal::new(false),
            store: Store::here(),
            notes,
            second: Second::here(),
        };
        provide_context(incoming);
        address::take_fragments(MARK, move |fragment| incoming.take(&fragment));
        incoming
    }

    /// The way in; ask while a component is made, not in a tap.
    pub fn here() -> Self {
        expect_context()
    }

    /// Lets the person choose a file; call from inside a tap.
    pub fn choose_file(self) {
        file::open(".json,.txt,application/json,text/plain", move |opened| self.take_opened(opened));
    }

    /// Reads a file that was chosen before the app was there, and shows what is in it.
    pub fn take_file(self, chosen: web_sys::File) {
        file::read(chosen, move |opened| self.take_opened(opened));
    }

    fn take_opened(self, opened: Opened) {
        self.second.ask(move |table| (table.read_file)(self, &opened));
    }

    /// Shows what is in a file. In the second part.
    pub fn read_file(self, opened: &Opened) {
        match opened {
            Opened::Bytes(bytes) => self.show(from_file(bytes)),
            Opened::TooLarge => {
                self.notes.say("This file is far larger than any project. Nothing was changed.")
            }
            Opened::Unreadable => {
                self.notes.say("The browser could not read this file. Nothing was changed.")
            }
        }
    }

    /// Asks for text from a message.
    pub fn ask_for_text(self) {
        self.pasting.set(true);
    }

    /// Reads text from outside, a link or a message with a project, and shows what is in it.
    pub fn take(self, text: &str) {
        let text = text.to_owned();
        self.second.ask(move |table| (table.read)(self, &text));
    }

    /// The same, in the second part.
    pub fn read(self, text: &str) {
        match link::find(text) {
            Some(payload) => self.follow(payload.to_owned()),
            None => self.show(parse_message(text)),
        }
    }

    /// Shows what a link carries.
    fn follow(self, payload: String) {
        spawn_local(async move {
            match opened(&payload).await {
                Ok(restored) => self.show(Ok(restored)),
                Err(LinkError::Project(why)) => self.show(Err(why)),
                Err(LinkError::Newer { .. }) => self.notes.say("A newer version of Slantlight made this link. Let the new version in here, then open it again. Nothing was changed."),
                Err(_) => self.notes.say("This link did not arrive whole. Ask for it once more, or for the file. Nothing was changed."),
            }
        });
    }

    fn show(self, read: Result<Restored, RestoreError>) {
        match read {
            Ok(restored) => spawn_local(async move {
                let (project, pictures) = photograph::apart(restored.project);
                let restored = Restored { project, ..restored };
                self.pictures.set_value(pictures);
                self.beside.set(self.laid_beside(&restored.project).await);
                self.preview.set(Some(Arc::new(restored)));
                self.pasting.set(false);
                self.open.set(true);
            }),
            Err(why) => self.notes.say(format!("{} Nothing was changed.", sentence(&why))),
        }
    }

    /// It was taken in: its pictures stay here, and the sheet gives way to the project.
    fn done(self) {
        self.store.pictures.keep_all(self.pictures.get_value(), self.notes);
        self.open.set(false);
        router::go(&Route::Scenes);
    }

    /// The project that came beside the one with its id that is here. The version of ours that differs least from what
    /// came is taken for what both once were.
    async fn laid_beside(self, there: &Project) -> Option<(Merging, Arc<Project>)> {
        let here = self.store.desk.kept_as(&there.id)?;
        let versions = self.store.desk.keeper.versions(&there.id).await;
        let ancestor = versions.iter().min_by_key(|version| distance(&version.project, there));
        let merging = Merging::new(&here, there, ancestor.map(|version| &*version.project));
        Some((merging, here))
    }
}

/// The project that a link carries.
async fn opened(payload: &str) -> Result<Restored, LinkError> {
    let parcel = link::unpack(payload)?;
    if parcel.is_deflated {
        let inflated = squeeze::inflated(&parcel.bytes).await.ok_or(LinkError::Altered)?;
        return parcel.open(&inflated);
    }
    parcel.open(&parcel.bytes)
}

/// A project's file, or a message that was saved as one.
fn from_file(bytes: &[u8]) -> Result<Restored, RestoreError> {
    restore(bytes).or_else(|why| match core::str::from_utf8(bytes) {
        Ok(text) if !matches!(why, RestoreError::Newer { .. }) => parse_message(text).map_err(|_| why),
        _ => Err(why),
    })
}

/// What is wrong, where, and what to do next.
fn sentence(why: &RestoreError) -> String {
    match why {
        RestoreError::TooLarge { .. } | RestoreError::TooDeep { .. } => {
            "This is larger than any project of this app, so it was not read.".to_owned()
        }
        RestoreError::Empty => "There is nothing in it.".to_owned(),
        RestoreError::NotText { .. } => "This is not a project's file: it holds no text.".to_owned(),
        RestoreError::CutOff { line, .. } => {
            format!("The project ends too early, in line {line}. Ask for it once more, as a file.")
        }
        RestoreError::NotJson { line, column } | RestoreError::NotANumber { line, column } => {
            format!("The project is damaged in line {line}, at {column}. Ask for it once more, as a file.")
        }
        RestoreError::Foreign => "There is no Slantlight project in it.".to_owned(),
        RestoreError::NoVersion => "The project does not say of which version it is. Ask for it once more.".to_owned(),
        RestoreError::Newer { .. } => {
            "The project was made by a newer version of Slantlight. Let the new version in here, then open it again.".to_owned()
        }
    }
}

/// The two sheets. Put once into the shell.
#[component]
pub fn IncomingSheets() -> impl IntoView {
    let incoming = Incoming::here();
    view! {
        <Sheet open=incoming.pasting title="Paste from a message">
            <PasteBox />
        </Sheet>
        <Sheet open=incoming.open title="Take this in?">
            <Preview />
        </Sheet>
    }
}

/// A field to paste into, and a button where the browser lets us read the clipboard.
#[component]
fn PasteBox() -> impl IntoView {
    let incoming = Incoming::here();
    let text = RwSignal::new(String::new());
    let from_clipboard = move |_| {
        clipboard::paste(move |found| match found {
            Some(found) => text.set(found),
            None => incoming.notes.say("The browser keeps the clipboard to itself. Paste into the field."),
        });
    };
    view! {
        <div class="stack">
            <p class="soft">"Copy the whole text of the message that brought the project, and paste it here."</p>
            <Area label="Text of the project" value=text on_input=move |typed| text.set(typed) />
            <div class="row">
                {clipboard::can_paste().then(|| view! {
                    <button type="button" class="button grow" on:click=from_clipboard>"Paste"</button>
                })}
                <button
                    type="button"
                    class="button primary grow"
                    disabled=move || text.with(|text| text.trim().is_empty())
                    on:click=move |_| incoming.take(&text.get_untracked())
                >
                    "Look at it"
                </button>
            </div>
        </div>
    }
}

/// What is in it, and the question.
#[component]
fn Preview() -> impl IntoView {
    let (incoming, store) = (Incoming::here(), Store::here());
    let take_in = move |_| {
        if let Some(restored) = incoming.preview.get_untracked() {
            store.desk.lay_and_keep(beside_what_is_there(store, &restored.project));
            incoming.done();
        }
    };
    view! {
        {move || incoming.preview.get().map(|restored| {
            let project = &restored.project;
            let beside = incoming.beside.get_untracked();
            let take_word = if beside.is_some() { "Keep as a second project" } else { "Take it in" };
            let repairs = restored.repairs.iter().map(|repair| view! { <li>{repair.sentence.clone()}</li> });
            view! {
                <div class="stack">
                    <p><strong>{title(project)}</strong></p>
                    <p>{contents(project)}</p>
                    {(!restored.repairs.is_empty()).then(|| view! {
                        <div class="caution"><p>"Parts of it were damaged:"</p><ul>{repairs.collect_view()}</ul></div>
                    })}
                    {beside.map(|(merging, here)| view! {
                        <SideBySide merging=merging here=here on_done=move |()| incoming.done() />
                    })}
                    <div class="row">
                        <button type="button" class="button grow" on:click=move |_| incoming.open.set(false)>
                            "Leave it"
                        </button>
                        <button type="button" class="button primary grow" on:click=take_in>{take_word}</button>
                    </div>
                </div>
            }
        })}
    }
}

/// The project as it may be filed: with an id of its own if that is taken.
fn beside_what_is_there(store: Store, project: &Project) -> Arc<Project> {
    if !store.desk.is_known(&project.id) {
        return Arc::new(project.clone());
    }
    let title = format!("{}, taken in", title(project));
    Arc::new(Project { id: id::fresh(), title, ..project.clone() })
}

//! Photographs of the scout: taken or chosen, made smaller, said what they show, taken away again.

use leptos::prelude::*;
use leptos::task::spawn_local;
use slantlight::project::photograph::{MOST, Photograph, address};
use slantlight::words;

use super::shown::Shown;
use crate::app::devices::file::{self, Opened};
use crate::app::devices::local::NotKept;
use crate::app::devices::{camera_roll, clock};
use crate::app::parts::{Notes, SectionHead, TextField};
use crate::app::store::Picture;

/// All photographs of the location, and the button for one more.
pub fn photographs(shown: Shown) -> AnyView {
    let notes = Notes::here();
    let ids = Memo::new(move |_| {
        let ids = shown.with(|place| place.photographs.iter().map(|one| one.id.clone()).collect::<Vec<_>>());
        ids.unwrap_or_default()
    });
    let beside = Signal::derive(move || match ids.with(Vec::len) {
        0 => "none yet".to_owned(),
        count => count.to_string(),
    });
    let busy = RwSignal::new(false);
    let word = move || if busy.get() { "Making it smaller" } else { "Take or choose a photograph" };
    let add = move |_| {
        file::open("image/*", move |opened| match opened {
            Opened::Bytes(bytes) => {
                busy.set(true);
                spawn_local(async move {
                    if let Err(why) = take_in(shown, &bytes).await {
                        notes.say(format!("{why} Nothing was changed."));
                    }
                    busy.set(false);
                });
            }
            Opened::TooLarge => notes.say("This file is too large to be read here. Nothing was changed."),
            Opened::Unreadable => notes.say("The browser could not read this file. Nothing was changed."),
        });
    };
    let rows = move || ids.get().into_iter().map(|id| row(shown, id)).collect_view();
    view! {
        <section class="stack">
            <SectionHead title="Photographs" beside=beside ruled=true />
            <ul class="photographs">{rows}</ul>
            <button type="button" class="button wide" disabled=move || busy.get() on:click=add>{word}</button>
            <p class="soft">"They stay in this browser, made smaller and without what the camera wrote into them. A file of the project carries them only if you say so."</p>
        </section>
    }
    .into_any()
}

/// One photograph: the picture, what it shows, when it was taken in.
fn row(shown: Shown, id: String) -> AnyView {
    let id = StoredValue::new(id);
    let one = Memo::new(move |_| {
        shown
            .with(|place| id.with_value(|id| place.photographs.iter().find(|one| one.id == *id).cloned()))
            .flatten()
    });
    let note =
        Signal::derive(move || one.with(|one| one.as_ref().map(|one| one.note.clone())).unwrap_or_default());
    let in_words = move || {
        Some(note.get()).filter(|note| !note.is_empty()).unwrap_or_else(|| "not described yet".to_owned())
    };
    let when = move || {
        let local = shown
            .store
            .current_zone()
            .local(one.with(|one| one.as_ref().map(|one| one.at)).unwrap_or_default());
        format!(
            "{}, {}",
            words::date(local.date()),
            words::clock(local.time(), shown.store.settings.get().clock)
        )
    };
    let picture = move || {
        match id.with_value(|id| shown.store.pictures.look(id)) {
        Picture::There(picture) => view! { <img src=address(&picture) alt=in_words /> }.into_any(),
        Picture::Reading => view! { <p class="soft">"Reading the picture"</p> }.into_any(),
        Picture::Gone => view! {
            <p class="soft">"The picture is not in this browser. A file that carries the photographs brings it."</p>
        }
        .into_any(),
    }
    };
    let say = move |text: String| shown.change(|place| place.note_photograph(&id.get_value(), text));
    let remove = move |_| {
        let gone = id.get_value();
        shown.change_with_undo(
            |place| place.photographs.retain(|one| one.id != gone),
            "Photograph removed".to_owned(),
        );
    };
    view! {
        <li class="stack">
            {picture}
            <TextField label="What it shows" value=note on_change=say />
            <div class="row">
                <p class="soft grow">{when}</p>
                <button type="button" class="button small" on:click=remove>"Remove"</button>
            </div>
        </li>
    }
    .into_any()
}

/// Keeps a picture, then writes its photograph into the project.
async fn take_in(shown: Shown, bytes: &[u8]) -> Result<(), &'static str> {
    let store = shown.store;
    if store.desk.latest().photographs().count() >= MOST {
        return Err("The project has as many photographs as its file can carry: remove one first.");
    }
    let picture = camera_roll::reduced(bytes).await;
    let picture = picture.ok_or("This browser cannot draw that picture. Try another one, as JPEG or PNG.")?;
    let id = store.fresh_id();
    store.pictures.keep(id.clone(), picture.into()).await.map_err(|why| match why {
        NotKept::Full => "There is no room for it: this browser's storage is full. Send yourself a copy of the project, then remove photographs or projects.",
        NotKept::Blocked => "This browser keeps no photographs for this page.",
    })?;
    let photograph = Photograph { id, at: clock::now(), note: String::new(), picture: None };
    shown.change(|place| place.photographs.push(photograph));
    Ok(())
}

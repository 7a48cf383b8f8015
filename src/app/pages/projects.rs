//! Projects: all that this browser keeps; new, open, rename, copy, delete, send, and how old the last copy is.

use std::sync::Arc;

use leptos::prelude::*;
use leptos::task::spawn_local;
use slantlight::project::document::Project;
use slantlight::project::edit::Edit;
use slantlight::project::route::Route;
use slantlight::words;

use super::as_link::AsLink;
use super::called::{contents, title};
use super::earlier::Earlier;
use super::incoming::Incoming;
use crate::app::devices::persistence::{self, Persistence};
use crate::app::devices::{clock, id, install};
use crate::app::parts::{Frame, Notes, SectionHead, TextField};
use crate::app::sending;
use crate::app::store::Store;

/// All projects.
#[component]
pub fn Projects() -> impl IntoView {
    let store = Store::here();
    let incoming = Incoming::here();
    let new = move |_| store.desk.lay_and_keep(Arc::new(Project::empty(&id::fresh(), "New project")));
    view! {
        <Frame title="Projects" subtitle="kept in this browser, nowhere else" back=("Start".to_owned(), Route::Start.href())>
            <Show when=move || store.desk.is_filed()>
                <OpenProject />
            </Show>
            <OtherProjects />
            <section class="stack">
                <SectionHead title="More" />
                <button type="button" class="button wide" on:click=new>"New project"</button>
                <button type="button" class="button wide" on:click=move |_| incoming.choose_file()>"Open a project file"</button>
                <button type="button" class="button wide" on:click=move |_| incoming.ask_for_text()>"Paste from a message"</button>
            </section>
            <Safety />
        </Frame>
    }
}

/// The project on the desk: its name and its ways out.
#[component]
fn OpenProject() -> impl IntoView {
    let (store, notes, link) = (Store::here(), Notes::here(), AsLink::here());
    let name = Signal::derive(move || store.desk.project().title.clone());
    let carried = RwSignal::new(false);
    let with_project = move |act: fn(Store, Notes, &Project)| {
        move |_| match outgoing(store, carried.get_untracked()) {
            Some(project) => act(store, notes, &project),
            None => notes.say("The photographs are still being read. Try again in a moment."),
        }
    };
    view! {
        <section class="stack">
            <SectionHead title="Open" beside=Signal::derive(move || contents(&store.desk.project())) />
            <TextField label="Name" value=name on_change=move |typed| rename(store, typed) />
            <p class="soft">{move || copy_age(store)}</p>
            {move || carry(store, carried)}
            <div class="row">
                <button type="button" class="button primary grow" on:click=with_project(sending::send)>"Send"</button>
                <button type="button" class="button grow" on:click=with_project(sending::export)>"Export"</button>
                <button type="button" class="button grow" on:click=move |_| sending::copy(store, notes, &store.desk.latest())>"Copy text"</button>
                <button type="button" class="button grow" on:click=move |_| link.show(&store.desk.latest())>"As a link"</button>
            </div>
            <div class="row">
                <button type="button" class="button grow" on:click=move |_| duplicate(store)>"Duplicate"</button>
                <button type="button" class="button grow" on:click=move |_| delete(store, notes)>"Delete"</button>
            </div>
            <Steps />
            <Earlier />
        </section>
    }
}

/// Whether the file that goes out carries the photographs; nothing where there are none.
fn carry(store: Store, carried: RwSignal<bool>) -> Option<AnyView> {
    let count = store.desk.with(|project| project.photographs().count());
    let change = move |event| {
        carried.set(event_target_checked(&event));
        // Read now: what is sent must be ready within the tap.
        spawn_local(store.pictures.read_all(store.desk.latest()));
    };
    (count > 0).then(|| {
        view! {
            <label class="check">
                <input type="checkbox" prop:checked=move || carried.get() on:change=change />
                {format!("The file carries the photographs ({count})")}
            </label>
        }
        .into_any()
    })
}

/// The project as it goes out; `None` while its pictures are being read.
fn outgoing(store: Store, with_pictures: bool) -> Option<Arc<Project>> {
    let project = store.desk.latest();
    if with_pictures { store.pictures.fill(&project).map(Arc::new) } else { Some(project) }
}

/// Undo and redo, by the name of what they do.
#[component]
pub fn Steps() -> impl IntoView {
    let desk = Store::here().desk;
    let undo = move || {
        desk.steps.get().undo.map(|label| {
            view! {
                <button type="button" class="button grow" on:click=move |_| {
                    desk.undo();
                }>{format!("Undo: {label}")}</button>
            }
        })
    };
    let redo = move || {
        desk.steps.get().redo.map(|label| {
            view! {
                <button type="button" class="button grow" on:click=move |_| {
                    desk.redo();
                }>{format!("Redo: {label}")}</button>
            }
        })
    };
    view! { <div class="row">{undo}{redo}</div> }
}

/// The others; a tap opens one.
#[component]
fn OtherProjects() -> impl IntoView {
    let store = Store::here();
    let others = move || {
        let open = store.desk.project().id.clone();
        store.desk.filed.get().into_iter().filter(|one| one.project.id != open).collect::<Vec<_>>()
    };
    let row = move |filed: slantlight::project::filed::Filed| {
        let (name, sub) = (title(&filed.project), contents(&filed.project));
        view! {
            <li>
                <button type="button" class="list-row as-row" on:click=move |_| store.desk.lay(filed.project.clone())>
                    <span class="row-text">
                        <span class="row-title">{name}</span>
                        <span class="row-sub">{sub}</span>
                    </span>
                </button>
            </li>
        }
    };
    view! {
        <Show when=move || !others().is_empty()>
            <section>
                <SectionHead title="Others" beside="tap to open" ruled=true />
                <ul class="rows">{move || others().into_iter().map(row).collect_view()}</ul>
            </section>
        </Show>
    }
}

/// What the browser may do to what it keeps.
#[component]
fn Safety() -> impl IntoView {
    let store = Store::here();
    let persistence = RwSignal::new(Persistence::Unknown);
    spawn_local(async move { persistence.set(persistence::granted().await) });
    let offer = expect_context::<install::Offer>();
    let words = move || match persistence.get() {
        Persistence::Granted => "The browser has promised to keep your projects until you delete them.",
        Persistence::Refused | Persistence::Unknown => {
            "The browser has not promised to keep your projects: some browsers delete them after a week without a visit. Send yourself a copy now and then, and put Slantlight on the home screen."
        }
    };
    view! {
        <section class="stack">
            <SectionHead title="Keeping" ruled=true />
            <p>{words}</p>
            {(!install::is_app()).then_some(view! {
                <p>"On some phones the app on the home screen keeps projects of its own: send yourself a project, and open it there."</p>
            })}
            {(store.damaged > 0).then(|| view! {
                <p class="caution">{format!("This version cannot read {}. Nothing there was touched.", words::count(store.damaged, "kept record"))}</p>
            })}
            <Show when=move || offer.is_there()>
                <button type="button" class="button wide" on:click=move |_| offer.take()>"Put it on the home screen"</button>
            </Show>
            <p><a href=Route::About.href()>"Settings and privacy"</a></p>
        </section>
    }
}

/// "No copy elsewhere yet", "Last copy 3 days ago".
fn copy_age(store: Store) -> String {
    match store.copies.last(&store.desk.project().id) {
        None => "No copy elsewhere yet.".to_owned(),
        Some(made) => format!("Last copy: {}.", words::ago(clock::now() - made)),
    }
}

fn rename(store: Store, typed: String) {
    let name = typed.trim();
    if !name.is_empty() {
        store.edit(Edit::SetTitle(name.to_owned()));
    }
}

/// A second project with the same contents; the first stays as it is.
fn duplicate(store: Store) {
    let project = store.desk.latest();
    let name = format!("{}, copy", title(&project));
    store.desk.lay_and_keep(Arc::new(Project { id: id::fresh(), title: name, ..Project::clone(&project) }));
}

/// Takes the open project away; the note can bring it back.
fn delete(store: Store, notes: Notes) {
    let gone = store.desk.latest();
    store.desk.discard(&gone.id);
    let next = store.desk.filed.with_untracked(|filed| filed.first().map(|one| one.project.clone()));
    store.desk.lay(next.unwrap_or_else(|| Arc::new(Project::empty(&id::fresh(), ""))));
    notes.say_with(format!("{} is deleted.", title(&gone)), "Undo", move || {
        store.desk.lay_and_keep(gone.clone())
    });
}

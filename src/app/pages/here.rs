//! A new location where the phone is, with the phone's zone. Call from inside a tap.

use leptos::prelude::*;
use slantlight::place::site::Site;
use slantlight::project::document::Location;
use slantlight::project::edit::Edit;
use slantlight::project::find::free_name;
use slantlight::project::start;
use slantlight::units::Metres;

use crate::app::devices::geolocation;
use crate::app::devices::zone;
use crate::app::parts::Notes;
use crate::app::store::Store;

/// A button that adds a location where the phone is.
#[component]
pub fn UseHere(
    /// Called with the id of the location.
    #[prop(into)]
    on_added: Callback<String>,
) -> impl IntoView {
    let (store, notes) = (Store::here(), Notes::here());
    let asking = RwSignal::new(false);
    let word = move || if asking.get() { "Asking the phone" } else { "Use where I am" };
    let add = move |_| add_here(store, notes, asking, move |id| on_added.run(id));
    view! {
        <button type="button" class="button wide" data-way="here" disabled=move || asking.get() on:click=add>{word}</button>
    }
}

/// Asks the phone where it is and adds a location there; `then` is told its id. `asking` holds meanwhile.
fn add_here(store: Store, notes: Notes, asking: RwSignal<bool>, then: impl FnOnce(String) + Clone + 'static) {
    asking.set(true);
    geolocation::locate(move |found| {
        asking.set(false);
        match found {
            Ok(fix) => {
                if let Some(id) = add(store, fix.site, Some(fix.accuracy)) {
                    then(id);
                }
            }
            Err(why) => notes.say(why.sentence()),
        }
    });
}

/// Adds a location in the phone's zone; its id, unless another tab writes.
pub fn add(store: Store, site: Site, accuracy: Option<Metres>) -> Option<String> {
    let id = store.fresh_id();
    let project = store.desk.latest();
    let name = free_name("Place", project.locations.iter().map(|place| place.name.as_str()));
    let zone = zone::of_the_phone().unwrap_or_else(|| "UTC".to_owned());
    let location = Location { accuracy, ..start::location(&id, &name, site, &zone) };
    store.edit(Edit::PutLocation(Box::new(location))).then_some(id)
}

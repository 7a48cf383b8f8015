//! A new location where the phone is, with the phone's zone. Call from inside a tap.

use leptos::prelude::*;
use slantlight::place::site::Site;
use slantlight::place::skyline::Skyline;
use slantlight::project::document::Location;
use slantlight::project::edit::Edit;
use slantlight::project::find::free_name;
use slantlight::units::Metres;

use crate::app::devices::geolocation;
use crate::app::devices::zone;
use crate::app::parts::Notes;
use crate::app::store::Store;

/// Asks the phone where it is and adds a location there; `then` is told its id. `asking` holds meanwhile.
pub fn add_here(
    store: Store,
    notes: Notes,
    asking: RwSignal<bool>,
    then: impl FnOnce(String) + Clone + 'static,
) {
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
    let location = Location {
        id: id.clone(),
        name: free_name("Place", project.locations.iter().map(|place| place.name.as_str())),
        site,
        accuracy,
        zone: zone::of_the_phone().unwrap_or_else(|| "UTC".to_owned()),
        rooms: Vec::new(),
        marks: Vec::new(),
        skyline: Skyline::default(),
        backgrounds: Vec::new(),
        notes: String::new(),
    };
    store.edit(Edit::PutLocation(Box::new(location))).then_some(id)
}

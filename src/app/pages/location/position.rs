//! Name, coordinates and zone of the location; and at the end of the page its notes and its end.

use leptos::prelude::*;
use slantlight::place::site::Site;
use slantlight::project::edit::Edit;
use slantlight::project::route::Route;
use slantlight::units::{Latitude, Longitude, Metres};
use slantlight::words;

use super::shown::Shown;
use crate::app::devices::{geolocation, zone};
use crate::app::pages::paste::PastePosition;
use crate::app::parts::{Area, Hands, LengthField, Notes, NumberField, SectionHead, TextField};
use crate::app::router;

/// Heights of the ground that can be typed, metres: from the shore of the lowest lake to the highest summit.
const ELEVATIONS: (f64, f64) = (-450.0, 9000.0);

/// Name, coordinates, zone.
#[component]
pub fn Position(shown: Shown) -> impl IntoView {
    let name = Signal::derive(move || shown.with(|place| place.name.clone()).unwrap_or_default());
    let put = move |(site, accuracy): (Site, Option<Metres>)| {
        shown.change(|place| (place.site, place.accuracy) = (site, accuracy));
    };
    view! {
        <section>
            <SectionHead title="Name, position, zone" />
            <div class="fields">
                <TextField label="Name" value=name on_change=move |text| shown.change(|place| place.name = text) />
                <ZoneField shown=shown />
            </div>
            <ZoneWarning shown=shown />
            <details class="fold">
                <summary>"Coordinates"</summary>
                <div class="stack">
                    <Coordinates shown=shown />
                    <MoveHere on_found=put />
                    <PastePosition on_found=put />
                </div>
            </details>
        </section>
    }
}

/// Typed coordinates.
#[component]
fn Coordinates(shown: Shown) -> impl IntoView {
    let units = Signal::derive(move || shown.units());
    let read = move |read: fn(&Site) -> f64| {
        Signal::derive(move || shown.with(|place| read(&place.site)).unwrap_or_default())
    };
    let latitude = move |degrees: f64| {
        if let Ok(latitude) = Latitude::from_degrees(degrees) {
            shown.change(|place| (place.site.latitude, place.accuracy) = (latitude, None));
        }
    };
    let longitude = move |degrees: f64| {
        if let Ok(longitude) = Longitude::from_degrees(degrees) {
            shown.change(|place| (place.site.longitude, place.accuracy) = (longitude, None));
        }
    };
    let elevation = Signal::derive(move || shown.with(|place| place.site.elevation).unwrap_or_default());
    view! {
        <div class="fields">
            <NumberField label="Latitude" unit="°" decimals=6 limits=(-90.0, 90.0) hands=Hands::NORTH_SOUTH
                value=read(|site| site.latitude.degrees()) on_change=latitude />
            <NumberField label="Longitude" unit="°" decimals=6 limits=(-180.0, 180.0) hands=Hands::EAST_WEST
                value=read(|site| site.longitude.degrees()) on_change=longitude />
            <LengthField label="Above the sea" value=elevation units=units limits=ELEVATIONS
                on_change=move |to| shown.change(|place| place.site.elevation = to) />
        </div>
    }
}

/// Moves the location to where the phone is.
#[component]
fn MoveHere(#[prop(into)] on_found: Callback<(Site, Option<Metres>)>) -> impl IntoView {
    let notes = Notes::here();
    let asking = RwSignal::new(false);
    let word = move || if asking.get() { "Asking the phone" } else { "Use where I am" };
    let ask = move |_| {
        asking.set(true);
        geolocation::locate(move |found| {
            asking.set(false);
            match found {
                Ok(fix) => on_found.run((fix.site, Some(fix.accuracy))),
                Err(why) => notes.say(why.sentence()),
            }
        });
    };
    view! { <button type="button" class="button wide" disabled=move || asking.get() on:click=ask>{word}</button> }
}

/// The zone, with those that the browser knows to choose from.
#[component]
fn ZoneField(shown: Shown) -> impl IntoView {
    let error = RwSignal::new(String::new());
    let take = move |event| {
        let typed = event_target_value(&event).trim().to_owned();
        if shown.store.zones.knows(&typed) {
            error.set(String::new());
            shown.change(|place| place.zone = typed);
        } else {
            error.set(format!(
                "“{typed}” is no zone this browser knows. Choose one of the list, like Europe/Lisbon."
            ));
        }
    };
    let options = zone::known().into_iter().map(|name| view! { <option value=name></option> }).collect_view();
    view! {
        <label class="field">
            <span>"Time zone"</span>
            <input type="text" list="zones" autocomplete="off" autocapitalize="off" spellcheck="false"
                prop:value=move || shown.with(|place| place.zone.clone()) on:change=take />
            <datalist id="zones">{options}</datalist>
            <Show when=move || error.with(|sentence| !sentence.is_empty())>
                <p class="field-error" role="alert">{error}</p>
            </Show>
        </label>
    }
}

/// What seems wrong with the zone.
#[component]
fn ZoneWarning(shown: Shown) -> impl IntoView {
    let sentence = move || {
        let (name, site) = shown.with(|place| (place.zone.clone(), place.site))?;
        if !shown.store.zones.knows(&name) {
            return Some(format!(
                "This browser does not know the zone {name}: times are shown in UTC. Choose another."
            ));
        }
        let zone = shown.store.zones.named(&name);
        let hours = zone.implausible(site.longitude, shown.store.moment.today())?;
        Some(format!(
            "The clock of {name} is {} off the sun's own time at this longitude. Check the zone, and whether the longitude is east or west.",
            words::duration(slantlight::units::Duration::from_minutes((hours.abs() * 60.0) as i64))
        ))
    };
    view! { {move || sentence().map(|sentence| view! { <p class="field-error" role="status">{sentence}</p> })} }
}

/// Whatever the crew must know, and the way out.
#[component]
pub fn NotesAndEnd(shown: Shown) -> impl IntoView {
    let notes = Signal::derive(move || shown.with(|place| place.notes.clone()).unwrap_or_default());
    let remove = move |_| {
        if let Some((id, name)) = shown.with(|place| (place.id.clone(), place.name.clone())) {
            router::go(&Route::Places);
            shown.store.edit_with_undo(Edit::RemoveLocation(id), format!("{name} removed"));
        }
    };
    view! {
        <section>
            <SectionHead title="Notes" />
            <Area label="What the crew must know: access, power, dangers" value=notes on_input=move |text| shown.drag(|place| place.notes = text) />
            <p class="spaced"><button type="button" class="button wide" on:click=remove>"Remove this place"</button></p>
        </section>
    }
}

//! Ways to add a location: where the phone is, pasted, typed.

use leptos::prelude::*;
use slantlight::place::site::Site;
use slantlight::project::route::Route;
use slantlight::units::{Latitude, Longitude};

use crate::app::pages::here::{self, UseHere};
use crate::app::pages::paste::PastePosition;
use crate::app::parts::{Hands, NumberField, SectionHead};
use crate::app::pasting::Forwarded;
use crate::app::router;
use crate::app::store::Store;

/// All three.
#[component]
pub fn Add() -> impl IntoView {
    let store = Store::here();
    let forwarded = expect_context::<Forwarded>().place;
    let go = move |id: String| router::go(&Route::Location(id));
    let pasted = move |(site, accuracy)| {
        if let Some(id) = here::add(store, site, accuracy) {
            go(id);
        }
    };
    view! {
        <section>
            <SectionHead title="Add a place" />
            <UseHere on_added=go />
            <div class="spaced"><PastePosition on_found=pasted forwarded=forwarded /></div>
            <details class="fold">
                <summary>"Type latitude and longitude"</summary>
                <Typed />
            </details>
        </section>
    }
}

#[component]
fn Typed() -> impl IntoView {
    let store = Store::here();
    let (latitude, longitude) = (RwSignal::new(0.0), RwSignal::new(0.0));
    let add = move |_| {
        // The fields let nothing else through.
        let site = Latitude::from_degrees(latitude.get_untracked())
            .ok()
            .zip(Longitude::from_degrees(longitude.get_untracked()).ok())
            .map(|(latitude, longitude)| Site { latitude, longitude, ..Site::default() });
        if let Some(id) = site.and_then(|site| here::add(store, site, None)) {
            router::go(&Route::Location(id));
        }
    };
    let untouched = move || latitude.get() == 0.0 && longitude.get() == 0.0;
    view! {
        <div class="fields">
            <NumberField label="Latitude" unit="°" decimals=6 limits=(-90.0, 90.0) hands=Hands::NORTH_SOUTH
                value=latitude on_change=move |degrees| latitude.set(degrees) />
            <NumberField label="Longitude" unit="°" decimals=6 limits=(-180.0, 180.0) hands=Hands::EAST_WEST
                value=longitude on_change=move |degrees| longitude.set(degrees) />
            <button type="button" class="button wide" disabled=untouched on:click=add>"Add this place"</button>
        </div>
    }
}

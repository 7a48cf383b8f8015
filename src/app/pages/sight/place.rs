//! Where one stands: the phone's position, else the location that all rooms show.

use leptos::prelude::*;
use slantlight::place::site::Site;
use slantlight::project::route::Route;
use slantlight::units::Metres;
use slantlight::words;

use crate::app::devices::geolocation;
use crate::app::store::Store;

/// Where one stands; cheap to copy.
#[derive(Clone, Copy)]
pub struct Here {
    /// Position and how exact it is; `None` while nothing is known.
    pub site: RwSignal<Option<(Site, Option<Metres>)>>,
    /// Why the phone does not say.
    trouble: RwSignal<Option<&'static str>>,
    store: Store,
}

impl Here {
    /// Asks the phone; until it answers, and if it does not, the location that all rooms show stands in.
    pub fn found(store: Store) -> Self {
        let known = untrack(|| store.current_location()).map(|location| (location.site, location.accuracy));
        let here = Self { site: RwSignal::new(known), trouble: RwSignal::new(None), store };
        geolocation::locate(move |found| match found {
            Ok(fix) => here.site.set(Some((fix.site, Some(fix.accuracy)))),
            Err(why) => here.trouble.set(Some(why.sentence())),
        });
        here
    }

    /// "40.6405 N 8.6538 W · ± 8 m"; tracked.
    pub fn words(self) -> String {
        let units = self.store.settings.get().units;
        match self.site.get() {
            Some((site, Some(accuracy))) => {
                format!("{} · {}", words::position(site), words::accuracy(accuracy, units))
            }
            Some((site, None)) => words::position(site),
            None if self.trouble.get().is_some() => "no position yet".to_owned(),
            None => "asking the phone where it is".to_owned(),
        }
    }
}

/// What to do while nothing is known.
#[component]
pub fn NoPlace(here: Here) -> impl IntoView {
    let sentence = move || here.trouble.get().filter(|_| here.site.with(Option::is_none));
    view! {
        <Show when=move || sentence().is_some()>
            <div class="empty">
                <p>{sentence}</p>
                <a class="button" href=Route::Places.href()>"Paste a place"</a>
            </div>
        </Show>
    }
}

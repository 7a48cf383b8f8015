//! Sun through this window: stand where the face will be, sight two corners, and read when the sun comes.
//!
//! Three taps from the start: this page, one corner, the opposite corner. The answer stands there with its ±; the
//! wall's bearing or a third corner makes it exact, a fourth tap saves it. Typed numbers do all of it too.
//! Nobody is asked to sight the sun: near it the corners cannot be taken, and the page says why.

mod answer;
mod corners;
mod place;

use leptos::prelude::*;
use slantlight::place::opening::Corner;
use slantlight::plan::search::through_window::sun_in_sight;
use slantlight::project::spot::Spot;
use slantlight::sky::sun::Sun;
use slantlight::units::{Bearing, Vector};

use crate::app::devices::orientation;
use crate::app::parts::{Caution, Frame};
use crate::app::router;
use crate::app::store::Store;
use place::Here;
use slantlight::project::route::Route;

/// Goes to the page; asks for the sensors while the tap still counts.
pub fn go() {
    orientation::ask(|_| ());
    router::go(&Route::Sight);
}

/// What was sighted so far; cheap to copy into every closure.
#[derive(Clone, Copy)]
pub struct Sighting {
    store: Store,
    here: Here,
    corners: RwSignal<Vec<Corner>>,
    wall: RwSignal<Option<Bearing>>,
}

impl Sighting {
    /// The spot, once it is known where one stands and two corners are taken. Tracked.
    fn spot(self) -> Option<Spot> {
        let (site, accuracy) = self.here.site.get()?;
        let corners = self.corners.get();
        (corners.len() >= 2).then(|| Spot { site, accuracy, corners, wall: self.wall.get() })
    }

    /// Whether the sun stands near a direction now, so that nobody may look there. Tracked.
    fn is_near_the_sun(self, corner: Corner) -> bool {
        let Some((site, _)) = self.here.site.get() else { return false };
        let light = Sun::new(site).apparent(self.store.moment.clock.get());
        sun_in_sight(light, Vector::towards(corner.bearing, corner.height))
    }

    fn take(self, corner: Corner) {
        self.corners.update(|corners| corners.push(corner));
    }

    fn begin_again(self) {
        self.corners.set(Vec::new());
        self.wall.set(None);
    }
}

/// The page.
#[component]
pub fn Sight() -> impl IntoView {
    let store = Store::here();
    let sighting = Sighting {
        store,
        here: Here::found(store),
        corners: RwSignal::new(Vec::new()),
        wall: RwSignal::new(None),
    };
    let has_two = move || sighting.corners.with(|corners| corners.len() >= 2);
    let subtitle = Signal::derive(move || sighting.here.words());
    view! {
        <Frame title="Sun through this window" subtitle=subtitle back=("Start".to_owned(), Route::Start.href())>
            <place::NoPlace here=sighting.here />
            <Show when=move || !has_two()>
                <corners::Take sighting=sighting />
            </Show>
            <Show when=has_two>
                <answer::Answer sighting=sighting />
            </Show>
            <Caution>
                "Never sight the sun itself, and never look at it along the phone or through a lens: eye damage is painless and can be permanent. Use a shadow instead."
            </Caution>
        </Frame>
    }
}

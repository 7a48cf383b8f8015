//! The horizon of a location as a picture: what blocks the sky, with the sun's path on the date that all rooms show.

use leptos::prelude::*;
use slantlight::draw::outline;
use slantlight::draw::strip::Strip;
use slantlight::plan::today;
use slantlight::project::find::Standing;
use slantlight::project::stage;
use slantlight::sky::sun::Sun;

use super::shown::Shown;
use crate::app::parts::Picture;

/// The strip; nothing for a level horizon.
#[component]
pub fn Horizon(shown: Shown) -> impl IntoView {
    let strip = move || {
        let seen = shown.with(|location| {
            let standing = Standing { location, room: None, mark: None };
            (location.site, shown.store.zones.named(&location.zone), stage::around(&standing))
        });
        let (site, zone, around) = seen?;
        let date = zone.date(shown.store.moment.to_the_minute());
        let line = around.on(date);
        let (sun, day) = (Sun::new(site), zone.day(date).filter(|_| !line.is_level())?);
        let path = today::path(&sun, day).into_iter().map(|(_, direction)| direction.into());
        let strip = Strip { path: path.collect(), skyline: outline::skyline(line), ..Strip::default() };
        Some(
            view! { <div class="full-bleed"><Picture drawing=Signal::stored(strip.draw()) /></div> }
                .into_any(),
        )
    };
    view! { {strip} }
}

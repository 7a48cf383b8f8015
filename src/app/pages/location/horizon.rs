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
            (location.site, location.zone.clone(), stage::skyline(&standing))
        });
        let (site, zone, line) = seen.filter(|(_, _, line)| !line.is_level())?;
        let (zone, at) = (shown.store.zones.named(&zone), shown.store.moment.to_the_minute());
        let (sun, day) = (Sun::new(site), zone.day(zone.date(at))?);
        let path = today::path(&sun, day).into_iter().map(|(_, direction)| direction.into());
        let strip = Strip { path: path.collect(), skyline: outline::skyline(&line), ..Strip::default() };
        Some(
            view! { <div class="full-bleed"><Picture drawing=Signal::stored(strip.draw()) /></div> }
                .into_any(),
        )
    };
    view! { {strip} }
}

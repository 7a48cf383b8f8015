//! The search of the page's set-up, in slices: a wish on levels takes a while for a year.

use std::sync::Arc;

use leptos::prelude::*;
use slantlight::plan::search::{Found, Search};
use slantlight::plan::stage::Stage;
use slantlight::sky::sun::Sun;

use super::shown::Shown;
use crate::app::devices::slices::Slices;

/// What the search has found so far.
#[derive(Clone, Copy)]
pub struct Looking {
    /// `None` without a stage to search on, and while there is nothing to show yet.
    pub found: RwSignal<Option<Looked>>,
    /// Percent of the year that has been looked through; `None` when all is.
    pub percent: RwSignal<Option<u32>>,
}

/// What was found, and on what.
#[derive(Clone)]
pub struct Looked {
    /// The sun of the place.
    pub sun: Arc<Sun>,
    /// The set-up, resolved.
    pub stage: Arc<Stage>,
    /// The slots.
    pub found: Found,
}

impl Looking {
    /// A search that begins anew whenever the set-up, its place, the project's dates or the day change.
    pub fn of(shown: Shown) -> Self {
        let looking = Self { found: RwSignal::new(None), percent: RwSignal::new(None) };
        let slices = Slices::idle();
        let dates = Memo::new(move |_| shown.store.desk.with(|project| project.dates.clone()));
        let today = Memo::new(move |_| {
            let today = shown.store.moment.today();
            shown.stage.with(|stage| stage.as_ref().ok().map(|stage| stage.zone.date(today)))
        });
        Effect::new(move |_| match (shown.stage.get(), today.get()) {
            (Ok(stage), Some(today)) => {
                let sun = Arc::new(Sun::new(stage.site));
                let search = dates.with(|dates| Search::new(&sun, &stage, dates, today));
                looking.look(slices, search, sun, stage);
            }
            _ => {
                slices.stop();
                looking.found.set(None);
                looking.percent.set(None);
            }
        });
        looking
    }

    /// Shows what is found on the nearest dates as soon as that is known, and then all.
    fn look(self, slices: Slices, search: Search, sun: Arc<Sun>, stage: Arc<Stage>) {
        let shows = StoredValue::new(false);
        let step = |(search, sun, stage): &mut (Search, Arc<Sun>, Arc<Stage>)| search.step(sun, stage);
        slices.run((search, sun, stage), step, move |(search, sun, stage), is_done| {
            self.percent.set((!is_done).then(|| (search.share() * 100.0) as u32));
            if is_done || (search.knows_soon() && !shows.get_value()) {
                let found = search.found(sun, stage);
                self.found.set(Some(Looked { sun: sun.clone(), stage: stage.clone(), found }));
                shows.set_value(true);
            } else if !shows.get_value() && self.found.with_untracked(Option::is_some) {
                // What another wish has found is no answer to this one.
                self.found.set(None);
            }
        });
    }
}

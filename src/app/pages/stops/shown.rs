//! The subject of the page and its sheet, as memos: made anew only when the document, the minute or the sky change.

use std::sync::Arc;

use leptos::prelude::*;
use slantlight::light::daylight::Sky;
use slantlight::place::zone::Zone;
use slantlight::plan::levels::day::{self, Sample};
use slantlight::plan::levels::sheet::{Asked, Sheet, Style};
use slantlight::plan::levels::subject::sky_of;
use slantlight::plan::levels::{Subject, say};
use slantlight::project::levels;
use slantlight::sky::sun::Sun;
use slantlight::words;

use crate::app::pages::set_up::shown::Shown;
use crate::app::store::Store;

/// The lit subject; cheap to copy into every closure.
#[derive(Clone, Copy)]
pub struct Lit {
    /// The set-up.
    pub shown: Shown,
    /// The sky of the moment.
    pub sky: RwSignal<Sky>,
    /// The subject; `None` until the set-up has a place.
    pub subject: Memo<Option<Arc<Subject>>>,
    /// The levels of the date shown.
    pub day: Memo<Arc<Vec<Sample>>>,
    /// All that is printed.
    pub sheet: Memo<Option<Arc<Sheet>>>,
}

impl Lit {
    /// Of a set-up; all rooms stand by it.
    pub fn of(id: String) -> Self {
        let (store, shown) = (Store::here(), Shown::of(id.clone()));
        // Untracked: the page must not be made anew with each edit.
        let wished = untrack(|| shown.with(|set_up| sky_of(set_up.wish.sky))).unwrap_or_default();
        let sky = RwSignal::new(wished);
        let subject = Memo::new(move |_| {
            store.desk.with(|project| {
                let (_, set_up) = project.set_up(&id)?;
                let location = project.location(&set_up.at.as_ref()?.location)?;
                let zone = Zone::clone(&store.zones.named(&location.zone));
                levels::of_set_up(project, &id, zone).ok().map(Arc::new)
            })
        });
        let date = Memo::new(move |_| store.current_zone().date(store.moment.to_the_minute()));
        let day = Memo::new(move |_| {
            let curve = subject
                .get()
                .map(|subject| day::curve(&subject, &Sun::new(subject.site), sky.get(), date.get()));
            Arc::new(curve.unwrap_or_default())
        });
        let sheet = Memo::new(move |_| {
            let (subject, settings) = (subject.get()?, store.settings.get());
            let (sun, style) =
                (Sun::new(subject.site), Style { clock: settings.clock, units: settings.units });
            let (at, day) = (store.moment.to_the_minute(), day.get());
            let asked = Asked { subject: &subject, sun: &sun, at, sky: sky.get(), day: &day, style };
            Some(Arc::new(asked.sheet()))
        });
        Self { shown, sky, subject, day, sheet }
    }

    /// "scene 4, set-up A · Thu 11 Mar 17:40 · clear".
    pub fn subtitle(self) -> String {
        let store = self.shown.store;
        let scene = self.shown.with_scene(|scene| scene.number.clone()).unwrap_or_default();
        let name = self.shown.with(|set_up| set_up.name.clone()).unwrap_or_default();
        let local = store.current_zone().local(store.moment.to_the_minute());
        let time = words::clock(local.time(), store.settings.get().clock);
        format!(
            "scene {scene}, set-up {name} · {} {time} · {}",
            words::date(local.date()),
            self.sky.get().word()
        )
    }

    /// Whether a meter has corrected the levels; in words.
    pub fn corrected(self) -> Option<String> {
        let subject = self.subject.get()?;
        let at = self.shown.store.moment.to_the_minute();
        subject.correction(&Sun::new(subject.site), at).map(say::correction)
    }
}

//! The year of the shown mark: when the sun reaches it by each opening, as a sheet, and in words for two days a month.

use leptos::prelude::*;
use slantlight::draw::Drawing;
use slantlight::draw::year::{YearDay, YearSheet};
use slantlight::plan::search::on_mark_year as on_mark;
use slantlight::sky::sun::Sun;

use super::shown::Shown;
use crate::app::parts::{Chips, Fold, Lines, Picture};

/// The fold.
#[component]
pub fn Year(shown: Shown) -> impl IntoView {
    // Nought is any opening.
    let which = RwSignal::new(0_usize);
    let names = Signal::derive(move || {
        let Some(Ok(stage)) = shown.stage.get() else { return Vec::new() };
        let names = stage.openings.iter().flatten().map(|opening| opening.name.clone());
        core::iter::once("any opening".to_owned()).chain(names).collect::<Vec<_>>()
    });
    view! {
        <Fold label="Sun on the mark over the year">
            <div class="stack">
                <Show when=move || { names.with(Vec::len) > 2 }>
                    <Chips label="Opening" names=names chosen=Signal::derive(move || Some(which.get()))
                        on_choose=move |at: usize| which.set(at) />
                </Show>
                <Picture drawing=Signal::derive(move || sheet(shown, which.get())) />
                <Lines lines=Signal::derive(move || told(shown)) />
            </div>
        </Fold>
    }
}

fn sheet(shown: Shown, which: usize) -> Drawing {
    let Some(Ok(stage)) = shown.stage.get() else { return Drawing::sized(1.0, 1.0) };
    let from = stage.zone.date(shown.store.moment.today());
    let rows = on_mark::rows(&Sun::new(stage.site), &stage, which.checked_sub(1), from);
    let days: Vec<YearDay> = rows.iter().map(YearDay::from).collect();
    let chosen = stage.zone.clock(shown.store.moment.to_the_minute());
    let sheet = YearSheet { first: from, days: &days };
    Drawing { text: on_mark::summary(&rows), ..sheet.draw(Some(chosen), shown.store.settings.get().clock) }
}

fn told(shown: Shown) -> Vec<String> {
    let Some(Ok(stage)) = shown.stage.get() else { return Vec::new() };
    let from = stage.zone.date(shown.store.moment.today());
    on_mark::told(&Sun::new(stage.site), &stage, from, shown.store.settings.get().clock)
}

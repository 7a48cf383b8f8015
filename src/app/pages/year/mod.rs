//! The year of a set-up: when its wish is met, the same light again, and a span that is fixed.
//!
//! | file | shows |
//! |---|---|
//! | `sheet` | date × local clock, months and a week to tap |
//! | `again` | other times with the sun in the same place, for pick-ups |
//! | `only_here` | a fixed span: where the lens may look, or what would have to change |

mod again;
mod only_here;
mod sheet;

use std::sync::Arc;

use chrono::NaiveDate;
use leptos::prelude::*;
use slantlight::place::zone::Zone;
use slantlight::project::document::Scene;
use slantlight::project::route::Route;
use slantlight::units::Duration;
use slantlight::words;

use super::set_up::shown::Shown;
use super::set_up::slots;
use crate::app::parts::{EmptyState, Frame, SectionHead};

/// The page of a set-up's year.
#[component]
pub fn YearPage(id: String) -> impl IntoView {
    let back = (
        untrack(|| Shown::of(id.clone()).with_scene(Scene::heading)).unwrap_or_default(),
        Route::SetUp(id.clone()).href(),
    );
    let shown = Shown::of(id);
    let chosen = Chosen { shown };
    view! {
        <Frame
            title=Signal::derive(move || shown.title())
            subtitle="when the wish is met, local clock time"
            back=back
            more=move || view! { <Show when=move || shown.is_there()><Beneath shown=shown chosen=chosen /></Show> }
        >
            <Show
                when=move || shown.stage.with(Result::is_ok)
                fallback=|| view! { <EmptyState says="The year needs a place: choose where this set-up is, on its own page.">""</EmptyState> }
            >
                <sheet::Sheet shown=shown chosen=chosen />
            </Show>
        </Frame>
    }
}

/// The page of the question "only here from–to", which a location leads to.
pub fn only_here_page(id: String) -> AnyView {
    let shown = Shown::of(id.clone());
    let place =
        untrack(|| shown.with_standing(|here| (here.location.name.clone(), here.location.id.clone())));
    let back =
        place.map_or((String::from("Set-up"), Route::SetUp(id)), |(name, id)| (name, Route::Location(id)));
    view! {
        <Frame title=Signal::derive(move || shown.title()) subtitle=Signal::derive(move || shown.subtitle()) back=(back.0, back.1.href())>
            <only_here::OnlyHere shown=shown chosen=Chosen { shown } />
        </Frame>
    }
    .into_any()
}

/// The date and clock time that is looked at: those of the instant that all rooms show.
#[derive(Clone, Copy)]
pub struct Chosen {
    shown: Shown,
}

impl Chosen {
    /// The place's clock.
    pub fn zone(self) -> Arc<Zone> {
        let zone =
            self.shown.stage.with(|stage| stage.as_ref().ok().map(|stage| Arc::new(stage.zone.clone())));
        zone.unwrap_or_else(|| self.shown.store.zones.of_the_phone())
    }

    /// Date, and the clock since its midnight. Tracked.
    pub fn get(self) -> (NaiveDate, Duration) {
        self.zone().clock(self.shown.store.moment.to_the_minute())
    }

    /// Stands all rooms at a date and time of the place's clock.
    pub fn set(self, date: NaiveDate, clock: Duration) {
        let zone = untrack(|| self.zone());
        self.shown.store.moment.stand_at(zone.at_clock(date, clock));
    }
}

/// The chosen date's slots, and the two questions.
#[component]
fn Beneath(shown: Shown, chosen: Chosen) -> impl IntoView {
    let date = Memo::new(move |_| chosen.get().0);
    let question = RwSignal::new(None::<Question>);
    let pressed = move |one: Question| if question.get() == Some(one) { "true" } else { "false" };
    let ask = move |one: Question| question.update(|now| *now = (*now != Some(one)).then_some(one));
    view! {
        <section>
            <SectionHead title=Signal::derive(move || words::date(date.get())) ruled=true />
            {move || slots::on_date(shown, date.get()).map(|answer| {
                if answer.is_empty() {
                    view! { <p>"The wish is not met on this date."</p> }.into_any()
                } else {
                    slots::rows(shown, &answer).into_any()
                }
            })}
        </section>
        <section class="pair">
            <button type="button" class="button" aria-pressed=move || pressed(Question::Again) on:click=move |_| ask(Question::Again)>
                "Same light again"
            </button>
            <button type="button" class="button" aria-pressed=move || pressed(Question::OnlyHere) on:click=move |_| ask(Question::OnlyHere)>
                "Only here from–to"
            </button>
        </section>
        {move || match question.get() {
            None => ().into_any(),
            Some(Question::Again) => view! { <again::Again shown=shown chosen=chosen /> }.into_any(),
            Some(Question::OnlyHere) => view! { <only_here::OnlyHere shown=shown chosen=chosen /> }.into_any(),
        }}
    }
}

/// What can be asked about a chosen date.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Question {
    Again,
    OnlyHere,
}

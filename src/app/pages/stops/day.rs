//! The time, as a slider over the hours with light, and the curves of the day above it.

use leptos::prelude::*;
use slantlight::draw::levels::{self, Moment};
use slantlight::draw::scale::Scale;
use slantlight::units::Duration;
use slantlight::words;

use super::shown::Lit;
use crate::app::parts::{Picture, Slider};

/// The whole day on the clock, minutes.
const MINUTES: Scale = Scale::line(0.0, 1439.0, 1.0);

/// Curves and time.
#[component]
pub fn Day(lit: Lit) -> impl IntoView {
    let store = lit.shown.store;
    let style = move || store.settings.get().clock;
    let clock = Memo::new(move |_| store.current_zone().clock(store.moment.to_the_minute()));
    let drawing = Signal::derive(move || {
        let day: Vec<Moment> = lit.day.get().iter().map(Moment::from).collect();
        levels::draw(&day, clock.get().1, style())
    });
    let stand = move |minutes: f64| {
        let zone = untrack(move || store.current_zone());
        let (date, _) = clock.get_untracked();
        store.moment.stand_at(zone.at_clock(date, Duration::from_minutes(minutes as i64)));
    };
    view! {
        <section class="levels-day">
            <div class="section-head"><h2>"Through the day"</h2><span>"bright side, shadow side, and their ratio"</span></div>
            <Picture drawing=drawing />
            <Slider
                label="Time"
                scale=Signal::stored(MINUTES)
                value=Signal::derive(move || clock.get().1.minutes().floor())
                say=move |minutes: f64| words::of_day(Duration::from_minutes(minutes as i64), style())
                on_move=stand
                on_change=stand
            />
        </section>
    }
}

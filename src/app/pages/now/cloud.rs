//! Cloud came over, or we are late: the rest of the day is planned anew, shown, sent, and taken back when the sun is.
//!
//! Three taps: the button, "Plan it so", "Send it". The project stays as it was; the change stands on this page, after it
//! was closed as well, until the sun is back.

use chrono::NaiveTime;
use leptos::prelude::*;
use slantlight::place::zone::Zone;
use slantlight::plan::wish::Sky;
use slantlight::project::replan::Ask;
use slantlight::project::rest_words::Row;
use slantlight::project::told::Told;
use slantlight::words;

use super::shown::Shown;
use crate::app::parts::{Notes, SectionHead, Segmented, Sheet};
use crate::app::sending;

/// The skies to choose from.
const SKIES: [Sky; 3] = [Sky::Overcast, Sky::Hazy, Sky::Any];

/// What is asked, as the sheet has it; cheap to copy.
#[derive(Clone, Copy)]
struct Asked {
    shown: Shown,
    open: RwSignal<bool>,
    sky: RwSignal<Sky>,
    /// The wrap as it was typed; `None` for the end of the evening's blue hour.
    wrap: RwSignal<Option<NaiveTime>>,
    meal_had: RwSignal<bool>,
}

/// The two buttons, the sheet, and what was planned anew.
#[component]
pub fn Cloud(shown: Shown) -> impl IntoView {
    let asked = Asked {
        shown,
        open: RwSignal::new(false),
        sky: RwSignal::new(Sky::Overcast),
        wrap: RwSignal::new(None),
        meal_had: RwSignal::new(false),
    };
    let open = move |sky: Sky| {
        asked.sky.set(sky);
        asked.open.set(true);
    };
    let has_any = Memo::new(move |_| shown.with_day(|day| !day.at_hand.is_empty()).unwrap_or(false));
    view! {
        <Show when=move || has_any.get()>
            <div class="row">
                <button type="button" class="button grow" on:click=move |_| open(Sky::Overcast)>"Cloud came over"</button>
                <button type="button" class="button grow" on:click=move |_| open(Sky::Any)>"We are late"</button>
            </div>
        </Show>
        <Changed shown=shown />
        <Sheet open=asked.open title="The rest of the day"><Inside asked=asked /></Sheet>
    }
}

/// What to ask, and the answer.
#[component]
fn Inside(asked: Asked) -> impl IntoView {
    let shown = asked.shown;
    let answer = Memo::new(move |_| answer(asked));
    let list = move || answer.get().map(|told| rows(told.rows));
    let plan_it = move |_| {
        shown.store.replan(answer.get_untracked());
        asked.open.set(false);
    };
    let wrap = move || {
        asked.wrap.get().or_else(|| usual_wrap(shown)).map(|time| words::clock(time, words::Clock::default()))
    };
    view! {
        <div class="stack">
            <Segmented
                label="The sky now"
                names=vec!["no sun".to_owned(), "thin cloud".to_owned(), "as it was".to_owned()]
                chosen=Signal::derive(move || SKIES.iter().position(|sky| *sky == asked.sky.get()).unwrap_or(0))
                on_choose=move |place: usize| asked.sky.set(SKIES[place])
            />
            <label class="field">
                <span>"Wrap"</span>
                <input type="time" prop:value=wrap on:change=move |event| asked.wrap.set(event_target_value(&event).parse().ok()) />
            </label>
            <label class="check">
                <input type="checkbox" prop:checked=move || asked.meal_had.get() on:change=move |event| asked.meal_had.set(event_target_checked(&event)) />
                "The meal is over"
            </label>
            {list}
            <button type="button" class="button primary wide" on:click=plan_it>"Plan it so"</button>
            <p class="soft">"Moves take the minutes of Days, or what the distance suggests. The project stays as it is."</p>
        </div>
    }
}

/// What was planned anew, with the way back.
#[component]
fn Changed(shown: Shown) -> impl IntoView {
    let (store, notes) = (shown.store, Notes::here());
    let told = move || {
        let (project, date) =
            (store.desk.project().id.clone(), shown.zone().date(store.moment.to_the_minute()));
        store.replanned.get().filter(|told| told.is_about(&project, date))
    };
    let told = Memo::new(move |_| told());
    let send = move |_| {
        if let Some(told) = told.get_untracked() {
            sending::words(notes, "The rest of the day", told.text());
        }
    };
    move || {
        told.get().map(|told| view! {
            <section class="card stack">
                <SectionHead title="New plan" beside=Signal::stored(told.since) />
                {rows(told.rows)}
                <div class="row">
                    <button type="button" class="button primary grow" on:click=send>"Send it"</button>
                    <button type="button" class="button grow" on:click=move |_| store.replan(None)>"The sun is back"</button>
                </div>
            </section>
        })
    }
}

/// The rows of an answer, or that there is nothing.
fn rows(rows: Vec<Row>) -> AnyView {
    if rows.is_empty() {
        return view! { <p>"Nothing is left that this light allows before wrap. Try a later wrap, or another sky."</p> }.into_any();
    }
    let row = |row: Row| {
        view! {
            <li class="list-row">
                <span class="row-text">
                    <span class="row-title">{format!("{} {}", row.time, row.what)}</span>
                    <span class="row-sub">{row.fate}</span>
                </span>
            </li>
        }
    };
    view! { <ul class="rows">{rows.into_iter().map(row).collect_view()}</ul> }.into_any()
}

/// The rest of the day from the minute shown; tracked.
fn answer(asked: Asked) -> Option<Told> {
    let (store, clock) = (asked.shown.store, asked.shown.clock());
    let (zone, now) = (asked.shown.zone(), store.moment.to_the_minute());
    let at = zone.local(now).date().and_time(asked.wrap.get().or_else(|| usual_wrap(asked.shown))?);
    let wrap = zone.instant(at).first();
    let location = store.current_location().map(|place| place.id.clone());
    let ask = Ask { now, wrap, sky: asked.sky.get(), meal_had: asked.meal_had.get(), at: location };
    store.desk.with(|project| {
        let rest = project.rest_of_day(&ask, &|name| Zone::clone(&store.zones.named(name)));
        Some(Told::of(&project.id, (&ask, &rest), &zone, clock))
    })
}

/// The end of the evening's blue hour; tracked.
fn usual_wrap(shown: Shown) -> Option<NaiveTime> {
    shown.with_day(|day| words::to_the_minute(day.zone.local(day.usual_wrap())).time())
}

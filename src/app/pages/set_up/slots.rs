//! The best slots: runs of days, each with its reason, its hold and the ball; a tap stands all rooms there.

use std::sync::Arc;

use chrono::NaiveDate;
use leptos::prelude::*;
use slantlight::draw::ball;
use slantlight::plan::search::runs::{self, Order, Run};
use slantlight::plan::search::slot::Slot;
use slantlight::plan::search::uncertainty;
use slantlight::plan::search::words as say;
use slantlight::plan::search::{self, Reach};
use slantlight::plan::stage::Stage;
use slantlight::plan::wish::DateRange;
use slantlight::project::document::SavedSlot;
use slantlight::project::edit::Edit;
use slantlight::project::route::Route;
use slantlight::project::stage::NotReady;
use slantlight::sky::sun::Sun;
use slantlight::units::{Bearing, Span};
use slantlight::words;

use super::looking::{Looked, Looking};
use super::shown::Shown;
use crate::app::parts::{EmptyState, Picture, SaveButton};

/// Runs shown before one asks for more. Our own choice: what a thumb scrolls past in one go.
const FIRST: usize = 6;

/// What a search has found, ready to show.
#[derive(Clone)]
pub struct Answer {
    sun: Arc<Sun>,
    stage: Arc<Stage>,
    reach: Reach,
    runs: Vec<Run>,
    days: usize,
}

/// The list of slots.
#[component]
pub fn Slots(shown: Shown, looking: Looking) -> impl IntoView {
    let order = RwSignal::new(Order::Hold);
    let all = RwSignal::new(false);
    // Every search is another answer: to compare two would cost more than to show it.
    let answer = Memo::new_with_compare(
        move |_| looking.found.with(|found| found.as_ref().map(|looked| answer(looked, order.get()))),
        |_, _| true,
    );
    let beside = move || match looking.percent.get() {
        Some(percent) => format!("looking through the year, {percent} %"),
        None => answer.with(|answer| answer.as_ref().map(works_on).unwrap_or_default()),
    };
    view! {
        <section class="slots" aria-live="off">
            <div class="section-head ruled">
                <h2>"Best slots"</h2>
                <span>{beside}</span>
                <OrderChoice order=order />
            </div>
            {move || answer.get().map(|answer| list(shown, answer, all))}
            <Show when=move || answer.with(Option::is_none)>
                <p class="empty">{move || shown.stage.get().err().map(missing)}</p>
            </Show>
            <p><a class="button wide" href=move || year_of(shown)>"The whole year"</a></p>
        </section>
    }
}

/// What is missing, and what to do.
fn missing(what: NotReady) -> &'static str {
    match what {
        NotReady::NoSetUp(_) => "This set-up is gone.",
        NotReady::Nowhere => "Say above where this set-up is, and its slots stand here.",
        _ => {
            "The place of this set-up is not complete any more. Choose it above once more, and its slots stand here."
        }
    }
}

/// The sheet of the year of this set-up.
fn year_of(shown: Shown) -> String {
    shown.with(|set_up| Route::Year(set_up.id.clone()).href()).unwrap_or_default()
}

fn answer(looked: &Looked, order: Order) -> Answer {
    let Looked { sun, stage, found } = looked.clone();
    let (reach, slots) = found.first();
    let mut runs = runs::runs(&stage, slots);
    runs::sort(&stage, &mut runs, order);
    let days = runs::days(&found.year);
    Answer { sun, stage, reach, runs, days }
}

/// The best slot and its reason in words: "Thu 11 Mar 2027, 17:38–18:14".
pub fn best(shown: Shown, looking: Looking) -> Option<(String, String)> {
    let answer = looking.found.with(|found| found.as_ref().map(|looked| answer(looked, Order::Hold)))?;
    let slot = answer.runs.first()?.best();
    let edges = uncertainty::edges(&answer.sun, &answer.stage, slot);
    let clock = say::clock(slot.span, &answer.stage, shown.store.settings.get().clock);
    Some((format!("{}, {clock}", words::date(slot.date)), say::reason(slot, &answer.stage, &edges)))
}

/// "works on 143 days · next six weeks".
fn works_on(answer: &Answer) -> String {
    let reach = match answer.reach {
        Reach::ProjectDates => " · on the project's dates",
        Reach::SixWeeks => " · the next six weeks first",
        Reach::Year => "",
    };
    format!("{} a year{reach}", say::works_on(answer.days))
}

#[component]
fn OrderChoice(order: RwSignal<Order>) -> impl IntoView {
    let named = [("by hold", Order::Hold), ("by date", Order::Date), ("by slack", Order::Slack)];
    let choose = move |event| {
        let value = event_target_value(&event);
        if let Some((_, chosen)) = named.iter().find(|(name, _)| *name == value) {
            order.set(*chosen);
        }
    };
    let option = move |(name, one): (&'static str, Order)| {
        view! { <option value=name selected=move || order.get() == one>{name}</option> }
    };
    view! {
        <select class="quiet" aria-label="Order of the slots" on:change=choose>
            {named.map(option).collect_view()}
        </select>
    }
}

/// The slots of one date.
pub fn on_date(shown: Shown, date: NaiveDate) -> Option<Answer> {
    let stage = shown.stage.get().ok()?;
    let sun = Arc::new(Sun::new(stage.site));
    let slots = search::slots(&sun, &stage, &[DateRange { from: date, to: date }]);
    let runs = runs::runs(&stage, &slots);
    Some(Answer { sun, stage, reach: Reach::Year, days: runs.len(), runs })
}

/// Its rows; none if it is empty.
pub fn rows(shown: Shown, answer: &Answer) -> impl IntoView + use<> {
    let rows = answer.runs.iter().map(|run| row(shown, answer, run)).collect_view();
    view! { <ul class="rows">{rows}</ul> }
}

impl Answer {
    /// Whether nothing was found.
    pub fn is_empty(&self) -> bool {
        self.runs.is_empty()
    }
}

fn list(shown: Shown, answer: Answer, all: RwSignal<bool>) -> AnyView {
    if answer.runs.is_empty() {
        return view! {
            <EmptyState says="No slot within a year. Widen the arc or the heights, ask for fewer minutes, or turn the lens.">
                ""
            </EmptyState>
        }
        .into_any();
    }
    let more = answer.runs.len().saturating_sub(FIRST);
    let count = if all.get() { answer.runs.len() } else { FIRST };
    let rows = answer.runs.iter().take(count).map(|run| row(shown, &answer, run)).collect_view();
    view! {
        <ul class="rows">{rows}</ul>
        {(more > 0 && !all.get()).then(|| view! {
            <p>
                <button type="button" class="button wide" on:click=move |_| all.set(true)>
                    {format!("Show {more} more")}
                </button>
            </p>
        })}
    }
    .into_any()
}

fn row(shown: Shown, answer: &Answer, run: &Run) -> impl IntoView + use<> {
    let (stage, slot, store) = (answer.stage.clone(), run.best().clone(), shown.store);
    let edges = uncertainty::edges(&answer.sun, &stage, &slot);
    let (dates, reason, warning) =
        (say::dates(run), say::reason(&slot, &stage, &edges), say::outcome(&edges));
    let clock = say::clock(slot.span, &stage, store.settings.get().clock);
    let ends = format!("until {}", say::ends(&slot, &stage));
    let light = shown.lens_sees(slot.light.direction, slot.lens);
    let name = format!("{dates}, {clock}");
    let (begin, lens) = (slot.span.first_minute(), stage.free.is_some().then_some(slot.lens));
    let stand = move |_| {
        if let Some(lens) = lens {
            shown.change(|set_up| set_up.lens.bearing = lens);
        }
        store.moment.stand_at(begin);
    };
    view! {
        <li class="slot">
            <button
                type="button"
                class="slot-text"
                on:click=stand
            >
                <span class="unseen">"Stand at "</span>
                <span class="row-picture"><Picture drawing=Signal::stored(ball::ball(light)) decoration=true /></span>
                <span class="row-text">
                    <span class="row-title">{dates} " " <span class="slot-clock">{clock}</span></span>
                    <span class="row-sub">{reason.clone()}</span>
                    <span class="row-sub">{ends}</span>
                    {warning.map(|warning| view! { <span class="row-sub warning">{warning}</span> })}
                </span>
                <span class="row-value">{hold_of(&slot)}</span>
            </button>
            <KeepSlot shown=shown span=slot.span lens=lens name=name />
        </li>
    }
}

/// "36" over "min".
fn hold_of(slot: &Slot) -> impl IntoView + use<> {
    let words = words::duration(slot.hold());
    match words.strip_suffix(" min") {
        Some(minutes) => view! { {minutes.to_owned()} <small>"min"</small> }.into_any(),
        None => words.into_any(),
    }
}

/// Keeps a slot or lets it go.
#[component]
pub fn KeepSlot(
    shown: Shown,
    span: Span,
    name: String,
    /// Where a free lens looks for it.
    #[prop(default = None)]
    lens: Option<Bearing>,
) -> impl IntoView {
    let store = shown.store;
    let kept = Memo::new(move |_| {
        shown
            .with(|set_up| set_up.saved.iter().find(|kept| kept.is_about(span)).map(|kept| kept.id.clone()))
            .flatten()
    });
    let toggle = move |keep: bool| {
        let Some(set_up) = shown.with(|set_up| set_up.id.clone()) else { return };
        match kept.get_untracked() {
            Some(slot) if !keep => {
                store.edit_with_undo(Edit::ForgetSlot { set_up, slot }, "Slot removed");
            }
            None if keep => {
                let slot = SavedSlot { id: store.fresh_id(), start: span.start(), end: span.end(), lens };
                store.edit(Edit::SaveSlot { set_up, slot });
                store.moment.stand_at(span.first_minute());
            }
            _ => {}
        }
    };
    view! { <SaveButton saved=Signal::derive(move || kept.get().is_some()) what=Signal::stored(name) on_toggle=toggle /> }
}

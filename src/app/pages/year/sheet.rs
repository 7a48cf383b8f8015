//! The sheet, and three ways to a date that is under a pixel wide: drag or tap, months and a week, arrow keys.

use chrono::NaiveDate;
use leptos::html;
use leptos::prelude::*;
use slantlight::draw::Point;
use slantlight::draw::year::{YearDay, YearSheet};
use slantlight::plan::calendar;
use slantlight::plan::search::met::met;
use slantlight::plan::search::weeks::Weeks;
use slantlight::plan::search::year::{self, DayRow};
use slantlight::plan::wish::DateRange;
use slantlight::sky::sun::Sun;
use slantlight::units::Duration;
use slantlight::words;
use web_sys::PointerEvent;

use super::Chosen;
use crate::app::devices::slices::Slices;
use crate::app::pages::set_up::shown::Shown;
use crate::app::parts::Picture;

/// A key's step of the clock. Our own choice.
const QUARTER: i64 = 15;

/// The sheet of the year from today.
#[component]
pub fn Sheet(shown: Shown, chosen: Chosen) -> impl IntoView {
    let today = Memo::new(move |_| chosen.zone().date(shown.store.moment.today()));
    let (rows, percent) = work_out(shown, today);
    view! {
        <Paper rows=rows percent=percent shown=shown chosen=chosen today=today />
        <ul class="legend" aria-hidden="true">
            <li class="met">"wish met"</li>
            <li class="up">"sun up"</li>
            <li class="down">"sun down"</li>
        </ul>
        <Months chosen=chosen rows=rows today=today />
        <Week chosen=chosen rows=rows shown=shown />
    }
}

/// The rows, in slices: what has been looked through stands on the sheet already; and how much that is, percent, until it
/// is all.
fn work_out(shown: Shown, today: Memo<NaiveDate>) -> (RwSignal<Vec<DayRow>>, RwSignal<Option<u32>>) {
    let (rows, percent, slices) = (RwSignal::new(Vec::new()), RwSignal::new(None), Slices::idle());
    Effect::new(move |_| {
        let (Ok(stage), from) = (shown.stage.get(), today.get()) else {
            slices.stop();
            rows.set(Vec::new());
            percent.set(None);
            return;
        };
        let (sun, dates) = (Sun::new(stage.site), DateRange { from, to: calendar::later(from, 364) });
        let weeks = Weeks::new(&stage.zone, dates);
        slices.run(
            (weeks, sun, stage),
            |(weeks, sun, stage)| weeks.step(|week| met(sun, stage, week)),
            move |(weeks, sun, stage), is_done| {
                percent.set((!is_done).then(|| (weeks.share() * 100.0) as u32));
                rows.set(year::sheet(sun, stage, dates, &weeks.light()));
            },
        );
    });
    (rows, percent)
}

/// The drawing; a finger, a mouse or the arrow keys choose a date and a time on it.
#[component]
fn Paper(
    rows: RwSignal<Vec<DayRow>>,
    percent: RwSignal<Option<u32>>,
    shown: Shown,
    chosen: Chosen,
    today: Memo<NaiveDate>,
) -> impl IntoView {
    let days = Memo::new(move |_| rows.with(|rows| rows.iter().map(YearDay::from).collect::<Vec<_>>()));
    let drawing = Memo::new(move |_| {
        let style = shown.store.settings.get().clock;
        days.with(|days| YearSheet { first: today.get(), days }.draw(Some(chosen.get()), style))
    });
    let paper = NodeRef::<html::Div>::new();
    let held = StoredValue::new(false);
    let choose = move |event: &PointerEvent| {
        let Some(paper) = paper.get_untracked() else { return };
        let (place, view) =
            (paper.get_bounding_client_rect(), drawing.with_untracked(|drawing| drawing.view));
        let at = Point::new(
            (f64::from(event.client_x()) - place.left()) / place.width() * view.width,
            (f64::from(event.client_y()) - place.top()) / place.height() * view.height,
        );
        let (date, clock) =
            days.with_untracked(|days| YearSheet { first: today.get_untracked(), days }.at(at));
        chosen.set(date, clock);
    };
    let says = move || {
        let (date, clock) = chosen.get();
        let met = rows.with(|rows| rows.iter().any(|row| row.date == date && row.is_met_at(clock)));
        format!(
            "{} {}, {}",
            words::date(date),
            time_of(chosen, shown),
            if met { "wish met" } else { "wish not met" }
        )
    };
    let key = move |event: leptos::ev::KeyboardEvent| {
        let (date, clock) = untrack(move || chosen.get());
        let moved = match event.key().as_str() {
            "ArrowRight" => (calendar::moved(date, 1), clock),
            "ArrowLeft" => (calendar::moved(date, -1), clock),
            "PageUp" => (calendar::moved(date, 30), clock),
            "PageDown" => (calendar::moved(date, -30), clock),
            "ArrowDown" => (date, clock + Duration::from_minutes(QUARTER)),
            "ArrowUp" => (date, clock - Duration::from_minutes(QUARTER)),
            _ => return,
        };
        event.prevent_default();
        chosen.set(moved.0, moved.1);
    };
    view! {
        <div
            class="year-paper"
            node_ref=paper
            role="slider"
            tabindex="0"
            aria-label=move || drawing.with(|drawing| drawing.text.clone())
            aria-valuemin="0"
            aria-valuemax="364"
            aria-valuenow=move || calendar::days_between(today.get(), chosen.get().0)
            aria-valuetext=says
            on:pointerdown=move |event| { held.set_value(true); choose(&event); }
            on:pointermove=move |event| if held.get_value() { choose(&event) }
            on:pointerup=move |_| held.set_value(false)
            on:pointercancel=move |_| held.set_value(false)
            on:pointerleave=move |_| held.set_value(false)
            on:keydown=key
        >
            <Picture drawing=drawing decoration=true />
        </div>
        <p class="loupe" aria-hidden="true">
            {says} {move || percent.get().map(|percent| format!(" · looking through the year, {percent} %"))}
        </p>
    }
}

/// "17:38".
fn time_of(chosen: Chosen, shown: Shown) -> String {
    let local = chosen.zone().local(shown.store.moment.to_the_minute());
    words::clock(local.time(), shown.store.settings.get().clock)
}

/// The months, each with how many of its days meet the wish.
#[component]
fn Months(chosen: Chosen, rows: RwSignal<Vec<DayRow>>, today: Memo<NaiveDate>) -> impl IntoView {
    let month = move |first: NaiveDate| {
        let best = move || rows.with(|rows| year::best_of_month(rows, first));
        let here = move || calendar::same_month(chosen.get().0, first);
        let count = move || rows.with(|rows| year::days_met_in_month(rows, first));
        view! {
            <button
                type="button"
                class="button small"
                aria-pressed=move || if here() { "true" } else { "false" }
                aria-label=move || format!("{} {}: days on which the wish is met", words::month(first), count())
                on:click=move |_| {
                    let (date, clock) = untrack(move || best().unwrap_or((first, chosen.get().1)));
                    chosen.set(date, clock);
                }
            >
                {words::month(first)} " "
                <small>{move || count().to_string()}</small>
            </button>
        }
    };
    view! {
        <div class="months" role="group" aria-label="Months">
            {move || calendar::months(today.get()).into_iter().map(month).collect_view()}
        </div>
    }
}

/// The week of the chosen date.
#[component]
fn Week(chosen: Chosen, rows: RwSignal<Vec<DayRow>>, shown: Shown) -> impl IntoView {
    let week = Memo::new(move |_| calendar::week(chosen.get().0));
    let day = move |date: NaiveDate| {
        let met = rows
            .with(|rows| rows.iter().find(|row| row.date == date).and_then(|row| row.met.first().copied()));
        let style = shown.store.settings.get().clock;
        let sub = met.map_or_else(|| "—".to_owned(), |span| words::clock(span.starts(), style));
        let here = move || chosen.get().0 == date;
        view! {
            <button
                type="button"
                class="button small"
                aria-pressed=move || if here() { "true" } else { "false" }
                aria-label=format!("{}, {}", words::date(date), if met.is_some() { format!("wish met from {sub}") } else { "wish not met".to_owned() })
                on:click=move |_| {
                    let clock = met.map_or_else(|| untrack(move || chosen.get().1), |span| span.first_minute());
                    chosen.set(date, clock);
                }
            >
                {words::day_of_week(date)}
                <small>{sub.clone()}</small>
            </button>
        }
    };
    view! {
        <div class="week" role="group" aria-label="Week">
            {move || week.get().into_iter().map(day).collect_view()}
        </div>
    }
}

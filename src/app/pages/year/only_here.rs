//! Only here from–to: the span is fixed. Where may the lens look, how long does it hold, and what else would do?

use chrono::NaiveTime;
use leptos::prelude::*;
use slantlight::draw::around::Around;
use slantlight::place::background::Background;
use slantlight::plan::calendar;
use slantlight::plan::search::answers;
use slantlight::plan::search::only_here::{self, LensArc};
use slantlight::plan::search::otherwise::{self, Asked};
use slantlight::plan::stage::Stage;
use slantlight::plan::wish::lens::LensChoice;
use slantlight::sky::sun::Sun;
use slantlight::units::Span;
use slantlight::words;

use super::Chosen;
use crate::app::pages::set_up::shown::Shown;
use crate::app::parts::{Caution, Picture, SectionHead};

/// The question and its answers.
#[component]
pub fn OnlyHere(shown: Shown, chosen: Chosen) -> impl IntoView {
    let (today, clock) = untrack(move || chosen.get());
    let (begin, end) = calendar::hour_around(clock);
    let (date, from, to) = (RwSignal::new(today), RwSignal::new(begin), RwSignal::new(end));
    let span = Memo::new(move |_| chosen.zone().span_on(date.get(), from.get(), to.get()));
    let heading = Signal::derive(move || {
        let style = shown.store.settings.get().clock;
        format!("Only here {}?", words::clock_from_to(from.get(), to.get(), style))
    });
    view! {
        <section class="stack">
            <SectionHead title=heading beside=Signal::derive(move || words::date(date.get())) ruled=true />
            <div class="fields">
                {typed("date", "Date", move || date.get().to_string(), move |text| if let Ok(to) = text.parse() { date.set(to) })}
            </div>
            <div class="fields two">
                {typed("time", "From", move || of_the_clock(from.get()), move |text| if let Ok(to) = text.parse() { from.set(to) })}
                {typed("time", "To", move || of_the_clock(to.get()), move |text| if let Ok(at) = text.parse() { to.set(at) })}
            </div>
            {move || match (span.get(), shown.stage.get()) {
                (None, _) => view! { <p>"The end must come after the beginning."</p> }.into_any(),
                (_, Err(_)) => view! { <p>"First choose where this set-up is."</p> }.into_any(),
                (Some(span), Ok(stage)) => answer(shown, &stage, span),
            }}
        </section>
    }
}

/// A field that opens the phone's own calendar or clock; what it cannot read stays as it was.
fn typed(
    kind: &'static str,
    label: &'static str,
    value: impl Fn() -> String + Send + Sync + 'static,
    take: impl Fn(&str) + 'static,
) -> AnyView {
    let take = move |event| take(&event_target_value(&event));
    view! {
        <label class="field">
            <span>{label}</span>
            <input type=kind prop:value=value on:change=take />
        </label>
    }
    .into_any()
}

/// As a field of the clock wants it.
fn of_the_clock(time: NaiveTime) -> String {
    words::clock(time, words::Clock::default())
}

fn answer(shown: Shown, stage: &Stage, span: Span) -> AnyView {
    let sun = Sun::new(stage.site);
    let backgrounds =
        shown.with_standing(|standing| standing.location.backgrounds.clone()).unwrap_or_default();
    // The question is where to look: a lens that is fixed may turn all the way round here.
    let choice = shown.with(|set_up| set_up.lens.choice).unwrap_or_default();
    let choice = if choice.is_fixed() { LensChoice::AnyGoodBackground } else { choice };
    let tried = only_here::every_bearing(&sun, stage, span, choice, &backgrounds);
    let arcs = only_here::arcs(&sun, stage, &tried);
    if arcs.is_empty() {
        return nothing(shown, &Asked { stage, span, choice, backgrounds: &backgrounds });
    }
    let drawing = Around { arcs: &arcs, backgrounds: &backgrounds }.draw();
    let rows = arcs.iter().map(|arc| row(shown, arc)).collect_view();
    view! {
        <div class="around"><Picture drawing=Signal::stored(drawing) /></div>
        <p class="soft">"Seen from above, north up. White: the camera may stand there. Hatched: a background that must not be seen."</p>
        <Caution>"The picture knows the light, not the ground: look where you step, and stay off edges, water and roads."</Caution>
        <ul class="rows">{rows}</ul>
        {bad(&backgrounds)}
    }
    .into_any()
}

fn row(shown: Shown, arc: &LensArc) -> impl IntoView + use<> {
    let best = arc.best.lens;
    let (title, sub) = (words::capital(&answers::lens(arc)), answers::lens_reason(arc));
    let distance = shown.with(|set_up| set_up.lens.distance).unwrap_or_default();
    let stands = answers::camera_stands(best, distance, shown.store.settings.get().units);
    let use_it = move |_| shown.change(|set_up| set_up.lens.bearing = best);
    view! {
        <li class="slot">
            <span class="row-text">
                <span class="row-title">{title}</span>
                <span class="row-sub">{sub}</span>
                <span class="row-sub">{stands}</span>
            </span>
            <button type="button" class="button" on:click=use_it aria-label=format!("Look to {}", words::bearing(best))>"Look there"</button>
        </li>
    }
}

/// Backgrounds that are not fit to be seen, with why.
fn bad(backgrounds: &[Background]) -> Option<impl IntoView + use<>> {
    let named = answers::bad_backgrounds(backgrounds);
    (!named.is_empty()).then(|| view! { <p class="soft">{named}</p> })
}

/// Nothing over that span: the nearest slots, and the smallest change of the wish.
fn nothing(shown: Shown, asked: &Asked<'_>) -> AnyView {
    let (sun, stage, style) = (Sun::new(asked.stage.site), asked.stage, shown.store.settings.get().clock);
    let (before, after) = otherwise::nearest(&sun, asked);
    let near: Vec<_> = [before, after].into_iter().flatten().collect();
    let rows = near.iter().map(|one| {
        let (title, start) = (answers::nearby(one, stage, style), one.span.first_minute());
        view! {
            <li>
                <button type="button" class="slot-text" on:click=move |_| shown.store.moment.stand_at(start)>
                    <span class="row-text"><span class="row-title">{title}</span><span class="row-sub">"the nearest in time"</span></span>
                </button>
            </li>
        }
    });
    let rows = rows.collect_view();
    let change = otherwise::smallest_change(&sun, asked).map(|change| {
        let (says, wish) = (answers::change(change, &stage.wish), change.apply(&stage.wish));
        view! {
            <p>{format!("The wish is met with {says}.")}</p>
            <button type="button" class="button wide" on:click=move |_| shown.change(|set_up| set_up.wish = wish.clone())>
                "Change the wish so"
            </button>
        }
    });
    view! {
        <p>"No bearing of the lens gives the wish over this span."</p>
        {change}
        <ul class="rows">{rows}</ul>
    }
    .into_any()
}

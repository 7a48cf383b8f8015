//! Same light again: other times with the sun within some degrees of where it stands at the chosen instant.

use leptos::prelude::*;
use slantlight::draw::scale::Scale;
use slantlight::place::zone::Zone;
use slantlight::plan::calendar;
use slantlight::plan::search::answers;
use slantlight::plan::search::same_light::{self, SAME};
use slantlight::plan::wish::DateRange;
use slantlight::project::pick_up::pick_up;
use slantlight::sky::sun::Sun;
use slantlight::units::{Degrees, Span};
use slantlight::words;

use super::Chosen;
use crate::app::pages::set_up::shown::Shown;
use crate::app::pages::set_up::slots::KeepSlot;
use crate::app::parts::{SectionHead, Slider};

/// Answers shown. Our own choice.
const SHOWN: usize = 8;

/// Plans a pick-up in a span of the same light: a set-up of its own, on that date's sheet.
fn plan(shown: Shown, light: Span, zone: &Zone) {
    let store = shown.store;
    let project = store.desk.latest();
    let id = shown.with(|set_up| set_up.id.clone()).unwrap_or_default();
    if let Some(edit) = pick_up(&project, &id, (light, zone), || store.fresh_id()) {
        let date = words::date(zone.date(light.middle()));
        store.edit_with_undo(edit, format!("Pick-up planned: it stands in Days on {date}"));
    }
}

/// The answers for the instant that all rooms show when it is asked.
#[component]
pub fn Again(shown: Shown, chosen: Chosen) -> impl IntoView {
    let shot = RwSignal::new(untrack(move || shown.store.moment.to_the_minute()));
    let when = move || chosen.zone().local(shot.get());
    let typed = move |date: Option<String>, time: Option<String>| {
        let zone = untrack(move || chosen.zone());
        shot.update(|shot| *shot = same_light::typed(&zone, *shot, date.as_deref(), time.as_deref()));
    };
    let near = RwSignal::new(SAME.degrees());
    let style = move || shown.store.settings.get().clock;
    let found = move || {
        let stage = shown.stage.get().ok()?;
        let today = chosen.zone().date(shown.store.moment.today());
        let year = calendar::whole(&stage.zone, DateRange { from: today, to: calendar::later(today, 364) })?;
        let all = same_light::again(
            &Sun::new(stage.site),
            &stage,
            shot.get(),
            Degrees::from_degrees(near.get()),
            year,
        );
        Some((stage, all))
    };
    let rows = move || {
        let Some((stage, all)) = found() else { return ().into_any() };
        if all.is_empty() {
            return view! { <p>"No other time within a year. Allow more degrees, or take it on the same date next year."</p> }
                .into_any();
        }
        let row = |one: &same_light::Again| {
            let (at, title) = (one.at, answers::again(one, &stage, style()));
            let sub = answers::how_near(one, shot.get_untracked(), &stage, style());
            let (light, zone) = (one.span, stage.zone.clone());
            let plan = move |_| plan(shown, light, &zone);
            view! {
                <li class="slot">
                    <button type="button" class="slot-text" on:click=move |_| shown.store.moment.stand_at(at)>
                        <span class="row-text">
                            <span class="row-title">{title.clone()}</span>
                            <span class="row-sub">{sub}</span>
                        </span>
                    </button>
                    <KeepSlot shown=shown span=one.span name=title.clone() />
                    <button type="button" class="button small" aria-label=format!("Plan a pick-up: {title}") on:click=plan>"Plan"</button>
                </li>
            }
        };
        let rows = all.iter().take(SHOWN).map(row).collect_view();
        view! { <ul class="rows">{rows}</ul> }.into_any()
    };
    let title = Signal::derive(move || {
        let local = when();
        format!("As on {} {}", words::date(local.date()), words::clock(local.time(), style()))
    });
    view! {
        <section>
            <SectionHead title=title beside="for pick-ups" ruled=true />
            <div class="fields two">
                <label class="field"><span>"We shot on"</span>
                    <input type="date" prop:value=move || when().date().to_string()
                        on:change=move |event| typed(Some(event_target_value(&event)), None) /></label>
                <label class="field"><span>"at"</span>
                    <input type="time" prop:value=move || when().time().to_string()
                        on:change=move |event| typed(None, Some(event_target_value(&event))) /></label>
            </div>
            <Slider
                label="Sun within"
                scale=Signal::stored(Scale::line(0.5, 10.0, 0.5))
                value=near
                say=|degrees: f64| words::degrees_fine(Degrees::from_degrees(degrees))
                on_move=move |degrees| near.set(degrees)
                on_change=move |degrees| near.set(degrees)
            />
            {rows}
        </section>
    }
}

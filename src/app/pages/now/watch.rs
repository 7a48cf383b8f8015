//! On set: the screen stays awake, an alarm before a slot begins and ends, the dim screen for dusk.

use leptos::prelude::*;
use slantlight::plan::today::alarm::{self, Alarm};
use slantlight::units::Duration;

use super::shown::Shown;
use crate::app::devices::awake::{self, Awake};
use crate::app::devices::ring::Bell;
use crate::app::parts::{Notes, SectionHead, Segmented};
use crate::app::store::Scheme;

/// Leads to choose from, minutes. Our own choice.
const LEADS: [u32; 4] = [1, 2, 5, 10];

/// The section.
#[component]
pub fn Watch(shown: Shown) -> impl IntoView {
    let settings = shown.store.settings;
    let awake = awake::hold(Signal::derive(move || !settings.get().may_sleep));
    let awake_words = move || match awake.get() {
        Awake::Held => "The screen stays awake on this page.",
        Awake::Asleep => "The screen may fall asleep.",
        Awake::Refused => "This browser lets the screen fall asleep: set the phone's own sleep time.",
    };
    let sleep_word = move || if settings.get().may_sleep { "Keep it awake" } else { "Let it sleep" };
    let dim_word =
        move || if settings.get().scheme == Scheme::Dim { "Brighter screen" } else { "Dim for dusk" };
    let dim = move |_| {
        settings.update(|settings| {
            settings.scheme = if settings.scheme == Scheme::Dim { Scheme::System } else { Scheme::Dim };
        });
    };
    view! {
        <section class="stack">
            <SectionHead title="On set" ruled=true />
            <p class="soft" role="status">{awake_words}</p>
            <div class="row">
                <button type="button" class="button grow" on:click=move |_| settings.update(|settings| settings.may_sleep = !settings.may_sleep)>{sleep_word}</button>
                <button type="button" class="button grow" on:click=dim>{dim_word}</button>
            </div>
            <Alarms shown=shown />
        </section>
    }
}

/// Rings before a slot begins and ends.
#[component]
fn Alarms(shown: Shown) -> impl IntoView {
    let settings = shown.store.settings;
    let notes = Notes::here();
    let (on, today) = (RwSignal::new(false), Shown::of_the_clock(shown.store));
    let bell = StoredValue::new_local(None::<Bell>);
    let toggle = move |_| {
        // The sound must be allowed in the tap itself.
        bell.set_value((!on.get_untracked()).then(Bell::allowed));
        on.update(|on| *on = !*on);
    };
    Effect::new(move |before: Option<slantlight::units::Instant>| {
        let now = shown.store.moment.clock.get();
        let lead = Duration::from_minutes(i64::from(settings.get().lead_minutes));
        let next = untrack(move || today.with_day(|day| alarm::next(&day.ahead, lead, now))).flatten();
        if let Some(next) = next {
            shown.store.moment.wake_after(next - Duration::from_millis(1));
        }
        let due = before.filter(|_| on.get_untracked()).and_then(|before| {
            untrack(move || today.with_day(|day| alarm::due(&day.ahead, lead, (before, now)))).flatten()
        });
        if let Some(due) = due {
            notes.say(match due {
                Alarm::Begins(_) => "The slot begins soon.",
                Alarm::Ends(_) => "The slot ends soon.",
            });
            bell.with_value(|bell| bell.as_ref().map(Bell::ring));
        }
        now
    });
    let word = move || if on.get() { "Stop the alarms" } else { "Ring before slots" };
    let lead = move || LEADS.iter().position(|minutes| *minutes == settings.get().lead_minutes).unwrap_or(2);
    view! {
        <Segmented
            label="Ring so long before a slot begins and ends"
            names=LEADS.iter().map(|minutes| format!("{minutes} min")).collect()
            chosen=Signal::derive(lead)
            on_choose=move |place: usize| settings.update(|settings| settings.lead_minutes = LEADS[place])
        />
        <button type="button" class="button wide" aria-pressed=move || on.get().to_string() on:click=toggle>{word}</button>
        <p class="soft">"It rings while this page is seen. A locked phone rings nothing: put the slots into its calendar with an alert for that."</p>
    }
}

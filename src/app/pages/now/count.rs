//! The countdown beside the ball, and the same in digits that are read from across the set.

use leptos::prelude::*;
use slantlight::draw::ball::ball;
use slantlight::plan::today::words::Said;

use super::shown::Shown;
use crate::app::parts::Picture;

/// What is counted. Words are made anew only when they may be others; the number alone each time the clock is told.
#[derive(Clone, Copy)]
struct Counted {
    said: Memo<Said>,
    number: Memo<String>,
    aloud: Memo<String>,
}

impl Counted {
    fn of(shown: Shown) -> Self {
        let moment = shown.store.moment;
        let turn = Memo::new(move |_| shown.turn());
        let said = Memo::new(move |_| shown.said(turn.get()));
        let number = Memo::new(move |_| said.with(|said| said.big(moment.as_told())));
        let aloud =
            Memo::new(move |_| said.with(|said| format!("{} {}", said.aloud(moment.as_told()), said.what)));
        Effect::new(move |_| {
            let now = moment.clock.get();
            if let Some(until) = said.with(|said| said.stays_until(now)).filter(|_| moment.is_now()) {
                moment.wake_after(until);
            }
        });
        Self { said, number, aloud }
    }

    /// One part of what is said; it is printed anew only when it changes.
    fn part(self, read: fn(&Said) -> &String) -> Memo<String> {
        Memo::new(move |_| self.said.with(|said| read(said).clone()))
    }
}

/// The ball, the number, what it counts and what ends it. A tap makes the digits big.
#[component]
pub fn Count(shown: Shown) -> impl IntoView {
    let counted = Counted::of(shown);
    let big = RwSignal::new(false);
    let spoken = move || counted.aloud.with(|aloud| format!(": {aloud}. Show it big"));
    let uncounted = Memo::new(move |_| counted.said.with(|said| said.counts_to.is_none()));
    let drawing = Signal::derive(move || {
        let at = shown.store.moment.to_the_minute();
        ball(shown.with_day(|day| day.on_face(at)).flatten())
    });
    let has_face = Memo::new(move |_| shown.with_day(|day| day.set_up().is_some()).unwrap_or(false));
    let (what, holds) = (counted.part(|said| &said.what), counted.part(|said| &said.holds));
    view! {
        <Show when=move || has_face.get()>
            <div class="now-ball"><Picture drawing=drawing /></div>
        </Show>
        <div class="now-words">
            <button type="button" class="now-number" hidden=move || uncounted.get() on:click=move |_| big.set(true)>
                {counted.number}
                <span class="unseen">{spoken}</span>
            </button>
            <p class="now-what">{what} " " <strong>{holds}</strong></p>
            <p class="now-detail">{counted.part(|said| &said.detail)}</p>
        </div>
        <Show when=move || big.get()>
            <BigDigits counted=counted big=big />
        </Show>
    }
}

/// Digits across the whole screen, for a phone on a stand or held up. A tap leaves them.
#[component]
fn BigDigits(counted: Counted, big: RwSignal<bool>) -> impl IntoView {
    let dialog = NodeRef::<leptos::html::Dialog>::new();
    Effect::new(move |_| {
        if let Some(dialog) = dialog.get().filter(|dialog| !dialog.open()) {
            // Refused only for a dialog that has left the page.
            drop(dialog.show_modal());
        }
    });
    let back = move || counted.aloud.with(|aloud| format!(": {aloud}. Back to the page"));
    let size = move || match counted.number.with(|number| number.chars().count()) {
        ..=4 => "now-big few",
        5..=6 => "now-big some",
        _ => "now-big many",
    };
    view! {
        <dialog node_ref=dialog class=size aria-label="The countdown, big" on:close=move |_| big.set(false)>
            <button type="button" class="now-big-out" on:click=move |_| big.set(false)>
                <span class="now-big-number">{counted.number}</span>
                <span class="now-big-what">{counted.part(|said| &said.what)} " " {counted.part(|said| &said.holds)}</span>
                <span class="unseen">{back}</span>
            </button>
        </dialog>
    }
}

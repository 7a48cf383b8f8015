//! The countdown beside the ball, and the same in digits that are read from across the set.

use leptos::prelude::*;
use slantlight::draw::ball::ball;
use slantlight::plan::count_words::Said;

use super::shown::Shown;
use crate::app::parts::Picture;

/// The ball, the number, what it counts and what ends it. A tap makes the digits big.
#[component]
pub fn Count(shown: Shown) -> impl IntoView {
    let said = Memo::new(move |_| shown.said());
    let big = RwSignal::new(false);
    let spoken = Memo::new(move |_| aloud(said));
    let drawing = Signal::derive(move || {
        let at = shown.store.moment.to_the_minute();
        ball(shown.with_day(|day| day.on_face(at)).flatten())
    });
    let has_face = Memo::new(move |_| shown.with_day(|day| day.set_up().is_some()).unwrap_or(false));
    view! {
        <Show when=move || has_face.get()>
            <div class="now-ball"><Picture drawing=drawing /></div>
        </Show>
        <div class="now-words">
            <button type="button" class="now-number" aria-label=spoken on:click=move |_| big.set(true)>
                {part(said, |said| &said.big)}
            </button>
            <p class="now-what">{part(said, |said| &said.what)} " " <strong>{part(said, |said| &said.holds)}</strong></p>
            <p class="now-detail">{part(said, |said| &said.detail)}</p>
        </div>
        <Show when=move || big.get()>
            <BigDigits said=said big=big />
        </Show>
    }
}

/// One part of what is said; it is printed anew only when it changes.
fn part(said: Memo<Said>, read: fn(&Said) -> &String) -> Memo<String> {
    Memo::new(move |_| said.with(|said| read(said).clone()))
}

/// "9 min: 9 minutes to the slot. Show it big".
fn aloud(said: Memo<Said>) -> String {
    said.with(|said| format!("{}: {} {}. Show it big", said.big, said.aloud, said.what))
}

/// Digits across the whole screen, for a phone on a stand or held up. A tap leaves them.
#[component]
fn BigDigits(said: Memo<Said>, big: RwSignal<bool>) -> impl IntoView {
    let dialog = NodeRef::<leptos::html::Dialog>::new();
    Effect::new(move |_| {
        if let Some(dialog) = dialog.get().filter(|dialog| !dialog.open()) {
            // Refused only for a dialog that has left the page.
            drop(dialog.show_modal());
        }
    });
    let size = move || match said.with(|said| said.big.chars().count()) {
        ..=4 => "now-big few",
        5..=6 => "now-big some",
        _ => "now-big many",
    };
    view! {
        <dialog node_ref=dialog class=size aria-label="The countdown, big" on:close=move |_| big.set(false)>
            <button type="button" class="now-big-out" aria-label=move || format!("{}. Back to the page", aloud(said)) on:click=move |_| big.set(false)>
                <span class="now-big-number">{part(said, |said| &said.big)}</span>
                <span class="now-big-what">{part(said, |said| &said.what)} " " {part(said, |said| &said.holds)}</span>
            </button>
        </dialog>
    }
}

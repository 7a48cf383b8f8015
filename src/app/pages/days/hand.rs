//! One set-up of the plan, by hand: dragged or typed to a time, to another day, pinned or not, in another's place, or out.
//!
//! What would not go together is said while it is dragged; letting it go is one step of undo.

use leptos::prelude::*;
use slantlight::draw::scale::Scale;
use slantlight::project::route::Route;
use slantlight::project::shoot::hand::Held;
use slantlight::units::Duration;
use slantlight::words;

use super::{put, zones};
use crate::app::parts::{Notes, Sheet, Slider, TextField};
use crate::app::store::Store;

/// The sheet over the page, there while a set-up is chosen.
pub fn sheet(store: Store, chosen: RwSignal<Option<String>>) -> AnyView {
    let open = RwSignal::new(false);
    // Each follows the other, and only where it differs: a signal tells of every set, even of the same value.
    Effect::new(move |_| {
        let is_chosen = chosen.with(Option::is_some);
        if open.get_untracked() != is_chosen {
            open.set(is_chosen);
        }
    });
    Effect::new(move |_| {
        if !open.get() && chosen.with_untracked(Option::is_some) {
            chosen.set(None);
        }
    });
    view! {
        <Sheet open=open title="This set-up">
            {move || chosen.get().map(|id| inside(store, id, open))}
        </Sheet>
    }
    .into_any()
}

/// Where the set-up is held: day and minute of the clock.
#[derive(Clone, Copy)]
struct Hand {
    store: Store,
    held: StoredValue<Held>,
    at: RwSignal<(usize, u16)>,
}

impl Hand {
    /// What would not go together where it is held.
    fn faults(self) -> Vec<String> {
        let (day, minute) = self.at.get();
        let project = self.store.desk.project();
        self.held.with_value(|held| {
            let moved = held.at(&project.shoot, day, minute);
            moved.map(|shoot| held.faults(&project, &shoot)).unwrap_or_default()
        })
    }

    /// Puts it where it is held.
    fn put(self) {
        let (day, minute) = self.at.get_untracked();
        let shoot = self.store.desk.latest().shoot.clone();
        if let Some(shoot) = self.held.with_value(|held| held.at(&shoot, day, minute)) {
            put(self.store, "move a set-up", shoot);
        }
    }

    fn clock(self, minute: f64) -> String {
        words::of_day(Duration::from_minutes(minute as i64), self.store.settings.get_untracked().clock)
    }
}

fn inside(store: Store, id: String, open: RwSignal<bool>) -> AnyView {
    let style = store.settings.get_untracked().clock;
    let Some(held) = Held::of(&store.desk.latest(), &id, &zones(store), style) else {
        return ().into_any();
    };
    let (title, days, others) = (held.title.clone(), held.days.clone(), held.others.clone());
    let (day, pinned, matters) = (held.day, held.pinned, held.matters);
    let at = RwSignal::new((day, held.begin(day)));
    let hand = Hand { store, held: StoredValue::new(held), at };
    let act = move |label: &'static str, shoot| {
        put(store, label, shoot);
        open.set(false);
    };
    let shoot = move || store.desk.latest().shoot.clone();
    let (a, b, c, d) = (id.clone(), id.clone(), id.clone(), id.clone());
    let dates = days.into_iter().enumerate().map(|(n, (_, words))| {
        view! { <option value=n.to_string() selected=n == day>{words}</option> }.into_any()
    });
    let with = others.into_iter().map(|(id, words)| view! { <option value=id>{words}</option> }.into_any());
    view! {
        <p class="row-title">{title}</p>
        <div class="stack">
            <label class="field">"Day"
                <select on:change=move |event| {
                    let day = event_target_value(&event).parse().unwrap_or(0);
                    at.update(|at| at.0 = day);
                }>{dates.collect::<Vec<AnyView>>()}</select>
            </label>
            {when(hand)}
            <button type="button" class="button wide" aria-pressed=pinned.to_string()
                on:click=move |_| act("pin a set-up", shoot().pinned(&a, !pinned))>
                {if pinned { "Pinned: let go" } else { "Pin: planning leaves it there" }}
            </button>
            <button type="button" class="button wide" aria-pressed=matters.to_string()
                on:click=move |_| act("weigh a set-up", shoot().weighted(&b, if matters { 1 } else { 3 }))>
                {if matters { "Matters more: as others again" } else { "Matters more than others" }}
            </button>
            <label class="field">"Swap places with"
                <select on:change=move |event| act("swap two set-ups", shoot().swapped(&c, &event_target_value(&event)))>
                    <option value="">"–"</option>
                    {with.collect::<Vec<AnyView>>()}
                </select>
            </label>
            <button type="button" class="button wide" on:click=move |_| act("take a set-up out", shoot().removed(&d))>
                "Take it out of the plan"
            </button>
            <p><a href=Route::SetUp(id).href()>"Its light"</a></p>
        </div>
    }
    .into_any()
}

/// The time: dragged, or typed; what would not go together there; and the button that puts it there.
fn when(hand: Hand) -> AnyView {
    let notes = Notes::here();
    let at = hand.at;
    let (from, to) = hand.held.with_value(|held| held.hours);
    let scale = Scale::line(f64::from(from), f64::from(to), 1.0);
    let hold = move |minute: f64| at.update(|at| at.1 = minute as u16);
    let type_it = move |text: String| match Held::typed(&text) {
        Ok(minute) => at.update(|at| at.1 = minute),
        Err(why) => notes.say(why),
    };
    let typed = Signal::derive(move || hand.clock(f64::from(at.get().1)));
    let light = move || hand.held.with_value(|held| held.light(at.get().0));
    let faults = move || {
        let all = hand.faults();
        all.into_iter().map(|why| view! { <p class="fault">{why}</p> }.into_any()).collect::<Vec<AnyView>>()
    };
    view! {
        <p class="soft">{light}</p>
        <Slider label="Begin" scale=Signal::stored(scale) value=Signal::derive(move || f64::from(at.get().1))
            say=move |minute: f64| hand.clock(minute) on_move=hold on_change=move |minute| { hold(minute); hand.put(); } />
        <TextField label="Begins at" value=typed on_change=type_it />
        <div class="days" aria-live="polite">{faults}</div>
        <button type="button" class="button wide primary" on:click=move |_| hand.put()>"Put it there"</button>
    }
    .into_any()
}

//! Planning the days: the search runs in slices between frames, shows how far it is, and can be stopped.

use leptos::prelude::*;
use slantlight::plan::schedule::say;
use slantlight::plan::schedule::solver::Solver;
use slantlight::project::shoot::problem::{Brief, brief};

use super::{put, zones};
use crate::app::devices::slices::Slices;
use crate::app::parts::Notes;
use crate::app::store::Store;

/// Looks of one step. Our own choice: a step takes less than a slice.
const STEP: usize = 20_000;

/// The search that runs, and how far it is.
#[derive(Clone, Copy)]
pub struct Solving {
    slices: Slices,
    /// Percent; `None` while nothing runs.
    done: RwSignal<Option<u32>>,
    /// How good the last plan is known to be.
    said: RwSignal<String>,
}

impl Solving {
    /// Nothing runs.
    pub fn idle() -> Self {
        Self { slices: Slices::idle(), done: RwSignal::new(None), said: RwSignal::new(String::new()) }
    }
}

/// The button, and while the search runs its progress.
pub fn button(store: Store, solving: Solving) -> AnyView {
    let notes = Notes::here();
    let begin = move |_| {
        if store.desk.latest().shoot.days.is_empty() {
            notes.say("Choose at least one shoot day first.");
            return;
        }
        solve(store, notes, solving);
    };
    let stop = move |_| {
        solving.slices.stop();
        solving.done.set(None);
    };
    let shown = move || {
        match solving.done.get() {
        None => view! {
            <button type="button" class="button wide primary spaced" on:click=begin>"Plan the days"</button>
            <p class="soft" aria-live="polite">{solving.said}</p>
        }
        .into_any(),
        Some(percent) => view! {
            <progress max="100" value=percent aria-label="Planning"></progress>
            <button type="button" class="button wide" on:click=stop>{format!("Stop planning ({percent} %)")}</button>
        }
        .into_any(),
    }
    };
    view! { <div class="solving">{shown}</div> }.into_any()
}

fn solve(store: Store, notes: Notes, solving: Solving) {
    let brief = brief(&store.desk.latest(), &zones(store));
    let solver = Solver::new(brief.problem.clone());
    let show = move |(brief, solver): &(Brief, Solver), is_done: bool| {
        solving.done.set((!is_done).then(|| (solver.share() * 100.0) as u32));
        if !is_done {
            return;
        }
        let (solution, mut shoot) = (solver.solution(), store.desk.latest().shoot.clone());
        shoot.plan = brief.plan(&shoot, &solution);
        if put(store, "plan the days", shoot) {
            let words = say::found(&brief.problem, &solution);
            solving.said.set(words.clone());
            notes.say(words);
        }
    };
    solving.slices.run((brief, solver), |(_, solver)| solver.step(STEP), show);
}

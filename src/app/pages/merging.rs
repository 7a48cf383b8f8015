//! Two of one project, side by side: what differs, what each says, and which is to stay.

use std::sync::Arc;

use leptos::prelude::*;
use slantlight::project::document::Project;
use slantlight::project::merge::{By, Choice, Difference, Found, Line, Merge, merge};

use super::called::title;
use crate::app::devices::id;
use crate::app::parts::{Notes, Segmented};
use crate::app::store::Store;

/// Differences that are shown; the rest goes as suggested. Our own choice.
const MOST_SHOWN: usize = 60;

/// The project that came beside the one that is here, and what was chosen so far.
#[derive(Clone, Copy)]
pub struct Merging {
    merge: StoredValue<Merge>,
    choices: RwSignal<Vec<Choice>>,
}

impl Merging {
    /// Lays the two side by side.
    pub fn new(here: &Project, there: &Project, ancestor: Option<&Project>) -> Self {
        let merge = merge(here, there, ancestor);
        let choices = merge.differences.iter().map(|difference| difference.suggested).collect();
        Self { merge: StoredValue::new(merge), choices: RwSignal::new(choices) }
    }

    /// Puts the two together as it was chosen: one step of undo. False if it could not be done.
    fn put_together(self, store: Store, notes: Notes, here: Arc<Project>) -> bool {
        let joined = self.merge.with_value(|merge| merge.joined(&self.choices.get_untracked(), &id::fresh()));
        match joined {
            Ok(project) => {
                if store.desk.latest().id != here.id {
                    store.desk.lay(here);
                }
                store.replace(Arc::new(project), "put two versions together")
            }
            Err(_) => {
                notes.say(
                    "The two could not be put together. Nothing was changed; take it in as a second project.",
                );
                false
            }
        }
    }
}

/// The list of differences and the button that puts the two together.
#[component]
pub fn SideBySide(
    /// What differs.
    merging: Merging,
    /// The project that is here.
    here: Arc<Project>,
    /// Called when it is done.
    #[prop(into)]
    on_done: Callback<()>,
) -> impl IntoView {
    let (store, notes) = (Store::here(), Notes::here());
    let differences = merging.merge.with_value(|merge| merge.differences.clone());
    let (only_here, listed): (Vec<_>, Vec<_>) =
        differences.into_iter().enumerate().partition(|(_, one)| stays_unasked(one));
    let head = summary(listed.len(), only_here.len(), &title(&here));
    let rest = listed.len().saturating_sub(MOST_SHOWN);
    let put = move |_| {
        if merging.put_together(store, notes, here.clone()) {
            on_done.run(());
        }
    };
    view! {
        <p>{head}</p>
        <ul class="rows merging">
            {listed.into_iter().take(MOST_SHOWN).map(|(at, one)| row(merging.choices, at, one)).collect_view()}
        </ul>
        {(rest > 0).then(|| view! { <p class="soft">{format!("For {rest} more the suggestion is taken.")}</p> })}
        <button type="button" class="button primary wide" on:click=put>"Put the two together"</button>
    }
}

/// What is only here, and was not taken away there as far as anybody knows, is not asked about.
fn stays_unasked(one: &Difference) -> bool {
    one.found == Found::OnlyHere && matches!(one.by, By::Unknown | By::Here)
}

fn summary(listed: usize, only_here: usize, name: &str) -> String {
    let differ = match listed {
        0 => format!("You have {name} already, and nothing in what came differs from it."),
        1 => format!("You have {name} already. One thing differs; choose what stays."),
        _ => format!("You have {name} already. {listed} things differ; choose what stays."),
    };
    match only_here {
        0 => differ,
        _ => format!("{differ} What only you have ({only_here}) stays."),
    }
}

/// One difference: what it is, who changed it, what each says, and the choice.
fn row(choices: RwSignal<Vec<Choice>>, at: usize, one: Difference) -> impl IntoView {
    let (names, all) = ways(&one);
    let of = all.clone();
    let chosen = Signal::derive(move || {
        let choice = choices.with(|choices| choices[at]);
        of.iter().position(|one| *one == choice).unwrap_or(0)
    });
    let choose = Callback::new(move |place: usize| choices.update(|choices| choices[at] = all[place]));
    view! {
        <li>
            <p><strong>{one.title.clone()}</strong> <span class="soft">{format!(" {}", since(&one))}</span></p>
            {(!one.lines.is_empty()).then(|| table(one.lines))}
            <Segmented label="What stays" names=names chosen=chosen on_choose=choose />
        </li>
    }
}

/// What each side says.
fn table(lines: Vec<Line>) -> impl IntoView {
    let cells = |line: Line| view! { <tr><th scope="row">{line.what}</th><td>{line.here}</td><td>{line.there}</td></tr> };
    view! {
        <table class="side-by-side">
            <thead><tr><th></th><th scope="col">"here"</th><th scope="col">"came in"</th></tr></thead>
            <tbody>{lines.into_iter().map(cells).collect_view()}</tbody>
        </table>
    }
}

/// The words of the choices, and what they mean.
fn ways(one: &Difference) -> (Vec<String>, Vec<Choice>) {
    let words: &[(&str, Choice)] = match one.found {
        Found::OnlyThere => &[("leave out", Choice::Here), ("take in", Choice::There)],
        Found::OnlyHere => &[("keep", Choice::Here), ("take away", Choice::There)],
        Found::Differs if one.can_keep_both => {
            &[("as here", Choice::Here), ("as it came", Choice::There), ("both", Choice::Both)]
        }
        Found::Differs => &[("as here", Choice::Here), ("as it came", Choice::There)],
    };
    words.iter().map(|(word, choice)| ((*word).to_owned(), *choice)).unzip()
}

/// Who has made the difference.
const fn since(one: &Difference) -> &'static str {
    match (one.found, one.by) {
        (Found::OnlyThere, By::Here) => "taken away here",
        (Found::OnlyThere, _) => "not here",
        (Found::OnlyHere, _) => "taken away there",
        (Found::Differs, By::Unknown) => "",
        (Found::Differs, By::Here) => "changed here",
        (Found::Differs, By::There) => "changed there",
        (Found::Differs, By::Each) => "changed here and there",
    }
}

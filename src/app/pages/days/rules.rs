//! Rules, places, drives, people: one field for each line that the library knows.

use leptos::prelude::*;
use slantlight::project::shoot::typing::{self, Line};

use super::put;
use crate::app::parts::{Notes, TextField};
use crate::app::store::Store;

/// A fold for each group of lines. It is made anew when a group gets more or fewer lines, not at each change.
pub fn folds(store: Store) -> AnyView {
    let notes = Notes::here();
    let groups = Memo::new(move |_| store.desk.with(typing::groups));
    let shape = Memo::new(move |_| {
        groups.with(|all| {
            all.iter().map(|(title, lines)| format!("{title} {}", lines.len())).collect::<Vec<_>>().join("|")
        })
    });
    let shown = move || {
        shape.track();
        let all = groups.get_untracked();
        let fold = |(group, (title, lines)): (usize, (String, Vec<Line>))| {
            let fields =
                lines.into_iter().enumerate().map(|(n, line)| field(store, notes, groups, (group, n), line));
            let fields: Vec<AnyView> = fields.collect();
            view! { <details class="fold"><summary>{title}</summary><div class="fields">{fields}</div></details> }.into_any()
        };
        all.into_iter().enumerate().map(fold).collect::<Vec<AnyView>>()
    };
    view! {
        <p class="soft">"Rules carry the name you give them. Slantlight does not know the law or your contract."</p>
        {shown}
    }
    .into_any()
}

type Groups = Memo<Vec<(String, Vec<Line>)>>;

fn field(store: Store, notes: Notes, groups: Groups, (group, n): (usize, usize), line: Line) -> AnyView {
    let value = Signal::derive(move || {
        groups.with(|all| {
            all.get(group)
                .and_then(|(_, lines)| lines.get(n))
                .map(|line| line.value.clone())
                .unwrap_or_default()
        })
    });
    let kind = line.field;
    let typed = move |text: String| match typing::typed(&store.desk.latest(), &kind, &text) {
        Ok(shoot) => drop(put(store, "change a rule", shoot)),
        Err(why) => notes.say(why),
    };
    view! { <TextField label=line.label value=value on_change=typed /> }.into_any()
}

//! In the picture: the wish for the sun in it, and what the lens takes in at the instant shown.

use leptos::prelude::*;
use slantlight::plan::shot::in_frame::{WISHES, in_frame};
use slantlight::plan::shot::words as shot_words;

use super::day::{Day, NOWHERE};
use super::shown::Shown;
use crate::app::parts::{Fold, Lines, Segmented};

/// Sun, windows and shadows in the picture.
#[component]
pub fn InPicture(shown: Shown) -> impl IntoView {
    let chosen = Signal::derive(move || {
        let wish = shown.with(|set_up| set_up.wish.in_picture).unwrap_or_default();
        WISHES.iter().position(|(one, _)| *one == wish).unwrap_or(0)
    });
    let choose = move |place: usize| {
        if let Some((wish, _)) = WISHES.get(place) {
            shown.change(|set_up| set_up.wish.in_picture = *wish);
        }
    };
    view! {
        <Fold label="In the picture">
            <Segmented
                label="Sun in the picture"
                names=WISHES.map(|(_, name)| name.to_owned()).to_vec()
                chosen=chosen
                on_choose=choose
            />
            <Lines lines=Signal::derive(move || lines(shown)) />
        </Fold>
    }
}

fn lines(shown: Shown) -> Vec<String> {
    let found = Day::of(shown).and_then(|day| {
        let height = shown.with(|set_up| set_up.lens.height)?;
        let found = in_frame(&day.sun, &day.stage, height, (day.at, day.whole))?;
        Some(shot_words::frame(&found, &day.stage, shown.store.settings.get().clock))
    });
    found.unwrap_or_else(|| vec![NOWHERE.to_owned()])
}

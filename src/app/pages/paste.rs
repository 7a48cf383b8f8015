//! A position pasted in any form; what can be read in two ways is asked, what cannot be read is said.

use leptos::prelude::*;
use slantlight::place::coordinates::{self, CoordinateError, Trouble};
use slantlight::place::site::Site;
use slantlight::units::Metres;
use slantlight::words;

use crate::app::parts::Area;
use crate::app::pasting::on_forwarded;

/// A field to paste into, and the button that reads it.
#[component]
pub fn PastePosition(
    /// Called with the position and how exact the text says it is.
    #[prop(into)]
    on_found: Callback<(Site, Option<Metres>)>,
    /// A text that was pasted elsewhere and is to be read here.
    #[prop(optional)]
    forwarded: Option<RwSignal<String>>,
) -> impl IntoView {
    let text = RwSignal::new(String::new());
    let error = RwSignal::new(None::<CoordinateError>);
    let read = move || match coordinates::parse(&text.get_untracked()) {
        Ok(found) => {
            error.set(None);
            text.set(String::new());
            on_found.run((found.site, found.accuracy));
        }
        Err(why) => error.set(Some(why)),
    };
    if let Some(forwarded) = forwarded {
        on_forwarded(forwarded, move |pasted| {
            text.set(pasted);
            read();
        });
    }
    let take = move |site: Site| {
        error.set(None);
        text.set(String::new());
        on_found.run((site, None));
    };
    let choice = move |site: Site| {
        view! { <button type="button" class="button wide" on:click=move |_| take(site)>{words::position(site)}</button> }
    };
    let trouble = move || {
        error.get().map(|error| {
            let choices = choices(&error.trouble).into_iter().map(choice).collect_view();
            view! { <p class="field-error" role="alert">{sentence(&error)}</p> {choices} }
        })
    };
    view! {
        <div class="stack">
            <Area label="Paste a place: coordinates in any form, a link, a message" value=text
                on_input=move |typed| { text.set(typed); error.set(None) } />
            {trouble}
            <button type="button" class="button wide" on:click=move |_| read()>"Read the pasted place"</button>
        </div>
    }
}

/// What may be meant.
fn choices(trouble: &Trouble) -> Vec<Site> {
    match trouble {
        Trouble::Ambiguous(likely) => likely.iter().copied().collect(),
        Trouble::Several(sites) => sites.clone(),
        _ => Vec::new(),
    }
}

/// What is wrong, where, and what to do.
fn sentence(error: &CoordinateError) -> String {
    let piece = &error.piece;
    match &error.trouble {
        Trouble::Empty => "There is nothing to read yet. Paste something like 40.6405, -8.6538.".to_owned(),
        Trouble::Ambiguous(Some(_)) => {
            format!("“{piece}” can be read in two ways, as its commas may mark decimals. Is this meant?")
        }
        Trouble::Ambiguous(None) => {
            format!("“{piece}” can be read in two ways. Write decimals with a point: 40.6405, -8.6538.")
        }
        Trouble::Several(_) => "There are several positions in it. Which one?".to_owned(),
        Trouble::Nothing => "There is no position in it. Write it like 40.6405, -8.6538.".to_owned(),
        Trouble::OnlyOne => {
            "Only one of latitude and longitude is there. Write both, like 40.6405, -8.6538.".to_owned()
        }
        Trouble::TooMany => {
            format!("There are too many numbers, from “{piece}” on. Write two, like 40.6405, -8.6538.")
        }
        Trouble::BadNumber => {
            format!("“{piece}” is not a number that fits there. Write it like 40.6405, -8.6538.")
        }
        Trouble::Sixty => format!("“{piece}”: minutes and seconds are less than 60."),
        Trouble::DecimalsTooEarly => format!("“{piece}”: only the last part of an angle may have decimals."),
        Trouble::SameAxis => {
            format!("“{piece}”: both are latitudes, or both longitudes. One needs N or S, the other E or W.")
        }
        Trouble::SignAndLetter => format!("“{piece}” has both a minus and a letter. Leave one of them out."),
        Trouble::OutOfRange(_) => {
            format!("“{piece}” is beyond a pole or the date line. Latitude comes first, then longitude.")
        }
        Trouble::ShortPlusCode => {
            format!(
                "“{piece}” is a short plus code, which needs its town. Paste the full one, like 8CHHJ8RW+6F."
            )
        }
        Trouble::UnknownReference => {
            format!("“{piece}” is in another reference system than WGS 84. Convert it first.")
        }
    }
}

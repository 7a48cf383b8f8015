//! The sheet, printed: plain elements made anew with each instant, so that nothing here is kept.

use leptos::prelude::*;
use slantlight::draw::ball;
use slantlight::plan::levels::sheet::{ColourRow, Offer, SideRow};

use super::shown::Lit;
use crate::app::parts::Picture;

/// Ball, headline and the four sides.
pub fn head(lit: Lit) -> Option<AnyView> {
    let sheet = lit.sheet.get()?;
    let under = sheet.under.iter().map(|line| view! { <p>{line.clone()}</p> }).collect_view();
    let view = view! {
        <div class="levels-head">
            <div class="levels-ball"><Picture drawing=Signal::stored(ball::ball(sheet.key)) decoration=true /></div>
            <div>
                <p class="levels-ratio">{sheet.headline.clone()}</p>
                {under}
            </div>
        </div>
        <ul class="rows levels-sides">{sheet.sides.iter().map(side).collect_view()}</ul>
    };
    Some(view.into_any())
}

fn side(row: &SideRow) -> AnyView {
    let width = format!("{}%", row.bar * 100.0);
    view! {
        <li class="level">
            <span class="row-text">
                <span class="row-title">{row.name.clone()}</span>
                <span class="row-sub">{row.source.clone()}</span>
            </span>
            <span class="level-bar" aria-hidden="true"><span style:width=width></span></span>
            <span class="level-value">
                <span class="level-stop">{row.t_stop.clone()}</span>
                <span class="row-sub">{row.lux.clone()}</span>
            </span>
        </li>
    }
    .into_any()
}

/// What to do for the ratio wished.
pub fn answers(lit: Lit) -> Option<AnyView> {
    let sheet = lit.sheet.get()?;
    if sheet.need.is_empty() {
        return Some(view! { <p class="soft">"Say above which ratio is wanted, and what would make it stands here."</p> }.into_any());
    }
    let first = sheet.offers.first().map(|offer| format!(": {}", offer.text)).unwrap_or_default();
    let rows = sheet.offers.iter().map(|offer| row(lit, offer)).collect_view();
    let view = view! {
        <p class="levels-need" aria-live="polite">{format!("{}{first}", sheet.need)}</p>
        <ul class="rows">{rows}</ul>
    };
    Some(view.into_any())
}

fn row(lit: Lit, offer: &Offer) -> AnyView {
    let take = offer.placed.clone().map(|placed| {
        let take = move |_| {
            let placed = placed.clone();
            lit.shown.change(move |set_up| set_up.rig.placed = placed);
        };
        let name = format!("Take: {}", offer.text);
        view! { <button type="button" class="button small" aria-label=name on:click=take>"Take"</button> }
    });
    view! {
        <li class="row-and-button">
            <span class="row-text">
                <span class="row-title">{offer.text.clone()}</span>
                <span class="row-sub">{offer.comes_to.clone()}</span>
            </span>
            {take}
        </li>
    }
    .into_any()
}

/// Colours with their swatches.
pub fn colours(lit: Lit) -> Option<AnyView> {
    let sheet = lit.sheet.get()?;
    let rows = sheet.colours.iter().map(colour).collect_view();
    let view = view! {
        <div class="section-head ruled"><h2>"Colour"</h2><span>"as the camera is balanced"</span></div>
        <ul class="rows">{rows}</ul>
        <p class="soft">{sheet.contrast.clone()}</p>
    };
    Some(view.into_any())
}

fn colour(row: &ColourRow) -> AnyView {
    view! {
        <li class="level-colour">
            <span class="level-swatch" aria-hidden="true" style:background=row.swatch.clone()></span>
            <span class="row-text">
                <span class="row-title">{row.name}</span>
                <span class="row-sub">{row.text.clone()}</span>
            </span>
        </li>
    }
    .into_any()
}

/// Sentences with their headings.
pub fn notes(lit: Lit) -> Option<AnyView> {
    let sheet = lit.sheet.get()?;
    let line =
        |(name, text): &(&'static str, String)| view! { <div><dt>{*name}</dt><dd>{text.clone()}</dd></div> };
    let view = view! {
        <div class="section-head ruled"><h2>"In this light"</h2><span></span></div>
        <dl class="notes">{sheet.notes.iter().map(line).collect_view()}</dl>
        <p class="soft">
            "Clear-sky and cloud models, no weather: one reading on the day scales them. Stops are by a flat disc, C 250."
        </p>
    };
    Some(view.into_any())
}

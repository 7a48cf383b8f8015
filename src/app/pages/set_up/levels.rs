//! Levels that a wish may ask for: a range of ratios, soft light only, the blue hour's balance with a lamp.

use leptos::prelude::*;
use slantlight::plan::levels::wished::LevelWish;

use super::shown::Shown;
use crate::app::parts::NumberField;

/// A number of the wish: its name and unit, largest value, how it is read and set. Nothing is no wish.
type Number = (&'static str, &'static str, f64, fn(&LevelWish) -> f64, fn(&mut LevelWish, f64));

const NUMBERS: [Number; 5] = [
    ("Ratio from", ": 1", 1000.0, LevelWish::lowest_ratio, LevelWish::set_lowest_ratio),
    ("Ratio to", ": 1", 1000.0, LevelWish::highest_ratio, LevelWish::set_highest_ratio),
    ("Soft only, at least", "lx", 1e5, LevelWish::soft_lux, LevelWish::set_soft_lux),
    ("Sky to match a lamp of", "lx", 1e5, LevelWish::lamp_lux, LevelWish::set_lamp_lux),
    ("within", "stops", 10.0, LevelWish::lamp_stops, LevelWish::set_lamp_stops),
];

/// Their fields.
#[component]
pub fn LevelFields(shown: Shown) -> impl IntoView {
    let field = move |(label, unit, most, read, set): Number| {
        let value =
            Signal::derive(move || shown.with(|set_up| read(&set_up.wish.levels)).unwrap_or_default());
        let change = move |to: f64| shown.change(move |set_up| set(&mut set_up.wish.levels, to));
        view! { <NumberField label=label unit=unit value=value limits=(0.0, most) decimals=1 on_change=change /> }
    };
    view! {
        <div class="fields">{NUMBERS.map(field).collect_view()}</div>
        <p class="soft">"0 asks for nothing. The search then keeps to what is asked, by the models of Stops."</p>
    }
}

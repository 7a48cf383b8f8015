//! Facts: a few values with their names, in one ruled box.

use leptos::prelude::*;

/// A value in words and its name.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fact {
    /// "13.1°".
    pub value: String,
    /// "height".
    pub name: String,
}

impl Fact {
    /// From value and name.
    pub fn new(value: impl Into<String>, name: impl Into<String>) -> Self {
        Self { value: value.into(), name: name.into() }
    }
}

/// Up to four facts side by side.
#[component]
pub fn Facts(#[prop(into)] facts: Signal<Vec<Fact>>) -> impl IntoView {
    let fact = |Fact { value, name }| view! { <div><dt>{name}</dt><dd>{value}</dd></div> };
    view! { <dl class="facts">{move || facts.get().into_iter().map(fact).collect_view()}</dl> }
}

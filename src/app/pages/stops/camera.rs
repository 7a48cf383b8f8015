//! The cameras in this light: one setting sought from the others, and what is set on each.

use leptos::prelude::*;
use slantlight::light::exposure::film::Film;
use slantlight::plan::kit::CameraSettings;
use slantlight::plan::levels::exposure::Sought;
use slantlight::plan::levels::rows::{self, CameraRow};
use slantlight::project::document::Camera;
use slantlight::project::edit::Edit;
use slantlight::units::{Degrees, Density, FrameRate, Iso, Kelvin, Metres, TStop};

use super::shown::Lit;
use crate::app::parts::{Fact, Facts, LengthField, NumberField, Segmented};

/// All cameras.
#[component]
pub fn Cameras(lit: Lit) -> impl IntoView {
    let sought = RwSignal::new(Sought::TStop);
    let store = lit.shown.store;
    let rows = move || {
        let subject = lit.subject.get()?;
        let sheet = lit.sheet.get()?;
        Some(store.desk.with(|project| {
            let cameras: Vec<(String, CameraSettings)> =
                project.cameras.iter().map(|camera| (camera.name.clone(), camera.settings)).collect();
            rows::camera_rows(&cameras, sheet.key_light, sought.get(), &subject.there)
        }))
    };
    let ids = Memo::new(move |_| {
        store.desk.with(|project| project.cameras.iter().map(|camera| camera.id.clone()).collect::<Vec<_>>())
    });
    let chosen =
        Signal::derive(move || Sought::ALL.iter().position(|one| *one == sought.get()).unwrap_or_default());
    view! {
        <section class="levels-cameras">
            <div class="section-head ruled"><h2>"Camera"</h2><span>"exposed for the key side"</span></div>
            <Segmented
                label="Find"
                names=Sought::ALL.map(|one| one.word().to_owned()).to_vec()
                chosen=chosen
                on_choose=move |at: usize| sought.set(Sought::ALL[at])
            />
            {move || rows().unwrap_or_default().into_iter().map(row).collect_view()}
            {move || ids.get().into_iter().map(|id| view! { <Settings lit=lit id=id /> }).collect_view()}
        </section>
    }
}

fn row(row: CameraRow) -> AnyView {
    let facts: Vec<Fact> = row.facts.into_iter().map(|(value, name)| Fact::new(value, name)).collect();
    let says = row.says.into_iter().map(|line| view! { <p class="soft">{line}</p> }).collect_view();
    view! {
        <h3>{row.name}</h3>
        <Facts facts=Signal::stored(facts) />
        {row.trouble.map(|trouble| view! { <p class="caution" role="note">{trouble}</p> })}
        {says}
    }
    .into_any()
}

/// What is set on one camera, folded.
#[component]
fn Settings(lit: Lit, id: String) -> impl IntoView {
    let store = lit.shown.store;
    let id = StoredValue::new(id);
    let camera = move || {
        store.desk.with(|project| {
            id.with_value(|id| {
                project.cameras.iter().find(|camera| camera.id == *id).map(|camera| Camera::clone(camera))
            })
        })
    };
    let settings = move || camera().map(|camera| camera.settings).unwrap_or_default();
    let change = move |change: &dyn Fn(&mut CameraSettings)| {
        if let Some(mut camera) = untrack(camera) {
            change(&mut camera.settings);
            store.edit(Edit::PutCamera(camera));
        }
    };
    let number = move |read: fn(&CameraSettings) -> f64| Signal::derive(move || read(&settings()));
    let units = Signal::derive(move || store.settings.get().units);
    let fixed = Signal::derive(move || usize::from(settings().shutter_is_fixed));
    let films = || -> Vec<String> {
        core::iter::once("sensor".to_owned()).chain(Film::ALL.map(|film| film.word().to_owned())).collect()
    };
    let film = Signal::derive(move || {
        settings().film.and_then(|film| Film::ALL.iter().position(|one| *one == film)).map_or(0, |at| at + 1)
    });
    view! {
        <details class="fold">
            <summary>{move || format!("Set {}", camera().map(|camera| camera.name).unwrap_or_default())}</summary>
            <div class="fields">
                <NumberField label="ISO" value=number(|one| one.iso.iso()) limits=(1.0, 1e6) decimals=0
                    on_change=move |to| change(&|one| one.iso = Iso::clamped(to)) />
                <NumberField label="Frames a second" value=number(|one| one.rate.fps()) limits=(0.01, 10_000.0) decimals=3
                    on_change=move |to| change(&|one| one.rate = FrameRate::clamped(to)) />
                <NumberField label="Shutter" unit="°" value=number(|one| one.shutter.degrees()) limits=(0.1, 360.0) decimals=1
                    on_change=move |to| change(&|one| one.shutter = Degrees::from_degrees(to)) />
                <NumberField label="T-stop set" value=number(|one| one.t_stop.number()) limits=(0.5, 64.0) decimals=1
                    on_change=move |to| change(&|one| one.t_stop = TStop::clamped(to)) />
                <NumberField label="Slowest lens, T" value=number(|one| one.slowest_lens.number()) limits=(0.5, 64.0) decimals=1
                    on_change=move |to| change(&|one| one.slowest_lens = TStop::clamped(to)) />
                <NumberField label="ND, density" value=number(|one| one.nd.density()) limits=(0.0, 6.0) decimals=1
                    on_change=move |to| change(&|one| one.nd = Density::from_density(to)) />
                <NumberField label="Balanced to" unit="K" value=number(|one| one.balance.kelvin()) limits=(1500.0, 20_000.0) decimals=0
                    on_change=move |to| change(&|one| one.balance = Kelvin::clamped(to)) />
                <Segmented label="Shutter can be set" names=vec!["yes".to_owned(), "no".to_owned()] chosen=fixed
                    on_choose=move |at: usize| change(&|one| one.shutter_is_fixed = at == 1) />
                <Segmented label="Runs on" names=films() chosen=film
                    on_choose=move |at: usize| change(&|one| one.film = at.checked_sub(1).map(|at| Film::ALL[at])) />
                <LengthField label="Film in a load" value=Signal::derive(move || settings().load) units=units limits=(0.0, 1000.0)
                    on_change=move |to: Metres| change(&|one| one.load = to) />
            </div>
        </details>
    }
}

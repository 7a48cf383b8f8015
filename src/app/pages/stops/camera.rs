//! The cameras in this light: one setting sought from the others, and what is set on each.

use leptos::prelude::*;
use slantlight::light::exposure::film::Film;
use slantlight::plan::kit::CameraSettings;
use slantlight::plan::levels::exposure::Sought;
use slantlight::plan::levels::ramp::Ahead;
use slantlight::plan::levels::rows::{self, CameraRow};
use slantlight::project::document::{Camera, Project};
use slantlight::project::edit::Edit;
use slantlight::project::start;
use slantlight::units::{Degrees, Density, FrameRate, Iso, Kelvin, Metres, TStop};

use super::shown::Lit;
use crate::app::parts::{Entry, Fact, Facts, LengthField, NumberField, Segmented, TextField};

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
            let clock = store.settings.get().clock;
            let ahead = Ahead { samples: &sheet.ahead, zone: &subject.zone, clock };
            rows::camera_rows(&cameras, sheet.key_light, sought.get(), &subject.there, ahead)
        }))
    };
    let ids = Memo::new(move |_| {
        store.desk.with(|project| project.cameras.iter().map(|camera| camera.id.clone()).collect::<Vec<_>>())
    });
    let add = move |_| {
        let project = store.desk.latest();
        let id = store.fresh_id();
        store.edit(Edit::PutCamera(start::another_camera(&id, &project.cameras)));
    };
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
            <For each=move || ids.get() key=String::clone let:id><Settings lit=lit id=id /></For>
            <Show when=move || ids.with(|ids| ids.len() > 1)><Which lit=lit ids=ids /></Show>
            <p class="spaced"><button type="button" class="button wide" on:click=add>"Add a camera"</button></p>
        </section>
    }
}

fn row(row: CameraRow) -> AnyView {
    let facts: Vec<Fact> = row.facts.into_iter().map(|(value, name)| Fact::new(value, name)).collect();
    let step =
        |(at, stop): (String, String)| view! { <li><span class="soft">{at}</span>" "<b>{stop}</b></li> };
    let ramp = (!row.ramp.is_empty()).then(|| {
        view! {
            <p class="soft">"A stop less each time:"</p>
            <ol class="ramp">{row.ramp.into_iter().map(step).collect_view()}</ol>
        }
    });
    let says = row.says.into_iter().map(|line| view! { <p class="soft">{line}</p> }).collect_view();
    view! {
        <h3>{row.name}</h3>
        <Facts facts=Signal::stored(facts) />
        {row.trouble.map(|trouble| view! { <p class="caution" role="note">{trouble}</p> })}
        {ramp}
        {says}
    }
    .into_any()
}

/// Which of several cameras this set-up is shot with; the levels' T-stops are that one's.
#[component]
fn Which(lit: Lit, ids: Memo<Vec<String>>) -> impl IntoView {
    let store = lit.shown.store;
    let own = move || {
        let set_up = lit.shown.with(Clone::clone)?;
        store.desk.with(|project| project.camera_of(&set_up).map(|camera| camera.id.clone()))
    };
    let chosen = Signal::derive(move || {
        let own = own();
        ids.with(|ids| ids.iter().position(|id| Some(id) == own.as_ref())).unwrap_or_default()
    });
    let names = move || {
        store
            .desk
            .with(|project| project.cameras.iter().map(|camera| camera.name.clone()).collect::<Vec<_>>())
    };
    let choose = move |at: usize| {
        let id = ids.with_untracked(|ids| ids.get(at).cloned());
        lit.shown.change(move |set_up| set_up.lens.camera = id);
    };
    move || view! { <Segmented label="This set-up is shot with" names=names() chosen=chosen on_choose=choose /> }
}

/// What is set on one camera, folded.
#[component]
fn Settings(lit: Lit, id: String) -> impl IntoView {
    let store = lit.shown.store;
    let id = StoredValue::new(id);
    let read = move |project: &Project| id.with_value(|id| project.camera(id).cloned());
    let camera = move || store.desk.with(read);
    let settings = move || camera().map(|camera| camera.settings).unwrap_or_default();
    let put = move |change: &dyn Fn(&mut Camera)| {
        // From the latest root: two changes may come within one frame.
        if let Some(mut camera) = read(&store.desk.latest()) {
            change(&mut camera);
            store.edit(Edit::PutCamera(camera));
        }
    };
    let change = move |change: &dyn Fn(&mut CameraSettings)| put(&|camera| change(&mut camera.settings));
    let name = Signal::derive(move || camera().map(|camera| camera.name).unwrap_or_default());
    let size = move |read: fn(&Camera) -> f64| {
        Signal::derive(move || camera().as_ref().map(read).unwrap_or_default())
    };
    let is_only = move || store.desk.with(|project| project.cameras.len() < 2);
    let remove = move |_| {
        let says = format!("{} removed", name.get_untracked());
        store.edit_with_undo(Edit::RemoveCamera(id.get_value()), says);
    };
    let number = move |read: fn(&CameraSettings) -> f64| Signal::derive(move || read(&settings()));
    let units = Signal::derive(move || store.settings.get().units);
    let fixed = Signal::derive(move || usize::from(settings().shutter_is_fixed));
    let film = Signal::derive(move || {
        settings().film.and_then(|film| Film::ALL.iter().position(|one| *one == film)).map_or(0, |at| at + 1)
    });
    view! {
        <Entry title=Signal::derive(move || format!("Set {}", name.get()))>
            <TextField label="Name" value=name on_change=move |text: String| put(&|camera| camera.name.clone_from(&text)) />
            <NumberField label="Picture width" unit="mm" limits=(0.5, 300.0) value=size(|camera| camera.sensor_width_mm)
                on_change=move |mm| put(&|camera| camera.sensor_width_mm = mm) />
            <NumberField label="Picture height" unit="mm" limits=(0.5, 300.0) value=size(|camera| camera.sensor_height_mm)
                on_change=move |mm| put(&|camera| camera.sensor_height_mm = mm) />
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
            <RunsOn id=id.with_value(|id| format!("runs-on-{id}")) film=film on_choose=move |at: usize| change(&|one| one.film = at.checked_sub(1).map(|at| Film::ALL[at])) />
            <LengthField label="Film in a load" value=Signal::derive(move || settings().load) units=units limits=(0.0, 1000.0)
                on_change=move |to: Metres| change(&|one| one.load = to) />
            <Show when=move || !is_only()>
                <button type="button" class="button" on:click=remove>"Remove this camera"</button>
            </Show>
        </Entry>
    }
}

/// A sensor, or film of a gauge: too many for buttons side by side.
#[component]
fn RunsOn(id: String, film: Signal<usize>, #[prop(into)] on_choose: Callback<usize>) -> impl IntoView {
    let names = core::iter::once("a sensor").chain(Film::ALL.map(Film::word));
    let option = move |(at, name): (usize, &'static str)| {
        view! { <option value=at.to_string() selected=move || film.get() == at>{name}</option> }
    };
    let choose = move |event| {
        if let Ok(at) = event_target_value(&event).parse() {
            on_choose.run(at);
        }
    };
    view! {
        <div class="field">
            <label for=id.clone()>"Runs on"</label>
            <select id=id on:change=choose>{names.enumerate().map(option).collect_view()}</select>
        </div>
    }
}

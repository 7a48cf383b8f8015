//! The set-up of the page: read as memos, changed by edits; all edits of one drag are one step of undo.

use std::sync::Arc;

use leptos::prelude::*;
use slantlight::light::relative::{InLens, LensFrame};
use slantlight::place::zone::Zone;
use slantlight::plan::stage::Stage;
use slantlight::project::document::{Scene, SetUp};
use slantlight::project::edit::Edit;
use slantlight::project::find::Standing;
use slantlight::project::stage::{self, NotReady};
use slantlight::sky::sun::Sun;
use slantlight::units::{Bearing, Vector, World};

use crate::app::store::Store;

/// The set-up of the page; cheap to copy into every closure.
#[derive(Clone, Copy)]
pub struct Shown {
    /// The store.
    pub store: Store,
    /// The set-up with its scene.
    found: Memo<Option<(Scene, SetUp)>>,
    /// What the search needs, resolved; or what is missing.
    pub stage: Memo<Result<Arc<Stage>, NotReady>>,
    drag: StoredValue<Option<u32>>,
}

impl Shown {
    /// The set-up with this id; all rooms stand by it from here on.
    pub fn of(id: String) -> Self {
        let store = Store::here();
        store.stand_by(&id);
        let by_id = id.clone();
        let found = Memo::new(move |_| {
            store.desk.with_live(|project| {
                project.set_up(&by_id).map(|(scene, set_up)| {
                    // The scene's head alone: its other set-ups are no business of this page.
                    (Scene { set_ups: Vec::new(), ..scene.clone() }, set_up.clone())
                })
            })
        });
        let stage = Memo::new(move |_| {
            store.desk.with(|project| {
                let zone = |name: &str| Zone::clone(&store.zones.named(name));
                let location = project
                    .set_up(&id)
                    .and_then(|(_, set_up)| project.location(&set_up.at.as_ref()?.location));
                let zone = zone(location.map_or("UTC", |location| &location.zone));
                stage::of_set_up(project, &id, zone).map(Arc::new)
            })
        });
        Self { store, found, stage, drag: StoredValue::new(None) }
    }

    /// Whether the project has it.
    pub fn is_there(self) -> bool {
        self.found.with(Option::is_some)
    }

    /// Reads the set-up; tracked.
    pub fn with<T>(self, read: impl FnOnce(&SetUp) -> T) -> Option<T> {
        self.found.with(|found| found.as_ref().map(|(_, set_up)| read(set_up)))
    }

    /// Reads the scene, without its set-ups; tracked.
    pub fn with_scene<T>(self, read: impl FnOnce(&Scene) -> T) -> Option<T> {
        self.found.with(|found| found.as_ref().map(|(scene, _)| read(scene)))
    }

    /// Reads where it is; tracked.
    pub fn with_standing<T>(self, read: impl FnOnce(Standing<'_>) -> T) -> Option<T> {
        let at = self.with(|set_up| set_up.at.clone())??;
        self.store.desk.with(|project| project.standing(&at).map(read))
    }

    /// "4 · Mending the sail".
    pub fn title(self) -> String {
        self.with_scene(Scene::heading).unwrap_or_else(|| "No such set-up".to_owned())
    }

    /// "Sail loft, by the bench · set-up A, 50 mm".
    pub fn subtitle(self) -> String {
        let place = self.with_standing(|standing| standing.words());
        let place = place.unwrap_or_else(|| "no place yet".to_owned());
        self.with(|set_up| format!("{place} · {}", set_up.words())).unwrap_or_default()
    }

    /// The light as the lens sees it: at the chosen instant, else the middle of the wish. Tracked.
    pub fn light(self) -> Option<Vector<InLens>> {
        if self.store.moment.is_now() {
            return self.with(SetUp::wished_light).flatten();
        }
        let stage = self.stage.get().ok()?;
        let sun = Sun::new(stage.site).apparent(self.store.moment.to_the_minute());
        (sun.z > 0.0).then(|| self.lens_sees(sun, self.with(|set_up| set_up.lens.bearing)?)).flatten()
    }

    /// A direction as the lens sees it when it looks to a bearing; tracked.
    pub fn lens_sees(self, direction: Vector<World>, lens: Bearing) -> Option<Vector<InLens>> {
        self.with(|set_up| LensFrame::new(lens, set_up.lens.tilt).sees(direction))
    }

    /// Changes the set-up: one step of undo.
    pub fn change(self, change: impl FnOnce(&mut SetUp)) {
        self.drop_it();
        if let Some(edit) = self.edited(change) {
            self.store.edit(edit);
        }
    }

    /// Changes the set-up while something is held: all until [`Self::drop_it`] is one step of undo.
    pub fn drag(self, change: impl FnOnce(&mut SetUp)) {
        let drag = self.drag.get_value().unwrap_or_else(|| self.store.desk.new_drag());
        self.drag.set_value(Some(drag));
        if let Some(edit) = self.edited(change) {
            self.store.edit_in_drag(edit, drag);
        }
    }

    /// What was held is let go.
    pub fn drop_it(self) {
        if self.drag.try_update_value(Option::take).flatten().is_some() {
            self.store.desk.end_drag();
        }
    }

    fn edited(self, change: impl FnOnce(&mut SetUp)) -> Option<Edit> {
        // From the latest root, not the one on the screen: two changes may come within one frame.
        let project = self.store.desk.latest();
        let id = self.found.with_untracked(|found| found.as_ref().map(|(_, set_up)| set_up.id.clone()))?;
        let (scene, set_up) = project.set_up(&id)?;
        let mut set_up = set_up.clone();
        change(&mut set_up);
        Some(Edit::PutSetUp { scene: scene.id.clone(), set_up: Box::new(set_up) })
    }
}

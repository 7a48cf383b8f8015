//! All entries of a list as one edit of the project.

use std::sync::Arc;

use super::cell::HourWord;
use super::entry::Entry;
use crate::plan::cutting::match_limit::MatchLimit;
use crate::plan::wish::Wish;
use crate::plan::wish::presets::PRESETS;
use crate::project::document::{Project, Scene, SetUp};
use crate::project::edit::Edit;
use crate::project::start;

/// What taking in would do.
#[derive(Clone, Debug, PartialEq)]
pub struct Taken {
    /// The one edit that does it.
    pub edit: Edit,
    /// Set-ups that are new.
    pub set_ups: usize,
    /// Scenes that are new.
    pub scenes: usize,
    /// Set-ups whose name was taken in their scene: scene, name in the list, name here.
    pub renamed: Vec<[String; 3]>,
}

/// Adds a set-up for each entry: to the scene of that number, or to a new one. `fresh_id` gives ids that are not in
/// use.
pub fn take_in(project: &Project, entries: &[Entry], mut fresh_id: impl FnMut() -> String) -> Taken {
    let mut scenes: Vec<Scene> = Vec::new();
    let mut taken = Taken {
        edit: Edit::Together { label: "take in a shot list", edits: Vec::new() },
        set_ups: 0,
        scenes: 0,
        renamed: Vec::new(),
    };
    let mut last: Option<usize> = None;
    for entry in entries {
        let at = if entry.scene.is_empty() {
            last
        } else {
            scenes.iter().position(|s| is_number(s, &entry.scene))
        };
        let at = at.unwrap_or_else(|| {
            scenes.push(scene_for(project, &scenes, entry, &mut fresh_id, &mut taken.scenes));
            scenes.len() - 1
        });
        last = Some(at);
        let scene = &mut scenes[at];
        let name = free_name(scene, &entry.set_up);
        if !entry.set_up.is_empty() && name != entry.set_up {
            taken.renamed.push([scene.number.clone(), entry.set_up.clone(), name.clone()]);
        }
        scene.set_ups.push(set_up(&fresh_id(), &name, entry));
        taken.set_ups += 1;
    }
    let edits = scenes.into_iter().map(|scene| Edit::PutScene(Box::new(scene))).collect();
    taken.edit = Edit::Together { label: "take in a shot list", edits };
    taken
}

/// The project's scene of that number as it is, or a new one.
fn scene_for(
    project: &Project,
    made: &[Scene],
    entry: &Entry,
    fresh_id: &mut impl FnMut() -> String,
    new: &mut usize,
) -> Scene {
    let known = (!entry.scene.is_empty())
        .then(|| project.scenes.iter().map(Arc::as_ref).find(|scene| is_number(scene, &entry.scene)))
        .flatten();
    known.cloned().unwrap_or_else(|| {
        *new += 1;
        let others = project.scenes.iter().map(Arc::as_ref).chain(made);
        let number = if entry.scene.is_empty() { start::free_number(others) } else { entry.scene.clone() };
        let title = if entry.title.is_empty() { format!("Scene {number}") } else { entry.title.clone() };
        Scene { id: fresh_id(), number, title, set_ups: Vec::new(), match_limit: MatchLimit::default() }
    })
}

fn is_number(scene: &Scene, number: &str) -> bool {
    scene.number.trim().to_lowercase() == number.trim().to_lowercase()
}

/// `wanted`, if no set-up of the scene has it, else the first free letter.
fn free_name(scene: &Scene, wanted: &str) -> String {
    let is_taken = |name: &str| scene.set_ups.iter().any(|set_up| set_up.name == name);
    if !wanted.is_empty() && !is_taken(wanted) {
        return wanted.to_owned();
    }
    start::letters().find(|name| !is_taken(name)).expect("there are more names than set-ups")
}

fn set_up(id: &str, name: &str, entry: &Entry) -> SetUp {
    let start = start::set_up(id, name, entry.at.clone());
    let wish = match entry.hour {
        Some(HourWord::Twilight | HourWord::Night) => blue_hour(start.wish.clone()),
        _ => start.wish.clone(),
    };
    SetUp { minutes: entry.minutes.unwrap_or(start.minutes), notes: entry.notes.clone(), wish, ..start }
}

/// A wish for the blue hour, as the preset has it.
fn blue_hour(wish: Wish) -> Wish {
    match PRESETS.iter().find(|preset| preset.id == "blue-hour") {
        Some(preset) => preset.fill(&wish),
        None => wish,
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Layout, entries, read};
    use super::*;
    use crate::project::demo;
    use crate::project::edit::apply;

    fn taken(project: &Project, text: &str) -> (Taken, Project) {
        let table = read(text).unwrap();
        let entries = entries(&table, &Layout::of(&table), project);
        let mut next = 0;
        let taken = take_in(project, &entries, || {
            next += 1;
            format!("new-{next}")
        });
        let after = apply(project, taken.edit.clone()).unwrap();
        (taken, after)
    }

    #[test]
    fn set_ups_go_to_their_scenes_old_and_new() {
        let demo = demo::project();
        let old = demo.scenes[0].number.clone();
        let (taken, after) =
            taken(&demo, &format!("Scene,Set-up,Minutes\n{old},Z,20\n99,A,30\n99,A,40\n,,50"));
        assert_eq!((taken.set_ups, taken.scenes), (4, 1));
        assert_eq!(taken.renamed, [["99", "A", "B"].map(str::to_owned)]);
        assert_eq!(after.set_ups().count(), demo.set_ups().count() + 4);
        let new = after.scenes.last().unwrap();
        assert_eq!(
            new.set_ups.iter().map(|s| (s.name.as_str(), s.minutes)).collect::<Vec<_>>(),
            [("A", 30), ("B", 40), ("C", 50)]
        );
        assert_eq!(after.scenes[0].set_ups.last().unwrap().name, "Z");
    }

    #[test]
    fn dusk_starts_with_the_blue_hour() {
        let (_, after) =
            taken(&demo::project(), "99 EXT. FERRY SLIP - DUSK - 15 min\n98 EXT. FERRY SLIP - DAY");
        let wish =
            |number: &str| after.scenes.iter().find(|s| s.number == number).unwrap().set_ups[0].wish.clone();
        assert!(wish("99").heights.to.degrees() < 0.0);
        assert!(wish("98").heights.to.degrees() > 0.0);
    }
}

//! Laws of merging: nothing is lost unasked, all of one side is that side, and any choice gives a sound project.

use std::collections::BTreeSet;
use std::sync::Arc;

use proptest::prelude::*;

use super::*;
use crate::place::room::Room;
use crate::project::document::{Camera, Location, SetUp};
use crate::project::edit::{Edit, apply};
use crate::project::restore::restore;
use crate::project::{demo, start};
use crate::units::Metres;

/// Some edits of a project; numbers choose which, of what.
fn edited(project: &Project, edits: &[(u8, u8)]) -> Project {
    edits.iter().enumerate().fold(project.clone(), |project, (turn, (kind, which))| {
        apply(&project, edit(&project, *kind, usize::from(*which), turn)).unwrap_or(project)
    })
}

fn edit(project: &Project, kind: u8, which: usize, turn: usize) -> Edit {
    let set_ups: Vec<_> = project.set_ups().collect();
    let Some((scene, set_up)) = set_ups.get(which % set_ups.len().max(1)) else {
        return Edit::SetTitle(format!("Title {which}"));
    };
    let Some(place) = project.locations.get(which % project.locations.len().max(1)) else {
        return Edit::RemoveSetUp(set_up.id.clone());
    };
    let other = project.scenes[which / 3 % project.scenes.len()].id.clone();
    let zero = Metres::default();
    match kind % 12 {
        0 => Edit::SetTitle(format!("Title {which}")),
        1 => Edit::RemoveSetUp(set_up.id.clone()),
        2 => Edit::MoveSetUp { set_up: set_up.id.clone(), scene: other, place: which % 4 },
        3 => Edit::RemoveScene(other),
        4 => Edit::RemoveLocation(place.id.clone()),
        5 => Edit::PutMark {
            location: place.id.clone(),
            room: place.rooms.first().map(|room| room.id.clone()),
            mark: start::mark(&format!("m{which}-{turn}"), &place.marks, [zero, zero]),
        },
        6 => Edit::RemoveRoom(place.rooms.first().map_or("none", |room| &room.id).to_owned()),
        7 => Edit::CopySetUp {
            set_up: set_up.id.clone(),
            id: format!("c{which}-{turn}"),
            name: "copy".to_owned(),
        },
        8 => {
            Edit::PutScene(Box::new(start::scene(project, &format!("s{which}"), &format!("u{which}-{turn}"))))
        }
        9 => match place.rooms.first() {
            Some(room) => {
                let room = Room { name: format!("Room {which}"), ..room.clone() };
                Edit::PutRoom { location: place.id.clone(), room: Box::new(room) }
            }
            None => Edit::SetTitle(format!("Roomless {which}")),
        },
        10 => Edit::PutLocation(Box::new(Location { notes: format!("Note {which}"), ..(**place).clone() })),
        _ => {
            let changed = SetUp { minutes: 1 + which as u32, ..(*set_up).clone() };
            Edit::PutSetUp { scene: scene.id.clone(), set_up: Box::new(changed) }
        }
    }
}

fn text(project: &Project) -> String {
    canonical::to_text(project)
}

/// Ids of all set-ups, scenes, rooms, marks and locations.
fn ids(project: &Project) -> BTreeSet<String> {
    let set_ups = project.set_ups().map(|(_, set_up)| set_up.id.clone());
    let scenes = project.scenes.iter().map(|scene| scene.id.clone());
    let places = project.locations.iter().flat_map(|place| {
        let rooms = place.rooms.iter().map(|room| room.id.clone());
        let marks = crate::project::find::marks(place).map(|mark| mark.id.clone());
        rooms.chain(marks).chain([place.id.clone()]).collect::<Vec<_>>()
    });
    set_ups.chain(scenes).chain(places).collect()
}

fn all(merge: &Merge, choice: Choice) -> Vec<Choice> {
    vec![choice; merge.differences.len()]
}

#[test]
fn a_change_on_one_side_is_said_once_and_in_words() {
    let here = demo::project();
    let mut there = here.clone();
    Arc::make_mut(&mut there.scenes[3]).set_ups[0].minutes = 40;
    let merge = merge(&here, &there, None);
    assert_eq!(merge.differences.len(), 1);
    let difference = &merge.differences[0];
    assert_eq!(difference.title, "Set-up A, in 4 Mending the sail");
    assert_eq!((difference.found, difference.by), (Found::Differs, By::Unknown));
    assert_eq!(difference.suggested, Choice::Here, "nothing is overwritten unasked");
    let [Line { what, here: mine, there: theirs }] = &difference.lines[..] else { panic!("{difference:?}") };
    assert_eq!((what.as_str(), theirs.as_str()), ("minutes", "40"));
    assert_eq!(*mine, here.scenes[3].set_ups[0].minutes.to_string());
}

#[test]
fn an_ancestor_tells_who_changed_what() {
    let old = demo::project();
    let here = apply(&old, Edit::SetTitle("Ours".to_owned())).unwrap();
    let gone = old.scenes[1].id.clone();
    let here = apply(&here, Edit::RemoveScene(gone)).unwrap();
    let mut there = old.clone();
    Arc::make_mut(&mut there.locations[0]).notes = "Ring twice".to_owned();
    let merge = merge(&here, &there, Some(&old));
    let said: Vec<_> = merge.differences.iter().map(|d| (d.found, d.by, d.suggested)).collect();
    assert_eq!(
        said,
        [
            (Found::Differs, By::Here, Choice::Here),
            (Found::Differs, By::There, Choice::There),
            (Found::OnlyThere, By::Here, Choice::Here),
        ]
    );
    let joined = merge.joined(&[], "n").unwrap();
    assert_eq!((joined.title.as_str(), joined.locations[0].notes.as_str()), ("Ours", "Ring twice"));
    assert_eq!(joined.scenes.len(), old.scenes.len() - 1);
}

#[test]
fn what_was_touched_there_is_not_lost_by_taking_it_away_here() {
    let old = demo::project();
    let here = apply(&old, Edit::RemoveScene(old.scenes[3].id.clone())).unwrap();
    let mut there = old.clone();
    Arc::make_mut(&mut there.scenes[3]).set_ups[0].minutes = 41;
    for (one, other) in [(&here, &there), (&there, &here)] {
        let both = merge(one, other, Some(&old));
        assert_eq!(both.differences[0].by, By::Each);
        let kept = followed(one, other, Some(&old)).unwrap();
        assert_eq!(kept.scene(&old.scenes[3].id).unwrap().set_ups[0].minutes, 41);
    }
    let gone = followed(&old, &here, Some(&old)).unwrap();
    assert_eq!(gone.scene(&old.scenes[3].id), None, "what nobody touched goes");
}

#[test]
fn both_of_a_room_stand_side_by_side() {
    let here = demo::project();
    let mut there = here.clone();
    Arc::make_mut(&mut there.locations[0]).rooms[0].name = "Attic".to_owned();
    let merge = merge(&here, &there, None);
    let joined = merge.joined(&all(&merge, Choice::Both), "new").unwrap();
    let names: Vec<_> = joined.locations[0].rooms.iter().map(|room| room.name.as_str()).collect();
    assert_eq!(names, [here.locations[0].rooms[0].name.as_str(), "Attic, taken in"]);
    assert_eq!(joined.locations[0].rooms[1].openings.len(), here.locations[0].rooms[0].openings.len());
    assert_eq!(restore(text(&joined).as_bytes()).unwrap().repairs, []);
}

#[test]
fn what_later_builds_know_is_merged_too() {
    let here = demo::project();
    let mut tree = canonical::to_tree(&here);
    tree["photographs"] = serde_json::json!([{"id": "p1", "of": "sail-loft"}]);
    tree["scenes"][0]["colour"] = serde_json::json!("blue");
    let there = restore(tree.to_string().as_bytes()).unwrap().project;
    let merge = merge(&here, &there, None);
    let titles: Vec<_> = merge.differences.iter().map(|d| d.title.as_str()).collect();
    assert!(titles.contains(&"Photograph") && titles.len() == 2, "{titles:?}");
    assert_eq!(text(&merge.joined(&all(&merge, Choice::There), "n").unwrap()), text(&there));
    assert!(text(&merge.joined(&[], "n").unwrap()).contains("photographs"));
}

#[test]
fn a_hostile_project_is_merged_in_time() {
    let here = demo::project();
    let camera = (*here.cameras[0]).clone();
    let mut there = here.clone();
    for number in 0..20_000 {
        there.cameras.push(Arc::new(Camera { id: format!("x{number}"), ..camera.clone() }));
    }
    let merge = merge(&here, &there, None);
    assert_eq!(merge.differences.len(), 20_000);
    assert_eq!(merge.joined(&[], "n").unwrap().cameras.len(), 20_000 + here.cameras.len());
}

fn edits() -> impl Strategy<Value = Vec<(u8, u8)>> {
    prop::collection::vec((any::<u8>(), any::<u8>()), 0..8)
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(96) })]

    #[test]
    fn with_itself_nothing_changes(edits in edits()) {
        let one = edited(&demo::project(), &edits);
        let merge = merge(&one, &one, Some(&demo::project()));
        prop_assert_eq!(&merge.differences, &[]);
        prop_assert_eq!(text(&merge.joined(&[], "n").unwrap()), text(&one));
    }

    #[test]
    fn all_of_one_side_is_that_side(ours in edits(), theirs in edits(), has_ancestor: bool) {
        let old = demo::project();
        let (here, there) = (edited(&old, &ours), edited(&old, &theirs));
        let merge = merge(&here, &there, has_ancestor.then_some(&old));
        let taken = merge.joined(&all(&merge, Choice::There), "n").unwrap();
        prop_assert_eq!(text(&taken), text(&there));
        let kept = merge.joined(&all(&merge, Choice::Here), "n").unwrap();
        prop_assert_eq!(text(&kept), text(&here));
    }

    #[test]
    fn without_an_ancestor_nothing_is_lost_unasked(ours in edits(), theirs in edits()) {
        let old = demo::project();
        let (here, there) = (edited(&old, &ours), edited(&old, &theirs));
        for choice in [None, Some(Choice::Both)] {
            let merge = merge(&here, &there, None);
            let choices = choice.map(|choice| all(&merge, choice)).unwrap_or_default();
            let joined = merge.joined(&choices, "n").unwrap();
            let wanted: BTreeSet<_> = ids(&here).union(&ids(&there)).cloned().collect();
            prop_assert!(ids(&joined).is_superset(&wanted));
            for (_, set_up) in here.set_ups() {
                let (_, after) = joined.set_up(&set_up.id).unwrap();
                prop_assert_eq!((after.minutes, &after.name), (set_up.minutes, &set_up.name));
            }
        }
    }

    #[test]
    fn an_edit_on_either_side_is_followed(ours in edits(), theirs in edits()) {
        let old = demo::project();
        let (here, there) = (edited(&old, &ours), edited(&old, &theirs));
        prop_assert_eq!(text(&merge(&here, &old, Some(&old)).joined(&[], "n").unwrap()), text(&here));
        let merge = merge(&old, &there, Some(&old));
        for difference in merge.differences.iter().filter(|difference| difference.found != Found::OnlyHere) {
            prop_assert_eq!((difference.by, difference.suggested), (By::There, Choice::There));
        }
    }

    #[test]
    fn two_writers_agree(ours in edits(), theirs in edits()) {
        let old = demo::project();
        let (here, there) = (edited(&old, &ours), edited(&old, &theirs));
        let agreed = agreed(&here, &there, Some(&old)).unwrap();
        prop_assert_eq!(text(&agreed), text(&super::agreed(&there, &here, Some(&old)).unwrap()));
        // Whoever hears of it then has nothing to add.
        prop_assert_eq!(text(&followed(&here, &agreed, Some(&here)).unwrap()), text(&agreed));
        prop_assert_eq!(text(&super::agreed(&old, &there, Some(&old)).unwrap()), text(&there));
    }

    #[test]
    fn any_choice_gives_a_sound_project(ours in edits(), theirs in edits(), chosen in prop::collection::vec(0u8..3, 40)) {
        let old = demo::project();
        let (here, there) = (edited(&old, &ours), edited(&old, &theirs));
        let merge = merge(&here, &there, Some(&old));
        let chosen: Vec<_> = chosen.iter().map(|n| [Choice::Here, Choice::There, Choice::Both][usize::from(*n)]).collect();
        let joined = merge.joined(&chosen, "n").unwrap();
        let restored = restore(text(&joined).as_bytes()).unwrap();
        prop_assert_eq!(&restored.repairs, &[]);
        prop_assert_eq!(restored.project, joined);
    }
}

//! Looking things up in a project by their ids, and names that are not taken yet.

use super::document::{At, Camera, Location, Project, Scene, SetUp};
use crate::light::relative::LensFrame;
use crate::place::mark::Mark;
use crate::place::room::Room;

/// All marks of a location, in the open and in its rooms.
pub fn marks(location: &Location) -> impl Iterator<Item = &Mark> {
    location.marks.iter().chain(location.rooms.iter().flat_map(|room| &room.marks))
}

/// Where a set-up is, looked up. What its ids no longer lead to is `None`.
#[derive(Clone, Copy, Debug)]
pub struct Standing<'a> {
    /// Location.
    pub location: &'a Location,
    /// Room, if it is in one.
    pub room: Option<&'a Room>,
    /// Mark, if one was chosen.
    pub mark: Option<&'a Mark>,
}

impl Project {
    /// The location with this id.
    pub fn location(&self, id: &str) -> Option<&Location> {
        self.locations.iter().find(|location| location.id == id).map(|location| &**location)
    }

    /// The room with this id, and its location.
    pub fn room(&self, id: &str) -> Option<(&Location, &Room)> {
        self.locations.iter().find_map(|location| {
            location.rooms.iter().find(|room| room.id == id).map(|room| (&**location, room))
        })
    }

    /// The scene with this id.
    pub fn scene(&self, id: &str) -> Option<&Scene> {
        self.scenes.iter().find(|scene| scene.id == id).map(|scene| &**scene)
    }

    /// The set-up with this id, and its scene.
    pub fn set_up(&self, id: &str) -> Option<(&Scene, &SetUp)> {
        self.scenes.iter().find_map(|scene| {
            scene.set_ups.iter().find(|set_up| set_up.id == id).map(|set_up| (&**scene, set_up))
        })
    }

    /// Every set-up with its scene, in the order of the script.
    pub fn set_ups(&self) -> impl Iterator<Item = (&Scene, &SetUp)> {
        self.scenes.iter().flat_map(|scene| scene.set_ups.iter().map(move |set_up| (&**scene, set_up)))
    }

    /// Where the lenses of a room's set-ups look, with their names: "scene 4, set-up A".
    pub fn lenses_in(&self, room: &str) -> Vec<(String, LensFrame)> {
        let here = |set_up: &SetUp| set_up.at.as_ref().is_some_and(|at| at.room.as_deref() == Some(room));
        let all = self.set_ups().filter(|(_, set_up)| here(set_up)).map(|(scene, set_up)| {
            let name = format!("scene {}, set-up {}", scene.number, set_up.name);
            (name, LensFrame::new(set_up.lens.bearing, set_up.lens.tilt))
        });
        all.collect()
    }

    /// A camera by its id.
    pub fn camera(&self, id: &str) -> Option<&Camera> {
        self.cameras.iter().find(|camera| camera.id == id).map(|camera| &**camera)
    }

    /// The camera of a set-up: its own, else the first.
    pub fn camera_of(&self, set_up: &SetUp) -> Option<&Camera> {
        let named = set_up.lens.camera.as_deref().and_then(|id| self.camera(id));
        named.or_else(|| self.cameras.first().map(|camera| &**camera))
    }

    /// Where `at` leads to.
    pub fn standing(&self, at: &At) -> Option<Standing<'_>> {
        let location = self.location(&at.location)?;
        let room = at.room.as_deref().and_then(|id| location.rooms.iter().find(|room| room.id == id));
        let marks = room.map_or(&location.marks, |room| &room.marks);
        let mark = at.mark.as_deref().and_then(|id| marks.iter().find(|mark| mark.id == id));
        Some(Standing { location, room, mark })
    }
}

/// "Mark 1", "Mark 2" …: the first that is not among `taken`.
pub fn free_name<'a>(stem: &str, taken: impl Iterator<Item = &'a str> + Clone) -> String {
    let numbered = (1usize..).map(|number| format!("{stem} {number}"));
    let mut free = numbered.filter(|name| !taken.clone().any(|other| other == name));
    free.next().expect("there are more numbers than names")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::demo;

    #[test]
    fn every_set_up_of_the_demo_is_found_with_its_scene() {
        let project = demo::project();
        for (scene, set_up) in project.set_ups() {
            let found = project.set_up(&set_up.id).unwrap();
            assert_eq!((&found.0.id, found.1), (&scene.id, set_up));
            let at = set_up.at.as_ref().unwrap();
            assert_eq!(project.standing(at).unwrap().location.id, at.location);
        }
    }

    #[test]
    fn names_count_on_from_those_taken() {
        assert_eq!(free_name("Mark", ["Mark 1", "Mark 3"].into_iter()), "Mark 2");
    }
}

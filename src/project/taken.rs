//! What was shot: the instant at which a set-up was taken, a note, what a meter said. Kept for the same light again.

use serde::{Deserialize, Serialize};

use super::apply::set_up_of;
use super::document::Project;
use super::edit::Missing;
use crate::units::{Instant, Lux};

/// Readings that a meter can have given, lux: from moonlight to a sun without air. Our own choice.
pub const READINGS: (f64, f64) = (0.0001, 200_000.0);

/// A set-up that was shot.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Taken {
    /// Its own among the shots of the set-up.
    pub id: String,
    /// When.
    pub at: Instant,
    /// Whatever was worth saying.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// What a meter said of the light on the face.
    #[serde(rename = "illuminance_lux", default, skip_serializing_if = "Option::is_none")]
    pub illuminance: Option<Lux>,
}

impl Taken {
    /// Whether its reading can be one.
    pub(super) fn is_sound(&self) -> bool {
        self.illuminance.is_none_or(|light| (READINGS.0..=READINGS.1).contains(&light.lux()))
    }
}

/// Keeps a shot of a set-up, or puts it in place of the one with its id; the earliest first.
pub(super) fn put(project: &mut Project, set_up: &str, shot: Taken) -> Result<(), Missing> {
    let shots = &mut set_up_of(project, set_up)?.shots;
    shots.retain(|one| one.id != shot.id);
    shots.push(shot);
    crate::order::by_key(shots, |one| one.at);
    Ok(())
}

/// Takes a shot of a set-up away.
pub(super) fn remove(project: &mut Project, set_up: &str, shot: &str) -> Result<(), Missing> {
    set_up_of(project, set_up)?.shots.retain(|one| one.id != shot);
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::edit::{Edit, apply};
    use crate::project::{canonical, demo, restore};

    fn shot(id: &str, at: &str, lux: Option<f64>) -> Edit {
        let shot = Taken {
            id: id.to_owned(),
            at: Instant::parse(at).unwrap(),
            note: "thin cloud".to_owned(),
            illuminance: lux.map(Lux::from_lux),
        };
        Edit::PutShot { set_up: "set-up-4a".to_owned(), shot }
    }

    #[test]
    fn shots_are_kept_in_the_order_they_were_taken() {
        let project = apply(&demo::project(), shot("late", "2027-03-12T17:40:00Z", Some(3200.0))).unwrap();
        let project = apply(&project, shot("early", "2027-03-11T17:40:00Z", None)).unwrap();
        let ids = |project: &Project| -> Vec<String> {
            project.set_up("set-up-4a").unwrap().1.shots.iter().map(|one| one.id.clone()).collect()
        };
        assert_eq!(ids(&project), ["early", "late"]);
        let edit = Edit::RemoveShot { set_up: "set-up-4a".to_owned(), shot: "early".to_owned() };
        assert_eq!(ids(&apply(&project, edit).unwrap()), ["late"]);
        let again = apply(&project, shot("early", "2027-03-13T17:40:00Z", None)).unwrap();
        assert_eq!(ids(&again), ["late", "early"]);
    }

    #[test]
    fn shots_are_in_the_file_and_come_back() {
        let project = apply(&demo::project(), shot("one", "2027-03-11T17:40:00Z", Some(3200.0))).unwrap();
        let text = canonical::to_text(&project);
        assert!(text.contains("\"illuminance_lux\"") && text.contains("2027-03-11T17:40:00Z"), "{text}");
        let read = restore::restore(text.as_bytes()).unwrap();
        assert!(read.repairs.is_empty(), "{:?}", read.repairs);
        assert_eq!(read.project.set_up("set-up-4a"), project.set_up("set-up-4a"));
    }

    #[test]
    fn a_reading_that_cannot_be_is_mended() {
        let project = apply(&demo::project(), shot("one", "2027-03-11T17:40:00Z", Some(3200.0))).unwrap();
        let text = canonical::to_text(&project).replace("3200.0", "-5.0");
        let read = restore::restore(text.as_bytes()).unwrap();
        assert_eq!(read.repairs.len(), 1, "{:?}", read.repairs);
    }
}

//! Photographs of a scout: when each was taken in, and what it shows.
//!
//! The pictures are large, so they lie beside the project, not in it: a browser keeps each under its photograph's id, and
//! records, undo, versions and links carry the ids alone. A file carries the pictures only where somebody wishes so;
//! [`Project::with_pictures`] puts them in, [`apart`] takes them out again.

use std::collections::BTreeMap;
use std::sync::Arc;

use serde::{Deserialize, Serialize};

use super::document::{Location, Project};
use crate::units::Instant;

/// Photographs of one project. Our own choice: with pictures as long as they may be, a file stays below what is read.
pub const MOST: usize = 60;

/// Letters of one picture in base64. Our own choice: 200 kB of JPEG show what a recce has to show.
pub const LONGEST: usize = 270_000;

/// Pixels along the longer side. Our own choice: it fills a phone's screen, and a page of a printed sheet.
const LONG_SIDE: f64 = 1280.0;

/// What every JPEG begins with (`FF D8 FF`), in base64.
const BEGIN: &str = "/9j/";

/// Pictures by the ids of their photographs: JPEG in base64 (RFC 4648).
pub type Pictures = BTreeMap<String, Arc<str>>;

/// A photograph.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Photograph {
    /// Its own among all photographs, of whatever project.
    pub id: String,
    /// When it was taken in.
    pub at: Instant,
    /// What it shows.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// The picture, JPEG in base64; only in a file that carries its pictures.
    #[serde(rename = "jpeg_base64", default, skip_serializing_if = "Option::is_none")]
    pub picture: Option<Arc<str>>,
}

impl Project {
    /// All photographs.
    pub fn photographs(&self) -> impl Iterator<Item = &Photograph> {
        self.locations.iter().flat_map(|place| &place.photographs)
    }

    /// The project as a file carries it, with those of its pictures that are there.
    pub fn with_pictures(&self, pictures: &Pictures) -> Self {
        let mut project = self.clone();
        for one in each(&mut project) {
            one.picture = pictures.get(&one.id).cloned();
        }
        project
    }
}

/// A project without its pictures, and the pictures.
pub fn apart(mut project: Project) -> (Project, Pictures) {
    let pictures = each(&mut project).filter_map(|one| Some((one.id.clone(), one.picture.take()?))).collect();
    (project, pictures)
}

/// Every photograph, to be changed; locations without any stay shared.
fn each(project: &mut Project) -> impl Iterator<Item = &mut Photograph> {
    let with_some = project.locations.iter_mut().filter(|place| !place.photographs.is_empty());
    with_some.flat_map(|place| &mut Arc::make_mut(place).photographs)
}

impl Location {
    /// Says what a photograph shows.
    pub fn note_photograph(&mut self, id: &str, note: String) {
        for one in self.photographs.iter_mut().filter(|one| one.id == id) {
            one.note.clone_from(&note);
        }
    }
}

/// Whether a text can be a JPEG in base64: it begins like one, and holds no other letters.
pub fn is_jpeg(text: &str) -> bool {
    let letters = text.trim_end_matches('=').bytes();
    text.starts_with(BEGIN)
        && letters.into_iter().all(|letter| letter.is_ascii_alphanumeric() || b"+/".contains(&letter))
}

/// An address that shows a picture.
pub fn address(picture: &str) -> String {
    format!("data:image/jpeg;base64,{picture}")
}

/// Width and height of a picture that is kept, in whole pixels: the same shape, never larger than it was.
///
/// ```
/// use slantlight::project::photograph::smaller;
/// assert_eq!(smaller(4000, 3000), (1280, 960));
/// assert_eq!(smaller(600, 800), (600, 800));
/// ```
pub fn smaller(width: u32, height: u32) -> (u32, u32) {
    let scale = (LONG_SIDE / f64::from(width.max(height).max(1))).min(1.0);
    let side = |pixels: u32| ((f64::from(pixels) * scale).round() as u32).max(1);
    (side(width), side(height))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::restore::restore;
    use crate::project::{canonical, demo};

    /// The first bytes of a JPEG are enough for a test of where it goes.
    const PICTURE: &str = "/9j/4AAQSkZJRgABAQ==";

    fn photograph(id: &str) -> Photograph {
        Photograph { id: id.to_owned(), at: Instant::default(), note: "north wall".to_owned(), picture: None }
    }

    fn scouted() -> (Project, Pictures) {
        let mut project = demo::project();
        for (place, id) in [(0, "one"), (0, "two"), (2, "three")] {
            Arc::make_mut(&mut project.locations[place]).photographs.push(photograph(id));
        }
        let pictures = ["one", "three"].map(|id| (id.to_owned(), PICTURE.into()));
        (project, pictures.into())
    }

    #[test]
    fn a_file_with_pictures_comes_back_to_the_byte() {
        let (project, pictures) = scouted();
        let file = canonical::to_text(&project.with_pictures(&pictures));
        assert_eq!(file.matches("jpeg_base64").count(), 2);
        let restored = restore(file.as_bytes()).unwrap();
        assert!(restored.repairs.is_empty(), "{:?}", restored.repairs);
        let (bare, taken_out) = apart(restored.project);
        assert_eq!((&bare, &taken_out), (&project, &pictures));
        assert_eq!(canonical::to_text(&bare.with_pictures(&taken_out)), file);
        assert!(
            !canonical::to_text(&bare).contains("jpeg_base64"),
            "what the browser keeps as text is small"
        );
    }

    #[test]
    fn places_without_photographs_stay_shared() {
        let (project, pictures) = scouted();
        let filled = project.with_pictures(&pictures);
        assert!(Arc::ptr_eq(&filled.locations[1], &project.locations[1]));
        assert_eq!(filled.photographs().count(), 3);
    }

    #[test]
    fn what_is_no_picture_is_left_out_and_the_photograph_stays() {
        let (project, pictures) = scouted();
        let file = canonical::to_text(&project.with_pictures(&pictures));
        for bad in ["javascript:alert(1)", "/9j/\\\" onerror=x", "iVBORw0KGgo="] {
            let restored = restore(file.replacen(PICTURE, bad, 1).as_bytes()).unwrap();
            assert_eq!(restored.repairs.len(), 1, "{bad}: {:?}", restored.repairs);
            assert_eq!(restored.repairs[0].path, "locations[0].photographs[0].jpeg_base64");
            assert_eq!(apart(restored.project).1.len(), 1, "{bad}");
        }
    }

    #[test]
    fn sizes_keep_their_shape() {
        assert_eq!(smaller(1280, 1), (1280, 1));
        assert_eq!(smaller(10_000, 1), (1280, 1));
        assert_eq!(smaller(0, 0), (1, 1));
        assert_eq!(smaller(3000, 4000), (960, 1280));
    }
}

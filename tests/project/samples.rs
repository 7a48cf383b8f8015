//! The files of every released version, kept under `tests/data/projects`, stay readable.

use std::fs;
use std::path::{Path, PathBuf};

use slantlight::project::restore::restore;
use slantlight::project::{canonical, demo};

/// A sample file.
pub fn path(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/projects").join(name)
}

#[test]
fn every_sample_is_read_without_repair() {
    let samples: Vec<_> = fs::read_dir(path("")).unwrap().map(|entry| entry.unwrap().path()).collect();
    let samples: Vec<_> =
        samples.iter().filter(|path| path.extension().is_some_and(|e| e == "json")).collect();
    assert!(!samples.is_empty());
    for sample in samples {
        let restored = restore(&fs::read(sample).unwrap()).unwrap();
        assert_eq!(restored.repairs, [], "{}", sample.display());
        assert!(restored.project.set_ups().count() > 0, "{}", sample.display());
    }
}

#[test]
fn the_sample_of_version_1_is_the_demo_as_it_was() {
    let sample = restore(&fs::read(path("v1-demo.json")).unwrap()).unwrap().project;
    let demo = demo::project();
    assert_eq!((&sample.id, &sample.title, sample.invented), (&demo.id, &demo.title, true));
    assert_eq!((sample.locations.len(), sample.set_ups().count()), (3, 11));
    let again = restore(canonical::to_text(&sample).as_bytes()).unwrap();
    assert_eq!(again.project, sample);
}

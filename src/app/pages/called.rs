//! What a project is called, and what is in it, in words.

use slantlight::project::document::Project;
use slantlight::words;

/// A title even for a project without one.
pub fn title(project: &Project) -> String {
    if project.title.is_empty() { "Untitled".to_owned() } else { project.title.clone() }
}

/// "3 locations, 4 scenes, 9 set-ups", and photographs where there are some.
pub fn contents(project: &Project) -> String {
    let set_ups = project.set_ups().count();
    let mut counted = vec![
        words::count(project.locations.len(), "location"),
        words::count(project.scenes.len(), "scene"),
        words::count(set_ups, "set-up"),
    ];
    let photographs = project.photographs().count();
    if photographs > 0 {
        counted.push(words::count(photographs, "photograph"));
    }
    counted.join(", ")
}

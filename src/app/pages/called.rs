//! What a project is called, and what is in it, in words.

use slantlight::project::document::Project;

/// A title even for a project without one.
pub fn title(project: &Project) -> String {
    if project.title.is_empty() { "Untitled".to_owned() } else { project.title.clone() }
}

/// "3 locations, 4 scenes, 9 set-ups", and photographs where there are some.
pub fn contents(project: &Project) -> String {
    let set_ups = project.set_ups().count();
    let count = |number: usize, one: &str| format!("{number} {one}{}", if number == 1 { "" } else { "s" });
    let mut counted = vec![
        count(project.locations.len(), "location"),
        count(project.scenes.len(), "scene"),
        count(set_ups, "set-up"),
    ];
    let photographs = project.photographs().count();
    if photographs > 0 {
        counted.push(count(photographs, "photograph"));
    }
    counted.join(", ")
}

//! The one text of a project: same project, same bytes.
//!
//! Members stand in the order of their names, indented by two spaces; numbers are the shortest decimals that read
//! back to the last bit, and zero has no sign. Members this build does not know are put back where they were.

use serde_json::Value;

use super::document::Project;

/// The file of a project.
pub fn to_text(project: &Project) -> String {
    let mut text = format!("{:#}", to_tree(project));
    text.push('\n');
    text
}

/// The same without spaces, for records and links.
pub fn to_line(project: &Project) -> String {
    to_tree(project).to_string()
}

/// The tree of the file.
pub(super) fn to_tree(project: &Project) -> Value {
    let mut tree = known(project);
    project.unknown.graft(&mut tree);
    tidy(&mut tree);
    tree
}

/// The tree of what the types know.
pub(super) fn known(project: &Project) -> Value {
    serde_json::to_value(project).expect("a project's keys are text")
}

/// Takes the sign from zeros.
fn tidy(tree: &mut Value) {
    match tree {
        Value::Number(number) if number.as_f64() == Some(0.0) && number.is_f64() => *tree = 0.0.into(),
        Value::Array(entries) => entries.iter_mut().for_each(tidy),
        Value::Object(members) => members.values_mut().for_each(tidy),
        _ => {}
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::demo;
    use crate::units::Metres;
    use std::sync::Arc;

    #[test]
    fn members_stand_in_the_order_of_their_names() {
        let text = to_text(&demo::project());
        let top: Vec<_> = text.lines().filter(|line| line.starts_with("  \"")).collect();
        assert!(top.is_sorted() && top.len() == 10, "{top:?}");
        assert_eq!(to_line(&demo::project()).lines().count(), 1);
    }

    #[test]
    fn zero_has_no_sign() {
        let mut project = demo::project();
        Arc::make_mut(&mut project.locations[0]).site.elevation = Metres::from_metres(-0.0);
        assert!(!to_text(&project).contains("-0.0"));
    }
}

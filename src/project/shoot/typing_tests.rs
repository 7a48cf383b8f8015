//! Every line is read as it is written, and a shoot comes back from its file, mended where it must be.

use super::typing::{Field, groups, typed};
use crate::project::demo;
use crate::project::document::Project;
use crate::project::edit::{Edit, apply};
use crate::project::{canonical, restore};

#[test]
fn what_stands_in_a_line_may_be_typed_again() {
    let mut project = demo::project();
    let place = project.locations[0].id.clone();
    let lines = [
        (Field::Call, "0630"),
        (Field::Hours(place.clone()), "09:00-18:30"),
        (Field::Cost(place.clone()), "250"),
        (Field::Hazards(place.clone()), "wet, edge"),
        (Field::Haze(place), "20 min"),
        (Field::MealFrom, "set-up"),
        (Field::Free(0), "Rosa 09:00-17:00"),
    ];
    for (field, text) in &lines {
        project.shoot = typed(&project, field, text).unwrap();
    }
    for (_, lines) in groups(&project) {
        for line in lines.iter().filter(|line| !matches!(line.field, Field::Drive(..))) {
            assert_eq!(typed(&project, &line.field, &line.value).as_ref(), Ok(&project.shoot), "{line:?}");
        }
    }
    assert!(typed(&project, &Field::Call, "noon").is_err());
    assert!(typed(&project, &Field::Longest, "9999").is_err());
}

fn planned() -> Project {
    let before = demo::project();
    let set_up = before.scenes[0].set_ups[0].id.clone();
    let mut shoot = before.shoot.moved(&set_up, "2027-03-11T17:38:00Z".to_owned().try_into().unwrap());
    shoot.days = vec!["2027-03-11".parse().unwrap()];
    shoot.rest.minutes = 600;
    apply(&before, Edit::SetShoot { label: "plan", shoot: Box::new(shoot) }).unwrap()
}

#[test]
fn a_plan_comes_back_from_its_file() {
    let project = planned();
    let text = canonical::to_text(&project);
    let restored = restore::restore(text.as_bytes()).unwrap();
    assert_eq!((restored.project.shoot, restored.repairs.len()), (project.shoot, 0));
}

#[test]
fn a_damaged_member_falls_alone() {
    let mut tree: serde_json::Value = serde_json::from_str(&canonical::to_text(&planned())).unwrap();
    tree["shoot"]["limits"] = "as you like".into();
    let restored = restore::restore(tree.to_string().as_bytes()).unwrap();
    assert_eq!(restored.project.shoot.plan, planned().shoot.plan);
    assert!(restored.repairs.iter().any(|repair| repair.path == "shoot.limits"), "{:?}", restored.repairs);
}

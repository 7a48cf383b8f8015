//! The demo shows what the app does: each of its wishes is granted on some days of a year, through its own
//! windows and over its own hills.

use chrono::NaiveDate;
use slantlight::place::zone::Zone;
use slantlight::plan::search::slots;
use slantlight::plan::wish::DateRange;
use slantlight::project::{demo, stage};
use slantlight::sky::sun::Sun;
use slantlight::units::Duration;

#[test]
fn every_wish_of_the_demo_comes_true() {
    let project = demo::project();
    let day = |year, month, day| NaiveDate::from_ymd_opt(year, month, day).unwrap();
    let year = [DateRange { from: day(2027, 1, 1), to: day(2027, 12, 31) }];
    for (scene, set_up) in project.set_ups() {
        let stage = stage::of_set_up(&project, &set_up.id, Zone::fixed("UTC", Duration::ZERO)).unwrap();
        let slots = slots(&Sun::new(stage.site), &stage, &year);
        let mut dates: Vec<_> = slots.iter().map(|slot| slot.date).collect();
        dates.dedup();
        println!("{} {} {}: {} days", scene.number, scene.title, set_up.name, dates.len());
        assert!(dates.len() >= 20, "{} {}", scene.number, set_up.name);
    }
}

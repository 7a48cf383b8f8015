//! Rules, places and people as lines to type: what stands there, and what a typed line makes of the shoot.
//!
//! A screen shows one field for each line and knows nothing of what it means.

use chrono::{NaiveTime, Timelike};

use super::matching::{AS_SHOT, Bound, FREE};
use super::people::{free_line, read_free};
use super::problem::drive;
use super::{CountedFrom, Drive, Hazard, PlaceWork, Shoot};
use crate::plan::wish::ClockRange;
use crate::project::document::Project;

/// Something to type.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Field {
    /// Earliest call.
    Call,
    /// Latest wrap.
    Wrap,
    /// Longest day.
    Longest,
    /// Name of the meal rule.
    MealName,
    /// Longest work without a meal.
    MealWithin,
    /// Length of the meal.
    MealMinutes,
    /// What the meal is counted from.
    MealFrom,
    /// Name of the rest rule.
    RestName,
    /// Shortest rest.
    RestMinutes,
    /// Lighting before cast at a location.
    PreLight(String),
    /// Haze at a location.
    Haze(String),
    /// Wrapping out of a location.
    WrapOut(String),
    /// Hours of a location.
    Hours(String),
    /// Who passes when.
    Crowd(String),
    /// What a day costs.
    Cost(String),
    /// What to beware of.
    Hazards(String),
    /// The drive between two locations.
    Drive(String, String),
    /// A scene's match limit.
    Match(String),
    /// Somebody or something with hours, by place in the list; the place after the last is a new one.
    Free(usize),
}

/// A field with its words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// What it is.
    pub field: Field,
    /// "Longest day, minutes".
    pub label: String,
    /// What stands there.
    pub value: String,
}

/// Lines in groups, each with its title.
pub fn groups(project: &Project) -> Vec<(String, Vec<Line>)> {
    let line = |field: Field, label: &str| {
        let value = value(project, &field);
        Line { field, label: label.to_owned(), value }
    };
    let rules = vec![
        line(Field::Call, "No call before"),
        line(Field::Wrap, "No wrap after"),
        line(Field::Longest, "Longest day, minutes"),
        line(Field::MealName, "Meal rule, by its name"),
        line(Field::MealWithin, "Longest work without a meal, minutes"),
        line(Field::MealMinutes, "Meal, minutes"),
        line(Field::MealFrom, "Counted from (call or set-up)"),
        line(Field::RestName, "Rest rule, by its name"),
        line(Field::RestMinutes, "Rest between days, minutes"),
    ];
    let mut all = vec![("Rules you have agreed".to_owned(), rules)];
    for location in &project.locations {
        let of = |field: fn(String) -> Field, label: &str| line(field(location.id.clone()), label);
        let lines = vec![
            of(Field::PreLight, "Pre-light, minutes"),
            of(Field::Haze, "Haze up, minutes (0 for none)"),
            of(Field::WrapOut, "Wrap out, minutes"),
            of(Field::Hours, "Permission, hours (like 09:00-18:00)"),
            of(Field::Crowd, "Who passes when"),
            of(Field::Cost, "Cost of a day, in your money"),
            of(Field::Hazards, "Beware of (wet, edge, road)"),
        ];
        all.push((location.name.clone(), lines));
    }
    all.push(("Drives".to_owned(), drives(project, &line)));
    let free =
        (0..=project.shoot.free.len()).map(|n| line(Field::Free(n), "Like: Rosa 09:00-17:00, scenes 3, 4"));
    all.push(("People and things with hours".to_owned(), free.collect()));
    let scene = |scene: &std::sync::Arc<crate::project::document::Scene>| {
        let label = format!("{}: light must match (yes, no, or minutes of the clock)", scene.heading());
        line(Field::Match(scene.id.clone()), &label)
    };
    let scenes = project.scenes.iter().filter(|scene| scene.set_ups.len() > 1);
    all.push(("Scenes whose light must match".to_owned(), scenes.map(scene).collect()));
    all.retain(|(_, lines)| !lines.is_empty());
    all
}

fn drives(project: &Project, line: &impl Fn(Field, &str) -> Line) -> Vec<Line> {
    let all = &project.locations;
    let pairs = (0..all.len()).flat_map(|a| (a + 1..all.len()).map(move |b| (a, b)));
    let pair = |(a, b): (usize, usize)| {
        let (from, to) = (&all[a], &all[b]);
        let guess = if drive(project, &from.id, &to.id).1 { ", minutes (estimated)" } else { ", minutes" };
        let label = format!("{} – {}{guess}", from.name, to.name);
        line(Field::Drive(from.id.clone(), to.id.clone()), &label)
    };
    pairs.map(pair).collect()
}

fn value(project: &Project, field: &Field) -> String {
    let shoot = &project.shoot;
    let clock = |time: NaiveTime| format!("{:02}:{:02}", time.hour(), time.minute());
    let hours = |hours: ClockRange| format!("{}–{}", clock(hours.from), clock(hours.to));
    let place = |id: &String| shoot.place(id);
    match field {
        Field::Call => clock(shoot.limits.call),
        Field::Wrap => clock(shoot.limits.wrap),
        Field::Longest => shoot.limits.longest_minutes.to_string(),
        Field::MealName => shoot.meal.name.clone(),
        Field::MealWithin => shoot.meal.within_minutes.to_string(),
        Field::MealMinutes => shoot.meal.minutes.to_string(),
        Field::MealFrom => if shoot.meal.from == CountedFrom::Call { "call" } else { "set-up" }.to_owned(),
        Field::RestName => shoot.rest.name.clone(),
        Field::RestMinutes => shoot.rest.minutes.to_string(),
        Field::PreLight(id) => place(id).times.pre_light.to_string(),
        Field::Haze(id) => place(id).times.haze.to_string(),
        Field::WrapOut(id) => place(id).times.wrap_out.to_string(),
        Field::Hours(id) => place(id).hours.map(hours).unwrap_or_default(),
        Field::Crowd(id) => place(id).crowd,
        Field::Cost(id) => place(id).day_cost.map(|cost| cost.to_string()).unwrap_or_default(),
        Field::Hazards(id) => place(id).hazards.iter().map(|one| word(*one)).collect::<Vec<_>>().join(", "),
        Field::Drive(from, to) => drive(project, from, to).0.to_string(),
        Field::Match(scene) => {
            project.scene(scene).map(|scene| bound(shoot.bound(scene))).unwrap_or_default()
        }
        Field::Free(n) => shoot.free.get(*n).map(|free| free_line(project, free)).unwrap_or_default(),
    }
}

/// The shoot with a line typed into a field.
///
/// # Errors
/// A sentence that says what is wrong and what would be right.
pub fn typed(project: &Project, field: &Field, text: &str) -> Result<Shoot, &'static str> {
    let mut shoot = project.shoot.clone();
    let text = text.trim();
    let name = || text.chars().take(80).collect::<String>();
    match field {
        Field::Call => shoot.limits.call = time(text)?,
        Field::Wrap => shoot.limits.wrap = time(text)?,
        Field::Longest => shoot.limits.longest_minutes = minutes(text, 30, 1440)?,
        Field::MealName => shoot.meal.name = name(),
        Field::MealWithin => shoot.meal.within_minutes = minutes(text, 30, 1440)?,
        Field::MealMinutes => shoot.meal.minutes = minutes(text, 5, 240)?,
        Field::MealFrom => shoot.meal.from = counted(text)?,
        Field::RestName => shoot.rest.name = name(),
        Field::RestMinutes => shoot.rest.minutes = minutes(text, 0, 2880)?,
        Field::PreLight(id) => place(&mut shoot, id).times.pre_light = minutes(text, 0, 720)?,
        Field::Haze(id) => place(&mut shoot, id).times.haze = minutes(text, 0, 240)?,
        Field::WrapOut(id) => place(&mut shoot, id).times.wrap_out = minutes(text, 0, 720)?,
        Field::Hours(id) => {
            place(&mut shoot, id).hours = if text.is_empty() { None } else { Some(range(text)?) }
        }
        Field::Crowd(id) => place(&mut shoot, id).crowd = text.chars().take(500).collect(),
        Field::Cost(id) => {
            let cost = || text.parse().map_err(|_| "A cost is a whole number, like 250.");
            place(&mut shoot, id).day_cost = if text.is_empty() { None } else { Some(cost()?) };
        }
        Field::Hazards(id) => place(&mut shoot, id).hazards = hazards(text)?,
        Field::Drive(from, to) => {
            let is =
                |one: &Drive| (&one.from == from && &one.to == to) || (&one.from == to && &one.to == from);
            shoot.drives.retain(|one| !is(one));
            if !text.is_empty() {
                let minutes = minutes(text, 0, 600)?;
                shoot.drives.push(Drive { from: from.clone(), to: to.clone(), minutes });
            }
        }
        Field::Match(scene) => {
            shoot.matches.remove(scene);
            let usual = project.scene(scene).map(|scene| shoot.bound(scene));
            if !text.is_empty() {
                shoot.matches.insert(scene.clone(), matching(text)?);
            }
            // What holds without a word needs none.
            if project.scene(scene).map(|scene| shoot.bound(scene)) == usual {
                shoot.matches.remove(scene);
            }
        }
        Field::Free(n) if text.is_empty() => {
            if *n < shoot.free.len() {
                shoot.free.remove(*n);
            }
        }
        Field::Free(n) => {
            let free = read_free(project, text)?;
            match shoot.free.get_mut(*n) {
                Some(old) => *old = free,
                None => shoot.free.push(free),
            }
        }
    }
    // What is as usual needs no entry.
    shoot.places.retain(|_, place| *place != PlaceWork::default());
    Ok(shoot)
}

fn place<'a>(shoot: &'a mut Shoot, id: &str) -> &'a mut PlaceWork {
    shoot.places.entry(id.to_owned()).or_default()
}

fn minutes(text: &str, least: u16, most: u16) -> Result<u16, &'static str> {
    let digits = text.trim_end_matches("min").trim();
    let number = digits.parse().map_err(|_| "Minutes are a whole number, like 45.")?;
    if (least..=most).contains(&number) { Ok(number) } else { Err("So many minutes cannot be meant here.") }
}

/// "17:38" or "1738".
///
/// # Errors
/// It is no time of the clock.
pub fn time(text: &str) -> Result<NaiveTime, &'static str> {
    let digits: String = text.chars().filter(char::is_ascii_digit).collect();
    let number: u32 = digits.parse().map_err(|_| "A time looks like 17:38.")?;
    let (hour, minute) = if digits.len() > 2 { (number / 100, number % 100) } else { (number, 0) };
    NaiveTime::from_hms_opt(hour, minute, 0).ok_or("A time looks like 17:38.")
}

/// "09:00-18:00".
///
/// # Errors
/// It is no range of hours.
pub fn range(text: &str) -> Result<ClockRange, &'static str> {
    let (from, to) = text.split_once(['-', '–']).ok_or("Hours look like 09:00-18:00.")?;
    Ok(ClockRange { from: time(from)?, to: time(to)? })
}

fn counted(text: &str) -> Result<CountedFrom, &'static str> {
    match text.to_lowercase().as_str() {
        "call" => Ok(CountedFrom::Call),
        "set-up" | "setup" | "first set-up" => Ok(CountedFrom::FirstSetUp),
        _ => Err("Type call, or set-up."),
    }
}

/// "yes" for the limits of the shot, "no", or minutes of the clock.
fn bound(bound: Bound) -> String {
    match bound {
        Bound::AsShot => "yes".to_owned(),
        Bound::Free => "no".to_owned(),
        Bound::Clock(minutes) => minutes.to_string(),
    }
}

fn matching(text: &str) -> Result<u16, &'static str> {
    match text.to_lowercase().as_str() {
        "yes" => Ok(AS_SHOT),
        "no" => Ok(FREE),
        _ => minutes(text, 1, FREE - 1)
            .map_err(|_| "Type yes for the limits of the shot, no, or minutes like 45."),
    }
}

const fn word(hazard: Hazard) -> &'static str {
    match hazard {
        Hazard::Wet => "wet",
        Hazard::Edge => "edge",
        Hazard::Road => "road",
    }
}

fn hazards(text: &str) -> Result<Vec<Hazard>, &'static str> {
    let words = text.split([',', ' ']).filter(|word| !word.is_empty());
    let known = |typed: &str| {
        [Hazard::Wet, Hazard::Edge, Hazard::Road].into_iter().find(|one| word(*one) == typed.to_lowercase())
    };
    words.map(|typed| known(typed).ok_or("Type wet, edge or road.")).collect()
}

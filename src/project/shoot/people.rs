//! People and things with hours, as a line: "Rosa 09:00–17:00, scenes 3, 4".

use super::Free;
use super::typing::range;
use crate::project::document::Project;

/// The line of one.
pub fn free_line(project: &Project, free: &Free) -> String {
    let clock = |time: chrono::NaiveTime| crate::words::clock(time, crate::words::Clock::TwentyFour);
    let hours = format!("{} {}–{}", free.name, clock(free.hours.from), clock(free.hours.to));
    let needs = |set_ups: &[String]| set_ups.iter().any(|id| free.set_ups.contains(id));
    let scenes = project
        .scenes
        .iter()
        .filter(|scene| needs(&scene.set_ups.iter().map(|set_up| set_up.id.clone()).collect::<Vec<_>>()));
    let numbers: Vec<&str> = scenes.map(|scene| scene.number.as_str()).collect();
    if free.set_ups.is_empty() { hours } else { format!("{hours}, scenes {}", numbers.join(", ")) }
}

/// Reads a line; without scenes all set-ups need them.
///
/// # Errors
/// A sentence that says what is wrong.
pub fn read_free(project: &Project, text: &str) -> Result<Free, &'static str> {
    let (who, scenes) = text.split_once("scene").map_or((text, None), |(who, rest)| (who, Some(rest)));
    let who = who.trim().trim_end_matches(',').trim();
    let (name, hours) = who.rsplit_once(' ').ok_or("Like: Rosa 09:00-17:00, scenes 3, 4.")?;
    let hours = range(hours)?;
    let set_ups = match scenes {
        None => Vec::new(),
        Some(rest) => of_scenes(project, rest.trim_start_matches('s'))?,
    };
    Ok(Free { name: name.trim().chars().take(80).collect(), hours, set_ups })
}

fn of_scenes(project: &Project, numbers: &str) -> Result<Vec<String>, &'static str> {
    let numbers = numbers.split([',', ' ']).filter(|number| !number.is_empty());
    let mut found = Vec::new();
    for number in numbers {
        let scene = project.scenes.iter().find(|scene| scene.number.eq_ignore_ascii_case(number));
        let scene = scene.ok_or("There is no scene of that number.")?;
        found.extend(scene.set_ups.iter().map(|set_up| set_up.id.clone()));
    }
    Ok(found)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::demo;

    #[test]
    fn a_line_is_read_as_it_is_written() {
        let project = demo::project();
        let number = &project.scenes[1].number;
        for line in
            [format!("Rosa the sailmaker 09:00–17:00, scenes {number}"), "the boat 06:00–08:30".to_owned()]
        {
            assert_eq!(free_line(&project, &read_free(&project, &line).unwrap()), line);
        }
        assert!(read_free(&project, "Rosa").is_err() && read_free(&project, "Rosa 25:00-26:00").is_err());
        assert!(read_free(&project, "Rosa 9-17, scenes nowhere").is_err());
    }
}

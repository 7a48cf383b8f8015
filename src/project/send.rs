//! What is sent: the file of a project under a name that any system takes, and short texts for a message.
//!
//! Some systems refuse to share `.json`; the candidates are tried in order, and the last resort is plain text.
//! Whether a system takes one is the browser's to say, so that is asked elsewhere.

use super::canonical;
use super::document::{Project, SetUp};

/// Letters of a file's name before its ending. Our own choice: the shortest limit met in practice is far longer.
const LONGEST_STEM: usize = 60;

/// What stands for a title with no usable letter.
const STEM: &str = "project";

/// A file that may be sent.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Candidate {
    /// Name with its ending.
    pub name: String,
    /// Media type.
    pub media_type: &'static str,
    /// What is in it.
    pub bytes: Vec<u8>,
}

/// The files to offer, the best first: JSON, then the same as text.
pub fn candidates(project: &Project) -> [Candidate; 2] {
    let (stem, bytes) = (file_stem(&project.title), canonical::to_text(project).into_bytes());
    [(".slantlight.json", "application/json"), (".slantlight.txt", "text/plain")].map(
        |(ending, media_type)| Candidate {
            name: format!("{stem}{ending}"),
            media_type,
            bytes: bytes.clone(),
        },
    )
}

/// A title as the name of a file: no path, no control characters, nothing a file system forbids, not too long.
///
/// ```
/// use slantlight::project::send::file_stem;
/// assert_eq!(file_stem("Salt and thread"), "Salt and thread");
/// assert_eq!(file_stem("../../etc/Tide?"), "etc Tide");
/// assert_eq!(file_stem("\u{202e}..."), "project");
/// ```
pub fn file_stem(title: &str) -> String {
    let kept = title.chars().map(|letter| if is_safe(letter) { letter } else { ' ' });
    let words: Vec<String> = kept.collect::<String>().split_whitespace().map(str::to_owned).collect();
    let short: String = words.join(" ").trim_matches(is_edge).chars().take(LONGEST_STEM).collect();
    let stem = short.trim_end_matches(is_edge);
    match stem {
        "" => STEM.to_owned(),
        _ if is_reserved(stem) => format!("{STEM} {stem}"),
        _ => stem.to_owned(),
    }
}

/// Letters and digits of any script, and a few marks.
fn is_safe(letter: char) -> bool {
    letter.is_alphanumeric() || "-_.,'()&+ ".contains(letter)
}

/// What a name neither begins nor ends with: hidden files, options, what some systems cut off.
fn is_edge(letter: char) -> bool {
    ". -".contains(letter)
}

/// Names of devices, with or without an ending, that one family of systems does not give to files.
fn is_reserved(stem: &str) -> bool {
    let first = stem.split('.').next().unwrap_or("").trim_end().to_ascii_uppercase();
    let numbered = |device: &str| {
        first.strip_prefix(device).is_some_and(|rest| rest.len() == 1 && rest.as_bytes()[0].is_ascii_digit())
    };
    ["CON", "PRN", "AUX", "NUL"].contains(&first.as_str()) || numbered("COM") || numbered("LPT")
}

/// A message about a project, without the file.
pub fn project_text(project: &Project) -> String {
    let count = |number: usize, one: &str| match number {
        1 => format!("1 {one}"),
        _ => format!("{number} {one}s"),
    };
    let (locations, set_ups) = (project.locations.len(), project.set_ups().count());
    format!(
        "{}: {}, {}. The file opens in Slantlight.",
        one_line(&project.title),
        count(locations, "location"),
        count(set_ups, "set-up")
    )
}

/// A message about a set-up: scene and set-up, where, when, why. Slot and reason come in words, or not at all.
pub fn set_up_text(project: &Project, set_up: &SetUp, slot: Option<&str>, reason: Option<&str>) -> String {
    let scene = project.set_up(&set_up.id).map(|(scene, _)| scene);
    let title = scene.map(|scene| format!("{} {}", scene.number, scene.title)).unwrap_or_default();
    let head = format!("{title}, set-up {}", set_up.name);
    let lines = [Some(head), place(project, set_up), slot.map(str::to_owned), reason.map(str::to_owned)];
    let lines: Vec<String> = lines.into_iter().flatten().map(|line| one_line(&line)).collect();
    lines.join("\n")
}

/// "Sail loft, Upper floor, by the bench".
fn place(project: &Project, set_up: &SetUp) -> Option<String> {
    let standing = project.standing(set_up.at.as_ref()?)?;
    let names = [
        Some(standing.location.name.as_str()),
        standing.room.map(|room| room.name.as_str()),
        standing.mark.map(|mark| mark.name.as_str()),
    ];
    Some(names.into_iter().flatten().collect::<Vec<_>>().join(", "))
}

/// Names are the person's own text; in a message each stays on its line.
fn one_line(text: &str) -> String {
    text.split(|letter: char| letter.is_control() || letter.is_whitespace())
        .filter(|word| !word.is_empty())
        .collect::<Vec<_>>()
        .join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::demo;
    use proptest::prelude::*;

    #[test]
    fn the_demo_goes_out_under_its_title() {
        let [json, text] = candidates(&demo::project());
        assert_eq!(
            (json.name.as_str(), text.name.as_str()),
            ("Salt and thread.slantlight.json", "Salt and thread.slantlight.txt")
        );
        assert_eq!(json.bytes, text.bytes);
    }

    #[test]
    fn messages_say_what_where_when_why() {
        let project = demo::project();
        let set_up = &project.scenes[3].set_ups[0];
        let text =
            set_up_text(&project, set_up, Some("Thu 11 Mar 2027, 17:40–18:02"), Some("three-quarter back"));
        assert_eq!(
            text,
            "4 Mending the sail, set-up A\nSail loft, Upper floor, by the bench\n\
             Thu 11 Mar 2027, 17:40–18:02\nthree-quarter back"
        );
        assert_eq!(
            project_text(&project),
            "Salt and thread: 3 locations, 11 set-ups. The file opens in Slantlight."
        );
    }

    #[test]
    fn names_of_devices_are_no_names_of_files() {
        for name in ["con", "COM1", "nul.txt", "Lpt9"] {
            assert!(file_stem(name).starts_with("project "), "{name}");
        }
        assert_eq!(file_stem("Common ground"), "Common ground");
        assert_eq!(file_stem("COMÉ"), "COMÉ");
    }

    proptest! {
        #[test]
        fn no_name_leaves_its_folder(title in ".{0,90}") {
            let stem = file_stem(&title);
            prop_assert!(!stem.is_empty() && stem.chars().count() <= LONGEST_STEM + STEM.len() + 1);
            prop_assert!(!stem.contains(['/', '\\', ':', '<', '>', '"', '|', '?', '*']));
            prop_assert!(!stem.starts_with('.') && !stem.ends_with(['.', ' ']));
            prop_assert!(!stem.chars().any(char::is_control));
        }
    }
}

//! Mending one entity until its type can read it and finds it sound, or until nothing is left to mend.
//!
//! Each round reads the entity; the first fault has a path and a reason. A member that can be guessed without
//! harm gets the value of [`super::guess`], one that can be left out is left out, and where neither helps the
//! thing around it is taken instead, up to the entity itself.

use serde::de::DeserializeOwned;
use serde_json::Value;

use super::guess;
use super::path::{Place, Step, at, join, remove, shown};
use super::sound::Sound;
use crate::project::reader;
use crate::project::restore::Repair;

/// Rounds before an entity is given up. A sound file needs one; each fault costs one or two.
const ROUNDS: usize = 64;

/// Lists of points: without one of its points such a list would mean another shape, so it falls as a whole.
const SHAPES: [&str; 2] = ["floor_m", "corners"];

/// What is wrong, and where.
pub(super) struct Fault {
    /// From the entity inwards.
    pub path: Vec<Step>,
    /// Name of a member that is missing at that place.
    pub missing: Option<String>,
    /// In words.
    pub why: String,
}

/// Mends `entity`, which stands at `place` of the file. `None` if it cannot be kept; the caller takes it out.
pub(super) fn mend<T: DeserializeOwned + Sound>(
    entity: &mut Value,
    place: &Place<'_>,
    repairs: &mut Vec<Repair>,
) -> Option<T> {
    for _ in 0..ROUNDS {
        let fault = match read::<T>(entity) {
            Ok(sound) => return Some(sound),
            Err(fault) => fault,
        };
        match repair(entity, &fault) {
            Some((path, done)) => repairs.push(Repair {
                path: join(&place.to_string(), &shown(&path)),
                sentence: format!("{}: {done}.", fault.why),
            }),
            None => {
                repairs.push(Repair {
                    path: join(&place.to_string(), &shown(&fault.path)),
                    sentence: format!("{}: left out.", fault.why),
                });
                return None;
            }
        }
    }
    repairs.push(Repair {
        path: place.to_string(),
        sentence: "Too much of it is damaged: left out.".to_owned(),
    });
    None
}

/// The entity, or its first fault.
fn read<T: DeserializeOwned + Sound>(entity: &Value) -> Result<T, Fault> {
    let read: T = reader::read(entity).map_err(|(path, error)| fault(path, &error))?;
    match read.unsound() {
        None => Ok(read),
        Some((path, why)) => Err(Fault { path, missing: None, why }),
    }
}

fn fault(path: Vec<Step>, error: &serde_json::Error) -> Fault {
    let message = error.to_string();
    let missing = message.strip_prefix("missing field `").and_then(|rest| rest.split('`').next());
    Fault { path, missing: missing.map(str::to_owned), why: sentence(&message) }
}

/// The reader's words with a capital, cut where a hostile file made them long.
fn sentence(message: &str) -> String {
    let mut letters = message.chars().take(160);
    letters.next().into_iter().flat_map(char::to_uppercase).chain(letters).collect()
}

/// Mends one fault: where and what was done. `None` if the entity itself is at fault.
fn repair(entity: &mut Value, fault: &Fault) -> Option<(Vec<Step>, String)> {
    if let Some(name) = &fault.missing {
        let guess = guess::for_member(name);
        if let (Some(guess), Some(Value::Object(members))) = (guess, at(entity, &fault.path)) {
            let done = format!("{} was put in, please check it", guess_in_words(&guess));
            members.insert(name.clone(), guess);
            let mut path = fault.path.clone();
            path.push(Step::Member(name.clone()));
            return Some((path, done));
        }
    }
    let shape = fault.path.iter().position(|step| step.is_one_of(&SHAPES));
    let path = fault.path[..shape.unwrap_or(fault.path.len())].to_vec();
    replace(entity, &path).or_else(|| remove(entity, &path).then(|| (path, "left out".to_owned())))
}

/// Puts the guess in place of a member that cannot be read, unless that is what stands there.
fn replace(entity: &mut Value, path: &[Step]) -> Option<(Vec<Step>, String)> {
    let Some(Step::Member(name)) = path.last() else { return None };
    let (guess, member) = (guess::for_member(name)?, at(entity, path)?);
    if *member == guess {
        return None;
    }
    let done = format!("{} was put in, please check it", guess_in_words(&guess));
    *member = guess;
    Some((path.to_vec(), done))
}

/// Small values as they are, the others by a general word.
fn guess_in_words(guess: &Value) -> String {
    if guess.is_object() { "a plain one".to_owned() } else { guess.to_string() }
}

//! Merge: a project that comes back edited is laid beside the one that is here, entity by entity.
//!
//! What is the same is taken silently. Every difference is listed, with what each side says and what is suggested;
//! the person decides, and what is not decided stays as suggested. A suggestion never overwrites: without a common
//! ancestor it keeps what is here and adds what is new. With one, it follows the side that changed something.
//!
//! The work is done on the trees of the two files, so that entities of later builds, and members that this build does
//! not know, are merged as well. The order of the entries of a list belongs to the entity that holds the list.

mod join;
mod parts;
mod tell;

use super::canonical;
use super::document::Project;
use super::restore::RestoreError;
use parts::{Part, Parts, ROOT};
pub use tell::Line;

/// What to do about a difference.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Choice {
    /// As it is here; what is not here stays away.
    Here,
    /// As it is there; what is not there is taken away.
    There,
    /// As it is here, and what came from there beside it under an id of its own.
    Both,
}

/// On which side an entity is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Found {
    /// On both sides, and they differ.
    Differs,
    /// Only in the project that is here.
    OnlyHere,
    /// Only in the project that came.
    OnlyThere,
}

/// Who has made the difference, as far as the common ancestor tells.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum By {
    /// There is no common ancestor.
    Unknown,
    /// The project that is here was changed.
    Here,
    /// The project that came was changed.
    There,
    /// Both were.
    Each,
}

/// One entity that is not the same on both sides.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Difference {
    /// What it is, in words: "Set-up A, in 4 Mending the sail".
    pub title: String,
    /// On which side it is.
    pub found: Found,
    /// Who has made the difference.
    pub by: By,
    /// What each side says, for what is on both.
    pub lines: Vec<Line>,
    /// Whether both can be kept.
    pub can_keep_both: bool,
    /// What is done if nobody says otherwise.
    pub suggested: Choice,
    key: String,
}

/// Two projects laid side by side.
#[derive(Clone, Debug)]
pub struct Merge {
    /// What is not the same, in the order of the files.
    pub differences: Vec<Difference>,
    here: Parts,
    there: Parts,
}

/// Lays the project that came beside the one that is here; `ancestor` is what both once were, where that is known.
///
/// ```
/// use slantlight::project::{demo, merge::merge};
/// let both = merge(&demo::project(), &demo::project(), None);
/// assert!(both.differences.is_empty());
/// assert_eq!(both.joined(&[], "fresh").unwrap(), demo::project());
/// ```
pub fn merge(here: &Project, there: &Project, ancestor: Option<&Project>) -> Merge {
    let [here, there] = [here, there].map(|project| Parts::of(canonical::to_tree(project)));
    let ancestor = ancestor.map(|project| Parts::of(canonical::to_tree(project)));
    let mut differences = Vec::new();
    for key in here.keys().chain(there.keys().filter(|key| here.get(key).is_none())) {
        differences.extend(difference(key, &here, &there, ancestor.as_ref()));
    }
    Merge { differences, here, there }
}

/// What two writers agree on who knew nothing of each other: each gets the same from the other's state and its own.
/// Where both changed one entity, that of one of them stays, the same one for both.
///
/// # Errors
/// What was put together cannot be read as a project.
pub fn agreed(one: &Project, other: &Project, ancestor: Option<&Project>) -> Result<Project, RestoreError> {
    let is_first = canonical::to_line(one) > canonical::to_line(other);
    let (first, second) = if is_first { (one, other) } else { (other, one) };
    followed(first, second, ancestor)
}

/// What comes of two states whose common ancestor is known for certain: every change of either side is followed, what
/// one took away as well, unless the other has touched it.
///
/// # Errors
/// What was put together cannot be read as a project.
pub fn followed(
    here: &Project,
    there: &Project,
    ancestor: Option<&Project>,
) -> Result<Project, RestoreError> {
    let both = merge(here, there, ancestor);
    let choices = both.differences.iter().map(|difference| match difference.by {
        By::Here => Choice::Here,
        By::There => Choice::There,
        By::Each | By::Unknown => difference.suggested,
    });
    both.joined(&choices.collect::<Vec<_>>(), "")
}

/// How many entities of `one` are not the same in `other`: the candidate with the fewest is the likeliest ancestor.
pub fn distance(one: &Project, other: &Project) -> usize {
    merge(one, other, None).differences.len()
}

/// What is to be said about one entity; nothing if it is the same, or goes with what holds it.
fn difference(key: &str, here: &Parts, there: &Parts, ancestor: Option<&Parts>) -> Option<Difference> {
    let (mine, theirs) = (here.get(key), there.get(key));
    let found = match (mine, theirs) {
        (Some(mine), Some(theirs)) if same(key, mine, theirs, here, there) => return None,
        (Some(_), Some(_)) => Found::Differs,
        (Some(mine), None) if there.get(&mine.parent).is_some() => Found::OnlyHere,
        (None, Some(theirs)) if here.get(&theirs.parent).is_some() => Found::OnlyThere,
        _ => return None,
    };
    let by = ancestor.map_or(By::Unknown, |ancestor| by(key, here, there, ancestor));
    let side = if mine.is_some() { here } else { there };
    Some(Difference {
        title: tell::title(key, side),
        found,
        by,
        lines: mine.zip(theirs).map(|(mine, theirs)| tell::lines(mine, theirs)).unwrap_or_default(),
        can_keep_both: found == Found::Differs && key != ROOT,
        suggested: suggested(found, by),
        key: key.to_owned(),
    })
}

/// Whether an entity says the same on two sides, stands in the same place and holds its entries in the same order.
fn same(key: &str, one: &Part, other: &Part, here: &Parts, there: &Parts) -> bool {
    one.parent == other.parent
        && one.says_the_same(other)
        && here.shared_children(key, there).eq(there.shared_children(key, here))
}

fn by(key: &str, here: &Parts, there: &Parts, ancestor: &Parts) -> By {
    let is_on_both = here.get(key).is_some() && there.get(key).is_some();
    let changed = |side: &Parts| match (side.get(key), ancestor.get(key)) {
        (Some(now), Some(then)) if is_on_both => !same(key, now, then, side, ancestor),
        (Some(_), Some(_)) => !is_untouched(key, side, ancestor),
        (now, then) => now.is_some() != then.is_some(),
    };
    match (changed(here), changed(there)) {
        (true, false) => By::Here,
        (false, true) => By::There,
        _ => By::Each,
    }
}

/// Whether an entity and all that is inside are as they were.
fn is_untouched(key: &str, now: &Parts, then: &Parts) -> bool {
    let (Some(one), Some(other)) = (now.get(key), then.get(key)) else { return false };
    one.children == other.children
        && same(key, one, other, now, then)
        && one.children.iter().all(|child| is_untouched(child, now, then))
}

/// What is taken away on the other side stays here, and what was changed there is not lost, unless somebody says so.
const fn suggested(found: Found, by: By) -> Choice {
    match (found, by) {
        // Taken away here since, and nobody there has touched it.
        (Found::OnlyThere, By::Here) => Choice::Here,
        (Found::OnlyThere, _) | (Found::Differs, By::There) => Choice::There,
        (Found::OnlyHere | Found::Differs, _) => Choice::Here,
    }
}

#[cfg(test)]
#[path = "merge_tests.rs"]
mod merge_tests;

//! Restoring a project from the bytes of a file: read, told apart, brought up to date, mended, typed.
//!
//! Nothing here trusts the bytes. What cannot be a project is refused with a reason; what is damaged in parts is
//! mended part by part, and every repair says what was wrong, where, and what was done. Members that this build
//! does not know are kept ([`super::unknown`]). Restoring never panics and never changes what is kept already.

use core::fmt;
use std::sync::Arc;

use serde_json::Value;

use super::document::{FORMAT, Project, VERSION};
use super::unknown::Unknown;
use super::{mend, migrate, reader, reading};

/// A project, and what had to be repaired to read it.
#[derive(Clone, Debug, PartialEq)]
pub struct Restored {
    /// The project, sound in every part.
    pub project: Project,
    /// What was repaired; empty for a file that was whole.
    pub repairs: Vec<Repair>,
}

/// One repair.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Repair {
    /// Where in the file: `scenes[3].set_ups[0].minutes`.
    pub path: String,
    /// What was wrong and what was done, as a sentence.
    pub sentence: String,
}

/// Why a file is no project of ours.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum RestoreError {
    /// Larger than anything this app writes.
    TooLarge {
        /// Its size.
        bytes: usize,
        /// Largest size that is read.
        most: usize,
    },
    /// Nothing in it.
    Empty,
    /// Not text: a picture, an archive.
    NotText {
        /// First byte that is no text.
        byte: usize,
    },
    /// Nested deeper than anything this app writes.
    TooDeep {
        /// Its depth.
        depth: usize,
        /// Deepest that is read.
        most: usize,
    },
    /// Text, but no JSON.
    NotJson {
        /// Line of the fault, from 1.
        line: usize,
        /// Byte within the line.
        column: usize,
    },
    /// The end is missing.
    CutOff {
        /// Line of the fault, from 1.
        line: usize,
        /// Byte within the line.
        column: usize,
    },
    /// NaN, an infinity, or a number too large.
    NotANumber {
        /// Line of the fault, from 1.
        line: usize,
        /// Byte within the line.
        column: usize,
    },
    /// JSON of another program: the `format` member is not ours.
    Foreign,
    /// Ours, but the version is missing or makes no sense.
    NoVersion,
    /// Written by a newer build; the text is kept, so that it can be handed on unharmed.
    Newer {
        /// Version of the file.
        version: u64,
        /// Newest version this build reads.
        known: u32,
        /// The file's text.
        text: String,
    },
}

impl fmt::Display for RestoreError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooLarge { bytes, most } => {
                write!(f, "the file has {bytes} bytes, at most {most} are read")
            }
            Self::Empty => write!(f, "the file is empty"),
            Self::NotText { byte } => write!(f, "the file is not text from byte {byte} on"),
            Self::TooDeep { depth, most } => {
                write!(f, "the file is nested {depth} deep, at most {most} are read")
            }
            Self::NotJson { line, column } => write!(f, "no JSON at line {line}, column {column}"),
            Self::CutOff { line, column } => {
                write!(f, "the file ends too early at line {line}, column {column}")
            }
            Self::NotANumber { line, column } => {
                write!(f, "NaN, infinity or a number too large at line {line}, column {column}")
            }
            Self::Foreign => write!(f, "the member 'format' is not '{FORMAT}'"),
            Self::NoVersion => write!(f, "the member 'version' is not a whole number from 1"),
            Self::Newer { version, known, .. } => {
                write!(f, "the file is of version {version}, this build reads up to {known}")
            }
        }
    }
}

impl core::error::Error for RestoreError {}

/// Reads a project from the bytes of a file.
///
/// ```
/// use slantlight::project::{canonical, demo, restore::restore};
/// let restored = restore(canonical::to_text(&demo::project()).as_bytes()).unwrap();
/// assert_eq!(restored.project, demo::project());
/// assert!(restored.repairs.is_empty());
/// ```
///
/// # Errors
/// The bytes hold no project that this build can read; [`RestoreError`] says why.
pub fn restore(bytes: &[u8]) -> Result<Restored, RestoreError> {
    current(bytes).map(mended)
}

/// Reads a project that this app has kept itself, in a record whose checksum was right: taken as it stands, and
/// mended only if the types cannot read it. What a person has made is not second-guessed at every start.
///
/// # Errors
/// As [`restore`]; above all that a newer build has written it.
pub fn reopen(text: &str) -> Result<Project, RestoreError> {
    let tree = current(text.as_bytes())?;
    match reader::read::<Project>(&tree) {
        Ok(project) => Ok(with_unknown(project, &tree)),
        Err(_) => Ok(mended(tree).project),
    }
}

/// The tree of a project, brought to the present version.
fn current(bytes: &[u8]) -> Result<Value, RestoreError> {
    let (mut tree, text) = reading::tree(bytes)?;
    let version = version(&tree, text)?;
    migrate::up(&mut tree, version);
    Ok(tree)
}

fn mended(mut tree: Value) -> Restored {
    let mut repairs = Vec::new();
    let project = mend::project(&mut tree, &mut repairs);
    Restored { project: with_unknown(project, &tree), repairs }
}

fn with_unknown(mut project: Project, tree: &Value) -> Project {
    project.unknown = Arc::new(Unknown::between(tree, &project));
    project
}

/// Version of a tree, if it is ours and this build knows it.
fn version(tree: &Value, text: String) -> Result<u32, RestoreError> {
    if tree.get("format").and_then(Value::as_str) != Some(FORMAT) {
        return Err(RestoreError::Foreign);
    }
    match tree.get("version").and_then(Value::as_u64) {
        None | Some(0) => Err(RestoreError::NoVersion),
        Some(version) => match u32::try_from(version) {
            Ok(version) if version <= VERSION => Ok(version),
            _ => Err(RestoreError::Newer { version, known: VERSION, text }),
        },
    }
}

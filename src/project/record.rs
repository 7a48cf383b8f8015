//! Records: how a browser keeps a project, in an envelope that says how often it was written and whether it is whole.
//!
//! A record is one JSON object: `revision`, `written` (RFC 3339 UTC), `checksum` (CRC-32 of the body's UTF-8 bytes,
//! as in IEEE 802.3, eight hexadecimal digits) and `body`, the project's own text. A record that was cut off or
//! altered does not open. What the body says is read by the project's own reader, not here.

use core::fmt;

use serde::{Deserialize, Serialize};

use super::reader;
use crate::units::Instant;

/// The reflected polynomial of IEEE 802.3.
const POLYNOMIAL: u32 = 0xEDB8_8320;

/// A project's text in its envelope.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Record {
    /// How often the project was written; the higher one is the newer one.
    pub revision: u64,
    /// When.
    pub written: Instant,
    checksum: String,
    /// The project's text.
    pub body: String,
}

/// Why a record does not open.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotWhole {
    /// Not a record at all, or cut off.
    NoRecord,
    /// Its body is not the one that was written.
    Altered,
}

impl fmt::Display for NotWhole {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NoRecord => "the text is not a record",
            Self::Altered => "the record's body does not fit its checksum",
        })
    }
}

impl core::error::Error for NotWhole {}

impl Record {
    /// Puts a project's text into an envelope.
    ///
    /// ```
    /// # use slantlight::{project::record::Record, units::Instant};
    /// let record = Record::seal("{}".to_owned(), 4, Instant::default());
    /// assert_eq!(Record::open(&record.to_text()), Ok(record));
    /// ```
    pub fn seal(body: String, revision: u64, written: Instant) -> Self {
        Self { revision, written, checksum: checksum(&body), body }
    }

    /// Reads a record.
    ///
    /// # Errors
    /// The text is no record, or its body is not the one that was written.
    pub fn open(text: &str) -> Result<Self, NotWhole> {
        let record: Self = reader::from_text(text).ok_or(NotWhole::NoRecord)?;
        if record.checksum == checksum(&record.body) { Ok(record) } else { Err(NotWhole::Altered) }
    }

    /// As it is kept.
    pub fn to_text(&self) -> String {
        reader::to_text(self)
    }
}

/// The project's id in a record's body, whatever version the body is of.
pub fn id_in(body: &str) -> String {
    let tree: Option<serde_json::Value> = serde_json::from_str(body).ok();
    let id = tree.as_ref().and_then(|tree| tree.get("id")).and_then(serde_json::Value::as_str);
    id.unwrap_or_default().to_owned()
}

/// CRC-32 in eight hexadecimal digits.
pub(super) fn checksum(text: &str) -> String {
    format!("{:08x}", remainder(text.as_bytes()))
}

/// CRC-32.
pub(super) fn remainder(bytes: &[u8]) -> u32 {
    let remainder = bytes.iter().fold(u32::MAX, |remainder, byte| {
        (0..8).fold(remainder ^ u32::from(*byte), |bits, _| {
            if bits & 1 == 1 { (bits >> 1) ^ POLYNOMIAL } else { bits >> 1 }
        })
    });
    !remainder
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn the_published_check_value() {
        // The check value that catalogues give for CRC-32.
        assert_eq!(checksum("123456789"), "cbf43926");
    }

    proptest! {
        #[test]
        fn one_altered_byte_is_noticed(body in "[a-z0-9]{1,60}", at in 0usize..60) {
            let record = Record::seal(body.clone(), 1, Instant::default());
            let mut other = body.into_bytes();
            let at = at % other.len();
            other[at] = if other[at] == b'x' { b'y' } else { b'x' };
            let altered = Record { body: String::from_utf8(other).unwrap(), ..record.clone() };
            let outcome = Record::open(&altered.to_text());
            prop_assert_eq!(outcome == Ok(record.clone()), altered == record);
            prop_assert_eq!(outcome.is_ok(), altered == record);
        }

        #[test]
        fn a_record_that_was_cut_off_does_not_open(body in ".{0,40}", cut in 1usize..20) {
            let text = Record::seal(body, 1, Instant::default()).to_text();
            let kept: String = text.chars().take(text.chars().count() - cut).collect();
            prop_assert!(Record::open(&kept).is_err());
        }
    }
}

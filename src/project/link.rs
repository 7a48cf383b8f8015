//! A project inside an address: small enough for a message or a picture of squares, and nothing leaves the phone but
//! the address itself, because browsers do not send what stands behind `#`.
//!
//! Behind [`MARK`] stands base64url (RFC 4648, section 5, without padding) of: one byte for the kind ([`PLAIN`],
//! [`DEFLATED`]), the CRC-32 of the project's text in four bytes, the highest first, and the text, which may be
//! deflated (RFC 1951). Deflating is the browser's work; it is done outside, before [`payload`] and after [`unpack`].
//! A link is as little trusted as any other bytes.

use core::fmt;

use super::document::Project;
use super::record::remainder;
use super::restore::{RestoreError, Restored, restore};

/// What stands before the payload in the fragment.
pub const MARK: &str = "take/";

/// Most letters of a payload. Our own choice: browsers and messengers of today carry an address of this length, and
/// what a thousandfold packing could make of it is still a size that is read.
pub const MOST_LETTERS: usize = 12_000;

/// Kind of a payload whose text is as it is.
const PLAIN: u8 = 1;

/// Kind of a payload whose text is deflated.
const DEFLATED: u8 = 2;

/// Kind and checksum.
const HEAD: usize = 5;

/// The digits of base64url.
const DIGITS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/// What a link carries, as far as it can be read without inflating it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Parcel {
    /// Whether the bytes must be inflated (RFC 1951) before [`Parcel::open`].
    pub is_deflated: bool,
    /// The text, perhaps deflated.
    pub bytes: Vec<u8>,
    remainder: u32,
}

/// Why a link holds no project, or why there is no link.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LinkError {
    /// More than an address carries.
    TooLong {
        /// Its letters.
        letters: usize,
        /// Most letters.
        most: usize,
    },
    /// Not base64url.
    NotALink {
        /// First letter that does not belong there.
        letter: usize,
    },
    /// Written in a way that a newer build knows.
    Newer {
        /// Its kind.
        kind: u8,
    },
    /// Cut off or altered on its way.
    Altered,
    /// Whole, but the project in it cannot be read.
    Project(RestoreError),
}

impl fmt::Display for LinkError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooLong { letters, most } => {
                write!(f, "the link has {letters} letters, at most {most} fit")
            }
            Self::NotALink { letter } => write!(f, "letter {letter} of the link is none of base64url"),
            Self::Newer { kind } => {
                write!(f, "the link is of kind {kind}, this build reads up to {DEFLATED}")
            }
            Self::Altered => write!(f, "the link's content does not fit its checksum"),
            Self::Project(error) => write!(f, "the project in the link: {error}"),
        }
    }
}

impl core::error::Error for LinkError {}

/// The payload for a project's text, from its deflated form or, where the browser cannot deflate, from the text alone.
///
/// ```
/// use slantlight::project::{canonical, document::Project, link};
/// let text = canonical::to_line(&Project::empty("p", "Tide"));
/// let payload = link::payload(&text, None).unwrap();
/// let address = format!("https://example.org/#{}{payload}", link::MARK);
/// let parcel = link::unpack(link::find(&address).unwrap()).unwrap();
/// assert_eq!(parcel.open(&parcel.bytes).unwrap().project.title, "Tide");
/// ```
///
/// # Errors
/// It is longer than a link can be; a file does better.
pub fn payload(text: &str, deflated: Option<&[u8]>) -> Result<String, LinkError> {
    let mut bytes = vec![if deflated.is_some() { DEFLATED } else { PLAIN }];
    bytes.extend(remainder(text.as_bytes()).to_be_bytes());
    bytes.extend(deflated.unwrap_or(text.as_bytes()));
    let letters = (bytes.len() * 4).div_ceil(3);
    if letters > MOST_LETTERS {
        return Err(LinkError::TooLong { letters, most: MOST_LETTERS });
    }
    Ok(encoded(&bytes))
}

/// The payload in an address or in a message around one; `None` if there is none.
pub fn find(text: &str) -> Option<&str> {
    let (_, rest) = text.split_once(&format!("#{MARK}"))?;
    let end = rest.bytes().position(|byte| !DIGITS.contains(&byte)).unwrap_or(rest.len());
    (end > 0).then_some(&rest[..end])
}

/// Reads a payload as far as the parcel in it.
///
/// # Errors
/// It is too long, no base64url, of a newer kind, or cut off.
pub fn unpack(payload: &str) -> Result<Parcel, LinkError> {
    if payload.len() > MOST_LETTERS {
        return Err(LinkError::TooLong { letters: payload.len(), most: MOST_LETTERS });
    }
    let bytes = decoded(payload)?;
    let kind = *bytes.first().ok_or(LinkError::Altered)?;
    if kind > DEFLATED {
        return Err(LinkError::Newer { kind });
    }
    let sum = bytes.get(1..HEAD).and_then(|four| four.try_into().ok()).ok_or(LinkError::Altered)?;
    match kind {
        0 => Err(LinkError::Altered),
        _ => Ok(Parcel {
            is_deflated: kind == DEFLATED,
            bytes: bytes[HEAD..].to_vec(),
            remainder: u32::from_be_bytes(sum),
        }),
    }
}

impl Parcel {
    /// Reads the project from the parcel's text, inflated where it had to be.
    ///
    /// # Errors
    /// The text is not the one that was sent, or holds no project.
    pub fn open(&self, text: &[u8]) -> Result<Restored, LinkError> {
        if remainder(text) != self.remainder {
            return Err(LinkError::Altered);
        }
        restore(text).map_err(LinkError::Project)
    }
}

/// The part of a project that one set-up needs: its scene with it alone, its place, camera and gear. It keeps the project's
/// id, so that whoever has the project already can lay the two side by side.
pub fn excerpt(project: &Project, set_up: &str) -> Option<Project> {
    let (scene, set_up) = project.set_up(set_up)?;
    let mut scene = scene.clone();
    scene.set_ups = vec![set_up.clone()];
    let at = set_up.at.as_ref();
    let mut part = project.clone();
    part.locations.retain(|location| at.is_some_and(|at| at.location == location.id));
    let camera = project.camera_of(set_up).map(|camera| camera.id.clone());
    part.cameras.retain(|one| Some(&one.id) == camera.as_ref());
    part.kit.retain(|gear| set_up.rig.placed.iter().any(|placed| placed.gear == gear.id));
    part.scenes = vec![scene.into()];
    Some(part)
}

fn encoded(bytes: &[u8]) -> String {
    let mut text = String::with_capacity(bytes.len() * 4 / 3 + 2);
    for three in bytes.chunks(3) {
        let mut bits = 0u32;
        for place in 0..3 {
            bits = bits << 8 | u32::from(three.get(place).copied().unwrap_or(0));
        }
        for place in 0..=three.len() {
            text.push(char::from(DIGITS[(bits >> (18 - 6 * place) & 63) as usize]));
        }
    }
    text
}

fn decoded(text: &str) -> Result<Vec<u8>, LinkError> {
    let (mut bytes, mut bits, mut count) = (Vec::with_capacity(text.len() * 3 / 4), 0u32, 0u32);
    for (letter, byte) in text.bytes().enumerate() {
        let digit = DIGITS.iter().position(|digit| *digit == byte);
        let digit = digit.ok_or(LinkError::NotALink { letter: letter + 1 })?;
        bits = (bits << 6 | digit as u32) & 0xfff;
        count += 6;
        if count >= 8 {
            count -= 8;
            bytes.push((bits >> count & 0xff) as u8);
        }
    }
    Ok(bytes)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::{canonical, demo};
    use proptest::prelude::*;

    #[test]
    fn the_published_examples_of_base64() {
        // RFC 4648, section 10, without padding.
        for (bytes, text) in [("", ""), ("f", "Zg"), ("fo", "Zm8"), ("foo", "Zm9v"), ("foobar", "Zm9vYmFy")] {
            assert_eq!(encoded(bytes.as_bytes()), text);
            assert_eq!(decoded(text).unwrap(), bytes.as_bytes());
        }
        assert_eq!(encoded(&[0xfb, 0xff]), "-_8", "the digits of addresses, not of mails");
    }

    #[test]
    fn a_set_up_takes_what_it_needs_along() {
        let project = demo::project();
        let part = excerpt(&project, &project.scenes[3].set_ups[0].id).unwrap();
        assert_eq!((part.scenes.len(), part.set_ups().count(), part.locations.len()), (1, 1, 1));
        assert_eq!((&part.id, &part.title), (&project.id, &project.title));
        let restored = restore(canonical::to_line(&part).as_bytes()).unwrap();
        assert_eq!((restored.repairs, restored.project), (vec![], part));
        assert_eq!(excerpt(&project, "nowhere"), None);
    }

    #[test]
    fn what_is_too_long_or_of_later_is_refused() {
        let long = "x".repeat(MOST_LETTERS);
        assert!(matches!(payload(&long, None), Err(LinkError::TooLong { .. })));
        assert!(matches!(unpack(&"A".repeat(MOST_LETTERS + 1)), Err(LinkError::TooLong { .. })));
        assert_eq!(unpack(&encoded(&[3, 0, 0, 0, 0, 1])), Err(LinkError::Newer { kind: 3 }));
        assert_eq!(unpack(&encoded(&[0, 0, 0, 0, 0, 1])), Err(LinkError::Altered));
        assert_eq!(unpack("AQ"), Err(LinkError::Altered));
        assert_eq!(unpack("AQ=="), Err(LinkError::NotALink { letter: 3 }));
    }

    #[test]
    fn a_link_is_found_in_a_message() {
        assert_eq!(find("Look: https://example.org/#take/Zm9v, at eight"), Some("Zm9v"));
        assert_eq!(find("#take/Zm9v"), Some("Zm9v"));
        assert_eq!(find("https://example.org/#take/ and more"), None);
        assert_eq!(find("take/Zm9v"), None);
    }

    proptest! {
        #[test]
        fn bytes_come_back(bytes in prop::collection::vec(any::<u8>(), 0..200)) {
            prop_assert_eq!(decoded(&encoded(&bytes)).unwrap(), bytes);
        }

        #[test]
        fn an_altered_link_is_noticed(at in any::<prop::sample::Index>(), digit in 0usize..64) {
            let text = canonical::to_line(&crate::project::document::Project::empty("p", "Tide"));
            let mut payload = payload(&text, None).unwrap().into_bytes();
            let at = at.index(payload.len() - 1);
            let before = payload[at];
            payload[at] = DIGITS[digit];
            let altered = payload[at] != before;
            let payload = String::from_utf8(payload).unwrap();
            let opened = unpack(&payload).and_then(|parcel| parcel.open(&parcel.bytes));
            // The first digit and a half say the kind, which the checksum does not cover.
            prop_assert!(opened.is_err() || !altered || at < 2);
        }

        #[test]
        fn any_text_is_survived(text in ".{0,80}") {
            let _ = find(&format!("#take/{text}")).map(unpack);
            let _ = unpack(&text);
        }
    }
}

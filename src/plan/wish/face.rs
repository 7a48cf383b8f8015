//! What a wish asks of the light on a face, and of the sun in the picture.

use serde::{Deserialize, Serialize};

use crate::light::face::{Cheek, Pattern};

/// The light wanted on a face. What is `None` is not asked.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct FaceWish {
    /// The pattern.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pattern: Option<Pattern>,
    /// The lit cheek; asks nothing while the nose points at the lens, where neither is nearer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cheek: Option<Cheek>,
    /// Whether the sun shall shine into the eyes.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sun_in_eyes: Option<bool>,
}

impl FaceWish {
    /// Whether nothing is asked.
    pub fn is_any(&self) -> bool {
        *self == Self::default()
    }
}

/// Where the sun shall stand for the lens.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum InPicture {
    /// Wherever.
    #[default]
    Any,
    /// In the picture.
    In,
    /// Just out of it.
    JustOut,
    /// Neither.
    Out,
}

impl InPicture {
    /// Whether nothing is asked.
    pub fn is_any(&self) -> bool {
        *self == Self::Any
    }
}

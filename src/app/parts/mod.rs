//! Parts: what the pages are put together from. They know no project; values come in, wishes go out.

mod boxes;
mod buttons;
mod day_line;
mod drag;
mod entries;
mod facts;
mod fold;
mod frame;
mod length_field;
mod number_field;
mod picture;
mod rows;
mod segmented;
mod sheet;
mod slider;
mod text_field;
mod toast;
mod wish_ring;

pub use boxes::{Caution, EmptyState};
pub use buttons::{Chips, SaveButton};
pub use day_line::{Box as DayBox, DayLine};
pub use entries::{Entries, Entry, Listed};
pub use facts::{Fact, Facts};
pub use fold::{Fold, Lines};
pub use frame::{Frame, SectionHead};
pub use length_field::LengthField;
pub use number_field::{Hands, NumberField};
pub use picture::Picture;
pub use rows::ListRow;
pub use segmented::Segmented;
pub use sheet::Sheet;
pub use slider::{BearingSlider, Slider};
pub use text_field::{Area, TextField};
pub use toast::{Notes, Toasts};
pub use wish_ring::WishRing;

use std::sync::atomic::{AtomicU32, Ordering};

/// A new id for an element that a label or a sentence points to.
fn fresh_id(kind: &str) -> String {
    static COUNT: AtomicU32 = AtomicU32::new(0);
    format!("{kind}-{}", COUNT.fetch_add(1, Ordering::Relaxed))
}

//! A shot list from elsewhere: text from a spreadsheet or a message, read into set-ups.
//!
//! Nothing is lost and nothing is guessed in silence. Every cell ends in a field or in the notes, unless the person
//! leaves its column out; whatever had to be decided is said as a [`Doubt`] beside its row, before anything is
//! taken in.
//!
//! | file | does |
//! |---|---|
//! | `table` | text → rows of cells, whatever parts them |
//! | `heading` | a plain line, "4 INT. SAIL LOFT - DAY - 25 min - low sun" → cells |
//! | `column` | which column holds what |
//! | `cell` | one cell → minutes, inside or outside, hour of the day |
//! | `entry` | a row → what one set-up is to be, with its doubts |
//! | `take_in` | all entries → one edit of the project |

mod cell;
mod column;
mod entry;
mod heading;
mod table;
mod take_in;

pub use column::{COLUMNS, Column, Layout};
pub use entry::{Doubt, Entry, entries};
pub use table::{LONGEST, MOST_ROWS, Table, Unread, read};
pub use take_in::{Taken, take_in};

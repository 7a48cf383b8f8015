//! Numbers, dates and times in words, in one place.
//!
//! Every screen, drawing and file that a person reads takes its words from here. Times come in as *local* dates
//! and clock times: turning instants into them is the zone's work. Written by hand, since a formatter of dates
//! would cost the browser more than all of this.

mod angle;
mod clock;
pub mod coordinates;
mod date;
mod duration;
mod hour;
mod length;
mod light;
mod number;
mod position;
mod season;
mod sentence;
pub mod stops;

pub use angle::{bearing, bearings_from_to, compass_point, degrees, degrees_fine, degrees_from_to};
pub use clock::{Clock, clock, clock_from_to, full_hour, of_day, offset, to_ten_minutes, to_the_minute};
pub use date::{date, date_short, dates_from_to, day_of_week, month, weekday};
pub use duration::{ago, countdown, countdown_aloud, countdown_holds, duration, plus_minus};
pub use hour::hour;
pub use length::{Units, area, length, measure, per_minute, sizes, times};
pub use light::lux;
pub use number::{NotANumber, read_length, read_lengths, read_number, to_edit};
pub use position::{accuracy, position};
pub use season::{leaves, read_leaves};
pub use sentence::{capital, count};

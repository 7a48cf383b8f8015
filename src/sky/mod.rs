//! Where the light comes from. Knows Earth, instants and directions; knows nothing of rooms or wishes.
//!
//! [`solar`] is the full method, 4 µs a position. [`ephemeris`] keeps what it says about the Earth as a whole,
//! [`sun`] turns that into directions at one site, [`search`] into the spans in which the sun is in a part of the sky or above a skyline,
//! [`events`] into the times of an almanac.

mod above;
mod blocks;
pub mod declination;
pub mod delta_t;
pub mod ephemeris;
mod equinox;
pub mod events;
mod lunar;
mod lunar_fit_table;
mod lunar_table;
pub mod minutes;
pub mod moon;
pub mod moon_day;
mod noon;
mod plane;
pub mod refraction;
mod ridge;
pub mod search;
mod side;
pub mod solar;
pub mod sun;
mod turn;
pub mod wmm;
mod wmm_table;

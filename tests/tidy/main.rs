//! The rules that lints cannot see: heads, lengths, headers of tables, colours, fences between the rooms, and
//! words that belong to one machine. Each finding names file and line; each finder is shown to find.

mod faults;
mod fences;
mod files;
mod handbook;
mod lengths;
mod words;

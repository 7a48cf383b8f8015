//! The file: what a project holds, how it is read, changed, kept and sent.
//!
//! Everything here is pure: bytes in, project out; edit in, project out. Reading a clock, writing to storage and
//! asking the browser are the work of `src/app`.

pub mod agenda;
mod apply;
pub mod at_hand;
pub mod canonical;
pub mod cutting;
pub mod day_at;
pub mod demo;
pub mod document;
pub mod edit;
pub mod filed;
pub mod find;
pub mod guard;
pub mod history;
pub mod levels;
pub mod link;
mod mend;
pub mod merge;
pub mod message;
mod migrate;
pub mod paste;
pub mod photograph;
pub mod pick_up;
pub mod reader;
mod reading;
pub mod record;
pub mod replan;
pub mod rest_words;
pub mod restore;
pub mod route;
pub mod say;
pub mod scout;
pub mod scout_reply;
pub mod send;
pub mod shoot;
mod shot;
pub mod shot_list;
pub mod spot;
pub mod stage;
pub mod start;
pub mod taken;
pub mod told;
pub mod unknown;
pub mod versions;

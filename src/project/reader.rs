//! Reading a type from a JSON tree, and saying where in the tree the first fault is.
//!
//! The only way from JSON to our types: a second one (from text, or with another crate's bookkeeping) would compile
//! all of them once more. Faults are those of `serde_json`; the path leads to the value that was refused, or to the
//! object that lacks a member.

mod inside;

use core::cell::{Cell, RefCell};

use serde::de::{Deserializer, Error as _, Expected, Unexpected, Visitor};
use serde::{Deserialize, Serialize, forward_to_deserialize_any};
use serde_json::{Error, Map, Number, Value};

use self::inside::{List, Object, Variant};
use super::mend::path::Step;

/// Reads `tree`, or says where its first fault is and what it is.
///
/// # Errors
/// The tree is not that of a `T`.
pub(super) fn read<T: for<'de> Deserialize<'de>>(tree: &Value) -> Result<T, (Vec<Step>, Error)> {
    let track = Track { at: RefCell::default(), fault: Cell::default() };
    T::deserialize(Reader { value: tree, track: &track })
        .map_err(|error| (track.fault.take().unwrap_or_default(), error))
}

/// Reads a text; `None` if it is not that of a `T`.
pub fn from_text<T: for<'de> Deserialize<'de>>(text: &str) -> Option<T> {
    let tree: Value = serde_json::from_str(text).ok()?;
    read(&tree).ok()
}

/// The text of a value whose maps have texts as keys.
pub fn to_text<T: Serialize>(value: &T) -> String {
    serde_json::to_value(value).map(|tree| tree.to_string()).unwrap_or_default()
}

#[derive(Clone, Copy)]
enum Inside<'a> {
    Member(&'a str),
    Entry(usize),
}

/// Where the reading is, and where it first failed.
struct Track<'a> {
    at: RefCell<Vec<Inside<'a>>>,
    fault: Cell<Option<Vec<Step>>>,
}

impl<'a> Track<'a> {
    fn within<T>(&self, step: Inside<'a>, read: impl FnOnce() -> Result<T, Error>) -> Result<T, Error> {
        self.at.borrow_mut().push(step);
        let read = read();
        if read.is_err() {
            self.failed();
        }
        self.at.borrow_mut().pop();
        read
    }

    fn failed(&self) {
        let first = self.fault.take();
        self.fault.set(first.or_else(|| {
            let steps = self
                .at
                .borrow()
                .iter()
                .map(|step| match step {
                    Inside::Member(name) => Step::Member((*name).to_owned()),
                    Inside::Entry(index) => Step::Entry(*index),
                })
                .collect();
            Some(steps)
        }));
    }
}

/// Each kind of value is read by its own few lines: one way for all would compile lists and objects for every number.
macro_rules! texts {
    ($($method:ident)*) => {$(
        fn $method<V: Visitor<'a>>(self, visitor: V) -> Result<V::Value, Error> {
            match self.value {
                Value::String(text) => visitor.visit_borrowed_str(text),
                _ => self.refuse(&visitor),
            }
        }
    )*};
}

macro_rules! numbers {
    ($($method:ident)*) => {$(
        fn $method<V: Visitor<'a>>(self, visitor: V) -> Result<V::Value, Error> {
            match self.value {
                Value::Number(number) => self.number(number, visitor),
                _ => self.refuse(&visitor),
            }
        }
    )*};
}

#[derive(Clone, Copy)]
struct Reader<'a> {
    value: &'a Value,
    track: &'a Track<'a>,
}

impl<'a> Reader<'a> {
    fn list<V: Visitor<'a>>(self, entries: &'a [Value], visitor: V) -> Result<V::Value, Error> {
        let mut list = List { entries: entries.iter(), track: self.track, index: 0 };
        let read = visitor.visit_seq(&mut list)?;
        match list.entries.len() {
            0 => Ok(read),
            _ => Err(Error::invalid_length(entries.len(), &"fewer elements in array")),
        }
    }

    fn object<V: Visitor<'a>>(self, members: &'a Map<String, Value>, visitor: V) -> Result<V::Value, Error> {
        let mut object = Object { members: members.iter(), track: self.track, next: None };
        let read = visitor.visit_map(&mut object)?;
        match object.members.len() {
            0 => Ok(read),
            _ => Err(Error::invalid_length(members.len(), &"fewer elements in map")),
        }
    }

    fn number<V: Visitor<'a>>(self, number: &Number, visitor: V) -> Result<V::Value, Error> {
        match (number.as_u64(), number.as_i64()) {
            (Some(number), _) => visitor.visit_u64(number),
            (None, Some(number)) => visitor.visit_i64(number),
            (None, None) => visitor.visit_f64(number.as_f64().unwrap_or_default()),
        }
    }

    /// Another kind of value was wanted.
    fn refuse<T>(self, wanted: &dyn Expected) -> Result<T, Error> {
        Err(Error::invalid_type(self.unexpected(), wanted))
    }

    fn unexpected(self) -> Unexpected<'a> {
        match self.value {
            Value::Null => Unexpected::Unit,
            Value::Bool(flag) => Unexpected::Bool(*flag),
            Value::Number(number) => match (number.as_u64(), number.as_i64()) {
                (Some(number), _) => Unexpected::Unsigned(number),
                (None, Some(number)) => Unexpected::Signed(number),
                (None, None) => Unexpected::Float(number.as_f64().unwrap_or_default()),
            },
            Value::String(text) => Unexpected::Str(text),
            Value::Array(_) => Unexpected::Seq,
            Value::Object(_) => Unexpected::Map,
        }
    }
}

impl<'a> Deserializer<'a> for Reader<'a> {
    type Error = Error;

    fn deserialize_any<V: Visitor<'a>>(self, visitor: V) -> Result<V::Value, Error> {
        match self.value {
            Value::Null => visitor.visit_unit(),
            Value::Bool(flag) => visitor.visit_bool(*flag),
            Value::Number(number) => self.number(number, visitor),
            Value::String(text) => visitor.visit_borrowed_str(text),
            Value::Array(entries) => self.list(entries, visitor),
            Value::Object(members) => self.object(members, visitor),
        }
    }

    fn deserialize_option<V: Visitor<'a>>(self, visitor: V) -> Result<V::Value, Error> {
        if self.value.is_null() { visitor.visit_none() } else { visitor.visit_some(self) }
    }

    fn deserialize_newtype_struct<V: Visitor<'a>>(
        self,
        _: &'static str,
        visitor: V,
    ) -> Result<V::Value, Error> {
        visitor.visit_newtype_struct(self)
    }

    fn deserialize_enum<V: Visitor<'a>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Error> {
        match self.value {
            Value::String(name) => visitor.visit_enum(Variant { name, inside: None, track: self.track }),
            Value::Object(members) => match (members.iter().next(), members.len()) {
                (Some((name, inside)), 1) => {
                    visitor.visit_enum(Variant { name, inside: Some(inside), track: self.track })
                }
                _ => Err(Error::invalid_value(Unexpected::Map, &"map with a single key")),
            },
            _ => Err(Error::invalid_type(self.unexpected(), &"string or map")),
        }
    }

    fn deserialize_ignored_any<V: Visitor<'a>>(self, visitor: V) -> Result<V::Value, Error> {
        visitor.visit_unit()
    }

    fn deserialize_bool<V: Visitor<'a>>(self, visitor: V) -> Result<V::Value, Error> {
        match self.value {
            Value::Bool(flag) => visitor.visit_bool(*flag),
            _ => self.refuse(&visitor),
        }
    }

    texts! { deserialize_str deserialize_string deserialize_char deserialize_identifier }
    numbers! {
        deserialize_i8 deserialize_i16 deserialize_i32 deserialize_i64 deserialize_u8 deserialize_u16 deserialize_u32
        deserialize_u64 deserialize_f32 deserialize_f64
    }

    fn deserialize_seq<V: Visitor<'a>>(self, visitor: V) -> Result<V::Value, Error> {
        match self.value {
            Value::Array(entries) => self.list(entries, visitor),
            _ => self.refuse(&visitor),
        }
    }

    fn deserialize_tuple<V: Visitor<'a>>(self, _: usize, visitor: V) -> Result<V::Value, Error> {
        self.deserialize_seq(visitor)
    }

    fn deserialize_map<V: Visitor<'a>>(self, visitor: V) -> Result<V::Value, Error> {
        match self.value {
            Value::Object(members) => self.object(members, visitor),
            _ => self.refuse(&visitor),
        }
    }

    fn deserialize_struct<V: Visitor<'a>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Error> {
        self.deserialize_map(visitor)
    }

    forward_to_deserialize_any! {
        <W: Visitor<'a>>
        i128 u128 bytes byte_buf unit unit_struct tuple_struct
    }
}

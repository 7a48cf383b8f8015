//! What is inside a list, an object or a variant, one after the other.

use core::slice;

use serde::Deserialize;
use serde::de::value::{BorrowedStrDeserializer, StrDeserializer};
use serde::de::{
    DeserializeSeed, Deserializer, EnumAccess, Error as _, IntoDeserializer, MapAccess, SeqAccess,
    Unexpected, VariantAccess, Visitor,
};
use serde_json::{Error, Value, map};

use super::{Inside, Reader, Track};

/// A list, entry by entry.
pub(super) struct List<'a> {
    pub entries: slice::Iter<'a, Value>,
    pub track: &'a Track<'a>,
    pub index: usize,
}

impl<'a> SeqAccess<'a> for &mut List<'a> {
    type Error = Error;

    fn next_element_seed<T: DeserializeSeed<'a>>(&mut self, seed: T) -> Result<Option<T::Value>, Error> {
        let Some(value) = self.entries.next() else { return Ok(None) };
        let (step, reader) = (Inside::Entry(self.index), Reader { value, track: self.track });
        self.index += 1;
        self.track.within(step, || seed.deserialize(reader)).map(Some)
    }

    fn size_hint(&self) -> Option<usize> {
        Some(self.entries.len())
    }
}

/// An object, member by member.
pub(super) struct Object<'a> {
    pub members: map::Iter<'a>,
    pub track: &'a Track<'a>,
    pub next: Option<(&'a str, &'a Value)>,
}

impl<'a> MapAccess<'a> for &mut Object<'a> {
    type Error = Error;

    fn next_key_seed<T: DeserializeSeed<'a>>(&mut self, seed: T) -> Result<Option<T::Value>, Error> {
        self.next = self.members.next().map(|(name, value)| (name.as_str(), value));
        let Some((name, _)) = self.next else { return Ok(None) };
        seed.deserialize(BorrowedStrDeserializer::new(name)).map(Some)
    }

    fn next_value_seed<T: DeserializeSeed<'a>>(&mut self, seed: T) -> Result<T::Value, Error> {
        let Some((name, value)) = self.next else { return Err(Error::custom("value is missing")) };
        self.track.within(Inside::Member(name), || seed.deserialize(Reader { value, track: self.track }))
    }

    fn size_hint(&self) -> Option<usize> {
        Some(self.members.len())
    }
}

/// One of several, by its name.
pub(super) struct Variant<'a> {
    pub name: &'a str,
    pub inside: Option<&'a Value>,
    pub track: &'a Track<'a>,
}

impl<'a> EnumAccess<'a> for Variant<'a> {
    type Error = Error;
    type Variant = Self;

    fn variant_seed<T: DeserializeSeed<'a>>(self, seed: T) -> Result<(T::Value, Self), Error> {
        let name: StrDeserializer<'a, Error> = self.name.into_deserializer();
        seed.deserialize(name).map(|variant| (variant, self))
    }
}

impl<'a> Variant<'a> {
    fn inside<T>(self, what: &str, read: impl FnOnce(Reader<'a>) -> Result<T, Error>) -> Result<T, Error> {
        let track = self.track;
        match self.inside {
            Some(value) => track.within(Inside::Member(self.name), || read(Reader { value, track })),
            None => Err(Error::invalid_type(Unexpected::UnitVariant, &what)),
        }
    }
}

impl<'a> VariantAccess<'a> for Variant<'a> {
    type Error = Error;

    fn unit_variant(self) -> Result<(), Error> {
        match self.inside {
            None => Ok(()),
            Some(_) => self.inside("unit variant", <()>::deserialize),
        }
    }

    fn newtype_variant_seed<T: DeserializeSeed<'a>>(self, seed: T) -> Result<T::Value, Error> {
        self.inside("newtype variant", |reader| seed.deserialize(reader))
    }

    fn tuple_variant<V: Visitor<'a>>(self, _: usize, visitor: V) -> Result<V::Value, Error> {
        self.inside("tuple variant", |reader| reader.deserialize_any(visitor))
    }

    fn struct_variant<V: Visitor<'a>>(
        self,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Error> {
        self.inside("struct variant", |reader| reader.deserialize_any(visitor))
    }
}

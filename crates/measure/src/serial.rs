//! Lengths, sizes, units and marks in files: as the text a maker would write, exact both ways.
//!
//! A length is `4 1/4 in`, a size `4 1/4 x 5 1/2 in` or `105 x 148 mm`, a unit `in`, a mark `1/8 in` or `0.5 mm`.

use serde::de::{Error, Unexpected, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use crate::{Length, Mark, Size, Unit, parse_signed, parse_size, write_exact};

impl Serialize for Length {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&write_exact(*self))
    }
}

impl<'de> Deserialize<'de> for Length {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Length, D::Error> {
        read(deserializer, "a length such as `4 1/4 in` or `105 mm`", |text| {
            parse_signed(text, None).map_err(|error| error.to_string())
        })
    }
}

impl Serialize for Size {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&self.to_string())
    }
}

impl<'de> Deserialize<'de> for Size {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Size, D::Error> {
        read(deserializer, "a size such as `4 1/4 x 5 1/2 in` or `105 x 148 mm`", |text| {
            parse_size(text, None).map_err(|error| error.to_string())
        })
    }
}

impl Serialize for Unit {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.sign())
    }
}

impl<'de> Deserialize<'de> for Unit {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Unit, D::Error> {
        read(deserializer, "`in` or `mm`", |text| match text {
            "in" => Ok(Unit::Inch),
            "mm" => Ok(Unit::Millimetre),
            _ => Err(format!("`{text}` is no unit: write `in` or `mm`")),
        })
    }
}

impl Serialize for Mark {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&self.to_string())
    }
}

impl<'de> Deserialize<'de> for Mark {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Mark, D::Error> {
        read(deserializer, "a mark such as `1/8 in` or `0.5 mm`", |text| {
            let step = text.parse::<Length>().map_err(|error| error.to_string())?;
            Mark::from_step(step).ok_or_else(|| format!("`{text}` is no mark of a rule: write `1/8 in` or `1 mm`"))
        })
    }
}

fn read<'de, D: Deserializer<'de>, T>(
    deserializer: D,
    expected: &'static str,
    parse: fn(&str) -> Result<T, String>,
) -> Result<T, D::Error> {
    deserializer.deserialize_str(TextVisitor { expected, parse })
}

/// Takes a text and nothing else, so that a bare number in a file is answered with what to write.
struct TextVisitor<T> {
    expected: &'static str,
    parse: fn(&str) -> Result<T, String>,
}

impl<T> Visitor<'_> for TextVisitor<T> {
    type Value = T;

    fn expecting(&self, formatter: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        formatter.write_str(self.expected)
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<T, E> {
        (self.parse)(text).map_err(E::custom)
    }

    fn visit_i64<E: Error>(self, number: i64) -> Result<T, E> {
        Err(E::invalid_type(Unexpected::Signed(number), &self))
    }

    fn visit_f64<E: Error>(self, number: f64) -> Result<T, E> {
        Err(E::invalid_type(Unexpected::Float(number), &self))
    }
}

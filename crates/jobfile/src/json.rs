//! From text to a JSON value, losing nothing on the way.
//!
//! The library's own reading into a value keeps the last of two fields with one name and drops
//! the others without a word. Here that is an error.

use core::cell::RefCell;
use core::fmt;

use serde::de::{DeserializeSeed, Error as _, MapAccess, SeqAccess, Visitor};
use serde_json::error::Category;
use serde_json::{Deserializer, Map, Number, Value};

use crate::{Limit, OpenError, Syntax};

/// Reads one JSON value. A byte order mark in front is passed over.
pub(crate) fn parse(text: &str) -> Result<Value, OpenError> {
    parse_within(text, Limit::Bytes)
}

/// Reads one JSON value of at most so many bytes.
pub(crate) fn parse_within(text: &str, limit: Limit) -> Result<Value, OpenError> {
    if text.len() as f64 > limit.most() {
        return Err(OpenError::Beyond {
            limit,
            path: String::new(),
        });
    }
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    if text.trim().is_empty() {
        return Err(OpenError::Empty);
    }
    let repeated = RefCell::new(None);
    let mut reader = Deserializer::from_str(text);
    let value = Unique(&repeated).deserialize(&mut reader);
    value
        .and_then(|value| reader.end().map(|()| value))
        .map_err(|error| not_json(text, &error, repeated.into_inner()))
}

fn not_json(text: &str, error: &serde_json::Error, repeated: Option<String>) -> OpenError {
    let message = error.to_string();
    // The library keeps its reasons to itself but for the message; a test holds these two.
    if message.starts_with("recursion limit exceeded") {
        return OpenError::Beyond {
            limit: Limit::Depth,
            path: String::new(),
        };
    }
    let start = text.trim_start();
    let syntax = if let Some(name) = repeated {
        Syntax::RepeatedField(name)
    } else if start.starts_with('<') {
        Syntax::WebPage
    } else if !start.starts_with('{') {
        Syntax::OtherText
    } else if message.starts_with("number out of range") {
        Syntax::NumberTooLarge
    } else {
        match (error.classify(), character_at(text, error)) {
            (Category::Eof, _) | (_, None) => Syntax::CutShort,
            (_, Some(found)) => Syntax::Unexpected(found),
        }
    };
    OpenError::NotJson {
        line: error.line(),
        column: error.column(),
        syntax,
    }
}

/// The character that the library stopped at, or the last one before the end.
fn character_at(text: &str, error: &serde_json::Error) -> Option<char> {
    let line = text.split('\n').nth(error.line().checked_sub(1)?)?;
    let mut end = error.column().min(line.len());
    while !line.is_char_boundary(end) {
        end += 1;
    }
    line.get(..end)?.chars().next_back().or(Some('\n'))
}

/// Builds a value and stops at a repeated field, whose name it leaves in the cell.
#[derive(Clone, Copy)]
struct Unique<'a>(&'a RefCell<Option<String>>);

impl<'de> DeserializeSeed<'de> for Unique<'_> {
    type Value = Value;

    fn deserialize<D: serde::Deserializer<'de>>(self, reader: D) -> Result<Value, D::Error> {
        reader.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Unique<'_> {
    type Value = Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("JSON")
    }

    fn visit_unit<E>(self) -> Result<Value, E> {
        Ok(Value::Null)
    }

    fn visit_bool<E>(self, truth: bool) -> Result<Value, E> {
        Ok(Value::Bool(truth))
    }

    fn visit_i64<E>(self, number: i64) -> Result<Value, E> {
        Ok(Value::Number(number.into()))
    }

    fn visit_u64<E>(self, number: u64) -> Result<Value, E> {
        Ok(Value::Number(number.into()))
    }

    fn visit_f64<E: serde::de::Error>(self, number: f64) -> Result<Value, E> {
        Number::from_f64(number)
            .map(Value::Number)
            .ok_or_else(|| E::custom("number out of range"))
    }

    fn visit_str<E>(self, text: &str) -> Result<Value, E> {
        Ok(Value::String(text.to_owned()))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Value, A::Error> {
        let mut list = Vec::new();
        while let Some(item) = items.next_element_seed(self)? {
            list.push(item);
        }
        Ok(Value::Array(list))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut fields: A) -> Result<Value, A::Error> {
        let mut object = Map::new();
        while let Some(name) = fields.next_key::<String>()? {
            if object.contains_key(&name) {
                self.0.replace(Some(name));
                return Err(A::Error::custom("repeated field"));
            }
            let value = fields.next_value_seed(self)?;
            object.insert(name, value);
        }
        Ok(Value::Object(object))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn nested(levels: usize) -> String {
        format!("{}{}", "[".repeat(levels), "]".repeat(levels))
    }

    #[test]
    fn nesting_is_followed_to_the_limit_and_not_beyond() {
        let most = Limit::Depth.most() as usize;
        assert!(parse(&nested(most)).is_ok());
        let beyond = OpenError::Beyond {
            limit: Limit::Depth,
            path: String::new(),
        };
        assert_eq!(parse(&nested(most + 1)), Err(beyond.clone()));
        // Far beyond, a reader that called itself for each level would be out of memory.
        assert_eq!(parse(&nested(1_000_000)), Err(beyond));
    }

    #[test]
    fn a_number_comes_back_to_the_last_bit() {
        for number in [0.1, 1e30, 5e-324, 123_456_789.123_456_78, f64::MAX] {
            assert_eq!(parse(&number.to_string()), Ok(Value::from(number)));
        }
    }

    #[test]
    fn a_character_is_found_where_the_text_goes_wrong_whatever_its_length() {
        for (text, found) in [
            ("{\"ä\": ☃}", '☃'),
            ("{\n\n 'a'}", '\''),
            ("{\"a\" 1}", '1'),
        ] {
            assert!(
                matches!(
                    parse(text),
                    Err(OpenError::NotJson { syntax: Syntax::Unexpected(at), .. }) if at == found
                ),
                "{text}: {:?}",
                parse(text)
            );
        }
    }
}

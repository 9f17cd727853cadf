//! Taking known fields out of a JSON object, with the place of whatever doesn't fit.

use std::collections::BTreeMap;
use std::fmt;

use serde_json::{Map, Value};

use crate::{Kind, Limit, OpenError, Problem};

/// Fields that this program doesn't know, kept as they came.
pub(crate) type Extra = BTreeMap<String, Value>;

/// Where in a document something stands. Links back to what it lies in, so that a path is only
/// put together when something is wrong there.
#[derive(Clone, Copy)]
pub(crate) struct Place<'a> {
    within: Option<&'a Place<'a>>,
    step: Step<'a>,
}

#[derive(Clone, Copy)]
enum Step<'a> {
    Whole,
    Field(&'a str),
    Item(usize),
}

impl<'a> Place<'a> {
    pub(crate) const WHOLE: Place<'static> = Place {
        within: None,
        step: Step::Whole,
    };

    pub(crate) fn field(&'a self, name: &'a str) -> Place<'a> {
        Place {
            within: Some(self),
            step: Step::Field(name),
        }
    }

    pub(crate) fn item(&'a self, index: usize) -> Place<'a> {
        Place {
            within: Some(self),
            step: Step::Item(index),
        }
    }

    pub(crate) fn wrong(&self, problem: Problem) -> OpenError {
        OpenError::Field {
            path: self.to_string(),
            problem,
        }
    }

    pub(crate) fn beyond(&self, limit: Limit) -> OpenError {
        OpenError::Beyond {
            limit,
            path: self.to_string(),
        }
    }

    fn expected(&self, expected: Kind, found: &Value) -> OpenError {
        self.wrong(Problem::Kind {
            expected,
            found: kind_of(found),
        })
    }
}

impl fmt::Display for Place<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(within) = self.within {
            within.fmt(f)?;
        }
        match self.step {
            Step::Whole => Ok(()),
            Step::Item(index) => write!(f, "[{index}]"),
            Step::Field(name) => {
                let inside = self.within.is_some_and(|w| !matches!(w.step, Step::Whole));
                write!(f, "{}{name}", if inside { "." } else { "" })
            }
        }
    }
}

/// An object being read. Which fields were asked for is remembered: the rest is unknown.
pub(crate) struct Fields<'a> {
    map: &'a Map<String, Value>,
    place: &'a Place<'a>,
    known: Vec<&'static str>,
}

impl<'a> Fields<'a> {
    pub(crate) fn of(value: &'a Value, place: &'a Place<'a>) -> Result<Self, OpenError> {
        match value {
            Value::Object(map) => Ok(Self {
                map,
                place,
                known: Vec::new(),
            }),
            other => Err(place.expected(Kind::Object, other)),
        }
    }

    /// A field that may be missing, read by `read`.
    pub(crate) fn may<T>(
        &mut self,
        name: &'static str,
        read: impl FnOnce(&Value, &Place) -> Result<T, OpenError>,
    ) -> Result<Option<T>, OpenError> {
        self.known.push(name);
        self.map
            .get(name)
            .map(|value| read(value, &self.place.field(name)))
            .transpose()
    }

    /// A field that has to be there, read by `read`.
    pub(crate) fn must<T>(
        &mut self,
        name: &'static str,
        read: impl FnOnce(&Value, &Place) -> Result<T, OpenError>,
    ) -> Result<T, OpenError> {
        self.may(name, read)?
            .ok_or_else(|| self.place.field(name).wrong(Problem::Missing))
    }

    /// All fields that were not asked for.
    pub(crate) fn rest(self) -> Extra {
        let mut rest = Extra::new();
        for (name, value) in self.map {
            if !self.known.contains(&name.as_str()) {
                rest.insert(name.clone(), value.clone());
            }
        }
        rest
    }
}

pub(crate) fn text(value: &Value, place: &Place) -> Result<String, OpenError> {
    match value {
        Value::String(text) => Ok(text.clone()),
        other => Err(place.expected(Kind::Text, other)),
    }
}

pub(crate) fn truth(value: &Value, place: &Place) -> Result<bool, OpenError> {
    value
        .as_bool()
        .ok_or_else(|| place.expected(Kind::Truth, value))
}

pub(crate) fn whole_number(value: &Value, place: &Place) -> Result<u64, OpenError> {
    value
        .as_u64()
        .ok_or_else(|| place.expected(Kind::WholeNumber, value))
}

pub(crate) fn number(value: &Value, place: &Place) -> Result<f64, OpenError> {
    value
        .as_f64()
        .ok_or_else(|| place.expected(Kind::Number, value))
}

/// A list of at most as many items as `limit` allows, each read by `read`.
pub(crate) fn list<T>(
    value: &Value,
    place: &Place,
    (most, limit): (usize, Limit),
    read: impl Fn(&Value, &Place) -> Result<T, OpenError>,
) -> Result<Vec<T>, OpenError> {
    let Value::Array(items) = value else {
        return Err(place.expected(Kind::List, value));
    };
    if items.len() > most {
        return Err(place.beyond(limit));
    }
    items
        .iter()
        .enumerate()
        .map(|(index, item)| read(item, &place.item(index)))
        .collect()
}

pub(crate) fn kind_of(value: &Value) -> Kind {
    match value {
        Value::Null => Kind::Nothing,
        Value::Bool(_) => Kind::Truth,
        Value::Number(_) => Kind::Number,
        Value::String(_) => Kind::Text,
        Value::Array(_) => Kind::List,
        Value::Object(_) => Kind::Object,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn a_path_reads_as_a_person_would_write_it() {
        let entries = Place::WHOLE.field("entries");
        let third = entries.item(3);
        assert_eq!(third.field("at").to_string(), "entries[3].at");
        assert_eq!(Place::WHOLE.to_string(), "");
    }

    #[test]
    fn what_was_not_asked_for_is_the_rest() {
        let value = json!({"id": "a", "colour": "white"});
        let mut fields = Fields::of(&value, &Place::WHOLE).unwrap();
        assert_eq!(fields.must("id", text).unwrap(), "a");
        assert_eq!(fields.may("note", text).unwrap(), None);
        assert_eq!(fields.rest().into_keys().collect::<Vec<_>>(), ["colour"]);
    }

    #[test]
    fn a_missing_value_is_left_out_and_never_null() {
        let value = json!({"note": null});
        let mut fields = Fields::of(&value, &Place::WHOLE).unwrap();
        assert_eq!(
            fields.may("note", text),
            Err(OpenError::Field {
                path: "note".into(),
                problem: Problem::Kind {
                    expected: Kind::Text,
                    found: Kind::Nothing
                }
            })
        );
    }
}

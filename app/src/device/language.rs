//! How numbers, temperatures and dates are written where the reader lives.

use js_sys::{Array, Function, Intl, Object, Reflect};
use leptos::prelude::window;
use wasm_bindgen::{JsCast, JsValue};
use wording::{DateOrder, DecimalMark, Degrees, Locale};

/// Reads the reader's habits from the browser.
#[must_use]
pub fn locale() -> Locale {
    let region = region();
    let region = region.as_str();
    Locale {
        decimal: decimal_mark().unwrap_or_default(),
        degrees: if FAHRENHEIT.contains(&region) {
            Degrees::Fahrenheit
        } else {
            Degrees::Celsius
        },
        dates: if region == "US" {
            DateOrder::MonthFirst
        } else {
            DateOrder::DayFirst
        },
    }
}

/// The reader's region, in two letters, as far as the browser's language tells it.
#[must_use]
pub fn region() -> String {
    let language = window().navigator().language().unwrap_or_default();
    region_of(&language).to_owned()
}

/// A text in small letters. The browser does it: the tables for it weigh 24 kB in the page.
#[must_use]
pub fn lower_case(text: &str) -> String {
    String::from(js_sys::JsString::from(text).to_lower_case())
}

/// Where the weather is told in Fahrenheit: the United States with their islands, the Bahamas,
/// Belize, the Cayman Islands, Palau, Micronesia, the Marshall Islands, Liberia (from memory).
const FAHRENHEIT: [&str; 12] = [
    "US", "PR", "GU", "VI", "AS", "BS", "BZ", "KY", "PW", "FM", "MH", "LR",
];

/// The region in a language tag such as `en-US`; English without one is taken for American.
fn region_of(language: &str) -> &str {
    let region = language
        .split('-')
        .skip(1)
        .find(|part| part.len() == 2 && part.chars().all(|c| c.is_ascii_uppercase()));
    match region {
        Some(region) => region,
        None if language == "en" => "US",
        None => "",
    }
}

/// The mark in "1.1" as the browser writes it.
fn decimal_mark() -> Option<DecimalMark> {
    let format = Intl::NumberFormat::new(&Array::new(), &Object::new());
    let write: Function = Reflect::get(&format, &"format".into())
        .ok()?
        .dyn_into()
        .ok()?;
    let written = write
        .call1(&JsValue::UNDEFINED, &1.1.into())
        .ok()?
        .as_string()?;
    Some(if written.contains(',') {
        DecimalMark::Comma
    } else {
        DecimalMark::Point
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_region_is_read_from_a_language_tag() {
        assert_eq!(region_of("en-US"), "US");
        assert_eq!(region_of("zh-Hant-TW"), "TW");
        assert_eq!(region_of("de"), "");
        assert_eq!(region_of("en"), "US");
        assert_eq!(region_of(""), "");
    }
}

//! What can happen to a document on its way, by chance or by malice.

use std::ops::Range;
use std::sync::LazyLock;

use coldcase_tests::motors::Random;
use serde_json::{Value, json};

use crate::damaged::Good;
use crate::random::pointers;

/// 50 MB that would be a job but for their number.
static FIFTY_MEGABYTES: LazyLock<Vec<u8>> = LazyLock::new(|| {
    let mut bytes = br#"{"type": "coldcase-job", "version": 1, "unknown": ""#.to_vec();
    bytes.resize(50_000_000, b'x');
    bytes
});

/// One kind of damage after another, each at random places.
pub(crate) fn damaged(seed: u64, random: &mut Random, from: &Good) -> Vec<u8> {
    match seed % 16 {
        0 => flipped(random, from, 1),
        1 => flipped(random, from, 5),
        2 => from.bytes[..below(random, from.bytes.len())].to_vec(),
        3 => without_a_stretch(random, from),
        4 => with_a_stretch_twice(random, from),
        5 => inserted(random, from, &[0xc3, 0x28]),
        6 => {
            let any = below(random, 256) as u8;
            inserted(random, from, &[any])
        }
        7 => swapped(random, from),
        8 => of_another_kind(random, from),
        9 => with_a_huge_number(random, from),
        10 => nested(random, from),
        11 => with_script(random, from),
        12 => with_an_entry_twice(random, from),
        13 => written_another_way(random, from),
        14 => out_of_pieces(random),
        _ if seed % 1600 == 15 => FIFTY_MEGABYTES.clone(),
        _ => out_of_bytes(random),
    }
}

pub(crate) fn below(random: &mut Random, limit: usize) -> usize {
    (random.unit() * limit as f64) as usize
}

fn stretch(random: &mut Random, from: &Good) -> Range<usize> {
    let start = below(random, from.bytes.len());
    // Mostly short ones: those leave more that still opens.
    let length = random.log_uniform(1.0, 400.0) as usize;
    start..(start + length).min(from.bytes.len())
}

fn flipped(random: &mut Random, from: &Good, count: usize) -> Vec<u8> {
    let mut bytes = from.bytes.clone();
    for _ in 0..count {
        let place = below(random, bytes.len());
        bytes[place] ^= 1 << below(random, 8);
    }
    bytes
}

fn without_a_stretch(random: &mut Random, from: &Good) -> Vec<u8> {
    let mut bytes = from.bytes.clone();
    bytes.drain(stretch(random, from));
    bytes
}

fn with_a_stretch_twice(random: &mut Random, from: &Good) -> Vec<u8> {
    let range = stretch(random, from);
    let mut bytes = from.bytes[..range.end].to_vec();
    bytes.extend(&from.bytes[range.start..]);
    bytes
}

fn inserted(random: &mut Random, from: &Good, what: &[u8]) -> Vec<u8> {
    let mut bytes = from.bytes.clone();
    let place = below(random, bytes.len());
    bytes.splice(place..place, what.iter().copied());
    bytes
}

/// A place in a document, never the whole.
fn a_place(random: &mut Random, value: &Value) -> String {
    let places = pointers(value);
    places[1 + below(random, places.len() - 1)].clone()
}

fn with(from: &Good, place: &str, other: Value) -> Vec<u8> {
    let mut value = from.value.clone();
    *value.pointer_mut(place).unwrap() = other;
    value.to_string().into_bytes()
}

fn swapped(random: &mut Random, from: &Good) -> Vec<u8> {
    let (one, other) = (a_place(random, &from.value), a_place(random, &from.value));
    if one.starts_with(&other) || other.starts_with(&one) {
        return with(from, &one, Value::Null);
    }
    let mut value = from.value.clone();
    let first = value.pointer(&one).unwrap().clone();
    let second = value.pointer(&other).unwrap().clone();
    *value.pointer_mut(&one).unwrap() = second;
    *value.pointer_mut(&other).unwrap() = first;
    value.to_string().into_bytes()
}

fn of_another_kind(random: &mut Random, from: &Good) -> Vec<u8> {
    let others = [
        json!(null),
        json!(true),
        json!(-1),
        json!(0.5),
        json!(""),
        json!("2026-13-45T99:99:99Z"),
        json!([]),
        json!({}),
        json!([[1, "2"], {"three": 3}]),
        json!(2),
    ];
    let other = others[below(random, others.len())].clone();
    with(from, &a_place(random, &from.value), other)
}

/// In the place of a value stands a number that fits no reading, or no computer.
fn with_a_huge_number(random: &mut Random, from: &Good) -> Vec<u8> {
    const MARK: &str = "the number goes here";
    let number = match below(random, 6) {
        0 => "1e400".to_owned(),
        1 => "-1e308".to_owned(),
        2 => "1e31".to_owned(),
        3 => "9".repeat(1 + below(random, 5_000)),
        4 => format!("0.{}1", "0".repeat(below(random, 5_000))),
        _ => "18446744073709551616".to_owned(),
    };
    let text = with(from, &a_place(random, &from.value), json!(MARK));
    let text = String::from_utf8(text).unwrap();
    text.replace(&format!("\"{MARK}\""), &number).into_bytes()
}

/// Lists in lists, in the place of a value or as a field that nobody knows.
fn nested(random: &mut Random, from: &Good) -> Vec<u8> {
    const MARK: &str = "the lists go here";
    let levels = random.log_uniform(1.0, 100_000.0) as usize;
    let (open, close) = random.pick([("[", "]"), ("{\"a\":", "}")]);
    let middle = if open == "[" { "" } else { "0" };
    let deep = [&open.repeat(levels), middle, &close.repeat(levels)].concat();
    let text = if random.chance(0.5) {
        let mut value = from.value.clone();
        value["unknown"] = json!(MARK);
        value.to_string().into_bytes()
    } else {
        with(from, &a_place(random, &from.value), json!(MARK))
    };
    let text = String::from_utf8(text).unwrap();
    text.replace(&format!("\"{MARK}\""), &deep).into_bytes()
}

/// What would run were it taken for a part of a page, as a note and in the place of a value.
fn with_script(random: &mut Random, from: &Good) -> Vec<u8> {
    let script = random.pick([
        "<script>alert(1)</script>",
        "\"><img src=x onerror=alert(1)>",
        "javascript:alert(1)",
        "\u{202e}txet\u{0}",
        "{{constructor.constructor('alert(1)')()}}",
    ]);
    if random.chance(0.5) {
        return with(from, &a_place(random, &from.value), json!(script));
    }
    let mut value = from.value.clone();
    let note = json!({"id": "script", "at": "2026-11-25T12:00:00Z", "note": script});
    value["entries"].as_array_mut().unwrap().push(note);
    value.to_string().into_bytes()
}

/// The same entry once more, as it is or saying something else.
fn with_an_entry_twice(random: &mut Random, from: &Good) -> Vec<u8> {
    let mut value = from.value.clone();
    let entries = value["entries"].as_array_mut().unwrap();
    if entries.is_empty() {
        return from.bytes.clone();
    }
    let mut again = entries[below(random, entries.len())].clone();
    if random.chance(0.3) {
        again["at"] = json!("2030-01-01T00:00:00Z");
    }
    let place = below(random, entries.len() + 1);
    entries.insert(place, again);
    value.to_string().into_bytes()
}

/// Other line ends, other white space, other escapes: the same document.
fn written_another_way(random: &mut Random, from: &Good) -> Vec<u8> {
    let text = match below(random, 4) {
        0 => from.value.to_string(),
        1 => format!("\u{feff}{:#}\r\n\r\n", from.value),
        2 => format!("{:#}", from.value).replace('\n', "\r\n\t"),
        _ => from.value.to_string().replace("coldcase", "\\u0063oldcase"),
    };
    text.into_bytes()
}

fn out_of_pieces(random: &mut Random) -> Vec<u8> {
    const PIECES: [&str; 16] = [
        "{",
        "}",
        "[",
        "]",
        ",",
        ":",
        "\"type\"",
        "\"coldcase-job\"",
        "\"version\"",
        "1",
        "\"entries\"",
        "\"id\"",
        "null",
        "-0",
        "\"\\ud800\"",
        " ",
    ];
    let mut text = String::new();
    if random.chance(0.5) {
        text.push_str(r#"{"type":"coldcase-job","version":1,"#);
    }
    for _ in 0..below(random, 60) {
        text.push_str(random.pick(PIECES));
    }
    text.into_bytes()
}

fn out_of_bytes(random: &mut Random) -> Vec<u8> {
    let length = below(random, 2_000);
    let most = if random.chance(0.5) { 256 } else { 128 };
    (0..length).map(|_| below(random, most) as u8).collect()
}

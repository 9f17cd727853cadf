//! Documents that nobody thought of: random jobs, and good documents with random damage.

use job::{Answer, Content, Entry, Id, Job, Measured, Moment};
use job::{Name, NotDone, Origin, Question, Reading, Rest, SetUp, StartTrial, Stop};
use job::{Text, Tried};
use jobfile::{BACKUP_TYPE, Document, Limit, Notice, OpenError, Opened, open, save};
use proptest::collection::{btree_set, vec};
use proptest::prelude::*;
use proptest::sample::{Index, select};
use quantity::{Accuracy, Observed, Ohms, Seconds, Typed};
use serde_json::Value;

use crate::documents;
use crate::fixtures::opened;
use crate::random_cold::cold;
use crate::schema::hold_to_schema;

fn name() -> impl Strategy<Value = Name> {
    "[a-z0-9-]{1,40}".prop_map(|text| Name::new(&text).unwrap())
}

pub(crate) fn text() -> impl Strategy<Value = Text> {
    "([^\\p{Cc}]|[\\n\\r\\t]){0,40}".prop_map(|text| Text::new(&text).unwrap())
}

pub(crate) fn moment() -> impl Strategy<Value = Moment> {
    (0..=Moment::LATEST, -1080i16..=1080).prop_map(|(at, offset)| Moment::new(at, offset).unwrap())
}

/// A number of any size that a document takes, from the smallest to the largest.
fn number() -> impl Strategy<Value = f64> {
    use proptest::num::f64::{NEGATIVE, NORMAL, POSITIVE, SUBNORMAL, ZERO};
    (POSITIVE | NEGATIVE | NORMAL | SUBNORMAL | ZERO).prop_map(|number| number % 1e30)
}

pub(crate) fn reading() -> impl Strategy<Value = Reading> {
    let above_zero = || number().prop_map(|number| number.abs().max(f64::MIN_POSITIVE));
    let value = (number(), above_zero()).prop_map(|(value, count)| Typed {
        observed: Observed::Value(Ohms::new(value)),
        count: Ohms::new(count),
    });
    let over_range = number().prop_map(|above| Typed {
        observed: Observed::OverRange {
            above: Ohms::new(above),
        },
        count: Ohms::new(0.0),
    });
    let measured = prop_oneof![value, over_range].prop_map(Measured::Ohms);
    let accuracy = (0.0..=20.0, 0.0..=100.0)
        .prop_map(|(percent, counts)| Accuracy::new(percent, counts).unwrap());
    (text(), measured, accuracy).prop_map(|(typed, measured, accuracy)| Reading {
        typed,
        measured,
        accuracy,
    })
}

fn rest() -> impl Strategy<Value = Rest> {
    (0.0..=604_800.0f64).prop_map(|seconds| Rest::new(Seconds::new(seconds)).unwrap())
}

fn stop() -> impl Strategy<Value = Content> {
    let ran = proptest::option::of(rest());
    (moment(), ran).prop_map(|(at, ran)| {
        let ran = ran.map(Rest::seconds);
        Content::Stop(Stop { at, ran })
    })
}

fn trial() -> impl Strategy<Value = Content> {
    use proptest::option::of;
    let what = (select(SetUp::ALL.to_vec()), select(Tried::ALL.to_vec()));
    let when = (moment(), rest(), of(rest()), any::<bool>());
    let meters = (of(reading()), of(reading()), of(reading()), of(text()));
    (what, when, meters).prop_map(|(what, when, meters)| {
        let ((set_up, outcome), (at, rest, dead, is_cold)) = (what, when);
        let (highest, settled, lowest, note) = meters;
        Content::Trial(StartTrial {
            set_up,
            at,
            rest,
            dead,
            is_cold,
            outcome,
            highest,
            settled,
            lowest,
            note,
        })
    })
}

fn answer() -> impl Strategy<Value = Answer> {
    prop_oneof![
        reading().prop_map(Answer::Reading),
        name().prop_map(Answer::Choice),
        btree_set(name(), 0..5).prop_map(Answer::Choices),
        text().prop_map(Answer::Text),
        select(NotDone::ALL.to_vec()).prop_map(Answer::NotDone),
    ]
}

/// What an entry says; a strike points at one of the entries before it, where there are some.
#[derive(Debug, Clone)]
enum Says {
    Content(Box<Content>),
    Strike(Index),
}

fn says() -> impl Strategy<Value = Says> {
    let answer = (name(), name(), answer()).prop_map(|(check, item, answer)| {
        let question = Question { check, item };
        Content::Answer { question, answer }
    });
    prop_oneof![
        5 => answer.prop_map(|content| Says::Content(Box::new(content))),
        1 => trial().prop_map(|content| Says::Content(Box::new(content))),
        1 => cold().prop_map(|content| Says::Content(Box::new(content))),
        1 => stop().prop_map(|content| Says::Content(Box::new(content))),
        1 => text().prop_map(|text| Says::Content(Box::new(Content::Note(text)))),
        1 => any::<Index>().prop_map(Says::Strike),
    ]
}

fn job() -> impl Strategy<Value = Job> {
    let id = "[A-Za-z0-9-]{1,30}";
    let origin = select(vec![Origin::Person, Origin::Invented]);
    let entries = vec((id, moment(), says()), 0..20);
    (id, moment(), origin, entries).prop_map(|(job, created, origin, entries)| {
        let mut job = Job::new(Id::new(&job).unwrap(), created, origin);
        for (number, (id, at, says)) in entries.into_iter().enumerate() {
            let content = match says {
                Says::Content(content) => *content,
                Says::Strike(_) if number == 0 => continue,
                Says::Strike(index) => match job.entries() {
                    [] => continue,
                    before => Content::Strike(index.get(before).id.clone()),
                },
            };
            let id = Id::new(&format!("{id}-{number}")).unwrap();
            job.add(Entry { id, at, content }).unwrap();
        }
        job
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(500))]

    #[test]
    fn every_job_comes_back_the_same_and_holds_to_the_schema(job in job()) {
        let document = Document::new(job.clone()).unwrap();
        prop_assert_eq!(document.job(), &job);
        let text = save(&document);
        hold_to_schema("random job", &text);
        let (again, _) = opened(text.as_bytes());
        prop_assert_eq!(&again, &document);
        prop_assert_eq!(save(&again), text);
    }

    #[test]
    fn unknown_fields_anywhere_come_back_as_they_were(
        which in any::<Index>(),
        places in vec((any::<Index>(), "[a-z]{3,8}-of-tomorrow", json(3)), 1..6),
    ) {
        // What differs in one unknown field is no longer the same entry twice.
        let folder: Vec<_> = documents("tests/documents/good")
            .into_iter()
            .filter(|(name, _)| name != "repeated-entry.json")
            .collect();
        let mut value = parsed(&which.get(&folder).1);
        for (place, name, unknown) in places {
            let objects: Vec<_> = pointers(&value)
                .into_iter()
                .filter(|at| value.pointer(at).is_some_and(Value::is_object))
                .collect();
            let object = value.pointer_mut(place.get::<String>(&objects)).unwrap();
            object.as_object_mut().unwrap().insert(name, unknown);
        }
        let (document, _) = opened(value.to_string().as_bytes());
        prop_assert_eq!(levelled(parsed(save(&document).as_bytes())), levelled(value));
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(8_000))]

    #[test]
    fn damaged_text_opens_or_is_refused_with_its_place_and_nothing_falls_over(
        which in any::<Index>(),
        damages in vec(damage(), 1..4),
    ) {
        let folder = documents("tests/documents/good");
        let mut text = String::from_utf8(which.get(&folder).1.clone()).unwrap();
        for damage in damages {
            damage.apply(&mut text);
        }
        opens_soundly_or_says_where(&text)?;
    }

    #[test]
    fn a_document_with_another_value_somewhere_opens_or_is_refused_with_its_place(
        which in any::<Index>(),
        at in any::<Index>(),
        other in json(2),
    ) {
        let folder = documents("tests/documents/good");
        let mut value = parsed(&which.get(&folder).1);
        let places = pointers(&value);
        *value.pointer_mut(at.get::<String>(&places)).unwrap() = other;
        opens_soundly_or_says_where(&value.to_string())?;
    }
}

/// What opens holds to the schema, loses nothing and can be saved; what doesn't says where.
fn opens_soundly_or_says_where(text: &str) -> Result<(), TestCaseError> {
    match open(text) {
        Ok(Opened::Document { document, notices }) => {
            hold_to_schema("damaged", text);
            let saved = save(&document);
            hold_to_schema("damaged and saved", &saved);
            prop_assert_eq!(&opened(saved.as_bytes()).0, &document);
            if !notices
                .iter()
                .any(|notice| matches!(notice, Notice::Repeated { .. }))
            {
                let before = parsed(text.as_bytes());
                prop_assert_eq!(levelled(parsed(saved.as_bytes())), levelled(before));
            }
        }
        Ok(Opened::Newer(newer)) => prop_assert_eq!(newer.text(), text),
        Ok(Opened::Backup(_)) => prop_assert!(text.contains(BACKUP_TYPE)),
        Err(OpenError::NotJson { line, .. }) => prop_assert!(line >= 1),
        Err(OpenError::Field { path, .. }) => prop_assert!(!path.is_empty()),
        Err(OpenError::Beyond { limit, path }) => {
            prop_assert!(!path.is_empty() || matches!(limit, Limit::Bytes | Limit::Depth));
        }
        Err(
            OpenError::Empty
            | OpenError::NotText { .. }
            | OpenError::NotAJob(_)
            | OpenError::SameId { .. },
        ) => {}
    }
    Ok(())
}

/// One thing that can happen to a text on its way.
#[derive(Debug, Clone)]
enum Damage {
    Cut(Index, Index),
    Double(Index, Index),
    Insert(Index, String),
    Replace(Index, char),
}

fn damage() -> impl Strategy<Value = Damage> {
    let hostile = prop_oneof![
        select(vec![
            "{", "}", "[", "]", ",", ":", "\"", "null", "NaN", "-", "1e999", "\\u0000", "\\ud800"
        ])
        .prop_map(str::to_owned),
        "\\PC{1,3}",
    ];
    prop_oneof![
        (any::<Index>(), any::<Index>()).prop_map(|(a, b)| Damage::Cut(a, b)),
        (any::<Index>(), any::<Index>()).prop_map(|(a, b)| Damage::Double(a, b)),
        (any::<Index>(), hostile).prop_map(|(at, text)| Damage::Insert(at, text)),
        (any::<Index>(), any::<char>()).prop_map(|(at, other)| Damage::Replace(at, other)),
    ]
}

impl Damage {
    fn apply(&self, text: &mut String) {
        let characters: Vec<char> = text.chars().collect();
        if characters.is_empty() {
            return;
        }
        let place = |index: &Index| index.index(characters.len());
        // Short stretches leave more documents that still open than long ones do.
        let stretch = |from: &Index, length: &Index| {
            let from = place(from);
            from..(from + 1 + length.index(12)).min(characters.len())
        };
        let (before, middle, after): (usize, String, usize) = match self {
            Self::Cut(from, length) => {
                let range = stretch(from, length);
                (range.start, String::new(), range.end)
            }
            Self::Double(from, length) => {
                let range = stretch(from, length);
                (
                    range.end,
                    characters[range.clone()].iter().collect(),
                    range.end,
                )
            }
            Self::Insert(at, inserted) => (place(at), inserted.clone(), place(at)),
            Self::Replace(at, other) => (place(at), other.to_string(), place(at) + 1),
        };
        *text = characters[..before].iter().collect::<String>();
        text.push_str(&middle);
        text.extend(&characters[after..]);
    }
}

fn json(depth: u32) -> impl Strategy<Value = Value> {
    let leaf = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        any::<i64>().prop_map(Value::from),
        number().prop_map(Value::from),
        "\\PC{0,12}".prop_map(Value::from),
    ];
    leaf.prop_recursive(depth, 12, 4, |inner| {
        prop_oneof![
            vec(inner.clone(), 0..4).prop_map(Value::from),
            proptest::collection::btree_map("[a-z]{1,6}", inner, 0..4)
                .prop_map(|map| Value::Object(map.into_iter().collect())),
        ]
    })
}

pub(crate) fn parsed(bytes: &[u8]) -> Value {
    let text = std::str::from_utf8(bytes).unwrap();
    serde_json::from_str(text.trim_start_matches('\u{feff}')).unwrap()
}

/// The same JSON with each number in one form, since 3 and 3.0 are one number.
pub(crate) fn levelled(value: Value) -> Value {
    match value {
        Value::Number(number) => Value::from(number.as_f64()),
        Value::Array(items) => items.into_iter().map(levelled).collect(),
        Value::Object(fields) => fields
            .into_iter()
            .map(|(name, value)| (name, levelled(value)))
            .collect(),
        other => other,
    }
}

/// Where every value in a value lies, from the outside in (RFC 6901).
pub(crate) fn pointers(value: &Value) -> Vec<String> {
    let inner: Vec<(String, &Value)> = match value {
        Value::Object(fields) => fields
            .iter()
            .map(|(name, value)| (name.replace('~', "~0").replace('/', "~1"), value))
            .collect(),
        Value::Array(items) => items
            .iter()
            .enumerate()
            .map(|(index, value)| (index.to_string(), value))
            .collect(),
        _ => Vec::new(),
    };
    let mut found = vec![String::new()];
    for (step, value) in inner {
        found.extend(
            pointers(value)
                .into_iter()
                .map(|rest| format!("/{step}{rest}")),
        );
    }
    found
}

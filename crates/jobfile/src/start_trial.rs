//! Tries to start a compressor and its stops, as they lie in a file, and back.

use job::{Content, Rest, SetUp, StartTrial, Stop, Tried};
use quantity::Seconds;
use serde::Serialize;
use serde_json::Value;

use crate::fields::{Extra, Fields, Place, number, text, truth};
#[cfg(feature = "schema")]
use crate::schema;
use crate::understand::{self, moment};
use crate::version_1::Reading;
use crate::{OpenError, Problem, Unreadable, describe, write_timestamp};

/// A compressor that ran has stopped.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub(crate) struct StoredStop {
    /// When it stopped: RFC 3339 with the offset of the clock on the wall.
    #[cfg_attr(feature = "schema", schemars(regex(pattern = schema::TIME)))]
    at: String,
    /// How long it had run before, in seconds.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "schema::Rest", default))]
    ran: Option<f64>,
    #[serde(flatten)]
    extra: Extra,
}

/// One try to start a compressor.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub(crate) struct StoredTrial {
    /// With which start gear: original, substitute or kit.
    set_up: String,
    /// When it was plugged in: RFC 3339 with the offset of the clock on the wall.
    #[cfg_attr(feature = "schema", schemars(regex(pattern = schema::TIME)))]
    at: String,
    /// How long the compressor had not turned by then, in seconds.
    #[cfg_attr(feature = "schema", schemars(with = "schema::Rest"))]
    rest: f64,
    /// How long no current had flowed through the start gear, in seconds, where that is shorter.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "schema::Rest", default))]
    dead: Option<f64>,
    /// Whether the shell was as cold as the room.
    cold: bool,
    /// What happened: started, hummed-then-started, hummed-and-tripped, silent or outlet-tripped.
    outcome: String,
    /// The highest current during the start.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "Reading", default))]
    highest: Option<Reading>,
    /// The current some minutes later.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "Reading", default))]
    settled: Option<Reading>,
    /// The lowest voltage beside the machine's own plug.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "Reading", default))]
    lowest: Option<Reading>,
    /// In the person's own words.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "schema::Text", default))]
    note: Option<String>,
    #[serde(flatten)]
    extra: Extra,
}

const fn set_up(set_up: SetUp) -> &'static str {
    match set_up {
        SetUp::Original => "original",
        SetUp::Substitute => "substitute",
        SetUp::Kit => "kit",
    }
}

const fn outcome(outcome: Tried) -> &'static str {
    match outcome {
        Tried::Started => "started",
        Tried::HummedThenStarted => "hummed-then-started",
        Tried::HummedAndTripped => "hummed-and-tripped",
        Tried::Silent => "silent",
        Tried::OutletTripped => "outlet-tripped",
    }
}

impl StoredStop {
    pub(crate) fn read(value: &Value, place: &Place) -> Result<Self, OpenError> {
        let mut fields = Fields::of(value, place)?;
        Ok(Self {
            at: fields.must("at", text)?,
            ran: fields.may("ran", number)?,
            extra: fields.rest(),
        })
    }

    pub(crate) fn describe(stop: &Stop) -> Self {
        Self {
            at: write_timestamp(stop.at),
            ran: stop.ran.map(Seconds::get),
            extra: Extra::new(),
        }
    }

    pub(crate) fn understand(&self, place: &Place) -> Result<Content, OpenError> {
        let ran = self.ran.map(|ran| rest(ran, &place.field("ran")));
        Ok(Content::Stop(Stop {
            at: moment(&self.at, &place.field("at"))?,
            ran: ran.transpose()?.map(Rest::seconds),
        }))
    }
}

impl StoredTrial {
    pub(crate) fn read(value: &Value, place: &Place) -> Result<Self, OpenError> {
        let mut fields = Fields::of(value, place)?;
        Ok(Self {
            set_up: fields.must("set-up", text)?,
            at: fields.must("at", text)?,
            rest: fields.must("rest", number)?,
            dead: fields.may("dead", number)?,
            cold: fields.must("cold", truth)?,
            outcome: fields.must("outcome", text)?,
            highest: fields.may("highest", Reading::read)?,
            settled: fields.may("settled", Reading::read)?,
            lowest: fields.may("lowest", Reading::read)?,
            note: fields.may("note", text)?,
            extra: fields.rest(),
        })
    }

    pub(crate) fn describe(trial: &StartTrial) -> Self {
        let reading = |reading: &Option<job::Reading>| reading.as_ref().map(describe::reading);
        Self {
            set_up: set_up(trial.set_up).to_owned(),
            at: write_timestamp(trial.at),
            rest: trial.rest.seconds().get(),
            dead: trial.dead.map(|dead| dead.seconds().get()),
            cold: trial.is_cold,
            outcome: outcome(trial.outcome).to_owned(),
            highest: reading(&trial.highest),
            settled: reading(&trial.settled),
            lowest: reading(&trial.lowest),
            note: trial.note.as_ref().map(|note| note.as_str().to_owned()),
            extra: Extra::new(),
        }
    }

    pub(crate) fn understand(
        &self,
        place: &Place,
    ) -> Result<Result<Content, Unreadable>, OpenError> {
        let at = moment(&self.at, &place.field("at"))?;
        let rested = rest(self.rest, &place.field("rest"))?;
        let dead = self.dead.map(|dead| rest(dead, &place.field("dead")));
        let dead = dead.transpose()?;
        let note = self.note.as_ref();
        let note = note.map(|note| understand::text(note, &place.field("note")));
        let note = note.transpose()?;
        let mut readings = [None, None, None];
        let given = [&self.highest, &self.settled, &self.lowest];
        for ((kept, given), name) in readings.iter_mut().zip(given).zip(NAMES) {
            let Some(given) = given else { continue };
            match understand::reading(given, &place.field(name))? {
                Ok(reading) => *kept = Some(reading),
                Err(why) => return Ok(Err(why)),
            }
        }
        let [highest, settled, lowest] = readings;
        let unknown = |word: &str| Ok(Err(Unreadable::Word(word.to_owned())));
        let Some(set_up) = SetUp::ALL
            .into_iter()
            .find(|one| set_up(*one) == self.set_up)
        else {
            return unknown(&self.set_up);
        };
        let Some(outcome) = Tried::ALL
            .into_iter()
            .find(|one| outcome(*one) == self.outcome)
        else {
            return unknown(&self.outcome);
        };
        Ok(Ok(Content::Trial(StartTrial {
            set_up,
            at,
            rest: rested,
            dead,
            is_cold: self.cold,
            outcome,
            highest,
            settled,
            lowest,
            note,
        })))
    }
}

const NAMES: [&str; 3] = ["highest", "settled", "lowest"];

fn rest(seconds: f64, place: &Place) -> Result<Rest, OpenError> {
    Rest::new(Seconds::new(seconds)).map_err(|why| place.wrong(Problem::Rest(why)))
}

#[cfg(test)]
mod tests {
    use crate::{Notice, OpenError, Opened, Problem, Unreadable, open, save};

    fn with_entry(entry: &str) -> String {
        format!(
            r#"{{"type":"coldcase-job","version":1,"id":"j","created":"2026-11-29T10:00:00Z",
            "origin":"invented","entries":[{{"id":"a","at":"2026-11-29T10:10:00Z",{entry}}}]}}"#
        )
    }

    const TRIAL: &str = r#""trial":{"set-up":"kit","at":"2026-11-29T10:10:00Z","rest":300.0,
        "dead":60.0,"cold":false,"outcome":"hummed-and-tripped","note":"warm",
        "highest":{"typed":"8.5","unit":"ampere","value":8.5,"count":0.1,
        "accuracy":{"percent":2.0,"counts":5.0}}}"#;

    #[test]
    fn a_trial_and_a_stop_come_back_as_they_were() {
        for entry in [TRIAL, r#""stop":{"at":"2026-11-29T10:05:00Z","ran":900.0}"#] {
            let Ok(Opened::Document { document, notices }) = open(&with_entry(entry)) else {
                panic!("{entry}");
            };
            assert_eq!(notices, []);
            // What came is written as it came: it is told anew, as the page would.
            let job = document.job();
            let bare = job::Job::new(job.id().clone(), job.created(), job.origin());
            let mut told = crate::Document::new(bare).unwrap();
            for entry in job.entries() {
                told.add(entry.clone()).unwrap();
            }
            let again = save(&told);
            let Ok(Opened::Document { document: same, .. }) = open(&again) else {
                panic!("{again}");
            };
            assert_eq!(same.job(), document.job());
            assert_eq!(same.job().entries().len(), 1);
        }
    }

    #[test]
    fn an_outcome_of_a_newer_program_is_kept_and_told() {
        let newer = TRIAL.replace("hummed-and-tripped", "sang");
        let Ok(Opened::Document { document, notices }) = open(&with_entry(&newer)) else {
            panic!("it opens");
        };
        assert!(document.job().entries().is_empty());
        assert!(matches!(
            &notices[..],
            [Notice::Unreadable { why: Unreadable::Word(word), .. }] if word == "sang"
        ));
        assert!(save(&document).contains("sang"));
    }

    #[test]
    fn a_try_before_its_stop_is_refused_with_its_place() {
        let wrong = TRIAL.replace("300.0", "-5");
        let refused = open(&with_entry(&wrong)).err();
        assert_eq!(
            refused,
            Some(OpenError::Field {
                path: "entries[0].trial.rest".to_owned(),
                problem: Problem::Rest(job::RestError::Negative),
            })
        );
    }
}

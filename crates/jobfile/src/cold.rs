//! What a job holds of a machine that is being proved, as it lies in a file, and back:
//! temperatures, events, and what a plug-in meter counted.

use job::{ColdEvent, ColdEventKind, Content, Metered, Moment, Place as Spotted, Spot};
use job::{TemperatureLog, TemperatureLogError};
use quantity::{Celsius, Seconds};
use serde::Serialize;
use serde_json::Value;

use crate::fields::{Extra, Fields, Place, list, number, text, whole_number};
#[cfg(feature = "schema")]
use crate::schema;
use crate::understand::{self, moment};
use crate::version_1::Reading;
use crate::{Limit, OpenError, Problem, Unreadable, describe, write_timestamp};

/// A temperature that a person read.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct StoredSpot {
    /// Where: freezer, fresh-food, room, evaporator, condenser, suction-line, drier-outlet or shell.
    place: String,
    /// When: RFC 3339 with the offset of the clock on the wall.
    #[cfg_attr(feature = "schema", schemars(regex(pattern = schema::TIME)))]
    at: String,
    /// What the thermometer showed, in degrees Celsius.
    reading: Reading,
    #[serde(flatten)]
    extra: Extra,
}

/// A course of temperatures out of a logger's file, thinned.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct StoredLog {
    /// Where, as for a temperature that a person read.
    place: String,
    /// The name of the file.
    #[cfg_attr(feature = "schema", schemars(with = "schema::Text"))]
    file: String,
    /// How many rows the file had for this place.
    #[cfg_attr(feature = "schema", schemars(range(max = 4_294_967_295_u64)))]
    rows: u64,
    /// The first point's time: RFC 3339 with the offset of the clock on the wall.
    #[cfg_attr(feature = "schema", schemars(regex(pattern = schema::TIME)))]
    from: String,
    /// Each point's seconds after the first, rising, to the millisecond.
    #[cfg_attr(feature = "schema", schemars(length(min = 2, max = 2_000)))]
    seconds: Vec<f64>,
    /// Each point's temperature in degrees Celsius.
    #[cfg_attr(feature = "schema", schemars(length(min = 2, max = 2_000)))]
    celsius: Vec<f64>,
    #[serde(flatten)]
    extra: Extra,
}

/// Something that happened while the machine was proved.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct StoredEvent {
    /// When: RFC 3339 with the offset of the clock on the wall.
    #[cfg_attr(feature = "schema", schemars(regex(pattern = schema::TIME)))]
    at: String,
    /// What: switched-on, compressor-on, compressor-off, tripped, door-opened, loaded,
    /// set-point-changed, defrost-began, defrost-ended, defrost-water, probe-moved or switched-off.
    what: String,
    #[serde(flatten)]
    extra: Extra,
}

/// What a plug-in meter counted between two moments.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct StoredMetered {
    /// When counting began: RFC 3339 with the offset of the clock on the wall.
    #[cfg_attr(feature = "schema", schemars(regex(pattern = schema::TIME)))]
    from: String,
    /// When it was read off.
    #[cfg_attr(feature = "schema", schemars(regex(pattern = schema::TIME)))]
    to: String,
    /// What was counted, in watt-hours.
    energy: Reading,
    /// For how many seconds the meter saw a load.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "schema::Number", default))]
    ran: Option<f64>,
    #[serde(flatten)]
    extra: Extra,
}

/// What an entry says, or why this program can't read it.
type Understood = Result<Result<Content, Unreadable>, OpenError>;

/// The name of a place in a document.
pub(crate) const fn place_name(place: Spotted) -> &'static str {
    match place {
        Spotted::Freezer => "freezer",
        Spotted::FreshFood => "fresh-food",
        Spotted::Room => "room",
        Spotted::Evaporator => "evaporator",
        Spotted::Condenser => "condenser",
        Spotted::SuctionLine => "suction-line",
        Spotted::DrierOutlet => "drier-outlet",
        Spotted::Shell => "shell",
    }
}

const fn event_name(kind: ColdEventKind) -> &'static str {
    match kind {
        ColdEventKind::SwitchedOn => "switched-on",
        ColdEventKind::CompressorOn => "compressor-on",
        ColdEventKind::CompressorOff => "compressor-off",
        ColdEventKind::Tripped => "tripped",
        ColdEventKind::DoorOpened => "door-opened",
        ColdEventKind::Loaded => "loaded",
        ColdEventKind::SetPointChanged => "set-point-changed",
        ColdEventKind::DefrostBegan => "defrost-began",
        ColdEventKind::DefrostEnded => "defrost-ended",
        ColdEventKind::DefrostWater => "defrost-water",
        ColdEventKind::ProbeMoved => "probe-moved",
        ColdEventKind::SwitchedOff => "switched-off",
    }
}

fn place_of(name: &str) -> Result<Spotted, Unreadable> {
    Spotted::ALL
        .into_iter()
        .find(|place| place_name(*place) == name)
        .ok_or_else(|| Unreadable::Word(name.to_owned()))
}

impl StoredSpot {
    pub(crate) fn read(value: &Value, place: &Place) -> Result<Self, OpenError> {
        let mut fields = Fields::of(value, place)?;
        Ok(Self {
            place: fields.must("place", text)?,
            at: fields.must("at", text)?,
            reading: fields.must("reading", Reading::read)?,
            extra: fields.rest(),
        })
    }

    pub(crate) fn describe(spot: &Spot) -> Self {
        Self {
            place: place_name(spot.place).to_owned(),
            at: write_timestamp(spot.at),
            reading: describe::reading(&spot.reading),
            extra: Extra::new(),
        }
    }

    pub(crate) fn understand(&self, place: &Place) -> Understood {
        let at = moment(&self.at, &place.field("at"))?;
        let reading = understand::reading(&self.reading, &place.field("reading"))?;
        Ok(reading.and_then(|reading| {
            let place = place_of(&self.place)?;
            Ok(Content::Spot(Spot { place, at, reading }))
        }))
    }
}

impl StoredLog {
    pub(crate) fn read(value: &Value, place: &Place) -> Result<Self, OpenError> {
        let numbers = |value: &Value, place: &Place<'_>| {
            let most = (TemperatureLog::MOST_POINTS, Limit::LogPoints);
            list(value, place, most, number)
        };
        let mut fields = Fields::of(value, place)?;
        Ok(Self {
            place: fields.must("place", text)?,
            file: fields.must("file", text)?,
            rows: fields.must("rows", whole_number)?,
            from: fields.must("from", text)?,
            seconds: fields.must("seconds", numbers)?,
            celsius: fields.must("celsius", numbers)?,
            extra: fields.rest(),
        })
    }

    pub(crate) fn describe(log: &TemperatureLog) -> Self {
        let points = log.points();
        // A course has a first point.
        let first = points.first().map(|(at, _)| *at);
        let since = |at: Moment| first.map_or(0.0, |first| first.until(at).get());
        Self {
            place: place_name(log.place()).to_owned(),
            file: log.file().as_str().to_owned(),
            rows: u64::from(log.rows()),
            from: first.map(write_timestamp).unwrap_or_default(),
            seconds: points.iter().map(|(at, _)| since(*at)).collect(),
            celsius: points.iter().map(|(_, one)| one.get()).collect(),
            extra: Extra::new(),
        }
    }

    pub(crate) fn understand(&self, place: &Place) -> Understood {
        let from = moment(&self.from, &place.field("from"))?;
        let file = understand::text(&self.file, &place.field("file"))?;
        let rows =
            u32::try_from(self.rows).map_err(|_| place.field("rows").wrong(Problem::Log(None)))?;
        if self.seconds.len() != self.celsius.len() {
            return Err(place.wrong(Problem::Log(None)));
        }
        let mut points = Vec::with_capacity(self.seconds.len());
        for (point, (seconds, celsius)) in self.seconds.iter().zip(&self.celsius).enumerate() {
            let wrong = || place.field("seconds").item(point).wrong(Problem::Log(None));
            let at = from.after(Seconds::new(*seconds)).ok_or_else(wrong)?;
            points.push((at, Celsius::new(*celsius)));
        }
        let Ok(spotted) = place_of(&self.place) else {
            return Ok(Err(Unreadable::Word(self.place.clone())));
        };
        let log = TemperatureLog::new(spotted, file, rows, points);
        let log = log.map_err(|why| wrong_log(place, why))?;
        Ok(Ok(Content::Log(log)))
    }
}

fn wrong_log(place: &Place, why: TemperatureLogError) -> OpenError {
    match why {
        TemperatureLogError::NotInOrder { point } => place
            .field("seconds")
            .item(point)
            .wrong(Problem::Log(Some(why))),
        TemperatureLogError::Impossible { point } => place
            .field("celsius")
            .item(point)
            .wrong(Problem::Log(Some(why))),
        TemperatureLogError::TooFew | TemperatureLogError::TooMany => {
            place.field("seconds").wrong(Problem::Log(Some(why)))
        }
    }
}

impl StoredEvent {
    pub(crate) fn read(value: &Value, place: &Place) -> Result<Self, OpenError> {
        let mut fields = Fields::of(value, place)?;
        Ok(Self {
            at: fields.must("at", text)?,
            what: fields.must("what", text)?,
            extra: fields.rest(),
        })
    }

    pub(crate) fn describe(event: &ColdEvent) -> Self {
        Self {
            at: write_timestamp(event.at),
            what: event_name(event.kind).to_owned(),
            extra: Extra::new(),
        }
    }

    pub(crate) fn understand(&self, place: &Place) -> Understood {
        let at = moment(&self.at, &place.field("at"))?;
        let known = ColdEventKind::ALL
            .into_iter()
            .find(|kind| event_name(*kind) == self.what);
        Ok(known
            .map(|kind| Content::Event(ColdEvent { at, kind }))
            .ok_or_else(|| Unreadable::Word(self.what.clone())))
    }
}

impl StoredMetered {
    pub(crate) fn read(value: &Value, place: &Place) -> Result<Self, OpenError> {
        let mut fields = Fields::of(value, place)?;
        Ok(Self {
            from: fields.must("from", text)?,
            to: fields.must("to", text)?,
            energy: fields.must("energy", Reading::read)?,
            ran: fields.may("ran", number)?,
            extra: fields.rest(),
        })
    }

    pub(crate) fn describe(metered: &Metered) -> Self {
        Self {
            from: write_timestamp(metered.from()),
            to: write_timestamp(metered.to()),
            energy: describe::reading(metered.energy()),
            ran: metered.ran().map(Seconds::get),
            extra: Extra::new(),
        }
    }

    pub(crate) fn understand(&self, place: &Place) -> Understood {
        let from = moment(&self.from, &place.field("from"))?;
        let to = moment(&self.to, &place.field("to"))?;
        let energy = match understand::reading(&self.energy, &place.field("energy"))? {
            Ok(energy) => energy,
            Err(why) => return Ok(Err(why)),
        };
        let ran = self.ran.map(Seconds::new);
        let metered = Metered::new(from, to, energy, ran);
        let metered = metered.map_err(|why| place.wrong(Problem::Metered(why)))?;
        Ok(Ok(Content::Metered(metered)))
    }
}

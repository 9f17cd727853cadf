//! A job told line by line.

#![allow(dead_code)] // Each test file tells only a part of what can be told.

use diagnosis::{Assessment, CHANGE, Change, Choice, Item, Model, assess, item_of_pair};
use job::{
    Answer, ColdEvent, ColdEventKind, Content, Entry, Id, Job, Measured, Moment, Name, Origin,
    Place, Question, Reading, Rest, SetUp, Spot, StartTrial, Stop, TemperatureLog, Text, Tried,
    Unit,
};
use measure::MeterKind;
use measure::windings::Pair;
use quantity::{
    Accuracy, Amps, Celsius, Farads, Metres, Seconds, Volts, WattHours, Watts, parse_reading,
};

/// A job told line by line.
pub(crate) struct Story {
    pub(crate) job: Job,
    minute: i64,
}

impl Story {
    pub(crate) fn begin(mains: &str) -> Self {
        let job = Job::new(Id::new("story").unwrap(), moment(0), Origin::Invented);
        let mut story = Self { job, minute: 0 };
        story.choose("machine", "kind", "chest-freezer");
        story.choose("machine", "mains", mains);
        story.choose("machine", "complaint", "not-plugged-in");
        story.choose("refrigerant", "plate", "r134a");
        story
    }

    /// The same, looked over and found clear at the plug.
    pub(crate) fn grounded(mains: &str) -> Self {
        let mut story = Self::begin(mains);
        story.choose("look-over", "plate-mains", mains);
        story.tick("look-over", "signs", &[]);
        story.choose("ground", "earth-pin", "has");
        story.choose("ground", "tester", "ohmmeter");
        story
            .item(Item::BladesToEarth, "OL")
            .item(Item::BladesToMetal, "OL")
            .item(Item::EarthToMetal, "0.3")
            .item(Item::BladeToBlade, "6.4")
            .with("stored-charge", "stores", "nothing")
    }

    pub(crate) fn with(mut self, check: &str, item: &str, choice: &str) -> Self {
        self.choose(check, item, choice);
        self
    }

    pub(crate) fn tick(&mut self, check: &str, item: &str, choices: &[&str]) {
        let names = choices.iter().map(|choice| Name::new(choice).unwrap());
        self.answer(check, item, Answer::Choices(names.collect()));
    }

    /// A reading of any item, by a good meter that picks its range itself.
    pub(crate) fn item(mut self, item: Item, typed: &str) -> Self {
        let meter = MeterKind::Good.automatic();
        let measured = match item.unit().unwrap() {
            Unit::Ohm => Measured::Ohms(parse_reading(typed, meter.top).unwrap()),
            Unit::Volt => Measured::Volts(parse_reading(typed, Volts::new(600.0)).unwrap()),
            Unit::Celsius => Measured::Celsius(parse_reading(typed, Celsius::new(200.0)).unwrap()),
            Unit::Farad => Measured::Farads(parse_reading(typed, Farads::new(1.0)).unwrap()),
            Unit::Ampere => Measured::Amps(parse_reading(typed, Amps::new(100.0)).unwrap()),
            Unit::Watt => Measured::Watts(parse_reading(typed, Watts::new(4_000.0)).unwrap()),
            Unit::Metre => Measured::Metres(parse_reading(typed, Metres::new(100.0)).unwrap()),
            Unit::WattHour => {
                Measured::WattHours(parse_reading(typed, WattHours::new(1e6)).unwrap())
            }
        };
        let reading = Reading {
            typed: Text::new(typed).unwrap(),
            measured,
            accuracy: meter.accuracy,
        };
        self.answer(item.check().name(), item.name(), Answer::Reading(reading));
        self
    }

    /// A machine for 120 V with bare pins in a triangle.
    pub(crate) fn bare() -> Self {
        let mut story = Self::grounded("120-v-60-hz");
        story.choose("windings", "start-gear", "off");
        story.choose("windings", "shape", "point-up");
        story
    }

    pub(crate) fn choose(&mut self, check: &str, item: &str, choice: &str) {
        self.answer(check, item, Answer::Choice(Name::new(choice).unwrap()));
    }

    pub(crate) fn read(self, pair: Pair, typed: &str) -> Self {
        self.ohms(item_of_pair(pair), typed)
    }

    /// What the probes read together.
    pub(crate) fn leads(self, typed: &str) -> Self {
        self.ohms("leads-reading", typed)
    }

    fn ohms(mut self, item: &str, typed: &str) -> Self {
        let meter = MeterKind::Good.automatic();
        let reading = Reading {
            typed: Text::new(typed).unwrap(),
            measured: Measured::Ohms(parse_reading(typed, meter.top).unwrap()),
            accuracy: meter.accuracy,
        };
        self.answer("windings", item, Answer::Reading(reading));
        self
    }

    /// A try to start after so many minutes of rest, `minute` minutes into the story.
    pub(crate) fn tried(mut self, minute: i64, set_up: SetUp, rest: f64, outcome: Tried) -> Self {
        self.minute = minute - 1;
        self.enter(Content::Trial(trial(minute, set_up, rest, outcome)));
        self
    }

    /// The same with what a clamp showed at most, and what the volts fell to.
    pub(crate) fn clamped(
        mut self,
        (minute, set_up, rest, outcome): (i64, SetUp, f64, Tried),
        highest: &str,
        lowest: &str,
    ) -> Self {
        let mut trial = trial(minute, set_up, rest, outcome);
        let reading = |typed: &str, measured: Measured, (percent, counts): (f64, f64)| {
            let accuracy = Accuracy::new(percent, counts).unwrap();
            Some(Reading {
                typed: Text::new(typed).unwrap(),
                measured,
                accuracy,
            })
        };
        let amps = Measured::Amps(parse_reading(highest, Amps::new(100.0)).unwrap());
        trial.highest = reading(highest, amps, (3.0, 5.0));
        if !lowest.is_empty() {
            let volts = Measured::Volts(parse_reading(lowest, Volts::new(600.0)).unwrap());
            trial.lowest = reading(lowest, volts, (1.0, 3.0));
        }
        self.minute = minute - 1;
        self.enter(Content::Trial(trial));
        self
    }

    /// The compressor stopped.
    pub(crate) fn stopped(mut self, minute: i64) -> Self {
        self.minute = minute - 1;
        self.enter(Content::Stop(Stop {
            at: moment(minute),
            ran: None,
        }));
        self
    }

    /// Something happened, so many minutes into the story.
    pub(crate) fn event(mut self, minute: i64, kind: ColdEventKind) -> Self {
        self.minute = self.minute.max(minute - 1);
        let at = moment(minute);
        self.enter(Content::Event(ColdEvent { at, kind }));
        self
    }

    /// What a thermometer showed.
    pub(crate) fn spot(mut self, minute: i64, place: Place, typed: &str) -> Self {
        self.minute = self.minute.max(minute - 1);
        let measured = Measured::Celsius(parse_reading(typed, Celsius::new(200.0)).unwrap());
        let reading = Reading {
            typed: Text::new(typed).unwrap(),
            measured,
            accuracy: Accuracy::new(1.0, 2.0).unwrap(),
        };
        let at = moment(minute);
        self.enter(Content::Spot(Spot { place, at, reading }));
        self
    }

    /// A logger's file: a temperature each five minutes from one minute of the story to another.
    pub(crate) fn logged(
        mut self,
        place: Place,
        (from, to): (i64, i64),
        temperature: impl Fn(f64) -> f64,
    ) -> Self {
        self.minute = self.minute.max(to - 1);
        let minutes = (from..=to).step_by(5);
        let points: Vec<(Moment, Celsius)> = minutes
            .map(|minute| {
                let shown = libm::round(temperature((minute - from) as f64) * 10.0) / 10.0;
                (moment(minute), Celsius::new(shown))
            })
            .collect();
        let file = Text::new("logger.csv").unwrap();
        let log = TemperatureLog::new(place, file, points.len() as u32, points).unwrap();
        self.enter(Content::Log(log));
        self
    }

    /// Something was done to the machine.
    pub(crate) fn changed(self, change: Change) -> Self {
        self.with(CHANGE, change.name(), change.how())
    }

    pub(crate) fn strike(mut self, entry: usize) -> Self {
        let struck = self.job.entries()[entry].id.clone();
        self.enter(Content::Strike(struck));
        self
    }

    pub(crate) fn answer(&mut self, check: &str, item: &str, answer: Answer) {
        self.enter(Content::Answer {
            question: Question::new(check, item).unwrap(),
            answer,
        });
    }

    pub(crate) fn enter(&mut self, content: Content) {
        self.minute += 1;
        let entry = Entry {
            id: Id::new(&format!("entry-{}", self.job.entries().len())).unwrap(),
            at: moment(self.minute),
            content,
        };
        self.job.add(entry).unwrap();
    }

    /// What follows is entered from that minute on.
    pub(crate) fn later(&mut self, minute: i64) {
        self.minute = minute;
    }

    pub(crate) fn now(&self) -> Assessment {
        self.after(0)
    }

    pub(crate) fn after(&self, minutes: i64) -> Assessment {
        assess(&Model::default(), &self.job, moment(self.minute + minutes))
    }
}

pub(crate) fn moment(minute: i64) -> Moment {
    Moment::new(1_795_600_000_000 + minute * 60_000, 60).unwrap()
}

fn trial(minute: i64, set_up: SetUp, rest: f64, outcome: Tried) -> StartTrial {
    StartTrial {
        set_up,
        at: moment(minute),
        rest: Rest::new(Seconds::new(rest * 60.0)).unwrap(),
        dead: None,
        is_cold: false,
        outcome,
        highest: None,
        settled: None,
        lowest: None,
        note: None,
    }
}

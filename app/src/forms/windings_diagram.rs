//! What the pin diagram shows: words and states, worked out from the job and what is known.

use diagnosis::{PinShape, WindingsKnown, item_of_pair};
use job::{Answer, Job, Measured};
use measure::windings::{Label, Pair, Pin, Role};
use quantity::Observed;
use wording::{Locale, measured, uncertain_ohms, windings_page};

/// The whole picture.
#[derive(Debug, Clone, PartialEq)]
pub struct PinPicture {
    /// How the pins lie.
    pub shape: PinShape,
    /// What stands beside each pin, in the order of [`Pin::ALL`].
    pub pins: [Label; 3],
    /// What stands on each line, in the order of [`Pair::ALL`].
    pub lines: [Line; 3],
}

/// One line between two pins.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Line {
    /// What was read last.
    pub reading: Option<Shown>,
    /// What it read before, oldest first.
    pub earlier: Vec<Shown>,
    /// What it should read, as one or two values with their bands.
    pub expected: Vec<String>,
    /// The winding between its pins with the leads taken out.
    pub winding: Option<String>,
    /// Whether the person said that it can't be measured.
    pub given_up: bool,
}

/// A reading in words.
#[derive(Debug, Clone, PartialEq)]
pub struct Shown {
    /// In full: "4.7 Ω", or "over range: more than 2 MΩ".
    pub full: String,
    /// As short as on the meter: "4.7 Ω", or "OL".
    pub short: String,
}

impl Shown {
    /// Says a reading.
    #[must_use]
    pub fn of(reading: Measured, locale: &Locale) -> Self {
        let full = measured(reading, locale);
        let short = match reading.numbers().0 {
            Observed::Value(_) => full.clone(),
            Observed::OverRange { .. } => windings_page::OVER_RANGE.to_owned(),
        };
        Self { full, short }
    }
}

impl PinPicture {
    /// Draws what a job holds and what is known of it.
    #[must_use]
    pub fn of(job: &Job, known: Option<&WindingsKnown>, shape: PinShape, locale: &Locale) -> Self {
        let line = |pair| Line {
            expected: known.map_or_else(Vec::new, |known| expected(known, pair, locale)),
            winding: known.and_then(|known| winding(known, pair, locale)),
            ..line_of(job, pair, locale)
        };
        let label = |pin| known.map_or(Label::Nothing, |known| known.label(pin));
        Self {
            shape,
            pins: Pin::ALL.map(label),
            lines: Pair::ALL.map(line),
        }
    }

    /// The line between two pins.
    #[must_use]
    pub fn line(&self, pair: Pair) -> &Line {
        &self.lines[pair.index()]
    }

    /// What stands beside a pin.
    #[must_use]
    pub fn label(&self, pin: Pin) -> Label {
        self.pins[pin.index()]
    }
}

impl Line {
    /// What stands on the line itself.
    #[must_use]
    pub fn value(&self) -> Option<String> {
        match &self.reading {
            Some(reading) => Some(reading.short.clone()),
            None if self.given_up => Some(windings_page::GIVEN_UP.to_owned()),
            None => None,
        }
    }

    /// Whether it was never read, because the person could not.
    #[must_use]
    pub fn is_given_up(&self) -> bool {
        self.given_up && self.reading.is_none()
    }

    /// Whether there is nothing to show but a place to be filled in.
    #[must_use]
    pub fn is_blank(&self) -> bool {
        self.value().is_none() && self.expected.is_empty()
    }
}

/// The readings of one pair: the last one counts, the earlier ones stay to be seen.
fn line_of(job: &Job, pair: Pair, locale: &Locale) -> Line {
    let mut line = Line::default();
    for (_, answer) in job.answers("windings", item_of_pair(pair)) {
        match answer {
            Answer::Reading(reading) => {
                line.earlier.extend(line.reading.take());
                line.reading = Some(Shown::of(reading.measured, locale));
                line.given_up = false;
            }
            Answer::NotDone(_) => line.given_up = line.reading.is_none(),
            _ => {}
        }
    }
    line
}

/// What is foretold for a pair, the sum first.
fn expected(known: &WindingsKnown, pair: Pair, locale: &Locale) -> Vec<String> {
    let forecast = known.windings.forecast.as_ref();
    forecast
        .filter(|forecast| forecast.pair == pair)
        .map(|forecast| {
            let values = core::iter::once(&forecast.sum).chain(&forecast.difference);
            values.map(|value| uncertain_ohms(value, locale)).collect()
        })
        .unwrap_or_default()
}

/// The winding between two pins, once all three pins are named.
fn winding(known: &WindingsKnown, pair: Pair, locale: &Locale) -> Option<String> {
    let resistances = known.windings.resistances.as_ref()?;
    let is_named = |role| known.pin_of(role).is_some();
    if !Role::ALL.into_iter().all(is_named) {
        return None;
    }
    let left_out = Role::ALL
        .into_iter()
        .find(|role| known.pin_of(*role) == Some(pair.opposite()))?;
    Some(match left_out {
        Role::Start => windings_page::run_winding(&resistances.run, locale),
        Role::Run => windings_page::start_winding(&resistances.start, locale),
        Role::Common => {
            windings_page::both_windings(&(&resistances.run + &resistances.start), locale)
        }
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::forms::pair_reading::{Checked, Target, checked};
    use diagnosis::{Choice, GearChoice, Model, assess_checks};
    use job::{Content, Entry, Id, Moment, Name, NotDone, Origin, Question};
    use measure::MeterKind;

    struct Bench(Job);

    impl Bench {
        fn new() -> Self {
            let now = Moment::new(0, 0).unwrap();
            let mut bench = Self(Job::new(Id::new("j").unwrap(), now, Origin::Invented));
            let off = Answer::Choice(Name::new(GearChoice::Off.name()).unwrap());
            bench.add("start-gear", off);
            bench
        }

        fn add(&mut self, item: &str, answer: Answer) {
            let content = Content::Answer {
                question: Question::new("windings", item).unwrap(),
                answer,
            };
            let id = Id::new(&format!("e{}", self.0.entries().len())).unwrap();
            let at = Moment::new(0, 0).unwrap();
            self.0.add(Entry { id, at, content }).unwrap();
        }

        fn read(&mut self, pair: Pair, typed: &str) {
            match checked(
                typed,
                Target::Pair(pair),
                MeterKind::Good.automatic(),
                wording::Degrees::Celsius,
            ) {
                Checked::Fine(answer) => self.add(item_of_pair(pair), answer),
                other => panic!("{other:?}"),
            }
        }

        fn picture(&self) -> PinPicture {
            let now = Moment::new(0, 0).unwrap();
            let assessment = assess_checks(&Model::default(), &self.0, now);
            let known = assessment.windings.as_ref();
            PinPicture::of(&self.0, known, PinShape::PointUp, &Locale::default())
        }
    }

    #[test]
    fn before_anything_is_read_pins_and_lines_are_bare() {
        let picture = Bench::new().picture();
        assert_eq!(picture.pins, [Label::Nothing; 3]);
        assert!(picture.lines.iter().all(|line| *line == Line::default()));
    }

    #[test]
    fn after_two_numbers_the_third_line_carries_the_sum_and_the_difference() {
        let mut bench = Bench::new();
        bench.read(Pair::OneTwo, "4,7");
        bench.read(Pair::TwoThree, "7,6");
        let picture = bench.picture();
        assert_eq!(
            picture.line(Pair::OneTwo).value().as_deref(),
            Some("4.7\u{a0}Ω")
        );
        let expected = &picture.line(Pair::OneThree).expected;
        assert_eq!(expected.len(), 2);
        assert!(expected[0].starts_with("12."), "{expected:?}");
        assert!(picture.line(Pair::OneTwo).expected.is_empty());
    }

    #[test]
    fn after_three_numbers_pins_are_named_and_lines_carry_their_windings() {
        let mut bench = Bench::new();
        bench.read(Pair::OneTwo, "4.7");
        bench.read(Pair::TwoThree, "7.6");
        bench.read(Pair::OneThree, "12.0");
        let picture = bench.picture();
        let roles = picture.pins.map(|label| match label {
            Label::Is { role, .. } => Some(role),
            _ => None,
        });
        assert_eq!(
            roles,
            [Some(Role::Run), Some(Role::Common), Some(Role::Start)]
        );
        assert!(picture.lines.iter().all(|line| line.winding.is_some()));
        assert!(picture.lines.iter().all(|line| line.expected.is_empty()));
    }

    #[test]
    fn a_pair_read_twice_keeps_the_earlier_reading_to_be_seen() {
        let mut bench = Bench::new();
        bench.read(Pair::OneTwo, "4.9");
        bench.read(Pair::OneTwo, "4.7");
        let picture = bench.picture();
        let line = picture.line(Pair::OneTwo);
        assert_eq!(line.value().as_deref(), Some("4.7\u{a0}Ω"));
        let earlier: Vec<&str> = line.earlier.iter().map(|shown| &*shown.short).collect();
        assert_eq!(earlier, ["4.9\u{a0}Ω"]);
    }

    #[test]
    fn a_pair_given_up_says_so_until_it_is_read() {
        let mut bench = Bench::new();
        bench.add(
            item_of_pair(Pair::OneTwo),
            Answer::NotDone(NotDone::CannotReach),
        );
        assert!(bench.picture().line(Pair::OneTwo).given_up);
        bench.read(Pair::OneTwo, "OL");
        let picture = bench.picture();
        let line = picture.line(Pair::OneTwo);
        assert!(!line.given_up);
        assert_eq!(line.value().as_deref(), Some("OL"));
        let full = line.reading.clone().unwrap().full;
        assert_eq!(full, "over range: more than 40\u{a0}MΩ");
    }
}

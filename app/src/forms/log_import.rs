//! A logger's file on its way into a job: looked at, asked about, given places, taken in.

use std::sync::Arc;

use job::{Moment, Place, TemperatureLog, Text};
use logfile::{Answer, LogError, Logged, LoggedSeries, Looked, PlaceHint, Question, look, thin};
use quantity::Celsius;

/// A file that was looked at, with all that was said to it so far. A copy shares the file and what was
/// read from it.
#[derive(Debug, Clone, PartialEq)]
pub struct LogImport {
    name: Text,
    looked: Arc<Looked>,
    answers: Vec<Answer>,
    /// Where it stands by these answers. Reading takes a phone a while: once for each answer is enough.
    stage: Arc<Stage>,
    /// What was said of each column's place; `None` leaves the column out.
    places: Vec<(usize, Option<Place>)>,
}

/// Where an import stands.
#[derive(Debug, Clone, PartialEq)]
pub enum Stage {
    /// Something can't be told by looking.
    Asks(Question),
    /// All is settled, and this was read.
    Read(Logged),
    /// It was settled and can't be read all the same.
    Failed(LogError),
}

/// A file's name where its own can't be kept.
const NAMELESS: &str = "file";

impl LogImport {
    /// Looks at a file.
    ///
    /// # Errors
    /// [`LogError`] where it is no log.
    pub fn of_file(name: &str, bytes: &[u8]) -> Result<Self, LogError> {
        let looked = look(bytes)?;
        let name: String = name.chars().filter(|c| !c.is_control()).take(200).collect();
        let name = Text::new(&name).or_else(|_| Text::new(NAMELESS));
        let stage = Arc::new(stage_of(&looked, &[]));
        Ok(Self {
            name: name.map_err(|_| LogError::NotText)?,
            looked: Arc::new(looked),
            answers: Vec::new(),
            stage,
            places: Vec::new(),
        })
    }

    /// What was found by looking.
    #[must_use]
    pub fn looked(&self) -> &Looked {
        &self.looked
    }

    /// The file's name.
    #[must_use]
    pub fn name(&self) -> &str {
        self.name.as_str()
    }

    /// The next question, or what was read.
    #[must_use]
    pub fn stage(&self) -> &Stage {
        &self.stage
    }

    /// Answers a question.
    pub fn answer(&mut self, answer: Answer) {
        self.answers.push(answer);
        self.settle();
    }

    fn settle(&mut self) {
        self.stage = Arc::new(stage_of(&self.looked, &self.answers));
    }

    /// Whether an answer can be taken back.
    #[must_use]
    pub fn has_answers(&self) -> bool {
        !self.answers.is_empty()
    }

    /// Takes the last answer back.
    pub fn take_back(&mut self) {
        self.answers.pop();
        self.settle();
    }

    /// Says where a column was taken; `None` leaves it out.
    pub fn put(&mut self, column: usize, place: Option<Place>) {
        self.places.retain(|(other, _)| *other != column);
        self.places.push((column, place));
    }

    /// Where a column was taken: as said, else as its heading has it. The outer `None`: nobody knows.
    #[must_use]
    pub fn place(&self, column: usize) -> Option<Option<Place>> {
        let said = self.places.iter().find(|(other, _)| *other == column);
        let hint = || self.looked.columns.get(column)?.place.map(of_hint);
        said.map(|(_, place)| *place).or_else(|| hint().map(Some))
    }

    /// Whether each column that was read has a place or is left out, and one at least is taken.
    #[must_use]
    pub fn can_be_taken(&self, logged: &Logged) -> bool {
        let places: Option<Vec<_>> = usable(logged).map(|one| self.place(one.column)).collect();
        places.is_some_and(|places| places.iter().any(Option::is_some))
    }

    /// What enters the job: a course for each column with a place, thinned to what one may hold.
    /// The moments carry the offset that the file's clock was said to have.
    #[must_use]
    pub fn logs(&self, logged: &Logged) -> Vec<TemperatureLog> {
        let offset = self.offset_minutes();
        let logs = usable(logged).filter_map(|one| {
            let place = self.place(one.column)??;
            let points = thin(&one.points, TemperatureLog::MOST_POINTS);
            let points: Option<Vec<(Moment, Celsius)>> = points
                .into_iter()
                .map(|point| {
                    let milliseconds = libm::round(point.at.get() * 1_000.0) as i64;
                    Some((Moment::new(milliseconds, offset).ok()?, point.temperature))
                })
                .collect();
            let rows = u32::try_from(one.points.len()).unwrap_or(u32::MAX);
            TemperatureLog::new(place, self.name.clone(), rows, points?).ok()
        });
        logs.collect()
    }

    /// The offset that the file's clock was said to have, in minutes east of UTC.
    #[must_use]
    pub fn offset_minutes(&self) -> i16 {
        let mut answers = self.answers.iter().rev();
        answers
            .find_map(|answer| match answer {
                Answer::Zone(minutes) => Some(*minutes),
                _ => None,
            })
            .unwrap_or(0)
    }
}

fn stage_of(looked: &Looked, answers: &[Answer]) -> Stage {
    match looked.settle(answers) {
        Err(open) => match open.into_iter().min_by_key(rank) {
            Some(question) => Stage::Asks(question),
            None => Stage::Failed(LogError::NoRows),
        },
        Ok(layout) => match looked.read(&layout) {
            Ok(logged) => Stage::Read(logged),
            Err(why) => Stage::Failed(why),
        },
    }
}

/// Columns that hold a course.
pub fn usable(logged: &Logged) -> impl Iterator<Item = &LoggedSeries> {
    logged.series.iter().filter(|one| one.points.len() >= 2)
}

/// The columns come first: what isn't read needs no answers.
const fn rank(question: &Question) -> u8 {
    match question {
        Question::Columns { .. } => 0,
        Question::DecimalMark { .. } => 1,
        Question::Unit { .. } => 2,
        Question::DateOrder { .. } => 3,
        Question::Clock { .. } => 4,
        Question::ElapsedUnit { .. } => 5,
        Question::Start { .. } => 6,
        Question::Zone { .. } => 7,
    }
}

const fn of_hint(hint: PlaceHint) -> Place {
    match hint {
        PlaceHint::Freezer => Place::Freezer,
        PlaceHint::FreshFood => Place::FreshFood,
        PlaceHint::Room => Place::Room,
        PlaceHint::Evaporator => Place::Evaporator,
        PlaceHint::Condenser => Place::Condenser,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use logfile::{DateOrder, DegreeUnit};

    const OPEN: &[u8] = b"Time,Freezer\n03/04/2024 20:00,68.0\n03/04/2024 20:05,64.4\n";

    #[test]
    fn one_question_after_another_until_it_is_read_and_back() {
        let mut import = LogImport::of_file("log.csv", OPEN).unwrap();
        let unit = DegreeUnit::Fahrenheit;
        let Stage::Asks(Question::Unit { column: 1, .. }) = import.stage() else {
            panic!("{:?}", import.stage());
        };
        import.answer(Answer::Unit { column: 1, unit });
        assert!(matches!(
            import.stage(),
            Stage::Asks(Question::DateOrder { .. })
        ));
        import.answer(Answer::DateOrder(DateOrder::DayMonthYear));
        assert!(matches!(import.stage(), Stage::Asks(Question::Zone { .. })));
        import.answer(Answer::Zone(60));
        let Stage::Read(logged) = import.stage().clone() else {
            panic!();
        };
        let logs = import.logs(&logged);
        assert_eq!(logs.len(), 1);
        assert_eq!(logs[0].place(), Place::Freezer);
        let (at, shown) = logs[0].points()[0];
        assert_eq!((at.wall_clock().month, at.wall_clock().hour), (4, 20));
        assert!((shown.get() - 20.0).abs() < 1e-9);
        import.take_back();
        assert!(matches!(import.stage(), Stage::Asks(Question::Zone { .. })));
    }

    #[test]
    fn a_column_without_a_place_is_asked_about_and_can_be_left_out() {
        let file = b"when;a \xC2\xB0C;b \xC2\xB0C\n2024-05-06T10:00:00Z;1,5;-18\n2024-05-06T10:05:00Z;1,6;-18,5\n";
        let mut import = LogImport::of_file("\u{7}", file).unwrap();
        if let Stage::Asks(Question::Columns { candidates }) = import.stage().clone() {
            import.answer(Answer::Columns(candidates));
        }
        let Stage::Read(logged) = import.stage().clone() else {
            panic!("{:?}", import.stage());
        };
        assert!(!import.can_be_taken(&logged));
        import.put(1, None);
        assert!(!import.can_be_taken(&logged));
        import.put(2, Some(Place::Freezer));
        assert!(import.can_be_taken(&logged));
        let logs = import.logs(&logged);
        assert_eq!(logs.len(), 1);
        assert_eq!(logs[0].rows(), 2);
        import.put(2, None);
        assert!(!import.can_be_taken(&logged));
    }
}

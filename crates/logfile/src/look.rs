//! What a file is, as far as looking tells.

use std::sync::Arc;

use quantity::{Celsius, Seconds};

use crate::LogError;
use crate::decoded::decoded;
use crate::degrees::{DegreeUnit, plausible_units};
use crate::layout::{Layout, Series, When};
use crate::number::DecimalMark;
use crate::question::{Answer, Question};
use crate::read::{Logged, read_table};
use crate::rows::Reader;
use crate::structure::{Kind, Structure, delimiter_of};
use crate::survey::{Numbers, Survey};
use crate::table::{Delimiter, Table};
use crate::when::when;
use crate::words::{self, PlaceHint, folded, place_named};

/// What a column holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Role {
    /// When, or a part of it.
    When,
    /// Temperatures, or what may be such.
    Temperature,
    /// The number of a row.
    RowNumber,
    /// Anything else.
    Other,
}

/// One column of a file.
#[derive(Debug, Clone, PartialEq)]
pub struct Column {
    /// What stands above it; empty where nothing does.
    pub heading: String,
    /// What it holds.
    pub role: Role,
    /// The scale of its temperatures, where file or column names one.
    pub unit: Option<DegreeUnit>,
    /// The place that its heading speaks of.
    pub place: Option<PlaceHint>,
    /// What it has in the first row of the log.
    pub sample: String,
}

/// A row as it is understood so far, to be held against the file.
#[derive(Debug, Clone, PartialEq)]
pub struct PreviewRow {
    /// Its cells as they stand in the file.
    pub cells: Vec<String>,
    /// When, in seconds since 1970-01-01T00:00:00Z; questions that are open may move it.
    pub at: Option<Seconds>,
    /// The temperature in each column of [`Role::Temperature`], in their order.
    pub temperatures: Vec<Option<Celsius>>,
}

/// What was found in a file.
#[derive(Debug, Clone, PartialEq)]
pub struct Looked {
    /// What stands between its cells.
    pub delimiter: Delimiter,
    /// What stands in front of its decimals.
    pub decimal_mark: DecimalMark,
    /// Its columns.
    pub columns: Vec<Column>,
    /// Rows from the first of the log to the end.
    pub rows: usize,
    /// What has to be answered before it can be read.
    pub questions: Vec<Question>,
    /// The first rows as understood so far.
    pub preview: Vec<PreviewRow>,
    guess: Layout,
    /// Its cells: reading needn't cut them once more.
    table: Arc<Table>,
}

/// Rows in a preview.
const PREVIEW: usize = 5;

/// Looks at a file: which columns it has, what is in them, and what can't be told.
///
/// # Errors
/// [`LogError`] where it is no log.
///
/// ```
/// use logfile::{Answer, DateOrder, DegreeUnit, Question, look, read};
/// let file = b"Time,Temp\n03/04/2024 8:00 PM,68.0\n03/04/2024 8:05 PM,64.4\n";
/// let looked = look(file).unwrap();
/// assert!(matches!(looked.questions[..], [
///     Question::DateOrder { .. }, Question::Zone { .. }, Question::Unit { column: 1, .. },
/// ]));
/// let answers = [
///     Answer::DateOrder(DateOrder::MonthDayYear),
///     Answer::Zone(-300),
///     Answer::Unit { column: 1, unit: DegreeUnit::Fahrenheit },
/// ];
/// let logged = read(file, &looked.settle(&answers).unwrap()).unwrap();
/// assert!((logged.series[0].points[1].temperature.get() - 18.0).abs() < 1e-9);
/// ```
pub fn look(bytes: &[u8]) -> Result<Looked, LogError> {
    let text = decoded(bytes)?;
    let delimiter = delimiter_of(&text)?;
    let table = Table::split(&text, delimiter)?;
    let structure = Structure::of(&table).ok_or(LogError::NoRows)?;
    structure.check_headings(&table, delimiter)?;
    let survey = Survey::of(&table, &structure);
    let (when, mut questions) = when(&table, &structure, &survey)?;
    if let Some(sample) = survey.doubtful.clone() {
        questions.push(Question::DecimalMark { sample });
    }
    let columns = columns(&table, &structure, &survey, when);
    let candidates: Vec<usize> = (0..columns.len())
        .filter(|column| columns[*column].role == Role::Temperature)
        .collect();
    if candidates.is_empty() {
        return Err(LogError::NoTemperatures);
    }
    questions.extend(open_units(&table, &structure, &survey, &columns));
    if candidates.len() > 1 {
        let candidates = candidates.clone();
        questions.push(Question::Columns { candidates });
    }
    let series = candidates.iter().map(|column| Series {
        column: *column,
        unit: columns[*column].unit.unwrap_or(DegreeUnit::Celsius),
    });
    let guess = Layout {
        delimiter,
        mark: survey.mark,
        first: structure.first,
        heading_row: structure.heading_row,
        headings: structure.headings.clone(),
        when,
        offset_minutes: 0,
        start: 0.0,
        series: series.collect(),
    };
    let rows = table.rows() - structure.first;
    if rows < 2 {
        return Err(LogError::TooFewRows { rows });
    }
    Ok(Looked {
        delimiter,
        decimal_mark: survey.mark,
        columns,
        rows,
        questions,
        preview: preview(&table, &guess),
        guess,
        table: Arc::new(table),
    })
}

impl Looked {
    /// How the file is to be read, once every question has an answer that it takes. Answers to
    /// what wasn't asked change nothing; a column that isn't read needs no scale.
    ///
    /// # Errors
    /// The questions that are still open.
    pub fn settle(&self, answers: &[Answer]) -> Result<Layout, Vec<Question>> {
        let mut layout = self.guess.clone();
        let mut open = Vec::new();
        for question in &self.questions {
            match answers.iter().rev().find(|answer| question.takes(answer)) {
                Some(answer) => apply(&mut layout, answer),
                None => open.push(question.clone()),
            }
        }
        let is_read = |column: usize| layout.series.iter().any(|one| one.column == column);
        open.retain(
            |question| !matches!(question, Question::Unit { column, .. } if !is_read(*column)),
        );
        if open.is_empty() {
            Ok(layout)
        } else {
            Err(open)
        }
    }
}

impl Looked {
    /// Reads the file that was looked at by a layout that [`Looked::settle`] gave for it. The same as
    /// [`read`] of its bytes, which aren't needed any more.
    ///
    /// # Errors
    /// As for [`read`].
    ///
    /// [`read`]: crate::read()
    ///
    /// ```
    /// use logfile::look;
    /// let looked = look(b"Time;Freezer \xC2\xB0C\n2024-03-04T20:00Z;4,5\n2024-03-04T20:05Z;4,0\n").unwrap();
    /// let logged = looked.read(&looked.settle(&[]).unwrap()).unwrap();
    /// assert_eq!(logged.rows, 2);
    /// ```
    pub fn read(&self, layout: &Layout) -> Result<Logged, LogError> {
        read_table(&self.table, layout)
    }
}

fn apply(layout: &mut Layout, answer: &Answer) {
    match (answer, &mut layout.when) {
        (Answer::DateOrder(one), When::Calendar { order, .. }) => *order = *one,
        (Answer::Clock(one), When::Calendar { clock, .. } | When::Time { clock, .. }) => {
            *clock = *one
        }
        (Answer::ElapsedUnit(one), When::Elapsed { unit, .. } | When::Time { unit, .. }) => {
            *unit = *one
        }
        (Answer::Zone(minutes), _) => layout.offset_minutes = *minutes,
        (Answer::Start(start), _) => layout.start = start.get(),
        (Answer::Unit { column, unit }, _) => {
            let series = layout.series.iter_mut().filter(|one| one.column == *column);
            series.for_each(|one| one.unit = *unit);
        }
        (Answer::Columns(columns), _) => layout.series.retain(|one| columns.contains(&one.column)),
        (Answer::DecimalMark(mark), _) => layout.mark = *mark,
        // No question that takes these is asked beside another kind of time.
        (Answer::DateOrder(_) | Answer::Clock(_) | Answer::ElapsedUnit(_), _) => {}
    }
}

fn columns(table: &Table, structure: &Structure, survey: &Survey, when: When) -> Vec<Column> {
    let (one, other) = when.columns();
    let of_file = unit_of_file(table, structure);
    let mut columns: Vec<Column> = (0..structure.kinds.len())
        .map(|column| {
            let heading = structure.headings[column].clone();
            let numbers = survey.columns[column].as_ref();
            let named = folded(&heading);
            Column {
                role: if column == one || Some(column) == other {
                    Role::When
                } else {
                    numbers.map_or(Role::Other, |found| role(&named, found))
                },
                unit: unit(&heading, numbers, of_file),
                place: place_named(&named),
                sample: table.cell(structure.first, column).to_owned(),
                heading,
            }
        })
        .collect();
    // Where some columns say that they are temperatures, the others are something else.
    let says_so = |column: &Column, numbers: &Option<Numbers>| {
        let own = unit(&column.heading, numbers.as_ref(), None).is_some();
        column.role == Role::Temperature
            && (own || words::names_temperature(&folded(&column.heading)))
    };
    let surely: Vec<bool> = columns
        .iter()
        .zip(&survey.columns)
        .map(|(column, numbers)| says_so(column, numbers))
        .collect();
    if surely.contains(&true) {
        for (column, _) in columns
            .iter_mut()
            .zip(surely)
            .filter(|(column, sure)| !sure && column.role == Role::Temperature)
        {
            column.role = Role::Other;
        }
    }
    columns
}

/// Below so many rows a temperature may rise by one a row by chance.
const LEAST_NUMBERED: usize = 6;

fn role(heading: &str, found: &Numbers) -> Role {
    let is_whole = !found.has_decimals && found.unit.is_none();
    if words::names_another_quantity(heading) || found.other_unit {
        Role::Other
    } else if is_whole
        && found.counts_rows
        && (words::names_a_number(heading) || found.count >= LEAST_NUMBERED)
        || is_whole && found.rises && words::names_a_number(heading)
    {
        Role::RowNumber
    } else {
        Role::Temperature
    }
}

/// The scale that heading or cells name, else that of the whole file; none where heading and cells
/// name different ones.
fn unit(
    heading: &str,
    numbers: Option<&Numbers>,
    of_file: Option<DegreeUnit>,
) -> Option<DegreeUnit> {
    let above = DegreeUnit::named_in(heading);
    let behind = numbers.and_then(|found| found.unit);
    match (above, behind) {
        (Some(one), Some(other)) => (one == other).then_some(one),
        (one, other) => one.or(other).or(of_file),
    }
}

/// The one scale that the lines above the log name.
fn unit_of_file(table: &Table, structure: &Structure) -> Option<DegreeUnit> {
    let mut named = structure.preamble(table).filter_map(DegreeUnit::named_in);
    let unit = named.next()?;
    named.all(|other| other == unit).then_some(unit)
}

fn open_units(
    table: &Table,
    structure: &Structure,
    survey: &Survey,
    columns: &[Column],
) -> Vec<Question> {
    let is_open = |column: &&Column| column.role == Role::Temperature && column.unit.is_none();
    let open = columns
        .iter()
        .enumerate()
        .filter(|(_, column)| is_open(column));
    open.filter_map(|(column, _)| {
        let found = survey.columns[column].as_ref()?;
        let units = plausible_units(found.least, found.most);
        let mut rows = (structure.first..table.rows()).map(|row| table.cell(row, column));
        Some(Question::Unit {
            column,
            sample: rows.find(|cell| Kind::of(cell) == Kind::Number)?.to_owned(),
            plausible: units.map_or_else(Vec::new, Into::into),
        })
    })
    .collect()
}

fn preview(table: &Table, guess: &Layout) -> Vec<PreviewRow> {
    let mut reader = Reader::new(guess, table);
    let last = table.rows().min(guess.first + PREVIEW);
    let rows = guess.first..last;
    rows.map(|row| PreviewRow {
        cells: table.cells(row).map(str::to_owned).collect(),
        at: reader.at(table, row).ok().map(Seconds::new),
        temperatures: guess
            .series
            .iter()
            .map(|one| reader.celsius(table, row, *one).ok().map(Celsius::new))
            .collect(),
    })
    .collect()
}

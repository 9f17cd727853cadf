//! What the numbers of each column look like over the whole file.

use crate::degrees::DegreeUnit;
use crate::number::{Behind, DecimalMark, number, says_missing};
use crate::ranking::middle;
use crate::structure::{Kind, Structure};
use crate::table::Table;

/// As many rows, spread over the file, are looked at.
const MOST_ROWS: usize = 4000;
/// Nothing in or around a refrigerating machine is beyond this on any scale; loggers that count
/// thousands have other things in such a column.
const IMPLAUSIBLE: f64 = 1000.0;

/// A column's numbers under one decimal mark.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Numbers {
    pub(crate) least: f64,
    pub(crate) most: f64,
    pub(crate) count: usize,
    /// The scale that stands behind the numbers, where one and the same does.
    pub(crate) unit: Option<DegreeUnit>,
    /// Whether something else stands behind one of them.
    pub(crate) other_unit: bool,
    /// Whether they differ from each other by one, row by row from the beginning.
    pub(crate) counts_rows: bool,
    /// Whether each is greater than the one before it, from the beginning.
    pub(crate) rises: bool,
    /// Whether nine in ten of these steps are alike.
    pub(crate) is_even: bool,
    pub(crate) has_decimals: bool,
}

/// The numbers of all columns that hold some.
#[derive(Debug)]
pub(crate) struct Survey {
    pub(crate) mark: DecimalMark,
    /// A cell that says something else under the other mark, where nothing tells which is right.
    pub(crate) doubtful: Option<String>,
    pub(crate) columns: Vec<Option<Numbers>>,
}

impl Survey {
    pub(crate) fn of(table: &Table, structure: &Structure) -> Self {
        let rows = Rows::of(table, structure);
        let [point, comma] = DecimalMark::ALL.map(|mark| rows.cost(mark));
        let mark = if comma < point {
            DecimalMark::Comma
        } else {
            DecimalMark::Point
        };
        let doubtful = (point == comma).then(|| rows.differing()).flatten();
        let columns = 0..structure.kinds.len();
        Self {
            mark,
            doubtful,
            columns: columns.map(|column| rows.numbers(column, mark)).collect(),
        }
    }
}

struct Rows<'a> {
    table: &'a Table,
    first: usize,
    step: usize,
    columns: Vec<usize>,
}

impl<'a> Rows<'a> {
    fn of(table: &'a Table, structure: &Structure) -> Self {
        let is_number = |column: &usize| structure.kinds[*column] == Kind::Number;
        Self {
            table,
            first: structure.first,
            step: (table.rows() - structure.first).div_ceil(MOST_ROWS).max(1),
            columns: (0..structure.kinds.len()).filter(is_number).collect(),
        }
    }

    fn spread(&self) -> impl Iterator<Item = usize> {
        (self.first..self.table.rows()).step_by(self.step)
    }

    /// Cells that are no numbers under a mark, and such as are implausible.
    fn cost(&self, mark: DecimalMark) -> (usize, usize) {
        let (mut failed, mut implausible) = (0, 0);
        for row in self.spread() {
            for column in &self.columns {
                let cell = self.table.cell(row, *column);
                match number(cell, mark) {
                    Some(found) => implausible += usize::from(found.value.abs() > IMPLAUSIBLE),
                    None => failed += usize::from(!says_missing(cell)),
                }
            }
        }
        (failed, implausible)
    }

    /// The first cell that both marks read, and read differently.
    fn differing(&self) -> Option<String> {
        let value = |cell: &str, mark| number(cell, mark).map(|found| found.value);
        let cells = self.spread().flat_map(|row| {
            self.columns
                .iter()
                .map(move |column| self.table.cell(row, *column))
        });
        let differs = |cell: &&str| {
            let [point, comma] = DecimalMark::ALL.map(|mark| value(cell, mark));
            matches!((point, comma), (Some(one), Some(other)) if (one - other).abs() > 0.0)
        };
        cells.into_iter().find(differs).map(str::to_owned)
    }

    fn numbers(&self, column: usize, mark: DecimalMark) -> Option<Numbers> {
        if !self.columns.contains(&column) {
            return None;
        }
        let mut found = Numbers {
            least: f64::INFINITY,
            most: f64::NEG_INFINITY,
            count: 0,
            unit: None,
            other_unit: false,
            counts_rows: true,
            rises: true,
            is_even: false,
            has_decimals: false,
        };
        for row in self.spread() {
            let Some(one) = number(self.table.cell(row, column), mark) else {
                continue;
            };
            found.least = found.least.min(one.value);
            found.most = found.most.max(one.value);
            found.has_decimals |= one.decimals > 0;
            match one.behind {
                Behind::Degrees(unit) if found.unit.is_none_or(|known| known == unit) => {
                    found.unit = Some(unit)
                }
                Behind::Degrees(_) | Behind::Other => found.other_unit = true,
                Behind::Nothing => {}
            }
            found.count += 1;
        }
        self.steps(&mut found, column, mark);
        (found.count > 0).then_some(found)
    }

    fn steps(&self, found: &mut Numbers, column: usize, mark: DecimalMark) {
        let rows = self.first..self.table.rows().min(self.first + MOST_ROWS);
        let values = rows.filter_map(|row| number(self.table.cell(row, column), mark));
        let values: Vec<f64> = values.map(|one| one.value).collect();
        let steps: Vec<f64> = values.windows(2).map(|pair| pair[1] - pair[0]).collect();
        found.rises = steps.iter().all(|step| *step > 0.0);
        found.counts_rows = steps.iter().all(|step| (step - 1.0).abs() < 1e-9);
        let Some(usual) = middle(&steps) else { return };
        let alike = steps
            .iter()
            .filter(|step| (*step - usual).abs() <= 0.02 * usual);
        found.is_even = alike.count() * 10 >= steps.len() * 9;
    }
}

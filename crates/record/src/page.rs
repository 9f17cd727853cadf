//! What a record is made of.

use crate::svg::Drawing;

/// A record, ready to be written as text or HTML.
#[derive(Debug, Clone, PartialEq)]
pub struct Record {
    /// What the machine is called.
    pub title: String,
    /// In big letters: that no such machine was measured. `None` for a real one.
    pub unreal: Option<&'static str>,
    /// For whom it is.
    pub audience: &'static str,
    /// When it was made, and by which version.
    pub made: String,
    /// What one must know, in order: a page in print. No section is empty.
    pub sheet: Vec<Section>,
    /// What stands behind that, reading by reading. No section is empty, and there may be none.
    pub details: Vec<Section>,
}

/// The parts of a record, in their order.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// What it is, and what the seller said.
    Machine,
    /// What was proved, and what is owed.
    Proof,
    /// What was wrong.
    Wrong,
    /// What was changed.
    Done,
    /// How it cools down.
    CoolDown,
    /// Tries to start it after a rest.
    Starts,
    /// Which pin is which.
    Pins,
    /// Each link of the Path.
    Path,
    /// What was measured last, how far that may be off, and with which meter.
    Measured,
    /// What it uses.
    Energy,
    /// What the next owner has to mind.
    NextOwner,
    /// What was not tested.
    Limits,
    /// The owner's notes. Never on a buyer's page.
    Notes,
    /// The owner's costs and figures. Never on a buyer's page.
    Figures,
    /// What each check says of the machine as it is.
    Checks,
    /// Every reading, with its moment.
    Readings,
    /// What was seen, heard and looked up.
    Seen,
    /// Every try to start it.
    Tries,
    /// Temperatures out of loggers' files.
    Files,
    /// What probes on the sealed circuit say of it.
    Circuit,
    /// What was counted of its energy.
    Metering,
    /// How likely the Path is broken at each link.
    Odds,
}

/// A heading with what stands under it.
#[derive(Debug, Clone, PartialEq)]
pub struct Section {
    /// Which part it is.
    pub part: Part,
    /// The heading.
    pub heading: &'static str,
    /// What stands under it.
    pub blocks: Vec<Block>,
}

/// One piece of a section.
#[derive(Debug, Clone, PartialEq)]
pub enum Block {
    /// A heading within the section.
    Heading(&'static str),
    /// A paragraph.
    Paragraph(String),
    /// Lines of equal rank.
    Lines(Vec<String>),
    /// Rows under heads.
    Table(Table),
    /// A drawing. What it shows is said in words beside it.
    Picture(Picture),
}

/// A table. The first cell of each row names the row.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Table {
    /// What it is a table of.
    pub caption: &'static str,
    /// What stands above each column.
    pub heads: Vec<&'static str>,
    /// As many cells in each row as there are heads.
    pub rows: Vec<Vec<String>>,
}

/// A drawing with what it shows in words.
#[derive(Debug, Clone, PartialEq)]
pub struct Picture {
    /// What it is a drawing of.
    pub title: String,
    /// The same in words.
    pub says: Vec<String>,
    pub(crate) drawing: Drawing,
}

impl Record {
    /// The section of one part, where there is one.
    #[must_use]
    pub fn section(&self, part: Part) -> Option<&Section> {
        let mut all = self.sheet.iter().chain(&self.details);
        all.find(|section| section.part == part)
    }
}

impl Table {
    /// A block, or none for a table without rows.
    pub(crate) fn block(
        caption: &'static str,
        heads: &[&'static str],
        rows: Vec<Vec<String>>,
    ) -> Option<Block> {
        let heads = heads.to_vec();
        (!rows.is_empty()).then_some(Block::Table(Self {
            caption,
            heads,
            rows,
        }))
    }
}

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
    /// The sections in their order, none of them empty.
    pub sections: Vec<Section>,
}

/// The parts of a record, in their order.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// What it is, and what the seller said.
    Machine,
    /// What was wrong.
    Wrong,
    /// What was measured, and with which meter.
    Measured,
    /// What was changed.
    Done,
    /// Which pin is which.
    Pins,
    /// Each link of the Path.
    Path,
    /// Tries to start it after a rest.
    Starts,
    /// How it cools down.
    CoolDown,
    /// What it uses.
    Energy,
    /// What was proved, and what is owed.
    Proof,
    /// What the next owner has to mind.
    NextOwner,
    /// What was not tested.
    Limits,
    /// The owner's notes. Never on a buyer's page.
    Notes,
    /// The owner's costs and figures. Never on a buyer's page.
    Figures,
    /// When it was made and by which version.
    Made,
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
        self.sections.iter().find(|section| section.part == part)
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

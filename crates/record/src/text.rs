//! A record as plain text: the same contents, a line each.

use wording::record as words;

use crate::escaped::on_one_line;
use crate::page::{Block, Record, Section, Table};

impl Record {
    /// The record as plain text. A text of others never makes a line of its own.
    #[must_use]
    pub fn text(&self) -> String {
        let mut lines = vec![on_one_line(&self.title)];
        lines.extend(self.unreal.map(str::to_owned));
        lines.push(self.audience.to_owned());
        lines.push(self.made.clone());
        for section in &self.sheet {
            under_its_heading(section, &mut lines);
        }
        if !self.details.is_empty() {
            lines.push(String::new());
            lines.push(words::DETAILS.to_uppercase());
        }
        for section in &self.details {
            under_its_heading(section, &mut lines);
        }
        // Where the page is cut off, its other end says it too.
        lines.extend(self.unreal.map(|unreal| ["\n", unreal].concat()));
        lines.join("\n") + "\n"
    }
}

fn under_its_heading(section: &Section, lines: &mut Vec<String>) {
    lines.push(String::new());
    lines.push(section.heading.to_owned());
    for block in &section.blocks {
        written(block, section.heading, lines);
    }
}

fn written(block: &Block, under: &str, lines: &mut Vec<String>) {
    match block {
        Block::Heading(heading) => lines.push(format!("{heading}:")),
        Block::Paragraph(text) => lines.push(on_one_line(text)),
        Block::Lines(all) => lines.extend(all.iter().map(|line| bullet(line))),
        Block::Table(table) => {
            // A caption that only repeats the heading is for who sees no heading beside it.
            if table.caption != under {
                lines.push(format!("{}:", table.caption));
            }
            lines.extend(table.rows.iter().map(|row| bullet(&in_a_row(table, row))));
        }
        Block::Picture(picture) => {
            lines.extend(picture.says.iter().map(|line| bullet(line)));
        }
    }
}

fn bullet(line: &str) -> String {
    format!("- {}", on_one_line(line))
}

/// "Pins 1 and 2 (read: 12.9 Ω; may be off by: ± 0.3 Ω)": heads stand in front of their cells.
fn in_a_row(table: &Table, row: &[String]) -> String {
    let (Some(first), Some(rest)) = (row.first(), row.get(1..)) else {
        return String::new();
    };
    let heads = table.heads.iter().skip(1);
    let cells = heads.zip(rest);
    if let [only] = rest {
        return format!("{first}: {only}");
    }
    let cells = cells.map(|(head, cell)| format!("{}: {cell}", head.to_lowercase()));
    format!("{first} ({})", cells.collect::<Vec<_>>().join("; "))
}

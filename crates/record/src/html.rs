//! A record as HTML: a part of a page, or a file that needs nothing else.

use wording::record as words;

use crate::escaped::escaped;
use crate::page::{Block, Part, Picture, Record, Section, Table};

/// The style of a record, for a page that shows [`Record::body`].
const STYLE: &str = include_str!("record.css");
/// What only a file of its own needs.
const OF_A_FILE: &str = include_str!("file.css");

impl Record {
    /// One HTML file: no script, and nothing that is fetched.
    #[must_use]
    pub fn html(&self) -> String {
        let title = escaped(&self.title);
        format!(
            "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n\
             <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
             <meta name=\"color-scheme\" content=\"light dark\">\n\
             <title>{title}</title>\n<style>\n{OF_A_FILE}{STYLE}</style>\n</head>\n<body>\n\
             <main>\n{}</main>\n</body>\n</html>\n",
            self.body(true)
        )
    }

    /// The record as a piece of a page that has the style: from a heading of the first rank down,
    /// or of the second where the page has one of the first already.
    #[must_use]
    pub fn body(&self, is_whole_page: bool) -> String {
        let rank = if is_whole_page { 1 } else { 2 };
        let mut html = String::from("<article class=\"rec\">\n");
        if let Some(unreal) = self.unreal {
            html.push_str(&format!(
                "<p class=\"rec-unreal\">{}</p>\n",
                escaped(unreal)
            ));
        }
        html.push_str(&format!(
            "<h{rank}>{}</h{rank}>\n<p class=\"rec-audience\">{}. {}</p>\n",
            escaped(&self.title),
            escaped(self.audience),
            escaped(&self.made)
        ));
        html.push_str("<div class=\"rec-sheet\">\n");
        html.push_str(&sections(&self.sheet, "rec", rank + 1));
        html.push_str("</div>\n");
        if !self.details.is_empty() {
            let rank = rank + 1;
            html.push_str(&format!(
                "<section class=\"rec-details\">\n<h{rank}>{}</h{rank}>\n",
                escaped(words::DETAILS)
            ));
            html.push_str(&sections(&self.details, "rec-more", rank + 1));
            html.push_str("</section>\n");
        }
        if let Some(unreal) = self.unreal {
            html.push_str(&format!("<p>{}</p>\n", escaped(unreal)));
        }
        html.push_str("</article>\n");
        html
    }
}

fn sections(sections: &[Section], id: &str, rank: usize) -> String {
    let sections = sections.iter().enumerate();
    let html = sections.map(|(place, one)| section(one, &format!("{id}-{place}"), rank));
    html.collect()
}

fn section(section: &Section, id: &str, rank: usize) -> String {
    // What the machine is may stand in a row where room is short.
    let class = if section.part == Part::Machine {
        " class=\"rec-terse\""
    } else {
        ""
    };
    let heading = escaped(section.heading);
    let mut html = format!("<section{class}>\n<h{rank}>{heading}</h{rank}>\n");
    for (number, block) in section.blocks.iter().enumerate() {
        let id = format!("{id}-{number}");
        html.push_str(&self::block(block, &id, section.heading, rank + 1));
    }
    html.push_str("</section>\n");
    html
}

fn block(block: &Block, id: &str, under: &str, rank: usize) -> String {
    match block {
        Block::Heading(heading) => format!("<h{rank}>{}</h{rank}>\n", escaped(heading)),
        Block::Paragraph(text) => format!("<p>{}</p>\n", escaped(text)),
        Block::Lines(lines) => list(lines),
        Block::Table(table) => self::table(table, under),
        Block::Picture(picture) => self::picture(picture, id),
    }
}

fn list(lines: &[String]) -> String {
    let items = lines
        .iter()
        .map(|line| format!("<li>{}</li>\n", escaped(line)));
    format!("<ul>\n{}</ul>\n", items.collect::<String>())
}

fn table(table: &Table, under: &str) -> String {
    // A caption that repeats the heading is not seen twice, and still heard with its table.
    let class = if table.caption == under {
        " class=\"rec-unseen\""
    } else {
        ""
    };
    let heads = table.heads.iter();
    let heads = heads.map(|head| format!("<th scope=\"col\">{}</th>", escaped(head)));
    let rows = table.rows.iter().map(|row| self::row(table, row));
    let wide = if table.heads.len() > 3 {
        " class=\"rec-wide\""
    } else {
        ""
    };
    format!(
        "<table{wide}>\n<caption{class}>{}</caption>\n<thead><tr>{}</tr></thead>\n<tbody>\n{}</tbody>\n\
         </table>\n",
        escaped(table.caption),
        heads.collect::<String>(),
        rows.collect::<String>()
    )
}

fn row(table: &Table, row: &[String]) -> String {
    let cells = row.iter().zip(&table.heads).enumerate();
    let cells = cells.map(|(place, (cell, head))| {
        let cell = escaped(cell);
        if place == 0 {
            format!("<th scope=\"row\">{cell}</th>")
        } else {
            // On a narrow screen cells stand below each other, each behind its own head.
            format!("<td data-head=\"{}\">{cell}</td>", escaped(head))
        }
    });
    format!("<tr>{}</tr>\n", cells.collect::<String>())
}

fn picture(picture: &Picture, id: &str) -> String {
    let says = picture.says.join(" ");
    format!(
        "<figure>\n{}\n<figcaption>{}</figcaption>\n</figure>\n",
        picture.drawing.svg(id, &picture.title, &says),
        picture
            .says
            .iter()
            .map(|line| format!("<p>{}</p>", escaped(line)))
            .collect::<String>()
    )
}

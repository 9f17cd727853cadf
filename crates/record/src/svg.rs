//! Drawings as SVG text: lines and words in a box of its own units.

use crate::escaped::escaped;

/// A drawing. Its classes are styled in `record.css`.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Drawing {
    width: f64,
    height: f64,
    inside: String,
}

/// On which side of its place a word stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Anchor {
    Start,
    Middle,
    End,
}

impl Drawing {
    pub(crate) fn new(width: f64, height: f64) -> Self {
        Self {
            width,
            height,
            inside: String::new(),
        }
    }

    /// A path by its own commands, which are numbers and letters of ours.
    pub(crate) fn path(&mut self, class: &str, commands: &str) {
        let line = format!("<path class=\"{class}\" d=\"{commands}\"/>");
        self.inside.push_str(&line);
    }

    /// A mark of a box of 24 by 24, its middle at a place.
    pub(crate) fn mark(&mut self, class: &str, commands: &str, (x, y): (f64, f64)) {
        let (left, top) = (x - 12.0, y - 12.0);
        let line = format!(
            "<path class=\"{class}\" transform=\"translate({left:.1} {top:.1})\" d=\"{commands}\"/>"
        );
        self.inside.push_str(&line);
    }

    pub(crate) fn words(&mut self, class: &str, (x, y): (f64, f64), anchor: Anchor, text: &str) {
        let anchor = match anchor {
            Anchor::Start => "start",
            Anchor::Middle => "middle",
            Anchor::End => "end",
        };
        let text = escaped(text);
        let line = format!(
            "<text class=\"{class}\" x=\"{x:.1}\" y=\"{y:.1}\" text-anchor=\"{anchor}\">{text}</text>"
        );
        self.inside.push_str(&line);
    }

    /// The drawing with what it is called and what it shows, for who doesn't see it.
    pub(crate) fn svg(&self, id: &str, title: &str, says: &str) -> String {
        let (title, says) = (escaped(title), escaped(says));
        format!(
            "<svg class=\"rec-drawing\" role=\"img\" aria-labelledby=\"{id}-title {id}-desc\" \
             viewBox=\"0 0 {:.0} {:.0}\"><title id=\"{id}-title\">{title}</title>\
             <desc id=\"{id}-desc\">{says}</desc>{}</svg>",
            self.width, self.height, self.inside
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_in_a_drawing_are_words() {
        let mut drawing = Drawing::new(10.0, 10.0);
        drawing.words("rec-words", (1.0, 2.0), Anchor::Middle, "</svg><script>");
        let svg = drawing.svg("p", "<b>", "\"&");
        assert!(!svg.contains("<script") && !svg.contains("<b>"));
        assert_eq!(svg.matches("</svg>").count(), 1);
        assert!(svg.contains("&quot;&amp;"));
    }
}

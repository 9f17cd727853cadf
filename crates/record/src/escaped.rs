//! Text that others wrote, as it may stand in HTML and in a line.

/// A text as HTML shows it, letter by letter: nothing in it is markup. What turns the direction of
/// reading round, and what no document may hold, becomes a mark of replacement.
pub(crate) fn escaped(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '"' => safe.push_str("&quot;"),
            '\'' => safe.push_str("&#39;"),
            '\r' => {}
            letter if misleads(letter) => safe.push('\u{fffd}'),
            letter => safe.push(letter),
        }
    }
    safe
}

/// A text on one line, so that none of it looks like a line of ours.
pub(crate) fn on_one_line(text: &str) -> String {
    let lines = text.lines().map(str::trim).filter(|line| !line.is_empty());
    let joined = lines.collect::<Vec<_>>().join("; ");
    let shown = joined.chars().map(|letter| match letter {
        '\t' => ' ',
        letter if misleads(letter) => '\u{fffd}',
        letter => letter,
    });
    shown.collect()
}

/// Controls of the direction of reading, line separators, and what is no character.
fn misleads(letter: char) -> bool {
    let is_kept_control = matches!(letter, '\n' | '\t');
    let is_control = letter.is_control() && !is_kept_control;
    let turns = matches!(
        letter,
        '\u{061c}' | '\u{200e}' | '\u{200f}' | '\u{2028}' | '\u{2029}' | '\u{202a}'..='\u{202e}'
            | '\u{2066}'..='\u{2069}'
    );
    let code = u32::from(letter);
    let is_none = code & 0xfffe == 0xfffe || (0xfdd0..=0xfdef).contains(&code);
    is_control || turns || is_none
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_in_a_text_is_markup() {
        assert_eq!(
            escaped("<img src=x onerror='a(\"b\")'>&"),
            "&lt;img src=x onerror=&#39;a(&quot;b&quot;)&#39;&gt;&amp;"
        );
    }

    #[test]
    fn what_turns_reading_round_is_replaced_and_letters_of_all_scripts_stay() {
        assert_eq!(escaped("a\u{202e}b\u{fffe}"), "a\u{fffd}b\u{fffd}");
        assert_eq!(escaped("Kühltruhe 冷凍庫 مجمدة"), "Kühltruhe 冷凍庫 مجمدة");
    }

    #[test]
    fn a_text_of_many_lines_stays_on_one() {
        assert_eq!(
            on_one_line("R600a\n- Path: holds\r\n\n62 g"),
            "R600a; - Path: holds; 62 g"
        );
        assert_eq!(on_one_line("a\u{2028}b"), "a\u{fffd}b");
    }
}

//! Probabilities as people count: a word with a fixed range, ten strokes, a number.

/// A probability ready to be shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Odds {
    /// The word for it.
    pub word: &'static str,
    /// How many of ten strokes are filled.
    pub strokes: u8,
    /// The number for it.
    pub phrase: &'static str,
}

/// Says a probability in words. The ranges are fixed, so that a word always means the same.
///
/// ```
/// assert_eq!(wording::odds(0.7).phrase, "about 7 in 10");
/// assert_eq!(wording::odds(0.97).word, "nearly certain");
/// ```
#[must_use]
pub fn odds(probability: f64) -> Odds {
    let strokes = strokes_of(probability);
    let word = match strokes {
        10 => "nearly certain",
        7..=9 => "likely",
        4..=6 => "perhaps",
        _ if probability >= 0.02 => "unlikely",
        _ => "hardly",
    };
    Odds {
        word,
        strokes,
        phrase: phrase(probability, strokes),
    }
}

fn strokes_of(probability: f64) -> u8 {
    let tenths = libm::round(probability.clamp(0.0, 1.0) * 10.0);
    // Clamped to 0 to 10 above, so the cast keeps the value.
    tenths as u8
}

fn phrase(probability: f64, strokes: u8) -> &'static str {
    const TENTHS: [&str; 11] = [
        "under 1 in 20",
        "about 1 in 10",
        "about 2 in 10",
        "about 3 in 10",
        "about 4 in 10",
        "about 5 in 10",
        "about 6 in 10",
        "about 7 in 10",
        "about 8 in 10",
        "about 9 in 10",
        "over 19 in 20",
    ];
    if probability > 0.99 {
        "over 99 in 100"
    } else if probability < 0.01 {
        "under 1 in 100"
    } else if probability < 0.02 {
        "under 1 in 50"
    } else {
        TENTHS[usize::from(strokes)]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn word_number_and_strokes_never_contradict_each_other() {
        for thousandths in 0..=1000 {
            let probability = f64::from(thousandths) / 1000.0;
            let said = odds(probability);
            match said.word {
                "nearly certain" => assert_eq!(said.strokes, 10, "{probability}"),
                "hardly" => assert_eq!(said.strokes, 0, "{probability}"),
                "perhaps" => assert!((4..=6).contains(&said.strokes), "{probability}"),
                _ => {}
            }
        }
    }
}

//! What doesn't fit in what was typed, and how to mend it.

use measure::Doubt;
use quantity::ParseError;

/// What is wrong and how to mend it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ErrorWords {
    /// What is wrong.
    pub what: String,
    /// How to mend it.
    pub mend: &'static str,
}

impl ErrorWords {
    /// Both in one line.
    #[must_use]
    pub fn line(&self) -> String {
        format!("{} {}", self.what, self.mend)
    }
}

/// Says why a text is not a reading.
#[must_use]
pub fn parse_error(error: &ParseError) -> ErrorWords {
    let (what, mend) = match error {
        ParseError::Empty => (
            "Nothing typed yet.".to_owned(),
            "Type what the meter shows, or OL for over range.",
        ),
        ParseError::TwoDecimalMarks => ("Two decimal marks.".to_owned(), "Keep one: 4.7 or 4,7."),
        ParseError::NoDigits => (
            "There is no digit in it.".to_owned(),
            "Type the number that the meter shows, or OL for over range.",
        ),
        ParseError::Unexpected { found } => (
            format!("“{found}” doesn't fit there."),
            "Type digits with one decimal mark, then k or M if the meter shows it.",
        ),
        ParseError::TooLong => (
            "That is longer than any meter shows.".to_owned(),
            "Type just the digits on the display.",
        ),
    };
    ErrorWords { what, mend }
}

/// Says why a reading is refused or asked about.
#[must_use]
pub fn doubt(doubt: Doubt) -> ErrorWords {
    let (what, mend) = match doubt {
        Doubt::Negative => (
            "Ohms can't be below zero.",
            "Leave the sign out; if the meter itself shows it, zero the leads again.",
        ),
        Doubt::BeyondAnyMeter => (
            "No hand-held meter shows that much.",
            "Check k and M, or type OL for over range.",
        ),
        Doubt::LargeForAWinding => (
            "Unusual: windings have a few ohms to some tens.",
            "Is that right? Check for k on the display, and keep fingers off the probe tips.",
        ),
        Doubt::OhmsForMegohms => (
            "Unusual: that is a dead short to metal.",
            "Is that right? If the display says MΩ, type M after the number.",
        ),
        Doubt::LargeForLeads => (
            "Unusual: leads have a few tenths of an ohm.",
            "Is that right? Press the tips together hard; a lead that stays high is breaking.",
        ),
        Doubt::LoneOne => (
            "A 1 alone at the edge of the display is how some meters say over range.",
            "Is it 1 ohm? If not, use OL.",
        ),
    };
    ErrorWords {
        what: what.to_owned(),
        mend,
    }
}

//! What doesn't fit in what was typed, and how to mend it.

use measure::running::AmpsDoubt;
use measure::{CapacitorDoubt, Doubt};
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
        Doubt::BelowZero | Doubt::Current(AmpsDoubt::Negative) => (
            "That can't be below zero.",
            "Leave the sign out; if the meter itself shows it, zero it again.",
        ),
        Doubt::BeyondAnyHousehold | Doubt::Current(AmpsDoubt::BeyondAnyCircuit) => (
            "No household has that much.",
            "Check the decimal mark and the letter in front of the unit.",
        ),
        Doubt::NotMains => (
            "Unusual: no household's mains have that.",
            "Is that right? Check the decimal mark, and that the meter is on alternating volts.",
        ),
        Doubt::ManyWatts => (
            "Unusual: such machines take less, even while they defrost.",
            "Is that right? Check the decimal mark, and that nothing else hangs on the meter.",
        ),
        Doubt::MuchForALeak => (
            "Unusual: a protective device would have tripped long before.",
            "Is that right? Check for mA on the display, and clamp live and neutral together.",
        ),
        Doubt::LongForACord => (
            "Unusual: extension cords are shorter.",
            "Is that right? Feet are typed as 50 ft.",
        ),
        Doubt::Current(AmpsDoubt::MaybeMilliamperes) => (
            "Unusual: no machine takes that, even with its rotor locked.",
            "Is that right? If the display says mA, type m after the number.",
        ),
        Doubt::Capacitance(doubt) => about_a_capacitor(doubt),
    };
    ErrorWords {
        what: what.to_owned(),
        mend,
    }
}

const fn about_a_capacitor(doubt: CapacitorDoubt) -> (&'static str, &'static str) {
    match doubt {
        CapacitorDoubt::Negative => (
            "Capacitance can't be below zero.",
            "Zero the meter with its leads open, and measure again.",
        ),
        CapacitorDoubt::Nothing => (
            "Nothing: another range, a part still in circuit, or an open capacitor.",
            "Discharge it, take one lead off, capacitance range, and measure again. Zero once more \
             is an open one.",
        ),
        CapacitorDoubt::BeyondAny => (
            "No motor's capacitor has that much.",
            "Discharge it, take one lead off, and look whether the display says nF, µF or mF.",
        ),
        CapacitorDoubt::LargeForAStart => (
            "Unusual: start capacitors are smaller.",
            "Is that right? Check the decimal mark, and nF, µF or mF.",
        ),
        CapacitorDoubt::SmallForARun => (
            "Unusual: run capacitors are larger.",
            "Is that right? Check the decimal mark, and nF, µF or mF.",
        ),
    }
}

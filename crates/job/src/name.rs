//! Names, identifiers and free text that can't be malformed once built.

use core::fmt;

/// A name from a list kept elsewhere: a check, one of its items, a choice.
/// 1 to 40 characters of a–z, 0–9 and "-".
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Name(String);

/// An identifier, unique among all jobs and entries. 1 to 64 characters of A–Z, a–z, 0–9 and "-".
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Id(String);

/// What a person wrote. At most 2,000 characters, no control characters but line breaks and tabs.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct Text(String);

/// Why a text is not a name or an identifier.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NameError {
    /// Nothing there.
    Empty,
    /// More characters than allowed.
    TooLong {
        /// The most that is allowed.
        most: usize,
    },
    /// A character outside the allowed ones.
    Unexpected(char),
}

/// Why a text can't be kept as a note.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TextError {
    /// More than [`Text::LONGEST`] characters.
    TooLong,
    /// A control character other than a line break or a tab.
    ControlCharacter,
}

impl Name {
    /// Parses a name.
    ///
    /// # Errors
    /// [`NameError`] where the text is empty, too long or has another character.
    ///
    /// ```
    /// # use job::{Name, NameError};
    /// assert!(Name::new("pair-1-2").is_ok());
    /// assert_eq!(Name::new("Pair"), Err(NameError::Unexpected('P')));
    /// ```
    pub fn new(text: &str) -> Result<Self, NameError> {
        let allowed = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
        checked(text, 40, allowed).map(Self)
    }

    /// The name as text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl Id {
    /// Parses an identifier.
    ///
    /// # Errors
    /// [`NameError`] where the text is empty, too long or has another character.
    pub fn new(text: &str) -> Result<Self, NameError> {
        checked(text, 64, |c| c.is_ascii_alphanumeric() || c == '-').map(Self)
    }

    /// The identifier as text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl Text {
    /// The longest text that is kept, in characters.
    pub const LONGEST: usize = 2_000;

    /// Takes a text as it is.
    ///
    /// # Errors
    /// [`TextError`] where it is too long to keep or would garble a screen or a report.
    pub fn new(text: &str) -> Result<Self, TextError> {
        if text.chars().count() > Self::LONGEST {
            return Err(TextError::TooLong);
        }
        let garbles = |c: char| c.is_control() && !matches!(c, '\n' | '\r' | '\t');
        if text.contains(garbles) {
            return Err(TextError::ControlCharacter);
        }
        Ok(Self(text.to_owned()))
    }

    /// The text itself.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for Name {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl fmt::Display for Id {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

fn checked(text: &str, most: usize, allowed: fn(char) -> bool) -> Result<String, NameError> {
    if text.is_empty() {
        return Err(NameError::Empty);
    }
    if let Some(found) = text.chars().find(|&c| !allowed(c)) {
        return Err(NameError::Unexpected(found));
    }
    // All characters are ASCII by now, so bytes are characters.
    if text.len() > most {
        return Err(NameError::TooLong { most });
    }
    Ok(text.to_owned())
}

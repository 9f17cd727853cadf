//! From bytes to text: UTF-8, UTF-16 that says so, and Latin-1 for the rest.

use std::borrow::Cow;

use crate::LogError;
use crate::error::check_size;

/// How files begin that are no text, by the published file formats.
const PICTURES: &[&[u8]] = &[b"\xFF\xD8\xFF", b"\x89PNG", b"GIF8", b"II*\0", b"MM\0*"];
/// Boxed media: pictures and films of telephones have this behind their first length.
const BOXED: &[u8] = b"ftyp";
const SPREADSHEETS: &[&[u8]] = &[b"PK\x03\x04", b"\xD0\xCF\x11\xE0"];
const PRINTED: &[&[u8]] = &[b"%PDF"];

/// The text of a file.
pub(crate) fn decoded(bytes: &[u8]) -> Result<Cow<'_, str>, LogError> {
    check_size(bytes.len() as u64)?;
    refuse_known(bytes)?;
    let text = match bytes {
        [0xEF, 0xBB, 0xBF, rest @ ..] => utf_8_or_latin_1(rest),
        [0xFF, 0xFE, rest @ ..] => Cow::Owned(utf_16(rest, u16::from_le_bytes)),
        [0xFE, 0xFF, rest @ ..] => Cow::Owned(utf_16(rest, u16::from_be_bytes)),
        _ => utf_8_or_latin_1(bytes),
    };
    if text.trim().is_empty() {
        return Err(LogError::Empty);
    }
    // Loggers end their files with a form feed or an end-of-file mark; anything else is no text.
    let is_foreign = |byte: &u8| *byte < 0x20 && !b"\t\n\r\x0B\x0C\x1A".contains(byte);
    if text.as_bytes().iter().any(is_foreign) {
        return Err(LogError::NotText);
    }
    Ok(text)
}

fn refuse_known(bytes: &[u8]) -> Result<(), LogError> {
    let begins = |known: &[&[u8]]| known.iter().any(|start| bytes.starts_with(start));
    let is_boxed = bytes.get(4..8) == Some(BOXED);
    let is_riff = bytes.starts_with(b"RIFF") && bytes.get(8..12) == Some(b"WEBP");
    if begins(PICTURES) || is_boxed || is_riff {
        return Err(LogError::Picture);
    }
    if begins(SPREADSHEETS) {
        return Err(LogError::Spreadsheet);
    }
    if begins(PRINTED) {
        return Err(LogError::Printed);
    }
    Ok(())
}

/// Latin-1 has a character for each byte, and the degree sign stands where its Windows kin has it.
fn utf_8_or_latin_1(bytes: &[u8]) -> Cow<'_, str> {
    match core::str::from_utf8(bytes) {
        Ok(text) => Cow::Borrowed(text),
        Err(_) => Cow::Owned(bytes.iter().map(|byte| char::from(*byte)).collect()),
    }
}

fn utf_16(bytes: &[u8], unit: fn([u8; 2]) -> u16) -> String {
    let units = bytes.chunks_exact(2).map(|pair| unit([pair[0], pair[1]]));
    char::decode_utf16(units)
        .map(|one| one.unwrap_or(char::REPLACEMENT_CHARACTER))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_same_text_comes_out_of_each_encoding() {
        let text = "Zeit;Kühlfach °C\n";
        let utf_16 = |swap: bool| -> Vec<u8> {
            let units = core::iter::once(0xFEFF).chain(text.encode_utf16());
            units
                .flat_map(|unit| {
                    if swap {
                        unit.to_be_bytes()
                    } else {
                        unit.to_le_bytes()
                    }
                })
                .collect()
        };
        let latin_1: Vec<u8> = text.chars().map(|one| one as u32 as u8).collect();
        let with_mark = ["\u{FEFF}", text].concat().into_bytes();
        let written = [
            text.as_bytes().to_vec(),
            with_mark,
            latin_1,
            utf_16(false),
            utf_16(true),
        ];
        for bytes in written {
            assert_eq!(decoded(&bytes).as_deref(), Ok(text));
        }
    }

    #[test]
    fn what_is_no_text_is_named() {
        let refused = |bytes: &[u8]| decoded(bytes).err();
        assert_eq!(refused(b""), Some(LogError::Empty));
        assert_eq!(refused(b" \r\n \n"), Some(LogError::Empty));
        assert_eq!(
            refused(b"\xFF\xD8\xFF\xE0\0\x10JFIF"),
            Some(LogError::Picture)
        );
        assert_eq!(refused(b"\0\0\0\x18ftypheic"), Some(LogError::Picture));
        assert_eq!(refused(b"PK\x03\x04xl"), Some(LogError::Spreadsheet));
        assert_eq!(refused(b"%PDF-1.7"), Some(LogError::Printed));
        assert_eq!(refused(b"time\0temp"), Some(LogError::NotText));
    }
}

//! Names of months in English, German, French, Spanish and Swedish.

use crate::words::folded_letter;

/// How a name begins, without accents, and its month. Of several that fit the longest counts.
const BEGINNINGS: &[(&str, u8)] = &[
    ("jan", 1),
    ("ene", 1),
    ("feb", 2),
    ("fev", 2),
    ("mar", 3),
    ("mrz", 3),
    ("apr", 4),
    ("abr", 4),
    ("avr", 4),
    ("mai", 5),
    ("may", 5),
    ("maj", 5),
    ("jun", 6),
    ("juin", 6),
    ("jul", 7),
    ("juil", 7),
    ("aug", 8),
    ("ago", 8),
    ("aou", 8),
    ("sep", 9),
    ("set", 9),
    ("oct", 10),
    ("okt", 10),
    ("nov", 11),
    ("dec", 12),
    ("dez", 12),
    ("dic", 12),
];

/// The month of a name or its short form; `None` where it is none.
pub(crate) fn month_named(name: &str) -> Option<u8> {
    // Long enough to tell June from July in French.
    let mut start = [0_u8; 4];
    for (place, letter) in start.iter_mut().zip(name.chars()) {
        *place = u8::try_from(folded_letter(letter)).unwrap_or(b'?');
    }
    let fits = |beginning: &&(&str, u8)| start.starts_with(beginning.0.as_bytes());
    let longest = BEGINNINGS.iter().filter(fits).max_by_key(|one| one.0.len());
    longest.map(|(_, month)| *month)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn months_are_known_in_five_languages() {
        const NAMES: [&[&str]; 12] = [
            &["January", "Jan", "Jänner", "janvier", "enero"],
            &["February", "Februar", "févr.", "febrero"],
            &["March", "März", "Mrz", "mars", "marzo"],
            &["April", "avril", "abr"],
            &["May", "Mai", "mayo", "maj"],
            &["June", "Juni", "juin", "junio"],
            &["July", "Juli", "juil.", "juillet", "julio"],
            &["August", "août", "agosto", "augusti"],
            &["September", "Sept", "septiembre", "setiembre"],
            &["October", "Okt", "octobre"],
            &["November", "noviembre"],
            &["December", "Dezember", "décembre", "dic"],
        ];
        for (month, names) in (1..).zip(NAMES) {
            for name in names {
                assert_eq!(month_named(name), Some(month), "{name}");
            }
        }
        for name in ["Mo", "Temp", "Zeit", "", "ma"] {
            assert_eq!(month_named(name), None, "{name}");
        }
    }
}

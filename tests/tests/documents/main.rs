//! Job documents: good ones come back the same, damaged and hostile ones are refused with their
//! place, newer ones are handed on untouched, and an outside validator agrees with the door.
//!
//! What a refused or a tolerated file is told lies beside the files, in `expected.txt`. After a
//! wanted change, `BLESS=1 cargo test -p coldcase-tests --test documents` writes it anew.

// A test is allowed to fall over, and so is what helps it.
#![allow(clippy::unwrap_used, clippy::panic)]

mod assessed;
mod damage;
mod damaged;
mod fixtures;
mod random;
mod random_cold;
mod schema;

use std::fs;
use std::path::{Path, PathBuf};

/// A place in the repository.
fn repository(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..").join(path)
}

/// The documents of a folder with their names, in the order of the names.
fn documents(folder: &str) -> Vec<(String, Vec<u8>)> {
    let mut found: Vec<_> = fs::read_dir(repository(folder))
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "json"))
        .map(|path| {
            let name = path.file_name().unwrap().to_str().unwrap().to_owned();
            (name, fs::read(path).unwrap())
        })
        .collect();
    found.sort();
    found
}

/// Compares with what lies in the repository, or writes it there when asked to.
fn compare(file: &str, actual: &str) {
    let path = repository(file);
    if std::env::var_os("BLESS").is_some() {
        fs::write(&path, actual).unwrap();
    }
    let expected = fs::read_to_string(&path).unwrap_or_default();
    assert!(
        expected == actual,
        "{file} differs from what the program does now. BLESS=1 writes it anew.\n{}",
        first_difference(&expected, actual)
    );
}

fn first_difference(expected: &str, actual: &str) -> String {
    let mut lines = expected.lines().zip(actual.lines()).enumerate();
    match lines.find(|(_, (expected, actual))| expected != actual) {
        Some((number, (expected, actual))) => {
            format!(
                "line {}\n  expected {expected}\n  found    {actual}",
                number + 1
            )
        }
        None => "one of the two is longer".to_owned(),
    }
}

//! A shelf in memory: for tests, and for the work of a page whose browser keeps nothing.

use std::cell::RefCell;
use std::collections::BTreeMap;

use super::{Shelf, Trouble};

/// Texts that last as long as the page is open.
#[derive(Debug, Default)]
pub struct MemoryShelf {
    texts: RefCell<BTreeMap<String, String>>,
    room: Option<usize>,
}

impl MemoryShelf {
    /// A shelf with room for so many bytes in all.
    #[must_use]
    pub fn with_room(bytes: usize) -> Self {
        Self {
            room: Some(bytes),
            ..Self::default()
        }
    }

    fn used_without(&self, name: &str) -> usize {
        let texts = self.texts.borrow();
        let others = texts.iter().filter(|(other, _)| *other != name);
        others.map(|(name, text)| name.len() + text.len()).sum()
    }

    /// Whether nothing is on it.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.texts.borrow().is_empty()
    }
}

impl Shelf for MemoryShelf {
    fn read(&self, name: &str) -> Option<String> {
        self.texts.borrow().get(name).cloned()
    }

    fn has_room(&self, characters: usize) -> bool {
        let used = self.used_without("");
        self.room.is_none_or(|room| used + characters <= room)
    }

    fn write(&self, name: &str, text: &str) -> Result<(), Trouble> {
        let used = self.used_without(name) + name.len() + text.len();
        if self.room.is_some_and(|room| used > room) {
            return Err(Trouble::Full);
        }
        let mut texts = self.texts.borrow_mut();
        texts.insert(name.to_owned(), text.to_owned());
        Ok(())
    }

    fn remove(&self, name: &str) {
        self.texts.borrow_mut().remove(name);
    }

    fn names(&self) -> Vec<String> {
        self.texts.borrow().keys().cloned().collect()
    }
}

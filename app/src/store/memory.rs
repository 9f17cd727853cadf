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

    fn write(&self, name: &str, text: &str) -> Result<(), Trouble> {
        let mut texts = self.texts.borrow_mut();
        let others = texts.iter().filter(|(other, _)| *other != name);
        let used: usize = others.map(|(name, text)| name.len() + text.len()).sum();
        if self
            .room
            .is_some_and(|room| used + name.len() + text.len() > room)
        {
            return Err(Trouble::Full);
        }
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

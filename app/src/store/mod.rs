//! Where jobs are kept on this device.
//!
//! Answers: which jobs are kept here, what does each hold, and was the last change kept?
//!
//! Must never know: what a job means, how anything is shown. All rules stand in [`JobStore`],
//! which sees nothing but texts by name on a [`Shelf`], so that they are tested without a browser.

use std::rc::Rc;

mod backup;
mod browser;
mod jobs;
mod kept;
mod listing;
mod memory;
mod record;

pub use browser::{BrowserShelf, on_change_elsewhere};
pub use jobs::{JobStore, Saved};
pub use kept::Kept;
pub use listing::Listed;
pub use memory::MemoryShelf;
pub use record::{Revision, Summary};

/// Texts by name.
pub trait Shelf {
    /// The text under this name.
    fn read(&self, name: &str) -> Option<String>;

    /// So many characters from the start of the text under this name, or somewhat more.
    fn start_of(&self, name: &str, characters: usize) -> Option<String> {
        let _ = characters;
        self.read(name)
    }

    /// Whether there is room for so many characters more.
    fn has_room(&self, characters: usize) -> bool;

    /// Puts a text under this name, in the place of what was there.
    ///
    /// # Errors
    /// [`Trouble`] where it was not kept; what was there before is still there.
    fn write(&self, name: &str, text: &str) -> Result<(), Trouble>;

    /// Takes a text away.
    fn remove(&self, name: &str);

    /// The names of all texts that are ours, in no order.
    fn names(&self) -> Vec<String>;

    /// Whether there is a text whose name begins so.
    fn has_any(&self, beginning: &str) -> bool {
        self.names().iter().any(|name| name.starts_with(beginning))
    }
}

/// Two stores, as two tabs, may stand on one shelf.
impl<S: Shelf + ?Sized> Shelf for Rc<S> {
    fn read(&self, name: &str) -> Option<String> {
        (**self).read(name)
    }

    fn start_of(&self, name: &str, characters: usize) -> Option<String> {
        (**self).start_of(name, characters)
    }

    fn has_room(&self, characters: usize) -> bool {
        (**self).has_room(characters)
    }

    fn write(&self, name: &str, text: &str) -> Result<(), Trouble> {
        (**self).write(name, text)
    }

    fn remove(&self, name: &str) {
        (**self).remove(name);
    }

    fn names(&self) -> Vec<String> {
        (**self).names()
    }

    fn has_any(&self, beginning: &str) -> bool {
        (**self).has_any(beginning)
    }
}

/// Why something is not kept on this device.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Trouble {
    /// The browser keeps nothing for this page: blocked, or a private window.
    Blocked,
    /// There is no room left.
    Full,
    /// A job of the same identifier is kept here that this version of the program can't read.
    /// It is not overwritten.
    Unreadable,
}

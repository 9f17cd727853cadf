//! The page: everything that a person touches.
//!
//! Answers: which screen is shown, what was tapped or typed, and where does it go?
//!
//! Must never know: what a reading means, how a sentence reads. Conclusions come from
//! `diagnosis`, sentences from `wording`; the browser is touched in [`device`] and [`store`] only.

pub mod cold;
pub mod device;
pub mod forms;
pub mod frame;
pub mod further;
pub mod history;
pub mod later;
pub mod open_job;
pub mod pages;
pub mod parts;
pub mod practising;
pub mod route;
pub mod session;
pub mod store;
pub mod weighing;

use leptos::prelude::*;

use frame::Frame;
use session::Session;
use store::{BrowserShelf, JobStore, Shelf};

/// Starts the page.
pub fn start() {
    leptos::mount::mount_to_body(|| {
        let shelf = BrowserShelf::probe().map(|shelf| Box::new(shelf) as Box<dyn Shelf>);
        let session = Session::new(JobStore::new(shelf));
        provide_context(session);
        view! { <Frame/> }
    });
}

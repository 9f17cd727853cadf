//! The examples: invented machines, opened as a job each.

use diagnosis::Machine;
use jobfile::{Opened, open};
use leptos::prelude::*;
use wording::title;

use crate::parts::plain::button;
use crate::route::{Place, Route};
use crate::session::Session;
use crate::store::Revision;

/// The examples by the names of their machines.
#[component]
pub fn ExampleList(
    /// Their files.
    texts: &'static [&'static str],
) -> impl IntoView {
    let session = Session::here();
    let rows = texts.iter().filter_map(|text| match open(text) {
        Ok(Opened::Document { document, .. }) => {
            let name = title(&Machine::of(document.job()));
            let look = move |_| {
                let id = document.job().id();
                if session.store().load(id).is_none() {
                    session.store().save(id, &document, Revision::default());
                    session.jobs_changed();
                }
                session.go(&Route::Job(id.clone(), Place::Do));
            };
            Some(view! { <li>{button("door", name, look)}</li> })
        }
        // A test opens them all.
        _ => None,
    });
    view! { <ul>{rows.collect::<Vec<_>>()}</ul> }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pages::jobs::EXAMPLES;
    use job::Origin;

    #[test]
    fn every_example_opens_and_says_that_it_is_invented() {
        for text in EXAMPLES {
            let Ok(Opened::Document { document, notices }) = open(text) else {
                panic!("an example can't be opened");
            };
            assert_eq!(document.job().origin(), Origin::Invented);
            assert!(notices.is_empty());
        }
    }
}

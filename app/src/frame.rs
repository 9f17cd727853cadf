//! What stands around every screen: the way back, the way to safety, what is being said, and in
//! a job its three places at the bottom edge.

use job::Id;
use leptos::prelude::*;
use wording::page;

use crate::cold::Cold;
use crate::device;
use crate::later::{Later, later};
use crate::pages::about::AboutScreen;
use crate::pages::jobs::JobsScreen;
use crate::pages::new_job::NewJobScreen;
use crate::parts::live::{live, tap};
use crate::parts::plain::{button, paragraph, section_heading};
use crate::route::{Place, Route};
use crate::session::Session;
use crate::store::Trouble;

/// The frame with the screen of the address in it.
#[component]
pub fn Frame() -> impl IntoView {
    let to_main = move |event: leptos::ev::MouseEvent| {
        event.prevent_default();
        device::focus("main");
    };
    view! {
        <div class="frame">
            <a class="skip" href="#main" on:click=tap(to_main)>{page::SKIP}</a>
            <Top/>
            <main id="main" tabindex="-1">
                <TroubleNotice/>
                <Screen/>
            </main>
            <Foot/>
        </div>
    }
}

/// The heading of a screen. It takes the focus when the screen is shown, and names the window.
#[component]
pub fn Heading(
    /// The heading.
    #[prop(into)]
    text: Signal<String>,
    /// A few words above it.
    #[prop(optional, into)]
    above: Option<Signal<String>>,
) -> impl IntoView {
    Effect::new(move |_| text.with(|text| device::set_title(&page::window_title(text))));
    view! {
        {above.map(|above| view! { <p class="eyebrow">{live(move || above.get())}</p> })}
        <h1 id=crate::session::HEADING tabindex="-1">{live(move || text.get())}</h1>
    }
}

#[component]
fn Top() -> impl IntoView {
    let route = Session::here().route();
    let back = move || {
        let above = route.with(|route| match route {
            Route::Jobs | Route::Unknown => None,
            Route::Assumptions => Some((Route::Settings, page::settings::SETTINGS)),
            Route::Job(id, Place::Log) => {
                let cool_down = Place::Check(Cold::COOL_DOWN.to_owned());
                Some((Route::Job(id.clone(), cool_down), page::COOL_DOWN))
            }
            Route::Job(id, Place::RecordPage) => {
                Some((Route::Job(id.clone(), Place::Record), page::RECORD))
            }
            Route::Job(id, Place::Check(_) | Place::Truth) => {
                Some((Route::Job(id.clone(), Place::Do), page::DO))
            }
            _ => Some((Route::Jobs, page::JOBS)),
        });
        match above {
            None => paragraph("name", page::NAME),
            Some((above, name)) => view! {
                <a class="back" href=above.link()>
                    <svg class="drawing" viewBox="0 0 12 20" aria-hidden="true">
                        <path d="M10 2 2 10l8 8"></path>
                    </svg>
                    {name}
                </a>
            }
            .into_any(),
        }
    };
    view! {
        <header class="top">
            {live(back)}
            <nav class="top-links" aria-label=page::ALWAYS>
                <a href=Route::Settings.link()>{page::settings::SETTINGS}</a>
                <a href=Route::About.link()>{page::SAFETY}</a>
            </nav>
        </header>
    }
}

/// Says that work is lost when the page is closed, where that is so.
#[component]
fn TroubleNotice() -> impl IntoView {
    let session = Session::here();
    view! {
        {live(move || {
        session.trouble().map(|trouble| {
            let (heading, how) = match trouble {
                Trouble::Blocked => (page::BLOCKED, page::BLOCKED_HOW),
                Trouble::Full => (page::FULL, page::FULL_HOW),
                Trouble::Unreadable => (page::OCCUPIED, page::OCCUPIED_HOW),
            };
            view! {
                <section class="notice" role="alert">
                    {section_heading(heading)}
                    {paragraph("", how)}
                </section>
            }
        })
    })}
    }
}

#[component]
fn Screen() -> impl IntoView {
    let route = Session::here().route();
    let job = Memo::new(move |_| route.with(|route| route.job().cloned()));
    view! {
        {live(move || match job.get() {
        Some(id) => later(Later::Job(id)),
        None => (move || match route.get() {
            Route::New(step) => view! { <NewJobScreen step/> }.into_any(),
            Route::Import => later(Later::Import),
            Route::About => view! { <AboutScreen/> }.into_any(),
            Route::Settings => later(Later::Settings),
            Route::Assumptions => later(Later::Assumptions),
            Route::Practice => later(Later::Practice),
            Route::Jobs => view! { <JobsScreen is_lost=false/> }.into_any(),
            Route::Unknown => view! { <JobsScreen is_lost=true/> }.into_any(),
            // The memo above changes in the same moment.
            Route::Job(..) => ().into_any(),
        })
        .into_any(),
    })}
    }
}

#[component]
fn Foot() -> impl IntoView {
    let session = Session::here();
    let has_update = Memo::new(move |_| session.page_status().has_update);
    let update = move |_| device::apply_update();
    let said_class = move || {
        let said = session.said();
        if said.is_shown && !said.text.is_empty() {
            "said"
        } else {
            "unseen"
        }
    };
    view! {
        <div class="foot">
            {live(move || has_update.get().then(|| view! {
                <div class="update">
                    {paragraph("", page::UPDATE_READY)}
                    {button("plain", page::UPDATE_NOW, update)}
                </div>
            }))}
            <p id="status" role="status" class=said_class>{live(move || session.said().text)}</p>
            <Places/>
        </div>
    }
}

#[component]
fn Places() -> impl IntoView {
    let session = Session::here();
    let route = session.route();
    let job = Memo::new(move |_| {
        let open = session.open_job().get();
        open.filter(|id| route.with(|route| route.job() == Some(id)))
    });
    let link = move |id: &Id, place: Place, name: &'static str, drawing: &'static str| {
        let target = Route::Job(id.clone(), place.clone());
        let is_here = move || {
            route.with(|route| match (route.place(), &place) {
                (Some(Place::Check(_) | Place::Log), Place::Do)
                | (Some(Place::RecordPage), Place::Record) => Some("true"),
                (Some(here), there) if here == there => Some("page"),
                _ => None,
            })
        };
        view! {
            <li>
                <a href=target.link() aria-current=is_here>
                    <svg class="drawing" viewBox="0 0 24 24" aria-hidden="true" inner_html=drawing></svg>
                    {name}
                </a>
            </li>
        }
    };
    view! {
        {live(move || {
        job.get().map(|id| {
            view! {
                <nav class="places" aria-label=page::PLACES>
                    <ul>
                        {link(&id, Place::Do, page::DO, PROBE)}
                        {link(&id, Place::Known, page::KNOWN, EYE)}
                        {link(&id, Place::Record, page::RECORD, SHEET)}
                    </ul>
                </nav>
            }
        })
    })}
    }
}

/// A meter's probe on a contact.
const PROBE: &str =
    r#"<path d="M20 3 9 14M9 14l-3 3M12 11l2 2M15 4l5 5"/><circle cx="4.5" cy="19.5" r="1.5"/>"#;
/// What can be seen.
const EYE: &str = r#"<path d="M2 12c3-5 6.500-7 10-7s7 2 10 7c-3 5-6.500 7-10 7s-7-2-10-7z"/><circle cx="12" cy="12" r="3"/>"#;
/// A sheet with lines.
const SHEET: &str = r#"<path d="M6 3h9l4 4v14H6zM15 3v4h4M9.500 12h6M9.500 16h6"/>"#;

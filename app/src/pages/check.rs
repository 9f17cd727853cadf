//! One check of a job, by its name.

use diagnosis::{Check, Choice};
use leptos::prelude::*;
use wording::page;

use super::items::ItemsScreen;
use super::machine::MachineScreen;
use super::refrigerant::RefrigerantScreen;
use super::windings::WindingsScreen;
use crate::frame::Heading;

/// The screen of a check.
#[component]
pub fn CheckScreen(
    /// The name of the check.
    check: String,
) -> impl IntoView {
    match Check::from_name(&check) {
        Some(Check::Machine) => view! { <MachineScreen/> }.into_any(),
        Some(Check::Refrigerant) => view! { <RefrigerantScreen/> }.into_any(),
        Some(Check::Windings) => view! { <WindingsScreen/> }.into_any(),
        Some(check) => view! { <ItemsScreen check/> }.into_any(),
        None => view! { <Heading text=page::NO_SUCH_CHECK/> }.into_any(),
    }
}

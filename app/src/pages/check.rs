//! One check of a job, by its name.

use diagnosis::{CHANGE, Check, StartKit, StartTrials, Task};
use leptos::prelude::*;
use wording::page;

use super::change::ChangeScreen;
use super::machine::MachineScreen;
use super::refrigerant::RefrigerantScreen;
use super::task::TaskScreen;
use crate::cold::{Cold, cold};
use crate::frame::Heading;
use crate::further::{Further, further};

/// The screen of a check.
#[component]
pub fn CheckScreen(
    /// The name of the check.
    check: String,
) -> impl IntoView {
    match Task::from_name(&check) {
        Some(Task::Check(Check::Machine)) => view! { <MachineScreen/> }.into_any(),
        Some(Task::Check(Check::Refrigerant)) => view! { <RefrigerantScreen/> }.into_any(),
        Some(Task::Check(Check::Windings)) => further(Further::Windings),
        Some(task) => view! { <TaskScreen task/> }.into_any(),
        None if check == CHANGE => view! { <ChangeScreen/> }.into_any(),
        None if check == StartTrials::NAME => further(Further::StartTrials),
        None if check == StartKit::NAME => further(Further::StartKit),
        None => match Cold::named(&check) {
            Some(what) => cold(what),
            None => view! { <Heading text=page::NO_SUCH_CHECK/> }.into_any(),
        },
    }
}

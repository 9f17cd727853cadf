//! A time of day, and a day where it isn't within the last one, with the button that enters both.

use job::Moment;
use leptos::prelude::*;
use wording::cold_page as words;

use super::live::live;
use super::plain::{paragraph, refusal, short_input};
use crate::device;
use crate::forms::when::moment_on;

/// The two fields and the button. What was typed stays where it is no moment. `id` is the field of
/// the time; with `-day` behind it that of the day.
pub fn when_form(
    id: &'static str,
    name: &'static str,
    enter: impl Fn(Moment) + Send + 'static,
) -> AnyView {
    let time = RwSignal::new(String::new());
    let day = RwSignal::new(String::new());
    let remark = RwSignal::new(None::<&'static str>);
    let send = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        let (day, time) = (day.get_untracked(), time.get_untracked());
        match moment_on(&day, &time, device::now(), device::offset_minutes_at) {
            Err(why) => remark.set(Some(why.words())),
            Ok(at) => {
                remark.set(None);
                enter(at);
            }
        }
    };
    let day_id = [id, "-day"].concat();
    view! {
        <form class="when" on:submit=send novalidate>
            <div class="minutes-ago">
                {short_input(id, name, ("text", "10"), move |text| time.set(text))}
            </div>
            {paragraph("soft small", words::TIME_HINT)}
            <div class="minutes-ago">
                <label for=day_id.clone()>{words::ON_DAY}</label>
                <input
                    id=day_id
                    type="date"
                    on:input=move |event| day.set(event_target_value(&event))
                />
            </div>
            {live(move || remark.get().map(refusal))}
            <button class="button">{words::ENTER}</button>
        </form>
    }
    .into_any()
}

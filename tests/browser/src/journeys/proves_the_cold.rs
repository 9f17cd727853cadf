//! A cool-down goes on over a reload: switched on by a tap, temperatures typed as the clock moves on, a course with its
//! band and a verdict with its odds; what is wrong is asked about, and what was entered can be taken back.

use anyhow::{Context, Result, ensure};

use crate::stage::Stage;
use crate::steps::{is_closed_before_the_ground_check, move_clock, open_in_example};
use crate::visit::Visit;

const MINUTE: i64 = 60_000;

pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = stage.start()?;
    closed_before_the_ground_check(&visit)?;
    open_cool_down(&visit)?;
    visit.press("Switched on now")?;
    visit.see("On for")?;
    visit.see("A reading now tells where it starts")?;
    what_is_wrong_stays(&visit)?;
    a_course(&visit)?;
    the_band_narrows(&visit)?;
    it_goes_on_over_a_reload(&visit)?;
    visit.press("Take back")?;
    // The latest stands first.
    visit.see_no("−7.4")
}

/// A job of which nothing was measured yet isn't switched on.
fn closed_before_the_ground_check(visit: &Visit) -> Result<()> {
    is_closed_before_the_ground_check(visit, "cool-down", "witched on")
}

/// Of an example that may be powered.
fn open_cool_down(visit: &Visit) -> Result<()> {
    open_in_example(visit, "cool-down")?;
    visit.see("Does it get cold?")
}

fn enter(visit: &Visit, shown: &str) -> Result<()> {
    visit.fill("The thermometer shows", shown)?;
    visit
        .run("document.querySelector('#temperature').form.requestSubmit()")
        .map(drop)
}

fn what_is_wrong_stays(visit: &Visit) -> Result<()> {
    enter(visit, "cold")?;
    visit.wait_until("a refusal", || {
        let shown = visit.run("return !!document.querySelector('.refusal')")?;
        Ok(shown.as_bool() == Some(true))
    })?;
    let kept = visit.value_of("The thermometer shows")?;
    ensure!(kept == "cold", "what was typed is lost: {kept:?}");
    enter(visit, "68 °C")?;
    visit.see("Few such places are like that")?;
    visit.see_no("68\u{a0}°C, at")
}

/// A freezer that goes from 21 to −24 °C with a time constant of two and a half hours, read each ten minutes.
fn a_course(visit: &Visit) -> Result<()> {
    for (place, shown) in ["21 °C", "18.1 °C", "15.4 °C", "12.8 °C", "10.5 °C"]
        .iter()
        .enumerate()
    {
        move_clock(visit, place as i64 * 10 * MINUTE)?;
        enter(visit, shown)?;
        visit.wait_until("an empty field", || {
            Ok(visit.value_of("The thermometer shows")?.is_empty())
        })?;
    }
    visit.see("1 more reading, and half an hour")?;
    move_clock(visit, 50 * MINUTE)?;
    enter(visit, "8.2 °C")?;
    visit.see("within a day:")?;
    visit.see("nine times in ten between")?;
    has_a_band(visit)
}

fn has_a_band(visit: &Visit) -> Result<()> {
    let script = "const band = document.querySelector('svg.cooling .rest-band');
        const said = document.querySelector('svg.cooling').getAttribute('aria-label');
        return [band ? band.getAttribute('d').length : 0, said]";
    let drawn = visit.run(script)?;
    ensure!(drawn[0].as_f64() > Some(100.0), "no band is drawn: {drawn}");
    let said = drawn[1].as_str().unwrap_or_default();
    ensure!(
        said.contains("It ends at"),
        "the picture has no words: {said:?}"
    );
    Ok(())
}

/// Two more hours of the same course tell more surely where it ends.
fn the_band_narrows(visit: &Visit) -> Result<()> {
    let wide = width_of_the_band(visit)?;
    for (minutes, shown) in [(90, "0.7 °C"), (120, "-3.8 °C"), (150, "-7.4 °C")] {
        move_clock(visit, minutes * MINUTE)?;
        enter(visit, shown)?;
        visit.wait_until("an empty field", || {
            Ok(visit.value_of("The thermometer shows")?.is_empty())
        })?;
    }
    visit.wait_until("a narrower band", || {
        Ok(width_of_the_band(visit)? < 0.8 * wide)
    })
}

/// In degrees, as a screen reader is told it.
fn width_of_the_band(visit: &Visit) -> Result<f64> {
    let ends = visit.run(
        "const said = document.querySelector('svg.cooling').getAttribute('aria-label');
         const found = said.match(/between (\\S+)\\s°C and (\\S+)\\s°C/);
         return found ? found.slice(1).map((one) => Number(one.replace('−', '-'))) : []",
    )?;
    let from = ends[0].as_f64().context("the lower end")?;
    let to = ends[1].as_f64().context("the upper end")?;
    ensure!(from < to, "the band is from {from} to {to}");
    Ok(to - from)
}

fn it_goes_on_over_a_reload(visit: &Visit) -> Result<()> {
    visit.reload()?;
    move_clock(visit, 51 * MINUTE)?;
    visit.see("On for")?;
    // As of the device's own clock all but the first reading lie ahead: the job keeps them all.
    visit.press("The compressor stopped by itself")?;
    visit.see("within a day:")?;
    visit.see("The compressor stopped by itself: at")?;
    has_a_band(visit)
}

//! Every screen fits a phone: nothing runs off, is cut off or lies over something else, and every target is wide enough
//! for a thumb, on a narrow screen and with the text at twice its size too.

use anyhow::Result;
use serde_json::{Value, json};

use super::none_of;
use crate::screens;
use crate::stage::Stage;
use crate::visit::{PHONE, Visit};

const LAYOUT: &str = include_str!("../layout.js");

/// Room in CSS pixels, and the text's size in percent. The narrowest is what WCAG 2.2, 1.4.10, asks for; twice the size
/// of the text is 1.4.4.
const SIZES: [((u32, u32), u32); 3] = [(PHONE, 100), ((320, 640), 100), (PHONE, 200)];

pub(super) fn run(stage: &Stage) -> Result<()> {
    let mut problems = Vec::new();
    screens::walk(
        stage,
        &crate::engine::Habits::default(),
        &mut |visit, screen| {
            for (room, text) in SIZES {
                for problem in misfits(visit, room, text)? {
                    problems.push(format!(
                        "{screen} at {} px, text {text} %: {problem}",
                        room.0
                    ));
                }
            }
            restore(visit)
        },
    )?;
    none_of("misfits", &problems)
}

fn misfits(visit: &Visit, room: (u32, u32), text: u32) -> Result<Vec<String>> {
    visit.resize(room)?;
    set_text_size(visit, text)?;
    let found = visit.run(LAYOUT)?;
    let found = found.as_array().into_iter().flatten();
    Ok(found.filter_map(Value::as_str).map(str::to_owned).collect())
}

fn restore(visit: &Visit) -> Result<()> {
    set_text_size(visit, 100)?;
    visit.resize(PHONE)
}

fn set_text_size(visit: &Visit, percent: u32) -> Result<()> {
    let script = "document.documentElement.style.fontSize = arguments[0]";
    visit
        .window()
        .run(script, &[json!(format!("{percent}%"))])
        .map(drop)
}

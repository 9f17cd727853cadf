//! The record of a repaired machine: one printed page says what one must know, the details stand behind it, the
//! buyer's copy holds no notes, and the file that is saved shows the same without the page.

use anyhow::{Context, Result, ensure};
use serde_json::json;

use crate::engine::Engine;
use crate::stage::Stage;
use crate::steps::saved_file;
use crate::visit::{Kind, PHONE, Visit};
use crate::webdriver::Paper;

pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = stage.start()?;
    visit.press("Look at an example")?;
    visit.press("Chest freezer from the boat house")?;
    visit.find(Kind::Control, "Something else")?;
    visit.press("Record")?;
    visit.press("Make the page that goes with it")?;
    visit.see("Buyer's copy")?;
    visit.see("Proved: all of this was read or seen.")?;
    each_drawing_is_named(&visit)?;
    print_opens_the_dialogue(&visit)?;
    if stage.engine == Engine::Chromium {
        it_fits_a_page(&visit)?;
    }
    the_file_stands_alone(stage, &visit)?;
    visit.press("Myself")?;
    visit.see("Owner's copy")?;
    visit.see_no("Buyer's copy")?;
    visit.reload()?;
    visit.see("Buyer's copy")
}

fn each_drawing_is_named(visit: &Visit) -> Result<()> {
    let named = visit.run(
        "return [...document.querySelectorAll('.rec-drawing')].map(drawing =>
            drawing.getAttribute('aria-labelledby').split(' ')
                .every(id => document.getElementById(id).textContent.trim().length > 3))",
    )?;
    let named = named.as_array().context("a list")?;
    ensure!(named.len() == 4, "{} drawings", named.len());
    ensure!(
        named.iter().all(|one| one.as_bool() == Some(true)),
        "{named:?}"
    );
    Ok(())
}

fn print_opens_the_dialogue(visit: &Visit) -> Result<()> {
    visit.run("window.printed = 0; window.print = () => { window.printed += 1; }")?;
    visit.press("Print, or save as PDF")?;
    let printed = visit.run("return window.printed")?;
    ensure!(printed.as_u64() == Some(1), "{printed}");
    Ok(())
}

/// What a page holds depends on the letters: those of a device without a font like Arial may be a fifth wider.
fn it_fits_a_page(visit: &Visit) -> Result<()> {
    let wide = visit.run(
        "const pen = document.createElement('canvas').getContext('2d');
         pen.font = '100px \"Helvetica Neue\", Arial, Roboto, \"Liberation Sans\", \"Nimbus Sans\", sans-serif';
         return pen.measureText('abcdefghijklmnopqrstuvwxyz').width > 1250",
    )?;
    let most = if wide.as_bool() == Some(true) { 2 } else { 1 };
    it_is_as_wide_as_the_paper(visit)?;
    for paper in [Paper::LETTER, Paper::A4] {
        let all = pages(&visit.window().print(paper)?);
        ensure!((2..=5).contains(&all), "{all} pages in all");
    }
    visit.run("document.querySelector('.rec-details').style.display = 'none'")?;
    for paper in [Paper::LETTER, Paper::A4] {
        let first = pages(&visit.window().print(paper)?);
        ensure!(first <= most, "what one must know takes {first} pages");
    }
    visit
        .run("document.querySelector('.rec-details').style.display = ''")
        .map(drop)
}

fn it_is_as_wide_as_the_paper(visit: &Visit) -> Result<()> {
    let media = |media: &str| {
        let media = json!({"media": media});
        visit
            .window()
            .chromium("Emulation.setEmulatedMedia", &media)
    };
    visit.resize((720, 960))?;
    media("print")?;
    let wide = visit.run("return document.querySelector('.rec').clientWidth")?;
    media("")?;
    visit.resize(PHONE)?;
    ensure!(wide.as_u64() == Some(720), "{wide} of 720 are used");
    Ok(())
}

/// How many pages a PDF has: its page objects stand in it as plain text.
fn pages(pdf: &[u8]) -> usize {
    let text = String::from_utf8_lossy(pdf);
    let objects = text.match_indices("/Type /Page");
    objects
        .filter(|(at, found)| !text[at + found.len()..].starts_with('s'))
        .count()
}

fn the_file_stands_alone(stage: &Stage, visit: &Visit) -> Result<()> {
    let file = saved_file(stage, visit, || visit.press("Save the page as a file"))?;
    let html = std::fs::read_to_string(file)?;
    ensure!(html.starts_with("<!DOCTYPE html>"), "{}", &html[..40]);
    for part in ["Chest freezer from the boat house", "<svg", "<style>"] {
        ensure!(html.contains(part), "{part} is missing");
    }
    for fetched in ["<script", "<link", "src=", "url("] {
        ensure!(!html.contains(fetched), "{fetched} has no place in it");
    }
    Ok(())
}

//! What a person presses, chooses and fills in: found by role and name, as eyes or a screen reader find it.

use std::path::Path;
use std::thread::sleep;
use std::time::Instant;

use anyhow::{Context, Result, bail};
use serde_json::{Value, json};

use super::{PATIENCE, PAUSE, Visit};
use crate::engine::Engine;
use crate::webdriver::Element;

const FIND: &str = include_str!("../find.js");

/// What a person takes for one kind of thing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Kind {
    /// Something to press: a button or a link.
    Control,
    /// A text field.
    Field,
    /// One of several to choose from.
    Choice,
    /// A field that takes a file.
    File,
    /// A part of the page with a name of its own.
    Region,
}

impl Kind {
    const fn roles(self) -> &'static [&'static str] {
        match self {
            Kind::Control => &["button", "link"],
            Kind::Field => &["field"],
            Kind::Choice => &["choice", "button", "link"],
            Kind::File => &["file"],
            Kind::Region => &["region"],
        }
    }
}

/// A driver scrolls just so far that a bar at the bottom edge may still lie over it; a person scrolls on.
const TO_MIDDLE: &str = "arguments[0].scrollIntoView({ block: 'center', behavior: 'instant' })";

/// The same, done when the element has stood still for two frames; from then on it is noted whether a press arrives.
const TO_REST: &str = "
    const [it, done] = arguments;
    it.scrollIntoView({ block: 'center', behavior: 'instant' });
    window.missed = true;
    it.addEventListener('click', () => { window.missed = false; }, { once: true, capture: true });
    let before = '';
    const look = () => {
        const { x, y } = it.getBoundingClientRect();
        const now = `${x} ${y} ${window.scrollY}`;
        if (now === before) return done(true);
        before = now;
        requestAnimationFrame(() => requestAnimationFrame(look));
    };
    look();";

impl Visit {
    /// Presses a button or a link.
    pub(crate) fn press(&self, name: &str) -> Result<()> {
        self.click(Kind::Control, name)
    }

    /// Chooses one of several.
    pub(crate) fn choose(&self, name: &str) -> Result<()> {
        self.click(Kind::Choice, name)
    }

    /// Answers one of several questions on a screen.
    pub(crate) fn answer(&self, question: &str, name: &str) -> Result<()> {
        let question = self.find(Kind::Region, question)?;
        let choice = self.find_in(Some(&question), Kind::Choice, name)?;
        self.touch(&choice)
    }

    /// Finds something that is shown, waiting for it; where several fit, the first with exactly this name, else the
    /// first whose name begins so.
    pub(crate) fn find(&self, kind: Kind, name: &str) -> Result<Element> {
        self.find_in(None, kind, name)
    }

    /// Finds something that is shown inside of an element.
    pub(crate) fn find_in(
        &self,
        within: Option<&Element>,
        kind: Kind,
        name: &str,
    ) -> Result<Element> {
        let start = Instant::now();
        loop {
            let (found, others) = self.look(within, kind, name)?;
            if let Some(element) = found {
                return Ok(element);
            }
            if start.elapsed() > PATIENCE {
                bail!("there is no {kind:?} {name:?}, but: {others}");
            }
            sleep(PAUSE);
        }
    }

    /// Whether something is shown now.
    pub(crate) fn has(&self, kind: Kind, name: &str) -> Result<bool> {
        Ok(self.look(None, kind, name)?.0.is_some())
    }

    /// Replaces what a field holds by typing, as with the hardware keys.
    pub(crate) fn fill(&self, field: &str, text: &str) -> Result<()> {
        let field = self.find(Kind::Field, field)?;
        self.window().run(
            "arguments[0].focus(); arguments[0].select()",
            &[field.argument()],
        )?;
        self.window().type_into(&field, text)
    }

    /// What a field holds.
    pub(crate) fn value_of(&self, field: &str) -> Result<String> {
        let field = self.find(Kind::Field, field)?;
        let value = self
            .window()
            .run("return arguments[0].value", &[field.argument()])?;
        Ok(value.as_str().unwrap_or_default().to_owned())
    }

    /// Hands a file to the page.
    pub(crate) fn hand_over(&self, field: &str, file: &Path) -> Result<()> {
        let field = self.find(Kind::File, field)?;
        let path = file.to_str().context("the file's path is no text")?;
        self.window().type_into(&field, path)
    }

    /// The name of what has the focus.
    pub(crate) fn focused(&self) -> Result<String> {
        let focused = self.window().run(FIND, &[json!([]), Value::Null])?;
        Ok(focused.as_str().unwrap_or_default().to_owned())
    }

    fn look(
        &self,
        within: Option<&Element>,
        kind: Kind,
        name: &str,
    ) -> Result<(Option<Element>, Value)> {
        let within = within.map_or(Value::Null, Element::argument);
        let mut found = self
            .window()
            .run(FIND, &[json!(kind.roles()), json!(name), within])?;
        Ok((Element::from_value(&found[0]), found[1].take()))
    }

    fn click(&self, kind: Kind, name: &str) -> Result<()> {
        let mut tries = 0;
        loop {
            let clicked = self.try_click(kind, name);
            // What was found may just have been drawn anew; a person would not notice.
            let is_stale =
                |problem: &anyhow::Error| format!("{problem:#}").contains("stale element");
            tries += 1;
            if tries == 3 || !clicked.as_ref().is_err_and(is_stale) {
                return clicked.with_context(|| format!("{kind:?} {name:?} can't be pressed"));
            }
        }
    }

    fn try_click(&self, kind: Kind, name: &str) -> Result<()> {
        self.touch(&self.find(kind, name)?)
    }

    /// Presses on an element, or on the label that is painted for it.
    ///
    /// WebKit's driver aims at where the element was before the last scrolling was painted, and now and then misses; a
    /// person presses again. Chromium's press has to meet, so that a button that jumps away is found out.
    pub(crate) fn touch(&self, element: &Element) -> Result<()> {
        let painted = self.painted(element)?;
        if self.engine == Engine::Chromium {
            self.window().run(TO_MIDDLE, &[painted.argument()])?;
            return self.window().click(&painted);
        }
        for _ in 0..3 {
            self.window().run_async(TO_REST, &[painted.argument()])?;
            self.window().click(&painted)?;
            let has_arrived = self.run("return window.missed !== true")? == true;
            if has_arrived && !self.is_unchosen(element) {
                return Ok(());
            }
        }
        bail!("three presses went beside it")
    }

    /// Whether it is a radio button that is still there and not chosen. Where the press led on, it is gone.
    fn is_unchosen(&self, element: &Element) -> bool {
        let script =
            "const [it] = arguments; return it.type === 'radio' && it.isConnected && !it.checked";
        let unchosen = self.window().run(script, &[element.argument()]);
        unchosen.is_ok_and(|unchosen| unchosen == true)
    }

    /// Where a person would put the finger: a hidden radio button is painted by its label.
    fn painted(&self, element: &Element) -> Result<Element> {
        let script =
            "const [it] = arguments; return it.labels && it.labels.length ? it.labels[0] : it";
        let painted = self.window().run(script, &[element.argument()])?;
        Element::from_value(&painted).context("the element has gone")
    }
}

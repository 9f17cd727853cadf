//! The page without a pointer: everything is reached with the Tab key, and what has the focus can be seen.

use std::rc::Rc;

use anyhow::{Context, Result, bail, ensure};

use crate::engine::Habits;
use crate::stage::Stage;
use crate::visit::{Kind, Visit};
use crate::webdriver::Key;

/// Further away than this, nothing is in reach.
const MOST_TABS: usize = 60;

/// A visit at a desk, where the Tab key is.
pub(crate) fn at_a_desk(stage: &Stage) -> Result<Rc<Visit>> {
    let habits = Habits {
        desktop: true,
        ..Habits::default()
    };
    let visit = stage.visit(stage.site("/")?, &habits)?;
    visit.arrive()?;
    Ok(visit)
}

/// Tabs to something and presses it.
pub(crate) fn activate(visit: &Visit, name: &str) -> Result<()> {
    visit.find(Kind::Choice, name)?;
    tab_to(visit, name)?;
    visit.window().press(&[Key::Enter])
}

/// Tabs to a field and types into it, after what it holds is marked as the Tab key does.
pub(crate) fn type_into(visit: &Visit, field: &str, text: &str) -> Result<()> {
    visit.find(Kind::Field, field)?;
    tab_to(visit, field)?;
    visit.window().press_text(text)
}

/// Tabs on until something with this name, or one that begins so, has the focus.
pub(crate) fn tab_to(visit: &Visit, name: &str) -> Result<()> {
    for _ in 0..MOST_TABS {
        visit.window().press(&[Key::Tab])?;
        if visit.focused()?.starts_with(name) {
            return see_focus(visit)
                .with_context(|| format!("that {name:?} has the focus can't be seen"));
        }
    }
    bail!("{name:?} can't be reached with the Tab key")
}

/// Waits until a screen begins at its heading.
pub(crate) fn at_heading(visit: &Visit, heading: &str) -> Result<()> {
    visit.wait_until(&format!("the focus at the heading {heading:?}"), || {
        let tag = visit.run("return document.activeElement.tagName")?;
        Ok(tag == "H1" && visit.focused()?.starts_with(heading))
    })
}

/// Fails unless what has the focus is inside of the window, under nothing else, and has a line round it: its own outline, or that
/// or the shadow of the box that it fills.
fn see_focus(visit: &Visit) -> Result<()> {
    let script = "
        const it = document.activeElement;
        const shown = it.labels && it.labels.length && getComputedStyle(it).opacity === '0' ? it.labels[0] : it;
        const box = shown.getBoundingClientRect();
        const hasLine = (one) => {
            const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(one);
            return outlineStyle !== 'none' ? parseFloat(outlineWidth) >= 2 : boxShadow !== 'none';
        };
        if (![shown, shown.parentElement].some(hasLine)) return 'it has no line round it';
        const middle = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
        if (middle === null) return 'it is outside of the window';
        return shown.contains(middle) || middle.contains(shown) ? '' : `${middle.outerHTML.slice(0, 80)} lies over it`;";
    let problem = visit.run(script)?;
    ensure!(problem == "", "{problem}");
    Ok(())
}

//! Each example opens, says that it is invented, and shows what it was made to show.

use anyhow::Result;

use crate::stage::Stage;

/// The name of an example, and what has to be said of it.
const EXAMPLES: [(&str, &[&str]); 6] = [
    (
        "Chest freezer from the closed bakery",
        &["common, surely", "The windings are whole", "R600a"],
    ),
    (
        "Upright freezer from the bakery flat",
        &["common", "Leads and contacts add", "taken out"],
    ),
    (
        "Fridge-freezer from the bakery office",
        &[
            "Three equal windings",
            "Take care: never mains or a start kit on these pins",
        ],
    ),
    (
        "Upright freezer from the bakery cellar",
        &["The PTC is open", "Start: broken (measured)"],
    ),
    (
        "Refrigerator from the bakery's back room",
        &[
            "Stop: a conductor leaks to the metal you touch",
            "Plug it in, look and listen: not yet",
        ],
    ),
    (
        "Chest freezer from the bakery yard",
        &["Between pins 1 and 3 expect", "Not decided yet"],
    ),
];

pub(super) fn run(stage: &Stage) -> Result<()> {
    let visit = stage.start()?;
    for (name, said) in EXAMPLES {
        visit.go_to("#/")?;
        visit.press("Look at an example")?;
        visit.press(name)?;
        visit.see("Invented example")?;
        visit.press("Known")?;
        visit.see("Invented example: no such machine was measured.")?;
        for words in said {
            visit.see(words)?;
        }
    }
    Ok(())
}

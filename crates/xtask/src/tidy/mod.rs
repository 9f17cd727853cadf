//! The rules of the house that a compiler doesn't know: checked here, not by memory.

mod arrows;
mod licences;
mod text;

use std::fs;

use anyhow::Result;

use crate::project::Project;

/// What may lie in the top folder, besides files whose name starts with a dot.
const TOP_FOLDER: &[&str] = &[
    "Cargo.lock",
    "Cargo.toml",
    "DEVELOPERS.md",
    "LICENSE",
    "README.md",
    "Trunk.toml",
    "app",
    "crates",
    "demo-data",
    "public",
    "tests",
];

/// Prints what breaks a rule, and returns whether nothing does.
pub(crate) fn check(project: &Project) -> Result<bool> {
    let metadata = project.metadata()?;
    let mut problems = Vec::new();
    for file in project.files()? {
        let name = file.to_string_lossy();
        problems.extend(top_folder(&name));
        // What is not text (an icon, a screenshot) has no lines to look at.
        if let Ok(content) = fs::read_to_string(project.root().join(&file)) {
            problems.extend(text::check(&name, &content));
        }
    }
    problems.extend(arrows::check(&metadata));
    problems.extend(licences::check(&metadata));
    problems.sort();
    problems.dedup();
    for problem in &problems {
        println!("{problem}");
    }
    match problems.len() {
        0 => println!("Tidy."),
        number => println!("{number} to tidy up."),
    }
    Ok(problems.is_empty())
}

fn top_folder(file: &str) -> Option<String> {
    let top = file.split('/').next()?;
    let belongs = top.starts_with('.') || TOP_FOLDER.contains(&top);
    (!belongs).then(|| format!("{top}: does not belong in the top folder"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_top_folder_holds_nothing_that_is_not_on_the_list() {
        assert_eq!(top_folder("crates/quantity/src/lib.rs"), None);
        assert_eq!(top_folder(".gitignore"), None);
        assert!(top_folder("notes.md").is_some());
        assert!(top_folder("scripts/run.sh").is_some());
    }
}

//! Rules about the text of files: their length, unfinished work, where the browser may be touched, and what only one
//! machine knows.

/// A file has one subject; beyond this it has two.
const LONGEST_RUST_FILE: usize = 400;

/// The two places of the app that may touch the browser.
const BROWSER_PLACES: &[&str] = &["app/src/device", "app/src/store"];

/// Returns what in this file breaks a rule.
pub(super) fn check(file: &str, content: &str) -> Vec<String> {
    let mut problems = Vec::new();
    let length = content.lines().count();
    if file.ends_with(".rs") && length > LONGEST_RUST_FILE {
        problems.push(format!(
            "{file}: {length} lines, at most {LONGEST_RUST_FILE} are allowed"
        ));
    }
    for (index, line) in content.lines().enumerate() {
        let mut report = |what: &str| problems.push(format!("{file}:{}: {what}", index + 1));
        if holds_marker(line) {
            report("unfinished work is marked; finish it");
        }
        if touches_browser(file, line) {
            report("the browser is touched only in the app's device and store");
        }
        // The lock file names the registry of every package; that is its purpose.
        if file != "Cargo.lock" && names_registry(line) {
            report("names the host of a package registry");
        }
        if names_machine_path(line) {
            report("names a path that only one machine has");
        }
    }
    problems
}

fn holds_marker(line: &str) -> bool {
    let mut words = line.split(|character: char| !character.is_ascii_alphanumeric());
    // Spelt in halves, so that this very line is not found.
    words.any(|word| {
        [("TO", "DO"), ("FIX", "ME"), ("XX", "X")]
            .iter()
            .any(|(a, b)| word == format!("{a}{b}"))
    })
}

fn touches_browser(file: &str, line: &str) -> bool {
    file.starts_with("app/src/")
        && !BROWSER_PLACES.iter().any(|place| file.starts_with(place))
        && ["web_sys::", "js_sys::", "gloo_"]
            .iter()
            .any(|module| line.contains(module))
}

fn names_registry(line: &str) -> bool {
    [
        "crates io",
        "npmjs org",
        "pypi org",
        "pythonhosted org",
        "deb debian org",
    ]
    .iter()
    .any(|host| line.contains(&host.replace(' ', ".")))
}

/// Whether the line holds an absolute path into somebody's own folders. The same words inside a longer path or an
/// address are no such thing.
fn names_machine_path(line: &str) -> bool {
    ["root", "home", "tmp", "work"].iter().any(|folder| {
        let path = format!("/{folder}/");
        line.match_indices(&path).any(|(at, _)| {
            let before = line[..at].chars().next_back();
            before.is_none_or(|character| {
                !character.is_alphanumeric() && !"./_-*".contains(character)
            })
        })
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_long_file_is_reported_and_a_file_at_the_limit_is_not() {
        assert!(
            check("crates/a/src/b.rs", &"x\n".repeat(401))
                .iter()
                .any(|problem| problem.contains("401 lines"))
        );
        assert!(check("crates/a/src/b.rs", &"x\n".repeat(400)).is_empty());
        assert!(check("Cargo.lock", &"x\n".repeat(401)).is_empty());
    }

    #[test]
    fn unfinished_work_is_found_as_a_word_only() {
        let marker = ["TO", "DO"].concat();
        assert_eq!(check("a.rs", &format!("// {marker}: later")).len(), 1);
        assert!(check("a.rs", &format!("{marker}S are fine as part of a word")).is_empty());
    }

    #[test]
    fn the_browser_is_touched_in_two_places_only() {
        let line = "use web_sys::Window;";
        assert_eq!(check("app/src/pages/jobs.rs", line).len(), 1);
        assert!(check("app/src/device/share.rs", line).is_empty());
        assert!(check("app/src/store.rs", line).is_empty());
    }

    #[test]
    fn paths_of_one_machine_are_found_and_addresses_are_not() {
        let own = ["/ho", "me/someone/x"].concat();
        assert_eq!(check("a.md", &own).len(), 1);
        assert_eq!(check("a.md", &format!("cat \"{own}\"")).len(), 1);
        assert!(check("a.md", &format!("example.org{own}")).is_empty());
        assert!(check("a.md", "/usr/bin/chromium").is_empty());
    }

    #[test]
    fn registry_hosts_are_found_outside_the_lock_file() {
        let line = ["source = index.crates", "io"].join(".");
        assert_eq!(check("a.toml", &line).len(), 1);
        assert!(check("Cargo.lock", &line).is_empty());
    }
}

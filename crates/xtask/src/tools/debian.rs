//! What comes with the operating system. On Debian and its kin it is installed; elsewhere it is asked for.

use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result, bail};

use crate::process;

/// Something that the operating system has to bring.
pub(crate) struct Need {
    what: &'static str,
    is_there: fn() -> bool,
    packages: &'static [&'static str],
}

impl Need {
    /// The linker that cargo calls for every program.
    pub(crate) const C_LINKER: Need = Need {
        what: "C linker (cc)",
        is_there: || process::is_installed("cc"),
        packages: &["gcc", "libc6-dev"],
    };

    /// An interpreter that can make environments with pip in them.
    pub(crate) const PYTHON: Need = Need {
        what: "Python 3 with venv",
        is_there: || {
            process::output(Command::new("python3").args(["-c", "import venv, ensurepip"])).is_ok()
        },
        packages: &["python3-venv"],
    };

    /// Both browser engines with their drivers, and a display for the one that can't do without.
    pub(crate) const BROWSERS: &[Need] = &[
        Need {
            what: "Chromium",
            is_there: || process::is_installed("chromium"),
            packages: &["chromium"],
        },
        Need {
            what: "Chromium's driver (chromedriver)",
            is_there: || process::is_installed("chromedriver"),
            packages: &["chromium-driver"],
        },
        Need {
            what: "WebKit and its driver (WebKitWebDriver)",
            is_there: || process::is_installed("WebKitWebDriver"),
            packages: &["webkit2gtk-driver"],
        },
        Need {
            what: "virtual display (xvfb-run)",
            is_there: || process::is_installed("xvfb-run") && process::is_installed("xauth"),
            packages: &["xvfb", "xauth"],
        },
        // Without any font a page shows no letter, and a screenshot proves nothing.
        Need {
            what: "a font (DejaVu)",
            is_there: || Path::new("/usr/share/fonts/truetype/dejavu").is_dir(),
            packages: &["fonts-dejavu-core"],
        },
    ];
}

/// Says for each need whether it is there, and installs all that are missing in one go.
pub(super) fn ensure_all(needs: &[Need]) -> Result<()> {
    let mut missing = Vec::new();
    for need in needs {
        if (need.is_there)() {
            println!("  {}: there, skipped", need.what);
        } else {
            println!(
                "  {}: missing, comes with {}",
                need.what,
                need.packages.join(" ")
            );
            missing.push(need);
        }
    }
    if missing.is_empty() {
        return Ok(());
    }
    let packages: Vec<&str> = missing
        .iter()
        .flat_map(|need| need.packages)
        .copied()
        .collect();
    install(&packages)?;
    let still_missing: Vec<&str> = missing
        .iter()
        .filter(|need| !(need.is_there)())
        .map(|need| need.what)
        .collect();
    if !still_missing.is_empty() {
        bail!(
            "installed, and still not found: {}",
            still_missing.join(", ")
        );
    }
    Ok(())
}

fn install(packages: &[&str]) -> Result<()> {
    let wanted = packages.join(" ");
    if !process::is_installed("apt-get") {
        bail!(
            "this system has no apt-get. Install what Debian calls {wanted} by your own means, then run this again"
        );
    }
    let by_hand = || format!("run this with the rights to install: apt-get install {wanted}");
    let rights: &[&str] = if is_root() {
        &[]
    } else if process::output(Command::new("sudo").args(["-n", "true"])).is_ok() {
        &["sudo", "-n"]
    } else {
        bail!(
            "installing needs rights that this user lacks. First {}",
            by_hand()
        );
    };
    println!("  Installing {wanted} with apt-get");
    // Package lists that were fetched long ago name files that are gone.
    process::run(&mut apt_get(rights, &["update", "-qq"])).with_context(by_hand)?;
    let mut arguments = vec!["install", "-y", "-qq", "--no-install-recommends"];
    arguments.extend(packages);
    process::run(&mut apt_get(rights, &arguments)).with_context(by_hand)
}

fn apt_get(rights: &[&str], arguments: &[&str]) -> Command {
    // `env` keeps the setting when sudo clears the environment.
    let words = [
        rights,
        &["env", "DEBIAN_FRONTEND=noninteractive", "apt-get"],
        arguments,
    ]
    .concat();
    let mut command = Command::new(words[0]);
    command.args(&words[1..]);
    command
}

fn is_root() -> bool {
    process::output(Command::new("id").arg("-u")).is_ok_and(|user| user.trim() == "0")
}

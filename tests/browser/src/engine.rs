//! The two browser engines: how each is started through its driver, and what only one of them can do.

use std::collections::BTreeSet;
use std::net::TcpListener;
use std::os::unix::process::CommandExt as _;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::str::FromStr;
use std::thread::sleep;
use std::time::{Duration, Instant};

use anyhow::{Context, Result, anyhow, bail, ensure};
use serde_json::{Value, json};
use tempfile::TempDir;

use crate::server::PLAIN_NAME;
use crate::webdriver::WebDriver;

/// How long a driver may take to answer.
const PATIENCE: Duration = Duration::from_secs(30);

/// The language of a reader who named none.
pub(crate) const ENGLISH: &str = "en-GB";

/// Shrinks the tool bar above the page, which otherwise keeps WebKit's window wider than a phone. Touches no page.
const NARROW_WINDOW: &str =
    "* { font-size: 1px; min-width: 0; min-height: 0; padding: 0; margin: 0; border-width: 0; }";

/// A browser engine.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Engine {
    /// Chrome, Edge and most phones.
    Chromium,
    /// Safari, and every browser on an iPhone. Wants a display; its profile never outlives it.
    WebKit,
}

/// How a browser is to be set up.
#[derive(Debug, Clone, Default)]
pub(crate) struct Habits {
    /// The reader's language, for example `de-DE`; English where none is named. Chromium only.
    pub(crate) language: Option<&'static str>,
    /// Whether there is nothing but a keyboard and a mouse: phones have neither.
    pub(crate) desktop: bool,
    /// Whether the reader asked for a dark look.
    pub(crate) dark: bool,
    /// A profile that outlives the browser, instead of a fresh one. Chromium only.
    pub(crate) profile: Option<PathBuf>,
    /// Whether the reader has blocked cookies, and with them all storage. Chromium only.
    pub(crate) blocks_storage: bool,
    /// Where downloads go. Chromium only.
    pub(crate) downloads: Option<PathBuf>,
}

/// An open browser with the driver that it hangs on.
pub(crate) struct Browser {
    // The order matters: the window is closed before its driver is ended.
    /// The window.
    pub(crate) window: WebDriver,
    _driver: Driver,
    _settings: TempDir,
}

impl Browser {
    /// Starts a browser, with a fresh profile unless its habits name one.
    pub(crate) fn open(engine: Engine, habits: &Habits) -> Result<Browser> {
        let settings = TempDir::with_prefix("coldcase-browser-")?;
        let driver = Driver::start(engine, habits, settings.path())?;
        let window = WebDriver::open(&driver.address, &engine.capabilities(habits))
            .with_context(|| format!("{} can't be started", engine.name()))?;
        Ok(Browser {
            window,
            _driver: driver,
            _settings: settings,
        })
    }

    /// Ends the browser as a phone does that runs out of power: at once, every process of it, with nothing written that
    /// wasn't written yet. Returns how many process groups were ended.
    pub(crate) fn kill(&self, profile: &Path) -> Result<usize> {
        let groups = groups_of(profile)?;
        for group in &groups {
            let killed = Command::new("kill")
                .args(["-KILL", "--", &format!("-{group}")])
                .status()
                .context("kill can't be started")?;
            ensure!(killed.success(), "group {group} can't be killed");
        }
        Ok(groups.len())
    }
}

/// The process groups of the browser with this profile, which stands on its command line. This program's own is never
/// among them.
fn groups_of(profile: &Path) -> Result<BTreeSet<u32>> {
    let wanted = format!("--user-data-dir={}", profile.display());
    let own = group_of(std::process::id());
    let mut groups = BTreeSet::new();
    for entry in std::fs::read_dir("/proc")? {
        let entry = entry?;
        let Ok(process) = entry.file_name().to_string_lossy().parse() else {
            continue;
        };
        // A process may end while it is looked at.
        let command = std::fs::read(entry.path().join("cmdline")).unwrap_or_default();
        // Some of its processes write their command line anew, as one word.
        let is_browser = String::from_utf8_lossy(&command).contains(&wanted);
        if is_browser {
            groups.extend(group_of(process).filter(|group| Some(*group) != own));
        }
    }
    Ok(groups)
}

fn group_of(process: u32) -> Option<u32> {
    let stat = std::fs::read_to_string(format!("/proc/{process}/stat")).ok()?;
    // The name in brackets may hold anything; state, parent and group follow it.
    let (_, after) = stat.rsplit_once(')')?;
    after.split_whitespace().nth(2)?.parse().ok()
}

impl Engine {
    /// Its name on the command line and in reports.
    pub(crate) const fn name(self) -> &'static str {
        match self {
            Engine::Chromium => "chromium",
            Engine::WebKit => "webkit",
        }
    }

    const fn driver(self) -> &'static str {
        match self {
            Engine::Chromium => "chromedriver",
            Engine::WebKit => "WebKitWebDriver",
        }
    }

    fn capabilities(self, habits: &Habits) -> Value {
        match self {
            Engine::Chromium => chromium_capabilities(habits),
            // The driver finds the browser that was installed with it.
            Engine::WebKit => json!({}),
        }
    }
}

impl FromStr for Engine {
    type Err = anyhow::Error;

    fn from_str(name: &str) -> Result<Engine> {
        [Engine::Chromium, Engine::WebKit]
            .into_iter()
            .find(|engine| engine.name() == name)
            .with_context(|| format!("there is no engine {name:?}: it is chromium or webkit"))
    }
}

fn chromium_capabilities(habits: &Habits) -> Value {
    let mut arguments = vec![
        "--headless".to_owned(),
        // Chromium refuses its sandbox to root, and root is who runs in a container.
        "--no-sandbox".to_owned(),
        "--disable-gpu".to_owned(),
        "--disable-background-networking".to_owned(),
        "--disable-component-update".to_owned(),
        "--disable-quic".to_owned(),
        "--no-first-run".to_owned(),
        // A phone's scroll bars take no room.
        "--hide-scrollbars".to_owned(),
        format!("--host-resolver-rules=MAP {PLAIN_NAME} 127.0.0.1"),
    ];
    if let Some(profile) = &habits.profile {
        arguments.push(format!("--user-data-dir={}", profile.display()));
    }
    let mut preferences = json!({"intl.accept_languages": habits.language.unwrap_or(ENGLISH)});
    if habits.blocks_storage {
        // As in the settings: block all.
        preferences["profile.default_content_setting_values.cookies"] = json!(2);
    }
    if let Some(folder) = &habits.downloads {
        preferences["download.default_directory"] = json!(folder);
        preferences["download.prompt_for_download"] = json!(false);
    }
    json!({
        "goog:chromeOptions": {"args": arguments, "prefs": preferences},
        "goog:loggingPrefs": {"browser": "ALL"},
    })
}

/// A driver at work. Ends with this value.
struct Driver {
    process: Child,
    address: String,
}

impl Driver {
    fn start(engine: Engine, habits: &Habits, settings: &Path) -> Result<Driver> {
        let port = free_port()?;
        let mut command = Command::new(engine.driver());
        command
            .arg(format!("--port={port}"))
            .stdout(Stdio::null())
            .stderr(Stdio::null());
        if engine == Engine::WebKit {
            std::fs::create_dir(settings.join("gtk-3.0"))?;
            std::fs::write(settings.join("gtk-3.0/gtk.css"), NARROW_WINDOW)?;
            command.env("XDG_CONFIG_HOME", settings);
            command.env(
                "GTK_THEME",
                if habits.dark {
                    "Adwaita:dark"
                } else {
                    "Adwaita"
                },
            );
        }
        if habits.profile.is_some() {
            // A browser that may be killed is not to take its surroundings along.
            command.process_group(0);
        }
        let process = command
            .spawn()
            .with_context(|| format!("{} can't be started: is it installed?", engine.driver()))?;
        let driver = Driver {
            process,
            address: format!("http://127.0.0.1:{port}"),
        };
        driver.wait_until_it_answers()?;
        Ok(driver)
    }

    fn wait_until_it_answers(&self) -> Result<()> {
        let start = Instant::now();
        while minreq::get(format!("{}/status", self.address))
            .send()
            .is_err()
        {
            if start.elapsed() > PATIENCE {
                bail!(
                    "the driver did not answer within {} seconds",
                    PATIENCE.as_secs()
                );
            }
            sleep(Duration::from_millis(20));
        }
        Ok(())
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        // One that has ended by itself needs no killing.
        let _ = self.process.kill();
        let _ = self.process.wait();
    }
}

fn free_port() -> Result<u16> {
    let listener = TcpListener::bind("127.0.0.1:0")
        .map_err(|problem| anyhow!("no port is free: {problem}"))?;
    Ok(listener.local_addr()?.port())
}

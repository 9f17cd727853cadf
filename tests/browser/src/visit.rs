//! One visit to the page: a browser, the server behind it, and what a person does there.
//!
//! Knows elements by what a person goes by, their role and name, never by how the page is built.

mod controls;

use std::cell::Cell;
use std::path::{Path, PathBuf};
use std::thread::sleep;
use std::time::{Duration, Instant};

use anyhow::{Context, Result, bail, ensure};
use serde_json::{Value, json};

use crate::engine::{Browser, ENGLISH, Engine, Habits};
use crate::server::Site;
use crate::webdriver::WebDriver;

pub(crate) use controls::Kind;

/// How long something may take to appear.
const PATIENCE: Duration = Duration::from_secs(10);
const PAUSE: Duration = Duration::from_millis(25);

/// WebKit under a virtual display knows no fingers: there, what the style sheet keeps for them is shown regardless.
const AS_IF_TOUCHED: &str = "
    for (const sheet of document.styleSheets) {
        for (const rule of sheet.cssRules) {
            if (rule.media && rule.media.mediaText.includes('pointer: coarse')) rule.media.mediaText = 'all';
        }
    }";

/// The phone that the page is made for.
pub(crate) const PHONE: (u32, u32) = (360, 740);

/// A window on a desktop.
const DESKTOP: (u32, u32) = (1024, 768);

/// A browser at the page.
pub(crate) struct Visit {
    browser: Browser,
    /// The server behind the page.
    pub(crate) site: Site,
    /// The engine of the browser.
    pub(crate) engine: Engine,
    habits: Habits,
    may_stop: Cell<bool>,
}

impl Visit {
    /// Opens a browser with the size of a phone, without going anywhere yet.
    pub(crate) fn prepare(engine: Engine, site: Site, habits: &Habits) -> Result<Visit> {
        let browser = Browser::open(engine, habits)?;
        let visit = Visit {
            browser,
            site,
            engine,
            habits: habits.clone(),
            may_stop: Cell::new(false),
        };
        visit.settle_in()?;
        Ok(visit)
    }

    /// Gives a fresh tab the size, touch and look of the reader's device.
    fn settle_in(&self) -> Result<()> {
        match self.engine {
            // Its window is as large as a desktop's by itself, and without a window manager loses the focus for good
            // once it is resized.
            Engine::WebKit if self.habits.desktop => return Ok(()),
            Engine::WebKit => return self.resize(PHONE),
            Engine::Chromium => self.resize(if self.habits.desktop { DESKTOP } else { PHONE })?,
        }
        let look = if self.habits.dark { "dark" } else { "light" };
        let look = json!({"features": [{"name": "prefers-color-scheme", "value": look}]});
        let touch = json!({"enabled": !self.habits.desktop, "maxTouchPoints": 5});
        let language = json!({"locale": self.habits.language.unwrap_or(ENGLISH)});
        for (command, parameters) in [
            ("Emulation.setEmulatedMedia", look),
            ("Emulation.setTouchEmulationEnabled", touch),
            ("Emulation.setLocaleOverride", language),
        ] {
            self.window().chromium(command, &parameters)?;
        }
        Ok(())
    }

    /// Ends the browser at once, in the middle of whatever it does.
    pub(crate) fn kill_browser(&self) -> Result<()> {
        let profile = self.habits.profile.as_deref();
        let profile = profile.context("only a browser with a profile can be found among all")?;
        let ended = self.browser.kill(profile)?;
        ensure!(ended > 0, "no process of the browser was found");
        Ok(())
    }

    /// Opens another tab and goes to it.
    pub(crate) fn open_tab(&self) -> Result<String> {
        let tab = self.window().open_tab()?;
        self.window().go_to_tab(&tab)?;
        self.settle_in()?;
        Ok(tab)
    }

    /// The window, for what only this journey needs.
    pub(crate) fn window(&self) -> &WebDriver {
        &self.browser.window
    }

    /// Gives the page this much room, in CSS pixels.
    pub(crate) fn resize(&self, (width, height): (u32, u32)) -> Result<()> {
        match self.engine {
            Engine::Chromium => {
                let metrics = json!({"width": width, "height": height, "deviceScaleFactor": 2, "mobile": false});
                self.window()
                    .chromium("Emulation.setDeviceMetricsOverride", &metrics)?;
            }
            // The window manager that isn't there can't be waited for: asked again until it is so.
            Engine::WebKit => {}
        }
        self.wait_until("the window to have its size", || {
            let size = self.run("return [innerWidth, innerHeight, outerHeight - innerHeight]")?;
            let is_so = size[0] == width && size[1] == height;
            if !is_so && self.engine == Engine::WebKit {
                let frame = u32::try_from(size[2].as_u64().unwrap_or(0))?;
                self.window().set_window(width, height + frame)?;
            }
            Ok(is_so)
        })
    }

    /// Goes to the page and waits until the program stands.
    pub(crate) fn arrive(&self) -> Result<()> {
        self.go_to("")
    }

    /// Goes to an address within the page, such as `#/`, and waits until the program stands.
    pub(crate) fn go_to(&self, within: &str) -> Result<()> {
        self.window()
            .go_to(&format!("{}{within}", self.site.address()))?;
        self.wait_for_program()
    }

    /// Loads the page again and waits until the program stands.
    pub(crate) fn reload(&self) -> Result<()> {
        self.window().reload()?;
        self.wait_for_program()
    }

    /// Waits until the program has taken the place of the shell.
    pub(crate) fn wait_for_program(&self) -> Result<()> {
        self.wait_for_mark("ready", "true")?;
        if !self.habits.desktop && self.engine == Engine::WebKit {
            self.run(AS_IF_TOUCHED)?;
        }
        Ok(())
    }

    /// Waits until `<html>` carries a data attribute with this value.
    pub(crate) fn wait_for_mark(&self, name: &str, value: &str) -> Result<()> {
        self.wait_until(&format!("data-{name} to be {value}"), || {
            let script = "return document.documentElement.dataset[arguments[0]] || ''";
            Ok(self.window().run(script, &[json!(name)])? == value)
        })
    }

    /// Runs a function body in the page.
    pub(crate) fn run(&self, script: &str) -> Result<Value> {
        self.window().run(script, &[])
    }

    /// Everything that eyes can read on the page, its layout reduced to single spaces.
    pub(crate) fn text(&self) -> Result<String> {
        let text = self.run(
            "const unseen = document.querySelectorAll('.unseen');
             unseen.forEach((it) => { it.style.display = 'none'; });
             const text = document.body.innerText;
             unseen.forEach((it) => { it.style.display = ''; });
             return text;",
        )?;
        let words: Vec<&str> = text
            .as_str()
            .unwrap_or_default()
            .split_whitespace()
            .collect();
        Ok(words.join(" "))
    }

    /// Waits until these words are to be read.
    pub(crate) fn see(&self, words: &str) -> Result<()> {
        let mut shown = String::new();
        let seen = self.wait_until(&format!("the words {words:?}"), || {
            shown = self.text()?;
            Ok(shown.contains(words))
        });
        seen.with_context(|| format!("shown was: {shown}"))
    }

    /// Makes sure that these words are not to be read.
    pub(crate) fn see_no(&self, words: &str) -> Result<()> {
        let shown = self.text()?;
        ensure!(
            !shown.contains(words),
            "{words:?} is to be read in: {shown}"
        );
        Ok(())
    }

    /// The text under a name in the browser's storage.
    pub(crate) fn stored(&self, name: &str) -> Result<Option<String>> {
        let text = self
            .window()
            .run("return localStorage.getItem(arguments[0])", &[json!(name)])?;
        Ok(text.as_str().map(str::to_owned))
    }

    /// The names in the browser's storage that begin so.
    pub(crate) fn stored_names(&self, beginning: &str) -> Result<Vec<String>> {
        let names = self.run("return Object.keys(localStorage).sort()")?;
        let names = names.as_array().into_iter().flatten();
        Ok(names
            .filter_map(|name| Some(name.as_str()?.to_owned()))
            .filter(|name| name.starts_with(beginning))
            .collect())
    }

    /// Waits until nothing on the page moves any more.
    pub(crate) fn wait_for_rest(&self) -> Result<()> {
        let script = "const done = arguments[0];
            Promise.allSettled(document.getAnimations().map((one) => one.finished)).then(() => done());";
        self.window().run_async(script, &[]).map(drop)
    }

    /// Waits until something holds.
    pub(crate) fn wait_until(
        &self,
        what: &str,
        mut holds: impl FnMut() -> Result<bool>,
    ) -> Result<()> {
        let start = Instant::now();
        while !holds()? {
            if start.elapsed() > PATIENCE {
                bail!("waited {} seconds in vain for {what}", PATIENCE.as_secs());
            }
            sleep(PAUSE);
        }
        Ok(())
    }

    /// Fails where the program stopped, or where Chromium's console tells of an error other than the server's absence.
    pub(crate) fn check_for_mistakes(&self) -> Result<()> {
        let stopped = self.run("return document.documentElement.dataset.stopped || ''")?;
        ensure!(
            stopped == "" || self.may_stop.get(),
            "the program has stopped"
        );
        if self.engine == Engine::Chromium && !self.may_stop.get() {
            let mut told = self.window().chromium_console()?;
            told.retain(|line| !line.contains("ERR_CONNECTION_"));
            ensure!(
                told.is_empty(),
                "the console tells of errors: {}",
                told.join("; ")
            );
        }
        Ok(())
    }

    /// From here on, the journey itself brings about what would be a mistake elsewhere.
    pub(crate) fn allow_mistakes(&self) {
        self.may_stop.set(true);
    }

    /// Saves what is shown, and the page's source, for whoever looks into a failure.
    pub(crate) fn save_evidence(&self, folder: &Path, name: &str) -> Result<PathBuf> {
        std::fs::create_dir_all(folder)?;
        let picture = folder.join(format!("{name}.png"));
        std::fs::write(&picture, self.window().screenshot()?)?;
        std::fs::write(folder.join(format!("{name}.html")), self.window().source()?)?;
        Ok(picture)
    }
}

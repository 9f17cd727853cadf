//! The W3C WebDriver protocol, as far as the journeys need it: one open window, driven over plain HTTP.

use std::time::Duration;

use anyhow::{Context, Result, bail, ensure};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use serde_json::{Value, json};

/// The name under which WebDriver hands an element over.
const ELEMENT: &str = "element-6066-11e4-a52e-4f735466cecf";

/// How long one call may take. Loading a page is one call.
const PATIENCE: Duration = Duration::from_secs(60);

/// Keys that have no character, by their number in WebDriver's private range.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Key {
    Backspace,
    Tab,
    Enter,
}

impl Key {
    const fn code(self) -> char {
        match self {
            Key::Backspace => '\u{e003}',
            Key::Tab => '\u{e004}',
            Key::Enter => '\u{e007}',
        }
    }
}

/// An element of the page that is shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Element(String);

impl Element {
    /// From a script's answer; none where that is no element.
    pub(crate) fn from_value(value: &Value) -> Option<Element> {
        Some(Element(value.get(ELEMENT)?.as_str()?.to_owned()))
    }

    /// As an argument for a script.
    pub(crate) fn argument(&self) -> Value {
        json!({ ELEMENT: self.0 })
    }
}

/// An open browser; its driver ends it when this value goes.
pub(crate) struct WebDriver {
    session: String,
}

/// A sheet of paper, in centimetres.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Paper {
    width: f64,
    height: f64,
}

impl Paper {
    /// ANSI A.
    pub(crate) const LETTER: Self = Self {
        width: 21.59,
        height: 27.94,
    };
    /// ISO 216.
    pub(crate) const A4: Self = Self {
        width: 21.0,
        height: 29.7,
    };
}

impl WebDriver {
    /// Asks a driver for a browser.
    pub(crate) fn open(driver: &str, capabilities: &Value) -> Result<WebDriver> {
        let wanted = json!({"capabilities": {"alwaysMatch": capabilities}});
        let opened = call(minreq::post(format!("{driver}/session")), Some(&wanted))?;
        let id = opened["sessionId"]
            .as_str()
            .context("the driver opened no browser")?;
        Ok(WebDriver {
            session: format!("{driver}/session/{id}"),
        })
    }

    /// Goes to an address and waits until the page has loaded.
    pub(crate) fn go_to(&self, url: &str) -> Result<()> {
        self.post("url", &json!({"url": url})).map(drop)
    }

    /// Loads the page again.
    pub(crate) fn reload(&self) -> Result<()> {
        self.post("refresh", &json!({})).map(drop)
    }

    /// Runs a function body in the page and returns what it returns. A page's own security policy doesn't bind it.
    pub(crate) fn run(&self, script: &str, arguments: &[Value]) -> Result<Value> {
        self.post(
            "execute/sync",
            &json!({"script": script, "args": arguments}),
        )
    }

    /// Runs a function body that hands its answer to its last argument.
    pub(crate) fn run_async(&self, script: &str, arguments: &[Value]) -> Result<Value> {
        self.post(
            "execute/async",
            &json!({"script": script, "args": arguments}),
        )
    }

    /// Presses a pointer on the middle of an element, after scrolling to it. Fails where something covers it.
    pub(crate) fn click(&self, element: &Element) -> Result<()> {
        self.post(&format!("element/{}/click", element.0), &json!({}))
            .map(drop)
    }

    /// Types into an element, or names a file to a file field.
    pub(crate) fn type_into(&self, element: &Element, text: &str) -> Result<()> {
        self.post(
            &format!("element/{}/value", element.0),
            &json!({"text": text}),
        )
        .map(drop)
    }

    /// Presses and releases keys, wherever the focus is.
    pub(crate) fn press(&self, keys: &[Key]) -> Result<()> {
        self.press_characters(keys.iter().map(|key| key.code()))
    }

    /// Types characters with the keyboard, wherever the focus is.
    pub(crate) fn press_text(&self, text: &str) -> Result<()> {
        self.press_characters(text.chars())
    }

    /// A picture of what the window shows, as PNG.
    pub(crate) fn screenshot(&self) -> Result<Vec<u8>> {
        let taken = self.get("screenshot")?;
        let text = taken.as_str().context("the screenshot is no text")?;
        Ok(STANDARD.decode(text)?)
    }

    /// The page as it would be printed, as PDF.
    pub(crate) fn print(&self, paper: Paper) -> Result<Vec<u8>> {
        let (width, height) = (paper.width, paper.height);
        // Margins are left to the page's own style.
        let page = json!({"page": {"width": width, "height": height}, "shrinkToFit": false});
        let printed = self.post("print", &page)?;
        let text = printed.as_str().context("the print is no text")?;
        Ok(STANDARD.decode(text)?)
    }

    /// The page as it stands now.
    pub(crate) fn source(&self) -> Result<String> {
        let source = self.get("source")?;
        Ok(source.as_str().unwrap_or_default().to_owned())
    }

    /// Asks for a window of this size, frame included.
    pub(crate) fn set_window(&self, width: u32, height: u32) -> Result<()> {
        self.post(
            "window/rect",
            &json!({"x": 0, "y": 0, "width": width, "height": height}),
        )
        .map(drop)
    }

    /// The name of the tab that is driven.
    pub(crate) fn tab(&self) -> Result<String> {
        let handle = self.get("window")?;
        Ok(handle.as_str().context("the tab has no name")?.to_owned())
    }

    /// Opens another tab and returns its name, without going to it.
    pub(crate) fn open_tab(&self) -> Result<String> {
        let opened = self.post("window/new", &json!({"type": "tab"}))?;
        Ok(opened["handle"]
            .as_str()
            .context("the new tab has no name")?
            .to_owned())
    }

    /// Goes to another tab.
    pub(crate) fn go_to_tab(&self, name: &str) -> Result<()> {
        self.post("window", &json!({"handle": name})).map(drop)
    }

    /// A command of Chromium's own protocol.
    pub(crate) fn chromium(&self, command: &str, parameters: &Value) -> Result<Value> {
        self.post(
            "goog/cdp/execute",
            &json!({"cmd": command, "params": parameters}),
        )
    }

    /// What Chromium's console was told since it was last asked.
    pub(crate) fn chromium_console(&self) -> Result<Vec<String>> {
        let lines = self.post("se/log", &json!({"type": "browser"}))?;
        let lines = lines.as_array().into_iter().flatten();
        Ok(lines
            .filter(|line| line["level"] == "SEVERE")
            .filter_map(|line| Some(line["message"].as_str()?.to_owned()))
            .collect())
    }

    fn press_characters(&self, characters: impl Iterator<Item = char>) -> Result<()> {
        let actions: Vec<Value> = characters
            .flat_map(|key| {
                ["keyDown", "keyUp"].map(|kind| json!({"type": kind, "value": key.to_string()}))
            })
            .collect();
        let keyboard = json!({"type": "key", "id": "keyboard", "actions": actions});
        self.post("actions", &json!({"actions": [keyboard]}))
            .map(drop)
    }

    fn get(&self, what: &str) -> Result<Value> {
        call(minreq::get(format!("{}/{what}", self.session)), None)
    }

    fn post(&self, what: &str, body: &Value) -> Result<Value> {
        call(minreq::post(format!("{}/{what}", self.session)), Some(body))
    }
}

impl Drop for WebDriver {
    fn drop(&mut self) {
        // The driver closes the browser and clears its profile away; where it fails to, nothing more can be done here.
        let _ = minreq::delete(&self.session)
            .with_timeout(PATIENCE.as_secs())
            .send();
    }
}

fn call(request: minreq::Request, body: Option<&Value>) -> Result<Value> {
    let request = request
        .with_header("Content-Type", "application/json")
        .with_timeout(PATIENCE.as_secs());
    let request = match body {
        Some(body) => request.with_body(body.to_string()),
        None => request,
    };
    let response = request.send().context("the driver does not answer")?;
    let mut answer: Value =
        serde_json::from_slice(response.as_bytes()).context("the driver's answer is no JSON")?;
    let value = answer["value"].take();
    if response.status_code != 200 {
        let reason = value["message"].as_str().unwrap_or_default();
        let reason = reason.lines().next().unwrap_or_default();
        bail!(
            "{}: {reason}",
            value["error"].as_str().unwrap_or("the driver refused")
        );
    }
    ensure!(value.get("error").is_none(), "the driver refused: {value}");
    Ok(value)
}

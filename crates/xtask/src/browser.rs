//! One headless Chromium with a fresh profile, driven through its driver by plain W3C WebDriver calls.

use std::net::TcpListener;
use std::process::{Command, Stdio};
use std::thread::sleep;
use std::time::{Duration, Instant};

use anyhow::{Context, Result, bail, ensure};
use serde_json::{Value, json};

use crate::process::Running;

const PATIENCE: Duration = Duration::from_secs(60);
const PAUSE: Duration = Duration::from_millis(50);

/// An open browser window; closes with this value.
pub(crate) struct Browser {
    /// The driver's address with the session in it.
    session: String,
    _driver: Running,
}

impl Browser {
    /// Starts the driver and a browser whose profile is new and empty.
    pub(crate) fn open() -> Result<Browser> {
        let port = free_port()?;
        let driver = Command::new("chromedriver")
            .arg(format!("--port={port}"))
            .stdout(Stdio::null())
            .spawn()
            .context("chromedriver can't be started")?;
        let driver = Running(driver);
        let address = format!("http://127.0.0.1:{port}");
        wait_until("chromedriver to answer", || {
            Ok(minreq::get(format!("{address}/status")).send().is_ok())
        })?;
        let arguments = [
            "--headless",
            // Chromium refuses its sandbox to root, and root is who runs in a container.
            "--no-sandbox",
            "--disable-gpu",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-quic",
            "--no-first-run",
        ];
        let wanted =
            json!({"capabilities": {"alwaysMatch": {"goog:chromeOptions": {"args": arguments}}}});
        let opened = call(&format!("{address}/session"), &wanted)?;
        let id = opened["sessionId"]
            .as_str()
            .context("chromedriver opened no session")?;
        Ok(Browser {
            session: format!("{address}/session/{id}"),
            _driver: driver,
        })
    }

    /// Goes to an address and waits until the page has loaded.
    pub(crate) fn go_to(&self, url: &str) -> Result<()> {
        call(&format!("{}/url", self.session), &json!({"url": url})).map(|_| ())
    }

    /// Waits until `<html>` carries the data attribute (in its script spelling), and returns its value.
    pub(crate) fn wait_for_mark(&self, name: &str) -> Result<String> {
        let script = json!({"script": "return document.documentElement.dataset[arguments[0]] || ''", "args": [name]});
        let mut found = String::new();
        wait_until(&format!("the page to set data-{name}"), || {
            let value = call(&format!("{}/execute/sync", self.session), &script)?;
            found = value.as_str().unwrap_or_default().to_owned();
            Ok(!found.is_empty())
        })?;
        Ok(found)
    }
}

impl Drop for Browser {
    fn drop(&mut self) {
        // The driver closes the browser and clears its profile away; where it fails to, nothing more can be done here.
        let _ = minreq::delete(&self.session).send();
    }
}

fn call(url: &str, body: &Value) -> Result<Value> {
    let response = minreq::post(url)
        .with_header("Content-Type", "application/json")
        .with_body(body.to_string())
        .with_timeout(PATIENCE.as_secs())
        .send()
        .context("chromedriver does not answer")?;
    let mut answer: Value =
        serde_json::from_slice(response.as_bytes()).context("chromedriver's answer is no JSON")?;
    let value = answer["value"].take();
    ensure!(
        response.status_code == 200,
        "chromedriver refused: {}",
        value["message"].as_str().unwrap_or("no reason")
    );
    Ok(value)
}

fn wait_until(what: &str, mut is_so: impl FnMut() -> Result<bool>) -> Result<()> {
    let start = Instant::now();
    while !is_so()? {
        if start.elapsed() > PATIENCE {
            bail!("waited {} seconds in vain for {what}", PATIENCE.as_secs());
        }
        sleep(PAUSE);
    }
    Ok(())
}

fn free_port() -> Result<u16> {
    let listener = TcpListener::bind("127.0.0.1:0").context("no port is free")?;
    Ok(listener.local_addr()?.port())
}

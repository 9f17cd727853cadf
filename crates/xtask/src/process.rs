//! Other programs: finding, running, and reading what they print.

use std::io::{BufRead, BufReader, Read, Write};
use std::path::PathBuf;
use std::process::{Child, Command, Stdio};
use std::{env, thread};

use anyhow::{Context, Result, bail};

/// What a program printed and whether it was content.
pub(crate) struct Captured {
    /// Both output streams, in the order of arrival of their lines.
    pub(crate) text: String,
    /// Whether the program ended with exit code 0.
    pub(crate) success: bool,
}

/// A program that ends when this value does.
pub(crate) struct Running(pub(crate) Child);

impl Drop for Running {
    fn drop(&mut self) {
        // It may have ended by itself already, which is as good.
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}

/// Runs a program whose output goes straight to the terminal.
pub(crate) fn run(command: &mut Command) -> Result<()> {
    let status = command
        .status()
        .with_context(|| format!("`{}` could not be started", describe(command)))?;
    if !status.success() {
        bail!("`{}` ended with {status}", describe(command));
    }
    Ok(())
}

/// Runs a program and returns its standard output; what it complained about becomes part of the error.
pub(crate) fn output(command: &mut Command) -> Result<String> {
    let output = command
        .output()
        .with_context(|| format!("`{}` could not be started", describe(command)))?;
    if !output.status.success() {
        let complaint = String::from_utf8_lossy(&output.stderr);
        bail!(
            "`{}` ended with {}: {}",
            describe(command),
            output.status,
            complaint.trim()
        );
    }
    Ok(String::from_utf8_lossy(&output.stdout).into_owned())
}

/// Runs a program, passes its output through as it comes and keeps a copy.
pub(crate) fn run_and_capture(command: &mut Command) -> Result<Captured> {
    command.stdout(Stdio::piped()).stderr(Stdio::piped());
    let mut child = command
        .spawn()
        .with_context(|| format!("`{}` could not be started", describe(command)))?;
    let complaints = child.stderr.take();
    let reader =
        thread::spawn(move || complaints.map(|stream| pass_through(stream, std::io::stderr())));
    let mut text = child
        .stdout
        .take()
        .map(|stream| pass_through(stream, std::io::stdout()))
        .unwrap_or_default();
    if let Ok(Some(complaints)) = reader.join() {
        text.push_str(&complaints);
    }
    let success = child
        .wait()
        .context("the program's end could not be awaited")?
        .success();
    Ok(Captured { text, success })
}

/// Whether the program can be found on this search path.
pub(crate) fn find(name: &str, search_path: &std::ffi::OsStr) -> Option<PathBuf> {
    env::split_paths(search_path)
        .map(|folder| folder.join(name))
        .find(|file| file.is_file())
}

/// Whether the program can be found on the PATH of this process.
pub(crate) fn is_installed(name: &str) -> bool {
    env::var_os("PATH").is_some_and(|path| find(name, &path).is_some())
}

fn pass_through(stream: impl Read, mut to: impl Write) -> String {
    let mut kept = String::new();
    let mut reader = BufReader::new(stream);
    let mut line = Vec::new();
    while reader
        .read_until(b'\n', &mut line)
        .is_ok_and(|length| length > 0)
    {
        // A closed terminal is no reason to lose the copy.
        let _ = to.write_all(&line).and_then(|()| to.flush());
        kept.push_str(&String::from_utf8_lossy(&line));
        line.clear();
    }
    kept
}

fn describe(command: &Command) -> String {
    let mut words = vec![command.get_program().to_string_lossy().into_owned()];
    words.extend(
        command
            .get_args()
            .map(|word| word.to_string_lossy().into_owned()),
    );
    words.join(" ")
}

//! As much of HTTP as a static server needs: one request and one answer on each connection.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::time::Duration;

use anyhow::{Context, Result, ensure};

/// How long a connection may say nothing.
const PATIENCE: Duration = Duration::from_secs(60);

/// Longer than any head that a browser sends.
const LONGEST_HEAD: u64 = 64 * 1024;

/// What was asked for.
pub(super) struct Request {
    /// The address, beginning with a slash.
    pub(super) address: String,
    /// Whether more is wanted than the head of the answer.
    pub(super) wants_body: bool,
    headers: Vec<(String, String)>,
}

/// What is answered.
pub(super) struct Response {
    /// Number and words.
    pub(super) status: &'static str,
    /// What the body is.
    pub(super) content_type: &'static str,
    /// Whether the body is packed by gzip.
    pub(super) is_packed: bool,
    /// The body.
    pub(super) body: Vec<u8>,
}

impl Request {
    /// Waits for a request. None where the connection ends without one.
    pub(super) fn read(connection: &TcpStream) -> Result<Option<Request>> {
        connection.set_read_timeout(Some(PATIENCE))?;
        let mut lines = BufReader::new(connection.take(LONGEST_HEAD)).lines();
        let Some(first) = lines.next().transpose()? else {
            return Ok(None);
        };
        let mut words = first.split(' ');
        let method = words.next().unwrap_or_default().to_owned();
        ensure!(
            matches!(method.as_str(), "GET" | "HEAD"),
            "{method} is not served"
        );
        let address = words
            .next()
            .context("the request names no address")?
            .to_owned();
        let mut headers = Vec::new();
        for line in lines {
            let line = line?;
            let Some((name, value)) = line.split_once(':') else {
                break;
            };
            headers.push((name.to_ascii_lowercase(), value.trim().to_owned()));
        }
        Ok(Some(Request {
            address,
            wants_body: method == "GET",
            headers,
        }))
    }

    /// The value of a header, whose name is given in small letters.
    pub(super) fn header(&self, name: &str) -> Option<&str> {
        let found = self.headers.iter().find(|(other, _)| other == name);
        found.map(|(_, value)| value.as_str())
    }
}

impl Response {
    /// Writes the answer, after which the connection ends.
    pub(super) fn write(&self, mut connection: &TcpStream, with_body: bool) -> Result<()> {
        let packed = if self.is_packed {
            "Content-Encoding: gzip\r\n"
        } else {
            ""
        };
        let head = format!(
            "HTTP/1.1 {}\r\nContent-Type: {}\r\nContent-Length: {}\r\n{packed}Cache-Control: no-cache\r\nConnection: close\r\n\r\n",
            self.status,
            self.content_type,
            self.body.len(),
        );
        connection.write_all(head.as_bytes())?;
        if with_body {
            connection.write_all(&self.body)?;
        }
        Ok(())
    }
}

//! How long looking at a file and reading it take, beside a plain pass over its cells by the csv
//! crate in the same run: the ratio of both says more than milliseconds of one machine.
//!
//! ```text
//! cargo run --profile host -p logfile --example read_time
//! ```
//!
//! Ends with 1 when both together take more than 30 times as long as the plain pass.

// What is measured was written here.
#![allow(clippy::unwrap_used)]

use std::fmt::Write as _;
use std::hint::black_box;
use std::process::ExitCode;
use std::time::{Duration, Instant};

use logfile::{Answer, Looked, look, read, thin};

const ROUNDS: usize = 9;
/// A tenth of what a person notices, were the plain pass five milliseconds.
const MOST: f64 = 30.0;

fn main() -> ExitCode {
    let bytes = written(100_000);
    println!("100,000 rows, {:.1} MB", bytes.len() as f64 / 1e6);
    let layout = settled(&look(&bytes).unwrap());
    let (mut looking, mut reading, mut plain) = (Vec::new(), Vec::new(), Vec::new());
    for _ in 0..ROUNDS {
        looking.push(timed(|| look(black_box(&bytes)).unwrap()));
        reading.push(timed(|| read(black_box(&bytes), &layout).unwrap()));
        plain.push(timed(|| plain_pass(black_box(&bytes))));
    }
    let [looking, reading, plain] = [looking, reading, plain].map(median);
    let points = read(&bytes, &layout).unwrap().series.remove(0).points;
    let thinning = median(
        (0..ROUNDS)
            .map(|_| timed(|| thin(black_box(&points), 2_000)))
            .collect(),
    );
    println!("looking {looking:.1?}, reading {reading:.1?}, thinning {thinning:.1?}");
    println!("plain pass by the csv crate {plain:.1?}");
    let ratio = (looking + reading).as_secs_f64() / plain.as_secs_f64();
    println!("ratio {ratio:.1} (at most {MOST})");
    let large = written(450_000);
    let size = large.len() as f64 / 1e6;
    let both = timed(|| read(&large, &settled(&look(&large).unwrap())).unwrap());
    println!("a file of {size:.0} MB: {both:.1?} for both");
    ExitCode::from(u8::from(ratio > MOST))
}

fn settled(looked: &Looked) -> logfile::Layout {
    looked
        .settle(&[Answer::Zone(60), Answer::Columns(vec![2, 3])])
        .unwrap()
}

/// Two probes, a reading every ten seconds.
fn written(rows: u32) -> Vec<u8> {
    let mut text = "No;Zeit;Gefrierfach °C;Kühlfach °C\r\n".to_owned();
    for row in 0..rows {
        let second = row * 10;
        let (day, hour) = (second / 86_400, second / 3600 % 24);
        let (month, day) = (1 + day / 28, 1 + day % 28);
        let (minute, second) = (second / 60 % 60, second % 60);
        let tenths = row % 50;
        let _ = writeln!(
            text,
            "{row};{day:02}.{month:02}.2024 {hour:02}:{minute:02}:{second:02};-18,{tenths:02};4,{tenths:02}\r"
        );
    }
    text.into_bytes()
}

fn plain_pass(bytes: &[u8]) -> usize {
    let mut reader = csv::ReaderBuilder::new().delimiter(b';').from_reader(bytes);
    let mut record = csv::ByteRecord::new();
    let mut length = 0;
    while reader.read_byte_record(&mut record).unwrap() {
        length += record.iter().map(<[u8]>::len).sum::<usize>();
    }
    length
}

fn timed<T>(work: impl FnOnce() -> T) -> Duration {
    let start = Instant::now();
    black_box(work());
    start.elapsed()
}

fn median(mut times: Vec<Duration>) -> Duration {
    times.sort();
    times[times.len() / 2]
}

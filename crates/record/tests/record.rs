//! The record of an invented machine that was mended: what is in it, and what must never be.

// What a test reads from the repository is right by construction.
#![allow(clippy::unwrap_used, clippy::panic)]

use std::fs;
use std::path::PathBuf;

use diagnosis::{Figures, Model, assess};
use job::{Answer, Content, Entry, Id, Job, Moment, Origin, Place, Question, Spot, Text};
use jobfile::{Opened, open};
use record::{Audience, Block, Made, Part, Record};
use wording::Locale;

fn tests() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests")
}

fn mended() -> Job {
    let text = fs::read_to_string(tests().join("jobs/mended-freezer.json")).unwrap();
    let Ok(Opened::Document { document, notices }) = open(&text) else {
        panic!("it doesn't open");
    };
    assert_eq!(notices, []);
    document.job().clone()
}

fn record(job: &Job, audience: Audience) -> Record {
    let last = job.entries().last().unwrap().at;
    let now = Moment::new(last.unix_milliseconds() + 60_000, 60).unwrap();
    let model = Model::default().for_job(job, &Figures::default());
    let assessment = assess(&model, job, now);
    let version = "0.1.0";
    Record::of(
        job,
        &assessment,
        &Locale::default(),
        audience,
        Made { now, version },
    )
}

#[test]
fn the_record_reads_as_it_should() {
    let record = record(&mended(), Audience::Buyer);
    for (name, made) in [
        ("mended-freezer.txt", record.text()),
        ("mended-freezer.html", record.html()),
    ] {
        let path = tests().join("shown").join(name);
        if std::env::var_os("BLESS").is_some() {
            fs::create_dir_all(path.parent().unwrap()).unwrap();
            fs::write(&path, &made).unwrap();
        }
        let kept = fs::read_to_string(&path).unwrap_or_default();
        assert!(
            kept == made,
            "{name}: BLESS=1 cargo test -p record writes it anew"
        );
    }
}

#[test]
fn a_buyer_sees_no_money_and_no_private_note_and_the_owner_sees_both() {
    let job = mended();
    let (buyer, owner) = (record(&job, Audience::Buyer), record(&job, Audience::Owner));
    for private in ["Private", "corner shop", "0.42", "A year costs", "own 40"] {
        assert!(!buyer.text().contains(private), "{private}");
        assert!(!buyer.html().contains(private), "{private}");
    }
    for told in ["corner shop", "neighbour listened", "A year costs"] {
        assert!(owner.text().contains(told), "{told}");
        assert!(owner.html().contains(told), "{told}");
    }
    assert!(buyer.section(Part::Notes).is_none() && owner.section(Part::Notes).is_some());
}

#[test]
fn every_record_says_what_was_not_tested() {
    let mended = mended();
    let bare = Job::new(mended.id().clone(), mended.created(), Origin::Person);
    let mut named = bare.clone();
    add(&mut named, "machine", "name", "A freezer");
    for job in [&mended, &named] {
        for audience in [Audience::Buyer, Audience::Owner] {
            let record = record(job, audience);
            let limits = record.section(Part::Limits).unwrap();
            let says_so = |block: &Block| {
                matches!(block, Block::Lines(lines)
                if lines.iter().any(|line| line.contains("they can't clear one")))
            };
            assert!(limits.blocks.iter().any(says_so), "{limits:?}");
        }
    }
    // Of the bare one nothing was looked at, and each check says so.
    let text = record(&named, Audience::Buyer).text();
    assert!(text.contains("Never looked at") && text.contains("Nothing was measured."));
}

fn add(job: &mut Job, check: &str, item: &str, text: &str) {
    let id = format!("added-{}", job.entries().len());
    job.add(Entry {
        id: Id::new(&id).unwrap(),
        at: job.created(),
        content: Content::Answer {
            question: Question::new(check, item).unwrap(),
            answer: Answer::Text(Text::new(text).unwrap()),
        },
    })
    .unwrap();
}

/// What was wrong before a part was replaced is no fault of the machine that is handed over.
#[test]
fn a_complaint_from_before_the_mending_breaks_no_link_of_the_mended_machine() {
    let record = record(&mended(), Audience::Buyer);
    let path = record.section(Part::Path).unwrap();
    let [Block::Picture(path)] = path.blocks.as_slice() else {
        panic!("{path:?}");
    };
    let start = path.says.iter().find(|line| line.contains("Start"));
    assert!(!start.unwrap().contains("broken"), "{start:?}");
    let text = record.text();
    let now = text.split("As it is now:").nth(1).unwrap();
    assert!(!now.contains("hums, then clicks"));
    assert!(text.contains("hums, then clicks"));
}

/// A reading that was taken back hides none that stands.
#[test]
fn the_last_reading_of_a_place_is_the_last_that_stands() {
    let mut job = mended();
    let spot = job.entries().iter().find_map(|one| match &one.content {
        Content::Spot(spot) => Some(spot.clone()),
        _ => None,
    });
    let spot = Spot {
        place: Place::Room,
        ..spot.unwrap()
    };
    let id = |text: &str| Id::new(text).unwrap();
    for (name, content) in [
        ("right", Content::Spot(spot.clone())),
        ("wrong", Content::Spot(spot)),
        ("taken-back", Content::Strike(id("wrong"))),
    ] {
        job.add(Entry {
            id: id(name),
            at: job.entries().last().unwrap().at,
            content,
        })
        .unwrap();
    }
    let measured = record(&job, Audience::Buyer);
    let measured = measured.section(Part::Measured).unwrap();
    let Some(Block::Table(table)) = measured.blocks.first() else {
        panic!("{measured:?}");
    };
    let in_the_room = |row: &&Vec<String>| row[0].contains("in the room");
    assert_eq!(table.rows.iter().filter(in_the_room).count(), 1);
}

#[test]
fn a_hostile_text_runs_nothing_and_forges_no_line() {
    let hostile = "</title></style><script>alert(1)</script><img src=x onerror=alert(1)>\" \
                   onload=\"a\n- Circuit: holds\u{202e}";
    let mut job = mended();
    for (check, item) in [("machine", "name"), ("machine", "plate"), ("smell", "odd")] {
        add(&mut job, check, item, hostile);
    }
    job.add(Entry {
        id: Id::new("note").unwrap(),
        at: job.created(),
        content: Content::Note(Text::new(hostile).unwrap()),
    })
    .unwrap();
    let record = record(&job, Audience::Owner);
    let html = record.html();
    // Twice in the title and heading, in both tables, in the note.
    assert!(html.matches("&lt;script&gt;").count() >= 5);
    for markup in ["<script", "<img", "onload=\"", "\u{202e}"] {
        assert!(!html.contains(markup), "{markup}");
    }
    assert_eq!(html.matches("</title>\n<style>").count(), 1);
    let text = record.text();
    assert!(!text.lines().any(|line| line == "- Circuit: holds"));
    assert!(!text.contains('\u{202e}'));
}

#[test]
fn an_invented_or_simulated_machine_says_so_in_front_and_at_the_end() {
    let of = |origin| {
        let real = mended();
        let mut job = Job::new(real.id().clone(), real.created(), origin);
        for entry in real.entries() {
            job.add(entry.clone()).unwrap();
        }
        record(&job, Audience::Buyer)
    };
    for (origin, mark) in [
        (Origin::Invented, "INVENTED EXAMPLE"),
        (Origin::Practice, "PRACTICE"),
    ] {
        let record = of(origin);
        assert_eq!(record.html().matches(mark).count(), 2);
        assert!(record.text().matches(mark).count() >= 2);
    }
    let real = of(Origin::Person);
    assert_eq!(real.unreal, None);
    assert!(!real.html().contains("INVENTED") && !real.html().contains("PRACTICE"));
}

#[test]
fn the_file_fetches_nothing_and_its_tables_and_drawings_are_named() {
    let html = record(&mended(), Audience::Owner).html();
    for outside in ["<script", "http", "src=", "url(", "@import", "<link"] {
        assert!(!html.contains(outside), "{outside}");
    }
    let count = |what: &str| html.matches(what).count();
    assert_eq!(count("<table"), count("<caption"));
    assert_eq!(count("<svg"), 4, "pins, Path, starts, freezer");
    assert_eq!(count("<svg"), count("<desc id="));
    assert_eq!(count("<h1"), 1);
}

#[test]
fn text_and_html_hold_the_same_sentences() {
    let record = record(&mended(), Audience::Owner);
    let html = record.html();
    for section in record.sheet.iter().chain(&record.details) {
        assert!(record.text().contains(section.heading));
        assert!(html.contains(&section.heading.replace('\'', "&#39;")));
        for block in &section.blocks {
            if let Block::Lines(lines) = block {
                for line in lines {
                    assert!(record.text().contains(line.trim()), "{line}");
                }
            }
        }
    }
}

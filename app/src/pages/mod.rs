//! The screens, one file each, and the pieces that only they use.

pub mod about;
pub mod check;
pub mod check_drawings;
pub mod choice_list;
pub mod do_next;
pub mod drawings;
pub mod examples;
pub mod import;
pub mod import_preview;
pub mod job_list;
pub mod job_screens;
pub mod jobs;
pub mod kept_as_it_is;
pub mod known;
pub mod machine;
pub mod new_job;
pub mod next_card;
pub mod record;
pub mod refrigerant;
pub mod report_view;
pub mod send;
pub mod settings;
pub mod suspects;
pub mod task;
pub mod text_entry;
pub mod windings;

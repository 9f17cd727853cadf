//! The plain strings of the pages: headings, buttons, hints.

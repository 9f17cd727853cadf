//! Pieces of screen that several pages use.

pub mod cannot_do;
pub mod caution;
pub mod clock_digits;
pub mod hand_over;
pub mod keypad;
pub mod live;
pub mod odds;
pub mod path_line;
pub mod pin_diagram;
pub mod pin_layout;
pub mod pin_table;
pub mod plain;
pub mod radio;
pub mod reading_field;
pub mod when_form;
pub mod windings_before;
pub mod windings_meaning;
pub mod windings_meter;
pub mod windings_wiring;

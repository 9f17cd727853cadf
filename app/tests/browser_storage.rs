//! The browser's own storage, in a browser.

#![cfg(target_arch = "wasm32")]

use std::cell::RefCell;
use std::rc::Rc;

use app::store::{BrowserShelf, Shelf, Trouble, on_change_elsewhere};
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

fn shelf() -> BrowserShelf {
    let shelf = BrowserShelf::probe().expect("this browser keeps nothing");
    for name in shelf.names() {
        shelf.remove(&name);
    }
    shelf
}

fn raw() -> web_sys::Storage {
    web_sys::window().unwrap().local_storage().unwrap().unwrap()
}

#[wasm_bindgen_test]
fn texts_come_back_in_every_script() {
    let shelf = shelf();
    for text in [
        "",
        "1\n{\n  \"a\": 1\n}\n",
        "4,7 Ω ± 0,3",
        "\u{feff}é\r\n🧊",
    ] {
        shelf.write("job/a", text).unwrap();
        assert_eq!(shelf.read("job/a").as_deref(), Some(text));
    }
    shelf.remove("job/a");
    assert_eq!(shelf.read("job/a"), None);
}

#[wasm_bindgen_test]
fn what_other_pages_keep_at_this_address_is_neither_listed_nor_touched() {
    let shelf = shelf();
    raw().set_item("theirs", "not json").unwrap();
    raw().set_item("coldcases", "theirs too").unwrap();
    shelf.write("job/b", "x").unwrap();
    shelf.write("job/a", "x").unwrap();
    let mut names = shelf.names();
    names.sort();
    assert_eq!(names, ["job/a", "job/b"]);
    assert!(shelf.has_any("job/") && !shelf.has_any("theirs"));
    shelf.remove("theirs");
    assert_eq!(
        raw().get_item("theirs").unwrap().as_deref(),
        Some("not json")
    );
    assert_eq!(
        raw().get_item("coldcase/job/a").unwrap().as_deref(),
        Some("x")
    );
}

#[wasm_bindgen_test]
fn the_start_of_a_text_comes_alone_and_of_a_short_one_all() {
    let shelf = shelf();
    shelf.write("job/a", "7\tΩ and more").unwrap();
    assert_eq!(shelf.start_of("job/a", 3).as_deref(), Some("7\tΩ"));
    assert_eq!(
        shelf.start_of("job/a", 300).as_deref(),
        Some("7\tΩ and more")
    );
    assert_eq!(shelf.start_of("job/b", 3), None);
}

#[wasm_bindgen_test]
fn room_is_tried_before_it_is_gone_and_the_trial_leaves_nothing() {
    let shelf = shelf();
    assert!(shelf.has_room(250_000));
    assert!(!shelf.has_room(20_000_000));
    assert!(shelf.names().is_empty());
}

#[wasm_bindgen_test]
fn another_tab_that_tries_for_room_calls_nobody() {
    let heard: Rc<RefCell<Vec<String>>> = Rc::default();
    let hears = heard.clone();
    on_change_elsewhere(move |name| hears.borrow_mut().push(name.to_owned()));
    for name in ["coldcase/trial", "theirs", "coldcase/job/a"] {
        let about = web_sys::StorageEventInit::new();
        about.set_key(Some(name));
        let event = web_sys::StorageEvent::new_with_event_init_dict("storage", &about).unwrap();
        web_sys::window().unwrap().dispatch_event(&event).unwrap();
    }
    assert_eq!(*heard.borrow(), ["job/a"]);
}

#[wasm_bindgen_test]
fn where_there_is_no_room_it_says_so_and_what_was_there_stays() {
    let shelf = shelf();
    shelf.write("job/a", "small").unwrap();
    let large = "x".repeat(20_000_000);
    assert_eq!(shelf.write("job/a", &large), Err(Trouble::Full));
    assert_eq!(shelf.read("job/a").as_deref(), Some("small"));
}

#[wasm_bindgen_test]
fn new_identifiers_differ_and_the_clock_is_in_this_century() {
    let (first, second) = (app::device::new_id(), app::device::new_id());
    assert_ne!(first, second);
    assert_eq!(first.as_str().len(), 36);
    assert!(app::device::now().wall_clock().year >= 2025);
}

#[wasm_bindgen_test]
fn numbers_are_written_with_the_mark_that_the_browser_uses() {
    let written = js_sys::Number::from(1.5).to_locale_string("default");
    let expected = if String::from(written).contains(',') {
        wording::DecimalMark::Comma
    } else {
        wording::DecimalMark::Point
    };
    assert_eq!(app::device::locale().decimal, expected);
}

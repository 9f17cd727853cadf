//! Starts the page inside the shell that `index.html` has already painted.

fn main() {
    app::start();
}

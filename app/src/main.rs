//! The page: starts the program inside the shell that `index.html` has already painted.

use leptos::prelude::*;

fn main() {
    leptos::mount::mount_to_body(|| {
        view! {
            <header>
                <p>"Coldcase"</p>
            </header>
            <main>
                <h1>"Why won't it get cold?"</h1>
            </main>
        }
    });
}

//! What is being filled in, as plain structs: no screen, no browser, tested on the host.

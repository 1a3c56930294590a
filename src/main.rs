//! Mounts the view in a browser; elsewhere says how to start it.

#[cfg(target_arch = "wasm32")]
mod view;

#[cfg(not(target_arch = "wasm32"))]
fn main() {
    println!("Linkwright runs in a browser: start it with `cargo xtask serve`.");
}

#[cfg(target_arch = "wasm32")]
fn main() {
    view::start();
}

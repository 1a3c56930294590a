//! Mounts the app in a browser; elsewhere says how to start it.

#[cfg(target_arch = "wasm32")]
mod app;
#[cfg(target_arch = "wasm32")]
mod browser;

#[cfg(not(target_arch = "wasm32"))]
fn main() {
    println!("Linkwright runs in a browser: start it with `cargo xtask serve`.");
}

#[cfg(target_arch = "wasm32")]
fn main() {
    leptos::mount::mount_to_body(app::App);
    browser::page::mark_live();
}

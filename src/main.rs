//! Mounts the view in a browser; elsewhere says how to start it.

#[cfg(target_arch = "wasm32")]
mod view;

/// Hands out memory, in a fifth of the code that the standard allocator takes.
#[cfg(target_arch = "wasm32")]
#[global_allocator]
static MEMORY: talc::wasm::WasmDynamicTalc = talc::wasm::new_wasm_dynamic_allocator();

#[cfg(not(target_arch = "wasm32"))]
fn main() {
    println!("Linkwright runs in a browser: start it with `cargo xtask serve`.");
}

#[cfg(target_arch = "wasm32")]
fn main() {
    view::start();
}

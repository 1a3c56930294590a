//! The least page that this framework makes: what the real one is measured beside.

#[cfg(not(target_arch = "wasm32"))]
fn main() {
    println!("It runs in a browser: see `cargo xtask measure`.");
}

#[cfg(target_arch = "wasm32")]
fn main() {
    use leptos::prelude::*;
    let count = RwSignal::new(0);
    mount_to_body(move || {
        view! {
            <main id="answer">
                <button type="button" id="more" on:click=move |_| count.update(|count| *count += 1)>"More"</button>
                <p>{count}</p>
            </main>
        }
    });
    if let Some(root) = document().document_element() {
        let _ = root.set_attribute("data-live", "");
    }
}

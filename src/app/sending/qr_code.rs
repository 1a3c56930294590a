//! The link as a code for a camera: on the screen when asked for, on paper always.

use crate::app::drawings::DrawingView;
use crate::app::session::use_session;
use crate::browser::address::is_a_file;
use leptos::prelude::*;
use linkwright::present::drawing::code;
use linkwright::present::sending::{SCAN_IT, TOO_LONG_FOR_A_CODE};

/// The button and the figure below it; nothing where no camera gets to, a file on this device.
#[component]
pub(super) fn QrCode(
    /// The link.
    address: Memo<String>,
) -> impl IntoView {
    let session = use_session();
    let open = RwSignal::new(false);
    let drawn = move || open.get() || session.printing.get() || session.laid_open.get();
    let code = move || match code::code(&address.read()) {
        Some(drawing) => view! {
            <DrawingView drawing />
            <figcaption>{SCAN_IT}</figcaption>
        }
        .into_any(),
        None => view! { <figcaption>{TOO_LONG_FOR_A_CODE}</figcaption> }.into_any(),
    };

    (!is_a_file()).then(|| {
        view! {
            <button
                type="button"
                class="on-screen"
                id="show-code"
                aria-controls="code"
                aria-expanded=move || open.get().to_string()
                on:click=move |_| open.update(|open| *open = !*open)
            >
                "QR code"
            </button>
            <figure class="code" class:for-paper=move || !open.get() id="code">
                <Show when=drawn>{code}</Show>
            </figure>
        }
    })
}
